# SPDX-FileCopyrightText: 2026 the Forcemeat developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The accessible tree of one program, read in one go.

Asking for one accessible at a time costs about two milliseconds each; a page has a thousand. So the
children of all are asked for at once, and names and roles come in one reply from the toolkit's
cache of what was asked for. That still takes two thirds of a second of a processor. So who looks for
one thing first tries what is known of the program (see Mirror), then what is new by the counts in the
cache, and reads the whole tree only if he waits for long.
"""

import json

import gi

gi.require_version("Atspi", "2.0")
gi.require_version("Json", "1.0")
from gi.repository import Atspi, Gio, GLib, Json  # noqa: E402

from mirror import ATSPI, ROOT, Mirror, role_name  # noqa: E402

CALL_MS = 120000
WHOLE_EACH = 4


class Node:
    """One accessible as it was when the tree was read. Its calls go to the live one."""

    def __init__(self, bus, path, name, role, description, interfaces, states=None):
        self.bus = bus
        self.path = path
        self.name = name
        self.role = role
        self.description = description
        self.interfaces = interfaces
        self._states = states
        self._children = None

    @property
    def states(self):
        if self._states is None:
            self._states = self.call("Accessible", "GetState")[0]
        return self._states

    @property
    def children(self):
        """Those of a node that was found by its name are asked for when somebody wants to know."""
        if self._children is None:
            self.bus.hang_below(self)
        return self._children

    @children.setter
    def children(self, nodes):
        self._children = nodes

    def above(self):
        """All that it lies in, the innermost first and its window last."""
        mirror = self.bus.mirror
        mirror.catch_up()
        return [self.bus.node_of(mirror.items[path]) for path in mirror.lineage(self.path)[1:]]

    def call(self, interface, method, signature=None, *values):
        parameters = GLib.Variant(signature, values) if signature else None
        return self.bus.call(self.path, ATSPI + interface, method, parameters)

    def live_name(self):
        return self.bus.property(self.path, ATSPI + "Accessible", "Name")

    def has_state(self, state):
        number = int(state)
        return bool(self.states[number // 32] >> (number % 32) & 1)

    def has(self, interface):
        return ATSPI + interface in self.interfaces

    def below(self):
        """This accessible and all below it, top down."""
        stack = [self]
        while stack:
            node = stack.pop()
            yield node
            stack.extend(reversed(node.children))

    def texts(self):
        return [node.name for node in self.below() if node.name]

    def extents(self):
        """x, y, width and height in the window."""
        return self.call("Component", "GetExtents", "(u)", 1)[0]

    def is_showing(self):
        """GTK 4.8 sets SHOWING on windows only; what was never on the screen has no size."""
        try:
            _, _, width, height = self.extents()
        except GLib.Error:
            return False
        return width > 0 and height > 0

    def action_names(self):
        count = self.bus.property(self.path, ATSPI + "Action", "NActions")
        return [self.call("Action", "GetName", "(i)", i)[0] for i in range(count)]

    def act(self, name=None):
        """Does its action called @name, else its first. False when there is none."""
        names = self.action_names() if self.has("Action") else []
        if not names or (name is not None and name not in names):
            return False
        self.bus.forget()
        self.call("Action", "DoAction", "(i)", names.index(name) if name else 0)
        return True

    def set_text(self, text):
        self.bus.forget()
        assert self.call("EditableText", "SetTextContents", "(s)", text)[0], f"{self} took no text"

    def text(self):
        length = self.bus.property(self.path, ATSPI + "Text", "CharacterCount")
        return self.call("Text", "GetText", "(ii)", 0, length)[0]

    def select_child(self, index):
        self.bus.forget()
        return self.call("Selection", "SelectChild", "(i)", index)[0]

    def __repr__(self):
        return f"{self.role} {self.name!r}"


class Bus:
    """The accessibility bus, as seen by one program under test."""

    newest = None

    def __init__(self):
        session = Gio.bus_get_sync(Gio.BusType.SESSION)
        address = session.call_sync("org.a11y.Bus", "/org/a11y/bus", "org.a11y.Bus", "GetAddress",
                                    None, None, Gio.DBusCallFlags.NONE, CALL_MS, None)[0]
        flags = (Gio.DBusConnectionFlags.AUTHENTICATION_CLIENT
                 | Gio.DBusConnectionFlags.MESSAGE_BUS_CONNECTION)
        self.connection = Gio.DBusConnection.new_for_address_sync(address, flags, None, None)
        self.program = None
        self.mirror = Mirror(self)
        self.events = 0
        self.looks_in_vain = 0
        self.last_read = None
        Bus.newest = self

    def _call(self, owner, path, interface, method, parameters=None):
        return self.connection.call_sync(owner, path, interface, method, parameters, None,
                                         Gio.DBusCallFlags.NONE, CALL_MS, None)

    def find_program(self, process_id):
        """Whether the program has said that it is there. Ask before anything else."""
        registry = self._call(ATSPI + "Registry", ROOT, ATSPI + "Accessible", "GetChildren")[0]
        for owner, _ in registry:
            found = self._call("org.freedesktop.DBus", "/org/freedesktop/DBus",
                               "org.freedesktop.DBus", "GetConnectionUnixProcessID",
                               GLib.Variant("(s)", (owner,)))[0]
            if found == process_id:
                self._listen_to(owner)
                return True
        return False

    def has_windows(self):
        return bool(self.call(ROOT, ATSPI + "Accessible", "GetChildren")[0])

    def window_names(self):
        """As they are now: one that has just opened is not known otherwise."""
        return [self.property(path, ATSPI + "Accessible", "Name")
                for _, path in self.call(ROOT, ATSPI + "Accessible", "GetChildren")[0]]

    def _listen_to(self, owner):
        if self.program == owner:
            return
        self.program = owner
        self.connection.signal_subscribe(owner, None, None, None, None, Gio.DBusSignalFlags.NONE,
                                         self._count_event)

    def _count_event(self, _connection, _sender, path, interface, signal, parameters):
        self.events += 1
        self.mirror.hear(path, interface, signal, parameters)
        self.forget()

    def forget(self):
        """The program is about to change: what was read of it holds no longer."""
        self.last_read = None

    def wait_for_event(self, seen, longest_s, silence_s):
        """Returns once the program has told of more than @seen and is silent, or after @longest_s."""
        context = GLib.MainContext.default()
        over = []
        end = GLib.timeout_add(int(1000 * longest_s), over.append, "end")
        while not over and self.events == seen:
            context.iteration(True)
        while not over and self.events != seen:
            seen = self.events
            silence = []
            GLib.timeout_add(int(1000 * silence_s), silence.append, "silence")
            while not silence:
                context.iteration(True)
        if not over:
            GLib.source_remove(end)

    def call(self, path, interface, method, parameters=None):
        return self._call(self.program, path, interface, method, parameters)

    def property(self, path, interface, name):
        return self.call(path, "org.freedesktop.DBus.Properties", "Get",
                         GLib.Variant("(ss)", (interface, name)))[0]

    def children_of(self, paths, goes_into=lambda path: True):
        """The paths of the children of @paths, and of those below them that it @goes_into."""
        context = GLib.MainContext.default()
        children = {}
        pending = set()

        def ask(path):
            pending.add(path)
            self.connection.call(self.program, path, ATSPI + "Accessible", "GetChildren", None, None,
                                 Gio.DBusCallFlags.NONE, CALL_MS, None, answer, path)

        def answer(connection, result, path):
            pending.discard(path)
            try:
                children[path] = [child for _, child in connection.call_finish(result)[0]]
            except GLib.Error:  # it went away meanwhile
                return
            for child in children[path]:
                if child not in children and child not in pending and goes_into(child):
                    ask(child)

        for path in paths:
            ask(path)
        while pending:
            context.iteration(True)
        return children

    def cached(self):
        """All accessibles in the toolkit's cache. Unpacking in Python takes six times as long."""
        reply = self._call(self.program, "/org/a11y/atspi/cache", ATSPI + "Cache", "GetItems")
        return json.loads(Json.gvariant_serialize_data(reply)[0])[0]

    def looks_closely(self):
        """Whether who waits has looked hastily often enough."""
        return self.looks_in_vain % WHOLE_EACH == WHOLE_EACH - 1

    def refresh(self):
        """Asks for what is new: the toolkit tells of an accessible once its parent was asked for it."""
        items = self.cached()
        known = {path for (_, path), *_ in items}
        asked = self.children_of([ROOT, *unsure_parents(items)], lambda path: path not in known)
        if any(child not in known for below in asked.values() for child in below):
            items = self.cached()
        self.mirror.load(items)

    def read(self):
        """The root node of the tree as it is now; what was read serves until the program tells of more."""
        context = GLib.MainContext.default()
        while context.iteration(False):
            pass
        if self.last_read and not self.looks_in_vain:
            return self.last_read
        events = self.events
        children = self.children_of([ROOT])
        items = self.cached()
        self.mirror.load(items)
        tree = self._tree_of(items, children)
        self.last_read = tree if self.events == events else None
        return tree

    def _tree_of(self, items, children):
        nodes = {ROOT: Node(self, ROOT, "", "application", "", [], [0, 0])}
        for (_, path), _, _, _, _, interfaces, name, role, description, states in items:
            nodes[path] = Node(self, path, name, role_name(role), description, interfaces, states)
            nodes[path].children = []
        for path, below in children.items():
            if path in nodes:
                nodes[path].children = [nodes[child] for child in below if child in nodes]
        return nodes[ROOT]

    def node_of(self, item):
        return Node(self, item.path, item.name, item.role, item.description, item.interfaces)

    def hang_below(self, node):
        """Gives @node and all below it the children that they have now."""
        children = self.children_of([node.path])
        self.mirror.catch_up()
        items = self.mirror.items
        nodes = {path: self.node_of(items[path]) for path in children if path in items}
        nodes[node.path] = node
        for path, below in children.items():
            if path in nodes:
                nodes[path].children = [nodes[child] for child in below if child in nodes]

    def find(self, wanted):
        """The nodes that @wanted says yes to, top down, as far as the program told of them."""
        for path in self.mirror.hanging(wanted):
            item = self.mirror.items[path]
            node = self.node_of(item)
            node.name = item.name = node.live_name()
            if wanted(item):
                yield node


def unsure_parents(items):
    """The parents in the cache who have other children than it knows.

    A hidden child stays in the cache, with no place among its parent's children.
    """
    counts = {path: count for (_, path), _, _, _, count, *_ in items}
    places = {path: [] for path in counts}
    for _, _, (_, parent), index, *_ in items:
        if parent in places:
            places[parent].append(index)
    return [path for path, count in counts.items() if sorted(places[path]) != list(range(count))]
