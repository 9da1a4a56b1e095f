"""From a key press to a painted picture: ``python -m tests.benchmarks.browser``.

Three sliders stand in one page of one JupyterLab: the lesson's own (t), one whose callback only
sets a word (e), and ``interact`` with a new pyplot figure of the same drawing (i). Their presses
alternate, so that whatever else the machine does meets all three alike. Times are for comparing
within one run; only the ratios mean anything elsewhere.
"""

from __future__ import annotations

import tempfile
from pathlib import Path
from statistics import median

import nbformat
from playwright.sync_api import Page

from tests.browser import harness
from tests.browser.lesson_page import LessonPage

PRESSES = 60
BURST = 30

LESSON = """
from toolkit.explore import lesson4 as lesson
sliders = lesson.explore().widget
sliders.add_class("bench-t")
sliders
"""
EMPTY = """
import ipywidgets as widgets
options = [(f"{n / 10:.1f} mm", n / 10) for n in range(10, 91)]
slider = widgets.SelectionSlider(options=options, value=4.0, description="groove depth")
word = widgets.HTML("<p>4.0</p>")
slider.observe(lambda change: setattr(word, "value", f"<p>{change['new']}</p>"), names="value")
empty = widgets.VBox([slider, word])
empty.add_class("bench-e")
empty
"""
INTERACT = """
import matplotlib.pyplot as plt
from matplotlib_inline.backend_inline import set_matplotlib_formats
from toolkit.explore.controls import with_values
from toolkit.pictures import corner_picture, ink
from toolkit.plan import plan

set_matplotlib_formats("svg")
plt.rcParams["svg.fonttype"] = "none"
kept = lesson.own()

def fresh(width, height):
    figure = plt.figure(figsize=(width / 72, height / 72), facecolor="#fcfaf4")
    plt.axes([0, 0, 1, 1]).set_axis_off()
    marks = ink._Ink()
    figure.add_artist(marks)
    figure.savefig = lambda out, **_: out.write('<svg><g id="figure_1"></g></svg>')
    return figure, marks

def corner(depth):
    usual, ink._figure = ink._figure, fresh
    try:
        made = plan(with_values(kept.choices, {"groove.depth": depth}))
        corner_picture(made, which="back", ghost=kept)
    finally:
        ink._figure = usual

again = widgets.SelectionSlider(options=options, value=4.0, description="groove depth")
shown = widgets.interactive(corner, depth=again)
shown.add_class("bench-i")
shown
"""

# The first change that only Python's answer can make, then two frames: the second begins once the
# first has been painted.
PROBE = """
() => {
  window.__times = {};
  const targets = {t: 'figure', e: '.widget-html-content', i: '.jp-OutputArea'};
  let pressed = 0, which = null;
  window.addEventListener('keydown', event => {
    pressed = performance.now();
    which = event.target.closest('.bench-t, .bench-e, .bench-i')?.className.match(/bench-([tei])/)?.[1];
  }, true);
  const painted = (name, at) => requestAnimationFrame(() => requestAnimationFrame(() => {
    window.__times[name] = {took: performance.now() - at, at: performance.now()};
  }));
  for (const [name, inside] of Object.entries(targets)) {
    const root = document.querySelector('.bench-' + name);
    new MutationObserver(async rows => {
      const at = pressed;
      for (const row of rows) {
        const nodes = [...row.addedNodes].filter(node => node.nodeType === 1);
        if (name === 'i') {
          const picture = nodes.map(n => n.matches?.('img') ? n : n.querySelector?.('img')).find(Boolean);
          if (!picture) continue;
          await picture.decode();
        } else if (!nodes.some(n => name === 't' ? n.matches('figure') : n.matches('p'))) continue;
        painted(name, at);
        return;
      }
    }).observe(root, {subtree: true, childList: true});
  }
}
"""


def _notebook(path: Path) -> None:
    cells = [nbformat.v4.new_code_cell(source.strip()) for source in (LESSON, EMPTY, INTERACT)]
    # Without a kernel's name JupyterLab would ask for one, and wait.
    kernel = {"name": "python3", "display_name": "Python 3 (ipykernel)", "language": "python"}
    book = nbformat.v4.new_notebook(cells=cells, metadata={"kernelspec": kernel})
    nbformat.write(book, path)


def _press(page: Page, name: str, key: str) -> float:
    page.evaluate("name => { delete window.__times[name]; }", name)
    page.locator(f".bench-{name} .noUi-handle").first.focus()
    page.keyboard.press(key)
    page.wait_for_function("name => window.__times[name]", arg=name, timeout=20_000)
    # What the kernel still has to say of this press must not meet the next one.
    page.wait_for_timeout(150)
    return float(page.evaluate("name => window.__times[name].took", name))


def _burst(page: Page, name: str) -> tuple[float, str]:
    """Thirty steps in a second: how long after the last one the last picture stood there. [ms]"""
    page.locator(f".bench-{name} .noUi-handle").first.focus()
    for _ in range(BURST):
        page.keyboard.press("ArrowRight")
        page.wait_for_timeout(1000 / BURST - 3)
    last = page.evaluate("performance.now()")
    before = -1.0
    for _ in range(40):
        page.wait_for_timeout(150)
        now = float(page.evaluate("name => window.__times[name]?.at ?? 0", name))
        if now == before:
            break
        before = now
    page.wait_for_timeout(500)
    readout = page.locator(f".bench-{name} .widget-readout").first.inner_text()
    text = page.locator(f".bench-{name}").first.inner_text()
    if name == "t":
        right = f"{readout.removesuffix(' mm')} back groove" in text
    elif name == "e":
        right = readout.removesuffix(" mm") in text.splitlines()[-1]
    else:
        right = True
    return max(0.0, before - float(last)), "the last one right" if right else "NOT the last one"


def main() -> None:
    """Measure and print medians, 95 % points and ratios of one run."""
    with tempfile.TemporaryDirectory() as folder, harness.lab(Path(folder)) as server:
        _notebook(server.notebooks / "benchmark.ipynb")
        with harness.browser() as opened, harness.watched(opened) as watched:
            page = watched.page
            lesson = LessonPage(watched)
            lesson.begin(server.url, "benchmark.ipynb")
            page.locator(".bench-i img").first.wait_for()
            page.evaluate(PROBE)
            times: dict[str, list[float]] = {"t": [], "e": [], "i": []}
            for turn in range(PRESSES + 5):
                key = "ArrowRight" if turn % 2 else "ArrowLeft"
                for name, took in times.items():
                    value = _press(page, name, key)
                    if turn >= 5:
                        took.append(value)
            bursts = {name: _burst(page, name) for name in times}
    middle = {name: median(took) for name, took in times.items()}
    late = {name: sorted(took)[int(0.95 * len(took))] for name, took in times.items()}
    print(f"{PRESSES} presses each, alternating, in one run; only ratios mean anything elsewhere")
    words = {"t": "the lesson", "e": "an empty callback", "i": "interact with a new figure"}
    for name, label in words.items():
        behind, right = bursts[name]
        print(
            f"({name}) {label:28} median {middle[name]:6.1f} ms   95 % {late[name]:6.1f} ms   "
            f"30 steps in a second: {behind:5.0f} ms behind, {right}"
        )
    t, e, i = (middle[name] for name in "tei")
    print(f"(t − e)/(i − e) = {(t - e) / (i - e):.2f}   aim ≤ 0.40")
    print(f"t / e           = {t / e:.2f}   aim ≤ 1.30")
    print(f"95 % / median   = {late['t'] / t:.2f}   aim < 1.60")


if __name__ == "__main__":
    main()
