#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Windows and their files: several windows, a file open once, the list of recent ones, changes on disk, questions about unsaved
work, preferences, the first hints, the windows that help."""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

from gui import MENU_MOST, Bench, Tap, wait_for, xdotool

tap = Tap()
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-window-'))
demo = json.loads(pathlib.Path(os.environ['SPELCH_DEMO']).read_text())


def written(file, **members):
    path = folder / file
    path.write_text(json.dumps({**demo, **members}))
    return path


def titles():
    return sorted(node.name for node in bench.all('frame') if node.name)


def start_again(*files):
    """As a file manager opens files."""
    return subprocess.run([os.environ['SPELCH_BENCH'], *files], env=bench.environment, timeout=30, check=False).returncode


def press(name):
    bench.find('push button', name).queryAction().doAction(0)
    bench.settle()


first = written('first.spelch', name='First of all')
second = written('second.spelch', name='Second_to none')

# Several windows, each file once.
bench = Bench(first)
tap.ok(wait_for(lambda: titles() == ['First of all – Spelch']), 'the first file has the window, as nothing else was in it', titles)
tap.same(start_again(second), 0, 'a second start hands its file over')
tap.ok(wait_for(lambda: titles() == ['First of all – Spelch', 'Second_to none – Spelch']), 'which gets a window of its own', titles)
start_again(first)
time.sleep(1)
tap.same(titles(), ['First of all – Spelch', 'Second_to none – Spelch'], 'a file that is open is not opened twice')
bench.keys('ctrl+n')
tap.ok(wait_for(lambda: len(titles()) == 3), 'Ctrl+N makes another window', titles)
tap.ok(wait_for(lambda: 'New part – Spelch' in titles()), 'with a new part in it', titles)
bench.picture('window-three')
bench.keys('ctrl+w')
tap.ok(wait_for(lambda: len(titles()) == 2), 'Ctrl+W closes it', titles)
bench.end()

# The list of recent files.
bench = Bench(first, home=folder)
tap.ok(wait_for(lambda: (folder / 'data' / 'recently-used.xbel').exists(), 5), 'what is opened is remembered')
bench.end()
bench = Bench(home=folder)
tap.ok(0 < bench.menu_bottom() < MENU_MOST, 'the menu has room in a window 640 high, at half as large a text too', bench.menu_bottom)
bench.take('^File$', '^Open recent$')
tap.ok(bench.has('menu item', r'^First of all \(first\.spelch\)$'),
       'the menu, which F10 opens, has recent files, with the part\'s and the file\'s names', lambda: bench.names('menu item'))
bench.picture('window-recent')
bench.find('menu item', r'^First of all \(first\.spelch\)$').queryAction().doAction(0)
tap.ok(wait_for(lambda: titles() == ['First of all – Spelch']), 'one of them opens', titles)

# Another program changes the file: taken up while nothing is unsaved, and with a way back.
time.sleep(0.5)
written('first.spelch', name='Changed outside')
tap.ok(wait_for(lambda: titles() == ['Changed outside – Spelch']), 'a change on disk is taken up', titles)
bench.click(bench.mark('Pass 1'))
bench.keys('Down')
mine = bench.value(bench.mark('Pass 1'))
written('first.spelch', name='Changed again')
tap.ok(bench.has('push button', '^Read it again$'), 'with unsaved changes it is only offered')
bench.picture('window-overtaken')
tap.near(lambda: bench.value(bench.mark('Pass 1')), mine, 1e-6, 'and nothing here is changed')
press('^Keep what is here$')
tap.ok(bench.lacks('push button', '^Keep what is here$'), 'what is here can be kept')
written('first.spelch', name='Changed a third time')
tap.ok(bench.has('push button', '^Read it again$'), 'a further change is offered again')
bench.keys('ctrl+s')
tap.ok(bench.has('push button', 'Save over it'), 'saving asks what to do')
bench.picture('window-conflict')
press('_Read it again')
tap.ok(wait_for(lambda: titles() == ['Changed a third time – Spelch']), 'reading it again shows what the file holds', titles)
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: abs(bench.value(bench.mark('Pass 1')) - mine) < 1e-6), 'and can be undone')
bench.keys('ctrl+s')
tap.ok(wait_for(lambda: json.loads(first.read_text())['name'] == 'Changed outside'), 'then it is saved', first.read_text)

# Unsaved work is asked about.
bench.click(bench.mark('Pass 1'))
bench.keys('Down', 'ctrl+w')
tap.ok(bench.has('push button', 'Don.t save'), 'closing asks about unsaved work')
bench.keys('Escape')
tap.ok(bench.lacks('push button', 'Don.t save') and wait_for(titles), 'and need not close', titles)
bench.choose('^Add a cut$', '^Dado or groove$')
wait_for(lambda: bench.focused(bench.all('text', '^Name$')))
xdotool('key', 'ctrl+a')
xdotool('type', '--delay', '10', '--', 'For the back')
bench.keys('Tab')
tap.ok(bench.has('list item', '^For the back,'), 'what is typed afterwards is entered when its field is left', lambda: bench.names('list item'))
tap.ok(bench.has('push button', '^Undo change “Name”'), 'as a step', lambda: bench.names('push button'))
bench.keys('ctrl+z', 'ctrl+z')
bench.find('push button', '^Done$').queryAction().doAction(0)
bench.keys('ctrl+p')
tap.ok(wait_for(lambda: len(bench.frames()) == 2), 'the bench sheet has a window of its own', titles)
bench.keys('ctrl+shift+b')
tap.ok(wait_for(lambda: bench.frame('Bit drawer')), 'and so has the bit drawer', titles)
bench.keys('ctrl+q')
tap.ok(bench.has('push button', 'Don.t save'), 'quitting asks about unsaved work')
tap.ok(bench.frame('Bit drawer') is not None and len(bench.frames()) == 4, 'before any window closes', titles)
press('Cancel')
tap.ok(bench.lacks('push button', 'Don.t save') and wait_for(lambda: len(bench.frames()) == 3), 'and cancelled, leaves every window', titles)
bench.turn_to('Bit drawer')
bench.keys('ctrl+q')
press('Don.t save')
tap.ok(wait_for(lambda: bench.process.poll() == 0), 'not saving ends the program, whatever windows are open', titles)
tap.same(list((folder / 'state' / 'spelch').glob('unsaved-*')), [], 'and leaves nothing behind')

# Of two benches with unsaved work, the answer about the first is no leave to lose it while the second is kept.
bench = Bench(first, home=folder)
start_again(second)
tap.ok(wait_for(lambda: len(titles()) == 2), 'two windows', titles)


def kept_aside():
    try:
        return ' '.join(path.read_text() for path in (folder / 'state' / 'spelch').glob('unsaved-*'))
    except FileNotFoundError:  # one was written anew just then
        return ''


for title in ('Second_to none', 'Changed outside'):
    bench.turn_to(f'{title} – Spelch')
    bench.bring_to_the_fore()
    bench.keys('ctrl+d')
    tap.ok(wait_for(lambda: title in kept_aside(), 5), f'{title}: what is unsaved is kept aside')


def asked_about():
    """The names in the questions that are open."""
    return [name.split('“')[1].split('”')[0] for name in bench.names('label') if name.startswith('Save the changes to')]


def answer(name):
    """Answers the question that is open, and tells what it was about."""
    about = wait_for(asked_about) or ['nothing']
    press(name)
    wait_for(lambda: asked_about() != about)
    return about


bench.keys('ctrl+q')
asked = answer('Don.t save') + answer('Cancel')
tap.same(sorted(asked), ['Changed outside', 'Second_to none'], 'one is asked about after the other')
tap.ok(wait_for(lambda: len(titles()) == 2), 'and cancelled, both stay', titles)
tap.ok(wait_for(lambda: all(name in kept_aside() for name in asked), 5), 'with what is unsaved in either still kept aside', kept_aside)
bench.keys('ctrl+q')
tap.same(len(answer('Don.t save') + answer('Don.t save')), 2, 'both are asked about again')
tap.ok(wait_for(lambda: bench.process.poll() == 0), 'both answered, the program ends', titles)
tap.same(list((folder / 'state' / 'spelch').glob('unsaved-*')), [], 'and leaves nothing behind')

# Preferences hold at once, in every window, and at the next start.
bench = Bench(first, home=folder)
bench.keys('ctrl+comma')
tap.ok(bench.has('label', '^Worst grade on seen edges'), 'Ctrl+comma opens the preferences', lambda: bench.names('label'))
bench.picture('window-preferences')
bench.keys('Escape')
bench.keys('F1')
tap.ok(bench.has('label', '^Up-shear and down-shear$'), 'F1 tells how to read the drawing')
bench.picture('window-reading')
bench.keys('Escape', 'ctrl+question')
tap.ok(bench.has('label', 'Save under another name'), 'Ctrl+? shows the keys', lambda: bench.names('label'))
bench.picture('window-keys')
bench.end()
kept = folder / 'config' / 'spelch' / 'preferences.ini'
kept.parent.mkdir(parents=True, exist_ok=True)
kept.write_text('[window]\nfeeds=m/min\nappearance=dark\n[first-run]\nhints-done=3\n')
bench = Bench(first, home=folder)
tap.ok(bench.figure('Feed').endswith('m/min'), 'feeds are written as preferred', lambda: bench.figure('Feed'))
bench.keys('ctrl+comma')
bench.find('label', '^Worst grade on seen edges')
bench.picture('window-preferences-dark')
bench.end()
kept.write_text('[window]\nfeeds=furlongs\n')
bench = Bench(first, home=folder)
tap.ok(bench.has('label', 'feeds.* can.t be used; the usual value holds'), 'a spoilt preference is said')
bench.end()
kept.unlink()

# Two windows crash: both are offered.
bench = Bench(first, home=folder)
bench.click(bench.mark('Pass 1'))
bench.keys('Down')
start_again(second)
tap.ok(wait_for(lambda: len(titles()) == 2), 'two windows', titles)
bench.window = bench.find('frame', 'Second')
bench.click(bench.mark('Pass 1'))
bench.keys('Down')
tap.ok(wait_for(lambda: len(list((folder / 'state' / 'spelch').glob('unsaved-*.kept'))) == 2), 'each keeps its own work')
bench.crash()
bench = Bench(first, home=folder)
press('^Take them up$')
wait_for(lambda: len([t for t in titles() if '•' in t]) == 1)
press('^Take them up$')
tap.ok(wait_for(lambda: len([t for t in titles() if '•' in t]) == 2), 'after a crash both are taken up', titles)
tap.same(len(titles()), 2, 'each in one window')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.crash()
shutil.rmtree(folder, ignore_errors=True)
sys.exit(tap.done())
