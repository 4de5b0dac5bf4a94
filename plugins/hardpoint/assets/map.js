// Maps: which layers are shown, and whether the airframe lies inverted. Without this script all layers show, upright.
(function () {
  "use strict";

  /** @param {Element} map */
  function start(map) {
    var choice = map.querySelector("[data-map-choice]");
    if (!choice) return;
    choice.removeAttribute("hidden");
    choice.querySelectorAll("button").forEach(function (button) {
      button.addEventListener("click", function () {
        var on = button.getAttribute("aria-pressed") !== "true";
        button.setAttribute("aria-pressed", String(on));
        var layer = button.getAttribute("data-map-layer");
        if (layer === null) map.classList.toggle("maps--inverted", on);
        else show(map, layer, on);
      });
    });
  }

  /**
   * @param {Element} map
   * @param {string} layer
   * @param {boolean} on
   */
  function show(map, layer, on) {
    map.querySelectorAll("[data-layer]").forEach(function (group) {
      if (group.getAttribute("data-layer") === layer) group.classList.toggle("layer--hidden", !on);
    });
  }

  document.querySelectorAll("[data-map]").forEach(start);
})();
