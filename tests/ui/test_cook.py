# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The cook by its numbers: a temperature log becomes each authority's verdict, in words."""

from harness import run
from steps import add_cut, choose, new_blend, save_version, weigh

TITLE = "Title of the experiment"
READINGS = "Readings as text, time and temperature"
FORBIDDEN = (" safe", "safe ", "unsafe")


def open_without_readings(program):
    """Makes an experiment of the demo's first blend, which has no readings yet."""
    program.page("Experiments")
    program.click("New experiment")
    program.field(TITLE)
    program.says("USDA FSIS consumer chart, ground meat: not known. No core temperature")
    program.click("Type or paste many readings")


def paste(program, *lines):
    program.type_into(READINGS, "\n".join(lines) + "\n")
    program.click("Add these readings")


def each_authority_judges_a_pasted_log(start, folder):
    program = start("--demo", "--separate")
    open_without_readings(program)
    program.says("Lethality needs at least two core readings")
    paste(program, "0 5", "2:00 40,5", "4:00 66", "4:20 69", "4:40 69.5", "5:00 69")
    program.says("USDA FSIS consumer chart, ground meat: not reached. It asks for 71.1 °C")
    program.says("FDA Food Code 3-401.11(A)(2), comminuted meat: reached.")
    program.says("FSIS 2021, table 6, cooked beef patties, 5 log of Salmonella: reached.")
    program.says("FSIS 2021, table 2, meat, 6.5 log of Salmonella: reached.")
    program.says("FSIS 2021, table 2, meat, 7 log of Salmonella: reached.")
    program.says("UK FSA burger advice, after ACMSF 2007: not reached.")
    program.says("Model code for retail and food service, 2017 and later")
    program.says("Integrated lethality F: ")
    program.says("Computed decimal reductions: ")
    program.screenshot("cook-verdicts")
    assert not [n.name for n in program.all() if any(w in n.name.lower() for w in FORBIDDEN)]
    assert not program.unnamed(), program.unnamed()
    program.quit()


def turkey_is_judged_as_poultry(start, folder):
    program = start("--separate")
    new_blend(program, "Turkey patties")
    add_cut(program, "ground turkey raw", "Ground turkey, raw", "Ground turkey")
    weigh(program, "Ground turkey", "1000")
    save_version(program, 1, "First")
    program.page("Experiments")
    program.click("New experiment")
    program.field(TITLE)
    program.says("This blend holds poultry (Turkey): the figures for poultry rule")
    program.says("USDA FSIS consumer chart, ground poultry: not known.")
    program.click("Type or paste many readings")
    paste(program, "0 5", "4:00 70", "4:10 72", "4:12 71")
    program.says("USDA FSIS consumer chart, ground poultry: not reached. It asks for 73.9 °C (165 °F)")
    program.says("below the figure that rules for this blend: 73.9 °C (165 °F), USDA FSIS consumer chart")
    program.says("ground turkey")
    assert not list(program.all("Reached", role="label"))
    for absent in ("ground meat: ", "beef patties", "comminuted meat", ", ground beef"):
        assert not list(program.all(absent, contains=True)), absent
    names = [n.name for n in program.all(": not reached. It", contains=True, role="label")]
    assert names[0].startswith("USDA FSIS consumer chart, ground poultry"), names
    program.screenshot("cook-turkey")
    assert not [n.name for n in program.all() if any(w in n.name.lower() for w in FORBIDDEN)]
    assert not program.unnamed(), program.unnamed()
    program.quit()


def a_gap_in_the_log_is_not_known(start, folder):
    program = start("--demo", "--separate")
    open_without_readings(program)
    paste(program, "0 5", "4:00 68,5", "6:00 68,5")
    program.says("FDA Food Code 3-401.11(A)(2), comminuted meat: not known.")
    program.quit()


def a_cook_below_the_table_shows_the_advisory(start, folder):
    program = start("--demo", "--separate")
    open_without_readings(program)
    paste(program, "0 5", "4:00 52", "5:00 54")
    program.says("lies below the table of FDA Food Code 3-401.11")
    program.quit()


def open_prediction(program):
    program.page("Experiments")
    program.press_in(program.find("\nVersion ", contains=True, role="label"))
    program.field(TITLE)
    program.click("Predict the cook")


def the_cook_is_predicted_and_fitted(start, folder):
    program = start("--demo", "--separate")
    open_prediction(program)
    program.says("Estimate. It never replaces a thermometer")
    program.says("Heat runs through the thickness only")
    program.type_into("Thickness of the patty", "15")
    program.says("By the estimate the core")
    program.type_into("Core temperature to reach", "54,5")
    program.says("lies below the table of FDA Food Code 3-401.11")
    program.find("Curve of the core temperature, measured and estimated")
    program.type_into("Times of turning", "2:30 soon")
    program.says("The time of turning")
    program.type_into("Times of turning", "2:30")
    program.click("Curve as a table")
    program.says("Time, min:s")
    program.click("Fit to these readings")
    fitted = program.says("The notebook remembers it for this surface")
    coefficient = fitted.split(": ")[1].split(" W/")[0]
    program.reads("Contact coefficient of the pan", coefficient)
    program.screenshot("cook-predict")
    assert not program.unnamed(), program.unnamed()
    program.quit()
    program = start("--separate")
    open_prediction(program)
    program.says(f"Contact coefficient: {coefficient} W/(m² K), fitted to earlier readings")
    program.quit()


def own_numbers_are_taken(start, folder):
    program = start("--demo", "--separate")
    open_without_readings(program)
    paste(program, "0 5", "2:00 60", "6:00 60")
    choose(program, "Organism and food of D and z", "End")
    program.says("Lethality needs D, the temperature of that D, and z.")
    program.type_into("Own D", "0,5")
    program.type_into("Temperature of the own D", "60")
    program.type_into("Own z", "0")
    program.says("Own z is too small")
    program.type_into("Own z", "6")
    program.says("Integrated lethality F: ")
    program.says("Own values, as you typed them: D 0.5 min at 60.0 °C, z 6.0 K (own, not published).")
    program.screenshot("cook-own")
    assert not program.unnamed(), program.unnamed()
    program.quit()


def the_experiment_keeps_what_was_typed(start, folder):
    program = start("--demo", "--separate")
    open_prediction(program)
    program.type_into("Thickness of the patty", "15")
    program.type_into("Diameter of the patty", "118")
    program.type_into("Raw mass of a patty to estimate", "")
    program.type_into("Core temperature to reach", "68,5")
    program.says("All changes saved")
    program.quit()
    program = start("--separate")
    open_prediction(program)
    program.reads("Thickness of the patty", "15")
    program.reads("Diameter of the patty", "118")
    program.reads("Core temperature to reach", "68.5")
    # Another experiment shows its own and is not touched by being shown.
    program.press_in([node for node in program.all("\nVersion ", role="label", contains=True)][1])
    program.reads("Core temperature to reach", "71.1")
    program.reads("Diameter of the patty", "115")
    program.says("Changes are saved as you make them")
    program.quit()


def losses_stand_beside_each_other(start, folder):
    program = start("--demo", "--separate")
    open_prediction(program)
    program.click("Cook loss by fat level")
    program.says("Measured loss")
    program.says("Predicted loss")
    program.says(" experiments)")
    program.screenshot("cook-losses")
    program.quit()


run(each_authority_judges_a_pasted_log,
    turkey_is_judged_as_poultry,
    a_gap_in_the_log_is_not_known,
    a_cook_below_the_table_shows_the_advisory,
    the_cook_is_predicted_and_fitted,
    own_numbers_are_taken,
    the_experiment_keeps_what_was_typed,
    losses_stand_beside_each_other)
