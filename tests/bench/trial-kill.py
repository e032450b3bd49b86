#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The program is killed (SIGKILL) at random moments while it is worked on and saved: nothing older than two seconds is lost and no
file is ever unreadable. Then the disk is full, and then the folder can't be written to.

trial-kill.py [--times N] [--seed S]: how often to kill it (8; the full trial is 200)."""
import argparse
import json
import os
import pathlib
import random
import shutil
import subprocess
import sys
import tempfile
import time

from gui import Bench, Tap, wait_for

LOST_AT_MOST = 2.0  # seconds

options = argparse.ArgumentParser()
options.add_argument('--times', type=int, default=int(os.environ.get('SPELCH_TRIAL_TIMES', '8')))
options.add_argument('--seed', type=int, default=1)
options = options.parse_args()
tap = Tap()
chance = random.Random(options.seed)
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-kill-'))
file = folder / 'part.spelch'
shutil.copy(os.environ['SPELCH_DEMO'], file)
state = folder / 'state' / 'spelch'


def first_pass(part):
    """The first cut's first pass as held, in mm."""
    held = part['cuts'][0].get('held', {}).get('passes')
    if not held:
        return None
    value = held[0]['mm'] if isinstance(held[0], dict) else held[0]
    return round(float(str(value).split()[0]), 2)


def copies():
    """What is kept aside: the parts, or None where one can't be read."""
    parts = []
    for path in sorted(state.glob('unsaved-*.kept')):
        try:
            parts.append(json.loads(path.read_text().split('\n', 2)[2]))
        except (ValueError, IndexError):
            parts.append(None)
    return parts


def work_until_killed(bench, patience):
    """Edits and saves until the time is over, then kills. Gives the depths that were set, with the times."""
    done = []
    end = time.monotonic() + patience
    slider = bench.mark('Pass 1').queryValue()
    while time.monotonic() < end:
        depth = round(chance.uniform(5.0, 12.0), 2)
        slider.currentValue = depth
        if abs(slider.currentValue - depth) < 0.005:  # the answer comes after the edit was made
            done.append((time.monotonic(), depth))
        if chance.random() < 0.08:
            subprocess.run(['xdotool', 'key', 'ctrl+s'], check=True)
        time.sleep(chance.uniform(0, 0.12))
    bench.crash()
    return done, time.monotonic()


unreadable = lost = kills = edits = offers = taken_up = 0
oldest = 0.0
kept = []
for n in range(options.times):
    bench = Bench(file, home=folder)
    if bench.has('push button', '^Take them up$', 0.5):
        bench.find('push button', '^Take them up$').queryAction().doAction(0)
        bench.settle()
        offers += 1
        depths = {first_pass(part) for part in kept if part}
        taken_up += bool(wait_for(lambda: round(bench.value(bench.mark('Pass 1')), 2) in depths))
    elif kept:
        print(f'# start {n + 1}: nothing was offered, though {len(kept)} were kept')
    if not bench.has('slider', '^Pass 1', 20):
        tap.ok(False, f'start {n + 1}: the window has its marks')
        bench.crash()
        continue
    done, killed = work_until_killed(bench, chance.uniform(0.3, 4.0))
    kills += 1
    edits += len(done)
    kept = copies()
    try:
        parts = kept + [json.loads(file.read_text())]
    except ValueError:
        parts = kept + [None]
    unreadable += sum(part is None for part in parts)
    found = {first_pass(part) for part in parts if part}
    # The newest edit that is still there; what was done after it is lost.
    there = max((i for i, (_, depth) in enumerate(done) if depth in found), default=-1)
    gone = done[there + 1:]
    age = killed - gone[0][0] if gone else 0.0
    oldest = max(oldest, age)
    if kills % 25 == 0:
        print(f'# {kills} kills so far: {edits} edits, oldest loss {oldest:.2f} s, unreadable {unreadable}, lost {lost}', flush=True)
    if age > LOST_AT_MOST:
        lost += 1
        print(f'# kill {n + 1}: work {age:.2f} s old is gone: {gone[:3]}, found {found}')
print(f'# {edits} edits, killed {kills} times, unsaved work taken up {taken_up} times; the oldest work lost was {oldest:.2f} s old; unreadable files: {unreadable}')
tap.same(kills, options.times, 'it was killed as often as asked')
tap.ok(edits > 3 * kills, 'while it was worked on', edits)
tap.same(taken_up, offers, 'what was kept was what the next start took up')
tap.same(unreadable, 0, 'no file was ever unreadable')
tap.same(lost, 0, 'nothing older than two seconds was lost')

def sentence(bench, pattern):
    return bench.has('label', pattern, 12)


def hold_out(where, name, give_way):
    """Works on a copy in `where`, which can't take it any more once `give_way` was called."""
    target = where / 'part.spelch'
    shutil.copy(os.environ['SPELCH_DEMO'], target)
    before = target.read_bytes()
    home = pathlib.Path(tempfile.mkdtemp(prefix='spelch-home-'))
    bench = Bench(target, home=home)
    bench.mark('Pass 1')
    give_way()
    bench.click(bench.mark('Pass 1'))
    bench.keys('Down', 'Down', 'ctrl+s')
    tap.ok(sentence(bench, r"part\.spelch can.t be saved: .*\."), f'{name}: it is said that the file can\'t be saved',
           lambda: bench.names('label'))
    tap.ok(target.read_bytes() == before, f'{name}: the old file is intact')
    tap.ok(wait_for(lambda: list((home / 'state' / 'spelch').glob('unsaved-*.kept')), 5), f'{name}: the work is kept aside')
    bench.picture(f'trial-{name.replace(" ", "-")}')
    bench.crash()
    shutil.rmtree(home, ignore_errors=True)


def run(*command):
    return subprocess.run(command, capture_output=True, check=False).returncode == 0


disk = folder / 'disk'
disk.mkdir()
if run('mount', '-t', 'tmpfs', '-o', 'size=512k', 'tmpfs', str(disk)):
    try:
        def fill():
            try:
                with open(disk / 'rest', 'wb', buffering=0) as rest:
                    while rest.write(b'x' * 4096):
                        pass
            except OSError:
                pass
        hold_out(disk, 'full disk', fill)
        (disk / 'rest').unlink()
        hold_out(disk, 'read-only folder', lambda: run('mount', '-o', 'remount,ro', str(disk)))
        # No room for the copy of unsaved work: it is said.
        run('mount', '-o', 'remount,rw', str(disk))
        fill()
        (folder / 'fresh').mkdir()
        bench = Bench(home=folder / 'fresh', environment={'XDG_STATE_HOME': str(disk)})
        bench.click(bench.mark('Pass 1'))
        bench.keys('Down')
        tap.ok(sentence(bench, "Unsaved work can.t be kept aside"), 'full disk: it is said that unsaved work can\'t be kept aside')
        bench.crash()
    finally:
        run('umount', str(disk))
else:
    print('# skipped: full disk and read-only folder, as nothing can be mounted here')
shutil.rmtree(folder, ignore_errors=True)
sys.exit(tap.done())
