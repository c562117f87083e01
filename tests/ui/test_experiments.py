# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The experiment log: a making is recorded, corrected, saved as it is typed and found again."""

import shutil
import subprocess

from harness import run, wait_for
from steps import first_blend, save_version, show_version

TITLE = "Title of the experiment"


def open_first(program):
    """Shows the log of the demo's first blend and clicks its first row."""
    program.page("Experiments")
    program.press_in(program.find("\nVersion ", contains=True, role="label"))
    program.field(TITLE)


def every_control_of_an_experiment_has_a_name(start, folder):
    program = start("--demo", "--separate")
    open_first(program)
    program.screenshot("experiment")
    assert not program.unnamed(), program.unnamed()
    program.says("Ground meat caution")
    program.says("USDA FSIS")
    program.quit()


def an_edit_is_there_after_a_restart(start, folder):
    program = start("--demo", "--separate")
    open_first(program)
    program.type_into(TITLE, "Renamed while nobody looked")
    program.type_into("Raw mass of patty 1", "172,5")
    program.quit()
    program = start("--separate")
    program.page("Experiments")
    program.says("Renamed while nobody looked")
    open_first(program)
    program.says("4.2 % too light")
    program.quit()


def bad_numbers_are_flagged_and_lose_nothing(start, folder):
    program = start("--demo", "--separate")
    open_first(program)
    good = program.says("6 patties weighed raw")
    for text in ("-3", "nan", "1e99", "twelve"):
        program.type_into("Raw mass of patty 1", text)
        program.says(good)
    program.type_into("Number of grinder passes", "1.5")
    program.says("counted in whole numbers")
    program.quit()


def new_experiment(program, title):
    """Makes one from the newest version of the demo's first blend."""
    def newest():
        lists = program.all("Blends and versions", role="list")
        return next((row for found in lists for row in found.children
                     if row.name.startswith("Version ")), None)

    program.press_in(wait_for(newest, "saved version in the sidebar"))
    program.page("Experiments")
    program.click("New experiment", role="push button")
    wait_for(lambda: program.read(TITLE).startswith("Trial "), "new experiment")
    program.type_into(TITLE, title)


def open_by_title(program, title):
    program.page("Experiments")
    program.press_in(program.find(title + "\n", contains=True, role="label"))
    program.reads(TITLE, title)


def add_reading(program, number, time, temp):
    program.click("Add a reading", role="push button")
    program.type_into(f"Time of reading {number}", time)
    program.type_into(f"Core temperature of reading {number}", temp)


def paste_readings(program, text):
    program.click("Type or paste many readings")
    program.type_into("Readings as text, time and temperature", text)
    program.click("Add these readings", role="push button")


def a_whole_experiment_is_there_after_a_restart(start, folder):
    program = start("--demo", "--separate")
    new_experiment(program, "From end to end")
    weighed = next(program.all("Weighed grams of ", contains=True)).name
    program.type_into(weighed, "612,5")
    program.click("Add a patty", role="push button")
    program.type_into("Raw mass of patty 1", "150")
    program.type_into("Cooked mass of patty 1", "112.5")
    program.type_into("Hole diameter of the grinder plate", "4,5")
    program.type_into("Number of grinder passes", "2")
    program.type_into("Number of grinder passes", "")
    add_reading(program, 1, "0:00", "4")
    paste_readings(program, "2:00 31\n4:30 68.5\n")
    program.type_into("Notes on the experiment", "Dark crust, “juicy”.")
    program.screenshot("experiment-new")
    program.quit()
    program = start("--separate")
    open_by_title(program, "From end to end")
    program.reads(weighed, "612.5")
    program.reads("Raw mass of patty 1", "150")
    program.reads("Cooked mass of patty 1", "112.5")
    program.reads("Hole diameter of the grinder plate", "4.5")
    program.reads("Number of grinder passes", "")
    program.reads("Time of reading 3", "4:30")
    program.reads("Core temperature of reading 3", "68.5")
    program.reads("Notes on the experiment", "Dark crust, “juicy”.")
    program.quit()


def what_is_long_is_taken_or_refused_with_words(start, folder):
    program = start("--demo", "--separate")
    new_experiment(program, "With a logger")
    paste_readings(program, "".join(f"{i // 60}:{i % 60:02} {5 + i / 60:.1f}\n" for i in range(3600)))
    program.says("The first 100 of 3600 readings can be changed here")
    program.screenshot("readings-3600")
    program.type_into("Notes on the experiment", "Short")
    program.type_into("Notes on the experiment", "x" * 2_000_000)
    program.says("This Text Is Too Long")
    program.screenshot("too-long")
    program.click("Close", role="push button")
    program.quit()


def bad_text_does_not_follow_to_the_next_experiment(start, folder):
    program = start("--demo", "--separate")
    new_experiment(program, "With bad text")
    program.type_into("Number of grinder passes", "1.5")
    program.says("counted in whole numbers")
    program.click("New experiment", role="push button")
    wait_for(lambda: program.read(TITLE).startswith("Trial "), "second experiment")
    wait_for(lambda: program.read("Number of grinder passes") != "1.5", "the plan's own passes")
    program.quit()


def a_removal_holds_when_the_program_ends_at_once(start, folder):
    program = start("--demo", "--separate")
    new_experiment(program, "Soon removed")
    program.find("Soon removed", role="list item", contains=True)
    program.click("Remove this experiment")
    program.says("“Soon removed” removed")
    program.quit()
    program = start("--separate")
    program.page("Experiments")
    program.find("Eight per cent heart", role="list item", contains=True)
    assert not list(program.all("Soon removed", contains=True)), "the removed experiment is back"
    program.quit()


def header_says(program, name, text):
    """Waits until the header's button says that."""
    wait_for(lambda: any(node.description == text
                         for node in program.all(name, role="push button", hasty=True)),
             f"{name} that says {text!r}")


def undo_belongs_to_the_page(start, folder):
    program = start("--demo", "--separate")
    program.page("Versions")
    header_says(program, "Undo", "Versions are frozen: there is nothing to undo on this page")
    open_first(program)
    header_says(program, "Undo", "Nothing to undo on this page")
    what = next(program.all("Weighed grams of ", contains=True)).name
    weighed = program.read(what)
    # What was typed in the field goes first, then the steps of the page.
    title = program.read(TITLE)
    program.press_in(program.field(TITLE), "End")
    program.type_keys(" X")
    program.reads(TITLE, title + " X")
    header_says(program, "Undo", "Undo: Title (Ctrl+Z)")
    program.press("ctrl+z")
    program.reads(TITLE, title)
    header_says(program, "Undo", "Nothing to undo on this page")
    program.press_in(program.field(what), "ctrl+a")
    program.type_keys("172.5")
    header_says(program, "Undo", f"Undo: {what} (Ctrl+Z)")
    program.click("Add a patty", role="push button")
    program.field("Raw mass of patty 7")
    program.press("ctrl+z")
    program.gone("Raw mass of patty 7")
    program.says("Undone: Add patty 7")
    program.press("ctrl+z")
    program.reads(what, weighed)
    header_says(program, "Undo", "Nothing to undo on this page")
    header_says(program, "Redo", f"Redo: {what} (Ctrl+Y)")
    program.screenshot("experiment-undone")
    # Nothing that is not on screen changes.
    program.page("Formula")
    header_says(program, "Redo", "Nothing to redo on this page")
    program.press("ctrl+y")
    program.page("Experiments")
    program.reads(what, weighed)
    header_says(program, "Redo", f"Redo: {what} (Ctrl+Y)")
    program.click("Redo", role="push button")
    program.reads(what, "172.5")
    # A narrow window shows the list in place of the record.
    header_says(program, "Undo", f"Undo: {what} (Ctrl+Z)")
    # The last of its X windows may be a tip.
    window = program.window_of(program.field(TITLE).above()[-1])
    subprocess.run(["xdotool", "windowsize", "--sync", window, "360", "720"], check=True)
    header_says(program, "Undo", "Nothing is open on this page, so there is nothing to undo")
    program.press("ctrl+z")
    program.quit()
    program = start("--separate")
    open_first(program)
    program.reads(what, "172.5")
    program.quit()


def a_new_experiment_opens_at_once(start, folder):
    program = start("--demo", "--separate")
    # The draft that is shown is as its version, so there is nothing to ask.
    program.page("Experiments")
    program.click("New experiment", role="push button")
    wait_for(lambda: program.read(TITLE).startswith("Trial "), "new experiment")
    first = program.read(TITLE)
    salt = "Salt on the surface, in percent of the mass of the patties"
    passes = program.read("Number of grinder passes")
    program.reads(salt, "")
    program.click("As the Last One", role="push button")
    wait_for(lambda: program.read(salt) != "", "salt of the last one")
    what = next(program.all("Weighed grams of ", contains=True)).name
    program.click("As Planned", role="push button")
    program.reads(what, "500")
    header_says(program, "Undo", "Undo: Weighed as planned (Ctrl+Z)")
    program.press_in(program.field(TITLE), "ctrl+Next", "ctrl+Next")
    program.press("ctrl+a")
    program.type_keys("140")
    program.reads("Planned mass of a patty", "140")
    program.press("ctrl+j")
    program.find("Core Readings", role="push button")
    program.screenshot("experiment-sections")
    program.press("Escape")
    program.click("Duplicate", role="push button")
    wait_for(lambda: program.read(TITLE) not in (first, ""), "the duplicate")
    program.reads(what, "")
    program.reads("Number of grinder passes", passes)
    program.reads("Planned mass of a patty", "140")
    program.screenshot("experiment-duplicate")
    program.quit()


def undo_removal(program):
    """Presses the button of the toast, not the one that takes back a change of the formula."""
    def toast_button():
        buttons = list(program.all("Undo", role="push button", contains=True, hasty=True))
        return buttons[-1] if len(buttons) > 1 else None

    wait_for(toast_button, "Undo in a toast").act()


def a_photo_comes_from_the_clipboard_and_back_from_its_removal(start, folder):
    if not shutil.which("xclip") or not shutil.which("convert"):
        print("# xclip or convert is not installed", flush=True)
        return
    program = start("--demo", "--separate")
    new_experiment(program, "With a photo")
    picture = folder + "/picture.png"
    subprocess.run(["convert", "-size", "640x480", "xc:brown", picture], check=True)
    subprocess.run(["xclip", "-selection", "clipboard", "-t", "image/png", picture], check=True)
    # Also in a text field: the clipboard holds no text.
    title = program.read(TITLE)
    program.press_in(program.field(TITLE), "ctrl+v")
    program.find("View photo 1")
    program.reads(TITLE, title)
    program.type_into("Caption of photo 1", "Cut open")
    program.screenshot("experiment-photo")
    program.click("Remove photo 1")
    undo_removal(program)
    program.reads("Caption of photo 1", "Cut open")
    # A search that finds the photo shows the photo.
    program.press("ctrl+f")
    program.field("Find in the notebook")
    program.type_keys("cut open")
    program.find("Cut open", role="list item", contains=True)
    program.press("Return")
    program.find("Photo 1 of 1")
    program.press("Escape")
    program.gone("Photo 1 of 1")
    program.quit()


def the_process_goes_with_the_version(start, folder):
    program = start()
    first_blend(program)
    program.says("Nothing is planned of grinding")
    program.click("Plan the Process…", role="push button")
    program.type_into("Plate of pass 1", "10")
    program.type_into("Plate of pass 2", "4.5")
    program.type_into("Surface", "Steel pan")
    program.type_into("First side", "2:30")
    program.button("Add a Seasoning")
    program.type_into("Seasoning 1", "Salt")
    program.type_into("Steps in your own words", "Press once.\nTurn once.")
    program.screenshot("process-window")
    assert not program.unnamed(), program.unnamed()
    program.press("Escape")
    program.gone("Plate of pass 1")
    program.says("10.0 mm, then 4.5 mm")
    program.says("Salt: after forming, on the surface")
    save_version(program, 1, "A process")
    show_version(program, 1)
    program.page("Experiments")
    program.click("New experiment", role="push button")
    wait_for(lambda: program.read(TITLE).startswith("Trial "), "new experiment")
    program.reads("Cooking surface", "Steel pan")
    program.reads("Number of grinder passes", "2")
    program.says("2 passes, last 4.5 mm")
    program.type_into("Cooking surface", "Griddle")
    program.says("Griddle: differs")
    program.reads("Minutes on the first side", "")
    program.screenshot("process-planned")
    program.click("Done as Planned", role="push button")
    program.reads("Minutes on the first side", "2.5")
    program.page("Versions")
    program.press_in(program.find("Version 1", contains=True, role="label"))
    program.screenshot("process-version")
    program.quit()


def one_search_finds_an_experiment_and_header_and_panel_follow(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    program.press("ctrl+f")
    program.field("Find in the notebook")
    program.type_keys("zzzq")
    program.says("Nothing says “zzzq”. Looked at: names")
    program.press("ctrl+a")
    program.type_keys("dark crust")
    program.find("Hotter pan, pulled early", role="list item", contains=True)
    program.screenshot("search")
    program.press("Return")
    program.reads(TITLE, "Hotter pan, pulled early")
    program.says("version 3, Hotter pan, pulled early – ")
    program.says("Hotter pan, pulled early, as weighed: fat ")
    program.says("as measured")
    program.screenshot("as-weighed")
    # What is selected under Versions is what header and panel tell of.
    program.page("Versions")
    program.gone("as weighed: fat", contains=True)
    program.press_in(program.find("Version 2, ", role="list item", contains=True))
    program.says("version 2 – ")
    # Another blend takes the experiment of this one off the screen.
    program.press_in(next(row for row in program.all("Lean shop patty", role="list item", contains=True)))
    program.says("Lean shop patty, draft – ")
    program.page("Experiments")
    program.says("Choose an experiment from the list")
    program.quit()


run(one_search_finds_an_experiment_and_header_and_panel_follow,
    every_control_of_an_experiment_has_a_name,
    an_edit_is_there_after_a_restart,
    bad_numbers_are_flagged_and_lose_nothing,
    a_whole_experiment_is_there_after_a_restart,
    what_is_long_is_taken_or_refused_with_words,
    bad_text_does_not_follow_to_the_next_experiment,
    a_removal_holds_when_the_program_ends_at_once,
    a_new_experiment_opens_at_once,
    undo_belongs_to_the_page,
    a_photo_comes_from_the_clipboard_and_back_from_its_removal,
    the_process_goes_with_the_version)
