"""`python -m tarebook` is the command line too."""

import sys

from tarebook.cli import main

sys.exit(main())
