#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The first run: three hints, each of which goes when it was followed, then the way to one's own board; put away, brought back,
and remembered. New parts begin as preferred, and only those."""
import pathlib
import shutil
import sys
import tempfile

from gui import Bench, Tap, wait_for

PULL = r'^Pull the bit up to 6 mm and watch the show face$'
PUSH = r'^Now push it back until it is clean$'
TURN = r'^Turn the board over$'
OWN = r'^Your own board…$'
NEARLY = 9.0  # pixels for a millimetre, rather too few
ANY = r'^(\d of 3|Pull the bit|Now push it|Turn the board)'

tap = Tap()
home = pathlib.Path(tempfile.mkdtemp(prefix='spelch-first-'))
kept = home / 'config' / 'spelch' / 'preferences.ini'


def hints_kept():
    lines = kept.read_text().splitlines() if kept.exists() else []
    return next((int(line.split('=')[1]) for line in lines if line.startswith('hints-done=')), 0)


def hint(pattern, what):
    return tap.ok(bench.has('label', pattern), what, lambda: bench.names('label'))


def drag_to(depth):
    """Drags the first pass's mark, and looks again: what is left by another drag."""
    mark = bench.mark('Pass 1')
    for _ in range(8):
        left = depth - bench.value(mark)
        if abs(left) < 0.15:
            return
        bench.drag(mark, 0, round(left * NEARLY))


# One after the other.
bench = Bench(home=home)
hint(PULL, 'the first run says what to do first')
tap.ok(bench.has('label', '^1 of 3$'), 'of how many')
tap.ok(not bench.all('push button', OWN), 'and not yet where the own board goes')
tap.ok(bench.verdict('motor').startswith('clean'), 'while the show face is clean', lambda: bench.verdict('motor'))
bench.picture('first-pull')
drag_to(7.5)
tap.ok(bench.all('label', PULL), 'pulled half-way it stays', lambda: bench.names('label'))
drag_to(5.9)
hint(PUSH, 'pulled to 6 mm, the next one follows')
tap.ok('torn' in bench.verdict('motor'), 'with the show face torn', lambda: bench.verdict('motor'))
tap.ok(not bench.all('label', PULL), 'and the first is gone')
tap.ok(wait_for(lambda: hints_kept() == 1), 'which is remembered', hints_kept)
bench.picture('first-push')
bench.end()

# The next start goes on where it was left; each hint can be followed by keys.
bench = Bench(home=home)
tap.ok(bench.has('label', '^(Now|Turn)'), 'the next start goes on', lambda: bench.names('label'))
for _ in range(3):
    if not bench.all('label', PUSH):
        break
    bench.click(bench.mark('Pass 1'))
    bench.keys('Page_Down')
hint(TURN, 'clean again, the board is to be turned over')
bench.picture('first-turn')
bench.find('push button', '^Turn over$').queryAction().doAction(0)
tap.ok(bench.lacks('label', ANY), 'turned over, the line goes', lambda: bench.names('label'))
tap.ok(bench.has('push button', OWN), "and beside the board's name stands the way to one's own")
bench.picture('first-own-board')
board, own = bench.box(bench.find('push button', '^Board$')), bench.box(bench.find('push button', OWN))
tap.ok(abs(own.y + own.height / 2 - board.y - board.height / 2) < 12 and 0 <= own.x - board.x - board.width < 60, 'right there', (board, own))
bench.find('push button', OWN).queryAction().doAction(0)
tap.ok(bench.has('frame', '^Boards$'), 'which opens the boards', lambda: bench.names('frame'))
tap.ok(bench.lacks('push button', OWN), 'and isn\'t needed any more')
tap.ok(wait_for(lambda: hints_kept() == 4), 'for good', hints_kept)
bench.end()

# Gone at the next start; brought back; put away.
bench = Bench(home=home)
bench.mark('Pass 1')
tap.ok(not bench.all('label', ANY) and not bench.all('push button', OWN), 'they don\'t come again by themselves')
bench.keys('ctrl+shift+n')
tap.ok(bench.has('label', '^Nothing is cut'), 'a new part')
bench.take('^Help$', 'first hints')
hint(PULL, 'the menu brings them back, with the demo part')
tap.same(len([name for name in bench.names('frame') if name]), 1, 'in a window where nothing was to be lost')
bench.picture('first-again')
bench.keys('ctrl+shift+n')
tap.ok(bench.lacks('label', ANY), 'they are about the demo part only')
bench.take('^Help$', 'first hints')
bench.click(bench.find('push button', '^Put away$'))
tap.ok(bench.lacks('label', ANY), 'they can be put away')
tap.ok(not bench.all('push button', OWN), 'all of them')
tap.ok(wait_for(lambda: hints_kept() == 4), 'for good', hints_kept)
bench.click(bench.mark('Pass 1'))
bench.keys('Down')
bench.take('^Help$', 'first hints')
tap.ok(wait_for(lambda: len([name for name in bench.names('frame') if name]) == 2), 'with work in the window, they take another',
       lambda: bench.names('frame'))
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.crash()
shutil.rmtree(home / 'state', ignore_errors=True)

# New parts, and only those, begin as preferred.
kept.write_text('[window]\nunit=in\n[new-parts]\naccepted-seen=2\naccepted-hidden=4\ndepth-tolerance-mm=0.25\n'
                'up-shear-tolerance-mm=0.6\n[first-run]\nhints-done=4\n')


def entry(name):
    return bench.text(bench.find('text', f'^{name}$'))


def part_form():
    bench.find('push button', '^The part…$').queryAction().doAction(0)
    bench.settle()


bench = Bench(home=home)
part_form()
tap.same(entry('Setting a depth'), '0.1', 'the part that is open keeps its own tolerances')
bench.keys('Escape', 'ctrl+shift+n')
tap.ok(bench.has('label', '^Nothing is cut'), 'a new part')
part_form()
tap.ok(wait_for(lambda: entry('Setting a depth') == '0.25'), 'takes the preferred tolerance of depths', lambda: entry('Setting a depth'))
tap.same(entry('Up-shear as marked'), '0.6', 'and of marks')
tap.ok(bench.has('label', '^2, ') and bench.has('label', '^4, '), 'and the preferred grades', lambda: bench.names('label'))
bench.picture('first-new-part')
bench.keys('Escape')
bench.choose('^Add the first cut$', '^Slot$')
tap.ok(wait_for(lambda: entry('Width') == '3/8 in'), 'and a cut of sizes that are whole in inches', lambda: entry('Width'))
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
shutil.rmtree(home, ignore_errors=True)
sys.exit(tap.done())
