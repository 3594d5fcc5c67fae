#!/usr/bin/python3
"""Draws the pictures of 20-pictures.md again: examples/pictures/draw.py (Debian: python3-pil)."""
import pathlib

from PIL import Image, ImageDraw

FINE = 4  # drawn so many times larger, then averaged, for smooth edges
WIDTH, HEIGHT, LINE = 420, 210, 4

image = Image.new("L", (WIDTH * FINE, HEIGHT * FINE), 255)
draw = ImageDraw.Draw(image)


def stroke(*points, width=LINE):
    points = [(x * FINE, y * FINE) for x, y in points]
    draw.line(points, fill=0, width=width * FINE, joint="curve")
    for x, y in points:  # round ends
        r = width * FINE / 2
        draw.ellipse((x - r, y - r, x + r, y + r), fill=0)


def head(x, y, r=13):
    draw.ellipse(((x - r) * FINE, (y - r) * FINE, (x + r) * FINE, (y + r) * FINE), outline=0, width=LINE * FINE)


# The line: tape on the floor, a hand wide.
stroke((20, 186), (400, 186), width=2)
for x in range(30, 396, 24):
    stroke((x, 192), (x + 12, 192), width=2)

# One walks on the toes, arms out to the sides, eyes ahead.
head(110, 48)
stroke((110, 61), (110, 118))
stroke((66, 78), (110, 76), (154, 78))
stroke((110, 118), (128, 150), (132, 178), (140, 183))
stroke((110, 118), (96, 150), (82, 178), (90, 184))

# The other stands on one leg, the foot of the other at the knee.
head(300, 40)
stroke((300, 53), (300, 114))
stroke((258, 60), (300, 70), (342, 60))
stroke((300, 114), (298, 184), (312, 184))
stroke((300, 114), (330, 138), (303, 150))

folder = pathlib.Path(__file__).parent
image = image.resize((WIDTH, HEIGHT), Image.BOX)
image.crop((14, 22, 406, 200)).save(folder / "on-a-line.png", optimize=True)
image.crop((234, 22, 376, 200)).save(folder / "on-one-leg.png", optimize=True)
