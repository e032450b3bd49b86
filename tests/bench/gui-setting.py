#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Machine, board, way up, cuts, units and looks changed from the window. That an up-cut draws board and table together and lifts
the board off a gantry's bed is geometry: its shear points to the motor."""
import shutil
import subprocess
import sys
import tempfile

from gui import Bench, Tap, wait_for, xdotool

tap = Tap()
bench = Bench()


def height(name):
    return bench.centre(bench.mark(name))[1]


def seat():
    return bench.find('label', r'(Lifts|Presses|Draws|Pushes|Neither).*\.$').name


def cut(name):
    bench.click(bench.find('list item', '^' + name))


# The machine: the view turns over for a router table.
tap.ok(height('Thickness') > height('Pass 1'), 'on the gantry deeper is further down')
bench.click(bench.find('push button', '^Up-cut 12.7'))
xdotool('mousemove', *bench.centre(bench.find('label', '^Before the real piece$')))
tap.ok(wait_for(lambda: seat().startswith('Lifts')), 'on the gantry an up-cut lifts the board', seat)
bench.choose('^Machine$', '^Router table$')
tap.ok(bench.has('label', 'on the router table, motor below'), 'the sentence names the router table')
tap.ok(wait_for(lambda: height('Thickness') < height('Pass 1')), 'the view is turned over: deeper is further up',
       lambda: (height('Thickness'), height('Pass 1')))
tap.ok(wait_for(lambda: seat().startswith('Draws the board to the table')), 'there it draws the board to the table', seat)
tap.ok(bench.has('label', 'trap'), 'and the cautions are those of a table')
bench.picture('table')
tap.ok(bench.has('push button', '^Undo change to “Router table”$'), 'undo names the machine')
bench.keys('ctrl+z')
tap.ok(bench.has('label', 'on the gantry, motor above'), 'undo brings the gantry back')
tap.ok(wait_for(lambda: height('Thickness') > height('Pass 1')), 'and turns the view back')
bench.keys('ctrl+z')

# Turning the board over.
tap.ok(bench.has('label', '^Show face, motor side: clean$'), 'the show face is up')
bench.click(bench.find('push button', '^Turn over$'))
tap.ok(bench.has('label', '^Show face, far side: '), 'turned over, the show face is down')
tap.ok(bench.has('label', '^other way up: '), 'beside the button stands how the other way comes out')
bench.keys('ctrl+z')
tap.ok(bench.has('label', '^Show face, motor side: '), 'undo turns it back')

# Cuts.
cut('Dadoes')
tap.ok(bench.has('slider', '^Depth, 9.0 mm'), 'the dado has a depth instead of an overcut')
tap.ok(not bench.has('slider', '^Overcut', 0.2), 'and no overcut')
tap.ok(bench.has('label', 'blind cut is made from its own face'), 'it is made from the face it lies in')
bench.click(bench.mark('Depth'))
bench.keys('Down')
tap.ok(bench.has('slider', '^Depth, 9.1 mm'), 'its depth can be moved')
tap.ok(bench.has('list item', '9.1 mm deep'), 'the card follows')
cut('Slot')
tap.ok(bench.has('slider', '^Overcut'), 'a cut without a bit of its own is shown with one that suits')
bench.keys('ctrl+z')
tap.ok(bench.has('slider', '^Depth, 9.0 mm'), 'undo goes back to the cut it belongs to')
for name in ('Rabbet', 'Mortises', 'Holes', 'Outline'):
    cut(name)
    tap.ok(bench.has('label', '^Pass 1 of '), f'the cut “{name}” is drawn')

# The board.
bench.choose('^Board$', '^Birch plywood 24 mm')
tap.ok(bench.has('label', '^Birch plywood 24 mm'), 'another board is taken', lambda: bench.names('label')[:12])
tap.ok(wait_for(lambda: abs(bench.value(bench.mark('Thickness')) - 24) < 0.1), 'with its thickness', lambda: bench.value(bench.mark('Thickness')))
bench.keys('ctrl+z')
tap.ok(bench.has('label', '^Birch plywood 18 mm'), 'undo gives the first one back')
bench.choose('^Board$', '^Birch plywood 6.5 mm')
tap.ok(bench.has(None, r"Dadoes|dado", 2), 'a board too thin for a cut of the part is refused, and the sentence names the cut',
       lambda: bench.names('status bar'))
tap.ok(bench.has('label', '^Birch plywood 18 mm'), 'and the board stays')

# Units.
bench.click(bench.find(None, '^in$'))
tap.ok(wait_for(lambda: bench.figure('Feed').endswith(' in/min')), 'the column shows inches', lambda: bench.figure('Feed'))
tap.ok(bench.has('label', '6 in test strip'), 'the test strip too')
bench.click(bench.find(None, '^mm$'))
tap.ok(wait_for(lambda: bench.figure('Feed').endswith(' mm/min')), 'and millimetres again', lambda: bench.figure('Feed'))


# Looks.
def brightness():
    with tempfile.NamedTemporaryFile(suffix='.png') as shot:
        subprocess.run(['import', '-window', 'root', shot.name], check=True)
        mean = subprocess.check_output(['convert', shot.name, '-colorspace', 'Gray', '-format', '%[fx:mean]', 'info:'], text=True)
        return float(mean)


if shutil.which('import') and shutil.which('convert'):
    tap.ok(brightness() > 0.6, 'the light look is light', brightness)
    bench.take('^View$', '^Dark$')
    tap.ok(wait_for(lambda: brightness() < 0.35, 3), 'the dark look is dark', brightness)
    bench.picture('dark')
    bench.take('^View$', '^High contrast$')
    tap.ok(wait_for(lambda: brightness() > 0.6, 3), 'high contrast is on white', brightness)

tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
