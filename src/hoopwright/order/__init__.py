"""Order and cut."""
