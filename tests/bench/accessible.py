# SPDX-License-Identifier: GPL-3.0-or-later
"""What assistive technology sees of a program, read from the accessibility bus. Asking each thing for its name, its role and its
children takes thousands of calls for a window, and each waits for an answer; here all that the program keeps for its readers comes
in one answer, and what has to be asked of each thing is asked of all at once. What is found is named as pyatspi names it."""
import ast
import collections
import re

import gi
gi.require_version('Atspi', '2.0')
from gi.repository import Atspi, Gio, GLib  # noqa: E402

ROOT = '/org/a11y/atspi/accessible/root'
NOWHERE = '/org/a11y/atspi/null'
CACHE = '/org/a11y/atspi/cache'
BUS = ('org.freedesktop.DBus', '/org/freedesktop/DBus', 'org.freedesktop.DBus')
PROPERTIES = 'org.freedesktop.DBus.Properties'
ACCESSIBLE, ACTION, COMPONENT, TEXT, VALUE = (f'org.a11y.atspi.{name}' for name in ('Accessible', 'Action', 'Component', 'Text', 'Value'))
OF_THE_WINDOW = 1  # what places count from

# One of the items of the cache as GVariant writes it, which is much quicker to read so than value by value: its place and those of
# the application and its parent, index, count of children, interfaces, name, role, description, states.
QUOTED = r"""(?:'(?:[^'\\]|\\.)*'|"(?:[^"\\]|\\.)*")"""
PLACE = rf'\({QUOTED}, {QUOTED}\)'
KEPT = re.compile(rf"\(\('[^']*', '(?P<path>[^']*)'\), {PLACE}, {PLACE}, -?\d+, (?P<count>-?\d+), \[(?P<interfaces>[^]]*)\], "
                  rf"(?P<name>{QUOTED}), (?P<role>\d+), {QUOTED}, \[(?P<low>\d+), (?P<high>\d+)\]\)", re.DOTALL)

Box = collections.namedtuple('Box', 'x y width height')


def unquoted(written):
    """GVariant quotes and escapes a string as Python does."""
    return ast.literal_eval(written) if '\\' in written else written[1:-1]


class States:
    """A set of them."""

    def __init__(self, low, high):
        self.bits = low | high << 32

    def contains(self, state):
        return bool(self.bits >> int(state) & 1)


class Component:
    def __init__(self, node):
        self.node = node

    def getExtents(self, _relative_to=OF_THE_WINDOW):
        return Box(*self.node.ask(COMPONENT, 'GetExtents', GLib.Variant('(u)', (OF_THE_WINDOW,)))[0])


class Value:
    def __init__(self, node):
        self.node = node

    @property
    def currentValue(self):
        return self.node.get(VALUE, 'CurrentValue')

    @currentValue.setter
    def currentValue(self, value):
        self.node.ask(PROPERTIES, 'Set', GLib.Variant('(ssv)', (VALUE, 'CurrentValue', GLib.Variant('d', value))))

    @property
    def maximumValue(self):
        return self.node.get(VALUE, 'MaximumValue')


class Text:
    def __init__(self, node):
        self.node = node

    @property
    def characterCount(self):
        return self.node.get(TEXT, 'CharacterCount')

    def getText(self, start, end):
        return self.node.ask(TEXT, 'GetText', GLib.Variant('(ii)', (start, end)))[0]


class Action:
    def __init__(self, node):
        self.node = node

    def doAction(self, index):
        return self.node.ask(ACTION, 'DoAction', GLib.Variant('(i)', (index,)))[0]


class Node:
    """A thing of a program, as it is now; `seen`, `seen_role` and `seen_states` are as they were when it was read with others."""

    def __init__(self, bus, owner, path, seen=None, seen_role=None, seen_states=None, interfaces=()):
        self.bus = bus
        self.owner = owner
        self.path = path
        self.seen = seen
        self.seen_role = seen_role
        self.seen_states = seen_states
        self.interfaces = interfaces

    def __eq__(self, other):
        return isinstance(other, Node) and (self.owner, self.path) == (other.owner, other.path)

    def __hash__(self):
        return hash((self.owner, self.path))

    def ask(self, interface, method, arguments=None):
        return self.bus.ask(self.owner, self.path, interface, method, arguments)

    def get(self, interface, member):
        return self.ask(PROPERTIES, 'Get', GLib.Variant('(ss)', (interface, member)))[0]

    @property
    def name(self):
        return self.get(ACCESSIBLE, 'Name')

    @property
    def description(self):
        return self.get(ACCESSIBLE, 'Description')

    @property
    def childCount(self):
        return self.get(ACCESSIBLE, 'ChildCount')

    def getChildAtIndex(self, index):
        owner, path = self.ask(ACCESSIBLE, 'GetChildAtIndex', GLib.Variant('(i)', (index,)))[0]
        return Node(self.bus, owner, path) if path != NOWHERE else None

    def children(self):
        return [Node(self.bus, *place) for place in self.ask(ACCESSIBLE, 'GetChildren')[0]]

    def getApplication(self):
        return Node(self.bus, self.owner, ROOT)

    def getRoleName(self):
        """It never changes."""
        if self.seen_role is None:
            self.seen_role = self.bus.role_name(self.ask(ACCESSIBLE, 'GetRole')[0])
        return self.seen_role

    def getState(self):
        return States(*self.ask(ACCESSIBLE, 'GetState')[0])

    def get_process_id(self):
        return self.bus.ask(*BUS, 'GetConnectionUnixProcessID', GLib.Variant('(s)', (self.owner,)))[0]

    def queryComponent(self):
        return Component(self)

    def queryValue(self):
        return Value(self)

    def queryText(self):
        return Text(self)

    def queryAction(self):
        return Action(self)


class Bus:
    """The accessibility bus of this session."""

    def __init__(self):
        session = Gio.bus_get_sync(Gio.BusType.SESSION)
        answer = session.call_sync('org.a11y.Bus', '/org/a11y/bus', 'org.a11y.Bus', 'GetAddress', None, None, Gio.DBusCallFlags.NONE,
                                   -1, None)
        flags = Gio.DBusConnectionFlags.AUTHENTICATION_CLIENT | Gio.DBusConnectionFlags.MESSAGE_BUS_CONNECTION
        self.connection = Gio.DBusConnection.new_for_address_sync(answer.unpack()[0], flags, None, None)
        self.role_names = {}

    def answer(self, owner, path, interface, method, arguments=None):
        return self.connection.call_sync(owner, path, interface, method, arguments, None, Gio.DBusCallFlags.NONE, -1, None)

    def ask(self, owner, path, interface, method, arguments=None):
        return self.answer(owner, path, interface, method, arguments).unpack()

    def ask_each(self, nodes, interface, method, arguments=None):
        """The answers, in the order of the nodes; None for one that is gone meanwhile."""
        answers = [None] * len(nodes)
        waiting = len(nodes)

        def finish(connection, result, at):
            nonlocal waiting
            waiting -= 1
            try:
                answers[at] = connection.call_finish(result).unpack()
            except GLib.Error:
                pass

        for at, node in enumerate(nodes):
            self.connection.call(node.owner, node.path, interface, method, arguments, None, Gio.DBusCallFlags.NONE, -1, None, finish, at)
        while waiting:
            GLib.MainContext.default().iteration(True)
        return answers

    def role_name(self, role):
        if role not in self.role_names:
            self.role_names[role] = Atspi.role_get_name(Atspi.Role(role))
        return self.role_names[role]

    def applications(self):
        return Node(self, 'org.a11y.atspi.Registry', ROOT).children()

    def boxes(self, nodes):
        """Where each is in its window; nothing for what is nowhere."""
        places = [node for node in nodes if COMPONENT in node.interfaces]
        answers = self.ask_each(places, COMPONENT, 'GetExtents', GLib.Variant('(u)', (OF_THE_WINDOW,)))
        found = {node: Box(*answer[0]) for node, answer in zip(places, answers) if answer}
        return [found.get(node, Box(0, 0, 0, 0)) for node in nodes]

    def states(self, nodes):
        answers = self.ask_each(nodes, ACCESSIBLE, 'GetState')
        return [States(*answer[0]) if answer else States(0, 0) for answer in answers]

    def kept(self, owner):
        """What a program keeps of its things for its readers, by path: how many children, interfaces, name, role, states."""
        written = self.answer(owner, CACHE, 'org.a11y.atspi.Cache', 'GetItems').print_(False)
        return {item['path']: (int(item['count']), item['interfaces'], unquoted(item['name']), int(item['role']),
                               (int(item['low']), int(item['high']))) for item in KEPT.finditer(written)}

    def tell(self, nodes, kept):
        """Gives nodes what they are `seen` as."""
        unknown = []
        for node in nodes:
            if node.path in kept:
                _, node.interfaces, node.seen, role, states = kept[node.path]
                node.seen_role, node.seen_states = self.role_name(role), States(*states)
            else:
                unknown.append(node)
        # What has just come is not kept yet.
        for node, name, role, states, interfaces in zip(
                unknown, self.ask_each(unknown, PROPERTIES, 'Get', GLib.Variant('(ss)', (ACCESSIBLE, 'Name'))),
                self.ask_each(unknown, ACCESSIBLE, 'GetRole'), self.ask_each(unknown, ACCESSIBLE, 'GetState'),
                self.ask_each(unknown, ACCESSIBLE, 'GetInterfaces')):
            if name and role and states and interfaces:
                node.seen, node.seen_role, node.seen_states = name[0], self.role_name(role[0]), States(*states[0])
                node.interfaces = interfaces[0]

    def walk(self, root):
        """A thing and all below it, each before its children. What is kept is no guide to who is whose child: it holds what is
        hidden, and lacks what nobody asked for yet."""
        try:
            kept = self.kept(root.owner)
        except GLib.Error:
            kept = {}  # it has only just started
        below = {}
        level = [root]
        while level:
            self.tell(level, kept)
            parents = [node for node in level if node.path == ROOT or node.path not in kept or kept[node.path][0] > 0]
            level = []
            for parent, answer in zip(parents, self.ask_each(parents, ACCESSIBLE, 'GetChildren')):
                children = [Node(self, *place) for place in answer[0]] if answer else []
                below[parent.path] = [child for child in children if child.path != NOWHERE]
                level += below[parent.path]
        pending = [root]
        while pending:
            node = pending.pop()
            if node.seen_role is not None:
                yield node
            pending.extend(reversed(below.get(node.path, [])))
