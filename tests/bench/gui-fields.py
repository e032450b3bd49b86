#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every field of the forms of a cut and of a part, by keys only: what can't be read and what can't be is complained about in a
sentence beside the field, what was typed stays, and once put right it is taken and can be undone under the field's name."""
import json
import os
import pathlib
import re
import shutil
import sys
import tempfile

import pyatspi
from gui import Bench, Tap, wait_for, xdotool

LONG = 'long ' * 30
# What is right for a field, and what can be read there but can't be.
CUT = {
    'Name': ('Another name', ''),
    'Depth': ('8.5 mm', '400 mm'),
    'Width': ('17.5 mm', '-3 mm'),
    'Width of the step': ('8 mm', '-3 mm'),
    'Taken off': ('2 mm', '-3 mm'),
    'Diameter': ('6 mm', '-3 mm'),
    'Thickness of that part': ('17 mm', '-3 mm'),
    'Clearance': ('0.3 mm', '90 mm'),
    'Length': ('701 mm', '-3 mm'),
    'Way round it': ('301 mm', '-3 mm'),
    'Inside corners': ('8 mm', '-3 mm'),
    'From the edge': ('30 mm', '-3 mm'),
    'How many': ('3', '-2'),
    'Direction': ('45', '4000'),
    'Tabs': ('5', '-2'),
    'Width of a tab': ('9 mm', '-3 mm'),
    'Thickness of a tab': ('2.5 mm', '60 mm'),
    'Backing board': ('6 mm', '-3 mm'),
    'Depth of scoring': ('1.5 mm', '-3 mm'),
    'Left for finishing': ('0.4 mm', '-3 mm'),
    'Skin left': ('0.6 mm', '-3 mm'),
    'Slope of the entry': ('4', '95'),
    'Spindle speed': ('18000', '-3'),
    'Feed': ('3000', '-3'),
    'Stick-out': ('30 mm', '-3 mm'),
}
PART = {
    'Name': ('Another part', ''),
    'Note': ('Of oak', None),
    'Length': ('640 mm', '-3 mm'),
    'Width': ('310 mm', '-3 mm'),
    'Setting a depth': ('0.2', '-3'),
    'Up-shear as marked': ('0.5', '-3'),
    'Area on the bed': ('1500', '-3'),
    'Vacuum': ('55', '-3'),
    'Force of all clamps': ('400', '-3'),
}

tap = Tap()
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-fields-'))
demo = json.loads(pathlib.Path(os.environ['SPELCH_DEMO']).read_text())
BIT = demo['bits'][0]['id']


def cut(kind, held=None, **members):
    return {'id': kind + str(len(members)), 'name': f'The {kind}', 'kind': kind, 'way_up': 'a', 'length': '300 mm', 'seen': ['a'],
            'bit': BIT, 'held': held or {}, **members}


CUTS = [
    cut('outline', {'pass_plan': 'onion-skin'}, kept='left', tabs={'count': 4, 'width': '8 mm', 'thickness': '3 mm'}),
    cut('dado', {'pass_plan': 'scored', 'score_bit': BIT}, depth='9 mm', mating={'thickness': '18 mm', 'clearance': '0.2 mm'}),
    cut('rabbet', depth='6 mm', width='9 mm', kept='left'),
    cut('pocket', {'pass_plan': 'finished', 'allowance': 0.5, 'entry': {'kind': 'ramp'}}, depth='6 mm', width='40 mm'),
    cut('trim', width='1 mm', kept='left'),
    cut('hole', width='8 mm', depth='6 mm'),
]


def written(name, **members):
    path = folder / name
    path.write_text(json.dumps({**demo, **members}))
    return path


def put(text, *keys):
    xdotool('key', 'ctrl+a', 'Delete')
    if text:
        xdotool('type', '--delay', '4', '--', text)
    bench.keys(*keys)


def complaint(node):
    """What assistive technology says of the field, when it is a whole sentence about a fault that also stands beside it."""
    words = node.description or ''
    if not re.search(r'\w.*\.$', words):
        return None
    place, *beside = bench.bus.boxes([node, *bench.all('label', '^' + re.escape(words) + '$')])
    return words if any(abs(box.y - place.y - place.height) < 40 and abs(box.x - place.x) < 40 for box in beside) else None


def refused(node, what, text):
    was = bench.bus.boxes([node])[0].x
    put(text, 'Return')
    tap.ok(wait_for(lambda: complaint(node)), f'{what}: “{text[:12]}” is complained about, beside it', lambda: node.description)
    tap.same(bench.text(node), text, f'{what}: “{text[:12]}” stays')
    tap.near(bench.bus.boxes([node])[0].x, was, 1, f'{what}: the field stays in its place')


def same(shown, typed):
    """A number may be written in groups."""
    return re.sub(r'\s', '', shown) == re.sub(r'\s', '', typed)


def tour(node, what, good, impossible):
    unreadable = 'wide' if good[0].isdigit() else LONG * (1 if what.endswith('Name') else 4)
    refused(node, what, unreadable)
    bench.keys('Tab')
    tap.same(bench.text(node), unreadable, f'{what}: it stays when the field is left')
    tap.ok(wait_for(lambda: complaint(node)), f'{what}: and why it is refused', lambda: node.description)
    tap.ok(bench.all('image', None, node), f'{what}: it has a mark that the focus has not')
    bench.keys('shift+Tab')
    if not tap.ok(wait_for(lambda: bench.focused([node])), f'{what}: the keys go back to it'):
        return
    if impossible is not None:
        refused(node, what, impossible)
    put(good, 'Return')
    tap.ok(wait_for(lambda: same(bench.text(node), good)), f'{what}: put right, it is taken', lambda: bench.text(node))
    tap.ok(wait_for(lambda: complaint(node) is None), f'{what}: and the complaint goes', lambda: node.description)
    name = what.split(': ')[1]
    tap.ok(wait_for(lambda: f'“{name}”' in undo.name), f'{what}: undo calls it by its name', lambda: undo.name)


def try_fields(where, values, done):
    """Goes through the form by Tab, as far as there are fields that weren't tried."""
    form = bench.find('panel', r'^(Cut \d+ of \d+|The part)$')  # other forms have fields of the same names
    left = [node for node in bench.all('text', root=form) if node.seen in values and node.seen not in done]
    stops = [node for node in bench.all() if node.seen_states.contains(pyatspi.STATE_FOCUSABLE)]

    for _ in range(150):
        here = bench.focused(left)
        if here is not None:
            done.add(here.name)
            left.remove(here)
            tour(here, f'{where}: {here.name}', *values[here.name])
        if not left:
            break
        before = bench.focused(stops)
        bench.keys('Tab')
        wait_for(lambda was=before: bench.focused(stops) != was, 1)
    tap.same([node.name for node in left], [], f'{where}: Tab comes to each field')


def at_top():
    """Whether the plan's first words lie in sight, below the header bar."""
    top = bench.find('label', '^Edges$', 1)
    return top is not None and bench.bus.boxes([top])[0].y > 55


def go_to(node):
    for _ in range(80):
        if bench.focused([node]):
            return
        bench.keys('Tab')
        wait_for(lambda: bench.focused([node]), 0.2)


def doubtful(field, typed, other, good):
    """What may be thousands is asked about, also once another field was entered, and is never taken."""
    form = bench.find('panel', r'^Cut \d+ of \d+$')
    node = bench.all('text', f'^{field}$', form)[0]
    go_to(node)
    refused(node, f'doubtful {field}', typed)
    tap.ok('can be read in two ways' in (node.description or ''), f'{field}: what to write is said', lambda: node.description)
    beside = bench.all('text', f'^{other}$', form)[0]
    go_to(beside)
    put(good, 'Return')
    tap.ok(wait_for(lambda: f'“{other}”' in undo.name), f'{field}: another field is entered', lambda: undo.name)
    tap.ok(complaint(node), f'{field}: and the sentence still stands there', lambda: node.description)
    tap.same(bench.text(node), typed, f'{field}: beside what was typed')
    go_to(node)
    put('', 'Return')
    tap.ok(wait_for(lambda: complaint(node) is None), f'{field}: emptied, it goes', lambda: node.description)


bench = Bench(written('cuts.spelch', cuts=CUTS), home=folder)
undo = bench.find('push button', '^Undo')
done = set()
for one in CUTS:
    bench.click(bench.find('list item', '^(Another name|The ' + one['kind'] + ')') if one is CUTS[0]
                else bench.find('list item', '^The ' + one['kind']))
    bench.keys('F2')
    wait_for(lambda: bench.focused(bench.all('text', '^Name$')))
    try_fields(one['kind'], CUT, done)
    bench.picture(f'fields-{one["kind"]}')
    bench.keys('Escape')
    tap.ok(wait_for(lambda: at_top()), f'{one["kind"]}: once the form is closed, the column shows its beginning')
tap.same(sorted(done), sorted(CUT), 'every field of a cut was tried')
bench.keys('F2')
wait_for(lambda: bench.focused(bench.all('text', '^Name$')))
doubtful('Feed', '5,000', 'Stick-out', '31 mm')
doubtful('Spindle speed', '18.000', 'Feed', '3100')
bench.keys('Escape')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.crash()
shutil.rmtree(folder / 'state', ignore_errors=True)

done = set()
for method in ('vacuum', 'clamps'):
    bench = Bench(written(f'{method}.spelch', holding={'method': method}), home=folder)
    undo = bench.find('push button', '^Undo')
    bench.find('push button', '^The part…$').queryAction().doAction(0)
    wait_for(lambda: bench.focused(bench.all('text', '^Name$')))
    try_fields(f'part held by {method}', PART, done)
    bench.picture(f'fields-part-{method}')
    tap.same(bench.complaints(), [], 'nothing was complained about')
    bench.crash()
    shutil.rmtree(folder / 'state', ignore_errors=True)
tap.same(sorted(done), sorted(PART), 'every field of a part was tried')
shutil.rmtree(folder, ignore_errors=True)
sys.exit(tap.done())
