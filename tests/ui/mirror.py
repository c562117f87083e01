# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""What is known of the accessibles of a program, without asking for the whole tree again.

The toolkit tells of each new name, and of each accessible that goes or that somebody was the first
to ask for. So a thing that was seen before is found by its name; only its parents are asked
whether it still hangs in a window, and in which order.

A name may change without a word (that of a button after its content): who waits reads on.
"""

import functools

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, GLib  # noqa: E402

ROOT = "/org/a11y/atspi/accessible/root"
ATSPI = "org.a11y.atspi."
COMPONENT = ATSPI + "Component"
# One reply with all of them is read sooner than so many that come one by one.
MANY_ADDED = 150


class Item:
    """One accessible as the program told of it."""

    __slots__ = ("path", "parent", "interfaces", "name", "role", "description")

    def __init__(self, fields):
        (_, self.path), _, (_, self.parent), _, _, self.interfaces, self.name, role, \
            self.description, _ = fields
        self.role = role_name(role)


class Mirror:
    """Follows the events of one program."""

    def __init__(self, bus):
        self.bus = bus
        self.items = None
        self.added = []

    def load(self, cached):
        """Takes over the reply of the toolkit's cache."""
        self.added.clear()
        self.items = {fields[0][1]: Item(fields) for fields in cached}

    def hear(self, path, interface, signal, parameters):
        if self.items is None:
            return
        if signal == "AddAccessible":
            self.added.append(parameters)
        elif signal == "RemoveAccessible":
            self._take_added()
            self.items.pop(parameters.unpack()[0][1], None)
        elif signal == "PropertyChange":
            self._take_added()
            what, _, _, value, *_ = parameters.unpack()
            if path in self.items and what in ("accessible-name", "accessible-description"):
                setattr(self.items[path], what.removeprefix("accessible-"), str(value))

    def _take_added(self):
        for parameters in self.added:
            item = Item(parameters.unpack()[0])
            self.items[item.path] = item
        self.added.clear()

    def catch_up(self):
        context = GLib.MainContext.default()
        while context.iteration(False):
            pass
        if self.items is None or len(self.added) > MANY_ADDED:
            self.load(self.bus.cached())
        self._take_added()

    def lineage(self, path):
        """@path and all above it, the window last; empty when it hangs nowhere."""
        found = []
        while path in self.items and path != ROOT and path not in found:
            # A page of a stack says that it is a parent, and the stack lists its child.
            if COMPONENT in self.items[path].interfaces:
                found.append(path)
            path = self.items[path].parent
        return found if path == ROOT else []

    def hanging(self, wanted):
        """The paths that @wanted says yes to and that hang in a window now, top down."""
        self.catch_up()
        lines = [line for line in (self.lineage(path) for path, item in list(self.items.items())
                                   if wanted(item)) if line]
        parents = {parent for line in lines for parent in line[1:]}
        if not lines:
            return []
        below = self.bus.children_of([ROOT, *parents], lambda path: False)
        places = {}
        for line in lines:
            place = []
            for child, parent in zip(line, [*line[1:], ROOT]):
                siblings = below.get(parent, ())
                if child not in siblings:
                    break
                place.append(siblings.index(child))
            else:
                places[line[0]] = place[::-1]
        return sorted(places, key=places.get)


# One role has two names: newer libraries of the bus leave out that a button is pushed.
OLDER_NAMES = {"button": "push button"}


@functools.cache
def role_name(role):
    name = Atspi.Role(role).value_nick.replace("-", " ")
    return OLDER_NAMES.get(name, name)
