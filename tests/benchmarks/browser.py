"""From a key press to a painted picture: ``python -m tests.benchmarks.browser``.

Three sliders stand in one page of one JupyterLab: the lesson's own (t), one whose callback only
sets a word (e), and ``interact`` with a new pyplot figure of the same drawing (i). Their presses
take turns, so that whatever else the machine does meets all three alike. Each press goes on to a
place where that slider has not been: what a cache remembers is no measure of a first look. The
lesson works the next step of a resting slider out beforehand; leaps from one end to the other,
which nobody can foresee, are measured by themselves. Times are for comparing within one run; only
the ratios mean anything elsewhere.
"""

import tempfile
from pathlib import Path
from statistics import median
from time import perf_counter, sleep

import nbformat
from playwright.sync_api import Page

from tests.browser import harness
from tests.browser.lesson_page import LessonPage

PRESSES = 60
WARM = 5
BURST = 30
LEAPS = 12
NAMES = {"t": "the lesson", "e": "an empty callback", "i": "interact, new pyplot figure"}

LESSON = """
from toolkit.explore import lesson4 as lesson
explorer = lesson.explore().widget
explorer.add_class("bench-t")
explorer
"""
EMPTY = """
import ipywidgets as widgets
options = [(f"{n / 10:g} mm", n / 10) for n in range(10, 91)]
slider = widgets.SelectionSlider(options=options, value=4.0, description="groove depth")
word = widgets.HTML("<p>4.0</p>")
slider.observe(lambda change: setattr(word, "value", f"<p>{change['new']}</p>"), names="value")
empty = widgets.VBox([slider, word])
empty.add_class("bench-e")
empty
"""
# What somebody writes who has the lines and the places of the words already: a figure of pyplot's
# for each step. Finding the lines is not counted, so that this is the least that it can take.
INTERACT = """
import matplotlib.pyplot as plt
from matplotlib.collections import LineCollection, PolyCollection
from toolkit.lesson.controls import with_values
from toolkit.pictures import corner_picture
from toolkit.pictures.kit.pens import PENS
from toolkit.plan import plan

kept = lesson.own()

def worked_out(depth):
    return plan(with_values(kept.choices, {"groove.depth": depth}))

drawings = {depth: corner_picture(worked_out(depth), ghost=kept).drawn for _, depth in options}

def corner(depth):
    worked_out(depth)
    drawn = drawings[depth]
    figure = plt.figure(figsize=(drawn.width / 96, drawn.height / 96))
    axes = figure.add_axes((0, 0, 1, 1), xlim=(0, drawn.width), ylim=(0, drawn.height))
    axes.axis("off")
    for name, pen in PENS.items():
        lines = [line.points for line in drawn.lines if line.pen == name]
        if pen.fill:
            axes.add_collection(PolyCollection(lines, color=pen.fill, linewidth=0))
        else:
            axes.add_collection(LineCollection(lines, color=pen.colour, linewidth=pen.width))
    for label in drawn.labels:
        axes.text(label.x0, label.y0, label.text, fontsize=9.5)
    plt.show()

again = widgets.SelectionSlider(options=options, value=4.0, description="groove depth")
shown = widgets.interactive(corner, depth=again)
shown.add_class("bench-i")
shown
"""

# The first change that only Python's answer can make, then two frames: the second begins once the
# first has been painted.
PROBE = """
() => {
  window.__pressed = 0;
  window.__times = {};
  window.addEventListener('keydown', () => { window.__pressed = performance.now(); }, true);
  const painted = (name, pressed) => requestAnimationFrame(() => requestAnimationFrame(() => {
    const at = performance.now();
    window.__times[name] = {took: at - pressed, at};
  }));
  const wanted = {t: 'figure', e: 'p', i: 'img'};
  for (const [name, tag] of Object.entries(wanted)) {
    new MutationObserver(async rows => {
      const pressed = window.__pressed;
      const nodes = rows.flatMap(row => [...row.addedNodes]).filter(node => node.nodeType === 1);
      const found = nodes.map(node => node.matches(tag) ? node : node.querySelector(tag));
      const shown = found.find(Boolean);
      if (!shown) return;
      if (name === 'i') await shown.decode();
      painted(name, pressed);
    }).observe(document.querySelector('.bench-' + name), {subtree: true, childList: true});
  }
}
"""
CONTENT = {
    "t": "() => document.querySelector('.bench-t figure').outerHTML",
    "e": "() => document.querySelector('.bench-e p').outerHTML",
    "i": "() => document.querySelector('.bench-i img').src",
}


def _notebook(path: Path) -> None:
    cells = [nbformat.v4.new_code_cell(source.strip()) for source in (LESSON, EMPTY, INTERACT)]
    # Without a kernel's name JupyterLab would ask for one, and wait.
    kernel = {"name": "python3", "display_name": "Python 3 (ipykernel)", "language": "python"}
    nbformat.write(nbformat.v4.new_notebook(cells=cells, metadata={"kernelspec": kernel}), path)


def _press(page: Page, name: str, key: str) -> float:
    """One press, and how long until its picture was painted. [ms]"""
    page.evaluate("name => { delete window.__times[name]; }", name)
    page.locator(f".bench-{name} .noUi-handle").first.focus()
    page.keyboard.press(key)
    page.wait_for_function("name => window.__times[name]", arg=name, timeout=20_000)
    # What the kernel still has to say of this press must not meet the next one.
    page.wait_for_timeout(150)
    return float(page.evaluate("name => window.__times[name].took", name))


def _burst(page: Page, name: str) -> tuple[float, bool]:
    """Thirty steps in a second: how far behind the last picture came, and whether it was right.

    [ms]
    """
    _press(page, name, "Home")
    start = perf_counter()
    for step in range(BURST):
        sleep(max(0.0, start + step / BURST - perf_counter()))
        page.keyboard.press("ArrowRight")
    shown, before = page.evaluate(CONTENT[name]), ""
    while shown != before:
        page.wait_for_timeout(1000)
        before, shown = shown, page.evaluate(CONTENT[name])
    behind = float(page.evaluate("name => window.__times[name].at - window.__pressed", name))
    # Away and back without haste: what stands there then is right.
    _press(page, name, "ArrowLeft")
    _press(page, name, "ArrowRight")
    return behind, shown == page.evaluate(CONTENT[name])


def main() -> None:
    """Measure and print medians, 95 % points and ratios of one run."""
    times: dict[str, list[float]] = {name: [] for name in NAMES}
    with tempfile.TemporaryDirectory() as folder, harness.lab(Path(folder)) as server:
        _notebook(server.notebooks / "benchmark.ipynb")
        with harness.browser() as opened, harness.watched(opened) as watched:
            page = watched.page
            lesson = LessonPage(watched)
            lesson.open(server.url, "benchmark.ipynb")
            lesson.run_all()
            page.locator(".bench-i img").first.wait_for()
            page.evaluate(PROBE)
            for name in times:
                _press(page, name, "Home")
            for turn in range(WARM + PRESSES):
                for name, took in times.items():
                    value = _press(page, name, "ArrowRight")
                    if turn >= WARM:
                        took.append(value)
            leaps = {
                name: median(_press(page, name, key) for key in ("Home", "End") * LEAPS)
                for name in ("t", "e")
            }
            bursts = {name: _burst(page, name) for name in times}
            lesson.shut_down()
    middle = {name: median(took) for name, took in times.items()}
    late = {name: sorted(took)[int(0.95 * len(took))] for name, took in times.items()}
    print(f"{PRESSES} presses each, by turns, in one run; only ratios mean anything elsewhere")
    for name, label in NAMES.items():
        behind, right = bursts[name]
        print(
            f"({name}) {label:28} median {middle[name]:6.1f} ms   95 % {late[name]:6.1f} ms   "
            f"{BURST} steps in a second: {behind:5.0f} ms behind, "
            f"{'the last one right' if right else 'NOT the last one'}"
        )
    t, e, i = (middle[name] for name in NAMES)
    print(f"(t − e)/(i − e) = {(t - e) / (i - e):.2f}   aim ≤ 0.40")
    print(f"t / e           = {t / e:.2f}   aim ≤ 1.30")
    print(f"t / e, leaps    = {leaps['t'] / leaps['e']:.2f}   no aim; nothing foreseen")
    print(f"95 % / median   = {late['t'] / t:.2f}   aim < 1.60")


if __name__ == "__main__":
    main()
