# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""A label: refused while a figure is missing, then shown, saved and kept."""

import os

from harness import plain, run, wait_for
from keyboard import walk_both_ways
from steps import add_own_entry, show_version, weigh


def sheet_text(program):
    return plain(program.find("Preview of the sheet", role="image").description)


def sheet_says(program, text):
    wait_for(lambda: text in sheet_text(program), f"{text!r} on the sheet")


def open_label(program):
    program.find("Formula", role="page tab")
    program.click("Label…", role="push button")
    program.find("Mass of a serving")


def a_label_is_refused_shown_saved_and_kept(start, folder):
    svg = os.path.join(folder, "panel.svg")
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    program.says("Everything in this notebook is invented")
    add_own_entry(program, "Sausage meat", "70")
    weigh(program, "Sausage meat", "20")
    open_label(program)
    program.find("Label: Pan patty, draft", role="frame")
    sheet_says(program, "Everything in this notebook is invented")
    program.says("No panel: figures that must stand on it are not known.")
    sheet_says(program, "Trans Fat: not known for")
    sheet_says(program, "Label: Pan patty, draft")
    sheet_says(program, "No list of ingredients: the allergens are not stated of Sausage meat")
    sheet_says(program, "licensed professional or the authority must check")
    program.screenshot("label-refused")
    assert not program.unnamed(), program.unnamed()
    walk_both_ways(program, "Mass of a serving", title="Label: Pan patty, draft")
    program.press_in(program.find("Rules", role="combo box"), "Down", "Down", "Return")
    sheet_says(program, "Regulation (EU) No 1169/2011")
    program.screenshot("label-eu")
    for name, value in (("Energy in 100 g of blend, kJ", "900"), ("Energy in 100 g of blend, kcal", "220"),
                        ("of which saturates in 100 g of blend, g", "7"),
                        ("Carbohydrate in 100 g of blend, g", "0"),
                        ("of which sugars in 100 g of blend, g", "0"),
                        ("Protein in 100 g of blend, g", "17"), ("Salt in 100 g of blend, g", "0.2")):
        program.type_into(name, value)
    sheet_says(program, "Nutrition declaration")
    program.screenshot("label-eu-panel")
    program.click("Save Panel…", role="push button")
    program.choose_file("Save the Panel", svg, ".svg")
    program.says("Saved as “")
    with open(svg, encoding="utf-8") as file:
        assert "<svg" in file.read()
    program.type_into("Mass of a serving", "150")
    program.press("Escape")
    program.gone("Mass of a serving")
    open_label(program)
    program.reads("Mass of a serving", "150")
    sheet_says(program, "Regulation (EU) No 1169/2011")
    program.press("Escape")
    program.quit()


def menu(program, item):
    program.press("F10")
    program.click(item, role="menu item")


def a_notebook_goes_out_as_open_data_and_in(start, folder):
    out = os.path.join(folder, "out.json")
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    menu(program, "Export as Open Data…")
    program.choose_file("Export as Open Data", out, ".json")
    wait_for(lambda: os.path.exists(out), "the open data")
    menu(program, "Import Open Data…")
    program.choose_file("Import Open Data", out)
    wait_for(lambda: os.path.exists(os.path.join(folder, "out.forcemeat")), "the notebook made of it")
    program.find("Formula", role="page tab")
    menu(program, "Import Open Data…")  # the notebook is there already
    program.choose_file("Import Open Data", out)
    program.says("out.forcemeat")
    program.quit()


def a_serving_follows_its_patty(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    show_version(program, 3)
    program.page("Versions")
    program.click("Serving…", role="push button")
    sheet_says(program, "Serving: Pan patty, version 3, serving not saved")
    sheet_says(program, "1 patty of 180.0 g raw, cooked; 127.8 g")
    program.press_in(program.find("Add a formula", role="combo box"), "Down", "Return")
    sheet_says(program, "Sauce: ")
    program.type_into("Mass of ", "30", contains=True)
    sheet_says(program, "The serving; 157.8 g")
    sheet_says(program, "none stated by whoever entered it")
    program.screenshot("serving")
    assert not program.unnamed(), program.unnamed()
    program.click("Save Serving", role="push button")
    program.says("Type what this serving is called")
    program.type_into("Name of the serving", "Plain")
    program.type_into("Why it is saved", "first")
    program.click("Save Serving", role="push button")
    program.says("Saved as serving 1 of version 3.")
    sheet_says(program, "version 3, serving 1")
    program.button("Label…")
    program.find("Label: Pan patty, version 3, serving 1", role="frame")
    program.reads("Mass of a serving", "157.8")
    program.says("No panel: figures that must stand on it are not known.")
    program.screenshot("serving-label")
    program.press("Escape")
    program.gone("Mass of a serving")
    program.type_into("Patties of a serving", "2")
    sheet_says(program, "2 patties of 180.0 g raw, cooked; 255.6 g")
    program.press("Escape")
    program.gone("Patties of a serving")
    program.click("Serving…", role="push button")
    sheet_says(program, "2 patties of 180.0 g raw, cooked; 255.6 g")  # what was not saved went on
    program.press("Escape")
    program.gone("Patties of a serving")
    program.quit()


run(a_label_is_refused_shown_saved_and_kept,
    a_serving_follows_its_patty,
    a_notebook_goes_out_as_open_data_and_in)
