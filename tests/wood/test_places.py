"""Places and their year."""

import pytest

from toolkit.wood import (
    MONTHS,
    Climate,
    UnknownPlace,
    equilibrium_moisture,
    place,
    places,
    widths_through_the_year,
)


def test_all_full_years_are_there_and_only_those():
    names = [one.name for one in places()]
    assert len(names) == 17
    assert "Augusta GA" not in names
    assert all(len(one.moisture) == 12 for one in places())
    assert all(3 < moisture < 20 for one in places() for moisture in one.moisture)


@pytest.mark.parametrize("typed", ["Boston MA", "boston", "Boston, MA", "MA Boston"])
def test_a_town_is_found_with_or_without_its_state(typed):
    assert place(typed).name == "Boston MA"


def test_two_towns_of_one_name_are_listed():
    with pytest.raises(UnknownPlace, match="'Portland ME' or 'Portland OR'"):
        place("Portland")


@pytest.mark.parametrize(("typed", "meant"), [("Bostn", "Boston MA"), ("Seatle", "Seattle")])
def test_a_near_miss_is_answered_with_the_nearest(typed, meant):
    with pytest.raises(UnknownPlace, match=f"did you mean '{meant}"):
        place(typed)


def test_an_unknown_town_is_told_where_the_list_is():
    with pytest.raises(UnknownPlace, match=r"places\(\) lists those it knows"):
        place("Timbuktu")


@pytest.mark.parametrize(
    ("typed", "known"), [("Augusta", "only January to May"), ("Burlington", "11.7 to 14.2 %")]
)
def test_a_broken_row_says_what_is_known_of_it(typed, known):
    with pytest.raises(UnknownPlace, match=known):
        place(typed)


def test_a_heated_room_of_ones_own():
    readings = [(20, 30)] * 3 + [(20, 45)] * 3 + [(24, 70)] * 3 + [(20, 45)] * 3
    home = Climate.from_readings(readings, name="the lakeside workshop")
    assert home.moisture.index(min(home.moisture)) == MONTHS.index("January")
    assert max(home.moisture) == equilibrium_moisture(temperature=24, humidity=70)


def test_two_months_are_no_year():
    with pytest.raises(ValueError, match="given 2 months"):
        Climate("here", (9.0, 10.0), "", "", "")


def test_widths_follow_the_moisture_of_the_months():
    town = place("Salt Lake City")
    widths = widths_through_the_year(
        116, place=town, species="black cherry", rings=0, moisture_from=town.moisture[2]
    )
    assert len(widths) == len(MONTHS)
    assert widths[2] == 116
    assert widths.index(max(widths)) == town.moisture.index(max(town.moisture))
    assert widths.index(min(widths)) == town.moisture.index(min(town.moisture))
