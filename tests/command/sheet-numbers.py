#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every number on the bench sheet must be one of the plan, of the part file, or one of the few that a page needs.

Each part is written as a PDF in millimetres and in inches; poppler reads its words. Rows and sentences that are named
below must say the member that belongs there, to half of the last digit that is printed. Any other number with a unit
must be a value of that kind in `spelch plan --json` for the page's cut and bit, or an entry of the part file; any other
number without a unit fails. That this notices wrong numbers is tried at the end: each number of the demo's pages is
changed by one in its last digit, and nearly all of these must fail.

Usage: sheet-numbers.py SPELCH DATA PART... ; a PART may be a folder of them. Prints TAP
"""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

INCH, FOOT = 25.4, 304.8
# The date on the pages is this one.
ENVIRONMENT = dict(os.environ, SOURCE_DATE_EPOCH='1780185600', LC_ALL='C.UTF-8')
DATE = '2026-05-31'
MAY_GO_UNNOTICED = 0.05


class Unaccounted(Exception):
    pass


def run(*words, language='en'):
    # 1: done, but the plan must not be cut.
    done = subprocess.run([str(word) for word in words], capture_output=True, text=True, check=False,
                          env=dict(ENVIRONMENT, LANGUAGE=language))
    if done.returncode not in {0, 1}:
        raise Unaccounted(f"{' '.join(map(str, words))}: {done.returncode}\n{done.stderr}")
    return done.stdout


# ---- Numbers as they are printed ----

UNITS = r'mm/min|m/min|in/min|ft/min|mm|in|ft|m/s|min|rpm|MPa|N|m|s|h|%|°'
DIGITS = r'(?:\d+ )?\d+/\d+|\d{1,3}(?:[ \u202f]\d{3})+(?!\d)(?:\.\d+)?|\d+(?:\.\d+)?'
NUMBER = re.compile(rf'(?<![\w.,/])−?(?:{DIGITS})(?![\d/])(?: ?(?:{UNITS})(?!\w))?')
KINDS = {'mm': 'mm', 'in': 'mm', 'mm/min': 'feed', 'in/min': 'feed', 'm': 'm', 'ft': 'm'}
SCALES = {'in': INCH, 'in/min': INCH, 'ft': FOOT / 1000, '%': 0.01}


class Printed:
    """What is printed says a value and, by its last digit, how far from it the value may be."""

    def __init__(self, text):
        sign, digits, unit = re.fullmatch(rf'(−?)({DIGITS}) ?({UNITS})?', text).groups()
        decimals = len(digits.partition('.')[2])
        value, half = 0, 0.5 * 10 ** -decimals
        plain = re.sub(r'[ \u202f](?=\d{3}(?!\d|/))', '', digits)
        for piece in plain.split():
            above, _, below = piece.partition('/')
            value, half = value + float(above) / float(below or 1), 0.0005 if below else half
        if unit in {'N', 'm', 'ft', 'MPa'} and '.' not in digits and value > 0:
            # Forces and distances are rounded to two or three figures: the zeros at their end count for nothing.
            half *= 10 ** min(len(plain) - len(plain.rstrip('0')), max(len(plain) - 2, 0))
        scale = SCALES.get(unit, 1)
        # Of lengths without decimals they were noughts, left off.
        half = {'mm': 0.05, 'in': 0.0005}.get(unit, half) if half == 0.5 else half
        self.kind, self.unit = KINDS.get(unit, unit), unit
        self.value, self.half = (-value if sign else value) * scale, half * scale * 1.0001 + 1e-9

    def is_one_of(self, values):
        return any(value is not None and abs(value - self.value) <= self.half for value in values)

    def is_bound(self, values, up):
        """Of a depth that must be reached, or must not be passed, or a factor: rounded so that it holds, to 1/64 of an inch
        (written with three decimals) or a tenth; a factor of ten and more to a whole."""
        step = INCH / 64 + INCH / 2000 if self.unit == 'in' else 1 if self.unit is None and self.value >= 10 else 0.1
        return any(value is not None and -1e-4 <= (self.value - value) * (1 if up else -1) < step - 1e-4 for value in values)


class Bounds(list):
    """Values that are printed rounded up, or down."""

    def __init__(self, values, up):
        super().__init__(values)
        self.up = up


def says(printed, values):
    return printed.is_bound(values, values.up) if isinstance(values, Bounds) else printed.is_one_of(values)


# ---- What they may be ----

# Of a member's name: which kind of number it is.
ENDS = (('mm_min', 'feed'), ('_mm', 'mm'), ('_rpm', 'rpm'), ('_n', 'N'), ('share', '%'), ('_deg', '°'), ('_mpa', 'MPa'),
        ('m_s', 'm/s'), ('_m_left', 'm'), ('path_m', 'm'), ('_s', 's'))


def gather(node, name, into):
    """All numbers under a node of the plan, by kind."""
    if isinstance(node, dict):
        for member, value in node.items():
            gather(value, member, into)
    elif isinstance(node, list):
        for value in node:
            gather(value, name, into)
    elif isinstance(node, (int, float)) and not isinstance(node, bool):
        kind = next((kind for end, kind in ENDS if name.endswith(end)), 'none')
        into.setdefault(kind, []).append(node)


def length(value):
    """Millimetres of a length in a part file."""
    if isinstance(value, dict):
        return value['mm']
    if not isinstance(value, str):
        return value
    number, unit = re.fullmatch(r'(.*?) ?(mm|in)?', value).groups()
    total = 0
    for piece in number.replace(',', '.').split():
        above, _, below = piece.partition('/')
        total += float(above) / float(below or 1)
    return total * (INCH if unit == 'in' else 1)


def lengths(node, *names):
    return [length(node[name]) for name in names if name in node]


class Cut:
    """A cut of the part file, and what is planned for it with the bit on its page."""

    def __init__(self, part, cut, bit, planned):
        self.part, self.cut, self.bit = part, cut, bit
        self.thickness, self.plan = planned['thickness_mm'], planned['cuts'][0]
        self.tips = [one['tip_mm'] for one in self.plan['passes']]
        self.numbers = range(1, len(self.tips) + 1)
        gantry = part['machine']['kind'] == 'gantry'
        self.rests = [self.thickness + (length(cut.get('backer', 0)) if gantry else 0) - tip for tip in self.tips]
        self.values = {}
        gather(self.plan, '', self.values)
        self.values.setdefault('mm', []).extend(self.told() + self.spared() + self.rests + [self.thickness])

    def of_stops(self):
        return [stop[member] for stop in self.plan['stops'] for member in ('value', 'limit')]

    def told(self):
        """Entries of the part file that a page repeats."""
        return (lengths(self.cut, 'width', 'depth', 'length', 'corner_radius', 'backer')
                + lengths(self.cut.get('tabs', {}), 'width', 'thickness') + lengths(self.cut.get('mating', {}), 'thickness')
                + lengths(self.bit, 'diameter', 'up_shear', 'sharpened_up_shear', 'cutting_length', 'shank')
                + lengths(self.part['machine'], 'overcut_allowed_mm'))

    def spared(self):
        """How far a tip stands inside a window or past the board: differences of two members."""
        windows = [ends for window in (self.plan['windows'] or {}).values() if isinstance(window, dict)
                   for ends in window.values() if ends]
        past = [abs(tip - self.thickness) for tip in self.tips]
        return past + [tip - end for tip in self.tips for ends in windows for end in ends]

    def each(self, member):
        return [one[member] for one in self.plan['passes']]

    def at(self, *members):
        node = self.plan
        for member in members:
            node = (node or {}).get(member)
        return [node]

    def widths(self):
        return lengths(self.cut, 'width') + self.at('setting_out', 'width_mm')

    def limits(self, binding):
        return [one['share'] for one in self.plan['limits'] or [] if one['binding'] or not binding]

    def at_least(self, *members):
        return Bounds([window[member][0] for window in (self.plan['windows'] or {}).values() if isinstance(window, dict)
                       for member in members if window[member]], True)


    def asked(self, member, up):
        return Bounds(self.at('windows', member), up)

    def seats(self, member):
        return [seat[member] for seat in self.plan['seat'] or []]

    def dial(self):
        steps = self.part['machine'].get('steps_rpm', [])
        return [steps.index(speed) + 1 for speed in self.each('speed_rpm') if speed in steps]

    def has_cut(self):
        return [self.bit.get('metres_cut', 0) + (self.plan['path_m'] or 0)]

    def asks(self):
        """A question of the plan is open, or the bit isn't accepted."""
        return any(stop['stop'].startswith('ask-') for stop in self.plan['stops']) or 'bit' not in self.cut

    def fits(self, printed):
        return printed.kind is not None and printed.is_one_of(self.values.get(printed.kind, []) + self.of_stops())


# ---- What pages say ----

# Rows and sentences, # for a number, and what each of these must be. On any page, for its own sake:
PAGE = [
    ('Page # of #', lambda p: [p.number], lambda p: [p.pages]),
    ('#(?: \\(#\\))?: check with a rule', lambda p: [50], lambda p: [50]),
    ('Scale # : #,', lambda p: [1, 2, 5, 10, 20], lambda p: [1, 2, 5, 10, 20]),
    ('IARC Group #', lambda p: [1]),
    ('at least # and two diameters', lambda p: [20]),
    ('Cut a # test strip', lambda p: [6 * INCH if p.inches else 150]),
    ('(?:[Ss]how|[Hh]idden) face (?=[12]\\b)(?!. (?:mm|in)\\b)#', lambda p: [1, 2]),
]
COVER = [
    (', # thick,', lambda p: [p.thickness]),
    ('Thickness #', lambda p: [p.thickness]),
    ('Piece # × #', lambda p: lengths(p.part, 'length'), lambda p: lengths(p.part, 'width')),
    ('Cuts #', lambda p: [len(p.cuts)]),
    ('Changes of the bit #', lambda p: [p.changes]),
    ('Turning over #', lambda p: [p.turns]),
]
# Of a table of passes, or of two beside each other.
ROWS = [
    ('(?m)^#(?:, held|\\*)? # #(?: #| finishes)?(?=$| \\d)', lambda p: p.cut.numbers,
     lambda p: p.of_first(p.cut.tips), lambda p: p.of_first(p.cut.rests), lambda p: p.of_first(p.cut.each('side_allowance_mm'))),
]
CUT = [
    ('Cut # of #', lambda p: [p.number - p.covers], lambda p: [len(p.cut_pages)]),
    ('# · #', lambda p: p.cut.numbers, lambda p: p.of_first(p.cut.tips)),
    ('Ø #', lambda p: p.cut.widths()),
    ('pass 1 of #', lambda p: [len(p.cut.tips)]),
    ('through, # pass', lambda p: [len(p.cut.tips)]),
    ('# of them', lambda p: [p.cut.cut['quantity']]),
    ('(?:;|each) # long', lambda p: lengths(p.cut.cut, 'length')),
    ('# deep, # wide', lambda p: lengths(p.cut.cut, 'depth'), lambda p: p.cut.widths()),
    ('# across, # deep', lambda p: p.cut.widths(), lambda p: lengths(p.cut.cut, 'depth')),
    ('Stick-out #', lambda p: p.cut.at('stick_out_mm') + p.cut.at('scoring', 'stick_out_mm')),
    ('In the collet #', lambda p: p.cut.at('in_collet_mm') + p.cut.at('scoring', 'in_collet_mm')),
    ('Turn-over #', lambda p: lengths(p.cut.bit, 'up_shear', 'sharpened_up_shear')),
    ('Spindle(?:, pass 1)? #', lambda p: p.cut.each('speed_rpm')),
    ('dial step #', lambda p: p.cut.dial()),
    ('Plunge feed #', lambda p: p.cut.each('plunge_feed_mm_min')),
    ('Feed(?:, pass 1)? #', lambda p: p.cut.each('feed_mm_min')),
    ('Bit above the table #', lambda p: p.cut.at('bit_height_mm')),
    ('sets the feed, # used', lambda p: p.cut.limits(True)),
    ('next, [^,.;]*, #', lambda p: p.cut.limits(False)),
    ('hold for #', lambda p: p.cut.at('hold', 'needed_n')),
    ('about # \\(# to #\\)', lambda p: p.cut.seats('mean_n'), lambda p: p.cut.seats('low_n'), lambda p: p.cut.seats('high_n')),
    ("#, which bears # times the bit's force, # times with", lambda p: p.cut.at('hold', 'available_n'),
     lambda p: Bounds(p.cut.at('hold', 'factor'), False), lambda p: Bounds(p.cut.at('hold', 'factor_at_worst'), False)),
    ('# tracks? side by side, # from one to the next; they overlap by #', lambda p: p.cut.at('setting_out', 'tracks'),
     lambda p: p.cut.at('setting_out', 'step_over_mm'), lambda p: p.cut.at('setting_out', 'overlap_mm')),
    ('Pass # with “', lambda p: [1]),
    ('[Aa] backer at least #', lambda p: p.cut.asked('backer_mm', True)),
    ('have to run # below', lambda p: p.cut.asked('needs_overcut_mm', True)),
    ('(?:first pass|last pass) from #', lambda p: p.cut.at_least('first_pass_mm', 'last_tip_mm')),
    ('up- ?shear of # to #', lambda p: p.cut.asked('up_shear_at_least_mm', True),
     lambda p: p.cut.asked('up_shear_at_most_mm', False)),
    ('up- ?shear of # or less', lambda p: p.cut.asked('up_shear_at_most_mm', False)),
    ('Set the first pass to #', lambda p: p.cut.at_least('first_pass_mm')),
    ('Set the straightedge # from[^:]*: # of base less #, half', lambda p: p.cut.at('setting_out', 'fence_offset_mm'),
     lambda p: lengths(p.part['machine'], 'base_radius'), lambda p: [one / 2 for one in lengths(p.cut.bit, 'diameter')]),
    ('in # (?:stages|pecks) of about #', lambda p: p.cut.at('setting_out', 'pecks'),
     lambda p: Bounds(p.cut.at('setting_out', 'peck_mm'), False)),
    ('a metre in #', lambda p: [60000 / feed for feed in p.cut.each('feed_mm_min')]),
    ('a foot in #', lambda p: [60 * FOOT / feed for feed in p.cut.each('feed_mm_min')]),
    ('thick at #, #, # and # from', *[lambda p, i=i: p.cut.plan['setting_out']['tabs_at_mm'][i:i + 1] for i in range(4)]),
    ('tabs?(?: by (?:itself|themselves) would)? holds?(?: only)? #', lambda p: Bounds(p.cut.at('tabs', 'factor'), False)),
    ('held with only #', lambda p: Bounds(p.cut.at('hold', 'factor') + p.cut.at('hold', 'factor_at_worst'), False)),
    ('Leave # such tabs, or make these # wide: as they are, they hold only #', lambda p: p.cut.at('tabs', 'needs_count'),
     lambda p: Bounds(p.cut.at('tabs', 'needs_width_mm'), True), lambda p: Bounds(p.cut.at('tabs', 'factor'), False)),
    ('it takes # times', lambda p: [2]),
    ('At the # tabs?', lambda p: p.cut.at('tabs', 'count')),
    ('the edge has cut #', lambda p: p.cut.has_cut()),
    ('Dull after about # of', lambda p: p.cut.at('life_m_left')),
]


class Sheet:
    """A part, what is planned for its cuts, and the pages that are to say so."""

    def __init__(self, spelch, data, path):
        self.spelch, self.path = spelch, path
        self.part = json.loads(path.read_text(encoding='utf-8'))
        self.starter = json.loads((data / 'bits.json').read_text(encoding='utf-8'))['bits']
        self.planned = {}

    def names(self):
        part = self.part
        nodes = [part, part['board'], part['machine']] + self.bits() + part['cuts']
        return sorted({node['name'] for node in nodes if node.get('name')} | {self.path.name}, key=len, reverse=True)

    def bits(self):
        own = self.part.get('bits', [])
        return own + [bit for bit in self.starter if bit['id'] not in {one['id'] for one in own}]

    def cut_on(self, text):
        """By its name at the head of a page; its bit stands under that heading."""
        flat = text.replace('\n', ' ')
        head = re.search(r'Cut \d+ of \d+ (.*)', flat)[1]
        cut = max((cut for cut in self.part['cuts'] if head.startswith(f"{cut.get('name', cut['id'])} ")),
                  key=lambda one: len(one.get('name', one['id'])))
        named = [bit for bit in self.bits() if f" Bit {bit.get('name', bit['id'])}" in flat]
        bit = max(named, key=lambda one: len(one.get('name', one['id'])), default={})
        way_up = 'b' if re.search(r'\bUP: [^()]*\(b\)', flat) else 'a'
        key = cut['id'], bit.get('id'), way_up
        if key not in self.planned:
            asked = ['--bit', bit['id']] if bit else []
            if cut.get('way_up', 'a') != way_up:
                asked += ['--way-up', way_up]
            self.planned[key] = Cut(self.part, cut, bit, json.loads(run(self.spelch, 'plan', self.path, '--cut', cut['id'],
                                                                        '--json', *asked)))
        return self.planned[key]

    def texts(self, units, folder, language='en'):
        pdf = pathlib.Path(folder) / 'sheet.pdf'
        run(self.spelch, 'sheet', self.path, '--units', units, '-o', pdf, language=language)
        return run('pdftotext', '-raw', pdf, '-').split('\f')[:-1]


class Page:
    def __init__(self, sheet, texts, number, units):
        self.part, self.cuts, self.number, self.pages = sheet.part, sheet.part['cuts'], number, len(texts)
        self.covers, self.inches = self.pages - len(self.cuts), units == 'in'
        self.steps, self.cut_pages = range(1, len(self.cuts) + 1), range(self.covers + 1, self.pages + 1)
        order = [sheet.cut_on(text) for text in texts[self.covers:]]
        self.cut = order[number - 1 - self.covers] if number > self.covers else None
        # What must not be cut isn't counted.
        made = [cut for cut in order if cut.plan['verdict'] not in {'do_not_cut', None}]
        bits = [one['bit'] for cut in made for one in cut.plan['passes']]
        self.changes = sum(a != b for a, b in zip(bits, bits[1:]))
        self.turns = sum(a.plan['way_up'] != b.plan['way_up'] for a, b in zip(made, made[1:]))
        self.thickness = order[0].thickness
        self.times = [cut.plan['time_s'] for cut in ([self.cut] if self.cut else made)]
        self.listed = {'Do not cut as planned': [i for i, cut in zip(self.cut_pages, order) if cut not in made],
                       'Answer the questions': [i for i, cut in zip(self.cut_pages, order) if cut in made and cut.asks()]}


    def of_first(self, values):
        """Of one value for each pass, that of the pass whose number stands before it."""
        return values[int(self.first) - 1:int(self.first)]


def seconds(text):
    times = {'h': 3600, 'min': 60, 's': 1}
    return sum(int(digits) * times[unit] for digits, unit in re.findall(r'(\d+) (h|min|s)\b', text))


def blank(text, start, end):
    return text[:start] + ' ' * (end - start) + text[end:]


def rule_blanked(text, page):
    """The depth rule's numbers begin their lines, from 0 in equal steps, and end soon after the deepest tip."""
    found = re.search(rf'(?m)^0\n(?:(?:{DIGITS})(?: [^\d\n]*)?\n)+', text)
    if found is None:
        return text
    # Words that stand as high as a number follow it in its line.
    lines = [re.match(DIGITS, line)[0] for line in found[0].splitlines()]
    steps = [Printed(line).value for line in lines]
    # A length of something else may follow in lines of its own.
    while len(steps) > 2 and abs(steps[-1] - steps[-2] - steps[1]) >= 0.01:
        steps.pop()
    even = all(abs(b - a - steps[1]) < 0.01 for a, b in zip(steps, steps[1:]))
    last = steps[-1] * (INCH if page.inches else 1)
    if not even or last > max([page.thickness + 12] + page.cut.tips):
        raise Unaccounted(f'the depth rule reads {steps}')
    for line in reversed(list(re.finditer(rf'(?m)^(?:{DIGITS})', found[0]))[:len(steps)]):
        text = blank(text, found.start() + line.start(), found.start() + line.end())
    return text


def times_blanked(text, page):
    for found in reversed(list(re.finditer(r'\b(?:\d+ h )?(?:\d+ min(?: \d+ s)?|\d+ s)\b', text))):
        allowed = page.times + [sum(page.times)]
        half = 30 if ' h' in found[0] else 0.5
        if not any(abs(seconds(found[0]) - time) <= half + 1e-6 for time in allowed):
            raise Unaccounted(f'“{found[0]}” is none of {allowed} s')
        text = blank(text, found.start(), found.end())
    return text


def steps_blanked(text, page):
    """The cover's order counts from 1 and names the page of each."""
    found = list(re.finditer(r'(?m)^(\d+) page (\d+)$', text))
    said = [(int(one[1]), int(one[2])) for one in found]
    if said != list(enumerate(page.cut_pages, 1)):
        raise Unaccounted(f'the cuts have the numbers and pages {said}')
    for one in found:
        text = blank(text, one.start(), one.end())
    return text


def counted(pages):
    """'2, 5–8' as it is meant."""
    spans = [[int(end) for end in span.split('–')] for span in pages.split(', ')]
    return [number for span in spans for number in range(span[0], span[-1] + 1)]


def lists_blanked(text, page):
    for name, pages in page.listed.items():
        found = re.search(rf'{name}: pages? ([\d,– ]*\d)\.', text)
        said = counted(found[1]) if found else []
        if said != pages:
            raise Unaccounted(f'{name}: {pages}, but the cover says {said}')
        text = blank(text, found.start(), found.end()) if found else text
    return text


def patterns(rows):
    number = f'({NUMBER.pattern})'
    return [(re.compile(row[0].replace('#', number)), row[1:]) for row in rows]


ON_COVER, ON_CUT, IN_TABLE = patterns(PAGE + COVER), patterns(PAGE + CUT), patterns(ROWS)


def said_blanked(text, page, rows):
    for pattern, members in rows:
        for found in reversed(list(pattern.finditer(text))):
            page.first = Printed(found[1]).value
            for group, member in enumerate(members, 1):
                if found[group] is not None and not says(Printed(found[group]), member(page)):
                    raise Unaccounted(f'“{found[0]}”: {found[group]} is none of {list(member(page))}')
            text = blank(text, found.start(), found.end())
    return text


AT_FOOT = re.compile(rf'\S+, revision [0-9a-f]{{8}}, {DATE}\. Reckoned by model [\d.]+')


def names_blanked(text, names):
    for name in names:
        text = text.replace(f' {name}', ' ')
    return text


def check(text, page, names):
    """Fails unless every number of the page is accounted for; gives how many there are."""
    text = AT_FOOT.sub('', text.replace('\u00a0', ' ')).replace(DATE, ' ')
    total = len(NUMBER.findall(text))
    text = said_blanked(rule_blanked(text, page), page, IN_TABLE) if page.cut else steps_blanked(text, page)
    text = names_blanked(text.replace('\n', ' '), names)
    text = text if page.cut else lists_blanked(text, page)
    text = times_blanked(said_blanked(text, page, ON_CUT if page.cut else ON_COVER), page)
    for found in NUMBER.finditer(text):
        if page.cut is None or not page.cut.fits(Printed(found[0])):
            raise Unaccounted(f'“…{text[max(found.start() - 60, 0):found.end() + 30]}…”: nothing says {found[0]}')
    return total


# ---- Trying it ----

def changed(text, found):
    """A number with its last digit that counts one more, or less."""
    digits = found[0]
    at = max(i for i, letter in enumerate(digits) if letter in '123456789') if re.search('[1-9]', digits) else digits.index('0')
    digit = int(digits[at])
    return text[:found.start()] + digits[:at] + str(digit + 1 if digit < 9 else 8) + digits[at + 1:] + text[found.end():]


def notices(text, page, names, found):
    try:
        check(changed(text, found), page, names)
    except Unaccounted:
        return True
    return False


def check_part(sheet, folder):
    total = 0
    for units in ('mm', 'in'):
        texts, names = sheet.texts(units, folder), sheet.names()
        for i, text in enumerate(texts):
            page = Page(sheet, texts, i + 1, units)
            try:
                total += check(text, page, names)
            except Unaccounted as unaccounted:
                raise Unaccounted(f'page {i + 1} in {units}: {unaccounted}') from None
    return f'{total} numbers'


def check_languages(sheet, folder):
    """Other languages say no number that the English page doesn't; their words are the translators'."""
    folders = pathlib.Path(os.environ['SPELCH_LOCALE_DIR']).iterdir()
    spoken = sorted(path.name for path in folders if (path / 'LC_MESSAGES').is_dir())

    def numbers(text):
        # Names of bits have a decimal comma in them whatever the locale.
        return set(re.findall(DIGITS, re.sub(r'(?<=\d),(?=\d)', '.', text)))

    for units in ('mm', 'in'):
        english = [numbers(text) for text in sheet.texts(units, folder)]
        for language in spoken:
            for i, text in enumerate(sheet.texts(units, folder, language)):
                more = numbers(text) - english[i]
                if more:
                    raise Unaccounted(f'page {i + 1} in {units}, {language}: {sorted(more)} isn’t on the English page')
    return ', '.join(spoken)


def check_that_it_notices(sheet, folder):
    texts, names, tried, missed = sheet.texts('mm', folder), sheet.names(), 0, []
    for i, text in enumerate(texts):
        page = Page(sheet, texts, i + 1, 'mm')
        text = AT_FOOT.sub('', text)
        for found in NUMBER.finditer(text):
            tried += 1
            if not notices(text, page, names, found):
                missed.append(text[max(found.start() - 20, 0):found.end() + 10].replace('\n', ' '))
    if len(missed) > MAY_GO_UNNOTICED * tried:
        raise Unaccounted(f'{len(missed)} of {tried} changed numbers went unnoticed: {missed}')
    return f'{tried - len(missed)} of {tried} changed numbers are noticed'


def main():
    spelch, data, *told = [pathlib.Path(word) for word in sys.argv[1:]]
    parts = [part for path in told for part in (sorted(path.glob('*.spelch')) if path.is_dir() else [path])]
    if shutil.which('pdftotext') is None:
        print("1..0 # SKIP poppler-utils isn't installed")
        return 0
    demo = data / 'demo.spelch'
    tests = [(path.stem, check_part, path) for path in parts]
    tests += [('wrong numbers', check_that_it_notices, demo)]
    tests += [('languages', check_languages, demo)] if 'SPELCH_LOCALE_DIR' in os.environ else []
    print(f'1..{len(tests)}')
    failed = 0
    with tempfile.TemporaryDirectory() as folder:
        for number, (name, test, path) in enumerate(tests, 1):
            try:
                print(f'ok {number} {name}: {test(Sheet(spelch, data, path), folder)}')
            except Unaccounted as unaccounted:
                failed += 1
                print(f'not ok {number} {name}\n# ' + str(unaccounted).replace('\n', '\n# '))
    return int(failed > 0)


if __name__ == '__main__':
    sys.exit(main())
