#!/usr/bin/python3
"""Makes the pictures that tests/picture decodes, each with the pixels that must come out.

usage: make_pictures.py FOLDER      writes NAME.png or NAME.jpg beside NAME.pnm (P5 or P6), and below
                                    hostile/ what was made to do harm

The PNGs are written by an encoder of our own from ISO/IEC 15948, so that every colour type, depth
and interlacing is there and what must come out is known from what went in, without any decoder.
The JPEGs are written by Pillow (Debian: python3-pil), and what must come out is what Pillow reads.
"""
import io
import pathlib
import random
import struct
import sys
import zlib

from PIL import Image, ImageOps

GREY, RGB, PALETTE, GREY_ALPHA, RGBA = 0, 2, 3, 4, 6
CHANNELS = {GREY: 1, RGB: 3, PALETTE: 1, GREY_ALPHA: 2, RGBA: 4}
DEPTHS = {GREY: (1, 2, 4, 8, 16), RGB: (8, 16), PALETTE: (1, 2, 4, 8), GREY_ALPHA: (8, 16), RGBA: (8, 16)}
# ISO/IEC 15948, 8.2: first column and row of each pass, and the steps between them.
ADAM7 = ((0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2))


def chunk(kind, data):
    return struct.pack(">L", len(data)) + kind + data + struct.pack(">L", zlib.crc32(kind + data))


def packed_row(samples, depth, previous, filter_kind, step):
    if depth == 16:
        raw = b"".join(struct.pack(">H", s) for s in samples)
    else:
        bits = "".join(format(s, "0%db" % depth) for s in samples)
        bits += "0" * (-len(bits) % 8)
        raw = bytes(int(bits[i:i + 8], 2) for i in range(0, len(bits), 8))
    out = bytearray([filter_kind])
    for i, value in enumerate(raw):
        a = raw[i - step] if i >= step else 0
        b = previous[i] if previous else 0
        c = previous[i - step] if previous and i >= step else 0
        p = a + b - c
        nearest = min((abs(p - a), 0, a), (abs(p - b), 1, b), (abs(p - c), 2, c))[2]
        out.append((value - (0, a, b, (a + b) // 2, nearest)[filter_kind]) % 256)
    return bytes(out), raw


def png(rows, kind, depth, interlaced=False, extra=b"", palette=None, transparent=None):
    """rows: a list of rows, each a list of pixels, each a tuple of samples."""
    channels = CHANNELS[kind]
    step = max(1, channels * depth // 8)
    width, height = len(rows[0]), len(rows)
    data = b""
    for x0, y0, dx, dy in ADAM7 if interlaced else ((0, 0, 1, 1),):
        previous = None
        for y in range(y0, height, dy):
            samples = [s for x in range(x0, width, dx) for s in rows[y][x]]
            if not samples:
                continue
            row, previous = packed_row(samples, depth, previous, y % 5, step)
            data += row
    out = b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">LLBBBBB", width, height, depth, kind, 0, 0, interlaced))
    out += extra
    if palette:
        out += chunk(b"PLTE", bytes(v for colour in palette for v in colour))
    if transparent is not None:
        out += chunk(b"tRNS", transparent)
    data = zlib.compress(data)
    for at in range(0, len(data), 1000):  # several IDAT chunks, as large files have
        out += chunk(b"IDAT", data[at:at + 1000])
    return out + chunk(b"IEND", b"")


def eight_bits(value, depth):
    most = (1 << depth) - 1
    return (value * 255 * 2 + most) // (2 * most)


def on_white(value, alpha):
    return (value * alpha + 255 * (255 - alpha) + 127) // 255


def pnm(pixels):
    """pixels: a list of rows of (grey,) or (red, green, blue). Grey where no pixel has a colour."""
    flat = [p for row in pixels for p in row]
    if len(flat[0]) == 3 and all(p[0] == p[1] == p[2] for p in flat):
        flat = [p[:1] for p in flat]
    kind = b"P5" if len(flat[0]) == 1 else b"P6"
    return b"%s\n%d %d\n255\n" % (kind, len(pixels[0]), len(pixels)) + bytes(v for p in flat for v in p)


def of_image(image):
    width, height = image.size
    values = list(image.getdata())
    return [[v if isinstance(v, tuple) else (v,) for v in values[y * width:(y + 1) * width]] for y in range(height)]


def all_pngs():
    rng = random.Random(20)
    for kind, depths in DEPTHS.items():
        for depth in depths:
            for interlaced in (False, True):
                for width, height in ((37, 23), (1, 1), (3, 17)):
                    most = (1 << depth) - 1
                    palette = None
                    if kind == PALETTE:
                        palette = [tuple(rng.randrange(256) for _ in range(3)) for _ in range(most + 1)]
                    rows = [[tuple(rng.randint(0, most) for _ in range(CHANNELS[kind])) for _ in range(width)]
                            for _ in range(height)]
                    for transparent in (False, True):
                        if transparent and kind in (GREY_ALPHA, RGBA):
                            continue
                        trns, alphas = None, None
                        if transparent and kind == PALETTE:  # alphas for the first colours only
                            alphas = [rng.randrange(256) for _ in range((most + 1) // 2)]
                            trns = bytes(alphas)
                        elif transparent:
                            clear = rows[height // 2][width // 2]
                            trns = b"".join(struct.pack(">H", s) for s in clear)
                        out = []
                        for row in rows:
                            line = []
                            for pixel in row:
                                alpha = 255
                                if kind == PALETTE:
                                    if alphas is not None and pixel[0] < len(alphas):
                                        alpha = alphas[pixel[0]]
                                    colour = palette[pixel[0]]
                                else:
                                    colour = tuple(eight_bits(s, depth) for s in pixel)
                                    if kind in (GREY_ALPHA, RGBA):
                                        colour, alpha = colour[:-1], colour[-1]
                                    elif transparent and pixel == clear:
                                        alpha = 0
                                line.append(tuple(on_white(v, alpha) for v in colour))
                            out.append(line)
                        name = "png-%d-%d%s%s-%dx%d" % (kind, depth, "-interlaced" if interlaced else "",
                                                        "-clear" if transparent else "", width, height)
                        yield name, png(rows, kind, depth, interlaced, b"", palette, trns), pnm(out)


def scene(mode, width=61, height=45):
    """Slopes and a few edges, as photos have; different at each corner, to see which way up it is."""
    image = Image.new("RGB", (width, height))
    for y in range(height):
        for x in range(width):
            colour = (x * 255 // width, y * 255 // height, 128)
            if x < width // 4 and y < height // 4:
                colour = (250, 240, 20)
            if x > width // 2 and y > height // 2:
                colour = (colour[0], 60, 60 + x)
            image.putpixel((x, y), colour)
    return image.convert(mode)


def jpeg(image, **options):
    out = io.BytesIO()
    image.save(out, "JPEG", quality=options.pop("quality", 92), **options)
    return out.getvalue()


def exif_with(orientation, big=False):
    """A TIFF header, one directory with two entries, and a place that must never be printed."""
    order = ">" if big else "<"
    entries = struct.pack(order + "HHL4s", 0x010F, 2, 4, b"Cam\0")
    entries += struct.pack(order + "HHLHH", 0x0112, 3, 1, orientation, 0)
    return (b"Exif\0\0" + (b"MM\0*" if big else b"II*\0") + struct.pack(order + "LH", 8, 2) + entries
            + struct.pack(order + "L", 0) + b"GPS 51.5N SECRET-PLACE")


def all_jpegs():
    def case(name, data):
        image = ImageOps.exif_transpose(Image.open(io.BytesIO(data)))
        return name, data, pnm(of_image(image if image.mode == "L" else image.convert("RGB")))

    yield case("jpeg-grey", jpeg(scene("L")))
    yield case("jpeg-colour", jpeg(scene("RGB"), subsampling=0))
    yield case("jpeg-colour-420", jpeg(scene("RGB"), subsampling=2))
    yield case("jpeg-progressive", jpeg(scene("RGB"), progressive=True))
    yield case("jpeg-progressive-grey", jpeg(scene("L"), progressive=True))
    yield case("jpeg-restarts", jpeg(scene("RGB"), restart_marker_blocks=2))
    yield case("jpeg-one-pixel", jpeg(scene("RGB", 1, 1)))
    inks = jpeg(scene("CMYK"))
    yield case("jpeg-cmyk", inks)
    # Without Adobe's marker the same numbers are how much ink there is, not how little.
    adobe = inks.index(b"\xff\xee")
    length = struct.unpack(">H", inks[adobe + 2:adobe + 4])[0]
    other = [[tuple((v * p[3] + 127) // 255 for v in p[:3]) for p in row]
             for row in of_image(Image.open(io.BytesIO(inks)))]
    yield "jpeg-cmyk-plain", inks[:adobe] + inks[adobe + 2 + length:], pnm(other)
    for orientation in range(1, 9):
        yield case("jpeg-turned-%d" % orientation,
                   jpeg(scene("RGB"), exif=exif_with(orientation, big=orientation % 2 == 0)))
    yield case("jpeg-much-trailing", jpeg(scene("RGB")) + b"\0" * 5000)


def without_checks(width, height, data, kind=RGB, depth=8, extra=b""):
    """A PNG whose head says what it likes."""
    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">LLBBBBB", width, height, depth, kind, 0, 0, 0))
            + extra + chunk(b"IDAT", data) + chunk(b"IEND", b""))


def zeros(count):
    packer = zlib.compressobj(9)
    block = bytes(1 << 20)
    out = b"".join(packer.compress(block) for _ in range(count >> 20))
    return out + packer.compress(bytes(count & 0xFFFFF)) + packer.flush()


def segments(data):
    """The segments of a JPEG before its first scan, and the rest."""
    at, out = 2, []
    while data[at + 1] != 0xDA:
        length = struct.unpack(">H", data[at + 2:at + 4])[0]
        out.append(data[at:at + 2 + length])
        at += 2 + length
    return out, data[at:]


def with_size(data, width, height):
    at = max(data.find(b"\xff\xc0"), data.find(b"\xff\xc2"))
    return data[:at + 5] + struct.pack(">HH", height, width) + data[at + 9:]


def scans(count, width, height):
    """A grey progressive JPEG in so many scans, at most 883, as T.81 allows: after the first, each says for one
    coefficient's one bit that it is zero in every block. A scan takes some 40 bytes, and the decoder visits every
    block."""
    blocks = (width // 8) * (height // 8)

    def segment(marker, data):
        return bytes((0xFF, marker)) + struct.pack(">H", len(data) + 2) + data

    def scan(first, last, high, low, bits):
        bits += "1" * (-len(bits) % 8)
        data = bytes(int(bits[i:i + 8], 2) for i in range(0, len(bits), 8)).replace(b"\xff", b"\xff\0")
        return segment(0xDA, bytes((1, 1, 0, first, last, high * 16 + low))) + data

    def lengths(*counts):
        return bytes(counts) + bytes(16 - len(counts))

    out = b"\xff\xd8" + segment(0xDB, bytes(1) + bytes([1]) * 64)
    out += segment(0xC2, struct.pack(">BHHBBBB", 8, height, width, 1, 1, 0x11, 0))
    out += segment(0xC4, b"\x00" + lengths(1) + b"\x00")          # 0: no difference
    out += segment(0xC4, b"\x10" + lengths(1, 1) + b"\x00\xe0")    # 0: end of block; 10: of 2^14 and more blocks
    nothing = "10" + "1" * 14
    runs = nothing * (blocks // 32767) + "0" * (blocks % 32767 if blocks < 32767 else 0)
    rest = blocks % 32767 if blocks >= 32767 else 0
    runs += "10" + format(rest - 16384, "014b") if rest >= 16384 else "0" * rest
    out += scan(0, 0, 0, 0, "0" * blocks)
    for n in range(count - 1):
        bit = 13 - n // 63
        out += scan(1 + n % 63, 1 + n % 63, 0 if bit == 13 else bit + 1, bit, runs)
    return out + b"\xff\xd9"


def again(count):
    """A progressive JPEG that repeats its last scan, which T.81 forbids."""
    head, body = segments(jpeg(scene("L"), progressive=True))
    end, last = body.rindex(b"\xff\xd9"), body.rindex(b"\xff\xda")
    return b"\xff\xd8" + b"".join(head) + body[:end] + body[last:end] * count + b"\xff\xd9"


def hostile():
    small = zlib.compress(bytes((10 * 3 + 1) * 10))
    good = without_checks(10, 10, small)
    yield "png-more-data-than-pixels", without_checks(10, 10, zeros(64 << 20))
    yield "png-fewer-data-than-pixels", without_checks(1000, 1000, small)
    yield "png-as-large-as-may-be", without_checks(6000, 4000, zeros((6000 * 3 + 1) * 4000))
    yield "png-wide", without_checks(10001, 1, zeros(10001 * 3 + 1))
    yield "png-many-pixels", without_checks(6000, 4001, small)
    yield "png-2-to-the-31", without_checks(0x7FFFFFFF, 0x7FFFFFFF, small)
    yield "png-no-width", without_checks(0, 10, small)
    yield "png-kind-7", without_checks(10, 10, small, kind=7)
    yield "png-depth-3", without_checks(10, 10, small, depth=3)
    yield "png-no-palette", without_checks(10, 10, small, kind=PALETTE)
    text = b"Comment\0\0" + zeros(32 << 20)
    yield "png-text-that-swells", without_checks(10, 10, small, extra=chunk(b"zTXt", text) * 20)
    yield "png-profile-that-swells", without_checks(10, 10, small, extra=chunk(b"iCCP", b"p\0\0" + zeros(32 << 20)))
    yield "png-100000-chunks", without_checks(10, 10, small, extra=chunk(b"teSt", b"") * 100000)
    yield "png-bad-sum-of-head", good.replace(good[29:33], b"\0\0\0\0", 1)
    at = good.index(b"IDAT") + 10
    yield "png-bad-sum-of-data", good[:at] + bytes([good[at] ^ 1]) + good[at + 1:]
    yield "png-chunk-of-2-gb", good[:33] + b"\x7f\xff\xff\xff" + good[37:]
    yield "png-head-twice", good[:33] + good[8:33] + good[33:]
    yield "png-head-alone", good[:33]
    yield "png-signature-alone", good[:8]
    index = zlib.compress(bytes([0] + [200] * 10) * 10)
    yield "png-colours-beyond-the-palette", (without_checks(
        10, 10, index, kind=PALETTE, extra=chunk(b"PLTE", b"abc") + chunk(b"tRNS", b"x")))
    photo = jpeg(scene("RGB"))
    yield "jpeg-883-scans", scans(883, 64, 48)
    yield "jpeg-883-large-scans", scans(883, 4000, 4000)
    yield "jpeg-90-scans", scans(90, 64, 48)
    yield "jpeg-scans-again", again(30)
    yield "jpeg-wide", with_size(photo, 10001, 8)
    yield "jpeg-65535", with_size(photo, 65535, 65535)
    yield "jpeg-larger-than-it-is", with_size(photo, 4000, 4000)
    yield "jpeg-no-height", with_size(photo, 61, 0)
    head, body = segments(photo)
    yield "jpeg-no-tables", b"\xff\xd8" + b"".join(s for s in head if s[1] != 0xDB) + body
    yield "jpeg-no-codes", b"\xff\xd8" + b"".join(s for s in head if s[1] != 0xC4) + body
    yield "jpeg-12-bits", photo.replace(b"\xff\xc0\0\x11\x08", b"\xff\xc1\0\x11\x0c")
    yield "jpeg-lossless", photo.replace(b"\xff\xc0\0\x11", b"\xff\xc3\0\x11")
    yield "jpeg-start-alone", photo[:3]
    yield "jpeg-100000-comments", photo[:2] + b"\xff\xfe\0\2" * 100000 + photo[2:]
    loop = exif_with(6).replace(struct.pack("<LH", 8, 2), struct.pack("<LH", 8, 0xFFFF))
    yield "jpeg-exif-of-65535-entries", jpeg(scene("RGB"), exif=loop)


def main():
    folder = pathlib.Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    count = 0
    for name, data, pixels in all_pngs():
        (folder / (name + ".png")).write_bytes(data)
        (folder / (name + ".pnm")).write_bytes(pixels)
        count += 1
    for name, data, pixels in all_jpegs():
        (folder / (name + ".jpg")).write_bytes(data)
        (folder / (name + ".pnm")).write_bytes(pixels)
        count += 1
    (folder / "hostile").mkdir(exist_ok=True)
    for name, data in hostile():
        (folder / "hostile" / name).write_bytes(data)
    print(count)


if __name__ == "__main__":
    main()
