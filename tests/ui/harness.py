"""Drives the real program over AT-SPI, as a person with a keyboard and a screen reader would.

Each test program runs inside its own session bus and X server (see run-ui). Waiting is always
for a condition with a deadline, never for a time.
"""

import os
import subprocess
import sys
import time
import traceback

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi  # noqa: E402

DEADLINE_S = float(os.environ.get("FORCEMEAT_UI_DEADLINE", "20"))


class Missing(AssertionError):
    """What the test looked for did not appear before the deadline."""


def wait_for(condition, what, deadline_s=DEADLINE_S):
    end = time.monotonic() + deadline_s
    while True:
        try:
            found = condition()
        except gi.repository.GLib.Error:
            found = None
        if found:
            return found
        if time.monotonic() > end:
            raise Missing(f"no {what} within {deadline_s:.0f} s")
        time.sleep(0.05)


def walk(node):
    """Every accessible below @node that is alive, top down."""
    stack = [node]
    while stack:
        current = stack.pop()
        if current is None:
            continue
        yield current
        try:
            count = current.get_child_count()
            stack.extend(current.get_child_at_index(i) for i in reversed(range(count)))
        except gi.repository.GLib.Error:
            continue


def name_of(node):
    try:
        return node.get_name() or ""
    except gi.repository.GLib.Error:
        return ""


def role_of(node):
    try:
        return node.get_role_name() or ""
    except gi.repository.GLib.Error:
        return ""


def is_showing(node):
    """GTK 4.8 sets SHOWING on windows only; what is not on the screen has no size."""
    try:
        extents = node.get_extents(Atspi.CoordType.WINDOW)
        return extents.width > 0 and extents.height > 0
    except gi.repository.GLib.Error:
        return False


def is_focusable(node):
    try:
        return node.get_state_set().contains(Atspi.StateType.FOCUSABLE)
    except gi.repository.GLib.Error:
        return False


CONTROL_ROLES = {"push button", "toggle button", "check box", "radio button", "combo box", "entry",
                 "text", "spin button", "slider", "switch", "menu item", "page tab", "table",
                 "tree table", "image", "link"}


class Program:
    """One running Forcemeat and its accessible tree."""

    def __init__(self, *arguments, data_home):
        env = dict(os.environ, XDG_DATA_HOME=data_home, XDG_CONFIG_HOME=data_home + "/config",
                   XDG_CACHE_HOME=data_home + "/cache", LC_ALL="C.UTF-8", LANGUAGE="C",
                   GDK_BACKEND="x11", GSK_RENDERER="cairo", ADW_DISABLE_PORTAL="1",
                   GSETTINGS_BACKEND="keyfile", G_DEBUG="fatal-criticals")
        self.process = subprocess.Popen([os.environ["FORCEMEAT_BINARY"], *arguments], env=env)
        self.application = wait_for(self._find_application, "application on the bus")

    def _find_application(self):
        if self.process.poll() is not None:
            raise AssertionError(f"the program ended with {self.process.returncode}")
        desktop = Atspi.get_desktop(0)
        for i in range(desktop.get_child_count()):
            child = desktop.get_child_at_index(i)
            if child and child.get_process_id() == self.process.pid and child.get_child_count():
                # Nobody runs a main loop here, so a cache would never hear of changes.
                child.set_cache_mask(Atspi.Cache.NONE)
                return child
        return None

    def all(self, name=None, role=None, showing=True, contains=False):
        for node in walk(self.application):
            if role is not None and role_of(node) != role:
                continue
            own = name_of(node)
            if name is not None and not (name in own if contains else name == own):
                continue
            if showing and not is_showing(node):
                continue
            yield node

    def find(self, name=None, role=None, contains=False, showing=True, deadline_s=DEADLINE_S):
        what = f"{role or 'widget'} named {name!r}"
        return wait_for(lambda: next(self.all(name, role, showing, contains), None), what, deadline_s)

    def gone(self, name=None, role=None, contains=False):
        wait_for(lambda: next(self.all(name, role, True, contains), None) is None,
                 f"end of {role or 'widget'} {name!r}")

    def click(self, name, role=None, contains=False):
        """Presses a control by its own action, else by the first child that has one."""
        node = self.find(name, role, contains)
        for candidate in walk(node):
            if candidate.get_n_actions() > 0:
                candidate.do_action(0)
                return node
        raise Missing(f"{name!r} has no action")

    def text_field(self, name, contains=False):
        """The editable text that is, or lies within, the widget called @name."""
        def look():
            for node in self.all(name, contains=contains):
                for candidate in walk(node):
                    if candidate.get_editable_text_iface():
                        return candidate
            return None
        return wait_for(look, f"text field named {name!r}")

    def type_into(self, name, text, contains=False):
        field = self.text_field(name, contains)
        field.set_text_contents(text)
        return field

    def read(self, name, contains=False):
        field = self.text_field(name, contains)
        return Atspi.Text.get_text(field, 0, Atspi.Text.get_character_count(field))

    def says(self, text, deadline_s=DEADLINE_S):
        """Waits until some shown accessible has @text in its name."""
        return self.find(text, contains=True, deadline_s=deadline_s)

    def focus_window(self):
        ids = subprocess.run(["xdotool", "search", "--pid", str(self.process.pid)],
                             stdout=subprocess.PIPE, text=True).stdout.split()
        for window in ids[-1:]:
            subprocess.run(["xdotool", "windowfocus", "--sync", window], check=False)

    def press(self, *keys):
        self.focus_window()
        for key in keys:
            subprocess.run(["xdotool", "key", "--clearmodifiers", key], check=True)

    def type_keys(self, text):
        self.focus_window()
        subprocess.run(["xdotool", "type", "--delay", "20", text], check=True)

    def unnamed(self):
        """Shown controls whose accessible name is only the toolkit's type name."""
        return [f"{role_of(n)} {name_of(n)!r}" for n in self.all()
                if role_of(n) in CONTROL_ROLES and is_focusable(n)
                and (not name_of(n) or name_of(n).startswith(("Gtk", "Adw", "Fm")))]

    def quit(self):
        self.press("ctrl+q")
        try:
            self.process.wait(DEADLINE_S)
        except subprocess.TimeoutExpired:
            self.process.kill()
            raise AssertionError("the program did not end on Ctrl+Q") from None
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
            print("#", role_of(node), "|", name_of(node)[:120])


def run(*cases):
    """Runs test functions and speaks TAP. Each gets its own folder for data."""
    import tempfile
    print(f"1..{len(cases)}", flush=True)
    failed = 0
    for number, case in enumerate(cases, 1):
        label = case.__name__.replace("_", " ")
        programs = []

        def start(*arguments, data_home=None, folder=None):
            programs.append(Program(*arguments, data_home=data_home))
            return programs[-1]

        with tempfile.TemporaryDirectory() as folder:
            try:
                case(lambda *a: start(*a, data_home=folder), folder)
                print(f"ok {number} - {label}", flush=True)
            except Exception:  # a test reports any failure and the rest go on
                failed += 1
                for line in traceback.format_exc().splitlines():
                    print("#", line)
                if programs and programs[-1].process.poll() is None:
                    programs[-1].screenshot(f"failed-{number}")
                    programs[-1].dump()
                print(f"not ok {number} - {label}", flush=True)
            finally:
                for program in programs:
                    if program.process.poll() is None:
                        program.kill()
    sys.exit(1 if failed else 0)
