"""What is said of a plane's setting: each thing with a plane just beyond its limit and inside."""

import pytest

from toolkit.measures import Rule
from toolkit.planes import SMOOTHER, Plane, skewed
from toolkit.planes.angles import cutting_angle
from toolkit.smoothing import check_plane, plane_checks, setbacks, what_shows
from toolkit.smoothing.customs import SurfaceCustoms
from toolkit.smoothing.plane_checks import setback_to_begin

MM, INCH = Rule.millimetres(), Rule.inches()


def _codes(plane, grain="straight"):
    return {row.code: row.level for row in check_plane(plane, rule=MM, grain=grain)}


BEYOND = [
    # code, level, plane beyond, plane inside, grain
    ("no-clearance", "wont_work", {"honed_bevel": 45}, {"honed_bevel": 44.9}, "straight"),
    ("clearance-small", "care", {"honed_bevel": 38.1}, {"honed_bevel": 38}, "straight"),
    ("angle-low", "care", {"bed": 42.9}, {"bed": 43}, "curly"),
    ("angle-low", "care", {"bed": 42.9}, {"bed": 43}, "interlocked"),
    ("angle-low", "care", {"skew": 20}, {"skew": 0}, "curly"),
    ("angle-steep", "care", {"back_bevel": 20.1}, {"back_bevel": 20}, "straight"),
    ("no-cap-iron", "care", {"bed": 49.9, "setback": None}, {"bed": 50, "setback": None}, "curly"),
    ("cap-iron-in-the-wood", "wont_work", {"setback": 0.042}, {"setback": 0.043}, "straight"),
    ("cap-iron-chokes", "care", {"setback": 0.0599}, {"setback": 0.06}, "straight"),
    ("cap-iron-far", "care", {"setback": 1.001}, {"setback": 1.0}, "straight"),
    ("cap-iron-far-for-curly", "care", {"setback": 0.401}, {"setback": 0.4}, "curly"),
    (
        "cap-iron-far-for-curly",
        "care",
        {"setback": 0.6, "back_bevel": 4},
        {"setback": 0.6, "back_bevel": 5},
        "curly",
    ),
    ("corners-dig", "care", {"shaving": 0.036}, {"shaving": 0.035}, "straight"),
    ("ridge-high", "care", {"overlap": 29}, {"overlap": 30}, "straight"),
]


@pytest.mark.parametrize(("code", "level", "beyond", "inside", "grain"), BEYOND)
def test_each_finding_just_beyond_and_just_inside(code, level, beyond, inside, grain):
    assert _codes(SMOOTHER.having(**beyond), grain).get(code) == level
    assert code not in _codes(SMOOTHER.having(**inside), grain)


def test_a_good_setting_is_told_so():
    assert set(_codes(SMOOTHER).values()) == {"good"}
    assert {"good-angle", "good-cap-iron", "good-edge"} == set(_codes(SMOOTHER))


def test_only_the_last_plane_minds_ridges_and_a_far_cap_iron():
    far = SMOOTHER.having(setback=2, overlap=10)
    assert {"cap-iron-far", "ridge-high"} <= set(_codes(far))
    assert not {"cap-iron-far", "ridge-high"} & set(_codes(far.having(finishing=False)))


@pytest.mark.parametrize(
    ("name", "value", "code", "plane", "grain"),
    [
        ("clearance_least", 16, "clearance-small", {}, "straight"),
        ("awkward_angle_least", 46, "angle-low", {}, "curly"),
        ("cutting_angle_most", 44, "angle-steep", {}, "straight"),
        ("curly_angle_wanted", 40, "no-cap-iron", {"setback": None}, "curly"),
        ("curly_setback_most", 0.1, "cap-iron-far-for-curly", {}, "curly"),
        ("setback_shavings_least", 8, "cap-iron-chokes", {}, "straight"),
        ("finishing_setback_most", 0.1, "cap-iron-far", {}, "straight"),
        ("ridge_most", 0.005, "ridge-high", {}, "straight"),
    ],
)
def test_each_custom_moves_its_finding(name, value, code, plane, grain, monkeypatch):
    subject = SMOOTHER.having(**plane)
    usual = code in _codes(subject, grain)
    monkeypatch.setattr(plane_checks, "CUSTOMS", SurfaceCustoms(**{name: value}))
    assert (code in _codes(subject, grain)) != usual


def test_findings_name_customs_as_customs():
    for code, level, beyond, _, grain in BEYOND:
        found = check_plane(SMOOTHER.having(**beyond), rule=MM, grain=grain)
        row = next(f for f in found if f.code == code)
        assert row.source == "geometry" or row.source.startswith("custom"), code
        assert row.remedy and level != "good"


def test_where_to_begin_with_the_cap_iron():
    assert setback_to_begin(0.1) == pytest.approx((0.3, 0.5))
    # What it advises is itself without fault.
    for shaving in (0.02, 0.05):
        for setback in setback_to_begin(shaving):
            plane = SMOOTHER.having(
                shaving=shaving, setback=setback, camber_radius=1500.0, overlap=70
            )
            assert set(_codes(plane, "curly").values()) == {"good"}


def test_the_camber_it_asks_for_is_enough():
    for plane in (SMOOTHER.having(shaving=0.06), Plane(bed=12, bevel="up", setback=None, skew=20)):
        wide, drop = plane.iron_width, plane.camber_needed
        mended = plane.having(camber_radius=wide**2 / (8 * drop) + drop / 2)
        assert plane.corner_depth > 0
        assert mended.corner_depth == pytest.approx(0, abs=1e-6)
        assert mended.having(camber_radius=mended.camber_radius * 1.02).corner_depth > 0


def test_every_authority_on_the_cap_iron_is_named():
    for row in setbacks():
        assert row.source.text and row.source.text in row.sentence(MM)
        if row.source.seen == "none":
            assert "custom" in row.source.text


def test_what_eye_and_nail_notice_is_named_as_custom():
    shows = what_shows(5, ridge=0.01, slope=0.0862, step=0.02)
    assert shows.step_seen and shows.step_felt and shows.scallops_seen and not shows.scallops_cast
    assert shows.sentence(MM).count("custom") == 3
    assert not what_shows(5, step=0.019).step_felt
    assert not what_shows(45, step=0.02).step_seen
    # A jack's scallops throw shadows only under a lamp lower than they are steep.
    assert what_shows(1.5, ridge=0.13, slope=1.56).scallops_cast
    assert not what_shows(1.6, ridge=0.13, slope=1.56).scallops_cast


def test_light_along_the_tracks_shows_nothing():
    shows = what_shows(5, ridge=0.01, slope=0.0862, step=0.02, across=90)
    assert shows.shadow == pytest.approx(0, abs=1e-12)
    assert shows.shading == pytest.approx(0, abs=1e-12)
    assert not (shows.step_seen or shows.scallops_seen)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: cutting_angle(2), "bed was given as 2"),
        (lambda: cutting_angle(60, back_bevel=40), "scrapes"),
        (lambda: cutting_angle(45, bevel="side"), "down, up"),
        (lambda: skewed(45, skew=80), "skew was given as 80"),
        (lambda: Plane(shaving=0), "shaving was given as 0"),
        (lambda: Plane(overlap=100), "overlap was given as 100"),
        (lambda: Plane(setback=-1), "setback was given as -1"),
        (lambda: Plane(camber_radius=10), "less than half the iron's"),
        (lambda: check_plane(SMOOTHER, rule=MM, grain="wild"), "straight, interlocked, curly"),
        (lambda: what_shows(0), "lamp height was given as 0"),
    ],
)
def test_refusals_say_what_was_read_and_what_would_do(make, words):
    with pytest.raises(ValueError, match="give") as caught:
        make()
    assert words in str(caught.value)
