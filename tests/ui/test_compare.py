# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Comparing versions and reading nutrients, as a person with a keyboard would."""

import os

from harness import run, wait_for
from tree import Atspi


def choose_two(program):
    program.click("Compare", role="page tab")
    program.click("Choose…")
    program.find("0 chosen", contains=True)
    program.find("Pan patty, version 7", role="check box")
    for number, version in enumerate(("7", "6"), 1):
        program.type_keys(f"pan version {version}")
        program.press("Return")
        program.find(f"{number} chosen", contains=True)
    program.click("Compare", role="push button")
    program.find("A · version 7")


def panel_can_be_shown(program):
    button = program.find("Nutrition panel")
    return button.has_state(Atspi.StateType.SENSITIVE)


def a_comparison_survives_a_restart(start, folder):
    program = start("--demo", "--separate")
    choose_two(program)
    program.find("Fat, calculated, %", role="image")
    program.find("19.7", role="label")
    program.click("Differences")
    program.find("A · reference")
    wait_for(lambda: not panel_can_be_shown(program), "compare without the panel of one blend")
    program.find("+1.0", role="label")
    assert not program.unnamed(), program.unnamed()
    program.quit()
    program = start("--separate")
    program.click("Compare", role="page tab")
    program.find("B · version 6")


def a_chart_is_a_table_and_a_file(start, folder):
    program = start("--demo", "--separate")
    choose_two(program)
    chart = program.find("Fat, calculated, %", role="image")
    program.press_in(chart, "shift+F10", "Return")
    program.find("Chart as a Table")
    program.find("Pan patty, version 7")
    program.find("19.7 %")
    program.screenshot("chart-table")
    program.click("Copy")
    program.find("Copied")
    program.press("Escape")
    program.gone("Chart as a Table")
    path = os.path.join(folder, "fat.svg")
    program.click("Chart Menu: Fat, calculated, %")
    program.click("Save Picture as SVG…")
    program.choose_file("Save Picture", path, ".svg")
    wait_for(lambda: os.path.exists(path), "the picture")
    with open(path, encoding="utf-8") as picture:
        assert "<svg" in picture.read()
    program.click("Chart Menu: Fat, calculated, %")
    program.click("Save Picture as SVG…")
    program.choose_file("Save Picture", "/proc/fat.svg", ".svg")
    program.find("The Picture Was Not Saved")
    assert not program.unnamed(), program.unnamed()
    program.press("Escape")
    program.gone("The Picture Was Not Saved")
    program.quit()


def cooked_values_say_where_they_come_from(start, folder):
    program = start("--demo", "--separate")
    program.find("One raw patty", contains=True)
    assert panel_can_be_shown(program)
    program.click("Cooked")
    program.find("as predicted", contains=True)
    program.type_into("Measured mass of one cooked patty", "130")
    program.find("as measured (180", contains=True)
    program.type_into("Measured mass of one cooked patty", "-3")
    program.find("is too small", contains=True)
    program.find("at least", contains=True, role="list item")
    program.quit()


run(a_comparison_survives_a_restart, a_chart_is_a_table_and_a_file,
    cooked_values_say_where_they_come_from)
