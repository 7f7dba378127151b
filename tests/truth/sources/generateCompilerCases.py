"""Generates texts with conditional blocks and enumerations, and asks g++ what it makes of them.

Every name in a condition is defined or undefined by the text itself, so that the text alone decides.
Usage: python3 generateCompilerCases.py > compiler.json
"""

import json
import random
import re
import subprocess

random.seed(4)
NAMES = ["FAN", "SOUND", "BOARD", "DEBUG"]


def setting(name):
    kind = random.randrange(5)
    if kind == 0:
        return f"#undef {name}"
    if kind == 1:
        return f"#define {name}"
    return f"#define {name} {random.choice(['0', '1', '2', '3', '0x2', '010'])}"


def term(numbers):
    name = random.choice(NAMES)
    kind = random.randrange(6)
    if kind == 0:
        return f"defined({name})"
    if kind == 1:
        return f"!defined {name}"
    # A name that is defined as nothing cannot stand in an expression.
    number = random.choice(numbers) if numbers else "0"
    if kind == 2:
        return number
    if kind == 3:
        return f"!{number}"
    return f"{number} {random.choice(['==', '!=', '<', '>', '<=', '>='])} {random.randrange(4)}"


def condition(numbers, depth=0):
    if depth < 2 and random.random() < 0.4:
        left, right = condition(numbers, depth + 1), condition(numbers, depth + 1)
        return f"({left}) {random.choice(['&&', '||'])} ({right})"
    return term(numbers)


def block(numbers, depth, marks):
    lines = []
    kind = random.randrange(3)
    if kind == 0:
        lines.append(f"#ifdef {random.choice(NAMES)}")
    elif kind == 1:
        lines.append(f"#ifndef {random.choice(NAMES)}")
    else:
        lines.append(f"#if {condition(numbers)}")
    lines += body(numbers, depth, marks)
    for _ in range(random.randrange(3)):
        lines.append(f"#elif {condition(numbers)}")
        lines += body(numbers, depth, marks)
    if random.random() < 0.6:
        lines.append("#else")
        lines += body(numbers, depth, marks)
    lines.append("#endif")
    return lines


def body(numbers, depth, marks):
    marks.append(len(marks))
    lines = [f"const int MARK{marks[-1]}_PIN = {marks[-1] % 40};"]
    if depth < 2 and random.random() < 0.4:
        lines += block(numbers, depth + 1, marks)
    return lines


def conditional():
    settings = [setting(name) for name in NAMES]
    numbers = [s.split()[1] for s in settings if len(s.split()) == 3] + [s.split()[1] for s in settings if s.startswith("#undef")]
    marks = []
    lines = settings + [line for _ in range(2) for line in block(numbers, 0, marks)]
    text = "\n".join(lines) + "\n"
    out = subprocess.run(["g++", "-E", "-P", "-x", "c++", "-"], input=text, capture_output=True, text=True, check=True).stdout
    return {"text": text, "kept": re.findall(r"MARK\d+_PIN", out)}


def enumeration():
    count = random.randrange(2, 7)
    names = [f"E{i}_PIN" for i in range(count)]
    entries = [f"{name} = {random.choice([str(random.randrange(60)), '0x1A', '017'])}" if random.random() < 0.35 else name for name in names]
    text = f"enum Pins {{ {', '.join(entries)} }};\n"
    prints = "".join(f'printf("%d\\n", (int){name});' for name in names)
    program = f"#include <cstdio>\n{text}int main() {{ {prints} }}\n"
    subprocess.run(["g++", "-x", "c++", "-", "-o", "/tmp/enumeration"], input=program, text=True, check=True)
    values = subprocess.run(["/tmp/enumeration"], capture_output=True, text=True, check=True).stdout.split()
    return {"text": text, "values": {name: int(value) for name, value in zip(names, values)}}


compiler = subprocess.run(["g++", "--version"], capture_output=True, text=True, check=True).stdout.splitlines()[0]
print(json.dumps({"compiler": compiler, "conditionals": [conditional() for _ in range(240)], "enumerations": [enumeration() for _ in range(60)]}, indent=1))
