# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Comparing versions and reading nutrients, as a person with a keyboard would."""

from harness import run, wait_for
from tree import Atspi


def choose_two(program):
    program.click("Compare", role="page tab")
    program.click("Choose…")
    program.find("0 chosen", contains=True)
    program.find("Pan patty (invented), version 7", role="check box")
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


run(a_comparison_survives_a_restart, cooked_values_say_where_they_come_from)
