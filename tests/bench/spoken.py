# SPDX-License-Identifier: GPL-3.0-or-later
"""What tests of the window in other languages share: a locale to run it in, what is cited from elsewhere, and how narrow a
window becomes."""
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


def uncited(text):
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
