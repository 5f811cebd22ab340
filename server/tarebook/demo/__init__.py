"""The demo garage: an invented coupe, its weighings and its drawings, all of it in this package.

`garage.json` is the scenario in the dialect of `tarebook calc` (lists of records by kind), so that any number of the
demo can be computed again with a pipe. `photos.json` says of each photo what stands on which scale and what it shows.
`scenario` turns both into journal entries, `drawings` draws from the shapes in `drawings.json`.
Nothing here is a real car, class, yard or person.
"""
