#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A part from nothing: a new part on a board of one's own, laid from a make-up; three cuts of different kinds, bits taken from the
ranking, saved and opened again. What the window says then is what `spelch plan --json` says. Fifty edits undone and done again
give the same file, byte for byte."""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

from gui import Bench, Tap, wait_for, xdotool

tap = Tap()
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-cuts-'))
file = folder / 'own.spelch'
IS_BIT = re.compile(r', cuts [0-9./ ]+ (mm|in) deep')


def field(name):
    return bench.find('text', f'^{name}$')


def begun():
    """The form is there, with its first field ready to be typed into."""
    return wait_for(lambda: bench.focused(bench.all('text', '^Name$')))


def enter(name, text):
    """Types into a field of the form that is shown, wherever it has scrolled to: by keys only."""
    node = field(name)
    for _ in range(80):
        if bench.focused([node]):
            break
        bench.keys('Tab')
    xdotool('key', 'ctrl+a')
    xdotool('type', '--delay', '10', '--', text)
    bench.keys('Return')
    tap.ok(wait_for(lambda: bench.text(node) == text), f'“{name}” takes {text}', lambda: bench.text(node))


def in_use():
    return [tile.seen.split(', in use')[0] for tile in bench.all('push button', 'in use for this cut')]


def number(words):
    """In "23 000 rpm"."""
    return float(re.sub(r'[^0-9.]', '', words))


def told():
    """The numbers in the window that `spelch plan` gives too, looked up all at once."""
    shown = [node for node in bench.all() if node.seen_role in ('label', 'text')]
    labels = [node.seen for node in shown if node.seen_role == 'label']

    def figure(name):
        """As a label, or in a field where it can be set."""
        label = next((label for label in labels if label.startswith(name + ': ')), None)
        fields = (node for node in shown if node.seen_role == 'text' and node.seen == name)
        return label.split(': ', 1)[1] if label else bench.text(next(fields))

    def verdict(side):
        return next(label for label in labels if f', {side} side: ' in label).split(': ')[1]

    return {
        'rpm': number(figure('Spindle')),
        'feed': number(figure('Feed')),
        'chip': number(figure('Largest chip')),
        'passes': [float(depth) for depth in re.findall(r'[0-9.]+(?= mm)', figure('Passes'))],
        'entry': figure('Entry'),
        'seconds': sum(float(n) * {'h': 3600, 'min': 60, 's': 1}[unit]
                       for n, unit in re.findall(r'([0-9.]+)\s(h|min|s)\b', figure('Cutting time'))),
        'motor': verdict('motor'),
        'far': verdict('far'),
        'bit': in_use(),
    }


def word(plan, side):
    """Of the edges of a side, the worst as the window calls it."""
    edges = [edge for edge in plan['edges'] if edge['side'] == side and edge['grade']]
    return max(edges, key=lambda edge: edge['grade'])['word'] if edges else 'not cut'


def agree(name, window, plan):
    tap.near(window['rpm'], plan['speed_rpm'], 0.5, f'{name}: spindle speed as planned')
    tap.near(window['feed'], plan['feed_mm_min'], 0.5, f'{name}: feed as planned')
    tap.near(window['chip'], plan['chip_max_mm'], 0.0051, f'{name}: largest chip as planned')
    depths = [entry['tip_mm'] for entry in plan['passes']]
    tap.ok(len(window['passes']) == len(depths) and all(abs(a - b) < 0.051 for a, b in zip(window['passes'], depths)),
           f'{name}: passes as planned', (window['passes'], depths))
    tap.near(window['seconds'], plan['time_s'], 0.51 if plan['time_s'] < 60 else 30, f'{name}: time as planned')
    tap.same(window['motor'], word(plan, 'motor'), f'{name}: the motor-side edge as planned')
    tap.same(window['far'], word(plan, 'far'), f'{name}: the far edge as planned')


def plans():
    answer = subprocess.run([os.environ['SPELCH_COMMAND'], 'plan', '--json', str(file)], capture_output=True, text=True, check=False)
    tap.ok(answer.returncode in (0, 1), 'the command plans the file', answer.stderr)
    return {plan['cut']: plan for plan in json.loads(answer.stdout)['cuts']}


def show(name):
    """The cut whose name begins so."""
    bench.click(bench.find('list item', f'^{name}'))


def park():
    """Where the pointer tries no bit."""
    xdotool('mousemove', *bench.centre(bench.find('push button', '^The part…$')))
    bench.settle()


def take_best(name):
    """Accepts the bit that the ranking puts first."""
    tiles = bench.all('push button', IS_BIT)
    best = next(tile for tile in tiles if tile.seen.endswith(', best'))
    wanted = best.seen[:-len(', best')]
    bench.click(bench.entry('Allowance'))
    for _ in range(60):
        here = bench.focused(tiles)
        if here == best:
            break
        bench.keys('Right' if here else 'Tab')
    bench.keys('Return')
    park()
    tap.ok(wait_for(lambda: in_use() == [wanted]), f'{name}: the best bit is taken', lambda: (wanted, in_use()))
    return wanted


# A board of one's own, from a make-up.
bench = Bench(home=folder)
main = bench.window
bench.keys('ctrl+shift+n')
tap.ok(bench.has('label', '^Nothing is cut from this board yet'), 'a new part has no cuts, and says so')
tap.ok(bench.lacks('push button', '^(Done|Record)'), 'and nothing to be done with one')
bench.choose('^Board$', '^All boards')
bench.window = wait_for(lambda: bench.frame('Boards'))
wait_for(lambda: field('Name'))
xdotool('type', '--delay', '10', '--', 'z')
bench.settle()
tap.same(bench.text(field('Name')), 'Birch plywood 18 mm', 'the boards open at the one in use, and typing does not rename it')
bench.keys('ctrl+w')
wait_for(lambda: not bench.frame('Boards'))
bench.window = main
bench.choose('^Board$', '^Your own board')
bench.window = wait_for(lambda: bench.frame('Boards'))
tap.ok(wait_for(lambda: bench.text(field('Name')) == 'New board' and bench.focused([field('Name')])), 'a board of one\'s own begins as a new one')
xdotool('type', '--delay', '10', '--', 'Own ply')
bench.keys('Return')
bench.choose('^Make-up', '^Solid hardwood$')
bench.type_into(field('Species'), 'Bog Oak', 'Return')
tap.ok(bench.has('label', "^This wood isn't in the table of species.*as hardwood has it"), 'a wood that the table lacks is said to be unknown',
       lambda: bench.names('label'))
tap.same(bench.text(field('Species')), 'Bog Oak', 'and stays as it was typed')
bench.type_into(field('Species'), 'WHITE oak', 'Return')
tap.ok(wait_for(lambda: bench.text(field('Species')) == 'White oak'), 'a species is found as it is usually written', lambda: bench.text(field('Species')))
tap.ok(bench.lacks('label', "^This wood isn't in the table"), 'and nothing is said beside it')
bench.type_into(field('Sold as'), '15 mm', 'Return')
bench.choose('^Make-up', '^Birch plywood$')


def own_board():
    path = folder / 'data' / 'spelch' / 'boards.json'
    boards = json.loads(path.read_text())['boards'] if path.exists() else []
    return next((board for board in boards if board['name'] == 'Own ply'), None)


tap.ok(wait_for(lambda: own_board() and len(own_board()['layers']) == 11), 'a board of 15 mm is laid from a make-up', own_board)
bench.choose('^11 plies$', '^7 plies$')
tap.ok(wait_for(lambda: len(own_board()['layers']) == 7), 'and has as many plies as one tells', own_board)
tap.ok(bench.has('label', '^15 mm, 7 layers'), 'which its caption says', lambda: bench.names('label'))
bench.click(bench.find('push button', '^Use for the part$'))
bench.window = main
tap.ok(bench.has('label', '^Own ply, 15.0 mm thick'), 'the part is made from it at a press', lambda: bench.names('label'))
bench.keys('ctrl+shift+d')
bench.window = bench.frame('Boards')
bench.click(bench.find('push button', '^Use for the part$'))
tap.ok(bench.has('label', '^It is used already'), 'a second press says that it is', lambda: bench.names('label'))
bench.keys('ctrl+w')
tap.ok(wait_for(lambda: not bench.frame('Boards')), 'the boards are put away')
bench.window = main
bench.keys('ctrl+z')
tap.ok(bench.lacks('label', '^Own ply, 15.0 mm thick'), 'undo gives the board before back')
bench.choose('^Board$', '^Own ply$')
tap.ok(bench.has('label', '^Own ply, 15.0 mm thick'), 'the part takes it', lambda: bench.names('label'))

# Three cuts of different kinds.
bench.choose('^Add the first cut$', '^Dado or groove$')
begun()
enter('Name', 'Groove for the back')
enter('Depth', '6 mm')
enter('Width', '9 mm')
bench.click(bench.find('combo box', '^Width given by$'))
bench.keys('Down', 'Return')
tap.ok(wait_for(lambda: bench.text(field('Thickness of that part')) == '15 mm'), 'the part that goes in is of the same board to begin with',
       lambda: bench.names('text'))
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: bench.text(field('Width')) == '9 mm'), 'undone, the width is back', lambda: bench.names('text'))
bench.keys('Escape')
bits = [take_best('Groove for the back')]
bench.choose('^Add a cut$', '^Outline$')
begun()
enter('Name', 'Outline of the side')
enter('Way round it', '1.6 m')
bench.keys('Escape')
bits.append(take_best('Outline of the side'))
bench.choose('^Add a cut$', '^Mortise$')
begun()
enter('Name', 'Mortise for the rail')
enter('Width', '3/8 in')
enter('Inside corners', '6 mm')
bench.keys('Escape')
bits.append(take_best('Mortise for the rail'))
bench.picture('cuts-made')
before = {}
for cut in ('Groove for the back', 'Outline of the side', 'Mortise for the rail'):
    show(cut)
    park()
    before[cut] = told()

# Saved through the dialog, and opened again.
bench.keys('ctrl+s')
tap.ok(bench.has(None, '^Save the part$') or bench.has('push button', 'Save'), 'saving asks where to')
xdotool('key', 'ctrl+a')
xdotool('type', '--delay', '10', '--', str(file))
bench.picture('cuts-saving')
bench.keys('Return')
tap.ok(wait_for(file.exists), 'it is saved', lambda: list(folder.iterdir()))
tap.ok(bench.has('frame', '^New part – Spelch$'), 'and not unsaved any more', lambda: bench.names('frame'))
saved = json.loads(file.read_text())
tap.same([cut['kind'] for cut in saved['cuts']], ['dado', 'outline', 'mortise'], 'with its cuts')
tap.same(saved['cuts'][2]['width'], {'mm': 9.525, 'typed': '3/8 in'}, 'as they were typed')
bench.end()

bench = Bench(file, home=folder)
main = bench.window
tap.ok(bench.has('list item', '^Groove for the back'), 'it opens again')
ids = {cut['name']: cut['id'] for cut in saved['cuts']}
names = {bit['id']: bit['name'] for bit in saved['bits']}
planned = plans()
for cut, numbers in before.items():
    show(cut)
    park()
    plan = planned[ids[cut]]
    tap.ok(wait_for(lambda: told() == numbers), f'{cut}: says what it said before', lambda: (told(), numbers))
    agree(cut, numbers, plan)
    tap.ok(numbers['bit'][0].startswith(names[plan['bit']]), f'{cut}: with the bit of the plan', (numbers['bit'], names[plan['bit']]))
tap.ok(len({str(numbers) for numbers in before.values()}) == 3, 'no two cuts say the same', before)

undo = bench.find('push button', '^Undo')
redo = bench.find('push button', '^Redo')


def press(name):
    bench.find('push button', name).queryAction().doAction(0)
    bench.settle()


def nudge(n):
    thickness = bench.mark('Thickness').queryValue()
    thickness.currentValue = 15 + 0.1 * (1 + n % 5)


def move_first(n):
    bench.click(bench.all('list item')[0])
    bench.keys('alt+Down')


def rename(n):
    show('Outline of the side')
    bench.keys('F2')
    begun()
    xdotool('key', 'ctrl+a')
    xdotool('type', '--delay', '5', '--', f'Outline of the side {n}')
    bench.keys('Return', 'Escape')


def turn(n):
    show('Outline of the side')
    press('^Turn over$')


def choose(n):
    """Another bit, as the pointer takes it."""
    tiles = [tile for tile in bench.all('push button', IS_BIT) if 'in use' not in tile.seen]
    bench.click(next(tile for tile in tiles if 266 < bench.box(tile).x < 700))
    park()


EDITS = [turn, nudge, lambda n: press('^Duplicate$'), lambda n: press('^Face a, '), move_first, lambda n: press('^Delete$'), rename,
         choose]


# Fifty edits, undone and done again.
first = file.read_bytes()
tap.same(undo.name, 'Undo', 'nothing is to be undone yet')
for n in range(50):
    was = undo.name
    EDITS[n % len(EDITS)](n)
    wait_for(lambda: undo.name not in (was, 'Undo'), 3)
    if undo.name == was:
        print(f'# edit {n + 1} may have done nothing: {was}')
tap.ok(undo.name != 'Undo', 'fifty edits', undo.name)
bench.keys('ctrl+s')
tap.ok(wait_for(lambda: '•' not in main.name), 'are saved')
last = file.read_bytes()
tap.ok(last != first, 'and change the file')
undone = 0
while undo.name != 'Undo' and undone < 60:
    bench.keys('ctrl+z')
    undone += 1
tap.same(undone, 50, 'fifty steps undo them')
bench.keys('ctrl+s')
tap.ok(wait_for(lambda: '•' not in main.name) and file.read_bytes() == first, 'undone, the file is what it was, byte for byte')
done = 0
while redo.name != 'Redo' and done < 60:
    bench.keys('ctrl+shift+z')
    done += 1
tap.same(done, 50, 'fifty steps do them again')
bench.keys('ctrl+s')
tap.ok(wait_for(lambda: '•' not in main.name) and file.read_bytes() == last, 'then it is what it became, byte for byte')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
shutil.rmtree(folder, ignore_errors=True)
sys.exit(tap.done())
