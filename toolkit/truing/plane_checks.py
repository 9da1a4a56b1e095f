"""What an experienced maker would say of the way a plane is set, and of the ridges it leaves."""

from __future__ import annotations

from toolkit.results import GEOMETRY, Finding
from toolkit.truing.jobs import Clearing
from toolkit.truing.planes import Plane


def check_scallops(found: Clearing) -> Finding:
    """Whether one plane's ridges will show after the next plane.

    Parameters
    ----------
    found : Clearing
        The ridges, and what is taken off them. [mm]

    Returns
    -------
    Finding
        ``scallops-show-through`` or ``good-scallops``.

    Source
    ------
    Geometry.
    """
    if found.shows:
        remedy = f"Make {found.needed} passes, or lay the strokes before it closer."
        return Finding(
            "care", "scallops-show-through", "scallops", found.sentence, remedy, GEOMETRY
        )
    return Finding("good", "good-scallops", "scallops", found.sentence, "", GEOMETRY)


def check_iron(plane: Plane) -> Finding:
    """Whether the corners of a plane's iron stay clear of the wood.

    Parameters
    ----------
    plane : Plane
        The plane as it is set. [mm]

    Returns
    -------
    Finding
        ``iron-corners-track`` or ``good-iron``.

    Source
    ------
    Geometry.
    """
    if plane.corners_cut:
        deepest = plane.depth - plane.corner_track
        return Finding(
            "care",
            "iron-corners-track",
            plane.name,
            f"it {plane.shaving}",
            f"Set it finer than {deepest:.2g} mm, or grind more camber.",
            GEOMETRY,
        )
    return Finding("good", "good-iron", plane.name, f"it {plane.shaving}", "", GEOMETRY)
