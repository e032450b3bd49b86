#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Bits side by side: opened from the bench, what it shows is what the command line says of the saved part, with depths of their own
and tied; bits are exchanged, taken away, added and taken over to the bench, undone; it follows the bench, but never in a drag; and
it is printed and exported, with a sentence when that fails."""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

from gui import Bench, Tap, wait_for, xdotool

TITLE = 'Side by side – Hall cabinet, left side'
ROWS = {'motor-edge': 'Show face, motor side', 'far-edge': 'Hidden face, far side', 'passes': 'Passes', 'speed': 'Spindle', 'feed': 'Feed',
        'time': 'Cutting time', 'seat': 'On the board', 'hold': 'Held', 'power': 'Power', 'rubbing': 'Rubbing', 'room': 'Chip room',
        'wear': 'Edge wear', 'cost': 'Cost of the wear'}
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-compare-'))
PART = folder / 'hall.spelch'
shutil.copy(os.environ['SPELCH_DEMO'], PART)

tap = Tap()
bench = Bench(PART)
main = bench.window
IDS = {}
for source in (PART, pathlib.Path(os.environ['SPELCH_DEMO']).parent / 'bits.json'):
    IDS.update((bit['name'], bit['id']) for bit in json.loads(source.read_text())['bits'])
bench.only_window = True


def turn_to(title):
    bench.turn_to(title)
    bench.bring_to_the_fore()


def turn_to_bench():
    bench.window = main
    bench.bring_to_the_fore()


def every(role, name):
    """Also what is scrolled out of sight."""
    return [n for n in bench.walk() if n.seen_role == role and re.search(name, n.seen)]


def press(name):
    button = wait_for(lambda: next(iter(every('push button', name)), None))
    button.queryAction().doAction(0)
    bench.settle()


def answers(command, *options):
    ran = subprocess.run([os.environ['SPELCH_COMMAND'], command, PART, '--json', *options], capture_output=True, text=True, check=False)
    return json.loads(ran.stdout)


def columns():
    """The names of the bits, from the left."""
    found = {}
    for node in every('label', '^“.*”, Passes: '):
        found[re.match('^“(.*)”, Passes', node.name)[1]] = bench.box(node).x
    return sorted(found, key=found.get)


def shown():
    """Every value of every bit that is shown, as it is told."""
    return {node.name for node in every('label', '^“.*”, .*: ') if Bench.shown(node)}


def wanted(cut='outline', *options):
    """The same by the command line."""
    names = columns()
    told = answers('compare', '--cut', cut, '--bits', ','.join(IDS[name] for name in names), *options)
    lines = set()
    for name, column in zip(names, told['columns']):
        for row in column['rows']:
            if any(other['rows'][column['rows'].index(row)]['value'] is not None for other in told['columns']):
                standing = '' if row['standing'] == 'between' else f", {row['standing']}"
                lines.add(f"“{name}”, {ROWS[row['row']]}: {row['words']}{standing}")
    return lines


def agrees(what, cut='outline', *options):
    tap.ok(wait_for(lambda: shown() == wanted(cut, *options)), what, lambda: sorted(shown() ^ wanted(cut, *options)))


def undo_names():
    return [n.name for n in every('push button', '^Undo')]


# ---- Opening ----

bench.keys('ctrl+shift+c')
turn_to(TITLE)
first = columns()
tap.same(first[0], 'Compression 6.35 mm (1/4 in)', 'the bit in use stands first')
tap.same(sorted(name.split()[0] for name in first), ['Compression', 'Down-cut', 'Straight', 'Up-cut'], 'beside it the best of each other kind')
agrees('it shows what the command line says of the same bits')
ranked = answers('rank', '--cut', 'outline')
order = [choice['bit'] for choice in ranked['cuts'][0]['choices'] if choice['way_up'] == 'a' and choice['pass_plan'] in ('full', 'stepped')]
for name in first[1:]:
    kind = re.match('up-cut|down-cut|straight', IDS[name])[0]
    tap.same(next((i for i in order if i.startswith(kind)), None), IDS[name], f'{name} is the best ranked of its kind')
for name in first:
    cut = answers('plan', '--cut', 'outline', '--bit', IDS[name])['cuts'][0]
    compared = next(c for c in answers('compare', '--cut', 'outline', '--bits', ','.join(IDS[n] for n in first))['columns'] if c['bit'] == IDS[name])
    rows = {row['row']: row['value'] for row in compared['rows']}
    planned = {'speed': cut['speed_rpm'], 'feed': cut['feed_mm_min'], 'time': cut['time_s'], 'passes': len(cut['passes']),
               'power': cut['power_w']['mid'], 'rubbing': cut['rubbing_share'], 'room': cut['chip_room'], 'hold': cut['hold']['factor'],
               'motor-edge': max(e['grade'] for e in cut['edges'] if e['side'] == 'motor' and e['stays']),
               'far-edge': max(e['grade'] for e in cut['edges'] if e['side'] == 'far' and e['stays'])}
    tap.same({k: rows[k] for k in planned}, planned, f'and of {name} what it says of a plan with it')
differs = answers('compare', '--cut', 'outline', '--bits', ','.join(IDS[n] for n in first))['differs']
tap.same([s for s in differs if every('label', '^' + re.escape(s) + '$')], differs, 'what differs stands above')
tap.ok(every('image', '^“Compression.* by depth of the first pass, with everything exact. Show face: clean from [0-9.]+ mm. Hidden face: clean at every depth.$'),
       'the chart says in words what it shows', lambda: [n.name for n in every('image', '')])
tap.ok(every('image', '^“Compression.* in the board$'), 'the drawings have names', lambda: bench.names('image'))
bench.picture('compare')

bench.keys('ctrl+z')  # nothing to undo: the window lives on
turn_to_bench()
bench.keys('ctrl+shift+c')
tap.same(sum(f.name == TITLE for f in bench.frames() if f), 1, 'asked for again, the same window is shown')
turn_to(TITLE)

# ---- Depths ----

bench.click(bench.find('check box', '^All at the depths of the first$'))
agrees('tied, each takes the depths of the first', 'outline', '--tied')
tied = every('label', r'^Holding the passes of “Compression.*”: 9\.2 mm, then 18\.3 mm\.$')
tap.ok(tied, 'what would be held when a bit is taken over is said', lambda: bench.names('label'))
bench.picture('compare-tied')

# ---- Bits ----


def choose(number, name):
    """The list begins anew each time, with the part's own bits first."""
    bench.click(bench.find('combo box', f'^Bit {number}$'))
    bench.keys('Home', *['Down'] * list(IDS).index(name), 'Return')


before = columns()
other = next(name for name in IDS if name.startswith('Down-cut 6.35'))
choose(2, other)
tap.ok(wait_for(lambda: columns() == [before[0], other, *before[2:]]), 'a bit is exchanged', columns)
agrees('with its own numbers', 'outline', '--tied')
choose(2, before[0])
tap.ok(wait_for(lambda: columns() == [other, before[0], *before[2:]]), 'one that is compared already changes places', columns)
agrees('and the depths are those of the new first', 'outline', '--tied')
choose(1, before[0])
choose(2, before[1])
tap.ok(wait_for(lambda: columns() == before), 'and all is taken back', columns)
press('^Take away: ' + re.escape(before[3]))
tap.ok(wait_for(lambda: columns() == before[:3]), 'a bit is taken away', columns)
press('^Take away: ' + re.escape(before[1]))
tap.ok(wait_for(lambda: columns() == [before[0], before[2]]), 'down to two', columns)
agrees('of which it says what differs anew', 'outline', '--tied')
press('^Take away: ' + re.escape(before[0]))
tap.same(columns(), [before[0], before[2]], 'but not to one')
press('^Add a bit$')
wait_for(lambda: len(columns()) == 3)
press('^Add a bit$')
tap.ok(wait_for(lambda: len(set(columns())) == 4), 'bits are added up to four, each once', columns)
agrees('with their numbers', 'outline', '--tied')

# ---- Taken over ----

straight = before[2]
tap.ok(straight.startswith('Straight'), 'the straight bit would be cut in more passes by itself', before)
held = next(c for c in answers('compare', '--cut', 'outline', '--tied', '--bits', ','.join(IDS[n] for n in columns()))['columns']
            if c['bit'] == IDS[straight])
press('^Use this bit: ' + re.escape(straight))
tap.ok(wait_for(lambda: undo_names() == [f'Undo choose “{straight}” at 9.2 mm, then 18.3 mm']), 'it is taken over with the depths that were compared, '
       'as a step of its own', undo_names)
bench.window = main
tap.ok(wait_for(lambda: bench.figure('Passes') == '9.2 mm, then 18.3 mm'), 'which the bench holds', lambda: bench.figure('Passes'))
tap.ok(wait_for(lambda: bench.figure('Cutting time') == next(r['words'] for r in held['rows'] if r['row'] == 'time')),
       'with the time that was compared', lambda: bench.figure('Cutting time'))
turn_to(TITLE)
press('^Undo choose')
bench.window = main
tap.ok(wait_for(lambda: any('in use for this cut' in n and n.startswith('Compression 6.35') for n in bench.names('push button'))),
       'undone here, the bench has its bit again', lambda: bench.names('push button'))
turn_to(TITLE)
bench.click(bench.find('check box', '^All at the depths of the first$'))
agrees('untied, each is at its own depths again')
press('^Use this bit: ' + re.escape(straight))
tap.ok(wait_for(lambda: undo_names() == [f'Undo choose “{straight}”']), 'taken over so, it is taken as the drawer does it', undo_names)
turn_to_bench()
bench.keys('ctrl+s')
cut = wait_for(lambda: next((c for c in json.loads(PART.read_text())['cuts'] if c['id'] == 'outline' and c.get('bit') == IDS[straight]), None))
tap.ok(cut and not cut.get('held', {}).get('passes'), 'with no depths held', cut)
turn_to(TITLE)
agrees('and of the saved part the command line says the same')
tap.ok(every('label', '^The cut is made with it\\.$'), 'the bit in use says so')
press('^Undo choose')
tap.ok(wait_for(lambda: undo_names() == ['Undo']), 'undone again', undo_names)
turn_to_bench()
bench.keys('ctrl+s')
wait_for(lambda: next(c for c in json.loads(PART.read_text())['cuts'] if c['id'] == 'outline')['bit'] == 'compression-6.35x22')

# ---- Following ----


def passes_shown():
    bench.window, here = wait_for(lambda: next(f for f in bench.frames() if f and f.name == TITLE)), bench.window
    seen = sorted(n.name for n in every('label', '^[0-9.]+ mm, then 18.3 mm$'))
    bench.window = here
    return seen


turn_to_bench()
still = passes_shown()
mark = bench.mark('Pass 1')
bench.press(mark)
bench.glide(0, -40)
tap.ok(wait_for(lambda: bench.figure('Passes') != '9.2 mm, then 18.3 mm'), 'a pass is dragged on the bench', lambda: bench.figure('Passes'))
tap.same(passes_shown(), still, 'and nothing is made anew in the drag')
bench.release()
dragged = bench.figure('Passes')
tap.ok(wait_for(lambda: dragged in passes_shown()), 'let go, it is followed', passes_shown)
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: passes_shown() == still), 'so is undo', passes_shown)
bench.click(bench.find('list item', '^Dadoes for the shelves'))
turn_to(TITLE)
tap.ok(wait_for(lambda: every('label', '^Dadoes for the shelves, Birch plywood 18 mm$')), 'another cut is compared', lambda: bench.names('label'))
agrees('with bits of its own', 'shelf-dado')
tap.ok(not any('Hidden face' in name for name in shown()), 'of a blind cut there is one face')
bench.picture('compare-dado')

# ---- Printing and exporting ----


def titles():
    return [f.name for f in bench.frames() if f]


def said():
    return [n.name for n in bench.all(None, '(is written|nothing was written|can.t be saved|There is no)') if n.name]


def name_in_chooser(path):
    bench.keys('ctrl+e')
    tap.ok(wait_for(lambda: 'Side by side' in titles()), 'a file is asked for', titles)
    xdotool('key', 'ctrl+a')
    xdotool('type', '--delay', '15', '--', str(path))
    xdotool('key', 'Return')


def answer_chooser(path):
    """Names the file in the chooser."""
    name_in_chooser(path)
    tap.ok(wait_for(lambda: 'Side by side' not in titles()), f'and answered: {path.name}', titles)
    turn_to(TITLE)


for ending, start in (('.pdf', b'%PDF'), ('.svg', b'<?xml'), ('.png', b'\x89PNG')):
    path = folder / f'dado{ending}'
    answer_chooser(path)
    tap.ok(wait_for(lambda p=path, s=start: p.exists() and p.read_bytes().startswith(s)), f'{ending} is exported')
    tap.ok(wait_for(lambda p=path: said() == [f'{p.name} is written.']), 'and said so', said)
tap.ok(all((folder / f'dado{ending}').stat().st_size > 5000 for ending in ('.pdf', '.svg', '.png')), 'with something in each')
answer_chooser(folder / 'dado.jpg')
tap.ok(wait_for(lambda: said() and 'End the name in .pdf, .svg or .png' in said()[0]), 'an unknown ending is refused in a sentence', said)
tap.ok(not (folder / 'dado.jpg').exists(), 'with nothing written')
answer_chooser(pathlib.Path('/proc/dado.pdf'))
tap.ok(wait_for(lambda: said() and said()[0].startswith("dado.pdf can't be saved: ") and 'elsewhere' in said()[0]),
       'a folder that takes no file is told of in a sentence', said)
bench.picture('compare-refused')
press('^Close$')
tap.ok(wait_for(lambda: not said()), 'which is put away', said)

# A folder that isn't there is refused by the chooser itself, which keeps what was typed.
name_in_chooser(folder / 'gone' / 'dado.pdf')
message = wait_for(lambda: next((f for f in bench.frames() if f and not f.name and Bench.all(bench, 'label', 'could not be displayed', f)), None))
tap.ok(message, "a folder that isn't there is told of where it was typed", titles)
for window, button in ((message, 'OK$'), (next(f for f in bench.frames() if f and f.name == 'Side by side'), 'Cancel$')):
    next(n for n in Bench.walk(bench, window) if n.seen_role == 'push button' and re.search(button, n.seen)).queryAction().doAction(0)
    bench.settle()
tap.ok(wait_for(lambda: 'Side by side' not in titles()), 'and nothing is exported', titles)
tap.ok(not (folder / 'gone').exists(), 'nor a folder made')
turn_to(TITLE)

bench.keys('ctrl+p')
tap.ok(wait_for(lambda: 'Print' in titles()), 'how to print is asked', titles)
bench.window = next(f for f in bench.frames() if f and f.name == 'Print')
bench.picture('compare-print')
bench.keys('Escape')
tap.ok(wait_for(lambda: 'Print' not in titles()), 'and put away', titles)
turn_to(TITLE)

# ---- Without a cut, and closing ----

bench.keys('Escape')
tap.ok(wait_for(lambda: TITLE not in titles()), 'Escape closes it', titles)
turn_to_bench()
press('^Compare…$')
turn_to(TITLE)
tap.ok(columns(), 'the bit drawer opens it again')
turn_to_bench()
bench.keys('ctrl+shift+n')
tap.ok(wait_for(lambda: any((t or '').startswith('Side by side') and t != TITLE for t in titles())), 'a new part is followed', titles)
bench.window = next(f for f in bench.frames() if f and f.name.startswith('Side by side'))
tap.ok(wait_for(lambda: every('label', '^There is no cut to compare bits for')), 'and says that it has no cut', lambda: bench.names('label'))
turn_to_bench()
bench.keys('ctrl+n')
tap.ok(wait_for(lambda: sum('Spelch' in (t or '') for t in titles()) == 2), 'with another bench beside it', titles)
turn_to_bench()
bench.keys('ctrl+w')
tap.ok(wait_for(lambda: not any((t or '').startswith('Side by side') for t in titles())), 'it closes with the bench', titles)

tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
shutil.rmtree(folder, ignore_errors=True)
sys.exit(tap.done())
