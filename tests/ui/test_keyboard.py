# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Tab and Shift+Tab go round every page and never stand still."""

from harness import run
from keyboard import Focus, walk_both_ways
from steps import show_version
from tasting_steps import new_tasting


def open_demo(start):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    program.says("Fat, calculated")
    return program


def formula(start, folder):
    program = open_demo(start)
    walk_both_ways(program, "Find a blend", "Main menu", "Add a cut", "Grams of Chuck short ribs",
                   "Meet the Targets", "Number of patties", "Fat, at most", "Percent of Daily")


def versions(start, folder):
    program = open_demo(start)
    program.press("ctrl+2")
    program.find("Tree of versions")
    walk_both_ways(program, "Main menu")


def experiments(start, folder):
    program = open_demo(start)
    program.press("ctrl+3")
    program.find("Search experiments")
    walk_both_ways(program, "Search experiments")


def tastings(start, folder):
    program = open_demo(start)
    program.press("ctrl+4")
    program.find("New Tasting", role="push button")
    walk_both_ways(program, "New Tasting")


def compare(start, folder):
    program = open_demo(start)
    program.press("ctrl+5")
    program.find("Nothing Is Compared Yet")
    walk_both_ways(program, "Choose")
    program.button("Choose…")
    program.find("0 chosen", contains=True)
    walk_both_ways(program, title="Choose What to Compare")


def dialogs(start, folder):
    program = open_demo(start)
    for title, opens, wanted in (("Own Entry", "Own Entry…", "Kind"),
                                 ("Meet the Targets", "Meet the Targets…", "Solve"),
                                 ("Correct the Batch", "Correct the Batch…", "Fat by test"),
                                 ("Process", "Plan the Process…", ""),
                                 ("Batch Sheet", "ctrl+p", "Patties"),
                                 ("Save Version", "ctrl+s", "Cancel"),
                                 ("Preferences", "ctrl+comma", "")):
        if opens.startswith("ctrl"):
            program.press(opens)
        else:
            program.button(opens)
        program.find(title, role="frame", showing=False)
        walk_both_ways(program, wanted, title=title)
        program.press("Escape")
        program.gone(title, role="frame")


def arrows_go_through_a_list(start, folder):
    program = open_demo(start)
    stops = walk_both_ways(program, "Energy: ")
    assert sum(stop.startswith(("Energy: ", "Total fat: ", "Sodium: ")) for stop in stops) == 1, stops
    focus = Focus(program)
    while not focus.path or not focus.name().startswith("Energy: "):
        focus.press("Tab")
    seen = []
    while not seen or not seen[-1].startswith("Sodium: "):
        focus.press("Down")
        seen.append(focus.name())
    assert any(name.startswith("Saturated fat") for name in seen), seen


def keys_of_the_work(start, folder):
    program = open_demo(start)
    focus = Focus(program)
    program.press("ctrl+3")
    program.find("Search experiments")
    program.press("ctrl+l")
    focus.goes_to("Add a cut")
    program.type_into("Grams of Chuck", "501", contains=True)
    program.press("ctrl+e")
    program.says("An experiment keeps the version it was made from")


def the_map(start, folder):
    program = open_demo(start)
    program.press("ctrl+6")
    program.says("Choose a map from the list")
    walk_both_ways(program)


def walk_window(program, opened, *wanted, title=None):
    """Round the window that just opened, which shows @opened, and out of it again."""
    program.find(opened, contains=True)
    walk_both_ways(program, *wanted, title=title)
    program.press("Escape")
    program.gone(opened, contains=True)


def lists_and_prices(start, folder):
    program = open_demo(start)
    program.press("ctrl+f")
    program.type_into("Find in the notebook", "crust")
    program.find("Hotter pan, pulled early", role="list item", contains=True)
    walk_window(program, "What was found")
    program.press("F10")
    program.click("Prices…", role="menu item")
    walk_window(program, "Import Prices…", "Export Prices…")
    show_version(program, 3)
    program.page("Versions")
    program.button("Serving…")
    walk_window(program, "Add a formula", "Save Serving")


def the_pan(start, folder):
    program = open_demo(start)
    program.press("ctrl+3")
    program.find("Search experiments")
    program.press("ctrl+e")
    program.button("Cook…")
    walk_window(program, "Portion 1: ", title="At the Pan")


def a_tasting_being_planned(start, folder):
    program = open_demo(start)
    new_tasting(program)
    walk_both_ways(program, "Title of the tasting", "Add a taster by name", "Choose Experiments")


def a_map_being_planned(start, folder):
    program = open_demo(start)
    program.page("Map")
    program.button("New Map")
    program.says("Choose 2 to 6 components")
    walk_both_ways(program)


run(formula, versions, experiments, tastings, compare, the_map, dialogs, arrows_go_through_a_list,
    keys_of_the_work, lists_and_prices, the_pan, a_tasting_being_planned, a_map_being_planned)
