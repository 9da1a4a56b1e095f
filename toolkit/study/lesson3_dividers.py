"""Questions of lesson 3 about dividers: where they are set, and what their last mark tells."""

from __future__ import annotations

from toolkit.box.joinery import setting_error, walk
from toolkit.results import below
from toolkit.study.asking import Asking
from toolkit.study.marking import Question

MISSED = (3, 2, 4, 5)  # by how many marks of the rule each step was out, made up


def divider_step(ask: Asking) -> Question | None:
    """The setting of the dividers that walks off equal tails."""
    walked = walk(ask.design.back)
    if walked is None:
        return None
    high, half, pin, n = walked.height, walked.half_pin, walked.pin, walked.steps
    slips = {
        "whole-height": high / n,
        "no-half-pins": (high + pin) / n,
        "one-half-pin": (high - half + pin) / n,
        "no-pin": (high - 2 * half) / n,
        "pin-off": (high - 2 * half - pin) / n,
        "tail-only": walked.tail_width,
        "one-step-more": (high - 2 * half + pin) / (n + 1),
    }
    return ask.question("lesson3.divider-step", walked.step, slips, walked=walked)


def tail_width(ask: Asking) -> Question | None:
    """Width of a tail, from the dividers' step."""
    walked = walk(ask.design.back)
    if walked is None:
        return None
    step, pin = round(walked.step, 3), walked.pin
    answer = step - pin
    slips = {
        "whole-step": step,
        "two-pins": step - 2 * pin,
        "pin-added": step + pin,
        "half-pin": step - walked.half_pin,
        "pin-only": pin,
    }
    return ask.question("lesson3.tail-width", answer, slips, step=step, walked=walked)


def divider_error(ask: Asking) -> Question | None:
    """Dividers that end wrong: by how much to close them."""
    walked, rule = walk(ask.design.back), ask.rule
    if walked is None or walked.steps < 2:
        return None
    n, pin = walked.steps, walked.pin
    out = ask.pick(MISSED) * rule.mark("joints")
    past = pin + n * out
    slips = {"whole-miss": n * out, "with-pin": past / n, "where-it-fell": past, "pin-only": pin}
    return ask.question(
        "lesson3.divider-error",
        setting_error(past, pin=pin, steps=n),
        slips,
        walked=walked,
        past=past,
        out=out,
    )


def off_edge(ask: Asking) -> Question | None:
    """Where the dividers' last mark has no wood to fall on."""
    walked = walk(ask.design.back)
    if walked is None or not below(walked.half_pin, walked.pin):
        return None
    half, pin = walked.half_pin, walked.pin
    slips = {
        "from-the-mark": pin,
        "half-pin-added": pin + half,
        "half-pin-only": half,
        "half-the-half-pin": pin - half / 2,
    }
    return ask.question("lesson3.off-edge", pin - half, slips, walked=walked)
