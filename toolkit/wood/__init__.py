"""What the tree gives: woods, the water in them, and what that water does to a board.

Everything here takes and gives plain numbers: millimetres, degrees, percent, °C, grams. Text such
as ``1 1/2 in`` is read elsewhere, before it gets here.

Start with three questions a maker asks of a lid made in a heated room and used in a damp August:

>>> made = equilibrium_moisture(temperature=20, humidity=50)     # how wet is it now?  [%]
>>> damp = equilibrium_moisture(temperature=22, humidity=75)     # and in August?      [%]
>>> wider = movement(116, species="cherry", rings=0, moisture_from=made, moisture_to=damp)
>>> round(made, 1), round(damp, 1), round(wider, 2)              # it gets 1.47 mm wider
(9.3, 14.4, 1.47)

=============================================  ==================================================
the question                                   ask
=============================================  ==================================================
what is this wood, where are its numbers from  ``species``, ``all_species``
how wet does this room make wood, or the       ``equilibrium_moisture``, ``humidity_for``
reverse
how far does the width move                    ``movement``, ``strain``; ``ring_angle`` for words
the same by the sum on paper, to compare       ``quick_rule``, ``cup_formula``
does a coefficient belong to a shrinkage       ``coefficient_from_shrinkage`` and its reverse
which way does it cup, and what shape is it    ``cup``, ``cup_from_strains``
what should it weigh; is a heavy one wet       ``part_weight``, ``density``, ``weight_spread``
has it settled to the room yet                 ``settling``, ``moisture_by_weight``
is this board ready to cut                     ``ready_to_cut`` on what was seen, ``BoardSeen``
does it have the pith inside                   ``pith_in_section``
when is it widest at home                      ``place``, ``Place.from_readings``
how dry should it be for its use               ``indoor_moisture``
is its dust a worry                            ``sensitiser``, ``dust_limits``
=============================================  ==================================================

Tables lie beside the code as CSV. Each row says where its numbers come from (``source``) and
whether the printed number was read or is from memory (``seen``); an empty cell becomes None.

Four things that surprise newcomers:

* There is one law of movement for all moistures (``movement``). The quick rule stands beside it
  for comparison and the code never changes over from one to the other: the width would jump.
* ``rings`` is the angle between the growth rings and the *width*: 0 flat-sawn, 90 quarter-sawn.
  The thickness of the same board moves at 90 minus that angle.
* Changes are positive when wood swells.
* Some functions bear the name of their module. Import names from ``toolkit.wood`` itself, or with
  ``from toolkit.wood.movement import …``; ``import toolkit.wood.movement as m`` gives the function.
"""

from toolkit.wood.board_seen import BoardSeen, pith_in_section
from toolkit.wood.coefficients import (
    coefficient_from_shrinkage,
    coefficients_fit,
    shrinkage_from_coefficient,
)
from toolkit.wood.cup import Cup, PithInside, cup, cup_from_strains
from toolkit.wood.indoors import IndoorMoisture, indoor_moisture
from toolkit.wood.moisture import equilibrium_moisture, humidity_for
from toolkit.wood.movement import RING_WORDS, movement, ring_angle, strain
from toolkit.wood.quick import QUICK_RULE_RANGE, QuickRule, cup_formula, quick_rule
from toolkit.wood.readiness import ready_to_cut
from toolkit.wood.safety import (
    LINK_NOTE,
    SENSITISER_NOTE,
    DustLimit,
    Sensitiser,
    dust_limits,
    sensitiser,
    sensitisers,
)
from toolkit.wood.seasons import (
    MONTHS,
    Month,
    Place,
    UnknownPlace,
    place,
    places,
    widths_through_the_year,
)
from toolkit.wood.settling import Settling, settling
from toolkit.wood.species import (
    AmbiguousSpecies,
    Provenance,
    Species,
    UnknownSpecies,
    all_species,
    species,
)
from toolkit.wood.weight import (
    WET_WOOD_SPREAD,
    WeightSpread,
    density,
    moisture_by_weight,
    part_weight,
    specific_gravity,
    weight_spread,
)

__all__ = [
    "LINK_NOTE",
    "MONTHS",
    "QUICK_RULE_RANGE",
    "RING_WORDS",
    "SENSITISER_NOTE",
    "WET_WOOD_SPREAD",
    "AmbiguousSpecies",
    "BoardSeen",
    "Cup",
    "DustLimit",
    "IndoorMoisture",
    "Month",
    "PithInside",
    "Place",
    "Provenance",
    "QuickRule",
    "Sensitiser",
    "Settling",
    "Species",
    "UnknownPlace",
    "UnknownSpecies",
    "WeightSpread",
    "all_species",
    "coefficient_from_shrinkage",
    "coefficients_fit",
    "cup",
    "cup_formula",
    "cup_from_strains",
    "density",
    "dust_limits",
    "equilibrium_moisture",
    "humidity_for",
    "indoor_moisture",
    "moisture_by_weight",
    "movement",
    "part_weight",
    "pith_in_section",
    "place",
    "places",
    "quick_rule",
    "ready_to_cut",
    "ring_angle",
    "sensitiser",
    "sensitisers",
    "settling",
    "shrinkage_from_coefficient",
    "species",
    "specific_gravity",
    "strain",
    "weight_spread",
    "widths_through_the_year",
]
