# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Tab and Shift+Tab go round every page and never stand still."""

from harness import run
from keyboard import walk_both_ways


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


def the_map(start, folder):
    program = open_demo(start)
    program.press("ctrl+6")
    program.find("No Map of This Blend Yet")
    walk_both_ways(program)


run(formula, versions, experiments, tastings, compare, the_map)
