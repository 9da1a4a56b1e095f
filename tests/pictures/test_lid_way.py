"""The lid on its way: where it is drawn, and that its labels keep apart."""

from contextlib import nullcontext

import pytest

from tests.boxes import lift_off, postcard
from tests.pictures.designs import named
from tests.pictures.test_layout_of_labels import _faults as label_faults
from toolkit.box import Panel
from toolkit.pictures import for_paper, lid_picture
from toolkit.plan import plan

SHARES = (0.0, 0.03, 0.5, 0.97, 1.0)


@pytest.mark.parametrize("share", SHARES)
def test_the_lid_is_drawn_as_far_out_as_it_is(share: float) -> None:
    made = plan(postcard())
    out = 168 * share
    shapes = {row.name: row.points for row in lid_picture(made, out=out).drawn.outlines}
    home = {row.name: row.points for row in lid_picture(made, out=0.0).drawn.outlines}
    scale = (max(x for x, _ in home["front end"]) - min(x for x, _ in home["back end"])) / 176
    moved = [a[0] - b[0] for a, b in zip(shapes["lid"], home["lid"], strict=True)]
    assert moved == pytest.approx([out * scale] * len(moved), abs=0.01)
    assert shapes["front end"] == home["front end"]


@pytest.mark.parametrize("edition", [nullcontext, for_paper])
@pytest.mark.parametrize("name", list(named()))
def test_labels_of_every_box_keep_apart(name: str, edition) -> None:  # type: ignore[no-untyped-def]
    made = plan(named()[name])
    if not isinstance(made.design.lid, Panel) or made.design.lid.length.value <= 0:
        return
    before = plan(postcard())
    for share in SHARES:
        out = made.design.lid.length.value * share
        with edition():
            drawn = lid_picture(made, out=out, ghost=before).drawn
        assert label_faults(drawn) == [], share
        if edition is nullcontext:
            assert drawn.height == lid_picture(made, out=0.0).drawn.height


def test_lids_that_cannot_be_drawn_are_told() -> None:
    with pytest.raises(ValueError, match="lifts off"):
        lid_picture(plan(lift_off()), out=0.0)
    for out in (-1.0, 169.0):
        with pytest.raises(ValueError, match="from 0 for home to 168"):
            lid_picture(plan(postcard()), out=out)
