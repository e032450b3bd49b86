#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Depths typed into the fields beside the drawing: any unit, both decimal signs, nothing typed is lost, complaints in sentences."""
import sys

from gui import Bench, Tap, wait_for

tap = Tap()
bench = Bench()
field = bench.entry('Pass 1')
start = bench.value(field)


def typed(text, mm, what, shown=None):
    bench.type_into(bench.entry('Pass 1'), text, 'Return')
    wait_for(lambda: abs(bench.value(bench.entry('Pass 1')) - mm) < 1e-6, 2)
    tap.near(lambda: bench.value(bench.entry('Pass 1')), mm, 1e-6, what)
    tap.near(lambda: bench.value(bench.mark('Pass 1')), mm, 1e-6, f'{what}: the mark stands there')
    tap.same(bench.text(bench.entry('Pass 1')), shown or text, f'{what}: shown as typed')


typed('9.2 mm', 9.2, 'a point and a unit')
typed('8,6 mm', 8.6, 'a comma is a decimal sign too')
typed('9,1', 9.1, 'a bare decimal takes the unit shown', '9,1')
typed('9.3', 9.3, 'with a point as well', '9.3')
typed('3/8 in', 9.525, 'inches as a fraction')
typed('23/64"', 23 / 64 * 25.4, 'with an inch sign')
typed('0.9 cm', 9.0, 'centimetres')
tap.ok('9.0 mm' in bench.mark('Pass 1').name, "the mark's own words are in the unit shown", lambda: bench.mark('Pass 1').name)

# While typing: what it reads as.
bench.type_into(bench.entry('Pass 1'), '5/8')
tap.ok(bench.has('status bar', '^= 15.875 mm$'), 'while typing, what it reads as stands beside it')
tap.near(lambda: bench.value(bench.mark('Pass 1')), 9.0, 1e-6, 'and nothing is taken yet')
bench.keys('Escape')
tap.same(bench.text(bench.entry('Pass 1')), '0.9 cm', 'Escape brings back what stood there')


def refused(text, complaint, what):
    bench.type_into(bench.entry('Pass 1'), text, 'Return')
    tap.ok(bench.has(None, complaint, 3), f'{what}: a sentence says what is wrong', lambda: bench.names('status bar'))
    tap.same(bench.text(bench.entry('Pass 1')), text, f'{what}: what was typed stays')
    tap.near(lambda: bench.value(bench.mark('Pass 1')), 9.0, 1e-6, f'{what}: nothing moved')
    bench.keys('Tab')
    tap.same(bench.text(bench.entry('Pass 1')), text, f'{what}: it stays when the field is left')
    bench.click(bench.entry('Pass 1'))
    bench.keys('Escape')


refused('1.234,5', r'\w.*\.$', 'both decimal signs')
refused('nine', r'\w.*\.$', 'not a number')
refused('9 ells', r'\w.*\.$', 'a unit nobody reads')
refused('40 mm', r'^Stops here: ', 'beyond a limit')
refused('-3 mm', r'^Stops here: ', 'a negative depth')

# Arrow keys in the field.
bench.click(bench.entry('Pass 1'))
bench.keys('Up')
tap.near(lambda: bench.value(bench.mark('Pass 1')), 9.1, 1e-6, 'the up key in a field adds a step')

# Leaving a field takes what was typed.
bench.type_into(bench.entry('Pass 1'), '8.8 mm', 'Tab')
tap.ok(wait_for(lambda: abs(bench.value(bench.mark('Pass 1')) - 8.8) < 1e-6, 3), 'leaving the field takes it',
       lambda: bench.value(bench.mark('Pass 1')))
tap.ok(bench.has('push button', '^Pass 1: held by hand; let go$'), 'a pin shows that it is held')
bench.click(bench.find('push button', '^Pass 1: held by hand; let go$'))
tap.ok(wait_for(lambda: abs(bench.value(bench.mark('Pass 1')) - start) < 1e-6, 3), 'the pin lets it follow the recommendation',
       lambda: bench.value(bench.mark('Pass 1')))

# A finishing allowance brings a mark of its own; pins in the right-hand column let go as well.
bench.type_into(bench.entry('Allowance'), '0.5 mm', 'Return')
tap.ok(bench.has('slider', '^Allowance, 0.5 mm'), 'an allowance has a mark')
dragged, gives_way = bench.mark('Pass 1'), bench.mark('Allowance')
begun, way = bench.box(dragged).y, bench.box(gives_way).y - bench.box(dragged).y
bench.press(dragged)
bench.glide(0, way)
tap.near(lambda: bench.box(dragged).y, begun + way, 2, 'a mark dragged to where another stands keeps under the pointer')
tap.ok(wait_for(lambda: abs(bench.box(gives_way).y - bench.box(dragged).y) >= bench.box(dragged).height),
       'and the other gives way')
bench.keys('Escape')
bench.release()
tap.ok(bench.has('push button', '^Passes: held by hand; let go$'), 'the passes are marked as held')
bench.click(bench.find('push button', '^Passes: held by hand; let go$'))
tap.ok(bench.lacks('slider', '^Allowance'), 'letting go takes it away')

tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
