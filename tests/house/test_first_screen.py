"""The first screen stays light: once it is fetched over a weak signal, and every start has to read it."""

import gzip
import re

from build_app import BUILT

MOST = 100_000  # bytes


def test_the_first_screens_files_stay_within_100_kb_gzipped():
    page = BUILT / "index.html"
    named = set(re.findall(r'(?:src|href)="/([^"]+\.(?:js|css|svg|webmanifest))"', page.read_text(encoding="utf-8")))
    files = [page, *(BUILT / name for name in sorted(named))]
    assert any(file.suffix == ".js" for file in files)
    assert sum(len(gzip.compress(file.read_bytes(), 9)) for file in files) <= MOST
