#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every language of po/LINGUAS is complete: nothing shown is untranslated or only guessed at, and placeholders, quotes
and access keys are those of the sentence translated. Prints TAP; the argument is the root of the source tree."""
import os
import pathlib
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(sys.argv[1])
PO = ROOT / 'po'
# The keywords of Meson's preset "glib", which makes the template.
KEYWORDS = ['_', 'N_', 'C_:1c,2', 'NC_:1c,2', 'g_dcgettext:2', 'g_dngettext:2,3', 'g_dpgettext2:2c,3']
SHOWN_MOST = 20
DIRECTIVE = re.compile(r'%(?:\d+\$)?[-+ #0]*[\d*]*(?:\.[\d*]+)?(?:hh|h|ll|l|z|j)?[a-zA-Z%]')
number = 0


def check(rule, breaches):
    global number
    number += 1
    print(f"{'not ok' if breaches else 'ok'} {number} - {rule}")
    for breach in breaches[:SHOWN_MOST]:
        print('#   ' + breach.replace('\n', '\n#     '))
    if len(breaches) > SHOWN_MOST:
        print(f'#   and {len(breaches) - SHOWN_MOST} more')


def run(*command):
    # Warnings are read, so they are wanted in English.
    return subprocess.run([str(word) for word in command], cwd=ROOT, capture_output=True, encoding='utf-8',
                          env={**os.environ, 'LC_ALL': 'C.UTF-8', 'LANGUAGE': 'en'}, check=False)


def complaints(*command):
    ran = run(*command)
    said = [line for line in ran.stderr.split('\n') if line.strip()]
    return said or ([f'{command[0]} ended with {ran.returncode}'] if ran.returncode != 0 else [])


def listed(path):
    words = []
    for line in path.read_text(encoding='utf-8').split('\n'):
        words += line.split('#')[0].split()
    return words


def make_template(template):
    return complaints('xgettext', '--from-code=UTF-8', '--package-name=spelch', '--add-comments',
                      *(f'--keyword={keyword}' for keyword in KEYWORDS), f'--files-from={PO / "POTFILES.in"}',
                      f'--directory={ROOT}', f'--output={template}')


def entries(path):
    """Each entry of a catalogue as a dictionary of its keywords; obsolete ones and the header are left out."""
    for block in re.split(r'\n\s*\n', path.read_text(encoding='utf-8')):
        entry, word = {}, None
        for line in block.split('\n'):
            found = re.match(r'(?:(msgctxt|msgid_plural|msgid|msgstr(?:\[\d\])?)\s+)?"(.*)"$', line)
            if found:
                word = found.group(1) or word
                entry[word] = entry.get(word, '') + found.group(2)
            elif line.startswith('#,') and 'fuzzy' in line:
                entry['fuzzy'] = line
        if entry.get('msgid'):
            yield entry


def said_in(entry):
    return [words for word, words in entry.items() if word.startswith('msgstr')]


def untranslated(merged):
    return [entry['msgid'] for entry in merged if '' in said_in(entry) or 'fuzzy' in entry]


def other_placeholders(merged):
    for entry in merged:
        asked = [sorted(DIRECTIVE.findall(entry[word])) for word in ('msgid', 'msgid_plural') if word in entry]
        for said in said_in(entry):
            # The msgid tells of one thing what the plural tells of many; either may leave out the count.
            found = sorted(re.sub(r'\d+\$', '', one) for one in DIRECTIVE.findall(said))
            if said and found not in asked:
                yield f"{entry['msgid']}\n{said}"


def other_ends(merged):
    """A fragment keeps the spaces and line ends by which it joins its neighbours."""
    for entry in merged:
        first = entry['msgid']
        for said in said_in(entry):
            if said and (said.startswith(' ') != first.startswith(' ') or said.endswith(' ') != first.endswith(' ')
                         or said.endswith('\\n') != first.endswith('\\n')):
                yield f'"{first}"\n"{said}"'


def unequal_blanks(merged):
    return [f"{entry['msgid']}\n{said}" for entry in merged for said in said_in(entry)
            if said and entry['msgid'].count('\u00a0') != said.count('\u00a0')]


def language_checks(language, template, folder):
    catalogue, merged = PO / f'{language}.po', folder / f'{language}.po'
    if not catalogue.is_file():
        check(f'{language}: po/{language}.po exists', ['it does not'])
        return
    check(f'{language}: msgfmt finds nothing wrong',
          complaints('msgfmt', '--check', '--check-accelerators=_', f'--output-file={folder / "messages.mo"}', catalogue))
    check(f'{language}: it can be brought up to date',
          complaints('msgmerge', '--quiet', '--no-fuzzy-matching', f'--output-file={merged}', catalogue, template))
    found = list(entries(merged)) if merged.is_file() else []
    check(f'{language}: every message of the sources is translated',
          untranslated(found) if found else ['there are none'])
    check(f'{language}: every placeholder is kept', list(other_placeholders(found)))
    check(f'{language}: spaces and line ends at either end are kept', list(other_ends(found)))
    check(f'{language}: no-break spaces are kept', unequal_blanks(found))


languages = listed(PO / 'LINGUAS')
with tempfile.TemporaryDirectory() as made:
    made_template = pathlib.Path(made) / 'spelch.pot'
    check('the sources give whole messages', make_template(made_template))
    check('every catalogue is in po/LINGUAS',
          [path.name for path in PO.glob('*.po') if path.stem not in languages])
    for one in languages:
        language_checks(one, made_template, pathlib.Path(made))
print(f'1..{number}')
