# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Photos by keyboard: what side they show, when they were taken, one by one and side by side."""

import contextlib
import os
import sqlite3

from harness import run, wait_for
from keyboard import Focus

NOTEBOOK = "forcemeat/demo.forcemeat"
VIEW = "View that photo 1 shows"
MADE = "Hotter pan, longer"
TO_PHOTOS = 5  # sections down the page
MOST_STOPS = 30
HEADER = {"Save the original file", "Two photos side by side"}


def open_photos(program, title):
    program.page("Experiments")
    program.press_in(program.find(title, role="list item", contains=True), "Return")
    program.find("View photo 1")


def open_viewer(program):
    program.click("View photo 1")
    program.find("Photo 1 of ", role="frame", contains=True)
    program.says("taken 03/13/25")


def views(path):
    with contextlib.closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as notebook:
        return [row[0] for row in notebook.execute("SELECT DISTINCT view FROM photos ORDER BY view")]


def tab_to(focus, name):
    stops = []
    while not stops or not stops[-1].startswith(name):
        assert len(stops) < MOST_STOPS, stops
        focus.press("Tab")
        stops.append(focus.name())


def a_view_is_chosen_by_keyboard(start, folder):
    program = start("--demo", "--separate")
    open_photos(program, MADE)
    program.says("03/13/25 ")
    path = os.path.join(folder, NOTEBOOK)
    wait_for(lambda: "crumb" not in views(path), "views of the demo")
    focus = Focus(program)
    program.focus_window()
    for _ in range(TO_PHOTOS):
        focus.press("ctrl+Next")
    tab_to(focus, VIEW)
    for key in ("space", "End", "Return"):
        focus.press(key)
    wait_for(lambda: "crumb" in views(path), "the view in the notebook")
    program.screenshot("photo-view")
    program.quit()
    program = start("--separate")
    open_photos(program, MADE)
    program.click("View photo 1")
    program.says("Crumb · ")
    program.press("Escape")
    program.gone("Photo 1 of ", role="frame", contains=True)
    program.quit()


def tab_goes_through_the_viewer_and_comes_back(start, folder):
    program = start("--demo", "--separate")
    open_photos(program, MADE)
    open_viewer(program)
    focus = Focus(program)
    program.focus_window()
    seen = []
    while seen.count("Photo that scrolls") < 2:
        assert len(seen) < MOST_STOPS, seen
        focus.press("Tab")
        seen.append(focus.name())
    assert {"Zoom in", "Zoom out", "Fit the window", "Original size"} | HEADER <= set(seen), seen
    program.press("Escape")
    program.gone("Photo 1 of ", role="frame", contains=True)
    program.quit()


def two_photos_lie_side_by_side_at_one_scale(start, folder):
    program = start("--demo", "--separate")
    open_photos(program, MADE)
    open_viewer(program)
    program.press("b")
    # The same view of another experiment comes first.
    program.says("Version 7 · Eight per cent heart · Crust")
    program.says("taken 03/25/25")
    program.says("Fits the window")
    program.press("1")
    program.says("100 %")
    program.press("minus")
    program.says("80 %")
    program.press("ctrl+Right", "ctrl+Down", "shift+Right")
    program.gone("taken 03/25/25", contains=True)
    program.screenshot("photos-side-by-side")
    program.press("b")
    program.says("Fits the window")
    program.press("Escape")
    program.gone("Photo 1 of ", role="frame", contains=True)
    program.quit()


run(
    a_view_is_chosen_by_keyboard,
    tab_goes_through_the_viewer_and_comes_back,
    two_photos_lie_side_by_side_at_one_scale,
)
