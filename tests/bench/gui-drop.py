#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Files dropped on the window from another program, by the pointer: one opens in it, of several each has a window, a bad one is
complained about, and unsaved work is asked about first."""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

from gui import FRAME, Bench, Tap, wait_for, xdotool

tap = Tap()
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-drop-'))
demo = json.loads(pathlib.Path(os.environ['SPELCH_DEMO']).read_text())


def written(file, content):
    path = folder / file
    path.write_text(content)
    return path


def drop(*files, until):
    """Drags the files out of another program's window onto the drawing. Gives whether what is waited for came about."""
    source = subprocess.Popen([os.environ['SPELCH_FILE_SOURCE'], *map(str, files)], env=bench.environment, stderr=subprocess.DEVNULL)
    subprocess.run(['xdotool', 'search', '--sync', '--onlyvisible', '--name', '^Files to drop$'], stdout=subprocess.DEVNULL, check=True)
    time.sleep(10 * FRAME)
    xdotool('mousemove', 80, 50, 'mousedown', 1)
    bench.glide(520, 350, 20)
    for _ in range(5):  # the programs talk to each other while the pointer moves
        bench.glide(4, 4, 4)
    bench.picture('drop')
    xdotool('mouseup', 1)
    came = wait_for(until)  # the other program gives the files only when asked, after the drop
    source.terminate()
    source.wait()
    return bool(came)


def titles():
    return sorted(node.name for node in bench.all('frame') if node.name)


first = written('first.spelch', json.dumps({**demo, 'name': 'First of all'}))
second = written('second.spelch', json.dumps({**demo, 'name': 'Second to none'}))
third = written('third.spelch', json.dumps({**demo, 'name': 'Third in line'}))
bad = written('bad.spelch', '{ "format_version": 1, ')
newer = written('newer.spelch', json.dumps({**demo, 'name': 'From tomorrow', 'format_version': 9}))

bench = Bench()
tap.ok(drop(first, until=lambda: titles() == ['First of all – Spelch']), 'a file that is dropped opens', titles)
tap.ok(drop(bad, until=lambda: bench.all('label', r'bad\.spelch.*\.$')), 'a bad one is complained about')
tap.same(titles(), ['First of all – Spelch'], 'and what is open stays')
tap.ok(drop(newer, until=lambda: titles() == ['From tomorrow – Spelch']), 'a part by a newer program opens', titles)
tap.ok(bench.has('label', '^This part was written by a newer Spelch'), 'and it is said at once that it can\'t be saved')
tap.ok(bench.lacks('label', r'bad\.spelch'), 'and no longer what was wrong with the file before')
tap.ok(drop(first, until=lambda: titles() == ['First of all – Spelch']), 'another opens instead', titles)
tap.ok(bench.lacks('label', '^This part was written'), 'without a word about the one before')
bench.click(bench.mark('Pass 1'))
bench.keys('Down')
tap.ok(drop(second, until=lambda: bench.all('push button', 'Don.t save')), 'unsaved work is asked about')
bench.find('push button', 'Cancel').queryAction().doAction(0)
bench.settle()
tap.ok(wait_for(lambda: titles() == ['First of all • – Spelch']), 'and can be kept', titles)
bench.lacks('push button', 'Don.t save')
for _ in range(5):  # without a window manager the focus comes back from the question late
    bench.keys('ctrl+z')
    if wait_for(lambda: '•' not in bench.window.name, 2):
        break
tap.ok(drop(second, third, until=lambda: titles() == ['Second to none – Spelch', 'Third in line – Spelch']),
       'of several the others have windows of their own', titles)
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
shutil.rmtree(folder, ignore_errors=True)
sys.exit(tap.done())
