"""The lessons in a real browser, as a student has them."""
