# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Walks through a window with the Tab key, as one who has no mouse.

Where the focus is comes from the accessibility bus: each control says when it gets the focus.
"""

import subprocess
import time

from harness import DEADLINE_S
from tree import ATSPI, Gio, GLib

MOST_STOPS = 600
SILENT_S = 3
MOST_SILENT = 2  # one after the other: name and reason of a serving


class Focus:
    """Follows the keyboard focus of one program."""

    def __init__(self, program):
        self.program = program
        self.path = None
        self.said = []
        program.bus.connection.signal_subscribe(
            program.bus.program, ATSPI + "Event.Object", "StateChanged", None, "focused",
            Gio.DBusSignalFlags.NONE, self._changed)

    def _changed(self, _connection, _sender, path, _interface, _signal, parameters):
        if parameters[1]:
            self.said.append(path)

    def _wait(self, deadline_s):
        """The path that got the focus last, None when none did before the deadline."""
        context = GLib.MainContext.default()
        over = []
        end = GLib.timeout_add(int(1000 * deadline_s), over.append, "end")
        while not self.said and not over:
            context.iteration(True)
        if not over:
            GLib.source_remove(end)
        while context.iteration(False):
            pass
        return self.said[-1] if self.said else None

    def name(self):
        return self.program.bus.property(self.path, ATSPI + "Accessible", "Name")

    def role(self):
        return self.program.bus.call(self.path, ATSPI + "Accessible", "GetRoleName")[0]

    def press(self, key, deadline_s=DEADLINE_S):
        """Presses @key in the window that has the keyboard, and waits for the next control's turn."""
        self.said.clear()
        subprocess.run(["xdotool", "key", "--clearmodifiers", key], check=True)
        path = self._wait(deadline_s)
        assert path, f"{key} does not leave {self}"
        self.path = path

    def press_on(self, key):
        """As press(), over controls that do not tell of their focus: the toolkit's entry rows."""
        for _ in range(MOST_SILENT):
            try:
                return self.press(key, SILENT_S)
            except AssertionError:
                pass
        return self.press(key)

    def goes_to(self, name, deadline_s=DEADLINE_S):
        """Waits until the control of this @name has the focus."""
        end = time.monotonic() + deadline_s
        while self._wait(0.1):
            self.path = self.said[-1]
            if self.name() == name:
                return
            assert time.monotonic() < end, f"the focus is on {self}, not on {name!r}"

    def __str__(self):
        return f"{self.role()} {self.name()!r}" if self.path else "where it is"


# What one points at is large enough for a shaking hand (WCAG 2.2, success criterion 2.5.8).
POINTED_AT = {"push button", "button", "toggle button", "check box", "radio button", "page tab",
              "combo box", "switch", "entry", "text"}
LEAST_PX = 24


def check_size(focus):
    if focus.role() not in POINTED_AT:
        return
    _, _, width, height = focus.program.bus.call(focus.path, ATSPI + "Component", "GetExtents",
                                                 GLib.Variant("(u)", (0,)))[0]
    assert width >= LEAST_PX and height >= LEAST_PX, f"{focus} has {width} x {height} px"


def check_name(focus, seen):
    name = focus.name()
    assert name and not name.startswith(("Gtk", "Adw", "Fm")), \
        f"a {focus.role()} after {list(seen.values())[-3:]} has no name"


def give_keyboard(program, title):
    """Gives the keyboard to the window called @title, else to the newest one."""
    if title is None:
        program.focus_window()
        return
    program.bus.forget()
    window = program.window_of(program.find(title, showing=False))
    subprocess.run(["xdotool", "windowfocus", "--sync", window], check=True)


def walk(program, key="Tab", title=None):
    """Presses @key round the whole window, back to where it began. The names on the way."""
    focus = Focus(program)
    give_keyboard(program, title)
    focus.press_on(key)
    first = focus.path
    seen = {}
    while focus.path not in seen:
        check_name(focus, seen)
        check_size(focus)
        seen[focus.path] = focus.name()
        assert len(seen) < MOST_STOPS, f"{key} finds no end"
        focus.press_on(key)
    assert focus.path == first, \
        f"{key} comes to {focus} again before the round closes, after {list(seen.values())[-3:]}"
    return list(seen.values())


def walk_both_ways(program, *wanted, title=None):
    """Tab and Shift+Tab both go round, and meet the controls that begin with each of @wanted."""
    forward = walk(program, title=title)
    walk(program, "shift+Tab", title)
    for name in wanted:
        assert any(stop.startswith(name) for stop in forward), f"Tab leaves out {name!r}: {forward}"
    return forward
