"""What the tree does to a board: its end in the log, its cup, its width through the year."""
