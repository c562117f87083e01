# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""What a map shows: a model of liking, its best blend, the next one to try, and refusals."""

import re

from harness import run
from steps import bring_into_sight, choose

CHUCK = "Chuck blade"
BRISKET = "Brisket point half"
RIB = "Chuck short ribs"


def bounds(program, name, least, most):
    program.type_into("Least " + name, least, contains=True)
    program.type_into("Most " + name, most, contains=True)


def map_of_three(program):
    program.page("Map")
    program.button("New Map")
    program.says("Choose 2 to 6 components")
    for name in (CHUCK, BRISKET, RIB):
        choose(program, name, "Down")
    bounds(program, CHUCK, "40", "70")
    bounds(program, BRISKET, "10", "35")
    bounds(program, RIB, "15", "45")
    program.says("stays at 7.4 % of the blend.")


def show_the_mapped_blend(program):
    program.find("Blend Pan patty", contains=True)
    program.type_into("Find a blend or version", "three cuts")
    program.press_in(program.find("Where the map of three cuts", contains=True, role="list item"))


def share(text, name):
    """The per cent of @name in "46.8 % Chuck, 41.9 % Shank"."""
    return float(re.search(r"([0-9.]+) % " + name, text).group(1))


def why(program):
    """Opens where the figure asked of the map comes from, reads it and closes it again."""
    program.click("Where It Comes From: Blend Asked of the Map", role="push button")
    text = program.read("Derivation")
    program.press("Escape")
    program.gone("Derivation", role="text")
    return text


def the_demo_panel_becomes_a_map(start, folder):
    """The invented panel likes 48 % chuck, 42 % shank and 10 % suet best (fm-demo-panel.h)."""
    program = start("--demo", "--separate")
    show_the_mapped_blend(program)
    program.page("Map")
    program.page("What It Shows")
    program.says("For the mean liking of a blend it has not seen")
    best = program.says("Predicted best: ")
    assert "confirm it in a blind tasting" in best, best
    assert abs(share(best, "Chuck") - 48) < 10 and abs(share(best, "Suet") - 10) < 4, best
    program.says("Worth trying next: ")
    program.says("Least known: ")
    picture = program.find("Map of three components")
    assert "predicted liking lies between" in picture.description, picture.description
    program.find("Traces of liking")
    bring_into_sight(program, picture)
    program.press_in(picture, "Home")
    program.says("Version 2: ")
    program.press("Up", "Up")
    program.gone("Version 2: ", role="label", contains=True)
    program.says("(95 % interval of the mean ")
    derivation = why(program)
    assert "No liking was measured of this very blend" in derivation, derivation
    assert "Coefficient times product of the shares:" in derivation, derivation
    bring_into_sight(program, picture)
    program.press_in(picture, "Home")
    program.says("Version 2: ")
    derivation = why(program)
    assert "Measured liking of this very blend, " in derivation, derivation
    program.press_in(picture, "Home", "Return")
    program.says("mapped, version 2 ")
    program.page("Map")
    program.click("Map as a table")
    program.find("Version 9")
    program.click("Numbers of the model")
    program.says("Leave-one-out error")
    program.click("Method and source")
    program.says("Scheffé (1958")
    assert not program.unnamed(), program.unnamed()
    program.screenshot("map-reading")
    program.quit()


def a_model_that_does_not_predict_names_no_best(start, folder):
    """A plane through the invented hill is no nearer than the mean: nothing is made of it."""
    program = start("--demo", "--separate")
    show_the_mapped_blend(program)
    program.page("Map")
    program.page("What It Shows")
    program.says("Predicted best: ", deadline_s=60)
    choose(program, "Model", "Down")
    program.says("This map does not predict yet")
    program.says("Cook next, so that the map can predict: ")
    program.gone("Predicted best", contains=True)
    program.gone("Make a Version: Predicted Best Blend")
    program.gone("Traces of liking")
    picture = program.find("Map of three components")
    assert "has no curves" in picture.description, picture.description
    program.screenshot("map-does-not-predict")
    program.quit()


def too_few_trials_are_said(start, folder):
    """The demo's base version was cooked once: that is no map."""
    program = start("--demo", "--separate")
    map_of_three(program)
    program.page("What It Shows")
    refusal = program.says("A linear model of 3 components has 3 terms")
    assert "Make and measure at least 4 more" in refusal, refusal
    program.gone("Predicted best", contains=True)
    program.gone("Map of three components")
    assert not program.unnamed(), program.unnamed()
    program.quit()


if __name__ == "__main__":
    run(the_demo_panel_becomes_a_map, a_model_that_does_not_predict_names_no_best,
        too_few_trials_are_said)
