"""The pages of a class's wood: what to buy, what to pack, how it lies on the boards."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from toolkit.box import making_told, year_between
from toolkit.classroom.contents import Plans
from toolkit.classroom.wood import BRIEF, ClassWood, Owned, class_wood
from toolkit.classroom.wood_tables import (
    TO_BUY,
    board_table,
    kit,
    stick_table,
    sticks,
    volume_table,
)
from toolkit.document import Figure, Section, TableBlock
from toolkit.files import WeekendClass
from toolkit.measures import Rule
from toolkit.plan import Plan
from toolkit.results import capital
from toolkit.stock import (
    Laid,
    LaidPart,
    Strip,
    cut_table,
    order_by,
    piece_table,
    sets_needed,
)
from toolkit.wood import MONTHS


def pages(taught: WeekendClass, plans: Plans, *, spare: Plan) -> list[tuple[str, list[Section]]]:
    """The pages of the wood, reckoned from one layout; each first says what it says in short."""
    buying = taught.buying
    sets = sets_needed(len(plans), spare=buying.spare) - len(plans)
    wood = class_wood(plans, boards=taught.boards, spare=spare, sets=sets, practice=buying.practice)
    packed = kits(taught, plans, wood, spare=spare)
    return [shopping(taught, wood), packed, boards(taught, wood)]


def shopping(taught: WeekendClass, wood: ClassWood) -> tuple[str, list[Section]]:
    """What to buy and by when."""
    rule, buying = taught.rule, taught.buying
    bought = sticks(wood.missing, longest=buying.longest, rule=rule)
    order = order_by(
        taught.day.dates[0], settling_days=buying.settling_days, delivery_days=buying.delivery_days
    ).sentence
    said = (
        f"{len(bought)} length{'' if len(bought) == 1 else 's'} to buy. {order}"
        if bought
        else "Nothing to buy: the boards on hand give every part."
    )
    rows = stick_table(bought, owners=wood.owners, rule=rule)
    volumes = volume_table(wood.missing, title="To buy, by volume", waste=buying.waste, rule=rule)
    none = "" if taught.boards else "No boards are told of."
    hand = board_table(taught.boards, laid=wood.boards, rule=rule)
    spare = (
        f"With {buying.spare:.0%} of sets in reserve and practice blanks, whether on hand or to be "
        "bought."
    )
    whole = volume_table(wood.needed, title="All wood of the class", waste=buying.waste, rule=rule)
    return said, [
        Section.of("buy", "To buy", said, *([rows, volumes] if bought else [])),
        Section.of("hand", "On hand", none, hand),
        Section.of("all", "All that the class needs", spare, whole),
        Section.of("moisture", "How wet it may be", _moisture(taught)),
    ]


def _moisture(taught: WeekendClass) -> str:
    """What the panels are reckoned for, and what the date alone would guess."""
    rooms, month = taught.box.rooms, taught.day.dates[0].month - 1
    guess = year_between(rooms).moisture[month]
    return (
        f"The class's box is reckoned for wood at {making_told(rooms)}. By the date alone a first "
        f"guess for {MONTHS[month]}, between its driest and its dampest room, is {guess:.1f} %: "
        "nothing is reckoned from that. Before panels are fitted, meter them or weigh an offcut, "
        "and write the reading into the class file, below [rooms], as such as "
        'make_moisture = "9 %"; else the air of the room over two or three weeks, as make.'
    )


def kits(
    taught: WeekendClass, plans: Plans, wood: ClassWood, *, spare: Plan
) -> tuple[str, list[Section]]:
    """The kits to pack, a table for each student."""
    tables = []
    for student in taught.students:
        if (plan := plans.get(student.number)) is not None:
            remark = "Left-handed." if student.hand == "left" else ""
            tables.append(kit(plan, wood=wood, whose=student.called, remark=remark))
    spares = dict.fromkeys(one.called for one in wood.owners.values() if one.kind == "spare")
    reserve = [kit(spare, wood=wood, whose=whose) for whose in spares]
    kept, apart = ([TableBlock(one, kept=True) for one in some] for some in (tables, reserve))
    many = sum(len(table.rows) for table in tables)
    short = sum(row[3] == TO_BUY for table in tables for row in table.rows)
    said = f"{len(tables)} kits of {many} pieces" + (f", {short} of them to buy." if short else ".")
    words = (
        "Rough sizes, rounded up, on each student's own rule. Write the number on every piece as "
        "it comes off the saw, and put the handout and the rubric in."
    )
    return said, [
        Section.of("kits", "A kit for each student", words, *kept),
        Section.of("reserve", "Sets in reserve", "", *apart),
    ]


def boards(taught: WeekendClass, wood: ClassWood) -> tuple[str, list[Section]]:
    """The parts of the class on its boards, drawn, with saw cuts and what is proved."""
    rule = taught.rule
    said = wood.laid.sentence(rule) if wood.laid else "No boards are on hand."
    extra = f"Spares and practice: {wood.extra.sentence(rule)}" if wood.extra else ""
    rows = []
    for number, laid in enumerate(wood.boards, 1):
        cuts, pieces = cut_table(laid, rule=rule), piece_table(laid, rule=rule)
        drawing = _drawn_board(laid, wood.owners, rule)
        title, words = capital(laid.board.name), laid.sentence(rule)
        rows.append(Section.of(f"board-{number}", title, words, drawing, cuts, pieces))
    alike = wood.laid is not None and wood.laid.alike
    told = (
        extra,
        "On the drawings 3 s1 is side 1 of student 3 and S2 lid the lid of spare set 2: "
        + ", ".join(f"{code} {word}" for word, code in BRIEF.items())
        + ". Where a name has no room, the saw cut's number leads to it in the table.",
        "Parts that are nearly alike are sawn to the larger of them." if alike else "",
        f"To be bought: {', '.join(one.name for one in wood.missing)}." if wood.missing else "",
    )
    return said, [Section.of("proof", "Is it enough", said, *told), *rows]


def _drawn_board(laid: Laid, owners: Mapping[str, Owned], rule: Rule) -> Figure:
    """A board with its parts under short names."""
    from toolkit.pictures import board_picture, for_paper

    def brief(piece: LaidPart) -> LaidPart:
        return replace(piece, part=owners[piece.part].brief)

    def short(strip: Strip) -> Strip:
        return replace(strip, pieces=tuple(map(brief, strip.pieces)))

    sections = [replace(one, strips=tuple(map(short, one.strips))) for one in laid.sections]
    # A class is laid out for the least wood: its figure is not weighed, so it is not told.
    drawn = replace(laid, sections=tuple(sections))
    with for_paper():
        return Figure(board_picture(laid.board, drawn, rule=rule, looks=False))
