# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""What several tests of tastings do on the way to what they test."""

from harness import wait_for

SAMPLES = ("eight heart", "bought trim", "mix overnight", "hotter pulled")
TASTERS = ("Ada", "Bo", "Cem")


def new_tasting(program):
    program.page("Tastings")
    program.button("New Tasting")
    wait_for(lambda: program.read("Title of the tasting").startswith("Tasting "), "a new tasting")


def add_taster(program, name):
    program.type_into("Add a taster by name", name)
    program.press_in(program.field("Add a taster by name"), "Return")
    program.reads("Add a taster by name", "")


def choose_samples(program):
    """Takes one experiment of each version and returns the names that the samples got."""
    program.button("Choose Experiments…")
    program.find("0 chosen", contains=True)
    program.find("Experiment · ", role="label", contains=True)
    for number, words in enumerate(SAMPLES, 1):
        program.type_keys(words)
        program.press("Return")
        program.find(f"{number} chosen", contains=True)
    program.button("Take")
    program.gone("Choose What to Taste", role="frame")
    prefix = "Take out "

    def taken():
        names = [node.name[len(prefix):] for node in program.all(prefix, contains=True)
                 if node.role == "push button"]
        return names if len(names) == len(SAMPLES) else None
    return wait_for(taken, "four samples")


def undo_of_toast(program):
    """The header has such a button as well; the toast lies over the page and comes after it."""
    buttons = list(program.all("Undo", role="push button", contains=True, hasty=True))
    return buttons[-1] if len(buttons) > 1 else None


def give_reason(program):
    """One of the samples was read below the figure, so going on asks why."""
    program.type_into("Reason for going on", "a test of the panel")


def arrange_tasting(program):
    program.button("Arrange the Samples")
    program.find("From then on samples", contains=True)
    give_reason(program)
    program.button("Arrange and Seal")
    program.says("Sealed, 0 of 3 sheets in")


def sealed_tasting(program):
    """Four experiments of the demo and three tasters, sealed. Returns the names of the samples."""
    new_tasting(program)
    samples = choose_samples(program)
    for name in TASTERS:
        add_taster(program, name)
    arrange_tasting(program)
    return samples
