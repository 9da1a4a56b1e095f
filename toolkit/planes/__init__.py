"""One bench plane: its angles and iron, what its strokes take off, and the surface they leave.

Plain numbers in and out, in millimetres and degrees. Truing counts this plane's strokes; smoothing
looks at what they leave.

>>> round(SMOOTHER.pitch, 1), round(SMOOTHER.scallops.depth, 3)      # tracks, ridges [mm]
(26.7, 0.01)
"""

from toolkit.planes.angles import skewed
from toolkit.planes.iron import Iron, camber_radius
from toolkit.planes.plane import JACK, PLANES, SMOOTHER, TRY, Plane
from toolkit.planes.scallops import RIDGE_MOST, Scallops
from toolkit.planes.simulation import planed
from toolkit.planes.surface import Surface
