// The bar of parts: marks the part that is on the screen and says when there is nothing more to scroll to.
(function () {
  "use strict";

  /**
   * @param {HTMLElement} list
   * @param {HTMLElement | undefined} link none: the bar goes back to its beginning
   */
  function reveal(list, link) {
    if (!link) {
      list.scrollLeft = 0;
      return;
    }
    var from = link.offsetLeft - list.offsetLeft;
    if (from < list.scrollLeft || from + link.offsetWidth > list.scrollLeft + list.clientWidth - 72) {
      list.scrollLeft = Math.max(0, from - 24);
    }
  }

  /** @param {HTMLElement} bar */
  function start(bar) {
    var list = bar.querySelector("ul");
    if (!list) return;
    var scroller = list;
    /** @type {Map<Element, HTMLAnchorElement>} */
    var links = new Map();
    list.querySelectorAll("a").forEach(function (link) {
      var part = document.getElementById(decodeURIComponent(link.hash.slice(1)));
      if (part) links.set(part, link);
    });

    function edge() {
      bar.classList.toggle("bar--end", scroller.scrollLeft + scroller.clientWidth >= scroller.scrollWidth - 2);
    }
    scroller.addEventListener("scroll", edge, { passive: true });
    // It looks as if it could be tapped, so it can; the keyboard and screen readers have the links themselves.
    var more = bar.querySelector(".bar__more");
    if (more) more.addEventListener("click", function () { scroller.scrollLeft += scroller.clientWidth * 0.7; });
    addEventListener("resize", edge);
    edge();

    if (!("IntersectionObserver" in window)) return;
    /** @type {HTMLAnchorElement | undefined} */
    var current;
    var first = links.keys().next().value;

    /** @param {HTMLAnchorElement | undefined} link */
    function mark(link) {
      if (link === current) return;
      if (current) current.removeAttribute("aria-current");
      if (link) link.setAttribute("aria-current", "true");
      current = link;
      reveal(scroller, link);
    }

    // A thin band in the upper third of the window: the part that crosses it is the one being read. Above the first
    // part, at the head of the page, none is.
    var watcher = new IntersectionObserver(function (entries) {
      entries.forEach(function (entry) {
        if (entry.isIntersecting) mark(links.get(entry.target));
      });
      if (first && first.getBoundingClientRect().top > innerHeight * 0.3) mark(undefined);
    }, { rootMargin: "-25% 0px -70% 0px" });
    links.forEach(function (_link, part) { watcher.observe(part); });
  }

  // A printed sheet shows what the screen folds away, also where the style sheet cannot open it.
  addEventListener("beforeprint", function () {
    document.querySelectorAll("details.more").forEach(function (fold) { fold.setAttribute("open", ""); });
  });

  document.querySelectorAll(".bar").forEach(function (bar) {
    if (bar instanceof HTMLElement) start(bar);
  });
})();
