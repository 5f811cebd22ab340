"""Words from elsewhere on this computer's terminal."""


def printable(text: str) -> str:
    """The text without what would steer a terminal: a device may call itself anything."""
    return "".join(letter if letter.isprintable() else "?" for letter in text) or "a device without a name"
