"""One lesson on a page, driven as a student drives it: by keys, clicks and typing.

What is waited for is always something computed in Python beforehand: a page that has merely
changed may still be showing a state in between.
"""

import json
import os
import re
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from html import unescape

from playwright.sync_api import Locator, Page, TimeoutError as NeverCameError

from tests.browser.harness import PHOTOGRAPHS, PICTURES, Watched
from toolkit.box import Choices
from toolkit.lesson import ImpossibleError, View
from toolkit.lesson.lesson4_box import GroovedCorner


def corner_view(choices: Choices, kept: Choices) -> View:
    """What lesson 4's first scene shows of a box, over the kept one."""
    now, before = GroovedCorner(choices, {}), None
    if choices != kept:
        with suppress(ImpossibleError):
            before = GroovedCorner(kept, {})
    return View(now.picture(before), now.values(), now.verdict)


# The part of the page with the sliders, in JupyterLab and without code alike.
EXPLORER = ".jp-OutputArea-output:has(.widget-slider)"
# A picture may take this long on a machine that is busy with other tests. [ms]
WAIT = 30_000

_OPENED = """
() => window.jupyterapp?.shell?.currentWidget?.content?.widgets?.length > 0
"""
# What stood there before goes with its kernel, and nobody is asked whether to save it.
_TURN_TO = """
async path => {
  const app = window.jupyterapp, old = app.shell.currentWidget;
  await app.restored;
  await old.sessionContext.ready;
  await old.sessionContext.shutdown();
  old.dispose();
  const panel = await app.commands.execute('docmanager:open', {path, factory: 'Notebook'});
  await panel.context.ready;
}
"""
_RUN = """
async () => {
  const app = window.jupyterapp;
  await app.restored;
  const panel = app.shell.currentWidget;
  await panel.context.ready;
  await panel.sessionContext.ready;
  await app.commands.execute('notebook:run-all-cells');
}
"""
# A lesson of the workbook's that was opened just now runs by itself: nothing is to be run twice.
_BY_ITSELF = "() => !!window.jupyterapp.shell.currentWidget.model.sharedModel.getMetadata('ours')"
_RAN = """
() => {
  const cells = window.jupyterapp.shell.currentWidget.content.widgets
    .filter(cell => cell.model.type === 'code').map(cell => cell.model);
  return cells.every(cell => cell.executionCount !== null)
    || cells.some(cell => cell.outputs.toJSON().some(one => one.output_type === 'error'));
}
"""
_CELLS = """
() => window.jupyterapp.shell.currentWidget.content.widgets
  .filter(cell => cell.model.type === 'code')
  .map(cell => [cell.model.sharedModel.getSource(), cell.model.executionCount,
                cell.model.outputs.toJSON()])
"""
_RUN_ONE = """
async source => {
  const app = window.jupyterapp, book = app.shell.currentWidget.content;
  book.activeCellIndex = book.widgets.findIndex(
    cell => cell.model.type === 'code' && cell.model.sharedModel.getSource() === source);
  await app.commands.execute('notebook:run-cell');
}
"""
_SHUT_DOWN = "() => window.jupyterapp?.shell.currentWidget?.sessionContext?.shutdown()"
_FRAME = "() => new Promise(drawn => requestAnimationFrame(() => drawn()))"
_SHOWS = """
({root, svg, caption, words}) => {
  const here = document.querySelector(root);
  const plain = node => (node?.textContent ?? '').replace(/\\s+/g, ' ').trim();
  const parsed = html => {
    const holder = document.createElement('template');
    holder.innerHTML = html;
    return holder.content;
  };
  const figure = here?.querySelector('figure');
  return !!figure
    && plain(figure.querySelector('figcaption')) === caption
    && figure.querySelector('svg')?.outerHTML === parsed(svg).querySelector('svg').outerHTML
    && plain(here).endsWith(plain(parsed(words)));
}
"""
_WATCH = """
root => {
  const seen = window.__steady = {on: true, heights: [], tops: []};
  const look = () => {
    if (!seen.on) return;
    const here = document.querySelector(root), picture = here?.querySelector('figure svg');
    const box = picture?.getBoundingClientRect();
    seen.heights.push(box ? box.height : 0);
    seen.tops.push(box ? box.top - here.getBoundingClientRect().top : 0);
    requestAnimationFrame(look);
  };
  look();
}
"""
_WATCHED = "() => { window.__steady.on = false; return window.__steady; }"


def plain(text: str) -> str:
    """Text as one line, whatever breaks it across the page."""
    return re.sub(r"\s+", " ", text).strip()


@dataclass(slots=True)
class Steady:
    """How much a picture's height and place varied, frame by frame. [px]"""

    frames: int = 0
    least: float = 0.0
    height: float = 0.0
    travel: float = 0.0


class LessonPage:
    """A lesson that is open in the browser."""

    def __init__(self, watched: Watched) -> None:
        self.watched = watched
        self.page = watched.page
        self.just_opened = False
        self.look_at(None)

    def open(self, url: str, notebook: str) -> None:
        """Open a notebook in JupyterLab, without what was open before."""
        self.page.goto(f"{url}/lab/tree/{notebook}?reset")
        self.page.wait_for_function(_OPENED)
        self.just_opened = True

    def turn_to(self, notebook: str) -> None:
        """Open another notebook in its place, which takes a fraction of opening JupyterLab."""
        self.page.evaluate(_TURN_TO, notebook)
        self.page.wait_for_function(_OPENED)
        self.just_opened = True

    def look_at(self, scene: str | None) -> None:
        """Turn to the sliders of one scene of the lesson, or to the first that there are."""
        self.root = f".scene-{scene}" if scene else EXPLORER
        self.explorer = self.page.locator(self.root).first

    def run_all(self) -> None:
        """Have every cell run, by itself if it was opened just now, and see that none failed."""
        if self.just_opened and self.page.evaluate(_BY_ITSELF):
            self.page.wait_for_function(_RAN)
        else:
            self.page.evaluate(_RUN)
        self.just_opened = False
        failed = self.errors()
        assert failed == [], failed

    def run_cell(self, source: str) -> str:
        """Run the cell of this code again; its new outputs as text."""
        self.page.evaluate(_RUN_ONE, source)
        outputs = next(outputs for code, _, outputs in self.cells() if code == source)
        return plain(json.dumps(outputs, ensure_ascii=False))

    def cells(self) -> list[tuple[str, int | None, list[dict]]]:
        """Code, count and outputs of each code cell, from the notebook's own model."""
        return [tuple(row) for row in self.page.evaluate(_CELLS)]

    def errors(self) -> list[str]:
        """What went wrong in cells."""
        return [
            f"{code}: {output.get('ename')}: {output.get('evalue')}"
            for code, _, outputs in self.cells()
            for output in outputs
            if output["output_type"] == "error"
        ]

    def shut_down(self) -> None:
        """End the kernel that the page began."""
        self.page.evaluate(_SHUT_DOWN)

    def labels(self) -> list[str]:
        """The words before the sliders, in their order."""
        return [
            plain(text)
            for text in self.explorer.locator(".widget-slider label").all_text_contents()
        ]

    def handle(self, label: str) -> Locator:
        """The handle of a slider by the words before it."""
        words = re.compile(rf"^\s*{re.escape(label)}\s*$")
        named = self.page.locator("label").filter(has_text=words)
        return self.explorer.locator(".widget-slider").filter(has=named).get_by_role("slider")

    def readout(self, label: str) -> str:
        """What stands behind a slider."""
        row = self.explorer.locator(".widget-slider").filter(
            has=self.page.locator("label", has_text=label)
        )
        return plain(row.locator(".widget-readout").text_content() or "")

    def press(self, label: str, *keys: str) -> None:
        """Press keys on a slider's handle."""
        handle = self.handle(label)
        handle.focus()
        for key in keys:
            self.page.keyboard.press(key)

    def shows(self, view: View, *, after: str) -> None:
        """Wait until the page shows exactly this: picture, sentence, numbers and findings."""
        scenes = self.page.locator(f'{self.root}[class*="scene-"], {self.root} [class*="scene-"]')
        classes = (scenes.first.get_attribute("class") or "").split()
        scene = next(name[6:] for name in classes if name.startswith("scene-"))
        wanted = {
            "root": self.root,
            "svg": view.figure(scene),
            "caption": plain(view.picture.sentence),
            "words": view.words(scene),
        }
        try:
            self.page.wait_for_function(_SHOWS, arg=wanted, timeout=WAIT)
        except NeverCameError:
            shown = _standing(self.explorer)
            told = plain(unescape(re.sub("<[^>]+>", " ", view.words(scene))))
            raise AssertionError(
                f"after {after} the page should show\n  {plain(view.picture.sentence)} {told}\n"
                f"and shows\n  {shown}"
            ) from None

    def says(self, text: str, *, within: Locator | None = None) -> None:
        """Wait until these words stand there."""
        place = within or self.explorer
        try:
            place.get_by_text(plain(text)).first.wait_for(timeout=WAIT)
        except NeverCameError:
            shown = _standing(place)
            raise AssertionError(f"{text!r} is not in {shown!r}") from None

    def click(self, button: str, *, within: Locator | None = None) -> None:
        """Press a button by its words."""
        (within or self.explorer).get_by_role("button", name=button, exact=True).click()

    def drawn(self) -> None:
        """Wait until the browser has drawn a frame of what is there now."""
        self.page.evaluate(_FRAME)

    @contextmanager
    def steadily(self) -> Iterator[Steady]:
        """Watch the picture in every frame until the block ends."""
        found = Steady()
        # What is off the screen has no size.
        self.explorer.scroll_into_view_if_needed()
        self.page.evaluate(_WATCH, self.root)
        yield found
        seen = self.page.evaluate(_WATCHED)
        found.frames, found.least = len(seen["heights"]), min(seen["heights"])
        found.height = max(seen["heights"]) - min(seen["heights"])
        found.travel = max(seen["tops"]) - min(seen["tops"])

    def photograph(self, name: str, *, what: Locator | None = None) -> None:
        """Keep a picture of the page, for people to look at, where they asked for it."""
        if not os.environ.get(PHOTOGRAPHS):
            return
        PICTURES.mkdir(parents=True, exist_ok=True)
        usual = self.page.viewport_size
        assert usual is not None
        # What is taller than the window would be cut off by the notebook's own scrolling.
        self.page.set_viewport_size({"width": usual["width"], "height": 3400})
        (what or self.explorer).screenshot(path=PICTURES / f"{name}.png")
        self.page.set_viewport_size(usual)

    def card(self, prompt: str) -> Locator:
        """The card of a question: its prompt, its box and what is said to the answer."""
        box = self.page.locator(".widget-vbox").filter(has=self.page.get_by_text(plain(prompt)))
        return box.last

    def answer(self, card: Locator, text: str, *, button: str) -> None:
        """Type into a card's box and press its button."""
        card.locator("input[type=text]").fill(text)
        self.click(button, within=card)


def _standing(place: Locator) -> str:
    """The words that stand there at this moment."""
    return plain(place.text_content() or "") if place.count() else "nothing at all"


def tracebacks(page: Page) -> Sequence[str]:
    """Lines that only a programmer should ever see."""
    text = page.locator("body").text_content() or ""
    return re.findall(r"^.*(?:Traceback \(most recent|Error:).*$", text, flags=re.MULTILINE)
