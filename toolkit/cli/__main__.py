"""``python -m toolkit.cli``: the same as ``workbook``."""

from toolkit.cli import main

raise SystemExit(main())
