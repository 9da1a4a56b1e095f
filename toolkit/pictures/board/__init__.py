"""A rough board with its defects, the parts chalked on it, the saw cuts, and what figure costs."""
