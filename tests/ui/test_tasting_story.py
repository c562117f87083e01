# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""What opened tastings found stands in the story of the versions; a sealed one tells nothing."""

import subprocess

from gi.repository import Atspi

from harness import plain, run, wait_for

SEARCH = "Find a blend or version"
LIST = "What opened tastings found"
SEALED_PANEL = "Counter panel"


def sidebar_rows(program):
    return [node for found in program.all("Blends and versions", role="list")
            for node in found.children if node.is_showing()]


def row_of(program, words, start):
    """The row in the sidebar that begins with @start, once only what has @words is listed."""
    program.find("Blend ", role="list item", contains=True)
    program.type_into(SEARCH, words)

    def look():
        return next((node for node in sidebar_rows(program)
                     if node.name.startswith(start) and words in node.name), None)
    return wait_for(look, f"{start!r} in the sidebar")


def told(program):
    """The lines of what tastings found, as far as they are shown."""
    return [plain(node.name) for found in program.all(LIST, role="list") for node in found.below()
            if node.role == "label" and node.name.startswith("Tasted")]


def a_version_tells_of_its_tastings(start, folder):
    program = start("--demo", "--separate")
    row = row_of(program, "trial 4", "Version 5, ")
    assert "tasted 2 times" in plain(row.name), row.name
    program.press_in(row)
    program.page("Versions")
    lines = wait_for(lambda: told(program), "lines of the version")
    assert len(lines) == 2, lines
    for line, panel in zip(lines, ("Map tasting 2: ", "Map tasting 1: ")):
        assert panel in line and "6 tasters" in line, line
        assert "liked " in line and "Rank sum " in line, line
    assert not program.unnamed(), program.unnamed()
    program.screenshot("story-of-version")
    row = row_of(program, "trial 3", "Version 4, ")
    assert "tasted 1 time" in plain(row.name), row.name
    program.press_in(row)
    wait_for(lambda: len(told(program)) == 1, "one line for the version tasted once")
    program.page("Experiments")
    program.press_in(program.find("Map trial 3\n", contains=True, role="label"))
    program.reads("Title of the experiment", "Map trial 3")
    wait_for(lambda: [line for line in told(program) if "Map tasting 1" in line],
             "line of the experiment")
    program.screenshot("story-of-experiment")
    program.quit()


def values_beside(program, name):
    table = next(program.all("Comparison"), None)
    for row in table.below() if table else ():
        texts = [plain(text) for text in row.texts() if not text.startswith("Gtk")]
        if texts and texts[0].startswith(name):
            return texts[1:]
    return []


def likings_stand_side_by_side(start, folder):
    program = start("--demo", "--separate")
    program.page("Compare")
    program.button("Choose…")
    program.find("0 chosen", contains=True)
    program.find("Pan patty, version 7", role="check box")
    for number, words in enumerate(("mapped version 9", "pan version 7"), 1):
        program.type_keys(words)
        program.press("Return")
        program.find(f"{number} chosen", contains=True)
    program.button("Compare")
    values = wait_for(lambda: values_beside(program, "Liking in blind tastings"), "liking")
    assert 1 < float(values[0]) < 9 and values[1] == "— not known", values
    assert values_beside(program, "Tasters behind the liking") == ["6", "0"]
    assert not values_beside(program, "Rank sum")
    program.screenshot("story-compare")
    program.quit()


def sealed_tells_nothing_until_opened(start, folder):
    program = start("--demo", "--separate")
    row_of(program, "Lean shop", "Blend Lean shop patty")
    wait_for(lambda: sidebar_rows(program)[0].name.startswith("Blend Lean shop"), "a search")
    rows = [plain(node.name) for node in sidebar_rows(program)]
    assert not [name for name in rows if "tasted" in name], rows
    program.press_in(next(node for node in sidebar_rows(program)
                          if node.name.startswith("Version 4, ")))
    program.says("Version 4 is frozen")
    program.page("Tastings")
    program.press_in(program.find(SEALED_PANEL, role="list item", contains=True))
    program.button("Open the Codes")
    program.type_into("Reason for opening early", "a test of the story")
    program.button("Open Early")
    program.says("Opened with 1 of 3 sheets in")
    row = wait_for(lambda: next((node for node in sidebar_rows(program)
                                 if "tasted 1 time" in plain(node.name)), None),
                   "a version that was tasted")
    program.page("Versions")
    program.press_in(row)
    lines = wait_for(lambda: told(program), "what the panel found")
    assert SEALED_PANEL in lines[0], lines
    program.page("Tastings")
    program.button("Taste Again")
    program.reads("Title of the tasting", SEALED_PANEL + ", again")
    program.says("Being planned")
    program.says("Core Readings and Allergens")
    program.quit()


def opened_tastings_are_read_together(start, folder):
    program = start("--demo", "--separate")
    row = row_of(program, "trial 4", "Version 5, ")
    program.press_in(row)
    program.page("Tastings")
    program.says("Map tasting 3")
    program.click("Read Together…", role="push button")
    headline = program.find("Over 3 tastings and 6 tasters version", contains=True).name
    assert " in 100 that it beats version " in headline, headline
    program.says("the way round that the others give")
    program.says("That taste drifts between the tastings is not shown")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("together")
    program.click("Estimate", role="push button")
    program.find("more sheets that rank both", contains=True)
    # the last of the tastings is the last that the keyboard reaches
    program.press("shift+Tab")
    program.screenshot("more-sheets")
    program.press("space")
    program.find("Over 2 tastings and 6 tasters version", contains=True)
    program.press("Escape")
    program.gone("Over 2 tastings", contains=True)
    program.quit()


def the_open_tasting_stays_selected_in_a_smaller_window(start, folder):
    program = start("--demo", "--separate")
    program.press_in(row_of(program, "trial 4", "Version 5, "))
    program.page("Tastings")
    program.says("3 tastings")

    def opened():
        """The list moves while it is first laid out, and a click with it."""
        program.press_in(program.find("Map tasting 3", contains=True, role="list item"))
        return next(program.all("Rank order", role="label"), None)
    wait_for(opened, "the tasting opened")

    def selected():
        return [node.name for node in program.all("Map tasting", contains=True, role="list item")
                if node.has_state(Atspi.StateType.SELECTED)]
    window = program.window_of(program.tree().children[0])
    for width in ("900", "1280"):
        subprocess.run(["xdotool", "windowsize", "--sync", window, width, "600"], check=True)
        wait_for(lambda: program.tree().children[0].extents()[2] <= int(width), "new width")
        wait_for(lambda: [name.startswith("Map tasting 3") for name in selected()] == [True],
                 "the open tasting as the selected one")
    program.quit()


run(a_version_tells_of_its_tastings, likings_stand_side_by_side,
    sealed_tells_nothing_until_opened, the_open_tasting_stays_selected_in_a_smaller_window,
    opened_tastings_are_read_together)
