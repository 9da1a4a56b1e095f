"""A planed surface in raking light, with a section of it."""
