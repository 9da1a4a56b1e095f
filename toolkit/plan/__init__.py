"""The plan of a box: the rooms put together.

Its public names stand in ``__init__.pyi`` and are fetched when first asked for.
"""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
