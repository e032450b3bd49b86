#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Lists in and out of the shelves: a drawer exported as a table and as a list, a table with faults imported with a report of what
was read and what wasn't, undone; and a board's layers put in another order by the pointer and by keys."""
import csv
import json
import sys

from gui import Bench, Tap, wait_for, xdotool

tap = Tap()
bench = Bench()
main = bench.window
FOLDER = bench.home


def window(name):
    return wait_for(lambda: bench.frame(name))


def names(role=None):
    return [node.seen for node in bench.all(role, root=bench.window)]


def in_window(role, name):
    """The first such thing of this window alone: the bench behind it has labels too."""
    bench.only_window = True
    return bench.find(role, name)


def open_shelf(key, title):
    bench.window = main
    bench.keys(key)
    bench.window = window(title)
    bench.only_window = True
    tap.ok(bench.window, f'{title} opens')


def answer_chooser(button, title, path, table=False):
    """Names the file in the chooser that a button opens."""
    shelf = bench.window
    bench.click(in_window('push button', button))
    bench.window = window(title)
    if table:
        bench.click(in_window('combo box', None))
        xdotool('key', 'Down', 'Return')
        name = bench.find('text', '^Name')
        bench.type_into(name, str(path))
    else:
        xdotool('key', 'ctrl+a')
        xdotool('type', '--delay', '15', '--', str(path))
    xdotool('key', 'Return')
    tap.ok(wait_for(lambda: not any((f.name or '') == title for f in bench.frames())), f'“{title}” is answered', lambda: [f.name for f in bench.frames()])
    bench.window = shelf


# ---- Out ----

open_shelf('ctrl+shift+b', 'Bit drawer')
whole = FOLDER / 'drawer.json'
answer_chooser('^Export', 'Export the list', whole)
tap.ok(bench.has('label', 'entries were written to “drawer.json”'), 'what was written is told', lambda: names('label'))
bits = json.loads(whole.read_text())['bits']
table = FOLDER / 'drawer.csv'
answer_chooser('^Export', 'Export the list', FOLDER / 'drawer', table=True)
tap.ok(bench.has('label', f'^{len(bits)} entries were written to “drawer.csv”'), 'a table too, which gets its ending', lambda: names('label'))
answer_chooser('^Export', 'Export the list', FOLDER / 'drawer', table=True)
tap.ok(bench.has('label', 'There is a table of that name already'), 'one that is there is not written over unasked', lambda: names('label'))
with open(table, newline='', encoding='utf-8') as file:
    rows = list(csv.DictReader(file))
tap.same([row['name'] for row in rows], [bit['name'] for bit in bits], 'with every bit, by name')

# ---- In ----

answer_chooser('^Import', 'Import a list', table)
tap.ok(bench.has('label', f'{len(bits)} lay there already'), 'what is there already is not doubled', lambda: names('label'))
fields = list(rows[0])
good = {**rows[0], 'id': '', 'name': 'From a table'}
bad = {**rows[0], 'id': '', 'name': 'Spoilt', 'diameter': 'wide'}
with open(table, 'w', newline='', encoding='utf-8') as file:
    writer = csv.DictWriter(file, fields)
    writer.writeheader()
    writer.writerows([good, bad])
answer_chooser('^Import', 'Import a list', table)
tap.ok(bench.has('label', r'1 entry came in from “drawer.csv”'), 'a row that can be read comes in', lambda: names('label'))
tap.ok(bench.has('label', r'1 of the table.s 2 lines could be read\.'), 'how many were read is told', lambda: names('label'))
tap.ok(bench.has('label', r'(?s)3.*diameter.*“wide”'), 'what is wrong is told with line, column and value', lambda: names('label'))
bench.picture('table-report')
tap.ok(bench.has('list item', '^From a table'), 'it lies in the drawer')
tap.ok(wait_for(lambda: bench.text(bench.find('text', '^Name$')) == 'From a table'), 'and is the one that is shown', lambda: names('text'))
tap.ok(bench.has('push button', '^Undo import of “drawer.csv”'), 'undo names the import', lambda: names('push button'))
bench.keys('ctrl+z')
tap.ok(bench.lacks('list item', '^From a table'), 'and takes it out again')
(FOLDER / 'no.json').write_text('{"format_version": 1, "bits": [')
answer_chooser('^Import', 'Import a list', FOLDER / 'no.json')
tap.ok(bench.has('label', r'no\.json.*Nothing was taken from it\.'), 'a broken list is refused whole', lambda: names('label'))

# ---- Layers ----

KEPT = FOLDER / 'data' / 'spelch' / 'boards.json'
open_shelf('ctrl+shift+d', 'Boards')
bench.click(bench.find('push button', '^Add$'))
tap.ok(wait_for(lambda: KEPT.exists() and 'New board' in KEPT.read_text()), 'a board is added')


def board():
    return next(b for b in json.loads(KEPT.read_text())['boards'] if b['name'] == 'New board')


def thicknesses():
    return [layer['thickness'] if isinstance(layer['thickness'], (int, float)) else layer['thickness']['mm'] for layer in board()['layers']]


def layer(n):
    return bench.find('list item', rf'^{n}\. ')


def whole_in_view(node):
    box, inside = bench.box(node), bench.box(bench.window)
    return box.y + box.height < inside.y + inside.height


def bring_into_view(n):
    x, y = bench.centre(bench.find('text', '^Sold as$'))
    xdotool('mousemove', x - 120, y + 40)
    for _ in range(40):
        if whole_in_view(layer(n)):
            return
        xdotool('click', 5)
        bench.settle()


before = thicknesses()
bring_into_view(3)
first = layer(1).name.split('. ', 1)[1]
place, to = bench.centre(layer(1)), bench.centre(layer(3))
xdotool('mousemove', *place, 'mousedown', 1)
bench.glide(0, to[1] - place[1])
bench.release()
tap.ok(wait_for(lambda: thicknesses() == before[1:3] + before[:1] + before[3:]), 'a layer dragged onto the third becomes the third',
       lambda: (before, thicknesses()))
tap.ok(wait_for(lambda: layer(3).name.split('. ', 1)[1].startswith(first.replace(', face a', ''))), 'and the list says so', lambda: layer(3).name)
bench.picture('table-layers')
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: thicknesses() == before), 'undo puts it back', thicknesses)
bench.click(layer(1))
bench.click(bench.find('push button', '^Down$'))
tap.ok(wait_for(lambda: thicknesses() == [before[1], before[0]] + before[2:]), 'a button moves it too', thicknesses)
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
