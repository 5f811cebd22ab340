"""Which version of the program this is."""

from importlib.metadata import PackageNotFoundError, version

try:
    __version__ = version("tarebook")
except PackageNotFoundError:  # run from a checkout without installing
    __version__ = "0+unknown"
