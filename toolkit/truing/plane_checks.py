"""What an experienced maker would say of the way a plane is set, and of the ridges it leaves."""

from __future__ import annotations

from toolkit.planes import Plane
from toolkit.results import GEOMETRY, Finding
from toolkit.truing.jobs import Clearing


def check_scallops(found: Clearing) -> Finding:
    """Whether one plane's ridges will show after the next: ``scallops-show-through``."""
    if found.shows:
        remedy = f"Make {found.needed} passes, or lay the strokes before it closer."
        return Finding(
            "care", "scallops-show-through", "scallops", found.sentence, remedy, GEOMETRY
        )
    return Finding("good", "good-scallops", "scallops", found.sentence, "", GEOMETRY)


def check_iron(plane: Plane) -> Finding:
    """Whether the corners of a plane's iron stay clear of the wood: ``iron-corners-track``."""
    said = f"it takes a shaving {plane.shaving:.3g} mm deep and {plane.shaving_width:.3g} mm wide"
    if plane.iron_width < plane.arc_width * (1 - 1e-6):
        dig = plane.corner_depth
        return Finding(
            "care",
            "iron-corners-track",
            plane.name,
            f"{said}, the full width of its iron: the corners dig in and leave tracks {dig:.2g} mm "
            "deep.",
            f"Set it finer than {plane.shaving - dig:.2g} mm, or grind more camber.",
            GEOMETRY,
        )
    said += f", within its iron of {plane.iron_width:.3g} mm."
    return Finding("good", "good-iron", plane.name, said, "", GEOMETRY)
