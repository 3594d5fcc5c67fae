#!/usr/bin/python3
"""An outside witness for widths: the sum of the advances in a font's own hmtx table.

usage: font_advances.py FONT TEXT   prints the sum in font units, then the units per em

Reads the file's bytes itself (OpenType 1.9: tables head, hhea, hmtx, cmap format 4), so it shares
no code with what it checks. Knows no kerning.
"""
import struct
import sys


def tables_of(data):
    count = struct.unpack(">H", data[4:6])[0]
    out = {}
    for i in range(count):
        tag, _, offset, length = struct.unpack(">4sLLL", data[12 + 16 * i:28 + 16 * i])
        out[tag.decode()] = data[offset:offset + length]
    return out


def glyph_of(cmap, code):
    for i in range(struct.unpack(">H", cmap[2:4])[0]):
        platform, encoding, at = struct.unpack(">HHL", cmap[4 + 8 * i:12 + 8 * i])
        if struct.unpack(">H", cmap[at:at + 2])[0] != 4 or (platform, encoding) not in ((3, 1), (0, 3)):
            continue
        segments = struct.unpack(">H", cmap[at + 6:at + 8])[0] // 2
        row = lambda n, form: struct.unpack(
            ">%d%s" % (segments, form),
            cmap[at + 14 + n * 2 * segments + (2 if n else 0):][:2 * segments])
        ends, starts, deltas, offsets = row(0, "H"), row(1, "H"), row(2, "h"), row(3, "H")
        for s in range(segments):
            if starts[s] <= code <= ends[s]:
                if offsets[s] == 0:
                    return (code + deltas[s]) & 0xFFFF
                place = at + 16 + 6 * segments + 2 * s + offsets[s] + 2 * (code - starts[s])
                return struct.unpack(">H", cmap[place:place + 2])[0]
    raise SystemExit("no glyph for U+%04X" % code)


def main():
    tables = tables_of(open(sys.argv[1], "rb").read())
    metrics = struct.unpack(">H", tables["hhea"][34:36])[0]
    total = 0
    for character in sys.argv[2]:
        glyph = min(glyph_of(tables["cmap"], ord(character)), metrics - 1)
        total += struct.unpack(">H", tables["hmtx"][4 * glyph:4 * glyph + 2])[0]
    print(total, struct.unpack(">H", tables["head"][18:20])[0])


main()
