"""The records as everyone outside the journal sees them."""

from tarebook.core.garage.garage import read_garage
from tarebook.garage.author import Change, write
from tarebook.garage.records import all_records
from tests.home import Home


def test_of_a_chain_whose_middle_correction_was_withdrawn_one_weigh_in_counts(tmp_path):
    home = Home(tmp_path)
    kept = {"layout": "total", "trim": "event", "total": "900 kg"}
    with home.database.write() as session:
        chain = [Change("weigh_in", "a", kept)]
        chain += [Change("weigh_in", name, {**kept, "replaces": of}) for name, of in (("b", "a"), ("c", "b"))]
        write(session, home.garage, [*chain, Change("weigh_in", "b", {"deleted": True})])
    with home.database.read() as session:
        records = all_records(session, home.garage)
    assert list(read_garage(records).weigh_ins) == ["c"]
    assert [each["id"] for each in records["weigh_ins"] if each.get("deleted")] == ["b"]
