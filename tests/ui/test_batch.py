"""Planning a batch and reading its sheet, as a person with a keyboard would."""

from harness import plain, run, wait_for


def sheet_says(program, text):
    wait_for(lambda: text in plain(program.find("Preview of the sheet", role="image").description),
             f"{text!r} on the sheet")


def a_batch_sheet_shows_grams_and_costs(start, folder):
    program = start("--demo", "--separate")
    program.click("Batch Sheet…", role="push button")
    program.find("Cost per raw patty", contains=True)
    sheet_says(program, "Batch sheet: Pan patty (invented), draft")
    program.type_into("Patties of this batch", "10")
    program.type_into("Raw mass of each patty", "180")
    program.type_into("Grind loss", "4")
    sheet_says(program, "10 patties of 180.0 g raw")
    sheet_says(program, "Into the grinder; 1875.0 g")
    program.type_into("Salt in percent of the ground mass", "1,5")
    program.type_into("Minutes from salting to cooking", "30")
    sheet_says(program, "Salt 30 min before cooking: 27.0 g in all, 2.70 g for each patty.")
    sheet_says(program, "Not stated:")
    sheet_says(program, "Check the label of each supplier.")
    program.type_into("Grind loss", "-3")
    program.find("is too small", contains=True)
    assert not program.unnamed(), program.unnamed()
    program.press("Escape")
    program.gone("Cost per raw patty", contains=True)
    program.quit()


run(a_batch_sheet_shows_grams_and_costs)
