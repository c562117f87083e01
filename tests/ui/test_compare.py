# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Comparing versions and reading nutrients, as a person with a keyboard would."""

import os

from harness import run, wait_for
from steps import choose_compared, choose_two, open_picker
from tree import Atspi


def panel_can_be_shown(program):
    button = program.find("Nutrition panel")
    return button.has_state(Atspi.StateType.SENSITIVE)


def a_comparison_survives_a_restart(start, folder):
    program = start("--demo", "--separate")
    choose_two(program)
    program.find("Fat, calculated, %", role="image")
    program.find("19.7", role="label")
    program.click("Differences")
    program.find("A · reference · Pan patty, version 7")
    wait_for(lambda: not panel_can_be_shown(program), "compare without the panel of one blend")
    program.find("+1.0", role="label")
    assert not program.unnamed(), program.unnamed()
    program.quit()
    program = start("--separate")
    program.click("Compare", role="page tab")
    program.find("B · Pan patty, version 6")


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


def a_ninth_choice_is_refused_and_what_is_the_same_goes(start, folder):
    program = start("--demo", "--separate")
    choose_two(program)
    open_picker(program, chosen=2)
    choose_compared(program, "pan draft", *(f"pan version {number}" for number in (5, 4, 3, 2, 1)),
           already=2)
    program.type_keys("lamb version 1")
    program.press("Return")
    program.find("“Lamb and beef, version 1” was not added: 8 are chosen, which is all that fits. "
                 "Clear one to choose another.")
    ninth = program.find("Lamb and beef, version 1", role="check box")
    wait_for(lambda: not ninth.has_state(Atspi.StateType.CHECKED), "the tick of the ninth to go")
    program.screenshot("ninth-choice")
    program.click("Compare", role="push button")
    program.find("A · Pan patty, version 7")
    program.find("Lean, calculated, %")
    program.find("Patty, planned, g", showing=False)
    program.press_in(program.find("Only what differs", role="check box"))
    wait_for(lambda: not list(program.all("Patty, planned, g", showing=False)),
             "the row that is the same everywhere to go")
    program.find("Lean, calculated, %")
    assert not list(program.all("H · Pan patty, version 1")), "eight columns where six fit"
    program.press_in(program.find("Lean, calculated, %"), "Right", "Right")
    program.find("H · Pan patty, version 1")
    program.find("Lean, calculated, %")
    program.screenshot("eight-columns")
    program.quit()


def has_batches(program, mass_g, number):
    """How many columns show @mass_g; rows below those in sight count, too."""
    return len(list(program.all(mass_g, role="label", showing=False))) == number


def the_draft_is_compared_as_it_was_typed_last(start, folder):
    program = start("--demo", "--separate")
    program.click("Compare", role="page tab")
    open_picker(program)
    choose_compared(program, "pan draft", "pan version 7")
    program.click("Compare", role="push button")
    program.find("A · Pan patty, draft")
    wait_for(lambda: has_batches(program, "1080", 2), "the batch of the unchanged draft")
    program.click("Formula", role="page tab")
    program.type_into("Grams of Chuck blade", "600", contains=True)
    program.click("Compare", role="page tab")
    wait_for(lambda: has_batches(program, "1080", 1), "the batch as it was typed")
    program.quit()


def nutrients_go_into_a_file(start, folder):
    program = start("--demo", "--separate")
    path = os.path.join(folder, "nutrients.csv")
    program.find("Hand out the nutrients")
    program.button("CSV…")
    program.choose_file("Export the Nutrients", path, ".csv")
    wait_for(lambda: os.path.exists(path) and os.path.getsize(path), "the file")
    with open(path, encoding="utf-8-sig") as file:
        assert "Total fat" in file.read()
    program.quit()


run(a_comparison_survives_a_restart, a_chart_is_a_table_and_a_file,
    cooked_values_say_where_they_come_from,
    a_ninth_choice_is_refused_and_what_is_the_same_goes,
    the_draft_is_compared_as_it_was_typed_last,
    nutrients_go_into_a_file)
