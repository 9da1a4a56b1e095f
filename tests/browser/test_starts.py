"""A lesson starts by itself when it is opened, if its code is known; any other waits."""

from collections.abc import Callable

import nbformat

from tests.browser.harness import Server
from tests.browser.lesson_page import EXPLORER, LessonPage, corner_view
from toolkit.files import read_box
from toolkit.lesson.controls import with_values
from toolkit.study import example_path

DEPTH = "groove depth"
UNFLAGGED = "class_plan.ipynb"
SLIDER = "ipywidgets.IntSlider(description='depth')"
# What JupyterLab says in place of a slider whose kernel is gone, in any frame.
_LISTEN = """
() => {
  const seen = window.__dead = [];
  const look = () => {
    const said = document.querySelector('.jp-Notebook')?.textContent ?? '';
    if (/model not found|Error displaying widget|Loading widget/i.test(said))
      seen.push(said.slice(0, 200));
    if (window.__dead === seen) requestAnimationFrame(look);
  };
  look();
}
"""
_DEAD = "() => { const seen = window.__dead; window.__dead = null; return seen; }"
_BARS = "() => [window.jupyterapp.shell.leftCollapsed, window.jupyterapp.shell.rightCollapsed]"
_TOP = "() => document.querySelector('.jp-WindowedPanel-outer').scrollTop"
_CHANGED = "() => window.jupyterapp.shell.currentWidget.context.model.dirty"
_OPEN_BARS = "() => { const shell = window.jupyterapp.shell; shell.expandLeft(); }"
_SAVE = "() => window.jupyterapp.shell.currentWidget.context.save()"
# As a page brings back what was open yesterday: behind the notebook that is looked at.
_BEHIND = """
async path => {
  const {commands} = window.jupyterapp, options = {activate: false};
  const panel = await commands.execute('docmanager:open', {path, factory: 'Notebook', options});
  await panel.context.ready;
  await panel.sessionContext.ready;
  await new Promise(waited => setTimeout(waited, 1000));
  const counts = panel.content.widgets.map(cell => cell.model.executionCount);
  window.jupyterapp.shell.activateById(panel.id);
  return counts;
}
"""
_CLOSE = "() => window.jupyterapp.shell.currentWidget.dispose()"
_RESTART = "() => window.jupyterapp.shell.currentWidget.sessionContext.restartKernel()"


def moves(page: LessonPage, *, after: str) -> None:
    """The first slider of the lesson moves, at a key and no click, and says what Python says."""
    page.page.locator(EXPLORER).first.wait_for()
    kept = read_box(example_path())
    page.shows(corner_view(kept, kept), after=after)
    page.press(DEPTH, "ArrowRight")
    moved = with_values(kept, {"groove.depth": 4.1})
    page.shows(corner_view(moved, kept), after=f"{after}, and moving a slider")


def test_it_starts_by_itself_on_every_day_and_after_a_restart(
    turned_to: Callable[[str], LessonPage], server: Server, folder: object
) -> None:
    name = server.copied("04_first.ipynb")
    page = turned_to(UNFLAGGED)
    page.page.evaluate(_OPEN_BARS)
    turned_to(name).run_all()
    assert page.page.evaluate(_BARS) == [True, True]
    assert page.page.evaluate(_TOP) == 0
    assert page.page.evaluate(_CHANGED) is False, "nobody has changed anything"
    page.photograph("04-started", what=page.page.locator(".jp-LabShell"))
    moves(page, after="opening it")

    page.page.evaluate(_SAVE)
    assert "widget-view" in (server.notebooks / name).read_text("utf-8")
    turned_to(UNFLAGGED)
    page.page.evaluate(_LISTEN)
    turned_to(name)
    page.page.locator(EXPLORER).first.wait_for()
    assert page.page.evaluate(_TOP) == 0
    moves(page, after="opening it on the second day")
    assert page.page.evaluate(_DEAD) == []

    page.page.evaluate(_RESTART)
    moves(page, after="restarting its kernel")
    assert page.watched.errors == []


def test_code_of_others_waits_until_it_was_run_here(
    turned_to: Callable[[str], LessonPage], server: Server, folder: object
) -> None:
    page = turned_to(UNFLAGGED)
    cells = [nbformat.v4.new_code_cell(code) for code in ("import ipywidgets", SLIDER)]
    kernel = {"display_name": "Python 3 (ipykernel)", "name": "python3"}
    book = nbformat.v4.new_notebook(cells=cells, metadata={"ours": "0", "kernelspec": kernel})
    nbformat.write(book, server.notebooks / "04_changed.ipynb")
    turned_to("04_changed.ipynb")
    waits = page.page.get_by_role("status").filter(has_text="has not started by itself")
    waits.wait_for()
    assert [count for _, count, _ in page.cells()] == [None, None]
    page.photograph("04-waits", what=page.page.locator(".jp-LabShell"))
    waits.get_by_role("button", name="Run this lesson").click()
    slider = page.page.locator(".widget-slider", has_text="depth")
    slider.wait_for()
    assert waits.count() == 0
    turned_to(UNFLAGGED)
    assert page.page.evaluate(_BEHIND, "04_changed.ipynb") == [None, None]
    slider.wait_for()
    page.page.evaluate(_CLOSE)
    # Whose notebook that is nobody said: it is left alone, with a button among the others.
    turned_to(UNFLAGGED)
    page.page.get_by_role("button", name="Run this lesson").wait_for()
    page.page.wait_for_timeout(1000)
    assert waits.count() == 0
    assert {count for _, count, outputs in page.cells() if not outputs} == {None}
