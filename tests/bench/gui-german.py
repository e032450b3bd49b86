#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""In German: the windows speak it, numbers have a comma and are read with it, and longer words cut nothing off."""
import pathlib
import re
import subprocess
import sys
import tempfile

from gui import Bench, Tap, wait_for

tap = Tap()
# The system may have its locale; if not, the Debian package "locales" has what it is made from.
made = tempfile.TemporaryDirectory()
subprocess.run(['localedef', '-i', 'de_DE', '-f', 'UTF-8', f'{made.name}/de_DE.UTF-8'], capture_output=True, check=False)
german = {'LC_ALL': 'de_DE.UTF-8', 'LANGUAGE': 'de', 'LOCPATH': made.name}
if not pathlib.Path(made.name, 'de_DE.UTF-8', 'LC_NUMERIC').exists():
    print('1..0 # SKIP no German locale can be made here')
    sys.exit(0)

bench = Bench(environment=german)
main = bench.window
KEYS = {'Fräserlade': 'ctrl+shift+b', 'Platten': 'ctrl+shift+d', 'Maschinen': 'ctrl+shift+m', 'Werkstattbuch': 'ctrl+shift+l'}
ENGLISH = re.compile(r'\b(the|and|face|depth|pass|passes|edge|feed|speed|with|not|of|from)\b')


def walk_here(root=None):
    """Only what is in the window looked at."""
    return Bench.walk(bench, root or bench.window)


bench.walk = walk_here


def extents(node):
    return node.queryComponent().getExtents()


def becomes_as_narrow_as(width, height):
    """A window never gets narrower than its words need."""
    subprocess.run(['xdotool', 'search', '--onlyvisible', '--name', f'^{re.escape(bench.window.name)}', 'windowsize',
                    str(width), str(height)], check=False)

    def narrow():
        bench.settle()
        return extents(bench.window).width <= width

    # One that is too wide is asked to be narrow before it grows again.
    return wait_for(lambda: all(narrow() for _ in range(8)))


# The bench.
tap.ok(bench.has('label', '^Fräserlade$'), 'the bench speaks German', lambda: bench.names('label'))
tap.ok(bench.has('push button', '^Wenden$'), 'so do its buttons')
left = [node.name for node in bench.all('label') if ENGLISH.search(node.name or '') and 'cabinet' not in node.name]
named = ('plywood', 'shelves', 'back', 'rail', 'pegs', 'cable', 'tip', 'edge', 'Handbook')
left = [name for name in left if not any(word in name for word in named)]
tap.same(left, [], 'no sentence stays English')
mark = bench.mark('Durchgang 1')
tap.ok('9,2 mm, Sichtseite sauber' in mark.name, 'a mark tells its depth with a comma, and its verdict', mark.name)
field = bench.entry('Durchgang 1')
bench.type_into(field, '6,5', 'Return')
tap.ok(wait_for(lambda: abs(bench.value(bench.mark('Durchgang 1')) - 6.5) < 1e-6, 5), 'a depth typed with a comma is taken')
tap.ok(bench.has('slider', '^Durchgang 1, 6,5 mm, Sichtseite ausgerissen'), 'and the verdict follows',
       lambda: bench.mark('Durchgang 1').name)
tap.ok(bench.has('push button', '^Rückgängig: Durchgang 1 verschieben$'), 'undo names the step',
       lambda: bench.names('push button'))
bench.keys('ctrl+z')
speed = bench.find('text', '^Drehzahl$')
shown = bench.text(speed)
tap.ok(re.fullmatch(r'\d\d\s\d\d\d U/min', shown), 'the spindle speed is shown in U/min', shown)
bench.type_into(speed, '18 000 U/min', 'Return')
tap.ok(wait_for(lambda: bench.text(bench.find('text', '^Drehzahl$')).replace('\u202f', ' ').startswith('18 000'), 5),
       'and read in it', lambda: bench.text(bench.find('text', '^Drehzahl$')))
bench.keys('ctrl+z')
tap.ok(becomes_as_narrow_as(960, 640), 'the window becomes 960 wide', lambda: extents(main).width)
bench.picture('german-bench')

# The shelves, as small as they may become.
for title, keys in KEYS.items():
    bench.window = main
    bench.keys(keys)
    bench.window = wait_for(lambda t=title: bench.frame(t))
    if not tap.ok(bench.window, f'{title} opens by its key', lambda: [frame.name for frame in bench.frames()]):
        continue
    tap.ok(becomes_as_narrow_as(960, 640), f'{title} becomes 960 wide', lambda: extents(bench.window).width)
    bench.picture(f'german-{title}')

tap.same(bench.complaints(), [], 'nothing is complained of')
bench.end()
sys.exit(tap.done())
