# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Kills, second programs, damaged files and pictures that are none: told clearly, nothing lost."""

import os
import shutil
import sqlite3

from harness import lay_demo_into, run, wait_for
from steps import add_cut, first_blend, new_blend, save_version, weigh
from tree import Atspi

NOTEBOOK = "forcemeat/notebook.forcemeat"
OLD_NOTEBOOK = os.path.join(os.path.dirname(__file__), "../store/data/notebook-v1.forcemeat")


def drafts(path):
    with sqlite3.connect(f"file:{path}?mode=ro", uri=True) as notebook:
        return [row[0] for row in notebook.execute("SELECT formula_json FROM drafts")]


def currency(path):
    with sqlite3.connect(f"file:{path}?mode=ro", uri=True) as notebook:
        return next((row[0] for row in notebook.execute(
            "SELECT value FROM settings WHERE key = 'currency'")), None)


def a_killed_program_keeps_the_draft(start, folder):
    program = start()
    first_blend(program)
    weigh(program, "Chuck short ribs", "612.25")
    path = os.path.join(folder, NOTEBOOK)
    wait_for(lambda: any("612.25" in text for text in drafts(path)), "draft in the file")
    program.kill()
    program = start()
    program.reads("Grams of Chuck short ribs", "612.25", contains=True)
    program.reads("Grams of Ground beef 80/20", "400", contains=True)
    program.quit()


def a_second_program_may_only_read(start, folder):
    first = start("--separate")
    first_blend(first)
    save_version(first, 1, "First grind")
    second = start("--separate", os.path.join(folder, NOTEBOOK))
    second.says("Notebook Is in Use")
    second.says("Another window or program is writing notebook.forcemeat.")
    second.screenshot("in-use")
    second.button("Open for Reading")
    second.says("open for reading only")
    second.press_in(second.find("Version 1, ", role="list item", contains=True))
    second.says("Fat, calculated: 19.0 %")
    second.quit()
    weigh(first, "Chuck short ribs", "700")  # the writer was not disturbed
    first.says("Total: 1100.0 g")
    first.quit()


def a_damaged_notebook_is_told_and_left_alone(start, folder):
    path = os.path.join(folder, "torn.forcemeat")
    with open(path, "wb") as file:
        file.write(b"SQLite format 3\0" + b"torn" * 4000)
    before = open(path, "rb").read()
    program = start(path)
    program.says("This is not a Forcemeat notebook")
    program.says("No Notebook Is Open")
    program.screenshot("damaged")
    assert open(path, "rb").read() == before, "the damaged file was touched"
    program.quit()
    program = start()  # the next start is an ordinary one
    new_blend(program, "After the fault")
    add_cut(program, "chuck short rib", "Beef, chuck, short ribs", "Chuck short ribs")
    program.quit()


def a_notebook_cut_short_is_told(start, folder):
    program = start()
    first_blend(program)
    program.quit()
    path = os.path.join(folder, NOTEBOOK)
    torn = os.path.join(folder, "cut.forcemeat")
    shutil.copy(path, torn)
    os.truncate(torn, os.path.getsize(torn) // 2)
    program = start(torn)
    program.says("This Notebook Is Damaged")
    program.screenshot("damaged-asked")
    program.button("Recover What Can Be Read")
    program.says("Recovered as cut recovered.forcemeat")
    program.screenshot("recovered")
    program.click("Close", role="push button")
    program.quit()
    assert os.path.getsize(torn) == os.path.getsize(path) // 2, "the damaged file was touched"
    program = start(path)
    program.reads("Grams of Chuck short ribs", "600", contains=True)
    program.quit()


def a_notebook_that_is_not_there_is_told(start, folder):
    program = start(os.path.join(folder, "gone.forcemeat"))
    program.says("There is no notebook")
    program.says("No Notebook Is Open")
    program.quit()


def the_first_notebook_lies_among_the_documents(start, folder):
    documents = os.path.join(folder, "Documents")
    os.makedirs(os.path.join(folder, "config"))
    with open(os.path.join(folder, "config/user-dirs.dirs"), "w", encoding="utf-8") as file:
        file.write(f'XDG_DOCUMENTS_DIR="{documents}"\n')
    program = start(begin=False)
    program.says("Welcome to Forcemeat")
    program.says(f"It will lie in {documents}/notebook.forcemeat.")
    assert not os.path.exists(documents), "made before it was asked for"
    assert not program.unnamed(), program.unnamed()
    program.screenshot("first-start")
    # The keyboard stands on the first way in; the second is the empty notebook.
    wait_for(lambda: program.find("Look at the Demo", role="push button").has_state(
        Atspi.StateType.FOCUSED), "first way in with the cursor")
    program.press("Tab", "Return")
    program.find("notebook.forcemeat", role="frame")
    assert os.listdir(documents).count("notebook.forcemeat") == 1, os.listdir(documents)
    # The desktop knows it as recent, and so does the menu.
    recent = os.path.join(folder, "recently-used.xbel")
    wait_for(lambda: os.path.exists(recent)
             and "Documents/notebook.forcemeat" in open(recent, encoding="utf-8").read(),
             "notebook among the recent files")
    program.quit()
    os.remove(os.path.join(documents, "notebook.forcemeat"))
    program = start()
    program.says("notebook.forcemeat is not there any more.")
    program.says("No Notebook Is Open")
    program.quit()


def somebody_new_looks_at_the_demo(start, folder):
    lay_demo_into(folder + "/forcemeat")
    program = start(begin=False)
    program.find("Open a File…", role="push button")
    program.press("Return")
    program.find("demo.forcemeat", role="frame", contains=True)
    program.quit()


def each_notebook_opens_in_a_window_of_its_own(start, folder):
    names = [os.path.join(folder, name) for name in ("one.forcemeat", "two.forcemeat")]
    for name in names:
        shutil.copy(OLD_NOTEBOOK, name)
    program = start("--separate", *names, "sftp://elsewhere.invalid/three.forcemeat")
    program.find("one.forcemeat", role="frame", contains=True)
    other = program.other()
    other.find("two.forcemeat", role="frame", contains=True)
    program.says("three.forcemeat is not on this computer's disks.")
    program.find("one.forcemeat", role="frame", contains=True)
    program.press("ctrl+comma")
    program.type_into("Currency sign (amounts are not converted)", "US$")
    wait_for(lambda: currency(names[0]) == "US$", "currency of the first notebook")
    program.press("Escape")
    program.gone("Preferences", role="frame")
    program.quit()
    assert currency(names[1]) != "US$", "the units of one notebook went into another"
    other.quit()


run(a_killed_program_keeps_the_draft, a_second_program_may_only_read,
    a_damaged_notebook_is_told_and_left_alone, a_notebook_cut_short_is_told,
    a_notebook_that_is_not_there_is_told, the_first_notebook_lies_among_the_documents,
    each_notebook_opens_in_a_window_of_its_own, somebody_new_looks_at_the_demo)
