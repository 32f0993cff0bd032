"""Numbers that can be read, printed and explained."""
