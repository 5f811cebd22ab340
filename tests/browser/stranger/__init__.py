"""A stranger builds a car from an empty garage on a phone: what is done, what is true, and how the thumb does it."""
