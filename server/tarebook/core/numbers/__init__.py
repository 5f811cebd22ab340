"""What is typed, how sure it is, and how it is shown: the numbers everything else is made of."""
