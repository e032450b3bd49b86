#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The bench sheet: opened from the bench, its pages say what the command line's say; another paper, a change on the bench and its
undoing are followed; it is exported as all three kinds of file and asks how to print."""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

from gui import Bench, Tap, wait_for, xdotool

TITLE = 'Bench sheet – Hall cabinet, left side'
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-sheet-'))
PART = folder / 'hall.spelch'
shutil.copy(os.environ['SPELCH_DEMO'], PART)

tap = Tap()
bench = Bench(PART)
main = bench.window
bench.only_window = True


def titles():
    return [f.name for f in bench.frames() if f]


def turn_to_main():
    bench.window = main
    bench.bring_to_the_fore()


def turn_to_sheet():
    bench.turn_to(TITLE)
    bench.bring_to_the_fore()


def pages():
    return [n for n in bench.walk() if re.match(r'^Page \d+ of \d+: ', n.name or '')]


def names():
    return [n.name for n in pages()]


def words(page):
    return re.sub('[\u202f\u00a0]', ' ', pages()[page - 1].description)


def printed(page):
    """The same page as the command line writes it."""
    made = folder / 'printed.pdf'
    subprocess.run([os.environ['SPELCH_COMMAND'], 'sheet', PART, '-o', made], check=False)
    ran = subprocess.run(['pdftotext', '-f', str(page), '-l', str(page), '-layout', made, '-'], capture_output=True, text=True, check=True)
    return ran.stdout


def said():
    return [n.name for n in bench.all(None, '(is written|nothing was written|can.t be saved)') if n.name]


# ---- What it shows ----

bench.keys('ctrl+p')
turn_to_sheet()
tap.same(len(names()), 7, 'a cover and a page for each of six cuts')
tap.same(names()[0], 'Page 1 of 7: Hall cabinet, left side', 'the cover first')
tap.same(names()[6], 'Page 7 of 7: Outline', 'the outline, which sets the piece free, last')
tap.ok('4 200 mm/min' in words(7) and '23 000 rpm' in words(7), 'with its numbers for people who hear it', lambda: words(7))
tap.ok('below the near face' in words(7) and '18.3 mm' in words(7), 'and its passes')
bench.picture('sheet-cover')
if shutil.which('pdftotext'):
    text = re.sub(r'\s+', ' ', printed(7))
    for value in ('9.2 mm', '18.3 mm', '4 200 mm/min', '23 000 rpm', '41.5 mm'):
        tap.ok(value in text and value in words(7), f'{value} on paper as on screen', text)

tall = bench.box(pages()[0]).height
bench.click(bench.find('combo box', '^Paper$'))
bench.keys('Down', 'Return')
tap.ok(wait_for(lambda: bench.box(pages()[0]).height < tall), 'Letter is shorter than A4', lambda: bench.box(pages()[0]).height)
tap.same(len(names()), 7, 'with as many pages')
bench.picture('sheet-letter')

# ---- Following the bench ----

turn_to_main()
bench.click(bench.find('push button', '^Turn over'))
turn_to_sheet()
tap.ok(wait_for(lambda: 'UP: Hidden face' in words(7)), 'the board turned over on the bench is turned over on the sheet', lambda: words(7))
turn_to_main()
bench.keys('ctrl+z')
turn_to_sheet()
tap.ok(wait_for(lambda: 'UP: Show face' in words(7)), 'and back, undone')

# ---- Files and printer ----


def answer_chooser(path):
    bench.keys('ctrl+e')
    tap.ok(wait_for(lambda: 'Bench sheet' in titles()), 'a file is asked for', titles)
    xdotool('key', 'ctrl+a')
    xdotool('type', '--delay', '15', '--', str(path))
    xdotool('key', 'Return')
    tap.ok(wait_for(lambda: 'Bench sheet' not in titles()), f'and answered: {path.name}', titles)
    turn_to_sheet()


for ending, start in (('.pdf', b'%PDF'), ('.svg', b'<?xml'), ('.png', b'\x89PNG')):
    path = folder / f'out{ending}'
    answer_chooser(path)
    made = [path] if ending == '.pdf' else [folder / f'out-{n}{ending}' for n in range(1, 8)]
    tap.ok(wait_for(lambda m=made, s=start: all(one.exists() and one.read_bytes().startswith(s) for one in m)), f'{ending} is exported')
    tap.ok(wait_for(lambda p=path: said() == [f'{p.name} is written.']), 'and said so', said)
answer_chooser(folder / 'out.jpg')
tap.ok(wait_for(lambda: said() and 'End the name in .pdf, .svg or .png' in said()[0]), 'an unknown ending is refused in a sentence', said)
answer_chooser(pathlib.Path('/proc/out.pdf'))
tap.ok(wait_for(lambda: said() and said()[0].startswith("out.pdf can't be saved: ")), 'and a folder that takes no file', said)
bench.picture('sheet-refused')

bench.keys('ctrl+p')
tap.ok(wait_for(lambda: 'Print' in titles()), 'how to print is asked', titles)
bench.window = next(f for f in bench.frames() if f and f.name == 'Print')
bench.picture('sheet-print')
bench.keys('Escape')
tap.ok(wait_for(lambda: 'Print' not in titles()), 'and put away', titles)
turn_to_sheet()

# ---- Without a cut, and closing ----

bench.keys('Escape')
tap.ok(wait_for(lambda: TITLE not in titles()), 'Escape closes it', titles)
turn_to_main()
bench.keys('ctrl+p')
turn_to_sheet()
turn_to_main()
bench.keys('ctrl+shift+n')
bench.window = wait_for(lambda: next((f for f in bench.frames() if f and (f.name or '').startswith('Bench sheet') and f.name != TITLE), None))
tap.ok(bench.window, 'a new part is followed', titles)
tap.ok(wait_for(lambda: bench.window and not pages() and bench.all('label', '^There is no cut to print yet')), 'which has no page yet', names)
bench.picture('sheet-nothing')

tap.same(bench.complaints(), [], 'nothing was complained of')
bench.window = main
bench.end()
sys.exit(tap.done())
