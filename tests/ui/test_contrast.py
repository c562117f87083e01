# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every text that must be read stands out from what is behind it, measured from pictures.

4.5 : 1 is the least contrast of WCAG 2.2, success criterion 1.4.3 (level AA); the ratio is
computed as its definitions of contrast ratio and of relative luminance say. What is insensitive is
excepted there.
"""

import os
import shutil
import subprocess
from collections import Counter

import gi
from harness import run, wait_for
from steps import choose_two
from tree import Atspi, GLib

gi.require_version("GdkPixbuf", "2.0")
from gi.repository import GdkPixbuf  # noqa: E402

LEAST = 4.5
NOTHING_THERE = 1.6  # a label that lies behind, or is cut off: an edge at most
FRAME_PX = 6  # of the window; what reaches into it is cut off
BEHIND = "Opening the notebook"
SCHEMES = {
    "light": {"ADW_DEBUG_COLOR_SCHEME": "prefer-light", "ADW_DEBUG_HIGH_CONTRAST": "0"},
    "dark": {"ADW_DEBUG_COLOR_SCHEME": "prefer-dark", "ADW_DEBUG_HIGH_CONTRAST": "0"},
    "high contrast": {"ADW_DEBUG_COLOR_SCHEME": "prefer-light", "ADW_DEBUG_HIGH_CONTRAST": "1"},
}


def luminance(colour):
    parts = [value / 255 for value in colour]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
              for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def ratio(one, other):
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


class Picture:
    def __init__(self, path):
        self.pixbuf = GdkPixbuf.Pixbuf.new_from_file(path)

    def colours(self, x, y, width, height):
        left, top = max(x, 0), max(y, 0)
        right = min(x + width, self.pixbuf.get_width())
        bottom = min(y + height, self.pixbuf.get_height())
        if right <= left or bottom <= top:
            return Counter()
        part = self.pixbuf.new_subpixbuf(left, top, right - left, bottom - top).copy()
        stride, step, bytes_ = part.get_rowstride(), part.get_n_channels(), part.get_pixels()
        colours = Counter()
        for row in range(part.get_height()):
            line = bytes_[row * stride:row * stride + part.get_width() * step]
            colours.update(zip(line[0::step], line[1::step], line[2::step]))
        return colours

    def contrast(self, extents):
        """Of the text there: its strokes are what differs most from the commonest colour."""
        colours = self.colours(*extents)
        if not colours:
            return 1.0
        behind = colours.most_common(1)[0][0]
        return max(ratio(behind, colour) for colour in colours)


def labels(node):
    """The labels that are not a part of something insensitive, nor of what was shown at the start."""
    if node.name == BEHIND:
        return
    if node.role == "label":
        yield node
    for child in node.children:
        if child.has_state(Atspi.StateType.SENSITIVE):
            yield from labels(child)


def texts(top, bottom, left_px, top_px):
    for node in labels(top):
        x, y, width, height = node.extents()
        x, y = x + left_px, y + top_px
        if node.name.strip() and width > 4 and height > 8 and y + height < bottom:
            yield node, (x, y, width, height)


def check(program, folder, where, measured, title=None):
    """Of labels that were not measured yet: those of a page that was left keep their place.

    The picture is one of the window called @title, else of the whole screen, which the main window fills.
    """
    path = f"{folder}/{where}.png"
    top = program.find(title, role="frame", showing=False) if title else program.tree()
    window = program.window_of(top) if title else "root"
    before = []

    def rests():
        """What slides in or out is faint meanwhile."""
        subprocess.run(["import", "-window", window, path], check=True)
        with open(path, "rb") as file:
            before.append(GLib.compute_checksum_for_data(GLib.ChecksumType.SHA256, file.read()))
        return before[-2:] == [before[-1]] * 2
    wait_for(rests, f"picture of {where} at rest")
    program.screenshot("contrast-" + where)
    picture = Picture(path)
    faint, left_px, top_px = {}, 0, 0
    if title:
        _, _, width, height = top.extents()
        left_px = (picture.pixbuf.get_width() - width) // 2
        top_px = (picture.pixbuf.get_height() - height) // 2
    for node, extents in texts(top, picture.pixbuf.get_height() - FRAME_PX, left_px, top_px):
        if node.path in measured:
            continue
        measured.add(node.path)
        contrast = picture.contrast(extents)
        if NOTHING_THERE < contrast < LEAST:
            faint[node.name[:60]] = round(contrast, 1)
    assert not faint, f"{where}: {faint}"


def look(start, folder, scheme):
    if not shutil.which("import"):
        print("# import is not installed", flush=True)
        return
    os.environ.update(SCHEMES[scheme])
    program = start("--demo", "--separate")
    measured = set()
    program.says("Fat, calculated")
    check(program, folder, f"{scheme}-formula", measured)
    program.press("ctrl+2")
    program.find("Tree of versions")
    check(program, folder, f"{scheme}-versions", measured)
    program.press("ctrl+3")
    program.find("Search experiments")
    program.press_in(next(program.all("Eight per cent heart", role="list item", contains=True)))
    program.says("Undercooked ground meat")
    check(program, folder, f"{scheme}-experiment", measured)
    program.press("ctrl+4")
    program.find("New Tasting", role="push button")
    check(program, folder, f"{scheme}-tastings", measured)
    program.press("ctrl+5")
    program.find("Nothing Is Compared Yet")
    check(program, folder, f"{scheme}-compare", measured)
    choose_two(program)
    check(program, folder, f"{scheme}-compared", measured)
    program.press("ctrl+6")
    program.says("Choose a map from the list")
    check(program, folder, f"{scheme}-map", measured)
    program.press("ctrl+1")
    for title, opens in (("Own Entry", "Own Entry…"), ("Meet the Targets", "Meet the Targets…"),
                         ("Correct the Batch", "Correct the Batch…")):
        program.button(opens)
        program.find(title, role="frame", showing=False)
        check(program, folder, f"{scheme}-{title}", measured, title)
        program.press("Escape")
        program.gone(title, role="frame")


def light(start, folder):
    look(start, folder, "light")


def dark(start, folder):
    look(start, folder, "dark")


def high_contrast(start, folder):
    look(start, folder, "high contrast")


run(light, dark, high_contrast)
