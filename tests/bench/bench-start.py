#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""How long the program takes from being started to its first frame being painted, beside a window with nothing in it, turn about in one
run: at most 1.5 times is what is aimed at. Beside both, the same window with a title bar and a line of text in it, as every program
has them. Wall clock, and the processor's time, which others who use the machine meanwhile don't
change as much. SPELCH_ALSO names another build of the program to measure beside them."""
import os
import pathlib
import statistics
import subprocess
import sys
import tempfile
import time

RUNS = int(os.environ.get('SPELCH_RUNS', '21'))
SIZE = ('1360', '860')


def start(folder, *command):
    """Milliseconds until the first frame was painted, and of work until then."""
    meter = folder / 'meter'
    meter.unlink(missing_ok=True)
    environment = dict(os.environ, SPELCH_FRAME_METER=str(meter), GDK_BACKEND='x11', GTK_A11Y='none')
    for kind in ('DATA', 'CONFIG', 'STATE', 'CACHE'):
        environment[f'XDG_{kind}_HOME'] = str(folder / kind.lower())
    begun = time.monotonic()
    process = subprocess.Popen(command, env=environment, stderr=subprocess.DEVNULL)
    try:
        while not (meter.exists() and b'\nframe' in meter.read_bytes()):
            if process.poll() is not None or time.monotonic() - begun > 30:
                sys.exit(f'{command[0]} painted nothing')
            time.sleep(0.0005)
        took = (time.monotonic() - begun) * 1000
    finally:
        process.kill()
        process.wait()
    return took, float(meter.read_text().split()[1])


def main():
    with tempfile.TemporaryDirectory(prefix='spelch-start-') as name:
        folder = pathlib.Path(name)
        programs = {'empty window': (os.environ['SPELCH_EMPTY_WINDOW'], *SIZE), 'bench': (os.environ['SPELCH_BENCH'], os.environ['SPELCH_DEMO'])}
        programs['with a title bar'] = (*programs['empty window'], '--titled')
        if 'SPELCH_ALSO' in os.environ:
            programs['other build'] = (os.environ['SPELCH_ALSO'], os.environ['SPELCH_DEMO'])
        took = {what: [] for what in programs}
        for run in range(RUNS + 2):
            for what, command in programs.items():
                milliseconds = start(folder, *command)
                if run >= 2:  # the first ones read from the disk
                    took[what].append(milliseconds)
        bare = [statistics.median(values) for values in zip(*took['empty window'])]
        for what, starts in took.items():
            times, works = ([sorted(values) for values in zip(*starts)])
            ratio = '' if what == 'empty window' else (
                f'; {statistics.median(times) / bare[0]:.2f} times the empty window by the clock, '
                f'{statistics.median(works) / bare[1]:.2f} times by work (aimed at: 1.5 at most)')
            print(f'{what}: first frame after {statistics.median(times):.0f} ms (median of {RUNS}; {times[0]:.0f} to {times[-1]:.0f}), '
                  f'{statistics.median(works):.0f} ms of work (from {works[0]:.0f}){ratio}')


main()
