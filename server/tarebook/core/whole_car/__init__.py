"""The whole car on scales, and the condition a class weighs it in."""
