// The search box in the head of every page: opens it, loads the index when it is first used, lists what matches.
// What matches is decided in finder-match.js; every word that is said comes from the build.
(function () {
  "use strict";

  /** @typedef {{kind: string, label: string, of: string, note: string, state: string, href: string, ask: boolean}} Hit */

  var form = document.querySelector("[data-finder]");
  if (!(form instanceof HTMLFormElement)) return;
  var finder = form;
  var input = /** @type {HTMLInputElement} */ (finder.querySelector("input"));
  var status = /** @type {HTMLElement} */ (finder.querySelector("[data-finder-status]"));
  var hits = /** @type {HTMLElement} */ (finder.querySelector("[data-finder-hits]"));
  var opener = document.querySelector("[data-finder-open]");
  var root = finder.getAttribute("data-root") || "";
  var home = finder.hasAttribute("data-finder-home");
  var MOST = { exact: 12, near: 5 };

  /** @type {any} What the index says and how it is searched; null until it is there. */
  var index = null;
  /** @type {((text: string) => any) | null} */
  var search = null;
  /** @type {any} */
  var found = null;
  var asked = false;
  var waiting = "loading";

  /** @param {string} name @returns {string} */
  function said(name) {
    return finder.getAttribute("data-" + name) || "";
  }

  /** @param {string} text @param {number} count @returns {string} */
  function counted(text, count) {
    return text.replace("{count}", String(count));
  }

  /**
   * @param {string} tag
   * @param {string} look
   * @param {string} text
   * @returns {HTMLElement}
   */
  function element(tag, look, text) {
    var made = document.createElement(tag);
    if (look) made.className = look;
    made.textContent = text;
    return made;
  }

  /** @param {string} address @param {() => void} then */
  function load(address, then) {
    var script = document.createElement("script");
    script.src = address;
    script.onload = then;
    script.onerror = function () {
      waiting = "failed";
      status.textContent = said(waiting);
    };
    document.head.append(script);
  }

  function ready() {
    var match = /** @type {any} */ (window).hardpointMatch;
    index = /** @type {any} */ (window).hardpointFinder;
    if (!match || !index || search) return;
    search = match.open(index);
    show();
  }

  function fetchIndex() {
    if (asked) return;
    asked = true;
    if (!(/** @type {any} */ (window).hardpointMatch)) load(root + "assets/hardpoint/finder-match.js", ready);
    load(root + "assets/hardpoint/finder-index.js", ready);
  }

  /** @param {Hit} hit @returns {HTMLElement} */
  function item(hit) {
    var made = document.createElement("li");
    var link = document.createElement("a");
    link.className = "hit";
    link.href = root + hit.href;
    link.append(element("span", "hit__kind", hit.kind), " ", element("b", "", hit.label));
    if (hit.of) link.append(" ", element("span", "", hit.of));
    if (hit.state) link.append(" ", element("span", hit.state === index.words.unknown ? "unknown" : "value--none", hit.state));
    if (hit.note) link.append(" ", element("span", "hit__note" + (hit.ask ? " hit__note--ask" : ""), hit.note));
    made.append(link);
    return made;
  }

  /**
   * @param {"exact" | "near"} name
   * @param {any} group
   * @returns {HTMLElement} A list of links; what does not fit is one button away.
   */
  function list(name, group) {
    var made = element("ul", "plain", "");
    made.setAttribute("role", "list");
    made.setAttribute("data-finder-list", name);
    var upto = Math.min(group.count, MOST[name]);
    for (var at = 0; at < upto; at += 1) made.append(item(group.at(at)));
    if (upto < group.count) {
      var rest = document.createElement("li");
      var button = /** @type {HTMLButtonElement} */ (element("button", "hit hit--all", counted(index.words.all, group.count)));
      button.type = "button";
      button.addEventListener("click", function () {
        for (var more = upto; more < group.count; more += 1) made.append(item(group.at(more)));
        rest.remove();
        var next = made.children[upto].querySelector("a");
        if (next) next.focus();
      });
      rest.append(button);
      made.append(rest);
    }
    return made;
  }

  function shown() {
    var parts = [];
    if (found.exact.count) parts.push(list("exact", found.exact));
    if (found.near.count) {
      parts.push(element("h2", "finder__near", index.words.near));
      if (!found.exact.count) parts.push(element("p", "", index.words.no_exact));
      parts.push(list("near", found.near));
    }
    if (!found.exact.count && index.visitors) {
      var link = /** @type {HTMLAnchorElement} */ (element("a", "hit hit--all", index.words.visitors));
      link.href = root + index.visitors;
      parts.push(link);
    }
    return parts;
  }

  /** @param {boolean} on While the page makes way, the box is its headline for those who listen to it. */
  function finding(on) {
    document.documentElement.classList.toggle("finding", on);
    var title = finder.querySelector("[data-finder-title]");
    if (!title) return;
    if (on) {
      title.setAttribute("role", "heading");
      title.setAttribute("aria-level", "1");
    } else {
      title.removeAttribute("role");
      title.removeAttribute("aria-level");
    }
  }

  function show() {
    var typed = input.value.trim();
    if (narrow) narrow(typed);
    // What was found must not stand right above the answers of another aircraft: the page makes way while one looks.
    finding(typed !== "" && !home && !finder.hidden);
    found = null;
    if (!typed || !search) {
      hits.replaceChildren();
      status.textContent = typed && asked ? said(waiting) : "";
      return;
    }
    found = search(typed);
    hits.replaceChildren.apply(hits, shown());
    var near = found.near.count ? ". " + index.words.near + ": " + found.near.count : "";
    status.textContent = found.exact.count || near ? counted(index.words.found, found.exact.count) + near : index.words.nothing;
  }

  /** @type {((typed: string) => void) | null} The home page shows only the tiles that are hits. */
  var narrow = null;
  if (home) {
    var tiles = Array.from(document.querySelectorAll("[data-find]")).map(function (tile) {
      return /** @type {HTMLElement} */ (tile);
    });
    var parts = Array.from(document.querySelectorAll(".part")).map(function (part) {
      return { part: /** @type {HTMLElement} */ (part), tiles: Array.from(tiles.keys()).filter(function (at) { return part.contains(tiles[at]); }) };
    });
    var fits = /** @type {any} */ (window).hardpointMatch.tiles(tiles.map(function (tile) {
      return { codes: (tile.dataset.findCodes || "").split("|"), words: tile.dataset.find || "" };
    }));
    narrow = function (typed) {
      var hit = fits(typed);
      // Nothing fits: the list stays, so that somebody who cannot spell the name can still choose by number.
      if (typed && !hit.some(Boolean)) {
        typed = "";
        hit = fits("");
      }
      document.documentElement.classList.toggle("narrowed", typed !== "");
      parts.forEach(function (entry) {
        var seen = entry.tiles.some(function (at) { return hit[at]; });
        entry.part.hidden = !seen && typed !== "";
        // A part that is hidden whole is left as it is inside: that is what costs time with many tiles.
        if (seen) entry.tiles.forEach(function (at) { tiles[at].hidden = !hit[at]; });
      });
    };
  }

  /** @param {boolean} on */
  function open(on) {
    if (opener) {
      finder.hidden = !on;
      opener.setAttribute("aria-expanded", String(on));
    }
    if (on) {
      fetchIndex();
      input.focus();
    } else {
      input.value = "";
      show();
      if (opener instanceof HTMLElement) opener.focus();
      else input.focus();
    }
  }

  /** @param {number} by Moves between the box and the hits. */
  function move(by) {
    var stops = /** @type {HTMLElement[]} */ ([input].concat(Array.from(hits.querySelectorAll("a, button"))));
    var at = stops.indexOf(/** @type {HTMLElement} */ (document.activeElement));
    var next = stops[Math.max(at, 0) + by];
    if (next) next.focus();
  }

  finder.addEventListener("submit", function (event) {
    event.preventDefault();
    if (!found || !found.exact.count) return;
    var one = /** @type {any} */ (window).hardpointMatch.choice(found);
    if (one) location.assign(root + one.href);
    else hits.focus();
  });
  finder.addEventListener("keydown", function (event) {
    if (event.isComposing) return;
    if (event.key === "Escape") open(false);
    else if (event.key === "ArrowDown") move(1);
    else if (event.key === "ArrowUp") move(-1);
    else return;
    event.preventDefault();
  });
  input.addEventListener("focus", fetchIndex);
  input.addEventListener("input", show);
  hits.addEventListener("click", function (event) {
    // A place on this very page: the page does not change, so the box has to make way.
    var link = event.target instanceof Element ? event.target.closest("a") : null;
    if (link && opener && link.pathname === location.pathname) {
      finder.hidden = true;
      finding(false);
      opener.setAttribute("aria-expanded", "false");
    }
  });
  document.querySelectorAll("[data-finder-plain]").forEach(function (link) { link.setAttribute("hidden", ""); });
  if (opener instanceof HTMLElement) {
    opener.hidden = false;
    opener.addEventListener("click", function () { open(finder.hidden); });
  } else {
    finder.hidden = false;
    if (input.value) fetchIndex();
    show();
  }
})();
