#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Installed into a folder of its own: what a desktop needs is there and valid, the programs run from there, and nothing is left when
it is uninstalled. Validators are those of freedesktop.org's specifications.

install.py BUILD: the build folder; its record of an earlier installation is kept."""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

build = pathlib.Path(sys.argv[1])
source = pathlib.Path(__file__).resolve().parent.parent
count = failed = 0


def ok(good, what, saw=''):
    global count, failed
    count += 1
    failed += not good
    print(f'{"ok" if good else "not ok"} {count} - {what}')
    if not good:
        print('# saw: ' + str(saw).replace('\n', '\n# '))


def run(*words, **more):
    done = subprocess.run([str(word) for word in words], capture_output=True, text=True, check=False, **more)
    return done.returncode, done.stdout + done.stderr


def valid(what, *words):
    status, said = run(*words)
    ok(status == 0, what, said)


record = build / 'meson-logs' / 'install-log.txt'
earlier = record.read_bytes() if record.exists() else None
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-install-'))
stage = folder / 'stage'
try:
    status, said = run('meson', 'install', '-C', build, '--no-rebuild', '--destdir', stage)
    ok(status == 0, 'it installs into a folder', said)
    translated = [path for path in stage.rglob('*.1') if path.parts[-3] != 'man']  # share/man/de/man1/spelch.1
    found = {path.name: path for path in stage.rglob('*') if path.is_file() and path not in translated}
    wanted = ['spelch', 'spelch-bench', 'org.spelch.Spelch.desktop', 'org.spelch.Spelch.metainfo.xml', 'org.spelch.Spelch.xml',
              'org.spelch.Spelch.svg', 'org.spelch.Spelch-symbolic.svg', 'spelch.1', 'spelch-bench.1', 'demo.spelch']
    ok(all(name in found for name in wanted), 'with all that a desktop asks for', [name for name in wanted if name not in found])
    languages = (source / 'po' / 'LINGUAS').read_text().split()
    ok(sorted(path.parts[-3] for path in stage.rglob('spelch.mo')) == sorted(languages), 'and every language', languages)

    desktop, metainfo = found['org.spelch.Spelch.desktop'], found['org.spelch.Spelch.metainfo.xml']
    valid('the desktop file is valid', 'desktop-file-validate', desktop)
    valid('so is what software catalogues read', 'appstreamcli', 'validate', '--no-net', metainfo)
    for language in languages:
        ok(f'Comment[{language}]=' in desktop.read_text() and f'xml:lang="{language}"' in metainfo.read_text(), f'both speak {language}')
    version = re.search(r"version: '(.*?)'", (source / 'meson.build').read_text()).group(1)
    ok(f'version="{version}"' in metainfo.read_text() and f'({version}-' in (source / 'data/debian/changelog').read_text(),
       'catalogue and package tell the version that is built', version)

    mime = found['org.spelch.Spelch.xml'].parent.parent
    valid('the type of part files is registered', 'update-mime-database', mime)
    ok('application/x-spelch:*.spelch' in (mime / 'globs2').read_text(), 'by the end of their names')
    ok('MimeType=application/x-spelch;' in desktop.read_text() and 'Exec=spelch-bench %F' in desktop.read_text(), 'and opened by the program')
    for name in ('org.spelch.Spelch.svg', 'org.spelch.Spelch-symbolic.svg'):
        picture = folder / 'icon.png'
        valid(f'{name} can be drawn', 'rsvg-convert', '-w', 64, found[name], '-o', picture)
        status, said = run('identify', '-format', '%k', picture)
        ok(status == 0 and int(said) > 4, 'and shows something', said)

    bare = {'PATH': os.environ['PATH'], 'HOME': str(folder), 'LC_ALL': 'C.UTF-8'}
    status, planned = run(found['spelch'], 'plan', found['demo.spelch'], '--json', env=bare)
    same = run(build / 'src/command/spelch', 'plan', source / 'data/demo.spelch', '--json', env=bare)
    ok((status, planned) == same and status == 0, 'what is installed plans the demo part as what was built does', planned[:400])
    status, said = run(found['spelch'], found['demo.spelch'], env=bare)
    ok(status == 2 and 'no display' in said, 'without a display it says so', said)
    commands = re.findall(r'^spelch ([a-z]+) ', run(found['spelch'], '--help', env=bare)[1], re.M)
    manual = found['spelch.1'].read_text()
    ok(commands and all(f'\n.B {command}\n' in manual for command in commands), 'the manual knows every command', commands)

    pages = sorted(str(path.relative_to(source / 'docs/man')) for path in (source / 'docs/man').glob('*/*.1'))
    ok(sorted(f'{path.parts[-3]}/{path.name}' for path in translated) == pages and all(path.parts[-2] == 'man1' for path in translated),
       'and is there in every language that has it', translated)

    shutil.rmtree(mime)  # what the desktop's own programs made of it
    status, said = run('ninja', '-C', build, 'uninstall')
    ok(status == 0 and not [path for path in stage.rglob('*') if not path.is_dir()], 'uninstalling leaves nothing',
       said + str(list(stage.rglob('*'))))
finally:
    shutil.rmtree(folder, ignore_errors=True)
    if earlier is not None:
        record.write_bytes(earlier)
    elif record.exists():
        record.unlink()
print(f'1..{count}')
sys.exit(failed > 0)
