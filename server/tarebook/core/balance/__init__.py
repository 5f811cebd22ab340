"""Where the weight is: places, the centre of gravity before and after, and what follows from it."""
