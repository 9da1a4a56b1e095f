"""What sawing a board into thinner ones costs, each leaf planed true."""

KERF = 1.5  # custom, no source: what a hand saw takes along the middle of a board [mm]
WANDER = 1.0  # custom, no source: how much of a leaf the saw's wander costs [mm]
TRUING = 1.0  # custom, no source: what planing both faces of a leaf takes off it [mm]
