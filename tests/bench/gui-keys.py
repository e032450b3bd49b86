#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Marks moved by keys: arrows the way they point on screen, by a tenth of a millimetre or a 64th of an inch; Page keys by 1 mm or a
16th; + deepens, - raises; Home and End go to the limits. On a router table the picture is turned over, and the arrows with it."""
import sys
import time

from gui import Bench, Tap, wait_for, xdotool

INCH = 25.4

tap = Tap()
bench = Bench()
mark = bench.mark('Pass 1')
bench.click(mark)
start = bench.value(mark)


def after(wanted, what, *keys):
    bench.keys(*keys)
    wait_for(lambda: abs(bench.value(bench.mark('Pass 1')) - wanted) < 1e-6, 2)
    tap.near(lambda: bench.value(bench.mark('Pass 1')), wanted, 1e-6, what)
    return wanted


at = after(start + 0.1, 'down moves it 0.1 mm deeper', 'Down')
at = after(at - 0.2, 'up, up raises it 0.2 mm', 'Up', 'Up')
at = after(at, 'left and right do nothing to a depth', 'Left', 'Right')
at = after(at + 1, 'Page down moves it 1 mm deeper', 'Next')
at = after(at - 3, 'Page up, three times, raises it 3 mm', 'Prior', 'Prior', 'Prior')
at = after(at + 0.1, 'plus deepens', 'plus')
at = after(at - 0.1, 'minus raises', 'minus')
tap.ok('torn' in bench.mark('Pass 1').name, 'the name follows the keys: torn above the window', lambda: bench.mark('Pass 1').name)

# Steps in quick succession are one step of undo.
time.sleep(1.2)
xdotool('key', '--delay', '30', 'Down', 'Down', 'Down')
after(at + 0.3, 'three quick steps')
tap.ok(bench.has('push button', '^Undo move pass 1$'), 'undo names them')
bench.keys('ctrl+z')
after(at, 'and takes them back together')
bench.click(bench.find('push button', '^Pass 1: held by hand; let go$'))
after(start, 'the pin lets the pass go')

bench.click(mark)
bench.keys('End')
deepest = bench.value(mark)
value = mark.queryValue()
tap.ok(deepest > start, 'End goes deeper', deepest)
tap.near(deepest, value.maximumValue, 1e-6, 'to the upper limit that assistive technology is told')
bench.keys('Down')
tap.near(lambda: bench.value(mark), deepest, 1e-6, 'and Down goes no further')
tap.ok(bench.has(None, 'Stops here: '), 'the limit is named')
bench.keys('Home')
tap.near(lambda: bench.value(bench.mark('Pass 1')), 0.1, 1e-6, 'Home goes to the lower limit')
bench.click(bench.find('push button', '^Pass 1: held by hand; let go$'))

# Assistive technology sets values too.
mark = bench.mark('Pass 1')
start = bench.value(mark)
mark.queryValue().currentValue = 9.0
tap.ok(wait_for(lambda: '9.0 mm' in bench.mark('Pass 1').name), 'a value set by assistive technology is taken and told',
       lambda: bench.mark('Pass 1').name)
tap.ok(bench.figure('Passes').startswith('9.0 mm'), 'and planned', lambda: bench.figure('Passes'))

# Inches.
bench.click(bench.find(None, '^in$'))
tap.ok(wait_for(lambda: ' in,' in bench.mark('Pass 1').name), 'marks show inches', lambda: bench.mark('Pass 1').name)
bench.click(bench.mark('Pass 1'))
bench.keys('Down')
sixty_fourths = bench.value(bench.mark('Pass 1')) / INCH * 64
tap.near(sixty_fourths, round(sixty_fourths), 1e-6, 'Down moves to a whole 64th of an inch')
before = bench.value(bench.mark('Pass 1'))
bench.keys('Up')
tap.near(before - bench.value(bench.mark('Pass 1')), INCH / 64, 1e-6, 'Up raises it a 64th')
bench.keys('Next')
tap.near(lambda: bench.value(bench.mark('Pass 1')) - before, INCH / 16 - INCH / 64, 1e-6, 'Page down moves it a 16th')
bench.click(bench.find(None, '^mm$'))
bench.click(bench.find('push button', '^Pass 1: held by hand; let go$'))

# The router table: its motor is below, so deeper is up on screen.
bench.choose('^Machine$', '^Router table$')
tap.ok(bench.has('label', 'motor below'), 'the router table is taken')
mark = bench.mark('Pass 1')
bench.click(mark)
start = bench.value(mark)
y = bench.centre(mark)[1]
at = after(start + 0.1, 'on the table up is deeper', 'Up')
at = after(at - 0.1, 'and down is shallower', 'Down')
at = after(at + 0.1, 'while plus still deepens', 'plus')
at = after(at - 1, 'and Page down, pointing down, raises the pass by 1 mm', 'Next')
tap.ok(bench.centre(bench.mark('Pass 1'))[1] > y, 'the mark went down on screen', lambda: bench.centre(bench.mark('Pass 1')))

tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
