# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Planning a blind tasting, as a person with a keyboard would."""

from harness import Atspi, plain, run, wait_for
from tasting_steps import SAMPLES, TASTERS, add_taster, choose_samples, give_reason, undo_of_toast


def new_tasting(program):
    program.page("Tastings")
    program.button("New Tasting")
    program.says("A tasting needs at least two samples")
    program.type_into("Title of the tasting", "Friday panel")
    program.find("Friday panel", role="list item", contains=True)


def arrange(program):
    """A core reading below the figure asks for a reason, and the button waits for it."""
    program.button("Arrange the Samples")
    program.find("1 of 4 samples was read below the core temperature", contains=True, showing=False)
    button = program.find("Arrange and Seal", role="push button", contains=True,
                          showing=False)
    assert not button.has_state(Atspi.StateType.SENSITIVE)
    give_reason(program)
    program.button("Arrange and Seal")
    program.says("Sealed, 0 of 3 sheets in")


def a_plan_is_arranged_and_sealed(start, folder):
    program = start("--demo", "--separate")
    new_tasting(program)
    samples = choose_samples(program)
    assert len(set(samples)) == len(SAMPLES), samples
    for name in TASTERS:
        add_taster(program, name)
    program.says("4 samples · 3 tasters")
    program.says("What This Panel Can Show")
    lines = plain(program.says("Core Readings and Allergens") and program.says("(Beef"))
    assert lines.count("Allergens: none of the listed ones, as stated") == len(SAMPLES), lines
    assert "71.1 °C (160 °F), USDA FSIS consumer chart, ground meat" in lines, lines
    program.says("Minimum Internal Temperature Chart")
    program.screenshot("tasting-plan")
    assert not program.unnamed(), program.unnamed()
    arrange(program)
    record = program.says("Samples arranged and sealed")
    assert "a core reading was missing or below the figure" in record and "“a test of the panel”" in record, record
    tree = program.tree()
    told = [text for node in tree.below() for text in (node.name, node.description)
            if any(name in text for name in samples)]
    assert not told, told
    program.screenshot("tasting-sealed")
    program.button("Open the Codes")
    program.find("3 sheets are not in", contains=True)
    program.type_into("Reason for opening early", "the grill broke")
    program.button("Open Early")
    program.says("Opened with 0 of 3 sheets in")
    program.says("“the grill broke”")
    program.quit()
    program = start("--separate")
    program.page("Tastings")
    row = program.find("Friday panel", role="list item", contains=True)
    assert "Opened with 0 of 3 sheets in" in row.name, row.name
    program.quit()


def samples_are_split_into_sessions(start, folder):
    program = start("--demo", "--separate")
    new_tasting(program)
    for name in ("Anchor", "Bought patty", "Old recipe"):
        program.type_into("Add a sample from outside by name", name)
        program.press_in(program.field("Add a sample from outside by name"), "Return")
        program.reads("Add a sample from outside by name", "")
    program.button("Split into Sessions…")
    program.find("2 sessions with 2, 2 samples", contains=True)
    assert not program.unnamed(), program.unnamed()
    program.screenshot("tasting-sessions")
    program.press_in(program.field("Samples in a session, at most"), "Tab", "space")
    program.find("Choose at least one sample that stands in every session", contains=True)
    program.press("space")
    program.find("2 sessions with 2, 2 samples", contains=True)
    program.button("Plan Sessions")
    program.find("Friday panel, session 2 of 2", role="list item", contains=True)
    program.press_in(program.find("Friday panel, session 1 of 2", role="list item", contains=True),
                     "Return")
    program.reads("Title of the tasting", "Friday panel, session 1 of 2")
    program.find("Take out Anchor", contains=True)
    program.quit()


def a_bad_plan_says_what_is_wrong(start, folder):
    program = start("--demo", "--separate")
    new_tasting(program)
    program.type_into("Add a sample from outside by name", "Bought patty")
    program.press_in(program.field("Add a sample from outside by name"), "Return")
    program.find("Take out Bought patty")
    program.says("A tasting needs at least two samples")
    program.type_into("Add a sample from outside by name", "Second patty")
    program.press_in(program.field("Add a sample from outside by name"), "Return")
    program.says("A tasting needs at least one taster")
    add_taster(program, "Ada")
    add_taster(program, "Ada")
    program.says("Two tasters are called “Ada”")
    program.type_into("Most samples one taster gets", "1")
    program.find("is too small", contains=True)
    program.click("Take out Ada", role="push button")
    program.gone("Two tasters are called", contains=True)
    program.click("Undo", role="push button")
    program.says("Undone: Take out Ada")
    program.says("Two tasters are called “Ada”")
    program.click("Redo", role="push button")
    program.gone("Two tasters are called", contains=True)
    program.press_in(program.find("Just about right", role="check box"))
    program.says("Say what is to be just about right")
    program.button("salt")
    program.find("Do not ask about salt")
    program.gone("Say what is to be just about right", contains=True)
    program.says("Just-about-right answers are counted")
    program.click("Remove this tasting", role="push button")
    wait_for(lambda: undo_of_toast(program), "Undo in a toast").act()
    program.find("Friday panel", role="list item", contains=True)
    program.find("Take out Bought patty")
    program.quit()


run(a_plan_is_arranged_and_sealed, samples_are_split_into_sessions,
    a_bad_plan_says_what_is_wrong)
