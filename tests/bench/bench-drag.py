#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""How long a frame takes while something is dragged with the real pointer, moved every 8 ms: the time from the frame clock's
before-paint to after-paint with the display done, and the plan that is made for it; the same with all the work on the motion,
which tells every number of the window; and how long it is from the pointer's motion to that end. Beside them stand, from the same
run, the frame of an empty window of the same size, painted whole, and the frame of a window that has nothing but an area as large as
the side view, repainted with as many changing texts in it as the drag changes in the bench: at most twice that is what is aimed at.
The same with that area only filled with a colour, which the X server does, tells what the texts alone take.
`--check` fails when a target is missed."""
import ctypes
import math
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
STEP = 0.008  # seconds between motions
MOTIONS = 400
MOST_OF_BARE = 2
# Milliseconds: median and 95 % of a frame with its plan, median from motion to painted; None: no target.
TARGETS = {
    ('pass 1', 1): (4, 8, 12),
    ('thickness', 1): (16, 33, None),
    ('pass 1', 2): (12, None, None),
    ('thickness', 2): (None, None, None),
}


def motions(x, y, dy):
    """Up and down by `dy` pixels, three times."""
    chain = ['mousemove', x, y, 'sleep', 0.1, 'mousedown', 1]
    for i in range(MOTIONS):
        at = y - dy * (1 - math.cos(6 * math.pi * i / MOTIONS)) / 2
        chain += ['mousemove', x, round(at), 'sleep', STEP]
    return chain + ['mousemove', x, y, 'sleep', 0.1, 'mouseup', 1]


def lines(meter):
    return meter.read_text().splitlines() if meter.exists() else []


def measure(meter, x, y, dy):
    """Frames that painted a motion: [(ms from before-paint on, ms of work on the motion before that, waited)]."""
    begun = len(lines(meter))
    xdotool(*motions(x, y, dy))
    time.sleep(0.3)
    frames = [line.split()[1:] for line in lines(meter)[begun:]]
    painted = [(float(took), float(before), int(waited)) for took, before, waited in frames if int(waited) >= 0]
    return painted[5:-5]  # without the beginning and the end of the drag


def share(values, part):
    return sorted(values)[min(len(values) - 1, int(len(values) * part))]


def plan_ms(what):
    """Of one plan, as such a drag asks for it."""
    told = subprocess.check_output([os.environ['SPELCH_BENCH_PLAN']], text=True)
    held, free = re.search(r'with a held pass ([\d.]+) us, with none ([\d.]+) us', told).groups()
    return float(held if what.startswith('pass') else free) / 1000


def report(what, frames, empty, plan=0.0, bare=None, filled=None):
    painting = [took + plan for took, _, _ in frames]
    whole = [took + before for took, before, _ in frames]
    waited = [ms for _, _, ms in frames]
    median, most, latency = statistics.median(painting), share(painting, 0.95), statistics.median(waited)
    ratio = f', {median / empty:.2f} of an empty one' if empty else ''
    ratio += f', {median / bare:.2f} of area and texts alone (aimed at: {MOST_OF_BARE} at most), {median / filled:.2f} ' \
             'of texts on a filled ground' if bare else ''
    print(f'{what:20} {len(frames):4} frames: median {median:6.2f} ms, 95 % {most:6.2f} ms{ratio}; with all work on the motion '
          f'{statistics.median(whole):.2f} ms, 95 % {share(whole, 0.95):.2f} ms; '
          f'motion to painted: median {latency:.0f} ms, 95 % {share(waited, 0.95)} ms')
    return median, most, latency


def bare_frame(folder, what, *asked):
    """Of a window with nothing else in it: its median, ms."""
    meter = folder / 'bare'
    meter.unlink(missing_ok=True)
    process = subprocess.Popen([os.environ['SPELCH_EMPTY_WINDOW'], *map(str, SIZE), *map(str, asked)],
                               env={**os.environ, 'SPELCH_FRAME_METER': str(meter)})
    wait_for(lambda: lines(meter))
    time.sleep(0.5)
    frames = measure(meter, SIZE[0] * SCALE // 2, SIZE[1] * SCALE // 2, 100)
    process.terminate()
    process.wait()
    return report(what, frames, None)[0]


def pretend_window_manager():
    """Says on the root window that there is a window manager, as on every desktop. Without one GDK asks for it in each frame and
    waits for the answer. Gives what must be kept while that is to hold."""
    x = ctypes.CDLL('libX11.so.6')
    x.XOpenDisplay.restype = ctypes.c_void_p
    x.XDefaultRootWindow.restype = x.XCreateSimpleWindow.restype = x.XInternAtom.restype = ctypes.c_ulong
    display = ctypes.c_void_p(x.XOpenDisplay(None))
    root = ctypes.c_ulong(x.XDefaultRootWindow(display))
    window = ctypes.c_ulong(x.XCreateSimpleWindow(display, root, 0, 0, 1, 1, 0, 0, 0))
    check = ctypes.c_ulong(x.XInternAtom(display, b'_NET_SUPPORTING_WM_CHECK', 0))
    xa_window, replace = ctypes.c_ulong(33), 0
    for target in (root, window):
        x.XChangeProperty(display, target, check, xa_window, 32, replace, ctypes.byref(window), 1)
    x.XSync(display, 0)
    return display


def place(name):
    """Finds a mark in the running window by a process of its own: one that listened on would slow every frame down."""
    found = subprocess.check_output([sys.executable, __file__, '--place', name], text=True)
    return map(int, found.split())


def changing(name):
    """What such a drag changes: width and height of the side view, how many texts, how many letters each has."""
    found = subprocess.check_output([sys.executable, __file__, '--changing', name], text=True)
    return tuple(map(int, found.split()))


def count_changing(name):
    bench = Bench(running=True)
    mark = bench.mark(name)
    area = bench.find('panel', '^Side view').queryComponent().getExtents()

    def texts():
        return {node: node.seen for node in bench.all() if node.seen}

    before = texts()
    bench.press(mark)
    bench.glide(0, 30 * SCALE)
    bench.settle()
    after = texts()
    changed = [words for node, words in after.items() if node in before and before[node] != words]
    bench.keys('Escape')
    bench.release()
    print(area.width, area.height, len(changed), round(statistics.mean(map(len, changed))))


def locate(name):
    bench = Bench(running=True)
    print(*bench.centre(bench.mark(name)))


def main():
    folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-bench-'))
    kept = pretend_window_manager()  # noqa: F841
    print(f'{SIZE[0]} x {SIZE[1]}, scale {SCALE}')
    empty = bare_frame(folder, 'empty window')
    meter = folder / 'bench'
    process = subprocess.Popen([os.environ['SPELCH_BENCH']],
                               env={**os.environ, 'SPELCH_FRAME_METER': str(meter), 'GDK_BACKEND': 'x11',
                                    'XDG_CONFIG_HOME': str(folder), 'XDG_STATE_HOME': str(folder)})
    wait_for(lambda: lines(meter))
    missed = 0
    for what, name in (('pass 1', 'Pass 1'), ('thickness', 'Thickness')):
        asked = changing(name)
        x, y = place(name)
        time.sleep(0.5)
        frames = measure(meter, x, y, 60 * SCALE)
        bare = bare_frame(folder, f'area and {asked[2]} texts', *asked)
        filled = bare_frame(folder, f'fill and {asked[2]} texts', *asked, '--filled')
        got = report(f'dragging {what}', frames, empty, plan_ms(what), bare, filled)
        for measured, target, kind in zip(got, TARGETS[what, SCALE], ('median', '95 %', 'motion to painted')):
            if target is not None:
                met = measured <= target
                missed += not met
                print(f"    {kind}: target {target} ms {'met' if met else 'MISSED'}")
    process.terminate()
    process.wait()
    return 1 if missed and '--check' in sys.argv else 0


if '--changing' in sys.argv:
    count_changing(sys.argv[-1])
elif '--place' in sys.argv:
    locate(sys.argv[-1])
else:
    sys.exit(main())
