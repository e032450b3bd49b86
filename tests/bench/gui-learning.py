#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What helps a beginner in practice: the words of the trade that stand in sight are explained, by key, by button and under the
pointer; and a lesson that isn't finished is gone on with another day where it was left."""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

from gui import Bench, Tap, wait_for, xdotool

tap = Tap()
home = pathlib.Path(tempfile.mkdtemp(prefix='spelch-learning-'))
TITLE = 'Practice'


def start():
    """The program with the window for practice open, and only that looked at."""
    found = Bench(home=home)
    found.walk = lambda root=None: Bench.walk(found, root or found.window)

    def opened():
        found.keys('ctrl+shift+p')
        return wait_for(lambda: any(f.name == TITLE for f in found.frames()), 1)
    wait_for(opened)
    found.window = wait_for(lambda: next((f for f in found.frames() if f.name == TITLE), None))
    if not found.window:
        sys.exit(f'Bail out! No window is called {TITLE!r}: {[f.name for f in found.frames()]}')
    found.settle()
    return found


def explained():
    """The words that the list explains, while it is open: word -> meaning."""
    words = next((n for n in bench.walk() if n.seen_role == 'list' and n.seen == 'Words that stand here, and what they mean'), None)
    rows = [n.seen for n in bench.walk(words) if n.seen_role == 'list item'] if words else []
    return dict(row.split(': ', 1) for row in rows)


def open_words():
    bench.keys('shift+F1')
    return wait_for(explained)


def close_words():
    bench.keys('Escape')
    return wait_for(lambda: not explained())


def popups():
    pid = str(bench.window.get_process_id())
    return set(subprocess.check_output(['xdotool', 'search', '--onlyvisible', '--pid', pid], text=True).split())


def told_at(node):
    """Whether something is told under the pointer over its first word."""
    x, y = bench.box(node).x + 15, bench.centre(node)[1]
    xdotool('mousemove', 5, 5)
    bench.settle()
    before = popups()
    for step in range(6):
        xdotool('mousemove', x + step % 3, y)  # and resting there for half a second
        if wait_for(lambda: popups() - before, 1):
            return True
    return False


bench = start()

# ---- Words of the trade ----

tap.ok(bench.has('label', '^First lesson: step 1 of '), 'the lesson begins')
words = open_words()
tap.ok({'flute', 'spoilboard', 'show face', 'motor side'} <= set(words), 'a key lists the words that stand there', words)
tap.same(words.get('spoilboard'), 'A waste board under the work, which may be cut into.', 'each with what it means')
tap.ok('rpm' not in words and 'feed' not in words, 'and none that does not stand there', words)
tap.same(list(words)[:2], ['straight bit', 'plywood'], 'in the order in which they stand')
bench.picture('words')
bench.keys('Down', 'Down')
tap.ok(wait_for(lambda: bench.focused([n for n in bench.walk() if n.seen_role == 'list item' and ': ' in n.seen])),
       'which the keyboard goes through', lambda: bench.names('list item'))
bench.keys('a', '1')
tap.ok(close_words(), 'Escape closes them')
tap.ok(bench.has('push button', '^To the question$'), 'and no key meant an answer')
bench.keys('Return')
tap.ok(wait_for(lambda: [n for n in bench.walk() if n.seen_role == 'radio button']), 'the question is asked')
typeset = bench.names('label')
more = open_words()
tap.ok({'bed', 'pass', 'outline', 'gantry', 'fuzzy'} <= set(more) and 'flute' not in more, 'then they are those of the question', more)
tap.ok(not any(re.search('motor side|hidden face', name) for name in typeset) and {'motor side', 'hidden face'} <= set(more),
       'with those that stand in the drawing alone', more)
close_words()
bench.click(bench.find('push button', '^Words$'))
tap.ok(wait_for(lambda: explained() == more), 'a button lists them too', explained)
close_words()
tap.ok(told_at(bench.find('label', '^outline, ')), 'under the pointer a word tells what it means')
tap.ok(not told_at(bench.find('label', '^Board$')), 'one that needs no telling tells nothing')
# ---- A lesson that isn't finished ----


def choices():
    return [n for n in bench.walk() if n.seen_role == 'radio button']


def drawn():
    return bench.text(bench.find('text', '^Numbers drawn by'))


def lesson_row():
    return next(n for n in bench.walk() if n.seen_role == 'list item' and n.seen.startswith('First lesson,'))


tap.ok(wait_for(lambda: 'Goes on at step 1 of 9' in lesson_row().seen), 'the list says how far one is', lambda: lesson_row().seen)
wait_for(lambda: bench.focused(choices()))
bench.keys('b', 'Return')
tap.ok(bench.has('label', '^Right is$|^Why$'), 'it is answered', lambda: bench.names('label'))
bench.keys('Return', 'a', 'Return')
tap.ok(bench.has('label', ': one thing changes$') and bench.has('label', '^You said$'), 'and its follow-up')
bench.keys('Return')
tap.ok(bench.has('label', '^First lesson: step 2 of 9$'), 'the lesson goes on', lambda: bench.names('label'))
bench.keys('Return', 'c', 'Return')
tap.ok(bench.has('label', '^You said$'), 'the second step is answered too')
numbers = drawn()
tap.ok(wait_for(lambda: 'Goes on at step 2 of 9' in lesson_row().seen), 'and the list follows', lambda: lesson_row().seen)
bench.picture('lesson-left')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
bench = start()
tap.ok(bench.has('label', '^First lesson: step 2 of 9$'), 'another day it goes on at that step', lambda: bench.names('label'))
tap.same(drawn(), numbers, 'with the same numbers')
tap.ok(bench.has('label', '^You said$') and bench.has('label', '^Both$'), 'and what was answered stands there', lambda: bench.names('label'))
bench.click(next(n for n in bench.walk() if n.seen_role == 'list item' and n.seen.startswith('An up-cut bit in MDF,')))
tap.ok(bench.has('label', '^Difficulty 1: '), 'an exercise of its own is chosen')
bench.click(lesson_row())
tap.ok(bench.has('label', '^First lesson: step 2 of 9$'), 'the lesson is taken up again where it was')
bench.click(bench.find('push button', '^Begin again$'))
tap.ok(bench.has('label', '^First lesson: step 1 of 9$') and bench.has('push button', '^To the question$'), 'and can be begun again')
tap.ok(wait_for(lambda: drawn() != numbers), 'with other numbers', drawn)
tap.ok(bench.lacks('push button', '^Begin again$'), 'which at its beginning is not offered')
bench.keys('Return')
tap.ok(wait_for(choices), 'and it asks anew')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
shutil.rmtree(home, ignore_errors=True)
sys.exit(tap.done())
