#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""In a language made up for the purpose: every letter of every message has a sign above or below it and each is half as long again. A
plain word left in a window escaped translation; a window that becomes too wide would be broken by a wordy language."""
import os
import pathlib
import re
import subprocess
import sys
import tempfile

from gui import Bench, Tap, wait_for, xdotool
from spoken import becomes_as_narrow_as, extents, locale_in, texts, uncited

SIGNED = str.maketrans('abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ', 'áƀçđéƒğĥíĵķłɱñóƥɋřšťúṽŵẋýžÁƁÇĐÉƑĞĤÍĴĶŁṀÑÓƤɊŘŠŤÚṼŴẊÝŽ')
# Placeholders, marks of menus and entities stay as they are.
KEPT = re.compile(r'(%(?:\d+\$)?[-+ 0#]*\d*(?:\.\d+)?(?:l?[dux]|[sgfc%]))')
PLAIN = re.compile(r'[A-Za-z]{3,}')
# Signs that every language writes alike.
ALIKE = re.compile(r'\b(rpm|mm|min|JSON|CSV|MDF|Ctrl|Shift|Alt|Tab|Page|Up|Down|Home|End|Enter|Space|Escape|IARC|ASTM|HSS)\b|F\d+')
# The toolkit's own words, in German here: the buttons of a window, and keys; and what it calls pieces within its own.
TOOLKIT = {'Maximieren', 'Minimieren', 'Schließen', 'Bild ab', 'Bild auf', 'Ende', 'Esc', 'Pos1', 'Strg', 'Tabulator', 'Umschalt', 'Leertaste'}


def made_up(text):
    pieces = KEPT.split(text)
    letters = len(re.findall('[A-Za-z]', text))
    # Long ones break where words do.
    more = ''.join('ñ' if i % 6 else ' ñ' for i in range(1, letters // 2 + 1)) if letters > 3 else ''
    head, tail = re.fullmatch(r'(.*?)(\s*)', ''.join(piece if KEPT.fullmatch(piece) else piece.translate(SIGNED) for piece in pieces), re.S).groups()
    return head + more + tail


def catalogue(folder):
    """Of all messages, as the German one has them."""
    source = pathlib.Path(os.environ['SPELCH_DEMO']).parent.parent / 'po' / 'de.po'
    found = subprocess.run(['msgattrib', '--no-obsolete', '--no-wrap', str(source)], capture_output=True, text=True, check=True).stdout
    entries, lines = [], []
    for block in found.split('\n\n')[1:]:
        texts_of = dict(re.findall(r'^(msgctxt|msgid|msgid_plural) ((?:".*"\n?)+)', block + '\n', re.M))
        if 'msgid' in texts_of:
            entries.append({key: ''.join(re.findall(r'"(.*)"', value)) for key, value in texts_of.items()})
    lines.append('msgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\nPlural-Forms: nplurals=2; plural=(n != 1);\\n"\n')
    for entry in entries:
        lines += [f'{key} "{value}"' for key, value in entry.items()]

        # Escapes aren't letters.
        def turned(text):
            return ''.join(piece if piece.startswith('\\') else made_up(piece) for piece in re.split(r'(\\.)', text)) if '\\' in text else made_up(text)
        if 'msgid_plural' in entry:
            lines += [f'msgstr[0] "{turned(entry["msgid"])}"', f'msgstr[1] "{turned(entry["msgid_plural"])}"', '']
        else:
            lines += [f'msgstr "{turned(entry["msgid"])}"', '']
    target = pathlib.Path(folder, 'de', 'LC_MESSAGES')
    target.mkdir(parents=True)
    (target / 'made-up.po').write_text('\n'.join(lines), 'utf-8')
    subprocess.run(['msgfmt', '-o', str(target / 'spelch.mo'), str(target / 'made-up.po')], check=True)
    return len(entries)


tap = Tap()
made = tempfile.TemporaryDirectory()
spoken = locale_in(made.name, 'de_DE')
if spoken is None:
    print("1..0 # SKIP the locale de_DE can't be made here")
    sys.exit(0)
count = catalogue(made.name)
tap.ok(count > 1000, 'every message is turned into the made-up language', count)
bench = Bench(environment={**spoken, 'LANGUAGE': 'de', 'SPELCH_LOCALE_DIR': made.name})
main = bench.window
bench.only_window = True


def plain():
    """What has a plain word that is nobody's name for something."""
    ours = (text for text in texts(bench) if text not in TOOLKIT and not text.startswith('Gtk'))
    return sorted(text for text in ours if PLAIN.search(ALIKE.sub('', uncited(text))))


# Exercises and lessons bring their own words, in German here.
TAUGHT = ' '.join(path.read_text('utf-8') for kind in ('exercises', 'lessons')
                  for path in (pathlib.Path(os.environ['SPELCH_DEMO']).parent / kind).glob('*.json'))


def looked_at(what):
    tap.same([text for text in plain() if re.split('[,:]', text)[0][:40] not in TAUGHT], [], f'{what}: no word escapes translation')
    tap.ok(becomes_as_narrow_as(bench, 1360, 860), f'{what}: words half as long again leave it within 1360 pixels',
           lambda: extents(bench.window).width)
    bench.picture('pseudo-' + what)


looked_at('bench')
bench.keys('F2')
bench.settle()
looked_at('cut')
bench.keys('Escape')
for what, keys, closed_by in (('bits', 'ctrl+shift+b', 'ctrl+w'), ('boards', 'ctrl+shift+d', 'ctrl+w'), ('machines', 'ctrl+shift+m', 'ctrl+w'),
                              ('log', 'ctrl+shift+l', 'ctrl+w'), ('side by side', 'ctrl+shift+c', 'ctrl+w'), ('practice', 'ctrl+shift+p', 'ctrl+w'),
                              ('preferences', 'ctrl+comma', 'Escape'),
                              ('reading', 'F1', 'Escape'), ('keys', 'ctrl+question', 'Escape')):
    bench.window = main
    before = len(bench.frames())

    def opened():
        xdotool('mousemove', *bench.centre(main))
        bench.keys(keys)
        return wait_for(lambda: len(bench.frames()) > before, 1)

    tap.ok(wait_for(opened), f'{what}: opens')
    bench.window = next(frame for frame in bench.frames() if frame.name != main.name)
    looked_at(what)
    bench.keys(closed_by)
    wait_for(lambda: len(bench.frames()) == before)
tap.same(bench.complaints(), [], 'nothing is complained of')
bench.end()
sys.exit(tap.done())
