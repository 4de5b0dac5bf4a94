// A board: search, narrow, sort, choice of facts. It hides and moves rows that are all there; it works nothing out.
// The state stands in the address (#q=...&sort=...&turn=1&facts=a,b&only-x=...), so that a view can be sent to somebody.
// A bare #row in the address, as the links from other pages have it, shows that row.
(function () {
  "use strict";

  /** @typedef {{row: HTMLTableRowElement, cells: HTMLElement[], hay: string, place: number}} Entry */
  /** @typedef {{q: string, sort: string, turn: boolean, facts: string[], only: string[]}} View */

  var table = document.querySelector("table[data-compare]");
  var form = document.querySelector("[data-compare-tools]");
  if (!(table instanceof HTMLTableElement) || !(form instanceof HTMLFormElement)) return;
  var tools = form;
  var body = table.tBodies[0];
  var heads = Array.from(table.tHead ? table.tHead.rows[0].cells : []);
  var columns = heads.map(function (head) { return head.getAttribute("data-column") || ""; });
  var search = /** @type {HTMLInputElement} */ (tools.querySelector("input[type=search]"));
  var order = /** @type {HTMLSelectElement} */ (tools.querySelector("[data-order-by]"));
  var facets = Array.from(tools.querySelectorAll("select[data-facet]")).map(function (facet) {
    return /** @type {HTMLSelectElement} */ (facet);
  });
  var clear = /** @type {HTMLButtonElement} */ (tools.querySelector("[data-compare-clear]"));
  var turn = /** @type {HTMLButtonElement} */ (tools.querySelector("[data-compare-turn]"));
  var count = /** @type {HTMLElement} */ (tools.querySelector("[data-compare-count]"));
  var boxes = Array.from(tools.querySelectorAll("input[type=checkbox]")).map(function (box) {
    return /** @type {HTMLInputElement} */ (box);
  });
  var usual = chosen();

  /** @type {Entry[]} */
  var entries = Array.from(body.rows).map(function (row, place) {
    var words = (row.getAttribute("data-words") || "") + " " + (row.textContent || "");
    return { row: row, cells: Array.from(row.cells), hay: plain(words), place: place };
  });
  var collator = new Intl.Collator(document.documentElement.lang || "en", { numeric: true });

  /**
   * @param {string} text
   * @returns {string} Small letters without hyphens and doubled spaces: "HW-18" is found as "hw18".
   */
  function plain(text) {
    return text.toLowerCase().replace(/-/g, "").replace(/\s+/g, " ").trim();
  }

  /** @returns {string[]} The facts that are ticked. */
  function chosen() {
    return boxes.filter(function (box) { return box.checked; }).map(function (box) { return box.value; });
  }

  /** @returns {View} */
  function read() {
    return { q: search.value, sort: order.value, turn: turn.getAttribute("aria-pressed") === "true", facts: chosen(),
      only: facets.map(function (facet) { return facet.value; }) };
  }

  /**
   * @param {Entry} a
   * @param {Entry} b
   * @param {number} column
   * @returns {number} By the rank that the build gave; by the written words where it gave none.
   */
  function compare(a, b, column) {
    var left = a.cells[column].getAttribute("data-order");
    var right = b.cells[column].getAttribute("data-order");
    if (left !== null && right !== null) return Number(left) - Number(right);
    return collator.compare(a.cells[column].textContent || "", b.cells[column].textContent || "");
  }

  /**
   * @param {Entry} entry
   * @param {number} column
   * @returns {boolean} Whether there is nothing to sort by: it stands last, whichever way the order goes.
   */
  function placeless(entry, column) {
    return Number(entry.cells[column].getAttribute("data-order")) < 0;
  }

  /** @param {View} view */
  function sort(view) {
    var column = columns.indexOf(view.sort);
    var sorted = entries.slice().sort(function (a, b) {
      var absent = column < 0 ? 0 : Number(placeless(a, column)) - Number(placeless(b, column));
      if (absent) return absent;
      var by = column < 0 ? 0 : compare(a, b, column);
      return (by || a.place - b.place) * (view.turn ? -1 : 1);
    });
    body.append.apply(body, sorted.map(function (entry) { return entry.row; }));
    heads.forEach(function (head, index) {
      if (index === column) head.setAttribute("aria-sort", view.turn ? "descending" : "ascending");
      else head.removeAttribute("aria-sort");
    });
  }

  /**
   * @param {string} name
   * @param {Record<string, number>} numbers
   * @returns {string} A text that the page brings along, its {names} filled in.
   */
  function told(name, numbers) {
    var text = tools.getAttribute("data-say-" + name) || "";
    return text.replace(/\{(\w+)\}/g, function (whole, key) { return key in numbers ? String(numbers[key]) : whole; });
  }

  /**
   * @param {Entry} entry
   * @param {string[]} only one answer per facet, "" = any
   * @returns {boolean} Whether the row gives all of these answers.
   */
  function narrowed(entry, only) {
    return facets.every(function (facet, index) {
      var answers = (entry.row.getAttribute("data-only-" + facet.getAttribute("data-facet")) || "").split("|");
      return only[index] === "" || answers.indexOf(only[index]) >= 0;
    });
  }

  /** @param {View} view */
  function filter(view) {
    var words = plain(view.q).split(" ").filter(Boolean);
    var found = 0;
    entries.forEach(function (entry) {
      var hit = words.every(function (word) { return entry.hay.indexOf(word) >= 0; }) && narrowed(entry, view.only);
      entry.row.hidden = !hit;
      if (hit) found += 1;
    });
    count.textContent = told("count", { found: found, total: entries.length }) + ", " +
      told("facts", { shown: view.facts.length, facts: boxes.length }) + (words.length ? "; " + told("deep", {}) : "");
  }

  /**
   * What one sorts by is seen: its fact is ticked, stands first on a card, and is scrolled to where there are columns.
   * A column that is in view stays where it is, so that the next click on its head meets the same head.
   * @param {View} view
   */
  function bring(view) {
    var column = columns.indexOf(view.sort);
    entries.forEach(function (entry) {
      entry.cells.forEach(function (cell, index) { cell.classList.toggle("sorted", index === column); });
    });
    var board = body.closest(".board");
    if (column < 1 || !board) return;
    var head = heads[column].getBoundingClientRect(), frame = board.getBoundingClientRect();
    var from = frame.left + heads[0].getBoundingClientRect().width;
    if (head.left < from - 1 || head.right > frame.right + 1) board.scrollLeft += head.left - from;
  }

  /** A fact that is sorted by is among those that are shown. */
  function tick() {
    boxes.forEach(function (box) { box.checked = box.checked || box.value === order.value; });
  }

  /** @param {View} view */
  function choose(view) {
    columns.forEach(function (id, index) {
      if (index === 0) return;
      var hidden = view.facts.indexOf(id) < 0;
      heads[index].hidden = hidden;
      entries.forEach(function (entry) { entry.cells[index].hidden = hidden; });
    });
  }

  /** @param {View} view */
  function remember(view) {
    var parts = [];
    if (view.q) parts.push("q=" + encodeURIComponent(view.q));
    if (view.sort) parts.push("sort=" + encodeURIComponent(view.sort));
    if (view.turn) parts.push("turn=1");
    facets.forEach(function (facet, index) {
      if (view.only[index]) parts.push(facet.id + "=" + encodeURIComponent(view.only[index]));
    });
    if (view.facts.join() !== usual.join()) parts.push("facts=" + view.facts.map(encodeURIComponent).join(","));
    var hash = parts.length ? "#" + parts.join("&") : location.pathname + location.search;
    try {
      history.replaceState(null, "", hash);
    } catch (error) {
      // Some browsers refuse this on file://: the view works, only the address stays.
    }
  }

  /** @param {string} id Of a row that was linked to: it shows whatever was chosen before. */
  function point(id) {
    var row = id && document.getElementById(id);
    if (!row || !(row instanceof HTMLTableRowElement) || !row.hidden) return;
    reset();
    all();
    row.scrollIntoView();
  }

  function reset() {
    search.value = "";
    order.value = "";
    turn.setAttribute("aria-pressed", "false");
    facets.forEach(function (facet) { facet.value = ""; });
    boxes.forEach(function (box) { box.checked = usual.indexOf(box.value) >= 0; });
  }

  /** What narrows or sorts the rows is never out of sight: a short list must not pass for the whole. */
  function unfold() {
    var view = read();
    var set = view.sort || view.turn || view.only.some(Boolean) || view.facts.join() !== usual.join();
    var more = tools.querySelector("[data-compare-more]");
    if (more && set) more.setAttribute("open", "");
  }

  function recall() {
    var hash = location.hash.slice(1);
    if (hash.indexOf("=") < 0) {
      point(decodeURIComponent(hash));
      return;
    }
    var stored = new URLSearchParams(hash);
    search.value = stored.get("q") || "";
    order.value = columns.indexOf(stored.get("sort") || "") < 0 ? "" : stored.get("sort") || "";
    turn.setAttribute("aria-pressed", String(stored.get("turn") === "1"));
    facets.forEach(function (facet) {
      var wanted = stored.get(facet.id) || "";
      facet.value = Array.from(facet.options).some(function (option) { return option.value === wanted; }) ? wanted : "";
    });
    var facts = stored.has("facts") ? (stored.get("facts") || "").split(",") : usual;
    boxes.forEach(function (box) { box.checked = facts.indexOf(box.value) >= 0; });
    unfold();
  }

  /** @param {(view: View) => void} act */
  function after(act) {
    var view = read();
    act(view);
    filter(view);
    remember(view);
  }

  function all() {
    tick();
    var view = read();
    choose(view);
    sort(view);
    filter(view);
    bring(view);
  }

  heads.forEach(function (head, index) {
    var button = document.createElement("button");
    button.type = "button";
    button.textContent = head.textContent;
    button.addEventListener("click", function () {
      var again = order.value === columns[index];
      turn.setAttribute("aria-pressed", String(again && turn.getAttribute("aria-pressed") !== "true"));
      order.value = columns[index];
      after(sort);
      bring(read());
    });
    // On a phone the heads are read out only: the words stay, the button is not shown and takes no focus.
    var words = document.createElement("span");
    words.textContent = head.textContent;
    head.replaceChildren(words, button);
  });
  search.addEventListener("input", function () { after(filter); });
  order.addEventListener("change", function () {
    all();
    remember(read());
  });
  turn.addEventListener("click", function () {
    turn.setAttribute("aria-pressed", String(turn.getAttribute("aria-pressed") !== "true"));
    after(sort);
  });
  facets.forEach(function (facet) { facet.addEventListener("change", function () { after(filter); }); });
  clear.addEventListener("click", function () {
    reset();
    all();
    remember(read());
  });
  boxes.forEach(function (box) {
    box.addEventListener("change", function () {
      if (!box.checked && order.value === box.value) order.value = "";
      all();
      remember(read());
    });
  });
  tools.addEventListener("submit", function (event) { event.preventDefault(); });
  addEventListener("hashchange", function () { recall(); all(); });
  tools.hidden = false;
  table.classList.add("chosen");
  recall();
  all();
})();
