#!/usr/bin/env python3
"""Patterns of Markdown's marks, half a megabyte of each: read or refused within two seconds of CPU.

usage: costly.py TREE_TEXT [--sample N | --all] [--tokens N] [--size BYTES] [--seed N] [--part K/N]

A pattern is a string of up to four tokens, repeated; or one repeated and then another. All of them are far too many
for an ordinary run, which draws some by seed (so that they are the same each time) beside those that once took
minutes. `--all` tries every one, for hours: run it by hand when the reader of Markdown changes; a `--size` of 30000
with `--limit 0.02` finds what grows with the square in a sixteenth of the time.
"""
import argparse
import itertools
import os
import random
import subprocess
import sys

TOKENS = ["*", "_", "**", "[", "]", "(", ")", "!", "<", ">", "`", "``", "\\", "|", "\n", "\n\n", " ", "a", "- ", "> ", "# ",
          "\"", ":", "&", "<!--", "-->", "<?", "1. ", "    ", "[a]: b", "|-|\n", "---\n", "\t", "~~~\n", "é", "\r\n"]
KNOWN = ["![[]()", "*a**b_ ", "a *b* [b](c) d ", "a|b\n|-|-|-|\n", "a <?", "[a][b", "<a b=\"", "[a](b \"c", "*a `b* ` ", "[`]` ",
         "1. ", "- ", "> ", "[a]: b\n", "\\*", "a\n", "a\n\n", "***a", "|", "&lt;", "<!--a", "a\r\n|-|\r\n"]
PAIRS = [("*a ", "_a*_ "), ("![", "[]()"), ("- ", "\n"), ("- ", "["), ("- ", "a"), ("1. ", "a\n"), ("> ", "\n"), ("*a `b* ` ", "_a*_ "), ("[`]` ", "[]()"),
         ("[a]: b\n", "[a] "), ("| a |\n|---|\n", "| *b* [c](d) |\n"), ("```\n- a\n", "  x\n     - *b [c](d) ")]


def filled(unit, size):
    return unit * max(1, size // len(unit.encode()))


def patterns(tokens):
    for length in range(1, tokens + 1):
        for chosen in itertools.product(TOKENS, repeat=length):
            yield ("".join(chosen),)
    short = ["".join(chosen) for length in (1, 2) for chosen in itertools.product(TOKENS, repeat=length)]
    yield from itertools.product(short, repeat=2)


def drawn(count, tokens, seed):
    random_ = random.Random(seed)
    for i in range(count):
        unit = lambda most: "".join(random_.choice(TOKENS) for _ in range(random_.randint(1, most)))
        yield (unit(tokens),) if i % 2 else (unit(tokens), unit(tokens))


def seconds(program, text):
    child = subprocess.Popen([program], stdin=subprocess.PIPE, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
    try:
        child.stdin.write(text.encode() + b"\0")
        child.stdin.close()
    except BrokenPipeError:
        pass
    said = child.stderr.read()
    _, status, usage = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    return usage.ru_utime + usage.ru_stime, child.returncode, said


ask = argparse.ArgumentParser()
ask.add_argument("program")
ask.add_argument("--all", action="store_true")
ask.add_argument("--sample", type=int, default=60)
ask.add_argument("--tokens", type=int, default=4)
ask.add_argument("--size", type=int, default=500_000)
ask.add_argument("--seed", type=int, default=1)
ask.add_argument("--limit", type=float, default=2.0, help="seconds of CPU")
ask.add_argument("--part", default="0/1", help="K/N: only each Nth, from the Kth")
given = ask.parse_args()
tried = itertools.chain(((unit,) for unit in KNOWN), PAIRS,
                        patterns(given.tokens) if given.all else drawn(given.sample, given.tokens, given.seed))
first, step = map(int, given.part.split("/"))
worst, slow, count = (0, ""), 0, 0
for pattern in itertools.islice(tried, first, None, step):
    text = "".join(filled(unit, given.size // len(pattern)) for unit in pattern)
    took, status, said = seconds(given.program, text)
    count += 1
    if took > worst[0]:
        worst = took, pattern
    if took > given.limit or status != 0:
        slow += 1
        print(f"{took:.2f} s, exit {status}: {pattern!r} {said[:500]!r}", flush=True)
print(f"{count} patterns of {given.size} bytes; the slowest took {worst[0]:.2f} s: {worst[1]!r}")
sys.exit(1 if slow else 0)
