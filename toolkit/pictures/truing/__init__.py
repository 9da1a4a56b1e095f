"""Lesson 2's drawings: what to remove from a face, the true board in a warped one, shavings."""
