# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Meeting the targets, as a person with a keyboard would."""

from harness import run
from steps import choose
from targets_steps import (close, open_demo, open_window, set_fat, solve, two_cuts,
                           type_here)


def a_fat_band_is_met(start, folder):
    program = open_demo(start)
    set_fat(program, "19,9", "20.1")
    solve(program)
    program.says("New lean point 80/20")
    program.says("from weighing alone, 95 % interval")
    program.says("How sure the fat is cannot be said, as no spread of the fat is stated for")
    program.says("fat can be 10.7 to 50.0 %")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("targets-met")
    program.click("Use This Blend", role="push button")
    program.gone("Solve", role="push button")
    program.says("80/20")
    program.quit()


def what_cannot_be_met_is_said(start, folder):
    program = open_demo(start)
    set_fat(program, "90", "95")
    solve(program)
    program.says("The targets cannot be met together")
    program.says("it would work with Fat at least 50.0 %")
    program.screenshot("targets-not-met")
    close(program)
    program.quit()


def targets_against_each_other_are_named(start, folder):
    program = start("--separate")
    two_cuts(program)
    open_window(program)
    type_here(program, "Fat, at most", "20")
    # Cost is 11 - 0.2 x fat per kg, so 6 per kg would need 25 % fat.
    choose(program, "Further target", "Down")
    program.click("Add Target", role="push button")
    type_here(program, "Cost per kg (€), at most", "6")
    solve(program)
    said = program.says("These stand against each other")
    assert "Fat at most 20.0 % and Cost per kg at most 6.00 €" in said, said
    assert "Fat at most 25.0 %; or Cost per kg at most 7.00 €" in said, said
    assert "Fat at most 22.5 % with Cost per kg at most 6.50 €" in said, said
    close(program)
    program.quit()


def two_cuts_make_a_pearson_square(start, folder):
    program = start("--separate")
    two_cuts(program)
    open_window(program)
    set_fat(program, "14", "15")
    solve(program)
    program.says("15.0 parts of Lean and 5.0 parts of Plate make 15.0 % fat: 75.0 % and 25.0 %.")
    program.says("fat can be 10.0 to 30.0 %")
    program.says("Every target is met at 8.00 € per kg.")
    program.says("One more % of Lean changes the cost by +0.0400 € per kg.")
    program.says("One more % of Plate is not possible within the targets and limits.")
    program.says("The limit of Fat raised by 1 % changes the cost by −0.2000 € per kg.")
    program.find("Pearson square", role="image")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("targets-square")
    close(program)
    program.quit()


def the_least_cost_is_an_aim(start, folder):
    program = start("--separate")
    two_cuts(program)
    open_window(program)
    set_fat(program, "14", "18")
    choose(program, "Aim", "Home")
    solve(program)
    program.says("Every target is met at 7.40 € per kg.")
    program.says("costs no more than the exact shares.")
    program.says("The limit of Fat raised by 1 % changes the cost by −0.2000 € per kg.")
    close(program)
    program.quit()


def a_batch_is_corrected(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    program.click("Correct the Batch…", role="push button")
    program.says("What to add")
    program.type_into("Fat to aim for, at least", "20")
    program.type_into("Fat to aim for, at most", "20")
    program.type_into("Fat by test of the ground mix", "17,5")
    program.says("20.0 % fat.")
    program.type_into("Fat by test of the ground mix", "20")
    program.says("Nothing to add")
    program.type_into("Fat by test of the ground mix", "much")
    program.says("Correct the marked numbers first.")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("correct")
    program.press("Escape")
    program.quit()


run(a_fat_band_is_met, what_cannot_be_met_is_said, targets_against_each_other_are_named,
    two_cuts_make_a_pearson_square, the_least_cost_is_an_aim, a_batch_is_corrected)
