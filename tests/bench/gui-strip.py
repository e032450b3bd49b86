#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A drawer of hundreds of bits: only those in sight and some beside them have tiles, which follow the wheel and the arrow keys from
one end to the other; a click takes the bit that stands there."""
import json
import os
import pathlib
import re
import shutil
import sys
import tempfile

from gui import Bench, Tap, wait_for, xdotool

BITS = 400

tap = Tap()
home = pathlib.Path(tempfile.mkdtemp(prefix='spelch-gui-strip-'))
starter = json.loads(pathlib.Path(os.environ['SPELCH_DEMO']).with_name('bits.json').read_text())['bits']
drawer = home / 'data' / 'spelch' / 'bits.json'
drawer.parent.mkdir(parents=True)
drawer.write_text(json.dumps({'format_version': 1, 'bits': [
    {**starter[i % len(starter)], 'id': f'bit-{i:03}', 'name': f'Number {i:03}'} for i in range(BITS)]}))
bench = Bench(os.environ['SPELCH_DEMO'], home=home)


def tiles():
    return bench.all('push button', r'^Number \d\d\d')


def numbers():
    return [int(re.search(r'\d\d\d', tile.seen).group()) for tile in tiles()]


def in_row():
    seen = numbers()
    return seen and seen == list(range(seen[0], seen[0] + len(seen)))


def turn(button, clicks):
    xdotool('click', '--repeat', clicks, '--delay', 10, button)


def tried():
    """The number of the bit that is tried, by what is said about it."""
    said = [node.seen for node in bench.all() if node.seen_role != 'push button' and re.match(r'Number \d\d\d', node.seen)]
    return int(re.search(r'\d\d\d', said[0]).group()) if said else None


tap.ok(0 < len(tiles()) < 80, 'not every bit has a tile', lambda: len(tiles()))
tap.ok(in_row() and numbers()[0] == 0, 'they begin with the first and stand in a row', numbers)
ahead = bench.find('push button', 'in use for this cut')
x, y = bench.centre(ahead)
xdotool('mousemove', x, y)
turn(5, 60)
tap.ok(wait_for(lambda: in_row() and numbers()[0] > 4), 'the wheel brings others, in a row', numbers)
tap.ok(len(tiles()) < 80, 'in as many tiles as before', lambda: len(tiles()))
turn(5, 600)
tap.ok(wait_for(lambda: in_row() and numbers()[-1] == BITS - 1), 'up to the last one', numbers)
bench.picture('strip-end')
last = max(tiles(), key=lambda tile: tile.seen)
name = last.seen.split(',')[0]
bench.click(last)
tap.ok(wait_for(lambda: any(name in used for used in bench.names('push button') if 'in use for this cut' in used)),
       'a click takes the one that stands there', lambda: (name, bench.names('push button')))
bench.keys('ctrl+z')
turn(4, 700)
tap.ok(wait_for(lambda: in_row() and numbers()[0] == 0), 'back to the first one', numbers)

# By the keys alone.
own = bench.find('push button', 'in use for this cut')
bench.click(own)
xdotool('mousemove', *bench.centre(bench.find('label', '^Bit drawer$')))
bench.keys('Tab', 'shift+Tab')  # makes the focus visible
for _ in range(10):  # past the part's own bits
    bench.keys('Right')
begun = wait_for(tried) or 0
for _ in range(60):
    bench.keys('Right')
tap.ok(wait_for(lambda: begun and tried() == begun + 60), 'arrow keys go from bit to bit, past those that had tiles at first', lambda: (begun, tried()))
tap.ok(in_row(), 'in a row', numbers)
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
shutil.rmtree(home, ignore_errors=True)
sys.exit(tap.done())
