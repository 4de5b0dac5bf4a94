"""What the pages say of the demo's awkward points, read beside the records that they come from."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import Tag

from tests.site.support import (
    Site,
    build,
    copied_fleet,
    crew_pages,
    names,
    record,
    replace,
    squeezed,
    whole_word,
)

JINX, TWAIN = "vostrelle-jinx", "hobmire-twain"
EVENT = "events/three-shores-flying-days.html"


def _before(page: Tag, anchor: str) -> str:
    """The text of a page's content from its start to the element with an id."""
    part = page.find(id=anchor)
    assert isinstance(part, Tag)
    content = page.find(id="content")
    assert isinstance(content, Tag)
    texts = [text for text in part.find_all_previous(string=True) if content in text.parents]
    return squeezed(" ".join(reversed([str(text) for text in texts])))


def _cell(row: Tag, label: str) -> str:
    cell = row.find("td", attrs={"data-label": label})
    assert isinstance(cell, Tag), label
    return squeezed(cell.get_text(" "))


# --- A tail outranks its type ---------------------------------------------------------------------------------------


def test_a_difference_stands_first_and_again_where_it_bites(demo: Site) -> None:
    page = "tails/QQ-TWB.html"
    (difference,) = record("tails", "QQ-TWB")["differs"]
    _, exit_ = difference["at"].split(".")
    first = demo.part(page, "differences")
    assert [link["href"] for link in first.find_all("a")] == [f"#exit-{exit_}"]
    assert exit_.split("-")[0] in first.get_text().lower()
    before = [element["id"] for element in first.find_all_previous(id=True)]
    assert not {"never", "approach", "open"} & set(before)
    there = demo.part(page, f"exit-{exit_}")
    assert "differs" in there.get_text(" ")
    assert squeezed(difference["here"]["place"]["feel"]) in squeezed(there.get_text(" "))


def test_an_exit_that_was_added_is_tried_where_its_author_put_it(demo: Site) -> None:
    (difference,) = record("tails", "QQ-TWB")["differs"]
    added = difference["at"].split(".")[1]
    exits = [str(found["id"]) for found in demo.part("tails/QQ-TWB.html", "open").find_all(id=True)]
    assert exits.index(f"exit-{added}") + 1 == exits.index(f"exit-{difference['before']}")
    assert demo.page(f"types/{TWAIN}.html").find(id=f"exit-{added}") is None
    assert demo.page("tails/QQ-TWA.html").find(id=f"exit-{added}") is None


def test_an_undeclared_aircraft_says_so_before_anything_is_done(demo: Site) -> None:
    assert record("tails", "QQ-TWA")["differs"] == "unknown"
    head = _before(demo.page("tails/QQ-TWA.html"), "approach")
    assert whole_word("UNKNOWN", head)
    assert "declared" in head.lower()
    for name in names("tails"):
        if record("tails", name)["differs"] != "unknown":
            assert "nobody has declared" not in demo.words(f"tails/{name}.html")


@pytest.mark.parametrize("page", ["index.html", EVENT])
def test_a_swap_is_struck_through_and_leads_to_the_aircraft_that_flies(demo: Site, page: str) -> None:
    (entry,) = [
        entry
        for entry in record("events", names("events")[0])["days"]["saturday"]["entries"].values()
        if "swaps" in entry
    ]
    struck = [found for found in demo.page(page).find_all(["del", "s"]) if entry["swaps"][0]["was"] in found.get_text()]
    assert struck
    for found in struck:
        tile = found.find_parent("li")
        assert isinstance(tile, Tag)
        assert entry["tail"] in tile.get_text()
        assert [str(link["href"]).split("/")[-1] for link in tile.find_all("a")] == [f"{entry['tail']}.html"]


def test_the_line_up_names_what_is_unfit_without_saying_that_the_rest_is_fit(demo: Site) -> None:
    words = demo.words(EVENT, "saturday-unfit")
    assert "alone" in words  # whether one of the Twain's magneto switches suffices
    assert words.count("UNKNOWN") >= 2
    assert "people decide" in words


# --- Awkward points of single types ---------------------------------------------------------------------------------


def test_a_lifting_point_of_unknown_basis_says_so_on_the_structure_page(demo: Site) -> None:
    point = record("types", JINX)["load_points"]["rear-pair"]
    assert (point["use"], point["basis"]) == ("lift", "unknown")
    row = demo.part(f"types/{JINX}/structure.html", "load-point-rear-pair")
    assert whole_word("UNKNOWN", _cell(row, "Basis"))


def test_points_that_do_not_lift_say_so(demo: Site) -> None:
    for name in names("types"):
        for point, told in record("types", name)["load_points"].items():
            row = squeezed(demo.part(f"types/{name}/structure.html", f"load-point-{point}").get_text(" "))
            assert ("does not lift" in row) == (told["use"] not in ("lift", "wrap")), point


@pytest.mark.parametrize("page", [f"types/{JINX}.html", "tails/QQ-VJA.html"])
def test_a_battery_that_stays_live_is_told_among_what_is_shut_down(demo: Site, page: str) -> None:
    live = record("types", JINX)["batteries"]["ignition"]
    block = demo.part(page, "battery-ignition")
    assert live["stays_live"] in squeezed(block.get_text(" "))
    assert block.find_parent(id="shut-down") is not None


def test_every_control_says_which_way_is_off(demo: Site) -> None:
    for name in names("types"):
        for control, told in record("types", name)["controls"].items():
            words = demo.words(f"types/{name}.html", f"control-{control}")
            if isinstance(told, str):  # not fitted, or nobody knows
                assert told.replace("unknown", "UNKNOWN") in words, control
                continue
            way = told["off_is"] if told["off_is"] != "not applicable" else told["works_by"]
            assert "steps" in told or ("UNKNOWN" if way == "unknown" else way) in words, control


@pytest.mark.parametrize("page", crew_pages())
def test_the_count_of_ties_is_the_record_s(demo: Site, page: str) -> None:
    kind, name = page.removesuffix(".html").split("/")
    of = name if kind == "types" else record("tails", name)["of"]
    for seat, told in record("types", of)["seats"].items():
        words = demo.words(page, f"seat-{seat}")
        number = sum(tie not in ("not fitted", "unknown", "not applicable") for tie in told["ties"].values())
        assert f"{number} tie{'' if number == 1 else 's'} recorded" in words
        assert "feel for more" in words
        for tie in told["ties"]:
            demo.part(page, f"tie-{seat}-{tie}")


def test_what_must_not_be_pulled_is_told_at_the_head_and_at_the_seat(demo: Site) -> None:
    handles = [
        (name, seat, handle)
        for name in names("types")
        for seat, told in record("types", name)["seats"].items()
        if isinstance(told["do_not_pull"], dict)
        for handle in told["do_not_pull"]
    ]
    assert handles
    for name, seat, handle in handles:
        anchor = f"do-not-pull-{seat}-{handle}"
        demo.part(f"types/{name}.html", anchor)
        head = demo.part(f"types/{name}.html", "never")
        what = record("types", name)["seats"][seat]["do_not_pull"][handle]["what"]
        # A handle that fires a device is told once, with its device; one that is alike at two seats once for both.
        assert what.split(",")[0].casefold() in squeezed(head.get_text(" ")).casefold(), anchor


@pytest.mark.parametrize("name", names("types"))
def test_each_step_keeps_its_words_way_and_order(demo: Site, name: str) -> None:
    for exit_, told in record("types", name)["exits"].items():
        if not isinstance(told.get("steps"), list):
            continue
        shown = [
            squeezed(step.get_text(" ")) for step in demo.part(f"types/{name}.html", f"exit-{exit_}").select("ol > li")
        ]
        assert len(shown) == len(told["steps"]), exit_
        for line, step in zip(shown, told["steps"], strict=True):
            assert line.lower().startswith(step["do"]), line
            for key in ("what", "way", "using", "until"):
                assert step.get(key, "") in line, line
            assert ("until" in line) == ("until" in step), line


# --- Figures --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", names("types"))
def test_both_units_stand_beside_each_other(demo: Site, name: str) -> None:
    rows = [squeezed(row.get_text(" ")) for row in demo.part(f"types/{name}/figures.html", "quantities").find_all("tr")]
    quantities = demo.data(f"fleet/types/{name}.json")["quantities"]
    assert len(quantities) > 20
    for quantity in quantities:
        label = quantity["path"].replace("_", " ").replace(".", ", ")
        fitting = [row for row in rows if row.startswith(label) or label.split(", ")[-1] in row]
        stated, shown = ([one["text"] for one in quantity[key]] for key in ("stated", "shown"))
        # Of a pair that disagrees only what governs is converted on the pages.
        converted = any if quantity["status"] == "disagree" and quantity["governs"] else all
        assert any(
            all(text in row for text in stated) and converted(text in row for text in shown) for row in fitting
        ), f"{quantity['path']}: {stated} {shown}"


@pytest.mark.parametrize("name", names("types"))
def test_a_crew_page_shows_a_mass_in_both_units(demo: Site, name: str) -> None:
    canopies = record("types", name)["canopies"]
    if canopies == "not fitted":  # an open cockpit
        assert whole_word("not fitted", demo.words(f"types/{name}.html", "canopies"))
        return
    for canopy in canopies:
        words = demo.words(f"types/{name}.html", f"canopy-{canopy}")
        assert whole_word("kg", words)
        assert whole_word("lb", words)


@pytest.fixture(scope="module")
def disagreeing(tmp_path_factory: pytest.TempPathFactory) -> Site:
    """The demo with a capacity whose second figure is imperial, and an allowable that one of two figures governs."""
    folder: Path = tmp_path_factory.mktemp("disagreeing")
    fleet = copied_fleet(folder)
    file = fleet / "types" / f"{TWAIN}.yaml"
    replace(file, "capacity: 70 L / 18.5 US gal", "capacity: 62 L / 13.6 US gal")
    jinx = fleet / "types" / f"{JINX}.yaml"
    text = jinx.read_text(encoding="utf-8")
    jinx.write_text(
        text.replace("allowable: 350 kgf", "allowable: {stated: 1200 lbf / 540 daN, governs: 1200 lbf}", 1),
        encoding="utf-8",
    )
    return Site(build(folder / "site", fleet))


def test_figures_that_disagree_are_both_shown_and_named(disagreeing: Site) -> None:
    for page, anchor in (
        (f"types/{TWAIN}.html", "tank-wing"),
        ("tails/QQ-TWA.html", "tank-wing"),
        (f"types/{TWAIN}/figures.html", "quantities"),
        (f"types/{TWAIN}/gaps.html", "found"),
    ):
        words = disagreeing.words(page, anchor)
        assert "62 L / 13.6 US gal" in words, page
        assert "disagree" in words.lower(), page
        assert "imperial" in words, page


def test_nothing_is_chosen_where_nobody_chose(disagreeing: Site) -> None:
    row = next(
        squeezed(found.get_text(" "))
        for found in disagreeing.part(f"types/{TWAIN}/figures.html", "quantities").find_all("tr")
        if "13.6 US gal" in found.get_text()
    )
    assert "governs" not in row
    assert "neither" in row


def test_the_figure_that_governs_is_named(disagreeing: Site) -> None:
    row = disagreeing.part(f"types/{JINX}/structure.html", "load-point-truss-pair")
    cell = _cell(row, "Allowable")
    assert "1200 lbf / 540 daN" in cell
    assert "1200 lbf governs" in cell


def test_every_page_says_when_it_was_made_and_that_its_data_is_invented(demo: Site) -> None:
    assert record("", "station")["data"] == "invented"
    index = demo.data("fleet.json")
    for page in demo.addresses:
        body = demo.page(page).body
        assert body is not None
        words = squeezed(body.get_text(" "))
        assert index["as_of"] in words, page
        assert index["edition"] in words, page
        assert "invented" in words.lower(), page
        assert page == "404.html" or "incident commander" in words, page
