"""The pages of a class's wood: what to buy, what to pack, how it lies on the boards."""

from __future__ import annotations

from dataclasses import replace

from toolkit.classroom.contents import Plans, each, prose
from toolkit.classroom.kits import TO_BUY, kit
from toolkit.classroom.shopping import stick_table, sticks
from toolkit.classroom.volumes import board_table, volume_table
from toolkit.classroom.wood import ClassWood
from toolkit.document import Figure, Section
from toolkit.files import WeekendClass
from toolkit.measures import Rule
from toolkit.plan import Plan
from toolkit.results import capital
from toolkit.stock import Laid, cut_table, order_by, piece_table

# Names of parts on a drawing that is full of them.
BRIEF = {"side": "s", "back": "bk", "front": "fr", "bottom": "bt", "batten": "bn", "practice": "ps"}


def _order(taught: WeekendClass) -> str:
    buying = taught.buying
    return order_by(
        taught.day.dates[0], settling_days=buying.settling_days, delivery_days=buying.delivery_days
    ).sentence


def shopping(taught: WeekendClass, wood: ClassWood) -> tuple[str, list[Section]]:
    """What to buy and by when; first what it says in short."""
    rule, buying = taught.rule, taught.buying
    bought = sticks(wood.missing, longest=buying.longest)
    order = _order(taught)
    said = (
        f"{len(bought)} stick{'' if len(bought) == 1 else 's'} to buy. {order}"
        if bought
        else "Nothing to buy: the boards on hand give every part."
    )
    volumes = volume_table(wood.missing, title="To buy, by volume", waste=buying.waste, rule=rule)
    blocks = each(stick_table(bought, rule=rule), volumes) if bought else ()
    hand = each(board_table(taught.boards, laid=wood.boards, rule=rule)) if taught.boards else ()
    whole = volume_table(wood.needed, title="All wood of the class", waste=buying.waste, rule=rule)
    return said, [
        Section("buy", "To buy", said, blocks),
        Section("hand", "On hand", "" if hand else "No boards are told of.", hand),
        Section(
            "all",
            "All that the class needs",
            f"With {buying.spare:.0%} of sets in reserve and practice sticks, whether on hand or "
            "to be bought.",
            each(whole),
        ),
    ]


def kits(
    taught: WeekendClass, plans: Plans, wood: ClassWood, *, spare: Plan, sets: int
) -> tuple[str, list[Section]]:
    """The kits to pack, a table for each student."""
    practice = taught.buying.practice
    tables = []
    for student in taught.students:
        if (plan := plans.get(student.number)) is None:
            continue
        remark = "Left-handed." if student.hand == "left" else ""
        tables.append(
            kit(plan, whose=student.called, places=wood.places, practice=practice, remark=remark)
        )
    reserve = [
        kit(spare, whose=f"spare {number}", places=wood.places) for number in range(1, sets + 1)
    ]
    many = sum(len(table.rows) for table in tables)
    short = sum(row[3] == TO_BUY for table in tables for row in table.rows)
    said = f"{len(tables)} kits of {many} pieces" + (f", {short} of them to buy." if short else ".")
    words = (
        "Rough sizes, rounded up, on each student's own rule. Write the number on every piece as "
        "it comes off the saw, and put the handout and the rubric in."
    )
    return said, [
        Section("kits", "A kit for each student", words, each(*tables, kept=True)),
        Section("reserve", "Sets in reserve", "", each(*reserve, kept=True)),
    ]


def boards(taught: WeekendClass, wood: ClassWood) -> tuple[str, list[Section]]:
    """The parts of the class on its boards, drawn, with saw cuts and what is proved."""
    rule = taught.rule
    said = wood.laid.sentence(rule) if wood.laid else "No boards are on hand."
    extra = f"Spares and practice: {wood.extra.sentence(rule)}" if wood.extra else ""
    rows = []
    for number, laid in enumerate(wood.boards, 1):
        blocks = (
            _drawn_board(laid, rule),
            *each(cut_table(laid, rule=rule), piece_table(laid, rule=rule)),
        )
        words = laid.sentence(rule)
        rows.append(Section(f"board-{number}", capital(laid.board.name), words, blocks))
    alike = wood.laid is not None and wood.laid.alike
    told = prose(
        extra,
        "On the drawings 3 s1 is side 1 of student 3 and S2 lid the lid of spare set 2: "
        + ", ".join(f"{code} {word}" for word, code in BRIEF.items())
        + ". Where a name has no room, the saw cut's number leads to it in the table.",
        "Parts that are nearly alike are sawn to the larger of them." if alike else "",
        _missing(wood),
    )
    return said, [Section("proof", "Is it enough", said, told), *rows]


def _drawn_board(laid: Laid, rule: Rule) -> Figure:
    """A board with its parts under short names."""
    from toolkit.pictures import board_picture

    sections = tuple(
        replace(
            section,
            strips=tuple(
                replace(strip, pieces=tuple(replace(p, part=_brief(p.part)) for p in strip.pieces))
                for strip in section.strips
            ),
        )
        for section in laid.sections
    )
    # A class is laid out for the least wood: its looks are not weighed, so they are not told.
    brief = replace(laid, sections=sections)
    return Figure(board_picture(laid.board, brief, rule=rule, paper=True, looks=False))


def _brief(name: str) -> str:
    """A part's name so short that it has room beside the numbers of the cuts."""
    whose, _, part = name.partition(": ")
    who, _, number = whose.partition(" ")
    word, _, which = part.partition(" ")
    code = BRIEF.get(word, word)
    return f"{'S' if who == 'spare' else ''}{number} {code}{which if which.isdigit() else ''}"


def _missing(wood: ClassWood) -> str:
    if not wood.missing:
        return ""
    return f"To be bought: {', '.join(blank.name for blank in wood.missing)}."
