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


def test_what_was_weighed_on_a_scale_and_of_a_driver_since_deleted_stays_weighed(tmp_path):
    home = Home(tmp_path)
    bench, anna = {"name": "Bench", "kind": "bench", "division": "10 g"}, {"name": "Anna", "claim": "75 kg"}
    weighing = {"of": "d", "method": "direct", "shown": "76 kg", "scale": "s"}
    with home.database.write() as session:
        made = [Change("scale", "s", bench), Change("driver", "d", anna), Change("weighing", "w", weighing)]
        write(session, home.garage, [*made, *(Change(kind, each, {"deleted": True}) for kind, each in GONE)])
    with home.database.read() as session:
        garage = read_garage(all_records(session, home.garage))
    assert garage.warnings == []
    assert (garage.weighings["w"].scale, garage.weighings["w"].of, sorted(garage.retired)) == ("s", "d", ["d", "s"])


GONE = (("scale", "s"), ("driver", "d"))
