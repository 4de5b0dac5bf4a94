// Two at once: two boxes in place of the list of all pairs. The address says which pair shows; nothing is worked out here.
(function () {
  "use strict";

  /** @param {HTMLFormElement} form */
  function start(form) {
    var boxes = Array.prototype.slice.call(form.querySelectorAll("select"));
    var day = form.getAttribute("data-pick") || "";

    /** The id of the pair, whichever of the two was chosen first; "" while there is none. */
    function chosen() {
      var one = boxes[0].value, other = boxes[1].value;
      var found = [day + "-" + one + "-" + other, day + "-" + other + "-" + one].filter(function (id) {
        var there = document.getElementById(id);
        return there !== null && there.classList.contains("pair");
      });
      return one && other && found.length ? found[0] : "";
    }

    /** One number cannot be its own other. */
    function offer() {
      boxes.forEach(function (box, at) {
        Array.prototype.forEach.call(box.options, function (option) {
          option.disabled = option.value !== "" && option.value === boxes[1 - at].value;
        });
      });
    }

    // A copied address or the way back opens on its own pair; the boxes follow, but never change places under a hand.
    function follow() {
      var id = decodeURIComponent(location.hash.slice(1));
      var pair = id ? document.getElementById(id) : null;
      var here = pair !== null && pair.classList.contains("pair") && form.parentNode !== null && form.parentNode.contains(pair);
      var numbers = here ? id.slice(day.length + 1).split("-") : null;
      if (id !== "" && chosen() === id) return;
      boxes.forEach(function (box, at) {
        if (numbers) box.value = numbers[at];
        else if (id === day) box.value = "";
      });
      offer();
    }

    boxes.forEach(function (box) {
      box.addEventListener("change", function () {
        offer();
        var id = chosen();
        if (id) location.hash = id;
      });
    });
    addEventListener("hashchange", follow);
    follow();
    form.hidden = false;
    var list = form.parentNode && form.parentNode.querySelector(".pick__list");
    if (list instanceof HTMLElement) list.hidden = true;
  }

  document.querySelectorAll("[data-pick]").forEach(function (form) {
    if (form instanceof HTMLFormElement) start(form);
  });
})();
