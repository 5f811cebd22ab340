"""One weight from all weigh-ins together, what does not fit among them, and what one more would bring."""
