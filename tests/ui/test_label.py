# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""A label: refused while a figure is missing, then shown, saved and kept."""

import os

from harness import plain, run, wait_for


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
    open_label(program)
    program.find("Label: Pan patty (invented), draft", role="frame")
    program.says("No panel: figures that must stand on it are not known.")
    sheet_says(program, "Trans Fat: not known for")
    sheet_says(program, "Label: Pan patty (invented), draft")
    sheet_says(program, "No list of ingredients: the allergens are not stated of")
    sheet_says(program, "licensed professional or the authority must check")
    program.screenshot("label-refused")
    assert not program.unnamed(), program.unnamed()
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


run(a_label_is_refused_shown_saved_and_kept,
    a_notebook_goes_out_as_open_data_and_in)
