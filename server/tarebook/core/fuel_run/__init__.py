"""A run on fuel: weight and balance from the start to the flag."""
