// The search box's rules of matching. Nothing here touches the page: the index goes in, hits come out.
//
// Spaces, hyphens, case and diacritics do not count. A typed word fits where a word begins, and may run on over the space
// or hyphen behind it; digits end where it ends. Numbers and registrations fit whole or not at all. What is a slip
// or two away is near, never a hit: two where both are in long words, or in one word of eight letters.
(function () {
  "use strict";

  /** @typedef {{codes: string[], tails: string[], hay: string}} Part what one entry is found by; `hay` as `hay` makes it */
  /** @typedef {{exact: number, near: number, far: number}} Fit which runs of the query fit a part, which fit with one slip, which with all that is forgiven: one bit for each */
  /** @typedef {{runs: {from: number, to: number, text: string}[], words: number, whole: string}} Query */
  /** @typedef {{kind: string, label: string, of: string, note: string, state: string, href: string, ask: boolean, type: boolean}} Hit */
  /** @typedef {{count: number, at: (index: number) => Hit, whole: number, best: (index: number) => Hit}} Hits in their order; `whole` of them, `best(0)` and on, are all that was typed and nothing else */
  /** @typedef {{own: Part, beside: Part, names: string[], hit: () => Hit}} Entry */
  /** @typedef {{part: Part, name: string, row: any[]}} Place */
  /** @typedef {{part: Part, of: number, places: number[], differs: number[], own: number[], flies: boolean, ask: boolean, label: string, note: string, href: (row: any[]) => string}} Owner */

  var LETTERS = /** @type {Record<string, string>} */ ({
    "ß": "ss", "ø": "o", "ł": "l", "æ": "ae", "œ": "oe", "đ": "d", "ð": "d", "þ": "th", "ı": "i", "ς": "σ",
  });
  var MOST_RUNS = 30; // one bit of a number for each
  var FITS = 3, NEAR = 2, FAR = 1; // `far` uses up the two slips that are forgiven in all, `near` one of them
  var LONG = 5, VERY_LONG = 8; // letters: a slip in a shorter word is `far`; two slips are forgiven from the second on

  /** @param {string} text @returns {string[]} Its words in small letters without diacritics. */
  function words(text) {
    var plain = text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().normalize("NFKD").replace(/\p{M}/gu, "");
    return plain.replace(/[ßøłæœđðþıς]/g, function (letter) { return LETTERS[letter]; }).split(/[^\p{L}\p{N}]+/u).filter(Boolean);
  }

  /** @param {string} text @returns {string} The words run together. */
  function joined(text) {
    return words(text).join("");
  }

  /** @param {string} code @returns {string} 07 and 7 are one number when they are shouted. */
  function shouted(code) {
    return digits(code) ? code.replace(/^0+(?=.)/, "") : code;
  }

  /** @param {string} text @returns {boolean} */
  function digits(text) {
    return /^[0-9]+$/.test(text);
  }

  /** @param {string[]} texts @returns {string} Every beginning of a word with all that follows it: "|magnetoleft|left|". */
  function hay(texts) {
    var found = /** @type {Record<string, boolean>} */ ({});
    texts.forEach(function (text) {
      var list = words(text);
      list.forEach(function (_, from) {
        for (var to = from + 1; to <= list.length; to += 1) {
          // A word of digits behind another one would seem to be part of it: there the run also ends by itself.
          var ends = to === list.length || (/[0-9]$/.test(list[to - 1]) && /^[0-9]/.test(list[to]));
          if (ends) found[list.slice(from, to).join("")] = true;
        }
      });
    });
    return "|" + Object.keys(found).join("|") + "|";
  }

  /**
   * @param {string[]} texts
   * @param {string[]} [numbers] display numbers
   * @param {string[]} [tails] registrations
   * @returns {Part}
   */
  function part(texts, numbers, tails) {
    var ends = (tails || []).map(function (tail) { return joined(tail.slice(tail.indexOf("-") + 1)); });
    var codes = (numbers || []).map(function (number) { return shouted(joined(number)); });
    return { codes: codes.concat((tails || []).map(joined)).filter(Boolean), tails: ends.filter(Boolean), hay: hay(texts) };
  }

  /** @param {string} text @returns {Query} Every run of words that stand together, as many as there is room for. */
  function read(text) {
    var list = words(text).slice(0, MOST_RUNS);
    var longest = list.length;
    while (longest * list.length - longest * (longest - 1) / 2 > MOST_RUNS) longest -= 1;
    var runs = [];
    for (var from = 0; from < list.length; from += 1) {
      for (var to = from + 1; to <= Math.min(list.length, from + longest); to += 1) {
        var run = list.slice(from, to).join("");
        runs.push({ from: from, to: to, text: run });
      }
    }
    return { runs: runs, words: list.length, whole: list.join("") };
  }

  /**
   * @param {string} typed
   * @param {string} other
   * @param {number} left how many slips are forgiven: a letter changed, missing, too many, or two neighbours swapped
   * @param {boolean} whole whether `other` must end where `typed` ends; else it may go on
   * @param {number} [from] where to begin in `typed`
   * @param {number} [over] where to begin in `other`
   * @returns {boolean}
   */
  function slips(typed, other, left, whole, from, over) {
    var at = from || 0, there = over || 0;
    while (at < typed.length && typed.charCodeAt(at) === other.charCodeAt(there)) {
      at += 1;
      there += 1;
    }
    if (at === typed.length) return !whole || other.length - there <= left;
    if (!left) return false;
    if (slips(typed, other, left - 1, whole, at + 1, there)) return true;
    if (there === other.length) return false;
    if (slips(typed, other, left - 1, whole, at + 1, there + 1)) return true;
    if (slips(typed, other, left - 1, whole, at, there + 1)) return true;
    return at + 1 < typed.length && typed.charCodeAt(at) === other.charCodeAt(there + 1) &&
      typed.charCodeAt(at + 1) === other.charCodeAt(there) && slips(typed, other, left - 1, whole, at + 2, there + 2);
  }

  /** @param {string} run @param {Part} where @returns {boolean} */
  function nearCode(run, where) {
    return where.codes.some(function (code) {
      if (run === code) return false;
      if (code.startsWith(run)) return true;
      return slips(run, code, 1, true) && (run.length > 1 || code.length > 1);
    }) || (run.length > 1 && where.tails.indexOf(run) >= 0);
  }

  /** @param {string} run @param {string} text as `hay` makes it @returns {number} NEAR, FAR or 0. Two letters are near everything. */
  function nearWord(run, text) {
    if (run.length < 3) return 0;
    var plain = !/[0-9]/.test(run);
    var one = plain && run.length >= LONG ? NEAR : FAR, two = plain && run.length >= VERY_LONG;
    var first = run.charCodeAt(0), second = run.charCodeAt(1), found = 0;
    for (var from = 1; from < text.length; ) {
      var a = text.charCodeAt(from), b = text.charCodeAt(from + 1);
      var end = text.indexOf("|", from);
      // One slip leaves the first letter or the second where it was, or moves it by one.
      var close = a === first || b === second || a === second || b === first;
      if ((close || two) && end - from >= run.length - (two ? 2 : 1)) {
        var other = text.slice(from, end);
        if (close && slips(run, other, 1, false)) return one;
        if (two && !found && slips(run, other, 2, false)) found = FAR;
      }
      from = end + 1;
    }
    return found;
  }

  /** @param {string} run @param {string} text as `hay` makes it @returns {boolean} Digits fit whole: 1 does not find 18. */
  function fitsWord(run, text) {
    var begins = "|" + run;
    var at = text.indexOf(begins);
    if (at < 0 || !digits(run)) return at >= 0;
    while (at >= 0 && digits(text.charAt(at + begins.length))) at = text.indexOf(begins, at + 1);
    return at >= 0;
  }

  /** @param {string} run @param {Part} where @returns {boolean} */
  function fitsExactly(run, where) {
    if (fitsWord(run, where.hay)) return true;
    return where.codes.length > 0 && (where.codes.indexOf(run) >= 0 || where.codes.indexOf(shouted(run)) >= 0);
  }

  /** @param {string} run @param {Part} where @returns {number} FITS, NEAR, FAR or 0 */
  function fits(run, where) {
    if (fitsExactly(run, where)) return FITS;
    return nearWord(run, where.hay) || (where.codes.length > 0 && nearCode(shouted(run), where) ? FAR : 0);
  }

  /** @param {Query} query @param {(run: number) => number} told as `fits` @returns {Fit} */
  function collected(query, told) {
    var fit = { exact: 0, near: 0, far: 0 };
    for (var run = 0; run < query.runs.length; run += 1) {
      var how = told(run);
      if (how === FITS) fit.exact |= 1 << run;
      else if (how === NEAR) fit.near |= 1 << run;
      else if (how) fit.far |= 1 << run;
    }
    return fit;
  }

  /** @param {Query} query @param {Part} where @returns {Fit} */
  function fit(query, where) {
    return collected(query, function (run) { return fits(query.runs[run].text, where); });
  }

  /**
   * Whether the runs that fit make up the whole query, at least one of them in the entry's own words.
   * @param {Query} query
   * @param {Fit} own
   * @param {Fit} beside
   * @returns {number} 2 = exactly, 1 = with a slip or two, 0 = not
   */
  function verdict(query, own, beside) {
    // reached[n]: in which ways the first n words can be made up. Two bits for each number of slips from 0 to 2: with a
    // run in the entry's own words; with runs beside them only.
    var reached = [2];
    for (var at = 1; at <= query.words; at += 1) reached.push(0);
    query.runs.forEach(function (run, number) {
      var bit = 1 << number;
      var here = reached[run.from];
      if (!here) return;
      var owned = (here | here >> 1) & 21;
      if (own.exact & bit) reached[run.to] |= owned;
      if (beside.exact & bit) reached[run.to] |= here;
      if (own.near & bit) reached[run.to] |= owned << 2 & 63;
      if (beside.near & bit) reached[run.to] |= here << 2 & 63;
      if (own.far & bit) reached[run.to] |= owned << 4 & 63;
      if (beside.far & bit) reached[run.to] |= here << 4 & 63;
    });
    var end = reached[query.words];
    return end & 1 ? 2 : end & 20 ? 1 : 0;
  }

  /**
   * @param {any} index as pages/finder.py writes it
   * @returns {(text: string) => {exact: Hits, near: Hits}}
   */
  function open(index) {
    var say = index.words;
    /** @type {Place[]} */
    var places = index.places.map(function (/** @type {any[]} */ row) {
      if (row[2].endsWith("-")) row[2] += row[3].toLowerCase().replace(/ /g, "-");
      return { part: part([row[3], row[4] || "", index.kinds[row[0]]]), name: joined(row[3]), row: row };
    });

    /** @param {number[]} steps @returns {number[]} Numbers of places out of their distances, kind by kind. */
    function counted(steps) {
      var at = -1;
      var numbers = steps.map(function (step) { return at += step; });
      return numbers.sort(function (a, b) { return places[a].row[0] - places[b].row[0] || a - b; });
    }

    var types = index.types.map(function (/** @type {any[]} */ row) {
      return { id: row[0], name: row[1], also: row[2], role: row[3], places: counted(row[4]), names: [row[0], row[1]].concat(row[2]) };
    });
    var numbersOf = /** @type {Record<string, string[]>} */ ({});
    var slotsOf = /** @type {Record<string, string[]>} */ ({});
    index.numbers.forEach(function (/** @type {any[]} */ row) {
      var key = row[3] >= 0 ? "tail" + row[3] : "type" + row[2];
      (numbersOf[key] = numbersOf[key] || []).push(row[0]);
      (slotsOf[key] = slotsOf[key] || []).push(say.slot.replace("{number}", row[0]).replace("{day}", index.days[row[1]][0]));
    });

    /** @param {any[]} row @returns {string} */
    function tailPage(row) {
      return row[2] || "tails/" + row[0] + ".html";
    }

    /** @param {string} kind @param {string} label @param {string} of @param {string} note @param {string} href @returns {Hit} */
    function hit(kind, label, of, note, href) {
      return { kind: kind, label: label, of: of, note: note, state: "", href: href, ask: false, type: false };
    }

    /** @type {Entry[]} */
    var entries = [];
    /** @type {number[]} Where each group of entries ends. */
    var ends = [];
    index.numbers.forEach(function (/** @type {any[]} */ row) {
      var type = types[row[2]], tail = row[3] >= 0 ? index.tails[row[3]] : null, day = index.days[row[1]];
      entries.push({
        own: part(type.names.concat([day[0], type.role]), [row[0]]),
        beside: part([say.number, day[1]], [], tail ? [tail[0]] : []),
        names: [shouted(joined(row[0]))],
        hit: function () {
          var of = type.name + (tail ? " " + tail[0] : "") + ", " + day[0];
          return hit(say.number, row[0], of, row[4] || "", tail ? tailPage(tail) : "types/" + type.id + ".html");
        },
      });
    });
    ends.push(entries.length);
    index.tails.forEach(function (/** @type {any[]} */ row) {
      var type = row[1] >= 0 ? types[row[1]] : null;
      entries.push({
        own: part(type ? type.names : [], [], [row[0]]),
        beside: part([say.tail]),
        names: [joined(row[0])],
        hit: function () {
          var found = hit(say.tail, row[0], type ? type.name : "", row[3] || "", tailPage(row));
          found.ask = Boolean(row[4]);
          return found;
        },
      });
    });
    ends.push(entries.length);
    types.forEach(function (/** @type {any} */ type) {
      entries.push({
        own: part(type.names.concat([type.role])),
        beside: part([say.type]),
        names: type.names.map(joined),
        hit: function () {
          var found = hit(say.type, type.name, type.also.join(", "), "", "types/" + type.id + ".html");
          found.type = true;
          return found;
        },
      });
    });
    ends.push(entries.length);
    [[index.pages, say.page], [index.docs, say.doc]].forEach(function (pair) {
      pair[0].forEach(function (/** @type {any[]} */ row) {
        entries.push({
          own: part(pair[1] === say.doc ? [row[1]] : [row[1], row[2]]), beside: part([row[2], pair[1]]),
          names: [joined(row[1])],
          hit: function () { return hit(pair[1], row[1], pair[1] === say.doc ? row[2] : "", "", row[0]); },
        });
      });
    });

    /** @type {Owner[]} Types, then tails that have a page. */
    var owners = types.map(function (/** @type {any} */ type, /** @type {number} */ at) {
      return {
        part: part(type.names, numbersOf["type" + at]), of: -1, places: type.places, differs: [], own: [],
        flies: "type" + at in numbersOf, ask: false, label: type.name, note: (slotsOf["type" + at] || []).join("; "),
        href: function (/** @type {any[]} */ row) { return address("types/" + type.id, row); },
      };
    });
    index.tails.forEach(function (/** @type {any[]} */ row, /** @type {number} */ at) {
      if (row[2] || row[1] < 0) return;
      var type = types[row[1]], without = new Set(row[5] || []);
      owners.push({
        part: part(type.names, numbersOf["tail" + at], [row[0]]), of: row[1],
        places: type.places.filter(function (/** @type {number} */ number) { return !without.has(number); }).concat(row[6] || []),
        differs: row[7] || [], own: (row[6] || []).concat(row[7] || []), flies: "tail" + at in numbersOf, ask: Boolean(row[4]), label: type.name + " " + row[0], note: row[3] || "",
        href: function (/** @type {any[]} */ place) {
          return address(place[1] ? "types/" + type.id : "tails/" + row[0], place);
        },
      });
    });

    /** @param {string} home @param {any[]} row @returns {string} */
    function address(home, row) {
      return home + (row[1] ? "/" + row[1] : "") + ".html" + (row[2] ? "#" + row[2] : "");
    }

    /** @param {Owner} owner @param {number} number @returns {Hit} */
    function placeHit(owner, number) {
      var place = places[number], row = place.row;
      var notes = owner.differs.indexOf(number) >= 0 ? [say.differs] : [];
      var found = hit(index.kinds[row[0]], row[3], owner.label, notes.concat(owner.note || []).join("; "), owner.href(row));
      found.state = row[5] || "";
      found.ask = owner.ask;
      return found;
    }

    /** @type {Map<string, Int8Array>} */
    var asked = new Map();

    /** @param {string} run @returns {Int8Array} What `fits` says of each place; a next letter asks mostly the same again. */
    function fitsOfPlaces(run) {
      var known = asked.get(run) || Int8Array.from(places, function (place) { return fits(run, place.part); });
      if (asked.size > 99) asked.clear();
      asked.set(run, known);
      return known;
    }

    /** @param {string} text */
    return function (text) {
      var query = read(text);
      var exact = list(), near = list();
      if (!query.words) return { exact: exact.hits(), near: near.hits() };

      /** @param {number} from @param {number} to */
      function take(from, to) {
        entries.slice(from, to).forEach(function (entry) {
          var own = fit(query, entry.own);
          var told = own.exact || own.near || own.far ? verdict(query, own, fit(query, entry.beside)) : 0;
          if (!told) return;
          var whole = entry.names.indexOf(query.whole) >= 0 || entry.names.indexOf(shouted(query.whole)) >= 0;
          (told === 2 ? exact : near).add(whole, entry.hit);
        });
        exact.next();
        near.next();
      }

      function takePlaces() {
        var lists = query.runs.map(function (run) { return fitsOfPlaces(run.text); });
        var ofPlaces = places.map(function (_, place) {
          return collected(query, function (run) { return lists[run][place]; });
        });
        /** @type {Map<string, (own: number) => number>} Owners that fit alike, as most do that do not fit at all, share. */
        var alike = new Map();
        var told = owners.map(function (owner) {
          var beside = fit(query, owner.part), key = [beside.exact, beside.near, beside.far].join(" ");
          var known = alike.get(key);
          if (!known) {
            known = remembered(ofPlaces, beside);
            alike.set(key, known);
          }
          return known;
        });
        // What flies comes first, under its number and day; whoever asks for a control asks for that aircraft's.
        [true, false].forEach(function (flies) {
          owners.forEach(function (owner, at) {
            if (owner.flies === flies) takePlacesOf(owner, told[at], owner.of >= 0 ? told[owner.of] : null);
          });
          exact.next();
          near.next();
        });
      }

      /** @param {Owner} owner @param {(place: number) => number} told @param {((place: number) => number) | null} ofType */
      function takePlacesOf(owner, told, ofType) {
        owner.places.forEach(function (number) {
          var how = told(number);
          if (!how) return;
          // A tail's place is told beside its type's where it differs, where the tail itself was asked for, and where it
          // flies, but for a place on a page that both share.
          var repeats = ofType && (!owner.flies || places[number].row[1]) && owner.own.indexOf(number) < 0;
          if (repeats && ofType && ofType(number) >= how) return;
          var whole = places[number].name === query.whole;
          (how === 2 ? exact : near).add(whole, function () { return placeHit(owner, number); });
        });
      }

      /** @param {Fit[]} ofPlaces @param {Fit} beside @returns {(place: number) => number} */
      function remembered(ofPlaces, beside) {
        var known = new Int8Array(ofPlaces.length).fill(-1);
        return function (place) {
          var own = ofPlaces[place];
          if (!own.exact && !own.near && !own.far) return 0;
          if (known[place] < 0) known[place] = verdict(query, own, beside);
          return known[place];
        };
      }

      take(0, ends[0]);
      take(ends[0], ends[1]);
      take(ends[1], ends[2]);
      takePlaces();
      take(ends[2], entries.length);
      return { exact: exact.hits(), near: near.hits() };
    };
  }

  /** Hits in their order, group by group; in each group those that are all that was typed come first. */
  function list() {
    /** @type {(() => Hit)[]} */
    var done = [];
    /** @type {(() => Hit)[]} */
    var whole = [];
    /** @type {(() => Hit)[]} */
    var rest = [];
    /** @type {(() => Hit)[]} */
    var best = [];
    function next() {
      done = done.concat(whole, rest);
      best = best.concat(whole);
      whole = [];
      rest = [];
    }
    return {
      /** @param {boolean} all @param {() => Hit} hit */
      add: function (all, hit) { (all ? whole : rest).push(hit); },
      next: next,
      hits: function () {
        next();
        return {
          count: done.length,
          at: function (/** @type {number} */ index) { return done[index](); },
          best: function (/** @type {number} */ index) { return best[index](); },
          whole: best.length,
        };
      },
    };
  }

  /**
   * @param {{exact: Hits}} found
   * @returns {Hit | null} What Enter opens: the one hit that is what was typed. It chooses between nothing: not between two
   *   days, not between a type and its aircraft, and not an aircraft that was swapped out.
   */
  function choice(found) {
    var hits = found.exact;
    if (hits.whole ? hits.whole > 1 : hits.count !== 1) return null;
    var one = hits.whole ? hits.best(0) : hits.at(0);
    return one.ask || (one.type && hits.count > 1) ? null : one;
  }

  /**
   * @param {{codes: string[], words: string}[]} list what each tile is found by
   * @returns {(text: string) => boolean[]} Which of them are hits; all of them where nothing was typed.
   */
  function tiles(list) {
    var parts = list.map(function (tile) { return part([tile.words], tile.codes); });
    return function (text) {
      var query = read(text);
      return parts.map(function (where) {
        var own = collected(query, function (run) { return fitsExactly(query.runs[run].text, where) ? FITS : 0; });
        return !query.words || verdict(query, own, { exact: 0, near: 0, far: 0 }) === 2;
      });
    };
  }

  /** @type {any} */ (window).hardpointMatch = { open: open, choice: choice, tiles: tiles };
})();
