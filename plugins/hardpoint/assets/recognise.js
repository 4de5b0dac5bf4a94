// The sight key: an answer that is opened becomes the address, and the address opens its answers; back goes back.
(function () {
  "use strict";
  var following = false;

  /** @param {Element} answer */
  function closeOthers(answer) {
    if (!answer.parentElement) return;
    Array.prototype.forEach.call(answer.parentElement.children, function (other) {
      if (other !== answer && other instanceof HTMLDetailsElement) other.open = false;
    });
  }

  /** Opens what the address names, and all it lies in. */
  function follow() {
    var wanted = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    following = true;
    document.querySelectorAll(".key__answer").forEach(function (answer) {
      if (answer instanceof HTMLDetailsElement) answer.open = Boolean(wanted && answer.contains(wanted));
    });
    // "toggle" comes later, in a task of its own.
    setTimeout(function () { following = false; }, 0);
  }

  document.querySelectorAll(".key__answer").forEach(function (answer) {
    answer.addEventListener("toggle", function () {
      if (following || !(answer instanceof HTMLDetailsElement) || !answer.open) return;
      closeOthers(answer);
      if (location.hash !== "#" + answer.id) location.hash = answer.id;
    });
  });
  addEventListener("hashchange", follow);
  if (location.hash) follow();
})();
