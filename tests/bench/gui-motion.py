#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Slow motion: opened by its key, played, paused, stepped and scrubbed by keys, buttons and sliders, from pass to pass; Space acts
on the drawing only; it follows the bench; it stops at reduced motion; and it is saved as an animation and as pictures."""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import time

import pyatspi

from gui import Bench, Tap, wait_for, xdotool

tap = Tap()
bench = Bench()
main = bench.window


def windows():
    return [w for w in main.getApplication().children() if re.search('low motion', w.name or '')]


def open_motion():
    bench.window = main
    xdotool('windowfocus', bench.x_window())
    xdotool('mousemove', *bench.centre(bench.mark('Pass 1')))
    bench.keys('ctrl+m')
    bench.window = wait_for(lambda: next(iter(windows()), None))
    return bench.window


def move(x, y):
    """The slow motion's window lies over the bench, for want of a window manager."""
    xdotool('windowmove', '--sync', bench.x_window(), x, y)
    bench.settle()


def on_bench(act):
    """Does something in the bench's window and comes back."""
    ours = bench.window
    move(0, 900)
    bench.window = main
    xdotool('windowfocus', bench.x_window())
    act()
    bench.window = ours
    move(0, 0)
    xdotool('windowfocus', bench.x_window())


def within(role, name=None):
    """The first such thing in the slow motion's own window."""
    found = wait_for(lambda: bench.all(role, name, bench.window))
    return found[0] if found else None


def button(name):
    return within('push button', f'^{name}$')


def tooth():
    found = bench.all('label', '^Tooth ', bench.window)
    return found[0].name if found else ''


def shows(words):
    return wait_for(lambda: tooth() == words)


def drawing():
    return within('panel', '^Slow motion$')


def described(pattern):
    return wait_for(lambda: re.search(pattern, drawing().description))


def speed():
    return within('label', 'second').name


def shot():
    with tempfile.NamedTemporaryFile(suffix='.png') as file:
        subprocess.run(['import', '-window', bench.x_window(), file.name], check=True)
        return subprocess.check_output(['convert', file.name, 'rgb:-'])


# Opening it.
tap.ok(open_motion(), 'Ctrl+M opens the cut in slow motion')
tap.ok('Outline' in bench.window.name, 'its title names the cut', bench.window.name)
tap.ok(button('Play'), 'it stands still at first')
tap.ok(shows('Tooth 1 of 8, turn 1'), 'at the first tooth of four turns of two edges', tooth)
tap.ok('one tooth a second' in speed(), 'it is slow enough for a tooth a second', speed)
tap.ok(re.match(r'1/\d+ of real time', speed()), 'and says how slow that is', speed)
tap.ok(within('slider', r'^Speed, 1/\d+ of real time, one tooth a second$'), 'the slider is named by that too')
tap.ok(described(r'Pass 1 of 2.*Tooth 1 of 8, turn 1.*N \(.* to .*\).*meet in the kerf'), 'the instant is described, force and band and chips',
       lambda: drawing().description)
bench.picture('motion')

# Keys on the drawing.
bench.keys('Right')
tap.ok(shows('Tooth 2 of 8, turn 1'), 'the right arrow steps a tooth on', tooth)
tap.ok(described('Tooth 2 of 8, turn 1'), 'and the description follows', lambda: drawing().description)
bench.keys('Right', 'Right', 'Left')
tap.ok(shows('Tooth 3 of 8, turn 2'), 'the left arrow steps back', tooth)
bench.keys('End')
tap.ok(shows('Tooth 8 of 8, turn 4'), 'End goes to the end of the pass', tooth)
bench.keys('Down')
tap.ok(described('Pass 2 of 2'), 'the down arrow shows the next pass', lambda: drawing().description)
tap.ok(shows('Tooth 1 of 8, turn 1'), 'from its beginning', tooth)
bench.keys('Up')
tap.ok(described('Pass 1 of 2'), 'and the up arrow the one before', lambda: drawing().description)
bench.keys('Left')
tap.ok(described('Pass 2 of 2.*Tooth 8'), 'a step back from the beginning shows the last tooth of the pass before it',
       lambda: drawing().description)
bench.keys('Home', 'Up')

# Playing.
bench.keys('space')
tap.ok(button('Pause'), 'Space plays')
tap.ok(described('playing'), 'that it plays is told once, not frame by frame', lambda: drawing().description)
tap.ok(wait_for(lambda: tooth() in ('Tooth 3 of 8, turn 2', 'Tooth 4 of 8, turn 2')), 'teeth go by', tooth)
bench.keys('space')
tap.ok(button('Play'), 'Space pauses')
stood = tooth()
time.sleep(1.2)
tap.same(tooth(), stood, 'then it stands still')

# The same by the buttons; Space means the button that has the focus.
bench.click(button('Play'))
tap.ok(button('Pause'), 'the button plays')
bench.click(button('Pause'))
tap.ok(button('Play'), 'and pauses')
bench.keys('Home')
before = tooth()
bench.click(button('On one tooth'))
tap.ok(wait_for(lambda: tooth() != before), 'a button steps on', tooth)
after = tooth()
bench.keys('space')
tap.ok(wait_for(lambda: tooth() != after), 'Space on that button presses it', tooth)
tap.ok(button('Play'), 'and plays nothing')
bench.click(button('Back one tooth'))
tap.ok(shows(after), 'a button steps back', tooth)

# Scrubbing: the same instant gives the same picture.
place = within('slider', '^Tooth')
place.queryValue().currentValue = 3.3
tap.ok(shows('Tooth 4 of 8, turn 2'), 'the slider sets the instant', tooth)
if shutil.which('import') and shutil.which('convert'):
    bench.settle()
    there = shot()
    place.queryValue().currentValue = 5.1
    tap.ok(wait_for(lambda: shot() != there), 'another instant is another picture')
    place.queryValue().currentValue = 3.3
    tap.ok(wait_for(lambda: shot() == there), 'the same instant is the same picture')

# How slow.
scale = within('slider', '^Speed')
value = scale.queryValue()
value.currentValue = value.currentValue + 0.35
tap.ok(wait_for(lambda: re.search(r'2\.\d teeth a second$', speed())), 'a little faster is two teeth a second', speed)
value.currentValue = value.currentValue + 0.5
tap.ok(wait_for(lambda: speed().endswith('drawn evenly blurred')), 'above three the bit is drawn evenly blurred', speed)
bench.click(drawing())
bench.keys('space')
tap.ok(button('Pause'), 'it plays so too')
if shutil.which('import') and shutil.which('convert'):
    bench.settle()

    def still():
        """Whether nothing flickers for half a second; between passes it may change once."""
        return any(len({shot() for _ in range(3)}) == 1 for _ in range(3))
    tap.ok(wait_for(still), 'and does not flicker')
bench.picture('motion-blurred')
bench.keys('space')
value.currentValue = 0
tap.ok(wait_for(lambda: speed().startswith('real time')), 'at the end of the slider it is real time', speed)
value.currentValue = -9
tap.ok(wait_for(lambda: re.match(r'1/2.000 of real time', speed())), 'and 1/2000 of it at the other', speed)

# Following the bench: another bit, another cut.
on_bench(lambda: bench.click(bench.find('push button', '^Up-cut 6.35')))
tap.ok(described('Chips go up the flutes and out'), 'with an up-cut chips go up and out', lambda: drawing().description)
tap.ok(described('Now: lifts'), 'and the board is lifted', lambda: drawing().description)
on_bench(lambda: bench.click(bench.find('push button', '^Down-cut 6.35')))
tap.ok(described('Chips go down into the kerf'), 'with a down-cut they go down', lambda: drawing().description)
tap.ok(described('Now: presses'), 'and the board is pressed', lambda: drawing().description)
on_bench(lambda: bench.click(bench.find('list item', '^Dadoes')))
tap.ok(wait_for(lambda: 'Dadoes' in bench.window.name), 'another cut is shown in its place', lambda: bench.window.name)
on_bench(lambda: bench.click(bench.find('list item', '^Outline')))
tap.ok(wait_for(lambda: 'Outline' in bench.window.name), 'and the first one again', lambda: bench.window.name)
on_bench(lambda: bench.keys('ctrl+m'))
tap.same(len(windows()), 1, 'there is one such window')

# Saving.
folder = pathlib.Path(tempfile.mkdtemp(prefix='spelch-gui-motion-'))


def save(item, path):
    """Chooses the item, types the name into the dialog and takes it."""
    bench.click(within('push button', '^Save$') or within('toggle button', '^Save$'))
    bench.find('menu item', item).queryAction().doAction(0)
    ours = bench.window
    dialog = wait_for(lambda: next((w for w in main.getApplication().children() if re.search('^Save as', w.name or '')), None))
    bench.window = dialog
    bench.settle()
    xdotool('windowfocus', bench.x_window())
    bench.settle()
    xdotool('mousemove', *bench.centre(wait_for(lambda: bench.all('text', None, dialog))[0]))
    bench.keys('ctrl+a')
    xdotool('type', '--delay', '15', '--', str(path))
    bench.keys('Return')
    bench.window = ours
    xdotool('windowfocus', bench.x_window())


save('animation', folder / 'pass.gif')
tap.ok(wait_for(lambda: within('label', r'^Saved as pass\.gif'), 60), 'it is saved as an animation',
       lambda: [n.name for n in bench.all('label', None, bench.window)])
gif = folder / 'pass.gif'
tap.ok(gif.exists() and gif.read_bytes()[:6] == b'GIF89a', 'which is a GIF')
if shutil.which('identify'):
    count = subprocess.check_output(['identify', str(gif)], text=True).count('\n')
    tap.same(count, 160, 'of four turns of two edges, twenty pictures for each tooth')
save('pictures', folder / 'pass.png')
tap.ok(wait_for(lambda: within('label', r'^Saved as 32 pictures'), 60), 'and as pictures',
       lambda: [n.name for n in bench.all('label', None, bench.window)])
tap.same(len(list(folder.glob('pass-*.png'))), 32, 'four for each tooth')
save('pictures', folder / 'pass.png')
tap.ok(within('label', 'is there already'), 'pictures that are there are not written over')
bench.click(button('Put away'))
save('animation', '/proc/pass.gif')
tap.ok(wait_for(lambda: within('label', r'pass\.gif.*\.$'), 60), 'where nothing can be written that is said',
       lambda: [n.name for n in bench.all('label', None, bench.window)])
shutil.rmtree(folder, ignore_errors=True)

# Escape closes it; the bench stays.
bench.click(drawing())
bench.keys('Escape')
tap.ok(wait_for(lambda: not windows()), 'Escape closes it')
bench.window = main

# Reduced motion.
bench.keys('ctrl+comma')
bench.window = wait_for(lambda: next((w for w in main.getApplication().children() if w.name == 'Preferences'), None))
bench.settle()
reduced = bench.find('check box', '^Reduced motion')
bench.click(reduced)
tap.ok(wait_for(lambda: reduced.getState().contains(pyatspi.STATE_CHECKED)), 'reduced motion is chosen')
bench.keys('Escape')
tap.ok(open_motion(), 'opened again')
tap.ok(within('label', '^Motion is reduced'), 'reduced motion is said')
bench.keys('space')
tap.ok(button('Pause'), 'it plays in steps')
places = set()
end = time.monotonic() + 3.2
while time.monotonic() < end:
    places.add(round(bench.value(within('slider', '^Tooth')), 4))
tap.ok(len(places) >= 2 and all(p == round(p) for p in places), 'from tooth to tooth with nothing between', places)
bench.keys('space')
bench.keys('Right')
tap.ok(button('Play'), 'and steps by keys as ever')
tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
