#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Where there is nothing yet, it is said what to do: a part without cuts, a cut without a bit, an empty drawer, empty lists, a search
that finds nothing. Following what is said gets there."""
import sys
import pathlib
import shutil
import tempfile

from gui import Bench, Tap, wait_for, xdotool

KEYS = {'bits': 'ctrl+shift+b', 'boards': 'ctrl+shift+d', 'machines': 'ctrl+shift+m'}
TITLES = {'bits': 'Bit drawer', 'boards': 'Boards', 'machines': 'Machines'}
EMPTY = {'bits': r'^The drawer is empty\. Add ', 'boards': r'^There is no board yet\. Add ', 'machines': r'^There is no machine yet\. Add '}

tap = Tap()
home = pathlib.Path(tempfile.mkdtemp(prefix='spelch-empty-'))
data = home / 'data' / 'spelch'
data.mkdir(parents=True)
for kind in KEYS:
    (data / f'{kind}.json').write_text(f'{{"format_version": 1, "{kind}": []}}')

bench = Bench(home=home)
main = bench.window


def says(pattern, what):
    return tap.ok(bench.has('label', pattern), what, lambda: bench.names('label'))


# A part without cuts.
bench.keys('ctrl+shift+n')
says(r'^Nothing is cut from this board yet\.$', 'a part without cuts says so')
says(r'add what is to be cut\.$', 'and what to do')
says(r'^No cuts yet\. Add one below\.$', 'so does the list of cuts')
says(r'^Edges, speed, feed and holding are told here as soon as ', 'and the column for the plan')
tap.ok(not bench.all('label', 'face (clean|torn)') and not bench.all('push button', '^Face '), 'no verdict is left of another part',
       lambda: bench.names('label'))
bench.picture('empty-part')

# A cut, and no bit anywhere.
bench.choose('^Add the first cut$', '^Dado or groove$')
bench.keys('Escape')
says(r'^There is no bit to cut this with\.$', 'a cut without any bit says so')
tap.ok(bench.lacks('label', '^No cuts yet'), 'the list has the cut')
bench.picture('empty-drawer')
bench.find('push button', '^Open the Bit drawer$').queryAction().doAction(0)
bench.window = wait_for(lambda: bench.frame('Bit drawer'))
says(EMPTY['bits'], 'the empty drawer says what to do')
bench.click(bench.find('push button', '^Add$'))
tap.ok(bench.lacks('label', EMPTY['bits']), 'with a bit in it, it doesn\'t')
bench.keys('ctrl+w')
bench.window = main
tap.ok(bench.lacks('label', '^There is no bit'), 'and the cut is drawn with it')
says(r'^None is chosen yet; the best one is drawn\. Click one to take it\.$', 'as a suggestion')
bench.click(bench.find('push button', ', cuts .* deep'))
tap.ok(bench.lacks('label', '^None is chosen yet'), 'until one is taken')

# The other lists.
for kind in ('boards', 'machines'):
    bench.window = main
    bench.keys(KEYS[kind])
    bench.window = wait_for(lambda: bench.frame(TITLES[kind]))
    says(EMPTY[kind], f'{kind}: the empty list says what to do')
    bench.keys('ctrl+w')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.crash()
shutil.rmtree(home, ignore_errors=True)

# A search that finds nothing.
bench = Bench()
main = bench.window
for kind in KEYS:
    bench.window = main
    bench.keys(KEYS[kind])
    bench.window = wait_for(lambda: bench.frame(TITLES[kind]))
    bench.find('list item')
    bench.keys('ctrl+f')
    xdotool('type', '--delay', '15', '--', 'no such thing')
    says(r'^Nothing here matches “no such thing”\. .*\.$', f'{kind}: a search that finds nothing says so, and what to do')
    bench.picture(f'empty-search-{kind}')
    bench.keys('ctrl+a', 'Delete')
    tap.ok(bench.lacks('label', '^Nothing here matches'), f'{kind}: emptying it brings all back')
    bench.keys('ctrl+w')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
