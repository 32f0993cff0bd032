"""Lay out and cost the complete film skin of a high tunnel with roll-up sides."""

__version__ = "0.1.0"
