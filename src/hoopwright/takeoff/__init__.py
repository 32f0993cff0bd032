"""Count what the skin takes."""
