# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""What several tests do on the way to what they test."""

import itertools
import subprocess

from harness import wait_for


def new_blend(program, name):
    program.click("Create a Blend…")
    program.type_into("Name of the blend", name)
    program.button("Create")
    program.gone("Name of the blend")
    program.find("Add a cut")


def add_cut(program, words, full_name, name):
    """Searches by @words and adds the first hit, which must begin with @full_name."""
    program.type_into("Add a cut", words)

    def first_hit():
        hits = next(program.all("Foods found", role="list", hasty=True), None)
        return hits and hits.children and hits.children[0].name.startswith(full_name)

    wait_for(first_hit, f"first hit {full_name!r} for {words!r}")
    program.press_in(program.field("Add a cut"), "Return")
    program.field("Grams of " + name, contains=True)


def add_own_entry(program, name, lean=None):
    program.button("Own Entry…")
    program.type_into("Name", name)
    if lean is not None:
        program.type_into("Supplier's lean point", lean)
    program.button("Save")
    program.gone("Supplier's lean point")
    program.field("Grams of " + name)


def weigh(program, name, grams):
    program.type_into("Grams of " + name, grams, contains=True)


def save_version(program, number, reason):
    program.click("Save version", role="push button")
    program.type_into("Reason for the change", reason)
    program.button("Save")
    program.gone("Reason for the change")
    program.find(f"Version {number}, ", role="list item", contains=True)


def show_version(program, number):
    """Chooses a version in the sidebar."""
    def row():
        lists = program.all("Blends and versions", role="list", hasty=True)
        return next((node for found in lists for node in found.children
                     if node.name.startswith(f"Version {number}, ")), None)

    program.press_in(wait_for(row, f"version {number} in the sidebar"))
    program.says(f"Version {number} is frozen")


def first_blend(program):
    """A blend of two cuts, 600 g to 400 g."""
    new_blend(program, "House patty")
    add_cut(program, "chuck short rib", "Beef, chuck, short ribs", "Chuck short ribs")
    add_cut(program, "80/20", "Beef, ground, 80/20", "Ground beef 80/20")
    weigh(program, "Chuck short ribs", "600")
    weigh(program, "Ground beef 80/20", "400")
    program.says("Total: 1000.0 g")


# What one turn of the wheel moves a page by, with some to spare.
WHEEL_PX = 120


def choose(program, what, *keys):
    """Opens the choice whose name begins with @what from the keyboard and presses @keys in it."""
    def combo():
        return next((node for node in program.all(role="combo box", hasty=True)
                     if node.name.startswith(what)), None)

    def button():
        return next((node for node in combo().below() if node.name.startswith(what)
                     and node.role.endswith("button")), None)

    def in_sight():
        shown = button()
        frame = shown.above()[-1]
        left, y, width, height = shown.extents()
        if 60 <= y and y + height <= frame.extents()[3]:
            return True
        # Beside the button, where no choice turns with the wheel; many turns at once on a long page.
        away = 60 - y if y < 60 else y + height - frame.extents()[3]
        subprocess.run(["xdotool", "mousemove", "--window", program.window_of(frame),
                        str(left + width // 2 - 120), str(next(rows)), "click", "--delay", "30",
                        "--repeat", str(1 + away // WHEEL_PX), "4" if y < 60 else "5"], check=True)
        return False

    def opened():
        return next(program.all(role="list item", within=combo()), None)

    wait_for(combo, f"choice {what!r}")
    # What scrolls by itself on the page may lie under one of them.
    rows = itertools.cycle((400, 250, 600))
    # A list cannot open beside the screen, and chooses what lies below the mouse.
    wait_for(in_sight, f"{what!r} in sight")
    subprocess.run(["xdotool", "mousemove", "0", "0"], check=True)
    assert button().act(), f"{what!r} does not open"
    wait_for(opened, f"choices of {what!r}")
    for key in (*keys, "Return"):
        subprocess.run(["xdotool", "key", key], check=True)
    wait_for(lambda: not opened(), f"end of the choices of {what!r}")


def bring_into_sight(program, node):
    """Turns the wheel over the page until the middle of @node can be clicked."""
    program.focus_window()

    def in_sight():
        _, y, _, height = node.extents()
        middle = y + height // 2
        if 200 < middle < 700:
            return True
        subprocess.run(["xdotool", "mousemove", "900", "500", "click", "--repeat", "2",
                        "5" if middle > 450 else "4"], check=True)
        return False
    wait_for(in_sight, f"{node} in sight")


def choose_compared(program, *wishes, already=0):
    """Types and takes one after another in the window that is open."""
    for number, wish in enumerate(wishes, already + 1):
        program.type_keys(wish)
        program.press("Return")
        program.find(f"{number} chosen", contains=True)


def open_picker(program, chosen=0):
    program.click("Choose…")
    program.find(f"{chosen} chosen", contains=True)
    program.find("Pan patty, version 7", role="check box")


def choose_two(program):
    program.click("Compare", role="page tab")
    open_picker(program)
    choose_compared(program, "pan version 7", "pan version 6")
    program.click("Compare", role="push button")
    program.find("A · Pan patty, version 7")
