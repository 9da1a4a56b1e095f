"""Full-size sheets: the walls and sections of a box at true scale, to cut out and lay on wood."""
