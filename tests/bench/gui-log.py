#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The shop log and wear: what came out is recorded from the bench, with bad input kept; entries are filtered, changed, deleted,
undone and redone; what the log teaches changes the verdict and can be switched off; a cut that is done wears its bit, in the
part and in the drawer; a bit is sharpened."""
import json
import re
import sys

from gui import Bench, Tap, wait_for, xdotool

tap = Tap()
bench = Bench()
main = bench.window
DATA = bench.home / 'data' / 'spelch'
COMPRESSION = 'Compression 6.35 mm'
bench.only_window = True


def open_by(key, title):
    """A key is lost while no window has the focus, which a window that closes gives back when it likes."""
    def opened():
        bench.keys(key)
        return wait_for(lambda: any(f is not None and f.name == title for f in bench.frames()), 1)
    wait_for(opened)
    bench.turn_to(title)


def press(name):
    """By the action: it may stand below what is scrolled into view."""
    button = wait_for(lambda: next((n for n in bench.walk() if n.seen_role == 'push button' and re.search(name, n.seen)), None))
    button.queryAction().doAction(0)
    bench.settle()


def choose(name, steps):
    """Takes the choice that stands `steps` below the one that is taken."""
    bench.click(bench.find('combo box', f'^{name}$'))
    bench.keys(*['Down' if steps > 0 else 'Up'] * abs(steps), 'Return')


def kept(kind):
    path = DATA / f'{kind}.json'
    return json.loads(path.read_text())[kind] if path.exists() else []


def entries():
    return kept('log')


def motor_verdict():
    bench.window = main
    return bench.verdict('motor')


def verdict_becomes(words):
    return wait_for(lambda: motor_verdict() == words, 5)


def record(motor=0, far=0, typed=()):
    """Records how both sides came out, by steps from "Not looked at"."""
    bench.window = main
    press('^Record what came out')
    bench.turn_to('Record what came out')
    for field, text in typed:
        bench.type_into(bench.find('text', f'^{field}$'), text, 'Return')
    if motor:
        choose('Motor side came out', motor)
    if far:
        choose('Far side came out', far)
    press('^Write it down$')


# ---- Recording from the bench ----

tap.same(motor_verdict(), 'clean', 'the demo is clean before anything is learnt')
press('^Record what came out')
bench.turn_to('Record what came out')
tap.ok(bench.has('label', f'^Outline: {COMPRESSION}.* in Birch plywood 18 mm$'), 'the record names cut, bit and board',
       lambda: bench.names('label'))
tap.ok(bench.has('label', r'^Passes 9\.2 mm, then 18\.3 mm; .* rpm, .*/min; model \d'), 'depths, speed, feed and the model are filled in')
tap.ok(bench.has('label', '^Show face, motor side: clean reckoned'), 'so is what was reckoned')
press('^Write it down$')
tap.ok(bench.has('label', '^Say of at least one edge'), 'nothing said, nothing written')
choose('Motor side came out', 5)
bench.type_into(bench.find('text', '^Day$'), '31.5.2026', 'Return')
tap.ok(bench.has('label', '31.5.2026.* isn.t a day; write it as'), 'a wrong day is told beside its field', lambda: bench.names('label'))
tap.same(bench.text(bench.find('text', '^Day$')), '31.5.2026', 'what was typed stays')
press('^Write it down$')
tap.ok(bench.has('label', '^Correct what is marked above first'), 'with a fault left nothing is written')
tap.same(entries(), [], 'the log is still empty')
bench.picture('log-record')
bench.type_into(bench.find('text', '^Day$'), '2026-05-30', 'Return')
bench.type_into(bench.find('text', '^Note$'), 'at the corner', 'Return')
press('^Write it down$')
tap.ok(wait_for(lambda: len(entries()) == 1, 5), 'one edge was looked at, one entry is kept', entries)
first = (entries() or [{}])[0]
wanted = {'date': '2026-05-30', 'board': 'birch-ply-18', 'bit': 'compression-6.35x22', 'kind': 'outline', 'piece': 'test-strip', 'face': 'a',
          'way_up': 'a', 'predicted_grade': 1, 'grade': 4, 'note': 'at the corner'}
tap.same({k: first.get(k) for k in wanted}, wanted, 'it holds what was cut, what was reckoned and what came out')
tap.ok(all(first.get(k) for k in ('passes', 'speed_rpm', 'feed_mm_min', 'model_version', 'revision', 'machine')), 'and what it was cut with',
       lambda: first)
tap.same(motor_verdict(), 'clean', 'one result corrects nothing')


def told(words):
    return bench.has('label', '^• .*' + words, 5)


bench.click(bench.find('label', '^Show face, motor side$'))
tap.ok(told('Your log on this edge so far: 1 worse than reckoned. That is 1 of the 2 entries'), 'but the why of the edge tells of it',
       lambda: bench.names('label'))
bench.click(bench.find('label', '^Show face, motor side$'))
record(motor=5, far=1, typed=[('Day', '2026-05-31')])
tap.ok(wait_for(lambda: len(entries()) == 3, 5), 'both edges looked at make two entries', entries)
tap.ok(verdict_becomes('nearly clean'), 'two that agree change the verdict on the bench', motor_verdict)
tap.ok(bench.has('push button', '^Undo go by the log for “' + COMPRESSION), 'as a step of its own', lambda: bench.names('push button'))

bench.window = main
press('^Your log corrects the edges$')
tap.ok(told('Your log: how the edges of 2 cuts came out'), 'the setting says that the log corrects it, which opens the reasons',
       lambda: bench.names('label'))
bench.picture('log-corrects')
bench.keys('Escape')

# ---- The log page ----

open_by('ctrl+shift+l', 'Shop log')
tap.ok(wait_for(lambda: len(bench.all('list item', 'Birch plywood 18 mm')) == 3), 'the log lists its entries by the names of board and bit',
       lambda: bench.names('list item'))


def top_first():
    return [node.name for node in sorted(bench.all('list item', 'Birch plywood'), key=lambda node: bench.box(node).y)]


tap.ok(wait_for(lambda: ['2026-05-31' in name for name in top_first()] == [True, True, False], 5), 'newest first', top_first)
tap.ok(bench.has('label', '^The motor side came out worse than reckoned in 2 of 2 cuts, so it is graded a point worse'),
       'it says what it teaches', lambda: bench.names('label'))
tap.ok(bench.has('label', '^The far side came out as reckoned in 1 cut'), 'of either side')
tap.ok(bench.has('label', '^The part “.*” goes by it'), 'and that the part goes by it')
bench.picture('log-page')

bench.click(bench.find('check box', '^The part on the bench goes by the log$'))
tap.ok(verdict_becomes('clean'), 'switched off, the verdict is as before', motor_verdict)
bench.turn_to('Shop log')
bench.click(bench.find('check box', '^The part on the bench goes by the log$'))
tap.ok(verdict_becomes('nearly clean'), 'switched on, it is corrected again', motor_verdict)
tap.ok(bench.has('push button', '^Undo go by the log'), "the switch is a step of the part's history", lambda: bench.names('push button'))
press('^Undo go by the log')
tap.ok(verdict_becomes('clean'), 'undone, it is off again', motor_verdict)
press('^Redo go by the log')
tap.ok(verdict_becomes('nearly clean'), 'done again, it is on', motor_verdict)

bench.turn_to('Shop log')
bench.click(bench.find('list item', '2026-05-30'))
bench.type_into(bench.find('text', '^Day$'), 'last week', 'Return')
tap.ok(bench.has('label', 'last week.* isn.t a day; write it as', 5), 'an entry: what is wrong is said beside the field', lambda: bench.names('label'))
tap.same(bench.text(bench.find('text', '^Day$')), 'last week', 'an entry: what was typed stays')
tap.ok('2026-05-30' in [e['date'] for e in entries()], 'an entry: and is not kept')
bench.type_into(bench.find('text', '^Day$'), '2026-05-29', 'Return')
tap.ok(wait_for(lambda: '2026-05-29' in [e['date'] for e in entries()], 5), 'an entry: corrected, it is kept')
choose('The edge came out', -4)
tap.ok(wait_for(lambda: [e.get('as_predicted') for e in entries() if e['date'] == '2026-05-29'] == [True], 5),
       'an entry: another result is kept', entries)
tap.ok(bench.has('label', '^The motor side so far: 1 worse than reckoned, 1 as reckoned'), 'then the log teaches nothing',
       lambda: bench.names('label'))
tap.ok(bench.has('label', 'goes by what the log said earlier'), 'and says that the part goes by what it said earlier')
press('^Go by the log as it is now$')
tap.ok(verdict_becomes('clean'), 'the part follows when it is told to', motor_verdict)
bench.turn_to('Shop log')
press('^Undo change')
tap.ok(wait_for(lambda: [e.get('grade') for e in entries() if e['date'] == '2026-05-29'] == [4], 5), 'the change is undone', entries)

# ---- A blank entry, filters, deleting ----

press('^Add$')
tap.ok(wait_for(lambda: len(entries()) == 4, 5), 'a blank entry is added')
choose('Bit', 1)
tap.ok(wait_for(lambda: len({e['bit'] for e in entries()}) == 2, 5), 'it may be about another bit', entries)


def stands_first(name):
    """What is filtered out keeps its size, so look at what has taken its place."""
    filters, row = bench.box(bench.find('combo box', '^Bits shown$')), bench.box(bench.find('list item', name))
    return row.y - filters.y - filters.height < 40


tap.ok(wait_for(lambda: stands_first('Compression 12.7 mm'), 5), 'the newest stands first')


def offers(words):
    """What the open list of results has, by its place."""
    return wait_for(lambda: words in bench.names('label'), 5)


bench.click(bench.find('combo box', '^The edge came out$'))
tap.ok(offers('Torn grain'), 'what came out is called as it is in plywood', lambda: bench.names('label'))
bench.keys('Escape')
for step in range(40):
    before = [e['board'] for e in entries()]
    if 'mdf-18' in before:
        break
    choose('Board', 1)
    wait_for(lambda: [e['board'] for e in entries()] != before, 5)
tap.ok(wait_for(lambda: 'mdf-18' in [e['board'] for e in entries()], 5), 'the entry may be about another board', entries)
xdotool('mousemove', *bench.centre(bench.find('label', '^Bit$')), 'click', '--repeat', 20, 4)  # turns the form back to its top
bench.settle()
bench.click(bench.find('combo box', '^The edge came out$'))
tap.ok(offers('Very fuzzy') and 'Torn grain' not in bench.names('label') and 'Torn, or chipped' not in bench.names('label'),
       'MDF has no grain to tear', lambda: bench.names('label'))
bench.picture('log-mdf')
bench.keys('Down', 'Down', 'Down', 'Down', 'Return')
tap.ok(wait_for(lambda: [e.get('grade') for e in entries() if e['board'] == 'mdf-18'] == [4], 5), 'which is kept as the grade it is', entries)
tap.ok(bench.has('list item', 'MDF.*Motor side: very fuzzy, clean reckoned'), 'and told in its words', lambda: bench.names('list item'))
choose('Bits shown', 1)
tap.ok(wait_for(lambda: stands_first('2026-05-31.*Far side'), 5), 'the list is narrowed down to one bit', top_first)
choose('Bits shown', -1)
tap.ok(wait_for(lambda: not stands_first('2026-05-31.*Far side'), 5), 'and shows all again', top_first)
bench.keys('ctrl+f')
xdotool('type', '--delay', '15', 'far side')
tap.ok(wait_for(lambda: stands_first('2026-05-31.*Far side'), 5), 'searching leaves what matches', top_first)
bench.keys('ctrl+a', 'Delete')
tap.ok(wait_for(lambda: not stands_first('2026-05-31.*Far side'), 5), 'and brings the rest back', top_first)
press('^Delete$')
tap.ok(wait_for(lambda: len(entries()) == 3, 5), 'an entry is deleted')
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: len(entries()) == 4, 5), 'undo brings it back')
bench.keys('ctrl+shift+z')
tap.ok(wait_for(lambda: len(entries()) == 3, 5), 'redo deletes it again')

# ---- Wear ----


def drawer_metres():
    bit = next((b for b in kept('bits') if b['id'] == 'compression-6.35x22'), {})
    return bit.get('metres_cut', 0)


bench.window = main
press('^Done: add')
tap.ok(wait_for(lambda: drawer_metres() > 0, 5), 'a cut is done')
before = drawer_metres()
done = wait_for(lambda: next((n for n in bench.walk() if re.match(r'Done: add [\d.]+ m of wear', n.seen)), None))
way = float(re.search(r'add ([\d.]+) m', done.name)[1])
tap.ok(way > 0, 'the bench says how far the cut goes', done.name)
press('^Done: add')
tap.ok(wait_for(lambda: abs(drawer_metres() - before - way) < 0.06, 5), 'a cut that is done wears the bit in the drawer', drawer_metres)
worn = drawer_metres()
bench.keys('Escape')
press(r'^Undo [\d.]+ m cut with')
tap.ok(wait_for(lambda: abs(drawer_metres() - before) < 1e-6, 5), 'undone, the drawer takes it back', drawer_metres)
press(r'^Redo [\d.]+ m cut with')
tap.ok(wait_for(lambda: abs(drawer_metres() - worn) < 1e-6, 5), 'done again, it is worn again', drawer_metres)

# The drawer's own window may take it back first; the bench then doesn't take it twice.
bench.window = main
open_by('ctrl+shift+b', 'Bit drawer')
press('^Undo .* cut with')
tap.ok(wait_for(lambda: abs(drawer_metres() - before) < 1e-6, 5), "the drawer's own undo takes it back too", drawer_metres)
bench.window = main
press(r'^Undo [\d.]+ m cut with')
tap.ok(bench.has('push button', r'^Redo [\d.]+ m cut with'), 'the part takes it back as well')
tap.near(drawer_metres(), before, 1e-6, 'undone in both windows it is taken back once')
press('^Done: add')
tap.ok(wait_for(lambda: abs(drawer_metres() - worn) < 1e-6, 5), 'and done anew it is there once', drawer_metres)

# ---- Sharpening ----

bench.turn_to('Bit drawer')
bench.click(bench.find('list item', '^' + COMPRESSION))
tap.ok(wait_for(lambda: any(re.match(r'It has cut [\d.]+ m since it was new\.', n.seen) for n in bench.walk()), 5),
       'the drawer says what the edge has cut', lambda: bench.names('label'))
press('^Sharpened…$')
day = bench.find('text', '^On the day$')
bench.type_into(day, 'today', 'Return')
tap.ok(bench.has('label', 'today.* isn.t a day; write it as', 5), 'a wrong day is told', lambda: bench.names('label'))
press('^Begin the new edge$')
tap.ok(drawer_metres() > 0, 'and nothing is begun')
bench.type_into(bench.find('text', '^On the day$'), '2026-06-01', 'Return')
bench.picture('bit-life')
press('^Begin the new edge$')
tap.ok(wait_for(lambda: drawer_metres() == 0, 5), 'its metres begin anew')
bit = next(b for b in kept('bits') if b['id'] == 'compression-6.35x22')
tap.same((bit.get('sharpened'), [(r['date'], r['kind']) for r in bit.get('renewals', [])]), ('2026-06-01', [('2026-06-01', 'sharpened')]),
         'the earlier edge is remembered')
tap.near(bit['renewals'][0]['metres_cut'], worn, 1e-6, 'with what it cut')
tap.ok(bench.has(None, 'since it was sharpened on 2026-06-01'), 'the drawer says since when')
tap.ok(verdict_becomes('clean'), 'sharpening ends what the log taught of the old edge', motor_verdict)
bench.turn_to('Shop log')
tap.ok(bench.has('label', '^The motor side: what was written down came before the edge was sharpened'), 'the log says why',
       lambda: bench.names('label'))
bench.turn_to('Bit drawer')
press('^Undo sharpening')
tap.ok(wait_for(lambda: abs(drawer_metres() - worn) < 1e-6, 5), 'undone, the old edge is back')

press('^Replaced…$')
tap.ok(bench.has('text', '^On the day$'), 'a bit may be replaced too')
bench.type_into(bench.find('text', '^On the day$'), '2026-06-02', 'Return')
press('^Begin the new edge$')
tap.ok(wait_for(lambda: [b.get('renewals', [{}])[-1].get('kind') for b in kept('bits') if b['id'] == 'compression-6.35x22'] == ['replaced'], 5),
       'which is remembered as such')
tap.ok(bench.has(None, 'since it was replaced on 2026-06-02'), 'the drawer says so')

tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
