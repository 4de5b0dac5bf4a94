// Sunlight: black on white, kept between pages. Loaded in the head, before the first paint.
(function () {
  "use strict";
  var KEY = "hardpoint-light";
  var root = document.documentElement;

  /** @returns {boolean} Whether sunlight was chosen; storage may be refused, on file:// above all. */
  function kept() {
    try {
      return localStorage.getItem(KEY) === "sun";
    } catch (error) {
      return false;
    }
  }

  /** @param {boolean} sun */
  function keep(sun) {
    try {
      if (sun) localStorage.setItem(KEY, "sun");
      else localStorage.removeItem(KEY);
    } catch (error) {
      // The choice then holds for this page only.
    }
  }

  /** @param {boolean} sun */
  function show(sun) {
    if (sun) root.setAttribute("data-light", "sun");
    else root.removeAttribute("data-light");
    document.querySelectorAll("[data-sunlight]").forEach(function (button) {
      button.setAttribute("aria-pressed", String(sun));
    });
  }

  /** @param {Event} event */
  function turn(event) {
    var sun = !(event.currentTarget instanceof Element && event.currentTarget.getAttribute("aria-pressed") === "true");
    keep(sun);
    show(sun);
  }

  show(kept());
  document.addEventListener("DOMContentLoaded", function () {
    document.querySelectorAll("[data-sunlight]").forEach(function (button) {
      button.removeAttribute("hidden");
      button.addEventListener("click", turn);
    });
    show(kept());
  });
})();
