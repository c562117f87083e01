# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""What else may be asked of the targets window: other ingredients, targets, aims, certainty."""

from harness import run, wait_for
from steps import choose, save_version, weigh
from targets_steps import (close, open_window, own_entry, set_fat,
                           solve, two_cuts, type_here, window_of)


def another_ingredient_joins_the_blend(start, folder):
    program = start("--separate")
    two_cuts(program)
    open_window(program)
    type_here(program, "Add a cut", "beef heart")
    row = wait_for(lambda: next((hit for found in program.all("Foods found", role="list",
                                                              within=window_of(program))
                                 for hit in found.children if "heart, raw" in hit.name), None),
                   "a hit for heart")
    heart = "Beef heart"
    program.press_in(row)
    program.says(heart + " may be used now.")
    type_here(program, "Least share of " + heart, "20")
    type_here(program, "Greatest share of " + heart, "30")
    # An own entry that no target needs stays out of the blend.
    own_entry(program, "Backfat", {"Supplier's lean point": "10"})
    program.says("Backfat may be used now.")
    set_fat(program, "14", "16")
    solve(program)
    program.says("Every target is met; the cost is not known.")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("targets-further")
    program.click("Use This Blend", role="push button")
    program.gone("Solve", role="push button")
    program.find("Grams of " + heart, role="text")
    assert not list(program.all("Grams of Backfat", role="text"))
    program.press("ctrl+z")
    program.gone("Grams of " + heart, role="text")
    program.reads("Grams of Lean", "500")
    program.quit()


def a_permitted_ingredient_is_taken_back(start, folder):
    program = start("--separate")
    two_cuts(program)
    open_window(program)
    own_entry(program, "Backfat", {"Supplier's lean point": "10"})
    program.find("Least share of Backfat", role="text")
    program.click("Do not permit Backfat", role="push button")
    program.gone("Least share of Backfat", role="text")
    # Figures typed here count here.
    program.click("Figures of Lean…", role="push button")
    program.type_into("Price as purchased", "11")
    program.button("Save")
    program.says("fat 10.0 %, 11.00 € per kg")
    solve(program)
    program.says("at 8.00 € per kg.")
    close(program)
    program.quit()


def collagen_is_a_target(start, folder):
    program = start("--separate")
    two_cuts(program, {"Protein": "20", "Collagen": "2"}, {"Protein": "10"})
    open_window(program)
    program.click("Add Target", role="push button")
    program.says("now not known, as it is missing for Plate")
    type_here(program, "Collagen share of protein (%), at most", "15")
    solve(program)
    program.says("Collagen share of protein was set aside, as it is not known for: Plate.")
    program.says("Every target that could be looked at is met")
    program.click("Figures of Plate…", role="push button")
    program.type_into("Collagen", "4")
    program.button("Save")
    program.says("now 20.0 %")
    solve(program)
    # (2 x + 4 (1 - x)) / (20 x + 10 (1 - x)) = 0.15 at x = 5 / 7,
    # and whole grams keep it below.
    program.says("Collagen share of protein: 15.0 %")
    program.says("71.5 %")
    program.screenshot("targets-collagen")
    close(program)
    program.quit()


def any_nutrient_is_a_target(start, folder):
    program = start("--separate")
    two_cuts(program)
    open_window(program)
    choose(program, "Further target", *["Down"] * 11)
    program.click("Add Target", role="push button")
    program.find("Iron (mg/100 g), at least", role="text")
    type_here(program, "Iron (mg/100 g), at least", "2")
    type_here(program, "Iron (mg/100 g), at most", "1")
    program.says("The lower end would lie above the upper end.")
    solve(program)
    program.says("Correct the marked target first.")
    type_here(program, "Iron (mg/100 g), at most", "")
    solve(program)
    program.says("The ingredients whose values are known do not fill the batch.")
    close(program)
    program.quit()


def a_version_is_stayed_near(start, folder):
    program = start("--separate")
    two_cuts(program)
    save_version(program, 1, "first")
    weigh(program, "Lean", "900")
    weigh(program, "Plate", "100")
    open_window(program)
    choose(program, "Aim", "End")
    program.says("Version to stay near to")
    solve(program)
    program.says("New lean point 80/20 (now 88/12)")
    close(program)
    program.quit()


def how_sure_it_is_below_a_fat(start, folder):
    program = start("--separate")
    two_cuts(program, {"Standard uncertainty of the fat": "1"},
             {"Standard uncertainty of the fat": "1"})
    open_window(program)
    type_here(program, "Step of the scale", "0")
    type_here(program, "Fat to be below", "20")
    # Normal: mean 20, u = sqrt (0.5) = 0.71; P (X < 21) = 0.921.
    program.says("Probability that fat is below 20.0 %: 50 %.")
    program.says("95 % interval 18.61 to 21.39 %")
    type_here(program, "Fat to be below", "21")
    program.says("Probability that fat is below 21.0 %: 92 %.")
    set_fat(program, "", "18")
    solve(program)
    program.says("New lean point 82/18")
    close(program)
    program.quit()


run(another_ingredient_joins_the_blend, a_permitted_ingredient_is_taken_back, collagen_is_a_target,
    any_nutrient_is_a_target, a_version_is_stayed_near, how_sure_it_is_below_a_fat)
