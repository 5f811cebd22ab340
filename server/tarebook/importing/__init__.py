"""Taking in the spreadsheet people already have.

`text` turns a file of any common encoding and separator into cells, `headings`, `decimals` and `dates` find out how it
is written, and `sheet` gives its numbered rows. `line` reads a row or says why it is none, `fates` does so for all of
them while `sums` adds up. `earlier` knows what imports have brought before, `match` tells new lines from corrected and
equal ones, `records` turns a line into the records of a garage, `run` puts them into the journal, and `undo` takes one
import back. `app_export`, `home_export` and `rescue` take in what an app or `tarebook export` has written.
"""
