"""A class's weekend drawn as bars: who does what when, who waits, who runs over."""
