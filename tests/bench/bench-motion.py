#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""How long a frame of slow motion takes while it plays, one tooth a second and three, and drawn blurred: the time from the frame
clock's before-paint to after-paint with the display done; and how many frames come in a second. Beside them stands a window of
the same size with nothing in it, painted whole in each frame, from the same run. `--check` fails when a target is missed."""
import os
import pathlib
import re
import statistics
import subprocess
import sys
import tempfile
import time

from gui import SCALE, Bench, wait_for, xdotool

SIZE = (1360, 860)
SECONDS = 6
MOST_MEDIAN, MOST_LATE = 16.6, 33.3  # ms: 60 frames a second, and never under 30


def lines(meter):
    return meter.read_text().splitlines() if meter.exists() else []


def measure(meter, seconds=SECONDS):
    """The times of the frames that come in some seconds, ms."""
    begun = len(lines(meter))
    time.sleep(seconds)
    return [float(line.split()[1]) for line in lines(meter)[begun:]]


def late(frames):
    return sorted(frames)[min(len(frames) - 1, int(0.95 * len(frames)))]


def report(what, frames, seconds, empty):
    median = statistics.median(frames)
    print(f'{what}: {len(frames)} frames, {len(frames) / seconds:.0f} a second; median {median:.2f} ms, 95 % {late(frames):.2f} ms, '
          f'longest {max(frames):.2f} ms' + (f'; {median / empty:.2f} times the empty window' if empty else ''), flush=True)
    return median


def empty_frame(folder):
    meter = folder / 'empty'
    process = subprocess.Popen([os.environ['SPELCH_EMPTY_WINDOW'], *map(str, SIZE), '--animate'],
                               env={**os.environ, 'SPELCH_FRAME_METER': str(meter)})
    wait_for(lambda: lines(meter))
    time.sleep(1)
    frames = measure(meter)
    process.terminate()
    process.wait()
    return report('empty window, animated', frames, SECONDS, None)


def act(what):
    """By a process of its own: one that listened on would slow every frame down."""
    subprocess.check_call([sys.executable, __file__, '--act', what])


def speed_scale(bench):
    return bench.find('slider', '^Speed')


def do(what):
    bench = Bench(running=True)
    application = bench.window.getApplication()
    if what == 'open':
        bench.keys('ctrl+m')
        return
    bench.window = wait_for(lambda: next((w for w in application.children() if re.search('slow motion', w.name or '')), None))
    if what in ('pause', 'play'):
        bench.click(bench.find('push button', f'^{what.capitalize()}$'))
    else:
        range_ = speed_scale(bench).queryValue()
        range_.currentValue = range_.currentValue + float(what)
    xdotool('mousemove', 1300 * SCALE, 60 * SCALE)


def check(what, frames, empty):
    median = report(what, frames, SECONDS, empty)
    met = median <= MOST_MEDIAN and late(frames) <= MOST_LATE
    print(f"    60 frames a second, 95 % at least 30: {'met' if met else 'MISSED'}", flush=True)
    return met


def main():
    folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-motion-'))
    print(f'{SIZE[0]} x {SIZE[1]}, scale {SCALE}')
    empty = empty_frame(folder)
    meter = folder / 'meter-motion'
    process = subprocess.Popen([os.environ['SPELCH_BENCH']],
                               env={**os.environ, 'SPELCH_FRAME_METER': str(folder / 'meter'), 'GDK_BACKEND': 'x11',
                                    'XDG_CONFIG_HOME': str(folder), 'XDG_STATE_HOME': str(folder)})
    wait_for(lambda: lines(folder / 'meter'))
    act('open')
    wait_for(lambda: lines(meter))
    window = subprocess.check_output(['xdotool', 'search', '--onlyvisible', '--name', 'slow motion'], text=True).split()[0]
    xdotool('windowsize', window, SIZE[0] * SCALE, SIZE[1] * SCALE)
    act('play')
    time.sleep(0.5)
    met = check('one tooth a second', measure(meter), empty)
    act('0.45')  # to nearly three
    time.sleep(0.5)
    met = check('nearly three teeth a second', measure(meter), empty) and met
    act('0.5')
    time.sleep(0.5)
    frames = measure(meter)
    # Nothing moves but from pass to pass, so that there are few frames.
    print(f'blurred: {len(frames)} frames in {SECONDS} seconds, longest {max(frames, default=0):.2f} ms')
    process.terminate()
    process.wait()
    return 0 if met or '--check' not in sys.argv else 1


if '--act' in sys.argv:
    do(sys.argv[-1])
else:
    sys.exit(main())
