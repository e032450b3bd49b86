#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""House rules that a compiler doesn't check. Prints TAP; the argument is the root of the source tree."""
import pathlib
import re
import shutil
import subprocess
import sys

ROOT = pathlib.Path(sys.argv[1])
# Which rooms a room may include headers of; data flows downwards.
MAY_INCLUDE = {
    'shop': {'shop'},
    'mechanics': {'mechanics'},
    'plan': {'shop', 'mechanics', 'plan'},
    'files': {'shop', 'mechanics', 'plan', 'files'},
    'drawing': {'shop', 'mechanics', 'plan', 'files', 'drawing'},
    'command': {'shop', 'mechanics', 'plan', 'files', 'drawing', 'command'},
    'bench': {'shop', 'mechanics', 'plan', 'files', 'drawing', 'bench'},
}
MOST_LINES = 600
CLANG_FORMAT = 14  # Debian 12's
SHOWN = re.compile(r'\b(?:_|N_|C_|NC_|Q_|ngettext|g_dngettext|gettext)\s*\(\s*"')
STRING = re.compile(r'"((?:[^"\\\n]|\\.)*)"')


def files(*patterns):
    found = [path for pattern in patterns for path in ROOT.glob(pattern) if path.is_file()]
    return sorted(path for path in found if not path.relative_to(ROOT).parts[0].startswith('_'))


def name(path):
    return str(path.relative_to(ROOT))


def text(path):
    return path.read_text(encoding='utf-8')


def scripts():
    return [path for path in files('.ci/*', 'docs/*', 'tests/**/*.py', 'data/*.py') if text_starts_with_hashbang(path)]


def text_starts_with_hashbang(path):
    return path.suffix not in {'.png', '.svg'} and path.read_bytes().startswith(b'#!')


def includes_going_up():
    for path in files('src/*/*.[ch]'):
        room = path.parent.name
        for other in re.findall(r'#include "([a-z]+)/', text(path)):
            if other in MAY_INCLUDE and other not in MAY_INCLUDE[room]:
                yield f'{name(path)} includes from {other}'


def gtk_outside_the_bench():
    for path in files('src/*/*.[ch]'):
        if path.parent.name != 'bench' and re.search(r'#include <(gtk|gdk|gsk)/', text(path)):
            yield name(path)


def without_a_licence():
    for path in files('src/**/*.[ch]', 'tests/**/*.[ch]') + scripts():
        if 'SPDX-License-Identifier: GPL-3.0-or-later' not in '\n'.join(text(path).split('\n')[:2]):
            yield name(path)


def headers_without_a_purpose():
    for path in files('src/**/*.h'):
        if not re.match(r'/\* SPDX[^\n]*\n \*\n \* [A-Z]', text(path)):
            yield name(path)


def too_long():
    for path in files('src/**/*.[ch]', 'tests/**/*.[ch]', 'tests/**/*.py', 'ui/*'):
        lines = text(path).count('\n')
        if lines > MOST_LINES:
            yield f'{name(path)}: {lines} lines'


def not_offered_to_translators():
    listed = set(text(ROOT / 'po' / 'POTFILES.in').split('\n'))
    for path in files('src/**/*.c'):
        if SHOWN.search(text(path)) and name(path) not in listed:
            yield name(path)
    for path in files('ui/*.ui'):
        if 'translatable="yes"' in text(path) and name(path) not in listed:
            yield name(path)


def translators_sent_to_nowhere():
    for line in text(ROOT / 'po' / 'POTFILES.in').split('\n'):
        if line and not line.startswith('#') and not (ROOT / line).is_file():
            yield line


def promises_of_safety():
    for path in files('src/**/*.c', 'ui/*.ui'):
        for said in STRING.findall(text(path)):
            if re.search(r'\bsafe(ly|ty|r)?\b', said, re.IGNORECASE):
                yield f'{name(path)}: "{said}"'


def jumps():
    for path in files('src/**/*.c', 'tests/**/*.c'):
        if re.search(r'\bgoto\s+\w+;', text(path)):
            yield name(path)


def laid_out_otherwise():
    """Each version of clang-format lays out a little differently: only the one the files are laid out by is asked."""
    version = subprocess.run(['clang-format', '--version'], capture_output=True, encoding='utf-8', check=False).stdout
    if f'version {CLANG_FORMAT}.' not in version:
        return
    asked = subprocess.run(['clang-format', '--dry-run', *files('src/**/*.[ch]', 'tests/**/*.[ch]', 'docs/*.c')], cwd=ROOT,
                           capture_output=True, encoding='utf-8', check=False).stderr
    found = re.findall(r'^(\S+?):\d+:\d+: warning', asked, re.MULTILINE)
    for path in sorted(set(found)):
        yield f'{name(pathlib.Path(path))}: ninja format mends it'


RULES = [
    ('rooms include only what is below them', includes_going_up),
    ('GTK stays in the bench', gtk_outside_the_bench),
    ('every source names its licence', without_a_licence),
    ('every header says what it is for', headers_without_a_purpose),
    (f'no file is longer than {MOST_LINES} lines', too_long),
    ('every file with shown words is in po/POTFILES.in', not_offered_to_translators),
    ('every file in po/POTFILES.in exists', translators_sent_to_nowhere),
    ('nothing shown calls a cut safe', promises_of_safety),
    ('no goto', jumps),
]
if shutil.which('clang-format'):
    RULES.append(('every C file is laid out by .clang-format', laid_out_otherwise))

print(f'1..{len(RULES)}')
for number, (rule, breaches) in enumerate(RULES, 1):
    found = list(breaches())
    print(f"{'not ok' if found else 'ok'} {number} - {rule}")
    for breach in found:
        print(f'#   {breach}')
