"""The box: its choices, its corners, grooves and panels, and what a maker would say of them.

Its public names stand in ``__init__.pyi`` and are fetched when first asked for.
"""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
