"""What the tree gives: woods, the water in them, and what that water does to a board.

Plain numbers in and out: millimetres, degrees, percent, °C, grams. Three questions that a maker
asks of a lid made in a heated room and used in a damp August:

>>> made = equilibrium_moisture(temperature=20, humidity=50)     # how wet is it now?  [%]
>>> damp = equilibrium_moisture(temperature=22, humidity=75)     # and in August?      [%]
>>> wider = movement(116, species="black cherry", rings=0, moisture_from=made, moisture_to=damp)
>>> round(made, 1), round(damp, 1), round(wider, 2)              # it gets 1.47 mm wider
(9.3, 14.4, 1.47)

Tables lie beside the code as CSV, each row with its ``source`` and with ``seen``: whether the
printed number was read or is from memory. An empty cell becomes None.

Three things that surprise newcomers:

* There is one law of movement for all moistures (``movement``). The quick rule stands beside it
  for comparison and the code never changes over from one to the other: the width would jump.
* ``rings`` is the angle between the growth rings and the *width*: 0 flat-sawn, 90 quarter-sawn.
  The thickness of the same board moves at 90 minus that angle.
* Changes are positive when wood swells.
"""

from toolkit.wood.cupping import Cup, PithInside, cup, cup_from_strains
from toolkit.wood.dust import CAUTION, Sensitiser, sensitiser
from toolkit.wood.law import RING_WORDS, movement, ring_angle, strain
from toolkit.wood.quick import (
    QuickRule,
    coefficient_from_shrinkage,
    coefficients_fit,
    cup_formula,
    quick_rule,
)
from toolkit.wood.readiness import BoardSeen, ready_to_cut
from toolkit.wood.seasons import (
    MONTHS,
    Climate,
    UnknownPlace,
    equilibrium_moisture,
    place,
    places,
    widths_through_the_year,
)
from toolkit.wood.weight import density, moisture_by_weight, part_weight, specific_gravity
from toolkit.wood.woods import Species, UnknownSpecies, all_species, species
