"""One dovetailed corner, set out."""
