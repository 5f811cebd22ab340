"""Make the tables again from the journal, which is the truth. The result must be the same; it says whether it was."""

from argparse import ArgumentParser, Namespace

from tarebook.cli.arguments import add_data

HELP = "make the tables again from the journal"
EXAMPLES = ("tarebook rebuild",)


def add_options(parser: ArgumentParser) -> None:
    add_data(parser)


def run(options: Namespace) -> int:
    from tarebook.cli.garage import existing_garage
    from tarebook.store.rebuild import rebuild

    with existing_garage(options) as garage, garage.database.write() as session:
        done = rebuild(session, garage.id)
    print(f"{done.entries} entries make {done.records} records; {done.aside} are set aside.")
    print("Nothing changed." if not done.changed else f"{done.changed} rows were wrong and are right now.")
    return 0
