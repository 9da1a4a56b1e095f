"""The box as solids, taken apart and put together."""
