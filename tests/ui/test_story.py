# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The whole story: from an empty notebook to a compare of two variants after a restart."""

import os
import struct
import zlib

from harness import run, wait_for
from steps import add_own_entry, first_blend, save_version, show_version, weigh

CHUCK = "Chuck short ribs"
GROUND = "Ground beef 80/20"


def write_photo(path, width=320, height=240):
    """A PNG of two colours, written here so that the test needs no picture of anybody."""
    def chunk(kind, data):
        body = kind + data
        return struct.pack(">I", len(data)) + body + struct.pack(">I", zlib.crc32(body))
    row = b"\0" + b"\x8c\x46\x32" * (width // 2) + b"\x46\x23\x19" * (width - width // 2)
    with open(path, "wb") as file:
        file.write(b"\x89PNG\r\n\x1a\n"
                   + chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
                   + chunk(b"IDAT", zlib.compress(row * height)) + chunk(b"IEND", b""))


def make_versions(program):
    """Version 2 follows 1; version 3 branches from 1."""
    program.type_into("Fat, at least", "18")
    program.type_into("Fat, at most", "22")
    program.says("now 19.0 %, within the target: 18")
    save_version(program, 1, "First grind")
    weigh(program, CHUCK, "400")
    program.says("Total: 800.0 g")
    save_version(program, 2, "Less short rib")
    show_version(program, 1)
    program.button("Branch")
    program.says("House patty, draft – notebook")
    weigh(program, CHUCK, "100")
    weigh(program, GROUND, "900")
    program.says("Fat, calculated: 19.8 %")
    save_version(program, 3, "Mostly ground beef")
    program.find("Version 3, from version 1: Mostly ground beef", contains=True)
    program.screenshot("story-formula")


def read_versions(program):
    program.page("Versions")
    tree = program.find("Tree of versions", role="list")
    program.press_in(next(node for node in tree.children if node.name.startswith("Version 3, ")))
    program.says("100.0 g (10.0 %), before 600.0 g (60.0 %): -500.0 g")
    program.says("Fat, %: this 19.8, parent 19.0, difference +0.8")
    program.screenshot("story-versions")


def log_experiment(program, folder):
    show_version(program, 3)
    program.page("Experiments")
    program.button("New experiment")
    program.type_into("Title of the experiment", "First pan")
    program.says("Undercooked ground meat can make people ill")
    program.type_into("Weighed grams of " + CHUCK, "101", contains=True)
    program.type_into("Weighed grams of " + GROUND, "898,5", contains=True)
    program.says("(2 of 2 weighed)")
    program.type_into("Meat temperature", "2,5")
    program.type_into("Minutes on the first side", "4")
    for number, (raw, cooked) in enumerate((("180", "135"), ("181", "136")), 1):
        program.button("Add a patty")
        program.type_into(f"Raw mass of patty {number}", raw)
        program.type_into(f"Cooked mass of patty {number}", cooked)
    program.says("Cook loss 24.9 % over 2 patties")
    for number, (minutes, core) in enumerate((("2:00", "31"), ("6:30", "72,5")), 1):
        program.button("Add a reading")
        program.type_into(f"Time of reading {number}", minutes)
        program.type_into(f"Core temperature of reading {number}", core)
    program.type_into("Notes on the experiment", "Crust even, centre juicy.")
    program.says("All changes saved")
    program.screenshot("story-experiment")


def add_photos(program, folder):
    good, broken = os.path.join(folder, "pan.png"), os.path.join(folder, "broken.jpg")
    write_photo(good)
    with open(broken, "wb") as file:
        file.write(b"This is a text that only calls itself a photo.")
    program.button("Add photos…")
    program.choose_file("Add Photos", good)
    wait_for(lambda: photos(program) == 1, "photo in the experiment")
    program.button("Add photos…")
    program.choose_file("Add Photos", broken)
    program.says("broken.jpg: This is not a photo that can be read.")
    assert photos(program) == 1, "the broken file became a photo"
    program.screenshot("story-photo")


def photos(program):
    grid = next(program.all("Photos of this experiment", showing=False), None)
    return len(grid.children) if grid else 0


def find_all_again(program):
    for number, reason in ((1, "First grind"), (2, "Less short rib"), (3, "Mostly ground beef")):
        program.find(f"Version {number}, ", role="list item", contains=True)
        program.says(reason)
    program.page("Formula")
    show_version(program, 2)
    program.reads("Grams of " + CHUCK, "400", contains=True)
    program.page("Experiments")
    entry = program.find("First pan", contains=True)
    program.press_in(entry)
    program.reads("Notes on the experiment", "Crust even, centre juicy.")
    program.reads("Weighed grams of " + GROUND, "898.5", contains=True)
    program.reads("Cooked mass of patty 2", "136")
    program.reads("Core temperature of reading 2", "72.5")
    program.says("Undercooked ground meat can make people ill")
    wait_for(lambda: photos(program) == 1, "photo after the restart")


def compare(program):
    program.page("Compare")
    program.click("Choose…", role="push button")
    for number in (1, 3):
        program.press_in(program.find(f"House patty, version {number}", role="check box"))
    program.says("2 chosen")
    program.screenshot("story-choose")
    program.button("Compare")
    wait_for(lambda: fat_row(program) == ["19.0", "19.8"], "fat of both versions")
    program.screenshot("story-compare")
    program.click("Differences")
    wait_for(lambda: "+0.8" in " ".join(fat_row(program)), "difference of the fat")
    program.screenshot("story-differences")


def fat_row(program):
    """The values beside 'Fat, calculated' in the comparison."""
    table = next(program.all("Comparison"), None)
    for row in table.below() if table else ():
        texts = [text.replace("\u00a0", " ") for text in row.texts() if not text.startswith("Gtk")]
        if texts and texts[0] == "Fat, calculated, %":
            return texts[1:]
    return []


def from_empty_notebook_to_compare_after_restart(start, folder):
    program = start()
    first_blend(program)
    make_versions(program)
    read_versions(program)
    log_experiment(program, folder)
    add_photos(program, folder)
    program.quit()
    program = start()
    find_all_again(program)
    compare(program)
    program.quit()


def nutrition_is_known_raw_and_cooked(start, folder):
    program = start()
    first_blend(program)
    program.says("One raw patty, 180 g")
    program.click("Per 100 g", role="push button")
    program.says("100 g of the raw blend")
    program.says("Total fat: 19.0 g")
    # In the order of a label, what has no value folded away, and as a table for a spreadsheet.
    names = [row.name.split(":")[0] for row in program.all(role="list item")
             if row.name.startswith(("Energy:", "Total fat:", "Saturated fat:", "Sodium:", "Protein:"))]
    assert names == ["Energy", "Total fat", "Saturated fat", "Sodium", "Protein"], names
    program.click("Copy Table")
    search = "Find a blend or version"
    program.press_in(program.field(search), "ctrl+v")
    wait_for(lambda: "Total fat\t19.0 g" in program.read(search), "a table")
    program.type_into(search, "")
    program.click("Cooked", role="push button")
    program.says("100 g cooked, at a predicted yield of")
    add_own_entry(program, "Trim of unknown make")
    weigh(program, "Trim of unknown make", "1000")
    program.says("Cooked values are not known")  # the fat decides the loss
    program.says("Cooked values need the fat of every ingredient")
    program.click("Raw", role="push button")
    program.says("Total fat: at least 9.5 g")
    program.quit()


run(from_empty_notebook_to_compare_after_restart, nutrition_is_known_raw_and_cooked)
