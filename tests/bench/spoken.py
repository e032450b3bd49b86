# SPDX-License-Identifier: GPL-3.0-or-later
"""What tests of the window in other languages share: a locale to run it in, what is somebody's name for something, and how narrow a
window becomes."""
import json
import os
import pathlib
import re
import subprocess

from gui import wait_for

# The works that reasons stand on are cited as they are called: "(measured: Smith 2017, Design for CNC)".
CITED = re.compile(r'\([^()]*\d{4}[^()]*(\([^()]*\)[^()]*)*\)')
READ = ('label', 'push button', 'toggle button', 'combo box', 'menu item')


def locale_in(folder, name):
    """Makes a locale there, from what the Debian package "locales" has; what the program's environment needs for it, or None."""
    subprocess.run(['localedef', '-i', name, '-f', 'UTF-8', f'{folder}/{name}.UTF-8'], capture_output=True, check=False)
    if not pathlib.Path(folder, f'{name}.UTF-8', 'LC_NUMERIC').exists():
        return None
    return {'LC_ALL': f'{name}.UTF-8', 'LOCPATH': str(folder)}


def names_in(value):
    """Every name in a file's data."""
    if isinstance(value, list):
        return [name for one in value for name in names_in(one)]
    if not isinstance(value, dict):
        return []
    own = [value['name']] if isinstance(value.get('name'), str) else []
    return own + [name for one in value.values() for name in names_in(one)]


def all_names():
    """Those of the demo and the starter sets, in English; the longest first, as one may stand in another."""
    demo = pathlib.Path(os.environ['SPELCH_DEMO'])
    return sorted({name for path in [demo, *demo.parent.glob('*.json')] for name in names_in(json.loads(path.read_text('utf-8')))},
                  key=len, reverse=True)


NAMES = all_names()


def unnamed(text):
    for name in NAMES:
        text = text.replace(name, '')
    return CITED.sub('', text)


def texts(bench):
    """What is read in the window looked at."""
    return {node.name or '' for role in READ for node in bench.all(role)}


def extents(node):
    return node.queryComponent().getExtents()


def becomes_as_narrow_as(bench, width, height):
    """A window never gets narrower than its words need."""
    subprocess.run(['xdotool', 'search', '--onlyvisible', '--name', f'^{re.escape(bench.window.name)}', 'windowsize',
                    str(width), str(height)], check=False)

    def narrow():
        bench.settle()
        return extents(bench.window).width <= width

    # One that is too wide is asked to be narrow before it grows again.
    return wait_for(lambda: all(narrow() for _ in range(8)))
