"""The farm on disk."""
