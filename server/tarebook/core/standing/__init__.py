"""What the car weighs now, how sure that is, and how far it is from the minimum."""
