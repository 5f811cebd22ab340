"""How much ballast, and where: an exact integer programme."""
