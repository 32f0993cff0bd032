"""The drawing of a tunnel to pick from and to drag on. It alone loads the plot library."""

from hoopwright.desktop.canvas.canvas import Canvas

__all__ = ["Canvas"]
