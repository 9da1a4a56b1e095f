"""Moisture follows the air without jumps."""

import pytest
from hypothesis import given, strategies as st

from toolkit.wood import equilibrium_moisture

temperatures = st.floats(-20, 130)
humidities = st.floats(0, 99.9)


@given(temperatures, humidities, st.floats(0.001, 50))
def test_damper_air_makes_wetter_wood(temperature, humidity, more):
    damper = humidity + more
    if damper < 100:
        dry = equilibrium_moisture(temperature=temperature, humidity=humidity)
        assert equilibrium_moisture(temperature=temperature, humidity=damper) > dry


@given(st.floats(0, 60), st.floats(20, 90), st.floats(1, 20))
def test_warmer_air_makes_drier_wood_above_freezing(temperature, humidity, warmer):
    cool = equilibrium_moisture(temperature=temperature, humidity=humidity)
    assert equilibrium_moisture(temperature=temperature + warmer, humidity=humidity) < cool + 0.05


@given(temperatures)
def test_dry_air_dries_wood_wholly(temperature):
    assert equilibrium_moisture(temperature=temperature, humidity=0) == 0


@pytest.mark.parametrize("humidity", [130, 100, -1, float("nan"), float("inf")])
def test_impossible_air_is_refused(humidity):
    with pytest.raises(ValueError, match=r"humidity was given as .* Give a reading such as 50"):
        equilibrium_moisture(temperature=20, humidity=humidity)


@pytest.mark.parametrize("temperature", [-20.1, 130.1, 212, float("nan")])
def test_temperatures_beyond_the_equation_are_refused(temperature):
    with pytest.raises(ValueError, match=r"-20 to 130 °C"):
        equilibrium_moisture(temperature=temperature, humidity=50)
