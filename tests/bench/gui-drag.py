#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Marks and bit dragged with the real pointer: verdicts and numbers follow, limits are named, undo and Escape restore.

The demo's outline: a 6.35 mm compression bit with 6.35 mm of up-shear in 18 mm birch plywood with 1.3 mm faces. That the motor-side
face tears unless the first pass goes deeper than up-shear and face ply together (7.65 mm), and the far face when the
overcut exceeds up-shear less the ply (5.05 mm), is geometry."""
import sys

from gui import Bench, Tap, wait_for, xdotool

UP_SHEAR, FACE_PLY, THICKNESS = 6.35, 1.3, 18.0

tap = Tap()
bench = Bench()

mark = bench.mark('Pass 1')
first = bench.value(mark)
tap.ok(first > UP_SHEAR + FACE_PLY, 'the recommended first pass clears up-shear and face ply', first)
tap.ok('show face clean' in mark.name, "the mark's name says that the show face is clean", mark.name)
tap.same(bench.verdict('motor'), 'clean', 'the motor-side face is clean')
tap.same(bench.verdict('far'), 'clean', 'the far face is clean')
bench.picture('clean')

# Pixels for each millimetre, from two marks: the tip in pass 1 and the far face.
scale = ((bench.centre(bench.mark('Thickness'))[1] - bench.centre(mark)[1]) / (THICKNESS - first))


def tiles():
    """Where the bits of the drawer lie."""
    return [bench.box(node) for node in bench.all(None, ', cuts [^,]* deep')]


# Drag the mark up, out of the window, without letting go yet.
lying = tiles()
time_before = bench.figure('Cutting time')
bench.press(mark)
bench.glide(0, (6.0 - first) * scale)
tap.ok(wait_for(lambda: 'torn' in mark.name), 'while dragged up the name says torn', lambda: mark.name)
tap.near(lambda: bench.value(mark), 6.0, 0.2, 'the mark stands at about 6 mm')
tap.ok(bench.verdict('motor') in ('torn grain', 'badly torn'), 'the right-hand column says torn during the drag',
       lambda: bench.verdict('motor'))
tap.same(bench.verdict('far'), 'clean', 'the far face stays clean')
tap.ok(bench.figure('Cutting time') != time_before, 'other numbers follow the drag', time_before)
tap.ok(bench.figure('Passes').startswith(f'{bench.value(mark):.1f} mm'), 'the passes say where the mark stands',
       lambda: bench.figure('Passes'))
tap.ok(lying and tiles() == lying, 'what is now said of the bit in use moves no other in the drawer', lambda: (lying, tiles()))
bench.picture('torn')

# And down again, into the window.
bench.glide(0, (9.0 - 6.0) * scale)
tap.ok(wait_for(lambda: 'show face clean' in mark.name), 'dragged into the window the name says clean', lambda: mark.name)
tap.same(bench.verdict('motor'), 'clean', 'so does the column')
bench.release()
tap.near(lambda: bench.value(bench.entry('Pass 1')), bench.value(mark), 1e-6, 'the entry field has the value of the mark')
tap.same(bench.text(bench.entry('Pass 1')), f'{bench.value(mark):.1f} mm', 'and shows it')

# One gesture, one step of undo.
tap.ok(bench.has('push button', '^Undo move pass 1$'), 'undo names the gesture')
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: abs(bench.value(mark) - first) < 1e-6), 'one undo takes the whole drag back', lambda: bench.value(mark))
tap.ok(bench.has('push button', '^Redo move pass 1$'), 'redo names it too')
bench.keys('ctrl+shift+z')
tap.ok(wait_for(lambda: abs(bench.value(mark) - first) > 0.05), 'redo does it again', lambda: bench.value(mark))
bench.keys('ctrl+z')

# Escape during a drag restores.
bench.press(mark)
bench.glide(0, -3 * scale)
tap.ok(wait_for(lambda: bench.value(mark) < first - 2), 'the drag moves the mark', lambda: bench.value(mark))
bench.keys('Escape')
tap.ok(wait_for(lambda: abs(bench.value(mark) - first) < 1e-6), 'Escape puts it back', lambda: bench.value(mark))
bench.glide(0, 20)
tap.near(lambda: bench.value(mark), first, 1e-6, 'the pointer has let go of it')
bench.release()
tap.ok(not bench.has('push button', '^Undo move', patience=0.2), 'and leaves nothing to undo')

# A finger need not meet a mark's edge: a fingertip is about 44 units wide (WCAG 2.1, success criterion 2.5.5, from memory).
box = bench.box(mark)
tap.ok(box.height + 2 * 9 >= 44, 'a mark can be taken over the height of a fingertip', box)
xdotool('mousemove', box.x + box.width // 2, box.y - 9, 'mousedown', 1)
bench.glide(0, -3 * scale)
tap.ok(wait_for(lambda: bench.value(mark) < first - 2), 'the drag from just above it moves it', lambda: bench.value(mark))
bench.release()
bench.keys('ctrl+z')
tap.ok(wait_for(lambda: abs(bench.value(mark) - first) < 1e-6), 'and is undone', lambda: bench.value(mark))
xdotool('mousemove', box.x + box.width // 2, box.y - 14, 'mousedown', 1)
bench.glide(0, -3 * scale)
bench.release()
tap.near(lambda: bench.value(mark), first, 1e-6, 'farther off nothing is taken')

# The way of the pointer there and back leaves nothing either.
bench.press(mark)
bench.glide(0, -4 * scale)
bench.glide(0, 4 * scale)
bench.release()
tap.near(lambda: bench.value(mark), first, 0.051, 'there and back ends where it began')
bench.keys('ctrl+z')

# A limit is named.
bench.press(mark)
bench.glide(0, 12 * scale)
tap.ok(bench.has(None, 'Stops here: '), 'dragged past a limit it says which', lambda: bench.names('status bar'))
last = bench.mark('Overcut')
tap.ok(bench.value(mark) < THICKNESS + bench.value(last), 'and stops there', lambda: bench.value(mark))
bench.keys('Escape')
bench.release()

# The bit itself can be taken hold of: it hangs in the middle between the walls, above the tip of the shown pass.
bench.click(mark)
tap.ok(bench.has('label', '^Pass 1 of 2$'), 'a click on the mark of pass 1 shows that pass')
view = bench.box(bench.find('panel', '^Side view$'))
xdotool('mousemove', view.x + int(view.width * 0.49), bench.centre(mark)[1] - 40, 'mousedown', 1)
bench.glide(0, -2 * scale)
tap.near(lambda: bench.value(mark), first - 2, 0.25, 'the bit dragged up takes the shown pass along')
bench.release()
bench.keys('ctrl+z')
tap.near(lambda: bench.value(mark), first, 1e-6, 'undo takes that back as well')
bench.click(bench.mark('Overcut'))
tap.ok(bench.has('label', '^Pass 2 of 2$'), 'a click on the mark of the last pass shows that')

# The board's thickness: the core gives way, the windows move along.
thickness = bench.mark('Thickness')
motor_face, far_face = bench.box(bench.mark('Pass 1')).y - first * scale, bench.box(thickness).y
bench.press(thickness)
bench.glide(0, -2 * scale)
tap.near(lambda: bench.box(thickness).y, far_face - 2 * scale, 2, 'the face dragged stays under the pointer')
tap.near(lambda: bench.box(bench.mark('Pass 1')).y - bench.value(bench.mark('Pass 1')) * scale, motor_face, 2,
         'while the motor-side face and the scale stay')
bench.release()
tap.near(lambda: bench.value(thickness), 16.0, 0.25, 'the board is dragged thinner')
tap.ok(wait_for(lambda: abs(bench.value(bench.entry('Thickness')) - bench.value(thickness)) < 1e-6), 'its entry follows')
tap.ok(bench.has('label', f'{bench.value(thickness):.1f} mm thick'), 'so does the sentence about the board')

# The overcut: far enough below that board, which the bit now reaches, the down-shear comes to the far face.
overcut = bench.mark('Overcut')
bench.press(overcut)
bench.glide(0, (UP_SHEAR - FACE_PLY + 0.6 - bench.value(overcut)) * scale)
tap.ok(wait_for(lambda: bench.verdict('far') != 'clean'), 'a long overcut spoils the far face', lambda: bench.verdict('far'))
tap.ok('hidden face clean' not in overcut.name, 'the name of its mark says so', overcut.name)
tap.ok(bench.has('label', '^Do not cut:'), 'and that deep into the bed it must not be cut')
bench.release()
tap.ok(bench.has('push button', '^Overcut: held by hand; let go$'), 'the overcut is held')
bench.click(bench.find('push button', '^Overcut: held by hand; let go$'))
tap.ok(wait_for(lambda: bench.verdict('far') == 'clean'), 'its pin lets it go', lambda: bench.verdict('far'))
tap.ok(bench.has('push button', '^Undo let the overcut go$'), 'letting go can be undone')

for _ in range(3):
    bench.keys('ctrl+z')
tap.near(lambda: bench.value(bench.mark('Thickness')), THICKNESS, 1e-6, 'undo, undo, undo gives the board back')

tap.same(bench.complaints(), [], 'nothing was complained about')
bench.end()
sys.exit(tap.done())
