"""The dovetail itself: slope, layout, dividers, gauge lines, what holds it, and how well it fits.

Names as at the bench: a *tail board* carries tails, its *baseline* is where they are narrowest;
the *knifed* face of a cheek is the outside of the tail board, the *far* face its inside.
"""
