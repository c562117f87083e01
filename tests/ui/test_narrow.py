# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""A window of 360 x 720 folds to one column and still reaches every page."""

import subprocess

from harness import run, wait_for

WIDTH, HEIGHT = 360, 720


def resize(program):
    window = program.window_of(program.tree().children[0])
    subprocess.run(["xdotool", "windowmove", window, "0", "0", "windowsize", window, str(WIDTH),
                    str(HEIGHT)], check=True)
    wait_for(lambda: program.tree().children[0].extents()[2] <= WIDTH, "narrow window")


def inside(node):
    x, y, width, height = node.extents()
    return x >= 0 and y >= 0 and x + width <= WIDTH and y + height <= HEIGHT and width > 0


def visible(program, name, role=None):
    return wait_for(lambda: next((node for node in program.all(name, role) if inside(node)), None),
                    f"{name!r} inside the narrow window")


def all_pages_are_reached(start, folder):
    program = start("--demo", "--separate")
    program.find("Formula", role="page tab")
    # The pointer begins in the middle, where what lies below it would open its tooltip.
    subprocess.run(["xdotool", "mousemove", "0", "0"], check=True)
    program.says("Fat, calculated")
    resize(program)
    visible(program, "Add a cut")
    program.screenshot("narrow-formula")
    for page, sign in (("Versions", "Tree of versions"), ("Experiments", "Search experiments"),
                       ("Compare", "Nothing Is Compared Yet"), ("Map", "New Map"),
                       ("Formula", "Add a cut")):
        # The bar of pages lies at the lower edge, within a thumb's reach.
        bar = wait_for(lambda: [tab for tab in program.all(page, role="page tab")
                                if inside(tab) and tab.extents()[1] > HEIGHT * 3 // 4],
                       f"tab {page!r} at the lower edge")
        program.press_in(bar[-1])
        visible(program, sign)
        program.screenshot(f"narrow-{page.lower()}")
    program.press_in(visible(program, "Nutrition panel", role="push button"))
    visible(program, "Percent of Daily Value")
    program.screenshot("narrow-nutrition")
    program.press("F9")
    program.press_in(visible(program, "Back to the blends"))
    visible(program, "Find a blend or version")
    program.screenshot("narrow-blends")
    program.quit()


run(all_pages_are_reached)
