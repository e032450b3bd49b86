#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""In the language named: the windows speak it, numbers have a comma and are read with it, and longer words cut nothing off."""
import re
import sys
import tempfile

from gui import MENU_MOST, Bench, Tap, wait_for, xdotool
from spoken import becomes_as_narrow_as, extents, locale_in, texts, uncited

# What each language calls what is looked at, as a user reads it. A word that looks English but isn't is left out of "english".
LANGUAGES = {
    'de': {
        'locale': 'de_DE',
        'english': r'\b(the|and|face|depth|pass|passes|edge|feed|speed|with|not|of|from)\b',
        'drawer': 'Fräserlade', 'turn over': 'Wenden', 'pass': 'Durchgang 1', 'plan': 'Das Teil…', 'part': 'Das Teil',
        'clean': '9,2 mm, Sichtseite sauber', 'torn': 'Durchgang 1, 6,5 mm, Sichtseite ausgerissen',
        'undo': 'Rückgängig: Durchgang 1 verschieben', 'speed': 'Drehzahl', 'rpm': 'U/min', 'cut': 'Fräsung 1 von 6',
        'shelves': {'Fräserlade': 'ctrl+shift+b', 'Platten': 'ctrl+shift+d', 'Maschinen': 'ctrl+shift+m',
                    'Werkstattbuch': 'ctrl+shift+l', 'Nebeneinander – Flurschrank, linke Seite': 'ctrl+shift+c'},
        'others': {'Einstellungen': 'ctrl+comma', 'So liest man die Zeichnung': 'F1'},
    },
    'fr': {
        'locale': 'fr_FR',
        'english': r'\b(the|and|depth|pass|edge|feed|speed|with|not|of|from|board|bit|cut|motor|side|by|to|is)\b',
        'drawer': 'Tiroir à fraises', 'turn over': 'Retourner', 'pass': 'Passe 1', 'plan': 'La pièce…', 'part': 'La pièce',
        'clean': '9,2 mm, parement\u202f: propre', 'torn': 'Passe 1, 6,5 mm, parement\u202f: fil arraché',
        'undo': 'Annuler\u202f: déplacer la passe 1', 'speed': 'Rotation', 'rpm': 'tr/min', 'cut': 'Usinage 1 sur 6',
        'shelves': {'Tiroir à fraises': 'ctrl+shift+b', 'Panneaux': 'ctrl+shift+d', 'Machines': 'ctrl+shift+m',
                    'Carnet d’atelier': 'ctrl+shift+l', 'Côte à côte – Meuble d’entrée, côté gauche': 'ctrl+shift+c'},
        'others': {'Préférences': 'ctrl+comma', 'Lire le dessin': 'F1'},
    },
}

tap = Tap()
language = sys.argv[1]
if language not in LANGUAGES:
    sys.exit(f"{language} is in po/LINGUAS; LANGUAGES in tests/bench/gui-languages.py must say what it calls things")
words = LANGUAGES[language]
made = tempfile.TemporaryDirectory()
spoken = locale_in(made.name, words['locale'])
if spoken is None:
    print(f"1..0 # SKIP the locale {words['locale']} can't be made here")
    sys.exit(0)

bench = Bench(environment={**spoken, 'LANGUAGE': language})
main = bench.window
ENGLISH = re.compile(words['english'])
bench.only_window = True


def english_left():
    """What is read in the window looked at and has an English word, but isn't somebody's name for something."""
    return sorted(text for text in texts(bench) if ENGLISH.search(uncited(text)))


def literal(text):
    return f'^{re.escape(text)}$'


# The bench.
tap.ok(bench.has('label', literal(words['drawer'])), 'the bench speaks the language', lambda: bench.names('label'))
tap.ok(bench.has('push button', literal(words['turn over'])), 'so do its buttons')
tap.same(english_left(), [], 'no sentence stays English')


def figures():
    """The height of each figure that is told with its name."""
    told = [node for node in bench.all('label') if ': ' in node.seen.replace('\u202f', '')]
    return {node.seen: extents(node).height for node in told}


cuts = bench.all('list item')
before = figures()
bench.click(cuts[1])
wait_for(lambda: figures().keys() != before.keys())
bench.click(cuts[0])
tap.ok(wait_for(lambda: figures() == before), 'a figure that took two lines for another cut gives them back', lambda: (before, figures()))
mark = bench.mark(words['pass'])
tap.ok(words['clean'] in mark.name, 'a mark tells its depth with a comma, and its verdict', mark.name)
field = bench.entry(words['pass'])
bench.type_into(field, '6,5', 'Return')
tap.ok(wait_for(lambda: abs(bench.value(bench.mark(words['pass'])) - 6.5) < 1e-6, 5), 'a depth typed with a comma is taken')
tap.ok(bench.has('slider', '^' + re.escape(words['torn'])), 'and the verdict follows', lambda: bench.mark(words['pass']).name)
tap.ok(bench.has('push button', literal(words['undo'])), 'undo names the step', lambda: bench.names('push button'))
bench.keys('ctrl+z')
speed = bench.find('text', literal(words['speed']))
shown = bench.text(speed)
tap.ok(re.fullmatch(rf"\d\d\s\d\d\d {words['rpm']}", shown), f"the spindle speed is shown in {words['rpm']}", shown)
bench.type_into(speed, f"18 000 {words['rpm']}", 'Return')
tap.ok(wait_for(lambda: bench.text(bench.find('text', literal(words['speed']))).replace('\u202f', ' ').startswith('18 000'), 5),
       'and read in it', lambda: bench.text(bench.find('text', literal(words['speed']))))
bench.keys('ctrl+z')
tap.ok(becomes_as_narrow_as(bench, 960, 640), 'the window becomes 960 wide', lambda: extents(main).width)
bench.picture(f'{language}-bench')
tap.ok(0 < bench.menu_bottom() < MENU_MOST, 'the menu has room in a window 640 high, at half as large a text too', bench.menu_bottom)


def overlap(a, b):
    return a.x < b.x + b.width and b.x < a.x + a.width and a.y < b.y + b.height and b.y < a.y + a.height


# The forms beside the drawing.
def shows_form(title, what, picture):
    tap.ok(bench.has('label', literal(title)), f'the form of the {what} opens', lambda: bench.names('label'))
    tap.same(english_left(), [], f'no word of the {what} stays English')
    tap.ok(becomes_as_narrow_as(bench, 960, 640), f'with the form of the {what} the window stays 960 wide',
           lambda: extents(main).width)
    over = bench.box(bench.find('push button', literal(words['turn over'])))
    under = [bench.box(node) for node in bench.all('slider') + bench.all('toggle button')]
    tap.ok(under and not any(overlap(over, box) for box in under), 'what stands above the drawing keeps off its marks and faces', (over, under))
    bench.picture(f'{language}-{picture}')
    bench.keys('Escape')


bench.keys('F2')
shows_form(words['cut'], 'cut', 'cut')
bench.find('push button', literal(words['plan'])).queryAction().doAction(0)
shows_form(words['part'], 'part', 'part')


# The shelves and the comparison, as small as they may become, and the windows that stay as they are.
def opened_by(keys, title):
    """A key is lost while no window has the focus, which a window that closes gives back when it likes, and only to one that
    is under the pointer."""
    bench.window = main

    def opened():
        xdotool('mousemove', *bench.centre(main))
        bench.keys(keys)
        return wait_for(lambda: bench.frame(title), 1)

    bench.window = wait_for(opened)
    return tap.ok(bench.window, f'{title} opens by its key', lambda: [frame.name for frame in bench.frames()])


def close_by(key):
    title = bench.window.name
    bench.keys(key)
    wait_for(lambda: not bench.frame(title))


for shelf, shelf_keys in words['shelves'].items():
    if opened_by(shelf_keys, shelf):
        tap.ok(becomes_as_narrow_as(bench, 960, 640), f'{shelf} becomes 960 wide', lambda: extents(bench.window).width)
        tap.same(english_left(), [], f'no word of {shelf} stays English')
        bench.picture(f'{language}-{shelf}')
        close_by('ctrl+w')
for other, other_keys in words['others'].items():
    if opened_by(other_keys, other):
        tap.same(english_left(), [], f'no word of {other} stays English')
        bench.picture(f'{language}-{other}')
        close_by('Escape')

tap.same(bench.complaints(), [], 'nothing is complained of')
bench.end()
sys.exit(tap.done())
