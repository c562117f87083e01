# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The formula page: numbers live while typing, bad numbers, locks, undo, brief, own entries."""

import shutil

from harness import plain, run, wait_for
from keyboard import Focus
from steps import add_cut, add_own_entry, choose, first_blend, new_blend, weigh
from tasting_steps import undo_of_toast

CHUCK = "Chuck short ribs"
GROUND = "Ground beef 80/20"


def number(program, name):
    return float(program.read(name, contains=True).replace(",", "."))


def becomes(program, name, value):
    wait_for(lambda: abs(number(program, name) - value) < 0.006, f"{value} in {name!r}")


def fat_and_lean_follow_the_grams(start, folder):
    program = start()
    first_blend(program)
    # SR28: 23128 has 18.33 g and 23572 has 20.00 g fat per 100 g; (600, 400) g give 18.998.
    program.says("Fat, calculated: 19.0 %")
    program.says("= 81/19")
    weigh(program, GROUND, "1400,5")  # a comma is a decimal sign too
    program.says("Total: 2000.5 g")
    # (600 * 18.33 + 1400.5 * 20) / 2000.5 = 19.499
    program.says("Fat, calculated: 19.5 %")
    program.quit()


def found(program):
    lists = program.all("Foods found", role="list")
    return [row.name for rows in lists for row in rows.children]


def highlights(program, begin):
    """Waits until the search says that what begins with @begin is highlighted."""
    wait_for(lambda: next(program.all("Add a cut")).description.startswith(begin),
             f"{begin!r} highlighted")


def the_food_search_forgives_and_enter_adds_what_is_highlighted(start, folder):
    program = start()
    new_blend(program, "Search")
    program.press_in(program.field("Add a cut"))
    program.type_keys("briskett")
    program.says("Searched as “brisket”.")
    highlights(program, "Beef, brisket, whole")
    second = found(program)[1].split(", raw,")[0] + ", raw"
    assert "cooked" not in " ".join(found(program)[:-2]), found(program)
    assert found(program)[-2].startswith("Also ready-made: "), found(program)
    assert found(program)[-1] == "Own entry for “briskett”…", found(program)
    program.press("Down")
    highlights(program, second)
    program.press("Return")
    program.find("Grams of Brisket flat half, 1/8 in trim", role="text")
    # What is ready-made unfolds under the highlight, and each keystroke starts at the top.
    program.press_in(program.field("Add a cut"))
    program.type_keys("Rinderbrust")
    highlights(program, "Beef, brisket, whole")
    program.press("Up", *["Down"] * (len(found(program)) - 2))
    highlights(program, "Also ready-made: ")
    program.press("Return")
    highlights(program, "Beef, brisket, whole, lean and fat, trimmed to 0 inch fat, all grades, cook")
    program.press("Down")
    highlights(program, "Beef, brisket")
    program.screenshot("food-search")
    program.press("BackSpace")
    highlights(program, "Beef, brisket, whole")
    program.press("ctrl+a")
    program.type_keys("zwxqy")
    program.says("Nothing found.")
    highlights(program, "Own entry for “zwxqy”")
    program.press("Return")
    program.reads("Name", "zwxqy")
    program.press("Escape")
    program.quit()


def a_blend_is_composed_without_the_mouse(start, folder):
    program = start()
    new_blend(program, "Keys")
    program.says("Type a cut into the field above")
    focus = Focus(program)
    program.type_keys("chuck short rib")
    highlights(program, "Beef, chuck, short ribs")
    program.press("Return")
    program.field("Grams of " + CHUCK, contains=True)
    program.type_keys("600")
    program.says("Total: 600.0 g")
    program.press("ctrl+l")
    program.type_keys("80/20")
    highlights(program, "Beef, ground, 80/20")
    program.press("Return")
    program.field("Grams of " + GROUND, contains=True)
    program.type_keys("400")
    program.says("Total: 1000.0 g")
    # Up, Down and Enter go along a column, Tab down one column and then the next.
    program.press("Up")
    program.type_keys("500")
    program.says("Total: 900.0 g")
    program.press("Return")
    program.type_keys("500")
    program.says("Total: 1000.0 g")
    stops = []
    for key in ("shift+Tab",) + ("Tab",) * 7:
        focus.press(key)
        stops.append(focus.name())
    starts = [kind + name for kind in ("Grams of ", "Share of ", "Price of ", "Lock ")
              for name in (CHUCK, GROUND)]
    assert all(stop.startswith(start) for stop, start in zip(stops, starts)), stops
    program.screenshot("column-keys")
    program.quit()


def two_pasted_columns_become_lines(start, folder):
    program = start()
    new_blend(program, "Pasted")
    note = program.type_into("What this blend is for", "Cut\tGrams\nchuck short rib\t600\n"
                             "ground beef 80\t0.4 kg\nunobtainium\t5")
    program.press_in(note, "ctrl+a", "ctrl+c")
    program.press_in(program.field("Add a cut"), "ctrl+v")
    program.reads("Grams of " + CHUCK, "600", contains=True)
    program.reads("Grams of " + GROUND, "400", contains=True)
    program.says("Total: 1000.0 g")
    program.screenshot("pasted")
    # All of it is one step.
    program.click("Undo", role="push button")
    program.gone("Grams of " + CHUCK, contains=True)
    program.gone("Grams of " + GROUND, contains=True)
    program.quit()


def a_food_is_called_as_the_cook_calls_it(start, folder):
    program = start()
    first_blend(program)
    program.click("More for " + CHUCK, role="push button", contains=True)
    program.click("Edit Ingredient…", role="menu item")
    # The dataset's own name and number are one click away.
    program.says("Beef, chuck, short ribs, boneless, lean and fat, trimmed to 0 inch fat, all grades, "
                 "raw · Food-composition dataset 23128")
    program.type_into("Name", "House ribs")
    program.button("Save")
    program.field("Grams of House ribs")
    program.screenshot("short-names")
    program.press("ctrl+z")
    program.field("Grams of " + CHUCK, contains=True)
    program.click("Redo", role="push button")
    program.field("Grams of House ribs")
    # It is called so in every blend of the notebook.
    program.click("New blend", role="push button")
    program.type_into("Name of the blend", "Second")
    program.button("Create")
    program.gone("Grams of House ribs")
    add_cut(program, "chuck short rib", "Beef, chuck, short ribs", "House ribs")
    program.quit()


def a_bad_number_tells_and_loses_nothing(start, folder):
    program = start()
    first_blend(program)
    for text, message in (("-5", "too small"), ("NaN", "not a number"), ("", "is blank"),
                          ("1e99", "cannot be read"), ("99999999999", "too large"),
                          ("1,2,3", "not a number")):
        weigh(program, CHUCK, text)
        program.says(message)
        program.says("Total: 1000.0 g")
        program.says("Fat, calculated: 19.0 %")
        weigh(program, CHUCK, "600")
        program.gone(message, role="label", contains=True)
    becomes(program, "Grams of " + CHUCK, 600)
    program.quit()


def a_refused_text_stores_nothing(start, folder):
    program = start()
    first_blend(program)
    weigh(program, CHUCK, "0.6 kg")
    program.says("Total: 1000.0 g")
    weigh(program, CHUCK, "1 lb 4 oz")  # 566.99 g, NIST Handbook 44
    program.says("Total: 967.0 g")
    weigh(program, CHUCK, "300+300")
    program.says("Total: 1000.0 g")
    program.press_in(program.field("Grams of " + CHUCK, contains=True), "ctrl+a")
    program.type_keys("0.7 k")  # by keystrokes: 0, 0.7 and then nothing that is a mass
    program.says("“0.7 k” cannot be read")
    program.says("Total: 1000.0 g")
    program.press("Tab")
    program.says("“0.7 k” was not taken: it is 600 g as before.")
    program.reads("Grams of " + CHUCK, "600", contains=True)
    program.quit()


def the_units_go_with_the_notebook(start, folder):
    program = start()
    first_blend(program)
    program.press("ctrl+comma")
    program.find("Preferences", role="frame")
    for row in ("Masses", "Temperatures"):
        program.press_in(program.find(row, role="combo box"), "Down", "Return")
    program.type_into("Currency sign (amounts are not converted)", "US$")
    program.press("Escape")
    program.gone("Preferences", role="frame")
    program.says("Total: 2.20 lb")
    program.reads("Ounces of " + CHUCK, "21.164", contains=True)
    program.type_into("Ounces of " + CHUCK, "8", contains=True)
    program.says("Total: 1.38 lb")  # 8 oz and 400 g
    program.click("Correct the Batch…", role="push button")
    program.find("Weighed ounces of " + CHUCK, contains=True)
    program.press("Escape")
    program.gone("What to add")
    program.quit()
    shutil.rmtree(folder + "/config")  # another machine has other preferences
    program = start()
    program.says("Total: 1.38 lb")
    program.reads("Ounces of " + CHUCK, "8", contains=True)
    program.press("ctrl+comma")
    program.reads("Currency sign (amounts are not converted)", "US$")
    program.press("Escape")
    program.gone("Preferences", role="frame")
    program.quit()


def no_mass_is_no_composition(start, folder):
    program = start()
    first_blend(program)
    weigh(program, CHUCK, "0")
    weigh(program, GROUND, "0")
    program.says("All lines weigh 0 g")
    program.says("Fat, calculated: —")
    program.click("Undo")
    becomes(program, "Grams of " + GROUND, 400)
    program.quit()


def shares_follow_locks_hold_and_undo_returns(start, folder):
    program = start()
    first_blend(program)
    program.type_into("Share of " + GROUND, "50", contains=True)
    becomes(program, "Grams of " + CHUCK, 500)
    becomes(program, "Share of " + CHUCK, 50)
    program.click("Undo")
    becomes(program, "Grams of " + CHUCK, 600)
    becomes(program, "Grams of " + GROUND, 400)
    program.click("Redo")
    becomes(program, "Grams of " + GROUND, 500)
    program.click("Lock " + CHUCK, contains=True)
    wait_for(lambda: next(program.all("Lock " + CHUCK, contains=True)).description
             .startswith("Locked"), "locked line")
    # The only other line is locked: the share cannot give way, and that is said.
    add_own_entry(program, "Back fat from the market", lean="10")
    weigh(program, "Back fat from the market", "100")
    program.type_into("Share of Back fat", "20", contains=True)
    becomes(program, "Grams of " + CHUCK, 500)
    program.quit()


def the_brief_says_its_state_in_words(start, folder):
    program = start()
    first_blend(program)
    program.type_into("Fat, at least", "21")
    program.type_into("Fat, at most", "24,5")
    program.says("now 19.0 %, 2.0 below the band 21.0–24.5 %")
    program.type_into("Fat, at least", "18")
    program.says("within the target: 18")
    program.type_into("Fat, at most", "18.5")
    program.says("above the band")
    program.type_into("Fat, at least", "30")
    program.says("lower limit lies above")
    program.type_into("Patty mass", "120")
    program.type_into("Number of patties", "10")
    program.says("For 10 patties: 1200.0 g")
    program.type_into("What this blend is for", "A lunch patty for a small grill.")
    choose(program, "Legal limits", "Down", "Down")
    limits = program.says("minced pure beef: fat 19.0")
    assert "limit: 20 %, 1.0" in plain(limits) and "collagen of meat protein not known" in limits, limits
    assert "authority must check" in limits and "pigmeat" not in limits, limits
    program.screenshot("legal-limits")
    program.quit()
    program = start()
    program.reads("What this blend is for", "A lunch patty for a small grill.")
    program.says("minced pure beef: fat 19.0")
    program.quit()


def own_entries_go_when_no_draft_uses_them(program, name):
    def search(shown):
        field = program.type_into("Add a cut", "")
        program.press_in(field)
        program.type_keys(name.lower())
        wait_for(lambda: any(hit.startswith(name + ",") for hit in found(program)) == shown,
                 f"{name!r} {'' if shown else 'not '}found")

    search(True)
    program.press("ctrl+Delete")
    program.says("The draft of House patty uses this own entry. Take it out of there first.")
    program.screenshot("own-entry-in-use")
    program.click("Remove " + name, role="push button")
    program.gone("Grams of " + name)
    search(True)
    program.press("ctrl+Delete")
    program.find(f"Own entry “{name}” removed")
    wait_for(lambda: not any(hit.startswith(name + ",") for hit in found(program)), "end of the hit")
    program.screenshot("own-entry-removed")
    wait_for(lambda: undo_of_toast(program), "Undo in the toast").act()
    wait_for(lambda: any(hit.startswith(name + ",") for hit in found(program)), "the hit again")
    program.click(f"Remove the own entry {name}", role="push button")
    wait_for(lambda: not any(hit.startswith(name + ",") for hit in found(program)), "end of the hit")


def prices_stand_in_the_rows_and_targets_beside_the_totals(start, folder):
    program = start()
    first_blend(program)
    program.says("Cost per kg, edible: — no prices yet")
    row = program.field("Grams of " + CHUCK, contains=True)
    place = row.extents()
    # The dataset counts 93 % of the chuck as edible.
    program.type_into("Price of " + CHUCK, "10", contains=True)
    program.says("Cost per kg, edible: at least 6.45")
    program.says("Cost: known for 60 % of the mass, not for Ground beef")
    program.type_into("Price of " + GROUND, "5", contains=True)
    program.says("Cost per kg, edible: 8.45")
    # A price that appears above moves no row.
    assert row.extents() == place, (row.extents(), place)
    program.type_into("Price of " + GROUND, "-3", contains=True)
    program.says("Cost per kg, edible: 8.45")
    program.click("Undo")
    program.says("Cost per kg, edible: at least 6.45")
    program.click("Undo")
    program.says("Cost per kg, edible: — no prices yet")
    program.type_into("Fat, at most", "18")
    focus = Focus(program)
    program.click("Target: Fat: 19.0 % 1.0 above the upper limit 18.0 %", role="push button")
    focus.goes_to("Fat, at most")
    program.quit()


def an_entry_without_analysis_is_no_zero(start, folder):
    program = start()
    first_blend(program)
    add_own_entry(program, "Trim of unknown make")
    weigh(program, "Trim of unknown make", "1000")
    program.says("Fat, calculated: ≥ 9.5 %")
    program.find("House patty, draft – notebook.forcemeat", role="label")
    program.says("known for 50 % of the mass, not for Trim of unknown make")
    program.says("Total fat: at least")
    program.says("50 % of the mass covered; without a value: Trim of unknown make")
    program.says("Protein: at least")
    program.screenshot("unknown")
    own_entries_go_when_no_draft_uses_them(program, "Trim of unknown make")
    program.quit()


def a_figure_tells_where_it_comes_from(start, folder):
    program = start()
    first_blend(program)
    program.press_in(program.find("Fat, calculated: 19.0 %", role="push button", contains=True))
    program.screenshot("derivation")
    text = plain(program.find("Derivation", role="text").text())
    # SR28: 23128 has 18.33 g and 23572 has 20.00 g fat per 100 g.
    for part in ("USDA SR28, row 23128): 600.0 g × 18.330 g per 100 g = 109.980 g",
                 "USDA SR28, row 23572): 400.0 g × 20.000 g per 100 g = 80.000 g",
                 "Sum 189.980 g ÷ 1000.0 g × 100 = 18.998 g in 100 g"):
        if part not in text:
            raise AssertionError(f"{part!r} does not stand in {text!r}")
    program.click("Copy")
    program.find("Copied", role="push button")
    program.press("Escape")
    program.gone("Derivation", role="text")
    program.press_in(program.find("Total fat: 34.2 g", role="list item", contains=True))
    program.find("Derivation", role="text")
    program.press("Escape")
    program.gone("Derivation", role="text")
    program.quit()


run(fat_and_lean_follow_the_grams, the_food_search_forgives_and_enter_adds_what_is_highlighted,
    a_blend_is_composed_without_the_mouse, two_pasted_columns_become_lines,
    a_food_is_called_as_the_cook_calls_it, a_bad_number_tells_and_loses_nothing,
    a_refused_text_stores_nothing, the_units_go_with_the_notebook, no_mass_is_no_composition,
    shares_follow_locks_hold_and_undo_returns, the_brief_says_its_state_in_words,
    prices_stand_in_the_rows_and_targets_beside_the_totals, an_entry_without_analysis_is_no_zero,
    a_figure_tells_where_it_comes_from)
