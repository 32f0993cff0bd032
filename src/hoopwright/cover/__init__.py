"""Lay the skin: every sheet and how its size adds up."""
