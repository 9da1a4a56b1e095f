"""What is printed speaks of the student's own joint, lid and hand, and of no other."""

import re

import pytest

from tests.boxes import ears, lift_off, postcard
from tests.reading_pages import Page
from toolkit.handout import handout
from toolkit.plan import plan

THROUGH = {"corner.joint": "through", "corner.lap": None}
TRAY = {"lid.kind": "none"}
# Words that only a box of this kind is told of.
OF = {
    "half-blind": r"half-blind|\blapped\b|\blaps?\b",
    "through": r"through (?:joint|dovetail|corner)s?\b|flush with the outside face",
    "sliding": r"sliding(?! bevel)|lid grooves?\b|low front|finger pull|lid slides?\b|front, rip|"
    r"\bthe front is (?:sawn|ripped)|\brip the front|over the front(?!')",
    "lift-off": r"lift-off|lifts? off|on the rim|battens?\b",
    "lid": r"\blids?\b",
    "ear": r"\bears?\b",
}
BOXES = {
    "half-blind sliding lid": postcard(),
    "through sliding lid": postcard().having(THROUGH),
    "half-blind lift-off lid": lift_off(),
    "through": postcard().having({**THROUGH, **TRAY}),
    "half-blind sliding lid ear": ears(),
    "through sliding lid ear": ears().having(THROUGH),
}
# Advice offers another kind of box, and a tray is told that it is one.
ADVICE = ("Lap the joints: lapped tails end behind the lap.", "it is a tray, its four walls")


def lines(html: str) -> list[str]:
    """What stands by itself: paragraphs, cells, captions, and what is said of drawings."""
    parted = re.sub(r"</(?:td|th|p|li|dd|dt|h\d|caption|figcaption|text)>", r"¶\g<0>", html)
    said = re.findall(r'aria-label="([^"]*)"', html)
    return [" ".join(line.split()) for line in Page(parted).text.split("¶")] + said


@pytest.mark.parametrize("kinds", BOXES)
def test_no_page_speaks_of_another_joint_or_lid(kinds: str) -> None:
    read = lines(handout(plan(BOXES[kinds]), lessons=None))
    read = [line for line in read if not any(advice in line for advice in ADVICE)]
    own = {kind for kind in OF if kind in kinds}
    for kind, words in OF.items():
        found = [line for line in read if re.search(words, line, re.IGNORECASE)]
        if kind in own:
            assert found, f"no line speaks of {kind}"
        else:
            assert not found, f"{kind}: {found[:3]}"


def test_the_handout_is_in_the_students_own_hand_and_ploughs_by_the_ploughs() -> None:
    def page(**tools: str) -> str:
        box = postcard().having({f"tools.{key}": hand for key, hand in tools.items()})
        return handout(plan(box), lessons=(3, 4))

    right, left, plough = page(), page(hand="left"), page(plough_hand="left")

    def corners(html: str) -> list[str]:
        """The drawings that show how boards lie at the bench."""
        named = re.findall(r"<svg[^>]*aria-label=.*?</svg>", html, re.DOTALL)
        shown = re.compile(r'aria-label="(?:(?:Back|Front) corner|[^"]*unfolded)')
        return [svg for svg in named if shown.search(svg)]

    assert len(corners(right)) == len(corners(left)) >= 4
    turned = [one != other for one, other in zip(corners(right), corners(left), strict=True)]
    assert all(turned), turned
    assert "Left-handed: boards and corners are drawn" in left and "Left-handed:" not in right
    for html, hand in ((right, "right"), (left, "right"), (plough, "left")):
        said = Page(html).text
        other = {"right": "left", "left": "right"}[hand]
        assert f"Ploughing, {hand}-handed plough" in said
        assert f"{other}-handed plough" not in said
