# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""A map of a blend: components, shares, trials, and a trial that becomes a version."""

from harness import run, wait_for
from steps import choose

CHUCK = "Chuck blade"
BRISKET = "Brisket point half"
RIB = "Chuck short ribs"
HEART = "Beef heart"


def three_components(program):
    program.page("Map")
    program.button("New Map")
    program.says("Choose 2 to 6 components")
    for name in (CHUCK, BRISKET, RIB):
        choose(program, name, "Down")
    program.field("Least " + CHUCK, contains=True)


def bounds(program, name, least, most):
    program.type_into("Least " + name, least, contains=True)
    program.type_into("Most " + name, most, contains=True)


def draw_corners(program):
    """Trials at the corners and middles of what the bounds leave."""
    program.page("Trials")
    program.says("blends.")
    program.says("Enough for the linear model")
    program.button("Draw Up the Trials")
    program.find("Trial 1, corner (vertex)", role="list item")


def versions(program):
    lists = program.all("Blends and versions", role="list")
    return [node.name for found in lists for node in found.children
            if node.name.startswith("Version ")]


def a_trial_becomes_a_version(start, folder):
    program = start("--demo", "--separate")
    program.page("Formula")
    program.type_into("Grams of " + HEART, "90", contains=True)
    program.find("Draft, from version 7, changed", contains=True)
    three_components(program)
    bounds(program, CHUCK, "40", "70")
    bounds(program, BRISKET, "10,5", "35")
    bounds(program, RIB, "15", "45")
    program.says("stays at 7.4 % of the blend.")
    program.says("Fat: 18 to 22 %. Kept.")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("map-components")
    draw_corners(program)
    program.says("0 made into versions")
    program.screenshot("map-trials")
    program.click("Make a version of trial 1", role="push button")
    program.says("Version 8, not tasted yet")
    program.says("1 made into versions")
    made = wait_for(lambda: [name for name in versions(program)
                             if "Map “Map 1”, trial 1: " in name], "version of the map in the tree")
    assert "Version 8, from version 7" in made[0], made
    program.find("Draft, from version 7, changed", contains=True)
    assert not program.unnamed(), program.unnamed()
    program.quit()
    program = start("--separate")
    program.page("Map")
    program.page("Trials")
    program.says("Version 8, not tasted yet")
    program.says("1 made into versions")
    program.quit()


def trials_are_cleared_and_come_back(start, folder):
    program = start("--demo", "--separate")
    three_components(program)
    draw_corners(program)
    program.page("Components")
    bounds(program, CHUCK, "40", "50")
    program.page("Trials")
    program.says("Outside the shares or the limits of the brief")
    program.page("Components")
    program.button("Clear the Trials")
    program.gone("Trials are drawn up for these components", contains=True)
    program.button("Undo")
    program.says("Trials are drawn up for these components")
    program.type_into("Name of the map", "Chew and fat")
    program.click("Remove this map")
    program.says("Map “Chew and fat” removed")
    program.says("No map of this blend yet.")
    program.button("Undo")
    program.reads("Name of the map", "Chew and fat")
    program.quit()


def what_cannot_be_is_said(start, folder):
    program = start("--demo", "--separate")
    three_components(program)
    program.type_into("Least " + CHUCK, "-3", contains=True)
    program.says("is too small")
    bounds(program, CHUCK, "60", "70")
    bounds(program, BRISKET, "50", "60")
    program.says("more than the whole mixture")
    program.page("Trials")
    program.says("Choose components with shares that leave a region first.")
    program.quit()


def a_given_number_is_chosen(start, folder):
    program = start("--demo", "--separate")
    three_components(program)
    program.page("Trials")
    choose(program, "Kind of design", "End")
    program.says("Seed of the search: ")
    program.type_into("Number of new trials", "8")
    program.button("Draw Up the Trials")
    program.says("8 trials, 0 made into versions")
    program.button("Make All Versions")
    program.says("8 trials, 8 made into versions")
    program.says("Version 15, not tasted yet")
    program.screenshot("map-optimal")
    program.quit()


run(a_trial_becomes_a_version, trials_are_cleared_and_come_back, what_cannot_be_is_said,
    a_given_number_is_chosen)
