#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The program keeps to itself: all it ever connects with is the display and the desktop's buses on this computer. No other socket is
made and no name looked up, in the window, in those opened from it, in saving and asking how to print, and by the command line."""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

from gui import Bench, Tap, wait_for

UNIX = '1'
# Of X, of D-Bus, of the accessibility bus, and what tells of them.
KNOWN = re.compile(r'(^|/)(\.X11-unix/X\d+|dbus-\w+|at-spi[^/]*/bus[^/]*|bus(_\d+)?|system_bus_socket|\.ICE-unix/\d+)$')
# Names of people are looked up in a cache of this computer, if it has one.
LOCAL = ('/var/run/nscd/socket', '/run/nscd/socket')

folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-alone-'))
PART = folder / 'hall.spelch'
shutil.copy(os.environ['SPELCH_DEMO'], PART)
tap = Tap()


def noted(path):
    return sorted(set(path.read_text().splitlines())) if path.exists() else []


def strange(lines):
    """What is neither the display nor a bus."""
    found = []
    for line in lines:
        kind, _, what = line.partition(' ')
        if not ((kind == 'socket' and what == UNIX) or (kind == 'connect' and (KNOWN.search(what) or what in LOCAL))):
            found.append(line)
    return found


def watched(path):
    return {'LD_PRELOAD': os.environ['SPELCH_SOCKET_WATCH'], 'SPELCH_SOCKETS': str(path)}


sockets = folder / 'sockets'
bench = Bench(PART, environment=watched(sockets))
main = bench.window
tap.ok(lambda: any('.X11-unix' in line for line in noted(sockets)), 'the watch sees the display', lambda: noted(sockets))
for keys in ('ctrl+m', 'ctrl+shift+c', 'ctrl+shift+b', 'ctrl+shift+l', 'ctrl+comma', 'ctrl+shift+p', 'F1', 'ctrl+p', 'ctrl+o'):
    before = len(bench.frames())
    bench.window = main
    bench.keys(keys)
    tap.ok(lambda: wait_for(lambda: len(bench.frames()) > before), f'{keys} opens a window')
    bench.keys('Escape')
    if not wait_for(lambda: len(bench.frames()) == before, 2):
        bench.keys('ctrl+w')
        wait_for(lambda: len(bench.frames()) == before)
bench.window = main
bench.keys('ctrl+s')
tap.same(strange(noted(sockets)), [], 'the window connects with the display and the buses, with nothing else')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()

sockets = folder / 'command'
command = os.environ['SPELCH_COMMAND']
for words in (['plan', PART], ['rank', PART], ['check', PART], ['draw', PART, '--cut', 'outline', '-o', folder / 'side.png'],
              ['sheet', PART, '-o', folder / 'sheet.pdf'], ['practice', '--list']):
    ran = subprocess.run([command, *map(str, words)], env={**os.environ, **watched(sockets)}, capture_output=True, check=False)
    tap.ok(ran.returncode in (0, 1), f'spelch {words[0]} runs', ran.stderr)
lookups = [line for line in noted(sockets) if line not in (f'socket {UNIX}', *(f'connect {path}' for path in LOCAL))]
tap.same(lookups, [], 'the command line connects with nothing')
shutil.rmtree(folder, ignore_errors=True)
sys.exit(tap.done())
