"""From the rack to rough parts: boards and what is wrong with them, laying out, buying.

Its public names stand in ``__init__.pyi`` and are fetched when first asked for: whoever only reads
a file of boards need not wait for numpy. How the solver works is told in ``toolkit.stock.layout``.
"""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
