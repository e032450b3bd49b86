#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The schema and the program must say the same of every part file, log or exercise in the corpus.

Files in good/ are accepted by both. Files in bad/ are refused by the program, and by the schema too unless bad.ini
marks them program_only; those the schema must accept, so that the list of what it can't say stays true. The starter
sets must fit it as well. Then every member of two good files is spoilt in many ways, one at a time, and both must say the
same of each, but for what only the program can see: one value against another.

Usage: check-schema.py READ-FILE SCHEMA CORPUS [DATA]
DATA, the folder of the starter sets and the demo, only with the part files; a corpus without it is of shop logs or, when its
name says so, of practice logs or exercises: those that come with the program, beside the schema, must be good too.
"""
import configparser
import copy
import json
import pathlib
import re
import subprocess
import sys
import tempfile

import jsonschema


# What a member is spoilt with; GONE takes it away.
GONE = object()
SPOILERS = [-1, 0, 0.01, 1.5, 7, 102, 200001, "x", "5 mm", True, None, [], {}, {"mm": 61, "typed": "61 mm"}, GONE]

# The program's sentences about one value against another.
CROSS = re.compile(r"add up to|deeper than|less than|isn't among|isn't the same|longer than|wider than|leaves no|"
                   r"more than rpm_max|isn't a day|stand twice|less deep|steps_rpm\[|tabs\.thickness|held\.overcut|"
                   r"starter set has no such|values drawn|follow_up: .*cuts\[0\]|follow_up: .*bits\[|follow_up: .*board|"
                   r"more than to|step must be|too small for that|drawn already|asked about|right through can be|"
                   r"one of bits")


class NotJson(Exception):
    pass


def no_twice(pairs):
    names = [name for name, _ in pairs]
    if len(names) != len(set(names)):
        raise NotJson("a member told twice")
    return dict(pairs)


def no_constant(name):
    raise NotJson(name)


def finite(digits):
    value = float(digits)
    if value in (float("inf"), float("-inf")):
        raise NotJson(digits)
    return value


def parse(path):
    try:
        text = path.read_bytes().decode("utf-8")
        return json.loads(text, object_pairs_hook=no_twice, parse_constant=no_constant, parse_float=finite)
    except ValueError as error:  # UnicodeDecodeError and JSONDecodeError are of this kind
        raise NotJson(str(error)) from error


def schema_says(validator, path):
    try:
        error = next(validator.iter_errors(parse(path)), None)
    except NotJson as reason:
        return str(reason)
    return f"{error.json_path}: {error.message}" if error else None


def program_says(program, paths):
    run = subprocess.run([*program, *paths], check=True, capture_output=True, encoding="utf-8")
    lines = run.stdout.splitlines()
    assert len(lines) == len(paths)
    return {path: None if line.startswith("accepted") else line for path, line in zip(paths, lines)}


def places(value, place=()):
    """Every member and entry of a document, as a path of names and numbers."""
    entries = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, inner in entries:
        yield (*place, key)
        yield from places(inner, (*place, key))


def spoilt(document, place, spoiler):
    copied = copy.deepcopy(document)
    inside = copied
    for key in place[:-1]:
        inside = inside[key]
    if spoiler is GONE:
        del inside[place[-1]]
    else:
        inside[place[-1]] = spoiler
    return copied


def disagreements(program, validator, path):
    document = json.loads(path.read_text(encoding="utf-8"))
    cases = [(place, spoiler) for place in places(document) for spoiler in SPOILERS]
    with tempfile.TemporaryDirectory() as folder:
        paths = [pathlib.Path(folder) / f"{i}{path.suffix}" for i in range(len(cases))]
        for made, (place, spoiler) in zip(paths, cases):
            made.write_text(json.dumps(spoilt(document, place, spoiler)), encoding="utf-8")
        program_of = program_says(program, paths)
        for made, (place, spoiler) in zip(paths, cases):
            schema_said, program_said = schema_says(validator, made), program_of[made]
            if bool(schema_said) != bool(program_said) and not (program_said and CROSS.search(program_said)):
                yield f"{place} {spoiler!r}: schema {schema_said}, program {program_said}"
    print(f"# {path.name}: {len(cases)} ways to spoil it")


def check(number, name, faults):
    print(f"{'not ok' if faults else 'ok'} {number} {name}")
    for fault in faults:
        print(f"# {fault}")
    return not faults


def main():
    program, schema_path, corpus, *data = [sys.argv[1]], *map(pathlib.Path, sys.argv[2:])
    of_exercises = corpus.name.startswith("exercise")
    if of_exercises:
        program.append("--exercise")
    if corpus.name.startswith("practice"):
        program.append("--practice")
    suffix = ".spelch" if data else ".json"
    schema = json.loads(schema_path.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    beside = jsonschema.RefResolver(schema_path.resolve().as_uri(), schema)
    validator = jsonschema.Draft202012Validator(schema, resolver=beside)
    listed = configparser.RawConfigParser()
    listed.read(corpus / "bad.ini", encoding="utf-8")

    good = sorted((corpus / "good").glob("*" + suffix)) + [folder / "demo.spelch" for folder in data]
    good += sorted((schema_path.parent / "exercises").glob("*.json")) if of_exercises else []
    bad = sorted((corpus / "bad").glob("*" + suffix))
    program_of = program_says(program, good + bad)
    items = [(kind, item) for folder in data for kind in ("bit", "board", "machine")
             for item in json.loads((folder / f"{kind}s.json").read_text(encoding="utf-8"))[f"{kind}s"]]
    print(f"1..{len(good) + len(bad) + len(items) + 3}")

    well, number = True, 0
    for path in good:
        number += 1
        faults = [f"program: {program_of[path]}"] if program_of[path] else []
        said = schema_says(validator, path)
        well &= check(number, f"good/{path.name}", faults + ([f"schema: {said}"] if said else []))
    only_program = 0
    for path in bad:
        number += 1
        said = schema_says(validator, path)
        program_only = listed.getboolean(path.stem, "program_only", fallback=False)
        only_program += program_only
        faults = [] if program_of[path] else ["the program accepts it"]
        if program_only and said:
            faults.append(f"listed as program_only, but the schema says: {said}")
        if not program_only and not said:
            faults.append("the schema accepts it")
        well &= check(number, f"bad/{path.name}", faults)
    for kind, item in items:
        number += 1
        part = validator.evolve(schema={"$ref": f"#/$defs/{kind}", "$defs": schema["$defs"]})
        faults = [f"{error.json_path}: {error.message}" for error in part.iter_errors(item)]
        well &= check(number, f"{kind} {item['id']}", faults)

    full = corpus.parent / "full.spelch" if data else corpus / "good" / "full.json"
    for path in (corpus / "good" / ("small" + suffix), full):
        number += 1
        well &= check(number, f"{path.name} spoilt", list(disagreements(program, validator, path)))

    number += 1
    print(f"# {len(good)} good, {len(bad)} bad, of which {only_program} only the program can refuse")
    well &= check(number, "the list is no longer than it must be",
                  [] if only_program < len(bad) / 4 else ["too much is left to the program"])
    return 0 if well else 1


if __name__ == "__main__":
    sys.exit(main())
