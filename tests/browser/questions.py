"""Questions to a document in the browser, as functions of its own language. Each says what it gives."""

from __future__ import annotations

FOCUSED = """() => {
    const e = document.activeElement;
    if (!e || e === document.body) return null;
    const r = e.getBoundingClientRect();
    const bar = document.querySelector("[aria-label='Parts of this page']");
    const covered = bar && !bar.contains(e) && getComputedStyle(bar).position === "fixed";
    const under = covered ? bar.getBoundingClientRect().top : innerHeight;
    const part = (Math.max(r.top, 0) + Math.min(r.bottom, under)) / 2;
    const middle = r.height > under / 2 ? part : r.top + r.height / 2;
    const bars = "[aria-label='Parts of this page']";
    const places = [["bar", bars], ["head", "[aria-label='Site']"], ["content", "#content"]];
    const place = places.find(([, selector]) => e.closest(selector));
    const name = e.getAttribute("aria-label") || e.textContent || e.id;
    return {
        where: place ? place[0] : "before", tag: e.tagName, href: e.getAttribute("href"),
        name: name.trim().replace(/\\s+/g, " ").slice(0, 60),
        seen: r.width > 0 && r.height > 0 && middle >= 0 && middle <= under,
    };
}"""
"""What has the focus: where on the page, which tag, href and name, and whether it can be seen. None: nothing has it."""

OUTLINE = """() => {
    const focused = document.activeElement;
    const styles = [getComputedStyle(focused), getComputedStyle(focused, "::after")];
    return Math.max(...styles.map(s => s.outlineStyle === "none" ? 0 : parseFloat(s.outlineWidth)));
}"""
"""How wide the mark of what has the focus is, in pixels."""

TARGETS = """() => {
    const kinds = "a[href], button, summary, input, select";
    const all = [...document.querySelectorAll(kinds)].filter(
        e => e.checkVisibility() && e.getBoundingClientRect().width > 1 && !e.matches(".skip"));
    const at = (x, y) => {
        const e = document.elementFromPoint(x, y);
        return e && e.closest(kinds + ", label");
    };
    return all.map(e => {
        e.scrollIntoView({block: "center", inline: "center", behavior: "instant"});
        const r = e.getClientRects()[0];
        const x = r.left + Math.min(r.width / 2, 30), y = r.top + r.height / 2;
        const mine = hit => hit === e || (hit && hit.tagName === "LABEL" && hit.contains(e));
        let top = y, bottom = y;
        while (top > 0 && mine(at(x, top - 1))) top -= 1;
        while (bottom < innerHeight && mine(at(x, bottom + 1))) bottom += 1;
        const name = (e.textContent || e.id).trim().replace(/\\s+/g, " ").slice(0, 60);
        return {name, height: Math.round(bottom - top), hit: mine(at(x, y))};
    });
}"""
"""Every visible link, button and field: its name, how high the area is in which a touch hits it, whether any does."""

TEXTS = """scope => {
    const ground = e => {
        for (; e; e = e.parentElement) {
            const colour = getComputedStyle(e).backgroundColor;
            if (colour !== "rgba(0, 0, 0, 0)" && colour !== "transparent") return colour;
        }
        return "rgb(255, 255, 255)";
    };
    const kind = e => {
        if (e.closest("ol > li") && e.closest("#open, #free, #shut-down")) return "step";
        if (e.closest("dd") && !e.closest("footer, p")) return "answer";
        return e.closest("#never li, #differences li, #approach li") ? "line" : "other";
    };
    const walker = document.createTreeWalker(document.querySelector(scope), NodeFilter.SHOW_TEXT);
    const found = [];
    for (let node; (node = walker.nextNode());) {
        const e = node.parentElement;
        if (!node.data.trim() || e.closest("script, style, svg, option, .aside")) continue;
        if (!e.checkVisibility({visibilityProperty: true}) || getComputedStyle(e).clipPath !== "none") continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        const box = range.getBoundingClientRect();
        if (box.width < 2 || box.height < 2) continue;
        const style = getComputedStyle(e);
        found.push({
            text: node.data.trim().slice(0, 50), size: parseFloat(style.fontSize),
            colour: style.color, ground: ground(e), kind: kind(e),
        });
    }
    return found;
}"""
"""Every visible text below a selector: its size in pixels, colour, the colour it stands on, and what kind of text."""

PRINTABLE = """() => {
    const navigation = "script, style, nav, form, summary, .away, .maps__choice, .head, .skip, .aside, [hidden]";
    const screen = navigation + ", svg title, svg desc, thead";
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found = [];
    for (let node; (node = walker.nextNode());) {
        const e = node.parentElement;
        const hidden = e.closest(screen) || getComputedStyle(e).visibility === "hidden";
        if (node.data.trim() && !hidden) found.push(node.data);
    }
    return found;
}"""
"""Every text of a page but that of its navigation, its lists of links that lead away, and its forms. A fold that is
closed counts as open (paper has no taps); the words that only say what it holds do not count."""

TOO_WIDE = """limit => [...document.querySelectorAll("#content *")]
    .filter(e => e.checkVisibility() && !e.closest(".aside, thead, svg") && e.getBoundingClientRect().right > limit)
    .map(e => `${e.tagName} ${Math.round(e.getBoundingClientRect().right)}: ${e.textContent.trim().slice(0, 40)}`)"""
"""What of the content reaches further to the right than a number of pixels."""
