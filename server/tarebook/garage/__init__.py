"""A garage's journal at work: entries come in and are handed out, records are read, the server writes its own."""
