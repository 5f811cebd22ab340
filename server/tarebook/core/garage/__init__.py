"""Plain records in, typed and cross-referenced ones out."""
