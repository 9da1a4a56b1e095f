"""One dovetailed joint: apart and together, its boards unfolded, and how well it fits."""
