"""Fill the space between two layers with air."""
