#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Files: good ones open, bad ones are complained about in one sentence and leave everything in place, unsaved work survives a
crash, saving writes what is seen."""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

from gui import Bench, Tap, wait_for

tap = Tap()
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-files-'))
demo = json.loads(pathlib.Path(os.environ['SPELCH_DEMO']).read_text())


def written(name, content):
    path = folder / name
    path.write_text(content if isinstance(content, str) else json.dumps(content))
    return path


def changed(**members):
    part = json.loads(json.dumps(demo))
    part.update(members)
    return part


good = written('good.spelch', changed(name='A shelf of its own'))
negative = changed()
negative['board']['layers'][0]['thickness'] = '-1.3 mm'
absent = changed()
absent['cuts'][0]['bit'] = 'no-such-bit'
BAD = {
    'truncated.spelch': json.dumps(demo)[:400],
    'empty.spelch': '',
    'negative.spelch': negative,
    'absent-bit.spelch': absent,
    'wrong-type.spelch': changed(cuts='none'),
    'not-a-number.spelch': json.dumps(changed(length=1)).replace('"length": 1', '"length": NaN'),
}


def bar():
    """The sentence in the bar for errors, or ''."""
    for node in bench.all('label'):
        if node.name and '.spelch' in node.name:
            return node.name
    return ''


def close_bar():
    x, y, width, height = bench.box(bench.find('label', r'\.spelch'))
    buttons = [b for b in bench.all('push button') if abs(bench.centre(b)[1] - (y + height / 2)) < 25]
    bench.click(max(buttons, key=lambda b: bench.centre(b)[0]))


# A good file from the command line.
bench = Bench(good)
tap.ok(bench.has('label', '^A shelf of its own'), 'a file given on the command line is open')
tap.same(bar(), '', 'without complaint')
bench.end()

# Bad ones.
for name, content in BAD.items():
    path = written(name, content)
    before = path.read_bytes()
    bench = Bench(path)
    tap.ok(wait_for(lambda: name in bar()), f'{name}: a bar names the file', bar)
    words = bar()
    tap.ok(words.endswith('.') and '\n' not in words.strip(), f'{name}: in a sentence', words)
    tap.ok(bench.has('slider', '^Pass 1'), f'{name}: a part is in place')
    tap.ok(path.read_bytes() == before, f'{name}: the file is untouched')
    if name == 'truncated.spelch':
        close_bar()
        tap.ok(wait_for(lambda: bar() == ''), 'the bar can be dismissed', bar)
    bench.end()

# A bad file given to a running window leaves its part and its undo in place.
bench = Bench(good)
bench.click(bench.mark('Pass 1'))
bench.keys('Down')
moved = bench.value(bench.mark('Pass 1'))
second = subprocess.run([os.environ['SPELCH_BENCH'], folder / 'empty.spelch'], timeout=20, check=False)
tap.same(second.returncode, 0, 'a second start hands its file to the first')
tap.ok(wait_for(lambda: 'empty.spelch' in bar()), 'the bar complains', bar)
tap.ok(bench.has('label', '^A shelf of its own'), 'the part is still there')
tap.near(lambda: bench.value(bench.mark('Pass 1')), moved, 1e-6, 'with what was changed')
tap.ok(bench.has('push button', '^Undo move pass 1$'), 'and its undo')

# Saving.
bench.keys('ctrl+s')



def held():
    return json.loads(good.read_text())['cuts'][0].get('held', {}).get('passes')


tap.ok(wait_for(held), 'saving writes the file', held)
tap.ok(str(round(moved, 1)) in str(held()), 'with the held pass', held)
tap.ok(bench.has('frame', '^A shelf of its own – Spelch$'), 'nothing is unsaved any more', lambda: bench.names('frame'))

# A change on disk is noticed.
bench.click(bench.mark('Pass 1'))
bench.keys('Down')
good.write_text(json.dumps(changed(name='Changed by someone else')))
bench.keys('ctrl+s')
tap.ok(bench.has('push button', 'Save over it'), 'a file changed on disk is asked about')
tap.same(json.loads(good.read_text())['name'], 'Changed by someone else', 'and stays as it is')
bench.end()

# A crash: what was done is offered again.
home = tempfile.mkdtemp(prefix='spelch-crash-')
bench = Bench(home=home)
bench.click(bench.mark('Pass 1'))
bench.keys('Down', 'Down', 'Down')
moved = bench.value(bench.mark('Pass 1'))
state = pathlib.Path(home) / 'state' / 'spelch'
begun = time.monotonic()
tap.ok(wait_for(lambda: list(state.glob('unsaved-*.kept')), 3), 'unsaved work is kept aside')
tap.ok(time.monotonic() - begun < 1.5, 'within about a second', time.monotonic() - begun)
bench.crash()
bench = Bench(home=home)
tap.ok(bench.has('label', 'ended with unsaved changes'), 'the next start offers it')
bench.click(bench.find('push button', '^Take them up$'))
tap.ok(wait_for(lambda: abs(bench.value(bench.mark('Pass 1')) - moved) < 1e-6), 'and takes it up', lambda: bench.value(bench.mark('Pass 1')))
tap.ok(bench.has('frame', '•'), 'as unsaved work')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
shutil.rmtree(home, ignore_errors=True)
shutil.rmtree(folder, ignore_errors=True)
sys.exit(tap.done())
