# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Drives the real program over AT-SPI, as a person with a keyboard and a screen reader would.

Each test program runs inside its own session bus and X server (see run-ui). Waiting is always
for a condition with a deadline, never for a time.
"""

import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import traceback

from tree import ATSPI, Atspi, Bus, GLib

# Far longer than anything takes on a busy machine: only what never comes meets it.
DEADLINE_S = float(os.environ.get("FORCEMEAT_UI_DEADLINE", "120"))
POLL_S = 0.2
# How long the program must say nothing before it is looked at again.
SILENCE_S = 0.05
NAMED_S = 20
# A tip is gone at once when the pointer leaves what it tells of; a menu stays.
TIP_S = 3
QUIT_TRIES = 4

CONTROL_ROLES = {"push button", "toggle button", "check box", "radio button", "combo box", "entry",
                 "text", "spin button", "slider", "switch", "menu item", "page tab", "table",
                 "tree table", "image", "link"}


class Missing(AssertionError):
    """What the test looked for did not appear before the deadline."""


def wait_for(condition, what, deadline_s=DEADLINE_S):
    """Asks for @condition each time the program tells of a change, and now and then besides."""
    bus = Bus.newest
    bus.looks_in_vain = 0
    start = time.monotonic()
    end = start + deadline_s
    while True:
        seen, began = bus.events, time.monotonic()
        try:
            found = condition()
        except GLib.Error:
            found = None
        if found:
            return found
        now = time.monotonic()
        if now > end:
            raise Missing(f"no {what} within {deadline_s:.0f} s")
        bus.looks_in_vain += 1
        # What is asked all the time has no time to get ready: the longer it takes, the rarer a look.
        waited = now - start
        bus.wait_for_event(seen, max(POLL_S, now - began, waited / 4), max(SILENCE_S, waited / 16))


def plain(text):
    """A test writes an ordinary space where the program keeps a number and its unit together."""
    return text.replace("\u00a0", " ").replace("\u202f", " ")


def lay_demo_into(folder):
    """Painting the photos of a new demo notebook takes seconds: most tests open a ready one."""
    ready = os.environ.get("FORCEMEAT_DEMO")
    path = folder + "/demo.forcemeat"
    if ready and not os.path.exists(path):
        os.makedirs(folder, exist_ok=True)
        shutil.copy(ready, path)


def has_notebook(folder):
    """Whether the program that keeps its data in @folder opens a notebook when it starts."""
    kept = folder + "/config/glib-2.0/settings/keyfile"
    if os.path.exists(kept):
        with open(kept, encoding="utf-8") as file:
            if "last-notebook" in file.read():
                return True
    return os.path.exists(folder + "/forcemeat/notebook.forcemeat")


class Child:
    """A process that a program has started, as far as a test asks of one."""

    returncode = 0

    def __init__(self, pid):
        self.pid = pid

    def poll(self):
        return None if os.path.exists(f"/proc/{self.pid}") else self.returncode

    def wait(self, timeout=None):
        wait_for(lambda: self.poll() is not None, "end of the other program", timeout)

    def kill(self):
        os.kill(self.pid, signal.SIGKILL)


class Program:
    """One running Forcemeat and its accessible tree."""

    def __init__(self, *arguments, data_home):
        env = dict(os.environ, XDG_DATA_HOME=data_home, XDG_CONFIG_HOME=data_home + "/config",
                   XDG_CACHE_HOME=data_home + "/cache", LC_ALL="C.UTF-8", LANGUAGE="C",
                   GDK_BACKEND="x11", GSK_RENDERER="cairo", ADW_DISABLE_PORTAL="1",
                   GTK_USE_PORTAL="0", GSETTINGS_BACKEND="keyfile", G_DEBUG="fatal-criticals")
        if "--demo" in arguments:
            lay_demo_into(data_home + "/forcemeat")
        self.process = subprocess.Popen([os.environ["FORCEMEAT_BINARY"], *arguments], env=env)
        self._meet()

    def _meet(self):
        self.bus = Bus()
        wait_for(self._is_there, "program on the accessibility bus")

    def other(self):
        """The program that this one has started."""
        def children():
            with open(f"/proc/{self.process.pid}/task/{self.process.pid}/children",
                      encoding="ascii") as file:
                return file.read().split()
        found = Program.__new__(Program)
        found.process = Child(int(wait_for(children, "program of its own")[0]))
        found._meet()
        return found

    def _is_there(self):
        assert self.process.poll() is None, f"the program ended with {self.process.returncode}"
        return self.bus.find_program(self.process.pid) and self.bus.has_windows()

    def _asserts_it_runs(self):
        assert self.process.poll() is None, f"the program ended with {self.process.returncode}"

    def tree(self):
        self._asserts_it_runs()
        return self.bus.read()

    def all(self, name=None, role=None, contains=False, within=None, showing=True, hasty=False):
        """The accessibles of this @name (or with it in theirs) and @role, top down.

        A @hasty look may miss one, so it serves only those who wait for something to come.
        """
        def is_wanted(node):
            if role is not None and node.role != role:
                return False
            own = plain(node.name)
            return name is None or (name in own if contains else name == own)

        def shown(nodes):
            return (node for node in nodes if not showing or node.is_showing())

        self._asserts_it_runs()
        if within is not None or not hasty or self.bus.looks_closely():
            return shown(filter(is_wanted, (within or self.tree()).below()))
        found = list(shown(self.bus.find(is_wanted)))
        if not found:
            self.bus.refresh()
            found = shown(self.bus.find(is_wanted))
        return iter(found)

    def find(self, name=None, role=None, contains=False, showing=True, deadline_s=DEADLINE_S):
        return wait_for(lambda: next(self.all(name, role, contains, None, showing, True), None),
                        f"{role or 'widget'} named {name!r}", deadline_s)

    def says(self, text, deadline_s=DEADLINE_S):
        """Waits until some shown accessible has @text in its name."""
        return plain(self.find(text, contains=True, deadline_s=deadline_s).name)

    def gone(self, name=None, role=None, contains=False):
        def is_gone():
            # What a hasty look misses may still be there.
            return all(next(self.all(name, role, contains, hasty=hasty), None) is None
                       for hasty in (True, False))
        wait_for(is_gone, f"end of {role or 'widget'} {name!r}")

    def click(self, name, role=None, contains=False):
        """Presses a control by its own action, else by the first below it that has one."""
        def press():
            return any(candidate.act() for node in self.all(name, role, contains, hasty=True)
                       for candidate in node.below())
        wait_for(press, f"{role or 'control'} {name!r} to press")

    def button(self, label):
        """Presses the button with this @label, in the newest window first.

        A button may have a spoken name of its own before its label.
        """
        def press():
            found = self.all(label, role="push button", contains=True, hasty=True)
            return any(node.act() for node in reversed(list(found))
                       if f" {plain(node.name)}".endswith(f" {label}"))
        wait_for(press, f"button {label!r} to press")

    def field(self, name, contains=False):
        """The editable text that is, or lies within, the widget called @name."""
        def look():
            for node in self.all(name, contains=contains, hasty=True):
                for candidate in node.below():
                    if candidate.has("EditableText"):
                        return candidate
            return None
        return wait_for(look, f"text field named {name!r}")

    def type_into(self, name, text, contains=False):
        field = self.field(name, contains)
        field.set_text(text)
        return field

    def read(self, name, contains=False):
        return plain(self.field(name, contains).text())

    def reads(self, name, text, contains=False):
        """Waits until the field called @name holds @text."""
        wait_for(lambda: self.read(name, contains) == text, f"{text!r} in {name!r}")

    def page(self, name):
        """Goes to one of the pages by its tab."""
        self.click(name, role="page tab")

    def windows(self):
        found = subprocess.run(["xdotool", "search", "--onlyvisible", "--pid",
                                str(self.process.pid)], stdout=subprocess.PIPE, text=True)
        return found.stdout.split()

    def _title(self, window):
        return subprocess.run(["xdotool", "getwindowname", window], stdout=subprocess.PIPE,
                              stderr=subprocess.DEVNULL, text=True).stdout.strip()

    def window_of(self, frame):
        """The X window that carries @frame's title, which may be changing."""
        def look():
            title = frame.live_name()
            return next((window for window in reversed(self.windows())
                         if self._title(window) == title), None)
        return wait_for(look, f"window titled {frame.name!r}")

    def focus_window(self):
        self.bus.forget()
        subprocess.run(["xdotool", "windowfocus", "--sync", self.windows()[-1]], check=False)

    def press(self, *keys):
        self.focus_window()
        for key in keys:
            subprocess.run(["xdotool", "key", "--clearmodifiers", key], check=True)

    def type_keys(self, text):
        self.focus_window()
        subprocess.run(["xdotool", "type", "--delay", "20", text], check=True)

    def _still(self, node):
        """Waits until @node has a place and keeps it: a page that is being laid out moves."""
        places = []

        def stays():
            places.append(node.extents())
            return places[-1][3] > 0 and places[-2:] == [places[-1]] * 2
        wait_for(stays, f"{node} at rest")

    def _pointer(self, window, frame, extents):
        """Where the middle of @extents lies in the X @window that shows @frame."""
        outer = self._geometry(window)
        inner = frame.extents()
        x, y, width, height = extents
        # The window's own frame lies around what the toolkit measures from.
        return (str(x + width // 2 + (outer["WIDTH"] - inner[2]) // 2),
                str(y + height // 2 + (outer["HEIGHT"] - inner[3]) // 2))

    def _scroll_to(self, window, frame, pane, node):
        """Rolls the wheel until the middle of @node lies within the @pane that scrolls it."""
        pane = pane.extents()

        def off():
            _, y, _, height = node.extents()
            middle = y + height // 2
            return 1 if middle >= pane[1] + pane[3] else -1 if middle < pane[1] else 0

        def rolled():
            way = off()
            if way:
                left, top = self._pointer(window, frame, pane)
                subprocess.run(["xdotool", "mousemove", "--window", window, left, top, "click",
                                "5" if way > 0 else "4"], check=True)
            return not way
        if off():
            wait_for(rolled, f"{node} within its pane")
            self._still(node)

    def _geometry(self, window):
        found = subprocess.run(["xdotool", "getwindowgeometry", "--shell", window],
                               stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True).stdout
        return {key: int(value) for key, value in (line.split("=") for line in found.split())}

    def _point_at(self, window, left, top):
        """Moves the pointer, and lets a tip go that what was pointed at before has left there."""
        subprocess.run(["xdotool", "windowfocus", "--sync", window, "mousemove", "--window", window,
                        left, top], check=True)
        here = self._geometry(window)
        x, y = here["X"] + int(left), here["Y"] + int(top)

        def covers(other):
            place = self._geometry(other)
            return place and 0 <= x - place["X"] < place["WIDTH"] \
                and 0 <= y - place["Y"] < place["HEIGHT"]

        def is_free():
            # Tips lie above the windows; a menu that is open has the tip's kind of window too.
            names = self.bus.window_names()
            return not any(self._title(other) not in names and covers(other)
                           for other in self.windows() if other != window)
        try:
            wait_for(is_free, "end of a tip", TIP_S)
        except Missing:
            pass

    def press_in(self, node, *keys):
        """Clicks into the middle of @node with the mouse, then presses keys there."""
        self._still(node)
        above = node.above()
        frame = above[-1]
        window = self.window_of(frame)
        panes = [pane for pane in above if pane.role == "scroll pane"]
        if panes:
            self._scroll_to(window, frame, panes[0], node)
        left, top = self._pointer(window, frame, node.extents())
        self.bus.forget()
        self._point_at(window, left, top)
        subprocess.run(["xdotool", "click", "1"], check=True)
        for key in keys:
            subprocess.run(["xdotool", "key", "--clearmodifiers", key], check=True)

    def choose_file(self, title, path, ending=""):
        """Types @path into the file dialog called @title and accepts it.

        A dialog that offers a name keeps the @ending of that name when one types.
        """
        def is_text(item):
            return ATSPI + "EditableText" in item.interfaces

        dialog = self.find(title, showing=False)
        self.bus.forget()
        subprocess.run(["xdotool", "windowfocus", "--sync", self.window_of(dialog), "type",
                        "--delay", "20", path.removesuffix(ending)], check=True)
        wait_for(lambda: any(node.text() == path for node in self.bus.find(is_text)),
                 f"{path} in the file dialog")
        self.bus.forget()
        subprocess.run(["xdotool", "key", "Return"], check=True)
        self.gone(title)

    def unnamed(self):
        """Controls that stay without a name of their own: one just made is named a moment later."""
        try:
            wait_for(lambda: not self._unnamed(), "end of the controls without a name", NAMED_S)
        except Missing:
            return self._unnamed()
        return []

    def _unnamed(self):
        """Shown controls whose accessible name is only the toolkit's type name."""
        tree = self.tree()
        # A drop-down is named; the toolkit's own button in it cannot be.
        inner = {child.path for node in tree.below() if node.role == "combo box" and node.name
                 for child in node.children}
        return [f"{node.role} {node.name!r} ({node.description!r})"
                for node in self.all(within=tree)
                if node.role in CONTROL_ROLES and node.has_state(Atspi.StateType.FOCUSABLE)
                and node.path not in inner
                and (not node.name or node.name.startswith(("Gtk", "Adw", "Fm")))]

    def quit(self):
        for _ in range(QUIT_TRIES):
            # A key is lost that goes to a window which is just closing.
            self.press("ctrl+q")
            try:
                self.process.wait(DEADLINE_S / QUIT_TRIES)
                break
            except (subprocess.TimeoutExpired, Missing):
                pass
        else:
            self.process.kill()
            raise AssertionError("the program did not end on Ctrl+Q")
        assert self.process.returncode == 0, f"the program ended with {self.process.returncode}"

    def kill(self):
        self.process.kill()
        self.process.wait()

    def screenshot(self, name):
        folder = os.environ.get("FORCEMEAT_SHOTS")
        if folder:
            os.makedirs(folder, exist_ok=True)
            subprocess.run(["import", "-window", "root", f"{folder}/{name}.png"], check=False)

    def dump(self):
        for node in self.all():
            if node.name or node.has("Action") and node.role != "panel":
                print("#", node.role, "|", node.name[:160], flush=True)


def report(number, case, programs):
    label = case.__name__.replace("_", " ")
    began = time.monotonic()

    def start(*arguments, begin=True):
        """Somebody new begins with an empty notebook, unless @begin says that he does not yet."""
        is_new = arguments in ((), ("--separate",)) and not has_notebook(folder)
        programs.append(Program(*arguments, data_home=folder))
        if is_new and begin:
            programs[-1].click("Start an Empty Notebook")
        return programs[-1]

    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        try:
            case(start, folder)
            print(f"ok {number} - {label}", flush=True)
            passed = True
        except Exception:  # a test reports any failure and the rest go on
            for line in traceback.format_exc().splitlines():
                print("#", line)
            if programs and programs[-1].process.poll() is None:
                programs[-1].screenshot(f"failed-{case.__name__}")
                programs[-1].dump()
            print(f"not ok {number} - {label}", flush=True)
            passed = False
        for program in programs:
            if program.process.poll() is None:
                program.kill()
    print(f"# {label}: {time.monotonic() - began:.1f} s", flush=True)
    return passed


def run(*cases):
    """Runs test functions and speaks TAP. Each gets a way to start the program and a folder."""
    only = os.environ.get("FORCEMEAT_CASE")
    cases = [case for case in cases if not only or only in case.__name__]
    print(f"1..{len(cases)}", flush=True)
    passed = [report(number, case, []) for number, case in enumerate(cases, 1)]
    sys.exit(0 if all(passed) else 1)
