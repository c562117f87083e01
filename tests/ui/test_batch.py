# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Planning a batch, reading, printing and saving its sheet, and correcting what was weighed."""

import os
import re
import shutil
import subprocess

from harness import plain, run, wait_for
from steps import add_own_entry, weigh


def sheet_says(program, text):
    wait_for(lambda: text in plain(program.find("Preview of the sheet", role="image").description),
             f"{text!r} on the sheet")


def close_sheet(program):
    program.press("Escape")
    program.gone("Cost per raw patty", contains=True)


def a_batch_sheet_shows_grams_and_costs(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    add_own_entry(program, "Sausage meat", "70")
    weigh(program, "Sausage meat", "10")
    program.type_into("Salt on the surface, % of the patty", "1,2")
    program.says("One raw patty, 180 g, with 1.20 % salt on the surface")
    program.screenshot("surface-salt")
    program.click("Batch Sheet…", role="push button")
    program.find("Cost per raw patty", contains=True)
    sheet_says(program, "Batch sheet: Pan patty, draft")
    sheet_says(program, "Salt, 1.2 % of the ground mass, on top")
    program.type_into("Patties of this batch", "10")
    program.type_into("Raw mass of each patty", "180")
    program.type_into("Grind loss", "4")
    sheet_says(program, "10 patties of 180.0 g raw")
    sheet_says(program, "Into the grinder; 1875.0 g")
    program.type_into("Salt in percent of the ground mass", "1,5")
    program.type_into("Minutes from salting to cooking", "30")
    program.type_into("Price of the salt per kg", "1")
    sheet_says(program, "on top; 27.0 g; 30 g; €0.03")
    sheet_says(program, "Salt 30 min before cooking: 27.0 g in all, 2.70 g for each patty.")
    sheet_says(program, "Not stated: Sausage meat")
    sheet_says(program, "Everything in this notebook is invented")
    sheet_says(program, "Check the label of each supplier.")
    program.type_into("Grind loss", "-3")
    program.find("is too small", contains=True)
    assert not program.unnamed(), program.unnamed()
    close_sheet(program)
    program.quit()


def a_missing_price_leaves_a_least_cost(start, folder):
    program = start("--demo", "--separate")
    program.click("Batch Sheet…", role="push button")
    costs = program.says("Cost per raw patty at least €")
    assert "per cooked patty at least €" in costs and "per 100 g cooked at least €" in costs, costs
    assert costs.endswith("Without a price: Beef heart"), costs
    sheet_says(program, "; at least €")
    close_sheet(program)
    program.quit()


def text_of(pdf):
    found = subprocess.run(["pdftotext", "-layout", pdf, "-"], stdout=subprocess.PIPE, text=True,
                           check=True)
    return " ".join(plain(found.stdout).split())


def check_pdf(pdf):
    with open(pdf, "rb") as file:
        assert file.read(5) == b"%PDF-"
    if shutil.which("pdfinfo"):
        info = subprocess.run(["pdfinfo", pdf], stdout=subprocess.PIPE, text=True, check=True).stdout
        assert re.search(r"^Pages: +1$", info, re.M) and "A4" in info, info
    if shutil.which("pdftotext"):
        text = text_of(pdf)
        for words in ("Batch sheet: Pan patty, draft", "12 patties of 150.0 g raw",
                      "Into the grinder 1800.0 g", "Cost per raw patty at least €",
                      "Check the label of each supplier.", "Undercooked ground meat"):
            assert words in text, (words, text)


def save_as(program, path, title="Save Batch Sheet"):
    """The dialog offers a name for the file; a whole path in its place is taken as well."""
    dialog = program.find(title, showing=False)
    name = wait_for(lambda: next((node for node in dialog.below() if node.has("EditableText")
                                  and node.text().endswith(".pdf")), None), "name of the file")
    name.set_text(path)
    program.button("Save")
    program.gone(title)


def the_sheet_is_saved_as_a_pdf(start, folder):
    program = start("--demo", "--separate")
    pdf = os.path.join(folder, "sheet.pdf")
    program.click("Batch Sheet…", role="push button")
    program.type_into("Patties of this batch", "12")
    program.type_into("Raw mass of each patty", "150")
    sheet_says(program, "12 patties of 150.0 g raw")
    program.click("Save PDF…", role="push button")
    save_as(program, pdf)
    program.says("Saved as “")
    check_pdf(pdf)
    close_sheet(program)
    program.quit()


def from_main_menu(program, item):
    program.press("F10")
    program.click(item, role="menu item")


def lists_and_reports_are_documents_too(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    from_main_menu(program, "Shopping List…")
    sheet_says(program, "Pan patty, draft: 6 patties of 180.0 g raw")
    program.type_into("Patties of Pan patty, draft", "60")
    sheet_says(program, "draft: 60 patties of 180.0 g raw")
    program.screenshot("shopping-list")
    program.press("Escape")
    program.gone("Add a batch")
    from_main_menu(program, "Prices…")
    sheet_says(program, "At today’s prices: Pan patty, draft")
    sheet_says(program, "A kilogram of blend: at least €")
    program.screenshot("prices")
    prices = os.path.join(folder, "list.csv")
    program.click("Export Prices…", role="push button")
    program.choose_file("Export the Price List", prices, ".csv")
    program.says("Saved as “")
    program.click("Import Prices…", role="push button")
    program.choose_file("Import a Price List", prices)
    program.says("New prices: ")
    program.press("Escape")
    program.gone("Import Prices…")
    from_main_menu(program, "Development Report…")
    sheet_says(program, "Version 3, from version 2")
    sheet_says(program, "Hotter pan, longer: version 3")
    assert not program.unnamed(), program.unnamed()
    pdf = os.path.join(folder, "report.pdf")
    program.click("Save PDF…", role="push button")
    save_as(program, pdf, "Save Development Report")
    program.says("Saved as “")
    if shutil.which("pdftotext"):
        text = text_of(pdf)
        for words in ("Bought trim: version 6", "page 1 of"):
            assert words in text, (words, text)
    program.press("Escape")
    program.quit()


def bad_numbers_are_never_printed(start, folder):
    program = start("--demo", "--separate")
    program.click("Batch Sheet…", role="push button")
    program.type_into("Raw mass of each patty", "some")
    program.says("“some” is not a number")
    program.button("Print…")
    wait_for(lambda: len(list(program.all("“some” is not a number", role="label",
                                          contains=True))) > 1, "the reason beside the costs")
    close_sheet(program)
    program.quit()


def the_sheet_is_printed_to_a_file(start, folder):
    os.chdir(folder)  # the toolkit's printer into a file proposes the current folder
    program = start("--demo", "--separate")
    program.click("Batch Sheet…", role="push button")
    program.type_into("Patties of this batch", "12")
    program.type_into("Raw mass of each patty", "150")
    sheet_says(program, "12 patties of 150.0 g raw")
    program.button("Print…")
    program.press_in(program.find("Print to File"))
    program.find(os.path.join(folder, "output.pdf"), role="push button")
    program.screenshot("print")
    program.button("Print")
    program.says("The sheet went to the printer.")
    check_pdf(os.path.join(folder, "output.pdf"))
    close_sheet(program)
    program.quit()


def field_text(node):
    return next(plain(below.text()) for below in node.below() if below.has("EditableText"))


def edit_ingredient(program, name):
    program.click(f"More for {name}", role="push button")
    program.click("Edit Ingredient…", role="menu item")
    program.field("Price as purchased")


def save_ingredient(program):
    program.button("Save")
    program.gone("Price as purchased")


def prices_and_allergens_are_kept(start, folder):
    trim = "Beef trim 50/50, bought"
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    for price in ("3,10", "3,45"):
        edit_ingredient(program, trim)
        program.type_into("Price as purchased", price)
        save_ingredient(program)
    edit_ingredient(program, trim)
    program.says("Stated: none of these")
    program.click("Allergens stated on the label", role="check box")
    program.says("Not stated, which does not mean none")
    program.says("3.45 per kg, noted ")
    program.says("3.10 per kg, noted ")
    program.click("Allergens stated on the label", role="check box")
    program.says("Stated: none of these")
    milk = program.find("Milk", role="check box")

    def is_inside():
        if 0 < milk.extents()[1] < 450:
            return True
        subprocess.run(["xdotool", "mousemove", "12", "300", "click", "5"], check=True)
        return False

    wait_for(is_inside, "Milk in view")
    program.press_in(milk)
    program.screenshot("allergens")
    save_ingredient(program)
    program.click("Batch Sheet…", role="push button")
    sheet_says(program, f"{trim}: Milk")
    close_sheet(program)
    edit_ingredient(program, trim)
    program.says("Milk")
    program.press("Escape")
    program.gone("Price as purchased")
    program.quit()


def open_first_experiment(program):
    program.page("Experiments")
    program.press_in(program.find("\nVersion ", contains=True, role="label"))
    program.field("Title of the experiment")


def weighings_are_corrected(start, folder):
    program = start("--demo", "--separate")
    open_first_experiment(program)
    program.type_into("Weighed grams of Beef trim 50/50, bought", "120", contains=True)
    program.type_into("Name of an extra ingredient", "Ice")
    program.click("Add extra", role="push button")
    program.click("Correct This Batch…", role="push button")
    program.says("From the experiment, which keeps its own numbers")
    window = program.find("Correct the Batch", role="frame")
    weighed = {node.name: field_text(node) for node in program.all("Weighed grams of", within=window,
                                                                  contains=True)}
    assert weighed["Weighed grams of Beef trim 50/50, bought"] == "120", weighed
    assert weighed["Weighed grams of Ice"] == "0", weighed
    program.says("Back to the planned shares")
    program.says("Add ")
    program.screenshot("correct-weighings")
    assert not program.unnamed(), program.unnamed()
    program.press("Escape")
    program.gone("Back to the planned shares")
    program.reads("Weighed grams of Beef trim 50/50, bought", "120")
    program.quit()


def a_batch_is_corrected_with_any_cut(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    program.click("Correct the Batch…", role="push button")
    program.type_into("Fat to aim for, at least", "18")
    program.type_into("Fat to aim for, at most", "22")
    program.type_into("Fat by test of the ground mix", "15")
    program.press_in(program.field("Step of the scale"), "Tab", "Tab")
    program.type_keys("suet")
    program.find("Beef, variety meats and by-products, suet, raw", role="list item", contains=True)
    program.press("Return")
    # Suet has 94 % fat: 1,080 g take 3 parts in 76 to the edge and 5 in 74 to the middle.
    program.says("To the nearest edge of the band, 18.0 %: Add 43 g of Beef suet")
    program.says("To its middle, 20.0 %: Add 73 g of Beef suet")
    program.screenshot("correct-any-cut")
    # A cut too near to the aim never makes a batch of another size.
    program.type_into("Fat to aim for, at least", "93,9")
    program.type_into("Fat to aim for, at most", "93,9")
    program.says("more than the batch itself would have to be added")
    assert not program.unnamed(), program.unnamed()
    program.press_in(program.field("Step of the scale"), "Escape")
    program.gone("What to add")
    program.quit()


run(a_batch_sheet_shows_grams_and_costs,
    a_missing_price_leaves_a_least_cost,
    the_sheet_is_saved_as_a_pdf,
    lists_and_reports_are_documents_too,
    bad_numbers_are_never_printed,
    prices_and_allergens_are_kept,
    the_sheet_is_printed_to_a_file,
    weighings_are_corrected,
    a_batch_is_corrected_with_any_cut)
