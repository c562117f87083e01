# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every control says what it is; the demo notebook holds what it promises."""

import os
import re

from harness import run

os.environ["FORCEMEAT_HELP_DIR"] = os.path.join(os.path.dirname(os.path.abspath(__file__)),
                                                "../../docs/help")


def check(program, where):
    unnamed = program.unnamed()
    assert not unnamed, f"{where}: {unnamed}"


def every_control_has_a_name(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    program.says("Fat, calculated")
    check(program, "Formula")
    program.page("Versions")
    program.find("Tree of versions")
    program.click("Cook loss, rating and cost of all versions")
    program.find("Cook loss by version, %", role="image")
    program.find("Rating over time, 1 to 10", role="image")
    program.find("Chart Menu: Cost", contains=True)
    check(program, "Versions")
    program.page("Experiments")
    listed = program.find("Eight per cent heart", contains=True)
    check(program, "Experiments")
    program.press_in(listed)
    program.field("Notes on the experiment")
    check(program, "an experiment")
    program.page("Compare")
    program.click("Choose…", role="push button")
    program.says("Choose at least 2")
    check(program, "choosing")
    names = [node.name for node in program.all(role="check box", showing=False)]
    versions = [name for name in names if re.search(r", version \d+$", name)]
    experiments = [name for name in names if re.search(r", version \d+\)$", name)]
    blends = {name.rsplit(", version", 1)[0] for name in versions}
    assert len(blends) >= 3 and len(versions) >= 12 and len(experiments) >= 15, \
        f"{len(blends)} blends, {len(versions)} versions, {len(experiments)} experiments"
    for name in versions[:2]:
        program.press_in(program.find(name, role="check box"))
    program.says("2 chosen")
    program.button("Compare")
    program.find("Comparison")
    check(program, "Compare")
    program.screenshot("names-compare")
    program.quit()


def every_window_has_named_controls(start, folder):
    program = start("--demo", "--separate")
    program.says("Fat, calculated")
    program.button("Own Entry…")
    program.field("Supplier's lean point")
    check(program, "own entry")
    program.button("Cancel")
    program.gone("Supplier's lean point")
    program.press("ctrl+comma")
    program.find("Preferences", role="frame")
    check(program, "preferences")
    program.screenshot("names-preferences")
    program.press("Escape")
    program.gone("Preferences", role="frame")
    program.press("ctrl+question")
    program.says("Full screen")
    # The search button of that window is the toolkit's own and has no name.
    program.press("Escape")
    program.gone("Save as the next version", contains=True)
    program.quit()


def help_opens_at_what_is_shown(start, folder):
    program = start("--demo", "--separate")
    program.says("Fat, calculated")
    program.page("Versions")
    program.find("Tree of versions")
    program.press("F1")
    program.find("Versions", role="heading")
    program.find("Save, Open, Branch", role="heading")
    program.find("The tree of versions, and what", role="image", contains=True)
    check(program, "help")
    program.screenshot("names-help")
    # A link is followed, and the way back is kept, by keyboard alone.
    program.press("alt+Home")
    program.find("A First Blend", role="heading")
    program.press("Tab", "Return")
    program.find("Add Cuts", role="heading")
    program.press("alt+Left", "alt+Left")
    program.find("Save, Open, Branch", role="heading")
    program.press("Escape")
    program.gone("Save, Open, Branch")
    # A window of its own has a page of its own.
    program.page("Formula")
    program.click("Meet the Targets…", role="push button")
    program.find("Targets of the brief")
    program.press("F1")
    program.find("Targets and Batches", role="heading")
    program.press("Escape", "Escape")
    program.gone("Targets of the brief")
    program.quit()


run(every_control_has_a_name, every_window_has_named_controls, help_opens_at_what_is_shown)
