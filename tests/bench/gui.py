# SPDX-License-Identifier: GPL-3.0-or-later
"""Drives the real window: assistive technology's view of it (AT-SPI) to find things and read them, the X server's pointer
and keyboard (xdotool) to act. Run inside `xvfb-run ... dbus-run-session`; prints TAP."""
import os
import pathlib
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time

from gi.repository import GLib

import pyatspi
from accessible import Box, Bus

PATIENCE = float(os.environ.get('SPELCH_GUI_PATIENCE', '10'))  # seconds; a slow machine or a sanitizer needs more
FRAME = 0.02
MENU_MOST = 540  # pixels that the main menu may reach down: what a window 640 high has below its button, and a little
SCALE = int(os.environ.get('GDK_SCALE', '1'))  # pixels of the screen for each of the window's


class Tap:
    """Counts checks. A check that raises is a failed one."""

    def __init__(self):
        self.count = 0
        self.failed = 0

    def ok(self, passed, what, saw=None):
        self.count += 1
        if callable(passed):
            passed = passed()
        if not passed:
            self.failed += 1
        print(f"{'ok' if passed else 'not ok'} {self.count} - {what}", flush=True)
        if not passed and saw is not None:
            print(f'# saw: {saw() if callable(saw) else saw}', flush=True)
        return bool(passed)

    def same(self, got, wanted, what):
        return self.ok(got == wanted, what, f'{got!r}, not {wanted!r}')

    def near(self, got, wanted, tolerance, what):
        """`got` may be a function, which is asked until it is right: what was sent may still be under way."""
        if callable(got):
            wait_for(lambda: abs(got() - wanted) <= tolerance)
            got = got()
        return self.ok(abs(got - wanted) <= tolerance, what, f'{got}, not {wanted} within {tolerance}')

    def done(self):
        print(f'1..{self.count}', flush=True)
        return 1 if self.failed else 0


def xdotool(*arguments):
    subprocess.run(['xdotool', *map(str, arguments)], check=True)


def wait_for(condition, patience=PATIENCE):
    """What `condition` gives when it is true at last, or its last (false) answer."""
    end = time.monotonic() + patience
    while True:
        try:
            answer = condition()
        except (GLib.Error, AttributeError, LookupError):
            answer = None
        if answer or time.monotonic() > end:
            return answer
        time.sleep(FRAME)


class Bench:
    """The program, running."""

    def __init__(self, *arguments, home=None, environment=None, running=False):
        """Starts it, or takes the one that is `running` already."""
        self.process = None
        self.ended = False  # by the test
        self.x_windows = {}
        self.only_window = False  # whether no other window of the program is looked at
        self.bus = Bus()
        self.home = pathlib.Path(home or tempfile.mkdtemp(prefix='spelch-gui-'))
        self.owns_home = home is None
        kept = dict(os.environ)
        kept.pop('GTK_A11Y', None)  # the real thing is wanted
        kept.update(GDK_BACKEND='x11', GSETTINGS_BACKEND='memory', GIO_USE_VFS='local', G_ENABLE_DIAGNOSTIC='0',
                    XDG_CONFIG_HOME=str(self.home / 'config'), XDG_STATE_HOME=str(self.home / 'state'),
                    XDG_DATA_HOME=str(self.home / 'data'))
        kept.setdefault('LC_ALL', 'C.UTF-8')
        kept.update(environment or {})
        self.environment = kept
        if not running:
            self.log = self.home / 'stderr'
            with open(self.log, 'ab') as log:
                self.process = subprocess.Popen([os.environ['SPELCH_BENCH'], *map(str, arguments)], env=kept, stderr=log)
        sys.excepthook = self.tell_error
        self.window = wait_for(self._find_window)
        if not self.window:
            if self.process:
                self.process.kill()
            sys.exit('Bail out! The window did not appear.')
        self.application = self.window.getApplication()
        self.settle()

    # ---- Finding ----

    def _find_window(self):
        for application in self.bus.applications():
            ours = application.name == 'spelch-bench'
            if not ours or (self.process and application.get_process_id() != self.process.pid):
                continue
            for window in application.children():
                if window.getRoleName() in ('frame', 'window'):
                    return window
        return None

    def walk(self, root=None):
        return self.bus.walk(root or (self.window if self.only_window else self.window.getApplication()))

    def all(self, role=None, name=None, root=None):
        """Everything shown, or shown below `root`, with that role and a name that matches."""
        found = [node for node in self.walk(root)
                 if (role is None or node.seen_role == role) and (name is None or re.search(name, node.seen))]
        # GTK 4.8 reports no "showing" state, but what isn't shown has no size.
        return [node for node, box in zip(found, self.bus.boxes(found)) if box.width > 0 and box.height > 0]

    def focused(self, nodes):
        """Which of them the keys go to."""
        return next((node for node, states in zip(nodes, self.bus.states(nodes)) if states.contains(pyatspi.STATE_FOCUSED)), None)

    @staticmethod
    def shown(node):
        box = node.queryComponent().getExtents()
        return box.width > 0 and box.height > 0

    def tell_end(self):
        """Says what the program last wrote when it has ended by itself, since nothing can be found in it then."""
        if self.process and not self.ended and self.process.poll() is not None:
            lines = self.log.read_text(errors='replace').splitlines()
            print(f'The program ended with status {self.process.returncode}.', *lines[:40], sep='\n', file=sys.stderr, flush=True)

    def tell_error(self, *error):
        """A call that fails because the program has just ended tells of the end as well."""
        if self.process:
            wait_for(lambda: self.process.poll() is not None, 0.5)
        self.tell_end()
        sys.__excepthook__(*error)

    def find(self, role=None, name=None, patience=PATIENCE):
        found = wait_for(lambda: self.all(role, name), patience)
        if not found:
            self.tell_end()
            raise LookupError(f'no {role or "thing"} named like {name!r}')
        return found[0]

    def has(self, role=None, name=None, patience=PATIENCE):
        found = bool(wait_for(lambda: self.all(role, name), patience))
        if not found:
            self.tell_end()
        return found

    def lacks(self, role=None, name=None, patience=PATIENCE):
        return bool(wait_for(lambda: not self.all(role, name), patience))

    def names(self, role=None):
        return [node.seen for node in self.all(role)]

    def mark(self, name):
        return self.find('slider', '^' + name)

    def entry(self, name):
        return self.find('spin button', '^' + name)

    def verdict(self, side):
        """The word on how the face on the 'motor' or 'far' side comes out."""
        return self.find('label', f'face.*, {side} side: ').name.split(': ')[1]

    def figure(self, name):
        """A number of the right-hand column, in a field where it can be set."""
        found = wait_for(lambda: self.all('label', f'^{name}: ') or self.all('text', f'^{name}$'))
        if not found:
            self.tell_end()
            raise LookupError(f'no figure named {name!r}')
        return found[0].name.split(': ', 1)[1] if found[0].getRoleName() == 'label' else self.text(found[0])

    # ---- Acting ----

    def origin(self):
        shell = subprocess.check_output(['xdotool', 'getwindowgeometry', '--shell', self.x_window()], text=True)
        geometry = dict(line.split('=') for line in shell.split())
        # Extents count from the window's inside; its border is as wide on all sides.
        inside = self.window.queryComponent().getExtents()
        border_x = (int(geometry['WIDTH']) - inside.width * SCALE) // 2
        border_y = (int(geometry['HEIGHT']) - inside.height * SCALE) // 2
        return int(geometry['X']) + border_x, int(geometry['Y']) + border_y

    def x_window(self):
        """The window as the X server numbers it."""
        if self.window not in self.x_windows:
            pid = str(self.window.get_process_id())
            ids = subprocess.check_output(['xdotool', 'search', '--onlyvisible', '--pid', pid], text=True).split()
            named = [i for i in ids if self.window_name(i) == self.window.name]
            if len(named) != 1:
                return (named or ids)[0]
            self.x_windows[self.window] = named[0]
        return self.x_windows[self.window]

    @staticmethod
    def window_name(window):
        found = subprocess.run(['xdotool', 'getwindowname', window], capture_output=True, text=True, check=False)
        return found.stdout.rstrip('\n')

    def box(self, node):
        """Where it is on the screen."""
        box = node.queryComponent().getExtents()
        x, y = self.origin()
        return Box(x + box.x * SCALE, y + box.y * SCALE, box.width * SCALE, box.height * SCALE)

    def centre(self, node):
        box = self.box(node)
        return box.x + box.width // 2, box.y + box.height // 2

    def click(self, node):
        xdotool('mousemove', *self.centre(node), 'click', 1)
        self.settle()

    def press(self, node):
        xdotool('mousemove', *self.centre(node), 'mousedown', 1)

    def glide(self, dx, dy, steps=12):
        """Moves the pointer by real motion, evenly."""
        x, y = self.pointer()
        for i in range(1, steps + 1):
            xdotool('mousemove', round(x + dx * i / steps), round(y + dy * i / steps))
            time.sleep(FRAME)

    def pointer(self):
        shell = subprocess.check_output(['xdotool', 'getmouselocation', '--shell'], text=True)
        place = dict(line.split('=') for line in shell.split())
        return int(place['X']), int(place['Y'])

    def release(self):
        xdotool('mouseup', 1)
        self.settle()

    def drag(self, node, dx, dy, steps=12):
        self.press(node)
        self.glide(dx, dy, steps)
        self.release()

    def keys(self, *keys):
        for at, key in enumerate(keys):
            if at > 0:
                time.sleep(FRAME)
            xdotool('key', key)
        self.settle()

    def frames(self):
        """All windows of the program."""
        return [window for window in (self.application.getChildAtIndex(i) for i in range(self.application.childCount)) if window]

    def frame(self, title):
        """The program's window with that title, or None."""
        return next((window for window in self.frames() if window.name == title), None)

    def turn_to(self, title):
        """Looks at the window with that title from now on, when it is there."""
        self.window = wait_for(lambda: self.frame(title))
        if not self.window:
            sys.exit(f'Bail out! No window is called {title!r}: {[frame.name for frame in self.frames()]}')
        self.settle()

    def bring_to_the_fore(self):
        xdotool('windowraise', self.x_window(), 'windowfocus', self.x_window())
        self.settle()

    def choose(self, menu, item):
        """Takes an item of a menu button's menu."""
        self.click(self.find('push button', menu))
        self.find('menu item', item).queryAction().doAction(0)
        self.settle()

    def menu_items(self, name=None):
        """The items of the menu that is open, those with a mark before them too."""
        return [node for node in self.all(None, name) if node.seen_role.endswith('menu item')]

    def menu_bottom(self):
        """How far down the main menu reaches, as it would without an end of the screen."""
        self.keys('F10')
        items = wait_for(self.menu_items) or []
        bottom = max((box.y + box.height for box in self.bus.boxes(items)), default=0)
        self.keys('Escape')
        return bottom

    def take(self, *names):
        """Takes an item of the main menu, by way of the submenus named before it."""
        self.keys('F10')
        for name in names:
            found = wait_for(lambda sought=name: self.menu_items(sought))
            if not found:
                raise LookupError(f'no item of the menu is named like {name!r}: {[node.seen for node in self.menu_items()]}')
            found[0].queryAction().doAction(0)
            self.settle()

    def type_into(self, node, text, *then):
        """Replaces the text of a field by real keys."""
        self.click(node)
        xdotool('key', 'ctrl+a')
        xdotool('type', '--delay', '15', '--', text)
        self.keys(*then)

    def settle(self):
        """Waits until everything sent has been dealt with: the program answers, and then rests for more than a frame."""
        end = time.monotonic() + 1
        rested = 0
        before = None
        while rested < 2 and time.monotonic() < end:
            try:
                _ = self.window.name if self.window else None
            except GLib.Error:
                pass
            time.sleep(0.6 * FRAME)
            now = self.effort()
            rested = rested + 1 if now == before and now else 0
            before = now

    def effort(self):
        """How much the program's first thread has done, or nothing while it is at work."""
        pid = self.process.pid if self.process else self.window.get_process_id()
        try:
            stat = pathlib.Path(f'/proc/{pid}/task/{pid}/stat').read_text().rpartition(')')[2].split()
        except OSError:
            return 'ended'
        return (stat[11], stat[12]) if stat[0] == 'S' else None

    def picture(self, name):
        folder = os.environ.get('SPELCH_GUI_PICTURES')
        if folder and shutil.which('import'):
            pathlib.Path(folder).mkdir(parents=True, exist_ok=True)
            subprocess.run(['import', '-window', 'root', f'{folder}/{name}.png'], check=False)

    def value(self, node):
        return node.queryValue().currentValue

    def text(self, node):
        words = node.queryText()
        return words.getText(0, words.characterCount)

    def complaints(self):
        """Warnings that the program and its toolkit wrote."""
        lines = self.log.read_text(errors='replace').splitlines()
        return [line for line in lines if re.search(r'WARNING|CRITICAL|ERROR|runtime error|Sanitizer', line)]

    # ---- Ending ----

    def crash(self):
        """Ends it as a power cut would."""
        self.ended = True
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def end(self):
        self.ended = True
        if self.process.poll() is None:
            self.process.terminate()
            self.process.wait(timeout=PATIENCE)
        if self.owns_home:
            shutil.rmtree(self.home, ignore_errors=True)
