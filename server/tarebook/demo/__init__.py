"""The demo garage: an invented coupe, its weighings and its drawings, all of it in this package.

`garage.json` is the scenario in the dialect of `tarebook calc` (lists of records by kind), so that any number of the
demo can be computed again with a pipe. `scenario` turns it into journal entries, `drawings` draws its photos.
Nothing here is a real car, class, yard or person.
"""
