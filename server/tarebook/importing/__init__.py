"""Taking in the spreadsheet people already have.

`sheet` turns a file of any common encoding and separator into numbered rows, `line` reads a row or says why it
cannot, `records` turns a line into the records of a garage, `run` puts them into the journal. A line is known by the
hash of its normalised text and by which of several equal lines it is, and every id is made from that: importing a
file twice adds nothing, and a corrected file adds only its corrected lines.
"""
