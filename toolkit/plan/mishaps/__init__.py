"""What was made against what was meant, and what can still be done."""
