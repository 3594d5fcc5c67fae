#!/usr/bin/env python3
"""CommonMark's published examples through the Markdown room: nothing crashes, and no text is lost.

usage: commonmark.py TREE_TEXT WORK_FOLDER

The examples are those of spec.txt in npm's package commonmark-spec 0.31.2 (CommonMark 0.31.2), fetched once and checked against
the registry's own sum. Of each, every word that the published HTML shows (texts of images and code included, tags not) must stand
in the texts of our tree. HTML that the author wrote is kept verbatim by us, so its tags are taken off on both sides.
"""
import base64
import hashlib
import html
import html.parser
import io
import pathlib
import re
import subprocess
import sys
import tarfile
import urllib.request

ADDRESS = "https://registry.npmjs.org/commonmark-spec/-/commonmark-spec-0.31.2.tgz"
SUM = "vXKxmclzJPymhOJYD26G0oBjVmIcKC8p5m2DvHIq1A1btr1m0r0dT/PzRA5/nwxUbCAPedMNPEoiQE+zvuOcOw=="
program, work = sys.argv[1], pathlib.Path(sys.argv[2])
work.mkdir(parents=True, exist_ok=True)
package = work / "commonmark-spec-0.31.2.tgz"
if not package.exists():
    try:
        package.write_bytes(urllib.request.urlopen(ADDRESS, timeout=60).read())
    except OSError as error:
        print(f"skipped: the npm registry cannot be reached ({error})")
        sys.exit(77)  # ctest says that it was skipped
data = package.read_bytes()
if base64.b64encode(hashlib.sha512(data).digest()).decode() != SUM:
    package.unlink()
    sys.exit("the package is not the one that was published")
spec = tarfile.open(fileobj=io.BytesIO(data)).extractfile("package/spec.txt").read().decode()
EXAMPLE = re.compile(r"^`{32} example\n(.*?)^\.\n(.*?)^`{32}$", re.M | re.S)
# cmark-gfm follows CommonMark 0.29, which read `&#87654321;` as one (replaced) character.
CHANGED_SINCE = {28}
examples = [(a.replace("→", "\t"), b.replace("→", "\t")) for a, b in EXAMPLE.findall(spec)]


class Words(html.parser.HTMLParser):
    """The words a reader of the page sees."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.text = ""
        self.feed(text)
        self.close()

    def handle_data(self, data):
        self.text += data

    def handle_starttag(self, tag, attributes):
        self.text += "" if tag in ("em", "strong", "a", "code") else " "
        if tag == "img":
            self.text += dict(attributes).get("alt") or ""

    def handle_endtag(self, tag):
        self.text += "" if tag in ("em", "strong", "a", "code") else " "


def words(text):
    return re.findall(r"[^\W_]+", text)


# Three hyphens at the very beginning are front matter to us, so a word stands before them.
inputs = [("x\n\n" if a.lstrip().startswith("---") else "") + a for a, _ in examples]
ran = subprocess.run([program], input=b"\0".join(a.encode() for a in inputs) + b"\0", capture_output=True, timeout=120)
texts = ran.stdout.decode("utf-8", "replace").split("\0")[:-1]
failures = [] if ran.returncode == 0 else [f"the program ended with {ran.returncode}: {ran.stderr.decode()}"]
if len(examples) < 600 or len(texts) != len(examples):
    failures.append(f"{len(examples)} examples, {len(texts)} texts")
for number, ((markdown, shown), kept) in enumerate(zip(examples, texts), 1):
    ours = words(kept) + words(Words(kept).text)
    pool = "".join(ours)
    lost = [word for word in words(Words(shown).text) if word not in ours and word not in pool]
    if lost and number not in CHANGED_SINCE:
        failures.append(f"example {number} loses {lost}\n{markdown}--- shown\n{shown}--- kept\n{kept}")
print("\n".join(failures) or f"{len(examples)} examples, no word lost")
sys.exit(1 if failures else 0)
