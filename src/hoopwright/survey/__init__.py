"""The frame as built."""
