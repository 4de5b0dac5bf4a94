"""What an organiser and a safety lead read before a day: what is unfit, claims, whom to ask, the talk, two at once."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag

from tests.site.support import Site, build, copied_fleet, names, record, replace, squeezed, whole_word

(EVENT,) = names("events")
HOME = f"events/{EVENT}.html"
FOLDER = f"events/{EVENT}"
RECORD = record("events", EVENT)
DAYS = list(RECORD["days"])
ENTRIES = [(day, number, entry) for day in DAYS for number, entry in RECORD["days"][day]["entries"].items()]
TOTAL = len(ENTRIES)


def _lines(part: Tag) -> list[str]:
    return [squeezed(line.get_text(" ")) for line in part.find_all("li")]


def _crew_page(entry: dict[str, str]) -> str:
    return f"tails/{entry['tail']}.html"


# --- Unfit ----------------------------------------------------------------------------------------------------------


def test_a_station_at_a_lake_counts_water_only_where_a_slot_leads_over_it(demo: Site) -> None:
    asked = record("", "station")["unfit_over_water"]
    assert "water.floats" in asked
    seen = set()
    for day, number, entry in ENTRIES:
        dry = entry["over_water"].startswith("not ")
        unknown = [
            path for path in asked if record("types", entry["type"])["water"].get(path.split(".")[1]) == "unknown"
        ]
        lines = [line for line in _lines(demo.part(HOME, f"{day}-unfit-{number}")) if line.startswith("Water:")]
        if dry:
            assert lines == [], number
        elif unknown:
            assert len(lines) == 1, number
            assert whole_word("UNKNOWN", lines[0])
            for path in unknown:
                assert path.split(".")[1].replace("_", " ") in lines[0], number
        seen.add((dry, bool(unknown)))
    assert {(True, True), (False, True)} <= seen


def test_an_overdue_review_and_a_refused_lift_are_named_with_date_and_reason(demo: Site) -> None:
    jinx = record("types", "vostrelle-jinx")
    due = jinx["checked"]["water"]["review"]
    assert due < RECORD["days"]["saturday"]["date"]
    words = demo.words(HOME, "saturday-unfit-1")
    assert f"Checks of water: was due on {due}: review OVERDUE" in words
    assert "Lift four points: rear pair: its basis is unknown: this lift is REFUSED" in words
    links = {str(link["href"]) for link in demo.part(HOME, "saturday-unfit-1").find_all("a")}
    assert "../types/vostrelle-jinx/figures.html#provenance" in links
    assert "../types/vostrelle-jinx/structure.html#lift-four-points" in links


def test_what_counts_is_told_and_what_the_station_adds_stands_apart(demo: Site) -> None:
    words = demo.words(HOME, "saturday-unfit-counts")
    for told in ("opening, shutdown, ties", "Added by Orlowater", "seats, any, worn", "a review is overdue"):
        assert told in words
    lines = _lines(demo.part(HOME, "saturday-unfit-8"))
    station = lines.index("This station also counts:")
    assert any("life jacket" in line for line in lines[station:])
    assert not any("life jacket" in line for line in lines[:station])


def test_a_station_that_adds_nothing_counts_by_the_book_alone(tmp_path: Path) -> None:
    fleet = copied_fleet(tmp_path)
    file = fleet / "station.yaml"
    text = file.read_text(encoding="utf-8")
    file.write_text(text[: text.index("# What makes an entry unfit besides")], encoding="utf-8")
    site = Site(build(tmp_path / "site", fleet))
    assert "no gap recorded where crews act" in site.words(HOME, "saturday-unfit-1")
    assert "This station also counts" not in site.words(HOME)
    assert "life jacket" not in site.words(HOME, "saturday-unfit-8")


# --- Claims ---------------------------------------------------------------------------------------------------------

BUCKLES = ("buckle", "lock", "belt", "strap", "latch")


def _harness(entry: dict[str, str]) -> set[str]:
    """Kinds of what holds the body, by the words of the trade: buckles, belts and straps, no leads, hoses, lines."""
    seats = record("types", entry["type"])["seats"].values()
    kinds = {tie["kind"] for seat in seats for tie in seat["ties"].values() if isinstance(tie, dict)}
    return {kind for kind in kinds if any(word in kind for word in BUCKLES)}


def test_a_claim_begins_with_its_verdict_and_names_who_breaks_it_and_who_fits(demo: Site) -> None:
    breaking = [(day, number) for day, number, entry in ENTRIES if _harness(entry) != {"lift-latch buckle"}]
    assert 0 < len(breaking) < TOTAL
    lines = _lines(demo.part(HOME, "claim-one-harness"))
    assert lines[0] == f"Does not hold: {len(breaking)} of {TOTAL} entries break it"
    assert lines[1].startswith("Expected: lift-latch buckle")
    for day, number, entry in ENTRIES:
        (line,) = [line for line in lines if line.startswith(f"{day.capitalize()} {number},")]
        assert ("breaks it" in line) == ((day, number) in breaking), line
        assert ("fits" in line) == ((day, number) not in breaking), line
        for kind in _harness(entry) - {"lift-latch buckle"}:
            assert kind.casefold() in line.casefold(), line
        assert "lead" not in line
        assert "hose" not in line


def test_a_claim_that_holds_says_so_and_still_asks_to_look(tmp_path: Path) -> None:
    fleet = copied_fleet(tmp_path)
    file = fleet / "events" / f"{EVENT}.yaml"
    text = file.read_text(encoding="utf-8")
    start, end = text.index("claims:"), text.index("changes:")
    claim = "  data:\n    says: only the Jinx flies\n    every: name\n    expects: Vostrelle Jinx\n"
    text = f"{text[:start]}claims:\n{claim}{text[end:]}"
    sunday = text.index("  sunday:")
    day = text[text.index("      3:") : sunday]
    text = text.replace(day, "").replace(text[text.index("  sunday:") : text.index("claims:")], "\n")
    file.write_text(text, encoding="utf-8")
    site = Site(build(tmp_path / "site", fleet))
    lines = _lines(site.part(HOME, "claim-data"))
    assert lines[0] == "Holds: no entry breaks it, by the records; look at each all the same"
    assert "Saturday 1, Vostrelle Jinx QQ-VJA, fits: 1 place compared" in lines


# --- Whom to ask ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("day", DAYS)
def test_everything_that_makes_an_entry_unfit_is_asked_of_somebody(demo: Site, day: str) -> None:
    """The lines of the event's page come back under whoever can answer, with the same places behind them."""
    asked = demo.part(f"{FOLDER}/gaps.html", f"{day}-ask")
    told = " ".join(_lines(asked))
    for number in RECORD["days"][day]["entries"]:
        for line in demo.part(HOME, f"{day}-unfit-{number}").find_all("li"):
            things = [squeezed(b.get_text(" ")).rstrip(":") for b in line.find_all("b")]
            if things and things[0] not in ("UNKNOWN", ""):
                last = things[0].split(", ")[-1]
                assert last.casefold() in told.casefold(), (number, things)


def test_a_question_stands_under_the_role_that_the_record_names(demo: Site) -> None:
    blocks = demo.part(f"{FOLDER}/gaps.html", "saturday-ask").select(".lines")
    by_title = {squeezed(block.h3.get_text(" ")): block for block in blocks if block.h3}
    armourer = by_title["Licensed armourer of QQ-HBD"]
    assert "9 Drosmund Halberd QQ-HBD" in squeezed(armourer.get_text(" "))
    assert "state: UNKNOWN" in squeezed(armourer.get_text(" "))
    assert [str(a["href"]) for a in armourer.find_all("a")].count("../../tails/QQ-HBD.html#stay-clear") > 1
    lead = by_title["Boat crew lead"]
    assert "review OVERDUE" in squeezed(lead.get_text(" "))
    assert list(by_title)[-1] == "Whoever keeps the line-up"
    assert "Number 5, over water" in squeezed(by_title["Whoever keeps the line-up"].get_text(" "))


def test_one_role_is_asked_of_all_its_aircraft_in_one_go(demo: Site) -> None:
    titles = [
        squeezed(block.h3.get_text(" "))
        for block in demo.part(f"{FOLDER}/gaps.html", "sunday-ask").select(".lines")
        if block.h3
    ]
    assert len(titles) == len(set(titles)) > 5


# --- Words, not paths -----------------------------------------------------------------------------------------------

_PATH = re.compile(r"(?<![\w./-])[a-z_]{3,}\.[a-z_*][a-z0-9_*-]*(?:\.[a-z0-9_*-]+)*(?![\w./])|\b[a-z]+_[a-z_]+\b")
_READ_ALOUD = re.compile(r"who_can_answer|[a-z]+\.yaml|[\w.]+\.example")
"""What an author types word for word; a file's name; the demo's own address."""


def _without_records(page: BeautifulSoup) -> str:
    """The words of a page without the record as it was written."""
    content = BeautifulSoup(str(page.find(id="content")), "html5lib")
    for part in content.select("#as-written"):
        part.decompose()
    return squeezed(content.get_text(" "))


def _gap_pages() -> list[str]:
    homes = [f"types/{name}" for name in names("types")] + [f"tails/{name}" for name in names("tails")]
    return ["gaps.html", "station.html", *(f"{home}/gaps.html" for home in [*homes, FOLDER])]


@pytest.mark.parametrize("address", _gap_pages())
def test_no_path_of_a_record_shows_on_pages_of_gaps_and_of_the_station(demo: Site, address: str) -> None:
    words = _without_records(demo.page(address))
    found = [path for path in _PATH.findall(words) if not _READ_ALOUD.fullmatch(path)]
    assert found == []


# --- Briefing -------------------------------------------------------------------------------------------------------

MOST_WORDS = 450
"""For one aircraft, with everything that can be tapped: three minutes at 150 words a minute (common practice)."""


def test_the_briefing_has_a_page_a_day_and_a_page_that_leads_to_them(demo: Site) -> None:
    links = [str(link["href"]) for link in demo.part(f"{FOLDER}/brief.html", "days").find_all("a")]
    assert links == [f"brief-{day}.html" for day in DAYS]
    for day in DAYS:
        page = f"{FOLDER}/brief-{day}.html"
        sections = [str(part["id"]) for part in demo.page(page).select("section.part")]
        assert sections == [f"{day}-{number}" for number in RECORD["days"][day]["entries"]]
        assert RECORD["days"][day]["date"] in demo.words(page).replace("- ", "-")  # the headline may break there
        others = [other for other in DAYS if other != day]
        assert not any(f"{other}-" in section for other in others for section in sections)


@pytest.mark.parametrize(("day", "number"), [(day, number) for day, number, _ in ENTRIES])
def test_a_talk_begins_with_never_touch_says_it_again_and_stays_short(demo: Site, day: str, number: str) -> None:
    page = f"{FOLDER}/brief-{day}.html"
    part = demo.part(page, f"{day}-{number}")
    first = part.select(".block")[0]
    assert first["id"] == f"{day}-{number}-never"
    never = [squeezed(line.get_text(" ")) for line in first.select(".line--never")]
    again = [squeezed(line.get_text(" ")) for line in demo.part(page, f"{day}-{number}-recap").select(".line--never")]
    assert never == again
    assert len(demo.words(page, f"{day}-{number}").split()) <= MOST_WORDS


def test_what_is_reported_of_a_device_is_not_called_unknown(tmp_path: Path, demo: Site) -> None:
    page = f"{FOLDER}/brief-saturday.html"
    assert RECORD["days"]["saturday"]["entries"]["11"]["reported"]["rocket"]["state"] == "live"
    assert "Reported: rocket: live, by rocket parachute workshop" in demo.words(page, "saturday-11-never")
    assert "state" not in demo.words(page, "saturday-11-unknown")
    assert "Canopy: exit direction, raised; cable, path; state: UNKNOWN" in demo.words(page, "saturday-9-unknown")
    fleet = copied_fleet(tmp_path)
    file = fleet / "events" / f"{EVENT}.yaml"
    report = 'canopy: {state: inactive, by: armourer, licence: "seats", date: 2027-06-05, at: "09:10"}'
    text = file.read_text(encoding="utf-8")
    assert text.count("seat-rear: unknown, canopy: unknown}") == 1
    file.write_text(text.replace("canopy: unknown}", f"{report}}}"), encoding="utf-8")
    site = Site(build(tmp_path / "site", fleet))
    (line,) = [line for line in _lines(site.part(page, "saturday-9-unknown")) if line.startswith("Canopy: exit")]
    assert "state" not in line
    assert "Reported: canopy: inactive, by armourer" in site.words(page, "saturday-9-never")
    assert "Canopy cartridge" in site.words(page, "saturday-9-never")


# --- Two at once ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("day", DAYS)
def test_every_pair_of_a_day_has_an_address_and_a_link(demo: Site, day: str) -> None:
    page = f"{FOLDER}/two-at-once.html"
    numbers = list(RECORD["days"][day]["entries"])
    pairs = [f"{day}-{one}-{other}" for at, one in enumerate(numbers) for other in numbers[at + 1 :]]
    assert [str(a["href"]) for a in demo.part(page, f"{day}-pick").select(".pick__list a")] == [f"#{p}" for p in pairs]
    for pair in pairs:
        assert "pair" in demo.part(page, pair)["class"]


def test_a_pair_tells_what_is_opposite_and_both_answers(demo: Site) -> None:
    page = f"{FOLDER}/two-at-once.html"
    words = demo.words(page, "saturday-1-7")
    assert "push, then pull" in words
    assert "pull, then push" in words
    rows = [squeezed(row.get_text(" ")) for row in demo.part(page, "saturday-7-8").find_all("tr")]
    (told,) = [row for row in rows if row.startswith("Magneto or ignition off")]
    assert "towards canopy" in told  # QQ-BOD, by demo and record
    assert record("types", "brinemarsh-coble")["controls"]["magneto-left"]["off_is"] in told


# --- Drill ----------------------------------------------------------------------------------------------------------

_WAYS = re.compile(
    r"\b(?:towards (?:floor|canopy)|(?:anti)?clockwise|inboard|outboard|forward|aft|left|right|bow|nose|tail|free end|"
    r"not fitted|YES|UNKNOWN|opens)\b"
)


def _questions(demo: Site) -> list[tuple[str, str, str]]:
    found = []
    for address in demo.addresses:
        if address.endswith("drill.html"):
            for item in demo.page(address).select(".asked"):
                assert isinstance(item.summary, Tag)
                answer = item.select_one("p > .value, p > .unknown, p > .answers")
                assert answer is not None, (address, item)
                found.append((address, squeezed(item.summary.get_text(" ")), squeezed(answer.get_text(" "))))
    return found


def test_no_question_gives_its_own_answer_away(demo: Site) -> None:
    """A plain question names no way, no side and no answer; one that begins elsewhere names only that aircraft's."""
    asked = _questions(demo)
    assert len(asked) > 150
    for address, question, answer in asked:
        if question.startswith("On the "):
            assert question.endswith("too?"), question
            continue
        assert not _WAYS.search(question), f"{address}: {question}"
        assert answer.casefold() not in question.casefold(), f"{address}: {question}"


def test_a_question_on_a_tail_does_not_name_what_is_other_there(demo: Site) -> None:
    """QQ-TWB has an outside handle added, QQ-BOD magnetos reversed: the question says neither."""
    for tail in ("QQ-TWB", "QQ-BOD"):
        asked = [(q, a) for _, q, a in _questions(demo) if q.startswith(f"{tail},")]
        for difference in record("tails", tail)["differs"]:
            section, thing = difference["at"].split(".")[:2]
            question = next(q for q, _ in asked if q.startswith(f"{tail}, {section}:"))
            assert thing.replace("-", " ") not in question
        assert any(answer.startswith("No:") for _, answer in asked)
        assert any(answer == "No recorded difference" for _, answer in asked)


def test_neither_yes_nor_no_is_always_right(demo: Site) -> None:
    """On each type's page some of the traps are none, and a tail that nobody declared is answered by UNKNOWN."""
    for name in names("types"):
        page = f"types/{name}/drill.html"
        answers = [a for address, q, a in _questions(demo) if address == page and q.startswith("On the ")]
        alike = [answer for answer in answers if answer == "Yes: no recorded difference"]
        assert 0 < len(alike) < len(answers), name
    undeclared = [a for _, q, a in _questions(demo) if q.startswith("QQ-TWA,")]
    assert undeclared
    assert all(answer.startswith("UNKNOWN") for answer in undeclared)


def test_ties_that_are_not_fitted_are_not_counted_among_them(demo: Site) -> None:
    (answer,) = [a for _, q, a in _questions(demo) if q.startswith("Hobmire Twain: what ties the occupant in")]
    assert record("types", "hobmire-twain")["seats"]["rear"]["ties"]["helmet-lead"] == "not fitted"
    assert "helmet lead" not in answer


# --- Station --------------------------------------------------------------------------------------------------------


def test_breathing_rates_stand_by_words_and_never_in_gallons(demo: Site) -> None:
    """30, 50 and 75 L/min are 1.059, 1.766 and 2.649 ft3/min (NIST SP 811 B.8), rounded up."""
    rows = [
        squeezed(row.get_text(" ")) for row in demo.part("station.html", "station-breathing-rates").select("td, th")
    ]
    assert "gal" not in demo.words("station.html", "station-breathing-rates")
    assert rows[2:] == [
        "lowest rate",
        "30 L/min (1.06 ft³/min)",
        "rate between",
        "50 L/min (1.77 ft³/min)",
        "highest rate",
        "75 L/min (2.65 ft³/min)",
    ]
    assert "US gal/min" in demo.words("station.html", "station-cover")  # foam is a liquid


def test_the_station_page_says_its_lists_in_words(demo: Site) -> None:
    words = demo.words("station.html", "decided")
    assert "mobile, at a radius of 4 m (13 ft) 9.2 t" in words
    assert "combination tool, cuts aluminium, steel tube, plywood" in words
    assert "high-voltage cable 200 mm" in words
    assert "water, stays afloat makes an entry unfit while it is unknown" in words
    labels = [squeezed(head.get_text(" ")) for head in demo.part("station.html", "decided").find_all("th")]
    assert not [label for label in labels if re.search(r"(?:^|, )\d+$", label)]


def test_a_station_with_one_rate(tmp_path: Path) -> None:
    fleet = copied_fleet(tmp_path)
    replace(fleet / "station.yaml", "[30 L/min, 50 L/min, 75 L/min]", "[50 L/min]")
    assert "the only rate 50 L/min" in Site(build(tmp_path / "site", fleet)).words("station.html", "decided")
