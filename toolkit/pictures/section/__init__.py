"""The box cut across and along, with a groove magnified."""
