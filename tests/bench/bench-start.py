#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""How long the program takes from being started to its first frame being painted, beside a window with nothing in it, turn about in one
run: at most 1.5 times is what is aimed at."""
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
    """Milliseconds until the first frame was painted."""
    meter = folder / 'meter'
    meter.unlink(missing_ok=True)
    environment = dict(os.environ, SPELCH_FRAME_METER=str(meter), GDK_BACKEND='x11', GTK_A11Y='none')
    for kind in ('DATA', 'CONFIG', 'STATE', 'CACHE'):
        environment[f'XDG_{kind}_HOME'] = str(folder / kind.lower())
    begun = time.monotonic()
    process = subprocess.Popen(command, env=environment, stderr=subprocess.DEVNULL)
    try:
        while not (meter.exists() and b'\n' in meter.read_bytes()):
            if process.poll() is not None or time.monotonic() - begun > 30:
                sys.exit(f'{command[0]} painted nothing')
            time.sleep(0.0005)
        return (time.monotonic() - begun) * 1000
    finally:
        process.kill()
        process.wait()


def main():
    with tempfile.TemporaryDirectory(prefix='spelch-start-') as name:
        folder = pathlib.Path(name)
        programs = {'empty window': (os.environ['SPELCH_EMPTY_WINDOW'], *SIZE), 'bench': (os.environ['SPELCH_BENCH'], os.environ['SPELCH_DEMO'])}
        took = {what: [] for what in programs}
        for run in range(RUNS + 2):
            for what, command in programs.items():
                milliseconds = start(folder, *command)
                if run >= 2:  # the first ones read from the disk
                    took[what].append(milliseconds)
        for what, times in took.items():
            times.sort()
            print(f'{what}: first frame after {statistics.median(times):.0f} ms (median of {RUNS}; {times[0]:.0f} to {times[-1]:.0f})')
        ratio = statistics.median(took['bench']) / statistics.median(took['empty window'])
        print(f'the bench takes {ratio:.2f} times as long as the empty window (aimed at: 1.5 at most)')


main()
