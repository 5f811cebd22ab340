"""`calc sheet` of a garage: each sheet with the part it is, worked out and weighed."""

from tarebook.api.calc import run
from tarebook.demo import scenario


def answers():
    return {answer["part"]: answer for answer in run("sheet", {**scenario.records(), "mass_unit": "kg"})["sheets"]}


def test_a_weighed_sheet_is_compared_and_one_not_weighed_yet_is_not():
    tray, window = answers()["part-alloy-tray"], answers()["part-rear-sheet"]
    assert tray["beyond"] is True
    assert "heavier than worked out" in tray["said"]
    assert tray["difference"]["value"] == tray["weighed"]["value"] - 0.2704
    assert [window[name] for name in ("weighed", "difference", "beyond", "said")] == [None] * 4


def test_the_demos_claims_are_what_its_sheets_come_to():
    parts = {part["id"]: part for part in scenario.records()["parts"]}
    for part, answer in answers().items():
        claim = float(parts[part]["claim"].removesuffix(" kg"))
        assert abs(answer["mass"]["value"] - claim) < 0.001
        assert answer["reason"] is None


def test_a_sheet_that_cannot_be_read_says_why_and_the_others_are_told():
    cut = {"part": "p", "material": "steel", "thickness": "1 mm"}
    sheets = [
        {"id": "a", **cut, "form": "polygon", "corners": "0 mm; 1 mm"},
        {"id": "b", **cut, "form": "circle", "diameter": "1 ft"},
    ]
    bad, good = run("sheet", {"parts": [{"id": "p"}], "sheets": sheets})["sheets"]
    assert bad["reason"]["code"] == "sheet_corner"
    assert (good["reason"], good["mass"]["unit"]) == (None, "kg")


def test_a_corner_with_half_of_it_missing_is_refused_in_words():
    """Found by asking for everything the document allows."""
    corners = [["0 mm", "0 mm"], ["300 mm", None], ["300 mm", "200 mm"]]
    piece = {"id": "plate", "form": "polygon", "corners": corners, "material": "steel", "thickness": "1 mm"}
    [answer] = run("sheet", {"pieces": [piece]})["pieces"]
    assert answer["reason"]["code"] == "sheet_corner"
    assert answer["reason"]["data"]["corner"] == 2
