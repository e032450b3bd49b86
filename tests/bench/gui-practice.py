#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Practice: each kind of question answered right and wrong by real keys and drags, the prediction beside the result, the follow-up,
the first lesson walked through to its end, progress kept under a name and exported, the same answers graded again by the command
line, sheets of questions and answers as PDF, a teacher's own exercises, and what can't be kept."""
import csv
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
home = pathlib.Path(tempfile.mkdtemp(prefix='spelch-practice-'))
LOG = home / 'data' / 'spelch' / 'practice.json'
SEED = '7'
TITLE = 'Practice'


def turn_to(bench, title):
    bench.window = wait_for(lambda: next((f for f in bench.frames() if f.name == title), None))
    if not bench.window:
        sys.exit(f'Bail out! No window is called {title!r}: {[f.name for f in bench.frames()]}')
    bench.settle()


def start():
    """The program with the window for practice open, and only that looked at."""
    bench = Bench(home=home)
    bench.main = bench.window
    bench.walk = lambda root=None: Bench.walk(bench, root or bench.window)

    def opened():
        bench.keys('ctrl+shift+p')
        return wait_for(lambda: any(f.name == TITLE for f in bench.frames()), 1)
    wait_for(opened)
    turn_to(bench, TITLE)
    return bench


def press(name):
    """By the action: it may stand below what is scrolled into view."""
    button = wait_for(lambda: next((n for n in bench.walk() if n.seen_role == 'push button' and re.search(name, n.seen)), None))
    if not button:
        raise LookupError(f'no button named like {name!r}')
    button.queryAction().doAction(0)
    bench.settle()


def evidence():
    return [n for n in bench.walk() if n.seen_role == 'label' and re.search(r'geometry|by analogy|measured|shop practice', n.seen)]


def unfold(name):
    bench.click(bench.find('label', name))


def kept():
    return json.loads(LOG.read_text())['practice'] if LOG.exists() else []


def said(name):
    """The words that stand under one of the two captions."""
    labels = [n.seen for n in bench.walk() if n.seen_role == 'label']
    return labels[labels.index(name) + 1] if name in labels else None


def words():
    """What is said, without the list."""
    labels = bench.names('label')
    return labels[labels.index(next(x for x in labels if 'answered right' in x)):]


def verdict():
    return next((n.seen for n in bench.walk() if n.seen_role == 'label' and re.match("That is right|That isn't what", n.seen)), None)


def command(*arguments):
    environment = dict(os.environ, XDG_DATA_HOME=str(home / 'data'), LC_ALL='C.UTF-8')
    return subprocess.run([os.environ['SPELCH_COMMAND'], 'practice', *arguments], env=environment, capture_output=True, text=True, check=False)


def asked(exercise, *more):
    return json.loads(command('--show', exercise, '--seed', SEED, '--json', *more).stdout)


def codes_of(question):
    return [choice['choice'] for choice in question['choices']]


def rows():
    return [n for n in bench.walk() if n.seen_role == 'list item']


def go_to(title):
    """Chooses an exercise in the list, which is scrolled to it."""
    row = next(n for n in rows() if n.seen.startswith(title + ','))
    whole = bench.box(bench.find('list', '^Lessons and exercises$'))
    top, bottom = 140, 760  # of what is in sight
    for _ in range(60):
        place = bench.box(row)
        if top < place.y and place.y + place.height < bottom:
            break
        xdotool('mousemove', whole.x + 100, 400, 'click', 4 if place.y <= top else 5)
        bench.settle()
    bench.click(row)
    return bench.has('label', f'^{re.escape(title)}$')


def choices():
    return [n.seen for n in bench.walk() if n.seen_role == 'radio button']


def drawn():
    return bench.text(bench.find('text', '^Numbers drawn by'))


def draw(seed):
    bench.type_into(bench.find('text', '^Numbers drawn by'), seed, 'Tab')


def draw_others():
    before = drawn()
    press('^Draw others$')
    return wait_for(lambda: drawn() != before and verdict() is None)


bench = start()
tap.ok(bench.has('label', '^First lesson: step 1 of '), 'who has answered nothing yet begins with the first lesson')

# ---- Before anything is answered ----

tap.ok(bench.has('label', '^0 of [0-9]+ answered right$'), 'nobody has answered anything yet')
bench.type_into(bench.find('text', '^Learner'), 'Ada', 'Tab')
tap.ok(wait_for(lambda: 'learner=Ada' in (home / 'config' / 'spelch' / 'preferences.ini').read_text(), 5), 'the name is remembered')
bench.type_into(bench.find('text', '^Learner'), ' ', 'Tab')
tap.ok(bench.has('label', '^Write a name'), 'without a name it says what to do')
bench.type_into(bench.find('text', '^Learner'), 'Ada', 'Tab')
tap.ok(bench.lacks('label', '^Write a name'), 'with one it is content')
bench.type_into(bench.find('text', '^Numbers drawn by'), 'seven', 'Tab')
tap.ok(bench.has('label', '^“seven” isn\'t the number of a draw'), 'a wrong seed is told beside its field')
tap.same(bench.text(bench.find('text', '^Numbers drawn by')), 'seven', 'and what was typed stays')
draw(SEED)
tap.ok(bench.lacks('label', 'isn\'t the number of a draw'), 'a right one is taken')

# ---- A choice: which face tears? ----

tap.ok(go_to('An up-cut bit in plywood'), 'an exercise is chosen')
tap.same([c.split(': ')[0] for c in choices()], ['A', 'B', 'C', 'D'], 'its choices are lettered')
lead = asked('tears-up-cut-ply')['lead']
tap.ok(bench.has('label', f'^{re.escape(lead)}$'), 'its numbers are those that the seed draws everywhere', words)
tap.ok(not bench.all('slider') and not [n for n in bench.walk() if 'splinter' in n.seen.lower() or 'torn grain' in n.seen],
       'before it is answered nothing tells what comes out', lambda: bench.names('slider'))
bench.picture('practice-asked')
bench.keys('Return')
tap.ok(bench.has('label', '^Choose what you expect first'), 'without a choice it asks for one')
tap.same(kept(), [], 'and keeps nothing')
bench.keys('b', 'Return')
tap.ok(bench.has('label', "^That isn't what comes out"), 'a wrong answer is told so in words', verdict)
tap.same((said('You said'), said('Right is')), ('The one on the far side', 'The one toward the motor'), 'the prediction stands above what is right')
reasons = asked('tears-up-cut-ply', '--answer', 'far')
tap.ok(reasons['wrong_because'] in ' '.join(bench.names('label')), 'the wrong choice gets its own reason, as on the command line',
       words)
tap.ok(all(bench.has('label', f'^{re.escape(why)}$') for why in reasons['why']), 'and the result its reasons')
tap.ok(not any(why in reasons['wrong_because'] for why in reasons['why']), 'which are told apart', reasons)
tap.ok(not evidence(), 'points and sources are out of sight at first', words)
tap.ok(wait_for(lambda: len(kept()) == 1, 5), 'the answer is kept at once', kept)
first = (kept() or [{}])[0]
tap.same({k: first.get(k) for k in ('learner', 'exercise', 'seed', 'answer', 'right')},
         {'learner': 'Ada', 'exercise': 'tears-up-cut-ply', 'seed': 7, 'answer': 'far', 'right': False}, 'with who answered what')
tap.ok(bench.has('slider', '^Pass 1.*show face torn'), 'the drawing shows what comes out', lambda: bench.names('slider'))
tap.ok(bench.has('label', '^Answered, not yet right$'), 'the list says so in words', lambda: bench.names('label'))
bench.picture('practice-wrong')
unfold('^Show the reckoning$')
tap.ok(wait_for(evidence), 'behind a fold stands the reckoning with its evidence', words)
tap.ok(all(bench.has('label', f'^{re.escape(line)}$') for line in reasons['reckoning']), 'as on the command line', words)
bench.drag(bench.find('slider', '^Pass 1'), 0, 20)
tap.ok(verdict() is not None and len(kept()) == 1, 'afterwards one may try things out in the drawing: the answer stays')

# ---- The follow-up ----

tap.ok(bench.has('push button', '^Now one thing changes$') and bench.has('label', '^Toward the motor: the hidden face'), 'what changes stands beside the button', words)
bench.click(bench.find('push button', '^Now one thing changes'))
tap.ok(bench.has('label', '^Toward the motor: the hidden face instead of the show face'), 'the follow-up says what changes', words)
tap.ok(verdict() is None, 'and asks again')
bench.keys('a', 'Return')
tap.ok(bench.has('label', '^That is right'), 'a right answer is told so in words', verdict)
tap.ok(bench.has('label', '^Why$') and said('Right is') is None, 'and what was said is said once')
tap.ok(not evidence(), 'with the reckoning folded away again', words)
tap.ok(wait_for(lambda: [(a.get('follow_up'), a['right']) for a in kept()][1:] == [(True, True)], 5), 'it is kept as one to the follow-up', kept)
press('^Back$')
tap.ok(wait_for(lambda: said('You said') == 'The one on the far side'), 'going back shows the question as it was answered', words)

# ---- The other kinds, right and wrong ----

CODES = {'way-up-up-cut': 'Which way up for an up-cut bit?', 'limit-slow-machine': 'A dado on the old gantry',
         'bit-plywood-dado': 'A bit for a dado in plywood', 'hold-tabs': 'A small piece on tabs'}
for exercise, title in CODES.items():
    question = asked(exercise)
    codes = codes_of(question)
    right = asked(exercise, '--answer', codes[0])['right_answer']
    wrong = next(i for i, code in enumerate(codes) if code != right)
    tap.ok(go_to(title), f'{exercise}: asked')
    bench.keys(str(wrong + 1), 'Return')
    tap.ok(bench.has('label', "^That isn't what comes out"), f'{exercise}: answered wrong', verdict)
    tap.ok(wait_for(lambda: (kept()[-1]['exercise'], kept()[-1]['answer'], kept()[-1]['right']) == (exercise, codes[wrong], False), 5),
           f'{exercise}: kept', kept()[-1])
    bench.picture(f'practice-{exercise}')
    draw_others()
    tap.ok(drawn() != SEED and choices(), f'{exercise}: with other numbers it asks anew', words)
    SEED = drawn()
    codes = codes_of(asked(exercise))
    right = asked(exercise, '--answer', codes[0])['right_answer']
    bench.keys(chr(ord('a') + codes.index(right)), 'Return')
    tap.ok(bench.has('label', '^That is right'), f'{exercise}: answered right', verdict)
    tap.ok(wait_for(lambda: (kept()[-1]['answer'], kept()[-1]['right']) == (right, True), 5), f'{exercise}: kept too', lambda: kept()[-1])
    SEED = '7'
    draw(SEED)

# ---- How deep must the first pass be? ----

tap.ok(go_to('The first pass in plywood'), 'a depth is asked for')
mark = bench.mark('Pass 1')
tap.ok('face' not in mark.name, 'its mark tells no verdict', mark.name)
tap.ok(bench.lacks('slider', 'Thickness|Overcut', 1), 'and is the only one')
before = bench.value(mark)
bench.keys('Return')
tap.ok(bench.has('label', '^Drag the bit to the depth'), 'untouched it is no answer yet')
bench.drag(mark, 0, 6)
field = bench.find('text', '^Depth of the first pass')
tap.ok(wait_for(lambda: bench.value(mark) > before and bench.text(field), 5), 'dragged, the depth stands in the field', lambda: bench.text(field))
tap.near(float(bench.text(field).split()[0]), bench.value(mark), 0.051, 'the same as in the drawing')
at = bench.value(mark)
bench.click(mark)
bench.keys('Down', 'Down')
tap.near(lambda: bench.value(mark), at + 0.2, 0.01, 'arrow keys move it by a tenth')
bench.type_into(field, '5 mm')
tap.near(lambda: bench.value(bench.mark('Pass 1')), 5, 1e-6, 'typed, the bit goes there')
bench.picture('practice-depth')
bench.keys('Return')
tap.ok(bench.has('label', "^That isn't what comes out"), 'too shallow is wrong', verdict)
tap.same(said('You said'), '5.0 mm deep', 'what was said stands there')
tap.ok(bench.has('slider', '^Pass 1, 5.0 mm, show face.*torn'), 'and is drawn with what it does', lambda: bench.names('slider'))
tap.ok(wait_for(lambda: (kept()[-1]['answer'], kept()[-1]['right']) == ('5.00 mm', False), 5), 'it is kept', lambda: kept()[-1])
press('^Now one thing changes')
deep = asked('first-pass-plywood', '--follow-up', '--answer', 'none')['right_answer']
bench.type_into(bench.find('text', '^Depth of the first pass'), deep, 'Return')
tap.ok(bench.has('label', '^That is right'), 'deep enough is right', verdict)
draw_others()
bench.click(bench.find('check box', '^No depth will do'))
bench.keys('Return')
tap.ok(bench.has('label', "^That isn't what comes out"), '“no depth” is an answer too', verdict)
tap.ok(wait_for(lambda: kept()[-1]['answer'] == 'none', 5), 'and kept as such', lambda: kept()[-1])
SEED = '8'
draw(SEED)

# ---- The first lesson ----

tap.ok(go_to('First lesson') or True, 'the lesson is chosen')
STEPS = ['a', 'a', 'b', None, 'a', None, 'd', 'b', 'e']
TWICE = (0, 1, 2, 5, 6, 8)  # whose follow-up is asked
for step, key in enumerate(STEPS):
    tap.ok(bench.has('label', f'^First lesson: step {step + 1} of {len(STEPS)}$'), f'step {step + 1}: it says how far it is', words)
    tap.ok(bench.has('push button', '^To the question$'), f'step {step + 1}: it tells first')
    if step == 0:
        bench.picture('practice-lesson')
    bench.keys('Return')
    tap.ok(wait_for(lambda: choices() or bench.all('text', '^Depth of the first pass')), f'step {step + 1}: then it asks')
    if step == 1:
        press('^Back$')
        tap.ok(bench.has('push button', '^To the question$'), 'back leads to what was told')
        bench.keys('Return')
    if key is None and choices():
        codes = codes_of(asked('bit-plywood-outline'))
        key = chr(ord('a') + codes.index('compression-6.35x22'))
    if key is None:
        bench.type_into(bench.find('text', '^Depth of the first pass'), '10 mm', 'Return')
    elif verdict() is None:
        bench.keys(key, 'Return')
    tap.ok(wait_for(lambda: verdict() is not None), f'step {step + 1}: and shows what comes out')
    press('^Go on$')
    if step in TWICE:
        tap.ok(bench.has('label', ': one thing changes$'), f'step {step + 1}: then one thing changes')
        if choices():
            bench.keys('a', 'Return')
        else:
            bench.type_into(bench.find('text', '^Depth of the first pass'), '12 mm', 'Return')
        tap.ok(wait_for(lambda: verdict() is not None), f'step {step + 1}: which is answered as well')
        press('^Go on$')
tap.ok(bench.has('label', '^That is the end of the lesson$'), 'it comes to an end', words)
tap.ok(bench.has('label', '^That was a straight bit'), 'with closing words')
bench.picture('practice-closing')
press('^Back$')
tap.ok(bench.has('label', '^First lesson: step 9 of 9$'), 'from which one can go back')
for button, then in (('^To the question$', 'A small piece on tabs$'), ('^Go on$', ': one thing changes$'), ('^Go on$', '^That is the end')):
    press(button)
    tap.ok(wait_for(lambda: verdict() or bench.all('label', '^That is the end')) and bench.has('label', then), 'and on again', words)
press('^To the exercises$')
tap.ok(wait_for(lambda: next((n for n in rows() if n.seen.startswith('First lesson,') and n.seen.endswith(', finished')), None)),
       'the lesson is marked as finished in the list', lambda: [n.seen for n in rows()][:2])
tap.ok(bench.has('label', '^Difficulty 1: '), 'or on to the exercises', words)

# ---- Out of the window ----


def save_as(item, path):
    """Takes a menu item and types where to."""
    bench.click(bench.find('push button', '^Sheets and answers$'))
    bench.find('menu item', item).queryAction().doAction(0)
    dialog = wait_for(lambda: next((f for f in bench.frames() if f.name not in (TITLE, bench.main.name)), None))
    bench.window = dialog
    bench.settle()
    bench.type_into(wait_for(lambda: bench.all('text')[0]), str(path), 'Return')
    wait_for(lambda: dialog not in bench.frames())
    turn_to(bench, TITLE)


table = home / 'answers.csv'
save_as('^Export answers', table)
tap.ok(bench.has('label', f'^{len(kept())} answers were written to'), 'answers go out as a table, which is said', words)
exported = list(csv.DictReader(table.open(encoding='utf-8'))) if table.exists() else []
tap.same([(r['learner'], r['exercise'], r['seed'], r['answer']) for r in exported],
         [(a['learner'], a['exercise'], str(a['seed']), a['answer']) for a in kept()], 'with all that was answered')
again = command('--regrade', str(table))
tap.same(again.returncode, 0, 'the command line reads it')
tap.ok(re.search(rf'{len(exported)} answers: .* 0 graded otherwise than before, 0 not graded', again.stderr), 'and grades every answer the same', again.stderr)
for item, name in (('^Save questions', 'questions.pdf'), ('^Save answers', 'answers.pdf')):
    save_as(item, home / name)
    tap.ok(wait_for(lambda: (home / name).exists() and (home / name).read_bytes().startswith(b'%PDF'), 5), f'{name} is a PDF')
tap.ok(bench.has('label', r'answers\.pdf is written: \d+ pages?, numbers of draw 8\.$'), 'which is said with the seed', words)

# ---- Kept over a restart ----

right = next(n.seen for n in bench.walk() if re.match(r'\d+ of \d+ answered right', n.seen)).split()[0]
tap.ok(int(right) > 5, 'progress is told', right)
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()

folder = home / 'data' / 'spelch' / 'exercises'
folder.mkdir(parents=True)
own = json.loads((pathlib.Path(os.environ['SPELCH_DEMO']).parent / 'exercises' / 'tears-mdf-up-cut.json').read_text())
own.update(id='my-own', title='Mine, from the workshop')
(folder / 'my-own.json').write_text(json.dumps(own))
(folder / 'spoilt.json').write_text('{"format_version": 1, "asks": "tears"')
answers_before = kept()
bench = start()
tap.same(bench.text(bench.find('text', '^Learner')), 'Ada', 'the learner is there again')
tap.ok(bench.has('label', '^Difficulty [1-5]: ') and bench.lacks('label', '^First lesson: step', 1), "and isn't led into the lesson again", words)
tap.ok(bench.has('label', f'^{right} of [0-9]+ answered right$'), 'with the progress as it was', words)
tap.ok([n for n in bench.walk() if n.seen_role == 'list item' and n.seen.startswith('Mine, from the workshop')], "a teacher's own exercise is in the list")
tap.ok(bench.has('label', 'spoilt.json'), 'one that is spoilt is told of', words)
press('^Close$')
bench.lacks('label', 'spoilt.json')  # what stands below moves up
bench.settle()
bench.type_into(bench.find('text', '^Learner'), 'Grace', 'Tab')
tap.ok(bench.has('label', '^0 of [0-9]+ answered right$'), 'another learner has her own progress')
tap.ok(not any(n.seen.endswith(', finished') for n in rows()), 'and a lesson of her own to finish')

# An answer that can't be written isn't lost.
text = LOG.read_text()
LOG.write_text('{')
go_to('An up-cut bit in plywood')
bench.keys('a', 'Return')
tap.ok(bench.has('label', r'practice\.json'), 'what keeps an answer from being written is said', words)
tap.ok(verdict() is not None, 'the result is shown all the same')
bench.keys('ctrl+w')
tap.ok(bench.has('label', "^[^$]*1 answer isn't kept yet"), 'and the window doesn\'t close over it unasked', words)
LOG.write_text(text)
draw_others()
bench.keys('a', 'Return')
tap.ok(wait_for(lambda: [a['learner'] for a in kept()[len(answers_before):]] == ['Grace', 'Grace'], 5), 'it is written with the next', kept)
bench.end()
shutil.rmtree(home, ignore_errors=True)
sys.exit(tap.done())
