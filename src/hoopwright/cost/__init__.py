"""Price and compare."""
