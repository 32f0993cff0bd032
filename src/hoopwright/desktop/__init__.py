"""The window: the only package that knows widgets.

The model loads before the toolkit, whose import hook reads the source of every module after it.
"""

import hoopwright.proposal  # noqa: F401  # and with it every stage
