#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The bit drawer: a click accepts a bit and every number follows, arrows try, Return accepts, Escape goes back, a bit can be
dragged onto the drawing. That an up-cut tears the motor-side face of plywood and leaves the far one clean: Filson and others,
Design for CNC (2017), chapter 6."""
import sys
import time

from gui import Bench, Tap, wait_for, xdotool

tap = Tap()
bench = Bench()


def in_use():
    return [tile.name.split(',')[0] for tile in bench.all('push button', 'in use for this cut')]


def numbers():
    board = bench.find('label', '(Lifts|Presses|Draws|Pushes|Neither).*\\.$').name
    return [bench.figure(name) for name in ('Spindle', 'Feed', 'Largest chip', 'Passes')] + [board]


def park():
    """Off the drawer, so that the pointer tries nothing."""
    xdotool('mousemove', *bench.centre(bench.find('label', '^Before the real piece$')))
    bench.settle()


own = in_use()
tap.same(len(own), 1, 'one bit is in use', )
before = numbers()
bench.click(bench.find('push button', '^Up-cut 6.35 mm'))
park()
tap.ok(wait_for(lambda: in_use() and in_use()[0].startswith('Up-cut 6.35')), 'a click accepts the up-cut bit', in_use)
tap.ok(wait_for(lambda: numbers() != before), 'and the numbers change', numbers)
tap.ok(wait_for(lambda: bench.verdict('motor') in ('torn grain', 'badly torn', 'fuzzy grain')), 'the motor-side face tears', lambda: bench.verdict('motor'))
tap.same(bench.verdict('far'), 'clean', 'the far face is clean')
tap.ok(bench.has('push button', '^Undo choose '), 'undo names it')
bench.picture('up-cut')
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: in_use() == own), 'undo takes the bit back', in_use)
tap.ok(wait_for(lambda: numbers() == before), 'and the numbers with it', numbers)

# By keys.
bench.click(bench.find('push button', '^Compression 6.35'))
park()
bench.keys('Tab', 'shift+Tab')  # makes the focus visible
bench.keys('Right', 'Right')
tap.ok(wait_for(lambda: numbers() != before), 'arrows try the bits one after the other', numbers)
tap.same(in_use(), own, 'without accepting them')
tap.ok(not bench.has('push button', '^Undo choose', 0.2), 'and without a step of undo')
tried = numbers()
bench.keys('Escape')
tap.ok(wait_for(lambda: numbers() == before), 'Escape goes back to the accepted bit', numbers)
bench.keys('Left', 'Right')
tap.ok(wait_for(lambda: numbers() == tried), 'the focus is still there', numbers)
bench.keys('Return')
tap.ok(wait_for(lambda: in_use() and in_use() != own), 'Return accepts', in_use)
tap.ok(wait_for(lambda: numbers() == tried), 'with the numbers it was tried with', numbers)
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: in_use() == own), 'undo again', in_use)

# The pointer resting on a bit tries it.
xdotool('mousemove', *bench.centre(bench.find('push button', '^Up-cut 12.7')))
tap.ok(wait_for(lambda: bench.verdict('motor') != 'clean', 3), 'resting on a bit tries it', lambda: bench.verdict('motor'))
time.sleep(1)
tap.ok(bench.verdict('motor') != 'clean', 'as long as the pointer rests there', lambda: bench.verdict('motor'))
tap.ok(bench.has(None, r'Up-cut 12.7(.|\n)*\n− '), 'and says what is for and against it')
park()
tap.ok(wait_for(lambda: bench.verdict('motor') == 'clean', 3), 'leaving goes back', lambda: bench.verdict('motor'))

# Dragged onto the drawing.
bench.press(bench.find('push button', '^Up-cut 6.35'))
view = bench.centre(bench.find('panel', '^Side view$'))
x, y = bench.pointer()
bench.glide(view[0] - x, view[1] - y, 25)
time.sleep(0.2)
bench.release()
park()
tap.ok(wait_for(lambda: in_use() and in_use()[0].startswith('Up-cut 6.35'), 4), 'a bit dragged onto the drawing is accepted', in_use)

# What is said under each.
tap.ok(bench.has('push button', 'tears show face'), 'a bit that tears the show face is captioned so')
tap.ok(bench.has('push button', 'too short'), 'one that is too short as well')

# What this plan's numbers ask to beware of stands in sight: up-shear draws a bit out of its collet, down-shear into it.
bench.click(bench.find('push button', '^Up-cut 6.35 mm'))
park()
tap.ok(bench.has('label', '^The cut draws the bit out of the collet'), 'an up-cut bit asks for a tight collet')
bench.click(bench.find('push button', '^Down-cut 6.35 mm'))
park()
tap.ok(bench.lacks('label', '^The cut draws the bit out of the collet'), 'a down-cut bit does not')

# The wheel turns the drawer sideways; the way to a bit of one's own begins one, and the same one until it has a name.
tile = bench.find('push button', '^Up-cut 6.35')
before = bench.box(tile).x
xdotool('mousemove', *bench.centre(bench.find('push button', '^Up-cut 12.7')))
xdotool('click', '--repeat', '3', '--delay', '30', '5')
park()
tap.ok(wait_for(lambda: bench.box(tile).x < before - 50), 'the wheel turns the drawer sideways', lambda: (before, bench.box(tile).x))


def begun():
    """The drawer's window with a bit to be filled in, its name ready to be typed over."""
    bench.find('push button', '^Your own bit').queryAction().doAction(0)
    bench.window = wait_for(lambda: bench.frame('Bit drawer'))
    return wait_for(lambda: bench.text(bench.find('text', '^Name$')) == 'New bit')


main = bench.window
tap.ok(begun(), 'a bit of one\'s own is begun beside the drawer', lambda: bench.names('text'))
bench.keys('ctrl+w')
bench.window = main
tap.ok(wait_for(lambda: not bench.frame('Bit drawer')) is True and begun(), 'and gone on with')
tap.same(len(bench.all('list item', '^New bit')), 1, 'instead of one more')
bench.keys('ctrl+w')
bench.window = main

tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
