# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""What the tests of the targets window do in it."""

from harness import wait_for
from steps import new_blend, weigh

WINDOW = "Meet the Targets"


def window_of(program):
    """The window's part of the tree; the page below it has some names of its own twice."""
    return program.find(WINDOW, role="frame")


def open_window(program):
    program.find("Formula", role="page tab")
    program.click("Meet the Targets…", role="push button")
    program.find("Solve", role="push button")


def open_demo(start):
    program = start("--demo", "--separate")
    open_window(program)
    return program


def type_here(program, name, text, contains=False):
    def entry():
        return next((node for found in program.all(name, contains=contains,
                                                   within=window_of(program))
                     for node in found.below() if node.has("EditableText")), None)

    wait_for(entry, f"entry {name!r} in the window").set_text(text)


def set_fat(program, least, most):
    # An end that would pass the other is refused.
    type_here(program, "Fat, at least", "")
    type_here(program, "Fat, at most", most)
    type_here(program, "Fat, at least", least)


def close(program):
    """Other parts of the program have a Cancel too."""
    cancel = next(program.all("Cancel", role="push button", within=window_of(program)))
    assert any(node.act() for node in cancel.below())
    program.gone(WINDOW, role="frame")


def solve(program):
    program.click("Solve", role="push button")


def own_entry(program, name, figures):
    program.button("Own Entry…")
    program.type_into("Name", name)
    for field, text in figures.items():
        program.type_into(field, text)
    program.button("Save")
    program.gone("Supplier's lean point")


def two_cuts(program, lean=None, plate=None):
    """A blend of 500 g each: 10 % fat at 9 per kg and 30 % fat at 5 per kg."""
    new_blend(program, "Two cuts")
    for name, figures in (("Lean", {"Supplier's lean point": "90", "Price as purchased": "9",
                                    **(lean or {})}),
                          ("Plate", {"Supplier's lean point": "70", "Price as purchased": "5",
                                     **(plate or {})})):
        own_entry(program, name, figures)
        weigh(program, name, "500")
    program.says("Total: 1000.0 g")
