"""Documents made on the server: the build sheet as data, text and CSV, and everything a garage holds in one file."""
