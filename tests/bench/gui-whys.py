#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Reasons and settings by hand in the right-hand column: every row opens its reasons by mouse and by keyboard, they carry the
numbers that the command line gives for the same cut, and follow a drag; spindle speed and feed are typed, held and let go; where no
bit serves, the drawer says what to look for."""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

from gui import Bench, Tap, wait_for

THIN = '\u202f'  # between groups of three digits
tap = Tap()


def command(*arguments):
    asked = subprocess.run([os.environ['SPELCH_COMMAND'], *arguments], capture_output=True, text=True, check=False)
    return asked.stdout


def planned(*what_if):
    """What the command line says about the demo's outline."""
    return json.loads(command('plan', os.environ['SPELCH_DEMO'], '--cut', 'outline', '--json', *what_if))['cuts'][0]


def count(number):
    return f'{round(number):,}'.replace(',', THIN)


def time_words(seconds):
    seconds = round(seconds)
    minutes, rest = divmod(seconds, 60)
    return ' '.join([f'{minutes} min'] * (minutes > 0) + [f'{rest} s'] * (rest > 0 or minutes == 0))


def reasons():
    return [name[2:] for name in bench.names('label') if name.startswith('• ')]


def says(words):
    return lambda: any(words in sentence for sentence in reasons())


bench = Bench()
plan = planned()
edges = {edge['side']: edge['why'] for edge in plan['edges'] if edge['stays']}

# Each row: its sign's name, something of it to click on, and words with a number of this case; whether a field follows it.
ROWS = [
    ('Why: Show face, motor side', '^Show face, motor side$', edges['motor'][0], False),
    ('Why: Hidden face, far side', '^Hidden face, far side$', edges['far'][0], False),
    ('Why: Spindle speed', '^Spindle$', f"At {count(plan['speed_rpm'])} rpm", True),
    ('Why: Feed', '^Feed$', f"sets the feed to {count(plan['feed_mm_min'])} mm/min", True),
    ('Why: Largest chip', '^Largest chip$', f"{plan['feed_per_tooth_mm']:.3f}", False),
    ('Why: Entry', '^Entry$', f"Recommended: {plan['entry']['kind']}", False),
    ('Why: Passes', '^Passes$', f"{plan['windows']['robust']['first_pass_mm'][0]:.1f} mm", False),
    ('Why: Cutting time', '^Cutting time$', f"{count(plan['feed_mm_min'])} mm/min", False),
    ('How the cut is set out', '^Setting out$', plan['setting_out']['sentences'][1], False),
    ('Why: What holds the feed back', 'sets the feed, ', f"give way by {plan['bending']['deflection_mm']:.3f} mm"[5:], False),
    ('Why: Lift, press and holding', 'hold for ', f"a press of {count(plan['hold']['needed_n'])} N", False),
    ('Why: Wear and cost', '^Edge dull after$', f"{count(plan['edge_path_m'])} m through the stock", False),
    ('All cautions', 'test strip', plan['cautions'][0], False),
]
for sign, row, words, _ in ROWS:
    bench.click(bench.find('label', row))
    tap.ok(wait_for(says(words)), f'a click opens “{sign}”, with “{words[:50]}”', reasons)
    if row == '^Feed$':
        bench.picture('why-feed')
    bench.click(bench.find('label', row))
    tap.ok(wait_for(lambda: not reasons()), f'a second click closes “{sign}”', reasons)
tap.same(bench.verdict('motor'), 'clean', 'nothing was changed by it')

# By keyboard, from the first row down; one is open at a time.
bench.click(bench.find('push button', '^' + ROWS[0][0]))
tap.ok(wait_for(lambda: reasons() == edges['motor']), 'the sign opens it too; the reasons are those of the command line', reasons)
bench.keys('Escape')
tap.ok(wait_for(lambda: not reasons()), 'Escape closes it', reasons)
for at, (sign, row, words, field) in enumerate(ROWS):
    bench.keys('Return' if at % 2 else 'space')
    tap.ok(wait_for(says(words)), f'{"Return" if at % 2 else "Space"} opens “{sign}” where the focus stands', reasons)
    if at % 3 == 2:
        bench.keys('Return')
    elif at % 3 == 1:
        bench.keys('Escape')
    if at % 3:
        tap.ok(wait_for(lambda: not reasons()), 'and the keyboard closes it', reasons)
    bench.keys(*['Tab'] * (2 if field else 1))
bench.keys('Escape')
tap.ok(wait_for(lambda: not reasons()), 'Escape closes the last one', reasons)

# It follows a drag; one is open at a time.
bench.click(bench.find('label', '^Spindle$'))
tap.ok(wait_for(says(ROWS[2][2])), 'one is open', reasons)
bench.click(bench.find('push button', '^Why: Show face'))
tap.ok(wait_for(lambda: reasons() == edges['motor']), 'another one closes it', reasons)
mark = bench.mark('Pass 1')
bench.press(mark)
bench.glide(0, -60)
tap.ok(wait_for(lambda: reasons() and reasons() != edges['motor']), 'dragged, its sentences change')
bench.release()
moved = f"{bench.value(mark):.1f}mm"
torn = {edge['side']: edge['why'] for edge in planned('--pass', moved)['edges'] if edge['stays']}
tap.ok(wait_for(lambda: reasons() == torn['motor']), 'to what the command line says of that depth', lambda: (moved, reasons(), torn['motor']))
bench.picture('why-dragged')
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: reasons() == edges['motor']), 'and back with undo', reasons)
bench.click(bench.find('push button', '^Why: Show face'))
tap.ok(wait_for(lambda: not reasons()), 'the sign closes it')

# What must not be done has its reasons as well.
bench.type_into(bench.entry('Overcut'), '2 mm', 'Return')
bench.click(bench.find('push button', '^Why it must not be cut$'))
tap.ok(wait_for(says('0.5 mm is allowed')), 'why it must not be cut', reasons)
bench.keys('Escape', 'ctrl+z')
tap.ok(bench.lacks('label', '^Do not cut:'), 'undo takes the stop away')


# ---- Speed and feed by hand ----

def field(name):
    return bench.find('text', f'^{name}$')


def shows(name, text):
    return wait_for(lambda: bench.text(field(name)) == text)


def agrees(what, *what_if):
    """The other figures are those of the command line for the same question."""
    asked = planned(*what_if)
    tap.ok(wait_for(lambda: bench.figure('Largest chip') == f"{asked['chip_max_mm'] + 1e-9:.2f} mm"), f'{what}: the chip agrees',
           lambda: (bench.figure('Largest chip'), asked['chip_max_mm']))
    tap.ok(bench.figure('Cutting time') == time_words(asked['time_s']), f'{what}: the time agrees',
           lambda: (bench.figure('Cutting time'), asked['time_s']))
    tap.ok(bench.figure('Feed') == f"{count(asked['feed_mm_min'])} mm/min", f'{what}: the feed agrees', lambda: bench.figure('Feed'))
    tap.ok(bench.figure('Spindle') == f"{count(asked['speed_rpm'])} rpm", f'{what}: the speed agrees', lambda: bench.figure('Spindle'))


agrees('as recommended')
tap.ok(bench.lacks('push button', '^(Feed|Spindle): held'), 'nothing is held')
bench.type_into(field('Feed'), '5 m/min', 'Return')
tap.ok(shows('Feed', f'5{THIN}000 mm/min'), 'a feed is taken in any unit', lambda: bench.text(field('Feed')))
agrees('5 m/min', '--feed', '5000')
tap.ok(bench.has('push button', '^Feed: held by hand; let go$'), 'a pin shows that it is held')
tap.ok(bench.has('push button', '^Undo set feed$'), 'undo names it')
bench.picture('held-feed')
bench.keys('ctrl+z')
tap.ok(shows('Feed', f"{count(plan['feed_mm_min'])} mm/min"), 'undo lets it go')
bench.keys('ctrl+shift+z')
tap.ok(shows('Feed', f'5{THIN}000 mm/min'), 'redo holds it again')

for typed, mm_min in (('200 in/min', 5080), ('15 ft/min', 4572), ('a metre in 22 s', 2727), ('6100', 6100)):
    bench.type_into(field('Feed'), typed)
    if typed.startswith('a metre'):
        tap.ok(bench.has(None, f'^= 2{THIN}727 mm/min$'), 'while typing, what it reads as stands below')
    bench.keys('Return')
    tap.ok(shows('Feed', f'{count(mm_min)} mm/min'), f'“{typed}” is taken', lambda: bench.text(field('Feed')))
agrees('6100', '--feed', '6100')


def refused(name, text, complaint, what):
    before = bench.figure('Largest chip')
    bench.type_into(field(name), text, 'Return')
    tap.ok(bench.has('status bar', complaint), f'{what}: a sentence below the field says so', lambda: bench.names('status bar'))
    bench.keys('Tab')
    tap.same(bench.text(field(name)), text, f'{what}: what was typed stays when the field is left')
    tap.same(bench.figure('Largest chip'), before, f'{what}: nothing is changed')
    bench.click(field(name))
    bench.keys('Escape')
    tap.ok(bench.lacks('status bar', complaint), f'{what}: Escape brings back what stood there')


refused('Feed', 'quick', "isn't a feed", 'not a number')
refused('Feed', '5 m', "isn't a feed", 'a length')
refused('Feed', '1.234,5', 'more than one decimal sign', 'both decimal signs')
refused('Feed', '40 m/min', f'no quicker than 12{THIN}000 mm/min', 'quicker than the machine')
tap.ok(shows('Feed', f'6{THIN}100 mm/min'), 'the held feed is still there')
bench.picture('held-refused')

bench.type_into(field('Spindle'), '18000', 'Tab')
tap.ok(shows('Spindle', f'18{THIN}000 rpm'), 'leaving the field takes a speed', lambda: bench.text(field('Spindle')))
tap.ok(bench.has('push button', '^Undo set spindle speed$'), 'undo names that too')
agrees('both held', '--speed', '18000', '--feed', '6100')
refused('Spindle', '30000', f'turns at 8{THIN}000 to 24{THIN}000 rpm', 'faster than the machine')
refused('Spindle', 'fast', "isn't a spindle speed", 'not a speed')
bench.click(bench.find('label', '^Spindle$'))
tap.ok(wait_for(says('Speed held by hand')), 'why: the speed is held')
bench.click(bench.find('label', '^Feed$'))
tap.ok(wait_for(says(f'held by hand at 6{THIN}100 mm/min')), 'why: so is the feed', reasons)
bench.keys('Escape')

# Let go: by the pin, and by emptying the field.
bench.click(bench.find('push button', '^Spindle: held by hand; let go$'))
tap.ok(bench.lacks('push button', '^Spindle: held by hand'), 'the pin lets the speed go')
tap.ok(bench.has('push button', '^Undo let the spindle speed go$'), 'undo names it')
agrees('the feed held alone', '--feed', '6100')
bench.click(field('Feed'))
bench.keys('ctrl+a', 'BackSpace', 'Return')
tap.ok(bench.lacks('push button', '^Feed: held by hand'), 'an emptied field lets the feed go')
agrees('let go')
bench.keys('ctrl+z')
tap.ok(shows('Feed', f'6{THIN}100 mm/min'), 'which can be undone')
bench.keys('ctrl+shift+z')

# Inches: a bare number is read in the unit shown.
bench.click(bench.find(None, '^in$'))
tap.ok(wait_for(lambda: bench.figure('Feed').endswith(' in/min')), 'feeds are shown in inches')
bench.type_into(field('Feed'), '180', 'Return')
tap.ok(shows('Feed', '180 in/min'), 'a bare number is inches a minute then', lambda: bench.text(field('Feed')))
bench.click(bench.find(None, '^mm$'))
agrees('180 in/min', '--feed', '4572')

# Another machine that can't do it: said, and nothing is lost.
bench.choose('^Machine$', '^Router table$')
tap.ok(bench.has('status bar', 'no quicker than'), 'a table is fed by hand and not so quickly: said below the field', lambda: bench.names('status bar'))
tap.ok(shows('Feed', f'4{THIN}572 mm/min'), 'what was held stays')
bench.keys('ctrl+z')
tap.ok(bench.lacks('status bar', 'no quicker than'), 'back on the gantry it is fine')
tap.ok(bench.lacks('label', 'What to look for'), 'while a bit serves, nothing is looked for')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()

# ---- What wasn't told ----

folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-gui-'))
untold = json.loads(pathlib.Path(os.environ['SPELCH_DEMO']).read_text())
for bit in untold['bits']:
    bit.pop('overall_length', None)
part = folder / 'untold.spelch'
part.write_text(json.dumps(untold))
bench = Bench(part)
tap.ok(bench.has('label', "Not checked yet: .*Measure the bit's overall length"), 'a length that was never measured is asked for', lambda: bench.names('label'))
bench.click(bench.find('label', '^Not checked yet'))
tap.ok(wait_for(lambda: bench.names('label') and any('belong in the collet; as it sticks out' in (name or '') for name in bench.names())),
       'with what hangs on it', bench.names)
main = bench.window
bench.click(bench.find('push button', '^Answer in the bit…$'))
bench.window = wait_for(lambda: bench.frame('Bit drawer'))
overall = bench.find('text', '^Overall length$')
tap.ok(wait_for(lambda: bench.focused([overall])), "the bit's field is at hand")
bench.type_into(overall, '63 mm', 'Return')
bench.click(bench.find('push button', '^Use for the cut$'))
bench.window = main
tap.ok(bench.lacks('label', '^Not checked yet'), 'told, and taken for the cut, nothing is asked any more', lambda: bench.names('label'))
tap.ok(bench.has('push button', '^Undo choose “'), 'undo names it', lambda: bench.names('push button'))
bench.keys('ctrl+shift+b')
bench.window = bench.frame('Bit drawer')
bench.type_into(bench.find('text', '^Overall length$'), '58 mm', 'Return')
tap.ok(bench.has('label', '^The part on the bench has it as it was before'), 'a later change says that the part has its own copy')
bench.keys('ctrl+w')
bench.window = main
tap.ok(bench.has('label', 'has been changed. The part still has it as it was'), 'and the bench asks about it', lambda: bench.names('label'))
bench.click(bench.find('push button', '^Take it as it is now$'))
tap.ok(bench.lacks('label', 'has been changed. The part still has it'), 'taken, it asks no more')
bench.keys('ctrl+z')
tap.same(bench.complaints(), [], 'nothing was complained about there')
bench.keys('ctrl+z')
bench.end()
shutil.rmtree(folder, ignore_errors=True)

# ---- What to look for ----

folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-gui-'))
narrow = json.loads(pathlib.Path(os.environ['SPELCH_DEMO']).read_text())
narrow['cuts'][0]['corner_radius'] = 1.8  # no bit of the starter set is as narrow as 3.6 mm and long enough
part = folder / 'narrow.spelch'
part.write_text(json.dumps(narrow))
wanted = [line.strip() for line in command('rank', str(part), '--cut', 'outline').splitlines() if ' would do: ' in line]
bench = Bench(part)
tap.ok(wanted and bench.has(None, 'What to look for: ' + wanted[0]), 'where no bit serves the drawer says what to look for',
       lambda: (wanted, bench.names('status bar')))
tap.ok('to 3.6 mm across' in wanted[0], 'with the width of this corner', wanted)
bench.picture('wanted')
bench.click(bench.find('list item', '^Dadoes'))
tap.ok(bench.lacks(None, 'What to look for'), 'at another cut it is gone')
tap.same(bench.complaints(), [], 'nothing was complained about here either')
bench.end()
shutil.rmtree(folder, ignore_errors=True)
sys.exit(tap.done())
