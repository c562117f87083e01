"""Meeting the targets, as a person with a keyboard would."""

from harness import run, wait_for
from steps import choose, new_blend, save_version, weigh

WINDOW = "Meet the Targets"


def window_of(program):
    """The window's part of the tree; the page below it has some names of its own twice."""
    return program.find(WINDOW, role="frame")


def open_window(program):
    program.find("Formula", role="page tab")
    program.click("Meet the Targets…", role="push button")
    program.find("Solve", role="push button")


def open_demo(start):
    program = start("--demo", "--separate")
    open_window(program)
    return program


def type_here(program, name, text, contains=False):
    def entry():
        return next((node for found in program.all(name, contains=contains,
                                                   within=window_of(program))
                     for node in found.below() if node.has("EditableText")), None)

    wait_for(entry, f"entry {name!r} in the window").set_text(text)


def set_fat(program, least, most):
    type_here(program, "Fat, at least", least)
    type_here(program, "Fat, at most", most)


def close(program):
    program.click("Cancel", role="push button")
    program.gone(WINDOW, role="frame")


def solve(program):
    program.click("Solve", role="push button")


def own_entry(program, name, figures):
    program.button("Own Entry…")
    program.type_into("Name", name)
    for field, text in figures.items():
        program.type_into(field, text)
    program.button("Save")
    program.gone("Supplier's lean point")


def two_cuts(program, lean=None, plate=None):
    """A blend of 500 g each: 10 % fat at 9 per kg and 30 % fat at 5 per kg."""
    new_blend(program, "Two cuts")
    for name, figures in (("Lean", {"Supplier's lean point": "90", "Price as purchased": "9",
                                    **(lean or {})}),
                          ("Plate", {"Supplier's lean point": "70", "Price as purchased": "5",
                                     **(plate or {})})):
        own_entry(program, name, figures)
        weigh(program, name, "500")
    program.says("Total: 1000.0 g")


def a_fat_band_is_met(start, folder):
    program = open_demo(start)
    set_fat(program, "19,9", "20.1")
    solve(program)
    program.says("New lean point 80/20")
    program.says("Probability that fat is within 19.9 to 20.1 %")
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
    program.says("The limit of Fat raised by 1 % changes the cost by −0.2000 € per kg.")
    close(program)
    program.quit()


def another_ingredient_joins_the_blend(start, folder):
    program = start("--separate")
    two_cuts(program)
    open_window(program)
    type_here(program, "Add a cut", "beef heart")
    row = wait_for(lambda: next((hit for found in program.all("Foods found", role="list",
                                                              within=window_of(program))
                                 for hit in found.children if "heart, raw" in hit.name), None),
                   "a hit for heart")
    heart = row.name.split(", raw,")[0] + ", raw"
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
    program.says("This is less than the lower end.")
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


def a_batch_is_corrected(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    program.click("Correct the Batch…", role="push button")
    program.says("What to add")
    program.type_into("Fat to aim for", "20")
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
    two_cuts_make_a_pearson_square, the_least_cost_is_an_aim, another_ingredient_joins_the_blend,
    a_permitted_ingredient_is_taken_back, collagen_is_a_target, any_nutrient_is_a_target,
    a_version_is_stayed_near, how_sure_it_is_below_a_fat, a_batch_is_corrected)
