#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The manual pages render without a warning, and a translated one names the same commands, options, files and exit codes
as the English one, in the same sections. Prints TAP; the argument is the root of the source tree."""
import os
import pathlib
import re
import subprocess
import sys

MAN = pathlib.Path(sys.argv[1]) / 'docs' / 'man'
FONTS = re.compile(r'[BIR]{1,2}$')
number = failed = 0


def check(rule, breaches):
    global number, failed
    number += 1
    failed += bool(breaches)
    print(f"{'not ok' if breaches else 'ok'} {number} - {rule}")
    for breach in breaches:
        print('#   ' + str(breach).replace('\n', '\n#   '))


def words_of(rest):
    """The arguments of a request; quotes hold one together."""
    return [quoted or bare for quoted, bare in re.findall(r'"([^"]*)"|(\S+)', rest)]


def sections(page):
    """What stands bold or italic in each section, of which the first lines are the head, and its layout: headings and tags."""
    found = [([], [])]
    for line in page.read_text(encoding='utf-8').split('\n'):
        request, _, rest = line[1:].partition(' ') if line.startswith('.') else ('', '', line)
        if request == 'SH':
            found.append(([], []))
        marked, layout = found[-1]
        if request in ('TP', 'PP', 'br'):
            layout.append(request)
        elif request and FONTS.match(request):
            kinds = request * len(words_of(rest)) if len(request) == 2 else ''
            for at, word in enumerate(words_of(rest)):
                kind = request if len(request) == 1 else kinds[at]
                if kind != 'R':
                    marked.append((kind, word.strip()))
    return found


def differences(ours, theirs):
    if len(ours) != len(theirs):
        yield f'it has {len(theirs) - 1} sections, the English one {len(ours) - 1}'
    for at, ((marked, layout), (others, their_layout)) in enumerate(zip(ours, theirs)):
        for kind, word in set(marked) - set(others):
            yield f'section {at} does not name {word} ({kind})'
        for kind, word in set(others) - set(marked):
            yield f'section {at} names {word} ({kind}), which the English one does not'
        if sorted(marked) != sorted(others) and set(marked) == set(others):
            yield f'section {at} names something a different number of times'
        if layout != their_layout:
            yield f'section {at} is laid out otherwise: {their_layout} for {layout}'


def rendered(page):
    made = subprocess.run(['groff', '-k', '-man', '-Tutf8', '-P-cbu', '-ww', page], capture_output=True, check=False,
                          env={**os.environ, 'LC_ALL': 'C.UTF-8'})
    return made.returncode, made.stdout.decode('utf-8'), made.stderr.decode('utf-8')


english = {page.name: page for page in MAN.glob('*.1')}
codes = [word for kind, word in sum((marked for marked, _ in sections(english['spelch.1'])), []) if word.isdigit()]
check('the English page is read: its commands, options and exit codes are found', [] if codes == ['0', '1', '2', '3'] else [codes])
folders = sorted(folder for folder in MAN.iterdir() if folder.is_dir())
known = (MAN.parent.parent / 'po' / 'LINGUAS').read_text(encoding='utf-8').split()
check('pages are in languages that the program has', [folder.name for folder in folders if folder.name not in known])
for folder in folders:
    check(f'{folder.name}: has all pages', [name for name in english if not (folder / name).exists()])
    for page in sorted(folder.glob('*.1')):
        check(f'{folder.name}/{page.name} names what the English page names',
              list(differences(sections(english[page.name]), sections(page))) if page.name in english else ['there is no English one'])
for page in sorted(MAN.rglob('spelch.1')):
    status, text, complaints = rendered(page)
    check(f'{page.relative_to(MAN)} renders without a warning', [complaints] if status or complaints.strip() or 'XDG_DATA_HOME' not in text else [])
print(f'1..{number}')
sys.exit(failed > 0)
