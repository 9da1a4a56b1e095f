"""Controls as widgets: a slider or a row of buttons, and how forms look."""

from __future__ import annotations

from typing import Any

import ipywidgets as widgets

from toolkit.lesson.controls import ChoiceControl, Control
from toolkit.measures import Rule

# Not Layout objects, which widgets would share: a page that is opened again over a running kernel
# knows nothing yet of objects from before, and a widget that leans on one never appears.
WIDE = {"width": "100%", "max_width": "640px"}
ANSWER = {"width": "24em"}
BUTTON = {"width": "auto"}
STYLE = {"description_width": "11em"}


def widget(control: Control, rule: Rule, value: Any) -> widgets.ValueWidget:
    """A slider over the control's options, or a row of buttons for a choice of words."""
    options = control.options(rule, value)
    if isinstance(control, ChoiceControl) and not control.slider:
        return widgets.ToggleButtons(
            options=options, value=value, description=control.label, style=STYLE
        )
    return widgets.SelectionSlider(
        options=options,
        value=value,
        description=control.label,
        tooltip=control.label,
        continuous_update=True,
        style=STYLE,
        layout=WIDE,
    )
