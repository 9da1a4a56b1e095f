"""The cautions on the first page of every handout.

They are the usual cautions of the trade (common practice, no source), and say themselves what
comes before them.
"""

LOCAL_RULES = (
    "Local rules and the shop's licensed or insured practice come first. Where they differ from "
    "this sheet, follow them."
)

CAUTIONS: tuple[tuple[str, str], ...] = (
    (
        "Edges",
        "Keep both hands behind the cutting edge. Fix the work in a vice, a holdfast or "
        "against a bench hook; never hold it in one hand and cut with the other.",
    ),
    (
        "Body",
        "Stand out of the line of the tool, and let nobody stand in front of it. Let a tool "
        "that falls fall.",
    ),
    (
        "Knife and saw",
        "Draw the knife away from the holding hand. Start a saw with the thumb as a "
        "guide well above the teeth, and take it away once the kerf holds.",
    ),
    (
        "Chopping",
        "Chop over the solid bench, not in the vice. Everyone near struck tools wears eye "
        "protection.",
    ),
    (
        "Sharp",
        "A dull iron slips. Stop and hone it. Carry tools one at a time, edge down; set "
        "planes down as the shop teaches.",
    ),
    (
        "Grinding",
        "A powered wheel is the instructor's, with eye protection, guards and rest set "
        "to the maker's and the shop's rules, and no gloves near it.",
    ),
    (
        "Dust",
        "Planes make shavings; saws and scrapers make dust. Vacuum it, do not sweep or blow. "
        "Some woods set off asthma or a rash: say so before the wood is chosen. Leave spalted, "
        "treated and unknown wood alone.",
    ),
    (
        "Oily rags",
        "Cloths wet with a drying oil heat up by themselves and can catch fire. Spread "
        "each one flat and alone outdoors to dry, or drown it in water in a lidded metal can. "
        "Never in a heap, a pocket or a bin.",
    ),
    (
        "Finishes",
        "Open the windows, keep flames away, wear gloves with solvents. Never warm wax "
        "and turpentine over a flame.",
    ),
    (
        "Cuts",
        "Press on it, raise it, and get help if it has not stopped in ten minutes. Know where "
        "the first-aid box hangs; at home, keep it and a telephone within reach.",
    ),
)
