#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Numbers in the sentences of docs/model.md against data/model.json. Prints TAP; the argument is the root of the source tree.

Each row is a constant's id, what the page's number is to be multiplied with, and the words about it, with the number as [#].
Words that are no longer there fail like a number that differs."""
import json
import pathlib
import re
import sys

ROOT = pathlib.Path(sys.argv[1])
ROWS = [
    ('wear-points-one', 1, 'blunting up to [#] 0'),
    ('wear-points-two', 1, 'blunting up to 1.2 0, to [#] +1'),
    ('chip-points-one', 1, 'cuts the edge last under [#] mm 0'),
    ('chip-points-two', 1, 'mm 0, to [#] mm +1'),
    ('grain-bad-from', 1, 'fibres between [#]°'),
    ('grain-bad-to', 1, 'fibres between 7.5° and [#]° to the travel'),
    ('backing-points', -1, '| backing, [#] |'),
    ('exit-corner-points', 1, '| exit corner, +[#] |'),
    ('cuts-through', 1, 'the cut goes through: o ≥ [#] mm'),
    ('backer-spare', 1, "a backer's thickness less [#] mm"),
    ('clearance-base', 1, 'the stick-out less the base or insert and [#] mm'),
    ('ramp-default', 1, 'by default at [#]°'),
    ('ramp-down-cut', 1, 'a down-cut at [#]°'),
    ('edge-radial-share', 1, 'ρ = atan 0.4 and c = [#]'),
    ('friction-wood-steel', 1, 'ρ = atan [#] and'),
    ('blunting-new', 1, 'u is blunting: [#] new'),
    ('blunting-sharp', 1, 'new, [#] sharp in use'),
    ('blunting-worn', 1, 'sharp in use, [#] worn'),
    ('blunting-dull', 1, 'worn, [#] dull'),
    ('rake-slope', 0.01, 'b falls by [#] % for each degree of rake'),
    ('rake-default', 1, 'for each degree of rake above [#]°'),
    ('density-band', 0.01, "They scale with the species' density, at most [#] % either way"),
    ('density-hardwood-as-softwood', 1, 'hardwoods under [#] kg/m³ count as softwood'),
    ('lift-down-share', 1 / 2, 'the down-shear heights with only h[#]alf'),
    ('band-panel', 0.01, '±[#] % in panels'),
    ('band-solid', 0.01, 'in panels, ±[#] % in solid wood'),
    ('band-slow', 0.01, 'the same formulas with a band of ±[#] %'),
    ('design-panel', 1, 'times [#] for panels'),
    ('design-solid', 1, 'for panels and [#] for solid wood'),
    ('fluted-diameter', 1, 'the fluted part as a round of [#] D'),
    ('modulus-carbide', 1000, 'Carbide has a modulus of [#] GPa'),
    ('modulus-steel', 1000, 'GPa, steel [#] GPa'),
    ('deflection-grade-1', 1, 'Deflection is limited to [#],'),
    ('deflection-grade-2', 1, 'limited to 0.05, [#] or'),
    ('deflection-grade-3', 1, '0.10 or [#] mm as the worst grade accepted'),
    ('stress-carbide', 1, 'stress to [#] MPa in carbide'),
    ('stress-hss', 1, 'in carbide, [#] in high-speed steel'),
    ('stress-steel', 1, 'high-speed steel, [#] in a plain steel body'),
    ('slender-below', 1, 'a step of a bit thinner than [#] mm'),
    ('collet-least', 1, 'At least [#] mm and two diameters of shank'),
    ('bulking-wood', 1, 'Loose chips take up [#] times'),
    ('bulking-board', 1, 'in solid wood and plywood, [#] times in MDF'),
    ('flute-share-1', 1, "share of the bit's section is [#],"),
    ('flute-share-2', 1, "section is 0.40, [#] or"),
    ('flute-share-3', 1, '0.40, 0.30 or [#] for one, two or three'),
    ('clearing-up', 1, 'how well the shear clears: [#] up'),
    ('clearing-straight', 1, 'clears: 1 up, [#] straight'),
    ('clearing-down', 1, 'straight, [#] for down-shear over a closed bottom'),
    ('heat-caution', 1, '[#] is a caution'),
    ('heat-burns', 1, 'is a caution and [#] *burns*'),
    ('life-laminate', 1000, 'from [#] km in melamine film'),
    ('life-softwood', 1000, 'in melamine film to [#] km in softwood'),
    ('hold-friction-laminate', 1, '[#] for laminate'),
    ('hand-force-trim', 1, 'sideways force is limited to [#] N for a small trim router'),
    ('hand-feed-max', 1000, 'feed to [#] m/min hand-held'),
    ('table-feed-max', 1000, 'm/min hand-held and [#] m/min on a table'),
    ('shear-hardwood', 1, 'else [#] G^1.13 for hardwood'),
    ('shear-hardwood-power', 1, 'else 21.9 G^[#] for hardwood'),
    ('shear-softwood', 1, 'for hardwood and [#] G^0.85'),
    ('shear-softwood-power', 1, 'for hardwood and 16.6 G^[#] MPa'),
    ('tab-quantile', 1, 'Of each mean, 1 − [#] CV is counted'),
    ('chip-cap', 1, 'the thickest chip at most [#] D'),
    ('speed-spare', 0.01, 'the speeds that reach within [#] % of the quickest feed'),
]


def flat(text):
    return re.sub(r'\s+', ' ', text)


def told(page, words):
    """The number that stands in those words; 1 where only words do."""
    before, after = words.split('[#]')
    if before.endswith('h') and after == 'alf':
        return 1.0 if before + after in page else None
    found = re.search(re.escape(before) + r'(−?[0-9][0-9.]*[0-9]|−?[0-9])' + re.escape(after), page)
    return float(found.group(1).replace('−', '-')) if found else None


def main():
    page = flat((ROOT / 'docs' / 'model.md').read_text(encoding='utf-8').split('<!-- constants -->')[0])
    values = {row['id']: row['value'] for row in json.loads((ROOT / 'data' / 'model.json').read_text(encoding='utf-8'))['constants']}
    print(f'1..{len(ROWS)}')
    for number, (name, factor, words) in enumerate(ROWS, 1):
        ours = told(page, words)
        holds = ours is not None and abs(ours * factor - values[name]) <= 1e-9 * max(1, abs(values[name]))
        print(f"{'ok' if holds else 'not ok'} {number} - {name}: “{words}”")
        if not holds:
            print(f'# the page says {ours}, the model {values[name]}')


main()
