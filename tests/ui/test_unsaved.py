# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""A notebook that cannot be written, or is gone: words stay in the window, and closing asks for them."""

import contextlib
import os
import shutil
import sqlite3
import subprocess

from harness import run, wait_for
from steps import first_blend, save_version

NOTEBOOK = "forcemeat/notebook.forcemeat"
TITLE = "Title of the experiment"
REFUSED = "The notebook refused that change"
ASKED = "Some Changes Could Not Be Saved"
TABLES = ("drafts", "experiments", "photos")
SLOW_DISK = os.path.join(os.path.dirname(os.environ["FORCEMEAT_BINARY"]), "../../tests/ui/slow-disk.so")


@contextlib.contextmanager
def refusing(path):
    """Every change of a row fails at once, as on a full disk."""
    with sqlite3.connect(path) as notebook:
        for table in TABLES:
            notebook.execute(f"CREATE TRIGGER full_{table} BEFORE UPDATE ON {table} "
                             "BEGIN SELECT RAISE (ABORT, 'refused'); END")
    yield
    with sqlite3.connect(path) as notebook:
        for table in TABLES:
            notebook.execute(f"DROP TRIGGER full_{table}")


def rows(path, sql):
    with contextlib.closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as notebook:
        return [row[0] for row in notebook.execute(sql)]


def new_experiment(program, title):
    program.page("Experiments")
    program.click("New experiment", role="push button")
    wait_for(lambda: program.read(TITLE).startswith("Trial "), "new experiment")
    program.type_into(TITLE, title)
    program.says("All changes saved")


def with_a_version(start, folder):
    program = start()
    first_blend(program)
    save_version(program, 1, "First grind")
    program.press_in(program.find("Version 1, ", role="list item", contains=True))
    program.says("Version 1 is frozen")
    return program, os.path.join(folder, NOTEBOOK)


def paste_photo(program, folder):
    picture = folder + "/picture.png"
    subprocess.run(["convert", "-size", "640x480", "xc:brown", picture], check=True)
    subprocess.run(["xclip", "-selection", "clipboard", "-t", "image/png", picture], check=True)
    program.click("Paste photo", role="push button")
    program.find("View photo 1")


def a_caption_is_saved_once_there_is_room(start, folder):
    if not shutil.which("xclip") or not shutil.which("convert"):
        print("# xclip or convert is not installed", flush=True)
        return
    program, path = with_a_version(start, folder)
    new_experiment(program, "With a photo")
    paste_photo(program, folder)
    with refusing(path):
        program.type_into("Caption of photo 1", "Cut open")
        program.says(REFUSED)
        program.press("ctrl+q")
        program.says(ASKED)
        program.says("The caption “Cut open” of a photo")
        program.button("Keep Open")
        program.gone(ASKED)
        program.reads("Caption of photo 1", "Cut open")
    program.gone(REFUSED, contains=True)
    assert rows(path, "SELECT caption FROM photos") == ["Cut open"]
    program.quit()


def words_outlive_a_look_at_another_experiment(start, folder):
    program, path = with_a_version(start, folder)
    new_experiment(program, "First trial")
    program.click("New experiment", role="push button")
    program.reads(TITLE, "Trial 2")
    with refusing(path):
        program.type_into(TITLE, "Second, longer on the grill")
        program.says(REFUSED)
        program.press_in(program.find("First trial", role="list item", contains=True))
        program.reads(TITLE, "First trial")
        program.press_in(program.find("Trial 2", role="list item", contains=True))
        program.reads(TITLE, "Second, longer on the grill")
    program.gone(REFUSED, contains=True)
    program.find("Second, longer on the grill", role="list item", contains=True)
    program.quit()


def a_deleted_notebook_is_saved_elsewhere(start, folder):
    program, path = with_a_version(start, folder)
    new_experiment(program, "Before")
    os.unlink(path)
    program.says("was deleted while it was open here")
    program.screenshot("deleted")
    program.type_into(TITLE, "After")
    program.says("Save the notebook elsewhere.")
    assert not os.path.exists(path), "the name was taken again"
    program.press("ctrl+q")
    program.says("The Notebook Has Lost Its File")
    program.says("Experiment “After”")
    program.screenshot("deleted-asked")
    program.button("Save Elsewhere…")
    program.choose_file("Save the Notebook Elsewhere", path, ".forcemeat")
    program.gone("in this window alone", contains=True)
    program.find("After", role="list item", contains=True)
    wait_for(lambda: rows(path, "SELECT title FROM experiments") == ["After"], "the new title saved")
    program.quit()


def a_renamed_notebook_is_followed(start, folder):
    program, path = with_a_version(start, folder)
    new_experiment(program, "Before")
    other = os.path.join(folder, "forcemeat/moved.forcemeat")
    os.rename(path, other)
    program.says("it is “" + other + "” now")
    program.type_into(TITLE, "After")
    program.says("Save the notebook elsewhere.")
    program.button("Open It There")
    program.gone("it is “" + other, contains=True)
    wait_for(lambda: rows(other, "SELECT title FROM experiments") == ["After"], "the new title saved")
    program.says("moved.forcemeat")
    program.quit()
    assert not [name for name in os.listdir(os.path.dirname(path)) if "-wal" in name or "-lock" in name]


def words_typed_last_outlive_a_slow_disk(start, folder):
    program, path = with_a_version(start, folder)
    new_experiment(program, "First trial")
    program.click("New experiment", role="push button")
    program.reads(TITLE, "Trial 2")
    program.quit()
    os.environ["LD_PRELOAD"] = SLOW_DISK
    try:
        program = start()
    finally:
        del os.environ["LD_PRELOAD"]
    program.page("Experiments")
    program.press_in(program.find("Trial 2", role="list item", contains=True))
    program.reads(TITLE, "Trial 2")
    program.type_into("Notes on the experiment", "Crisp at the edge")
    program.press_in(program.find("First trial", role="list item", contains=True))
    program.quit()
    assert rows(path, "SELECT notes FROM experiments WHERE title = 'Trial 2'") == ["Crisp at the edge"]


def a_record_changed_outside_is_named(start, folder):
    program, path = with_a_version(start, folder)
    new_experiment(program, "Sunday")
    program.quit()
    with contextlib.closing(sqlite3.connect(path)) as notebook:
        notebook.execute("UPDATE experiments SET rating = 9")
        notebook.commit()
    program = start()
    program.says("changed outside the program, or damaged")
    program.says("the experiment “Sunday”")
    program.page("Experiments")
    program.press_in(program.find("Sunday", role="list item", contains=True))
    program.says("Experiment “Sunday” was changed outside the program")
    program.screenshot("changed-outside")
    backups = os.path.join(os.path.dirname(path), "notebook backups")
    wait_for(lambda: [name for name in os.listdir(backups) if name.endswith(".forcemeat")],
             "a backup of today")
    program.type_into(TITLE, "Sunday, looked at")
    program.says("All changes saved")
    program.quit()
    program = start()
    program.page("Experiments")
    program.press_in(program.find("Sunday, looked at", role="list item", contains=True))
    program.reads(TITLE, "Sunday, looked at")
    program.quit()


def a_notebook_that_may_not_be_written_is_read(start, folder):
    program, path = with_a_version(start, folder)
    with contextlib.closing(sqlite3.connect(path)) as notebook:
        program.quit()
        notebook.execute("PRAGMA wal_checkpoint")
    os.chmod(path, 0o444)
    if os.access(path, os.W_OK):
        print("# the super-user may write what others may not", flush=True)
        return
    program = start()
    program.says("Notebook May Not Be Written")
    program.button("Open for Reading")
    program.says("open for reading only")
    program.quit()


run(words_typed_last_outlive_a_slow_disk, a_record_changed_outside_is_named, a_caption_is_saved_once_there_is_room, words_outlive_a_look_at_another_experiment,
    a_deleted_notebook_is_saved_elsewhere, a_renamed_notebook_is_followed,
    a_notebook_that_may_not_be_written_is_read)
