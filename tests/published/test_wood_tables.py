"""Single cells of the tables, where a slip of the hand would otherwise go unseen."""

import pytest

from toolkit.wood import MONTHS, place, species


@pytest.mark.parametrize(
    ("name", "radial", "tangential", "volumetric"),
    [
        ("yellow-poplar", 4.6, 8.2, 12.7),
        ("American basswood", 6.6, 9.3, 15.8),
        ("black cherry", 3.7, 7.1, 11.5),
        ("black walnut", 5.5, 7.8, 12.8),
        ("sugar maple", 4.8, 9.9, 14.7),
        ("white oak", 5.6, 10.5, 16.3),
        ("American beech", 5.5, 11.9, 17.2),
        ("western redcedar", 2.4, 5.0, 6.8),
        ("true mahogany", 3.0, 4.1, 7.8),
    ],
)
def test_shrinkage_read_in_print(name, radial, tangential, volumetric):
    """FPL-GTR-190, Tables 4-3 and 4-4; exactly as printed."""
    wood = species(name)
    assert wood.shrinkage_from.seen == "read"
    found = (wood.shrinkage_radial, wood.shrinkage_tangential, wood.shrinkage_volumetric)
    assert found == (radial, tangential, volumetric)


def test_a_year_outdoors():
    """FPL-GTR-190, Table 13-1, from memory: Salt Lake City swings from 14.9 to 7.1 %."""
    year = dict(zip(MONTHS, place("Salt Lake City").moisture, strict=True))
    assert year["December"] == max(year.values()) == 14.9
    assert year["July"] == min(year.values()) == 7.1
