// The finder of the home page: shows the tiles whose number, name, tail or sign begins with what was typed.
(function () {
  "use strict";

  /**
   * @param {string} text
   * @returns {string} Small letters, one space between words, hyphens as spaces: "QQ-BOD" and "qq bod" are the same.
   */
  function plain(text) {
    return text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, " ").trim();
  }

  /**
   * @param {string} hay as `plain` makes it
   * @param {string} needle as `plain` makes it
   * @returns {boolean} Whether each typed word begins a word of the tile, or the run-together tail holds it.
   */
  function matches(hay, needle) {
    return needle.split(" ").every(function (word) {
      return (" " + hay).indexOf(" " + word) >= 0;
    }) || (needle.length > 2 && hay.replace(/ /g, "").indexOf(needle.replace(/ /g, "")) >= 0);
  }

  var form = document.querySelector("[data-finder]");
  var input = form && form.querySelector("input");
  var count = document.querySelector("[data-finder-count]");
  if (!(form instanceof HTMLFormElement) || !input || !count) return;

  /** @type {string[]} What to say for each number found; all words come from the page. */
  var texts = JSON.parse(count.getAttribute("data-say-found") || "[]");
  /** @type {{tile: HTMLElement, hay: string}[]} */
  var tiles = [];
  document.querySelectorAll("[data-find]").forEach(function (tile) {
    if (tile instanceof HTMLElement) tiles.push({ tile: tile, hay: plain(tile.getAttribute("data-find") || "") });
  });

  function show() {
    var needle = plain(input ? input.value : "");
    var found = 0;
    tiles.forEach(function (entry) {
      entry.tile.hidden = needle !== "" && !matches(entry.hay, needle);
      if (!entry.tile.hidden) found += 1;
    });
    document.querySelectorAll(".part").forEach(function (part) {
      if (part instanceof HTMLElement) part.hidden = needle !== "" && !part.querySelector("[data-find]:not([hidden])");
    });
    if (!count) return;
    // The last text is for every greater number.
    var said = found ? texts[Math.min(found, texts.length - 1)] : count.getAttribute("data-say-none") || "";
    count.textContent = needle === "" ? "" : said.replace("{count}", String(found));
  }

  form.hidden = false;
  form.addEventListener("submit", function (event) {
    event.preventDefault();
    var first = document.querySelector("[data-find]:not([hidden]) a");
    if (first instanceof HTMLElement && input && input.value) first.focus();
  });
  input.addEventListener("input", show);
  show();
})();
