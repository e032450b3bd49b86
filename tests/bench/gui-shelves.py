#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Bit drawer, boards and machines: an entry of each kind added, spoilt, corrected, retired, undone and redone by real keys and
clicks; kept at once; import and export; and the bench follows."""
import json
import sys

from gui import Bench, Tap, wait_for, xdotool

tap = Tap()
bench = Bench()
main = bench.window
KEYS = {'bits': 'ctrl+shift+b', 'boards': 'ctrl+shift+d', 'machines': 'ctrl+shift+m'}
TITLES = {'bits': 'Bit drawer', 'boards': 'Boards', 'machines': 'Machines'}
DATA = bench.home / 'data' / 'spelch'
bench.only_window = True


def open_shelf(kind):
    bench.window = main
    bench.keys(KEYS[kind])
    bench.window = wait_for(lambda: bench.frame(TITLES[kind]))
    tap.ok(bench.window, f'{TITLES[kind]} opens by its key')
    tap.ok(bench.has('text', '^Name$'), f'{TITLES[kind]}: an entry is shown')


def entry(name):
    return bench.find('text', f'^{name}$')


def shown(name, text):
    return wait_for(lambda: bench.text(entry(name)) == text, 5)


def kept(kind, name):
    """The entry in the file, or None."""
    path = DATA / f'{kind}.json'
    if not path.exists():
        return None
    return next((item for item in json.loads(path.read_text())[kind] if item.get('name') == name), None)


def tour(kind, fresh, name, field, good, member, bad, complaint):
    """Adds an entry, names it, changes one member, spoils and corrects it, retires it and undoes and redoes that."""
    bench.click(bench.find('push button', '^Add$'))
    tap.ok(shown('Name', fresh), f'{kind}: an entry is added', lambda: bench.text(entry('Name')))
    bench.type_into(entry('Name'), name, 'Return')
    tap.ok(wait_for(lambda: kept(kind, name), 5), f'{kind}: its name is kept at once')
    tap.ok(bench.has('list item', '^' + name), f'{kind}: the list names it')
    bench.type_into(entry(field), good, 'Return')
    tap.ok(wait_for(lambda: (kept(kind, name) or {}).get(member[0]) == member[1], 5), f'{kind}: a change is kept',
           lambda: kept(kind, name))
    bench.type_into(entry(field), bad, 'Return')
    tap.ok(bench.has('label', complaint, 5), f'{kind}: what is wrong is said beside the field', lambda: bench.names('label'))
    tap.same(bench.text(entry(field)), bad, f'{kind}: what was typed stays')
    tap.ok((kept(kind, name) or {}).get(member[0]) == member[1], f'{kind}: what was typed is not kept')
    bench.type_into(entry(field), good, 'Return')
    tap.ok(bench.lacks('label', complaint, 5), f'{kind}: corrected, the complaint goes')
    bench.click(bench.find('push button', '^Retire$'))
    tap.ok(wait_for(lambda: (kept(kind, name) or {}).get('retired'), 5), f'{kind}: it is retired')
    tap.ok(bench.has('list item', f'^{name}.*retired$'), f'{kind}: the list says so')
    tap.ok(bench.has('push button', f'^Undo retiring “{name}”$'), f'{kind}: undo says what it undoes',
           lambda: bench.names('push button'))
    bench.keys('ctrl+z')
    tap.ok(wait_for(lambda: kept(kind, name) and not kept(kind, name).get('retired'), 5), f'{kind}: undo brings it back')
    bench.keys('ctrl+shift+z')
    tap.ok(wait_for(lambda: (kept(kind, name) or {}).get('retired'), 5), f'{kind}: redo retires it again')
    bench.click(bench.find('push button', '^Bring back$'))
    tap.ok(wait_for(lambda: kept(kind, name) and not kept(kind, name).get('retired'), 5), f'{kind}: it is brought back')
    bench.picture(f'shelf-{kind}')


bench.keys('Escape')
open_shelf('bits')
tour('bits', 'New bit', 'Own 7 mm', 'Diameter', '7 mm', ('diameter', {'mm': 7, 'typed': '7 mm'}), 'wide', r'“wide”|isn.t a (number|length)')
bench.click(bench.find('push button', '^Duplicate$'))
tap.ok(bench.has('list item', r'^Own 7 mm \(copy\)'), 'bits: an entry is duplicated')
bench.click(bench.find('push button', '^Delete$'))
tap.ok(bench.lacks('list item', r'^Own 7 mm \(copy\)'), 'bits: what nothing uses can be deleted')
bench.keys('ctrl+f')
xdotool('type', '--delay', '15', 'own 7')


def stands_first():
    search, row = bench.box(bench.find('entry', '^Search')), bench.box(bench.find('list item', '^Own 7 mm'))
    return row.y - search.y - search.height < 30


tap.ok(wait_for(stands_first, 5), 'bits: searching leaves what matches')
bench.keys('ctrl+a', 'Delete')
tap.ok(wait_for(lambda: not stands_first(), 5), 'bits: and brings the rest back')
bench.window = main
tap.ok(bench.has(None, '^Own 7 mm'), "the bench's drawer has the new bit", lambda: [n for n in bench.names() if 'Own' in (n or '')])

open_shelf('boards')
tour('boards', 'New board', 'Own board', 'Sold as', '15 mm', ('nominal', {'mm': 15, 'typed': '15 mm'}), '900 mm', r'“Sold as” .*must be')
tap.same(len(kept('boards', 'Own board')['layers']), 13, 'boards: layers are fitted, not lost')
bench.choose('^Make-up', '^Birch plywood$')
tap.ok(wait_for(lambda: len(kept('boards', 'Own board')['layers']) == 11, 5), 'boards: a make-up lays the layers',
       lambda: kept('boards', 'Own board'))

open_shelf('machines')
tour('machines', 'New machine', 'Own router', 'Dial steps', '8000 12 000 16 000', ('steps_rpm', [8000, 12000, 16000]),
     '8000 90 000', r'“Dial steps” 2 .*must be')

tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
