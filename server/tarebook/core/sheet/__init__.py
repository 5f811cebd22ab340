"""What a piece of sheet will weigh before it is cut."""
