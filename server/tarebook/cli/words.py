"""Words from elsewhere on this computer's terminal, and a yes that is typed there."""

from unicodedata import category

_STEERS = ("Cc", "Cf", "Cs", "Zl", "Zp")  # control, formatting (also from right to left), halves, other line ends


def plain_lines(text: str) -> str:
    """Lines for people, without what would steer their terminal; tabs and line ends stay."""
    return "".join("?" if category(letter) in _STEERS and letter not in "\n\t" else letter for letter in text)


def printable(text: str) -> str:
    """The text without what would steer a terminal: a device may call itself anything."""
    return "".join(letter if letter.isprintable() else "?" for letter in text) or "a device without a name"


def is_yes(question: str) -> bool:
    """Whether a person says so; anything else, and nobody there, is a no."""
    try:
        return input(question).strip().lower() in ("y", "yes")
    except EOFError:
        print()
        return False
