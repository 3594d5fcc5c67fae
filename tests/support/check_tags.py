#!/usr/bin/python3
"""Checks that PDFs are tagged as PDF/UA-1 asks, as far as a program can tell.

usage: check_tags.py FILE.pdf...      prints one line a finding, exits 1 when there is any

Each finding begins with the number of the failure condition in the Matterhorn Protocol 1.1 (PDF
Association), or with the ISO 32000-1 or veraPDF rule where the protocol has none. Reads the files
with pikepdf (qpdf), so it shares no code with what wrote them. Debian: python3-pikepdf. What only
a person can judge (reading order, the quality of descriptions) is not checked here.
"""
import re
import struct
import sys
import xml.etree.ElementTree as xml

import pikepdf
from pikepdf import Array, Dictionary, Name

STANDARD_TYPES = set(
    """Document Part Art Sect Div BlockQuote Caption TOC TOCI Index NonStruct Private P H H1 H2 H3 H4
    H5 H6 L LI Lbl LBody Table TR TH TD THead TBody TFoot Span Quote Note Reference BibEntry Code Link
    Annot Ruby Warichu RB RT RP WT WP Figure Formula Form""".split())
LANGUAGE = re.compile(r"^[a-zA-Z]{1,8}(-[a-zA-Z0-9]{1,8})*$")
# All that is read of a page's content: a drawing is thousands of steps of paths, which say nothing of tags.
READ = "BDC BMC EMC q Q BT ET Tf Tj TJ ' \" S s f F f* B B* b b* sh BI ID EI Do"
MARKS = set("Tj TJ S s f F f* B B* b b* sh BI Do".split()) | {"'", "\"", "INLINE IMAGE"}
DRAWINGS = {}  # the bytes of a form XObject, the same in many files -> whether it has nothing but paths
TEXT = {"Tj", "TJ", "'", '"'}
# Which children a node may have, and which parent it must have.
CHILDREN = {
    "Table": {"TR", "THead", "TBody", "TFoot", "Caption"},
    "THead": {"TR"}, "TBody": {"TR"}, "TFoot": {"TR"}, "TR": {"TH", "TD"},
    "L": {"LI", "L", "Caption"}, "LI": {"Lbl", "LBody"},
}
PARENTS = {
    "THead": {"Table"}, "TBody": {"Table"}, "TFoot": {"Table"},
    "TR": {"Table", "THead", "TBody", "TFoot"}, "TH": {"TR"}, "TD": {"TR"},
    "LI": {"L"}, "Lbl": {"LI", "Note"}, "LBody": {"LI"}, "TOCI": {"TOC"},
}


def name_of(value):
    return str(value)[1:] if isinstance(value, Name) else str(value)


class Element:
    """A node of the structure tree, with what hangs below it."""

    def __init__(self, dictionary, parent):
        self.dictionary = dictionary
        self.parent = parent
        self.kind = name_of(dictionary.get("/S", Name("/None")))
        self.children = []
        self.marks = []  # (page object number, mcid)
        self.objects = 0

    def attribute(self, owner, key):
        attributes = self.dictionary.get("/A")
        if attributes is None:
            return None
        for one in attributes if isinstance(attributes, Array) else [attributes]:
            if isinstance(one, Dictionary) and one.get("/O") == Name(owner) and key in one:
                return one[key]
        return None

    def where(self):
        return "%s (object %d)" % (self.kind, self.dictionary.objgen[0])


class Checker:
    def __init__(self, path):
        self.path = path
        self.pdf = pikepdf.open(path)
        self.found = []
        self.elements = []
        self.root = None
        self.by_page = {}  # page object number -> {mcid: Element}

    def report(self, number, text):
        line = "%s: %s %s" % (self.path, number, text)
        if line not in self.found:
            self.found.append(line)

    def check(self):
        self.document()
        self.read_tree()
        self.tree()
        self.parent_tree()
        self.pages()
        self.fonts()
        return self.found

    # --- 1. the document ---------------------------------------------------------------------

    def document(self):
        root = self.pdf.Root
        header = open(self.path, "rb").read(16)
        if not re.match(rb"%PDF-1\.[0-7]", header):
            self.report("6.1-1", "the header is not that of PDF 1.0 to 1.7")
        if not re.match(rb"%PDF-1\.\d\r?\n%[\x80-\xff]{4}", header):
            self.report("ISO32000-7.5.2", "no comment of four bytes above 127 after the header")
        if self.pdf.is_encrypted:
            self.report("26-001", "the file is encrypted")
        self.metadata(root)
        preferences = root.get("/ViewerPreferences", Dictionary())
        if "/DisplayDocTitle" not in preferences:
            self.report("07-001", "ViewerPreferences has no DisplayDocTitle")
        elif preferences.DisplayDocTitle is not True:
            self.report("07-002", "DisplayDocTitle is not true")
        mark_info = root.get("/MarkInfo", Dictionary())
        if mark_info.get("/Marked") is not True:
            self.report("6.2-1", "MarkInfo does not say Marked true")
        if mark_info.get("/Suspects") is True:
            self.report("01-007", "MarkInfo says Suspects true")
        if not LANGUAGE.match(str(root.get("/Lang", ""))):
            self.report("11-001", "the catalog's Lang is no language tag")
        if "/OCProperties" in root:
            self.report("20-001", "there is optional content")
        if "/EmbeddedFiles" in root.get("/Names", Dictionary()):
            self.report("21-001", "there are embedded files")
        if "/XFA" in root.get("/AcroForm", Dictionary()):
            self.report("25-001", "there is an XFA form")
        for key in ("/AA", "/OpenAction"):
            if key in root:
                self.report("29-001", "the catalog has %s" % key)
        identifier = self.pdf.trailer.get("/ID")
        if identifier is None or len(identifier) != 2:
            self.report("ISO32000-14.4", "the trailer has no ID")

    def metadata(self, root):
        stream = root.get("/Metadata")
        if stream is None or stream.get("/Subtype") != Name.XML:
            self.report("06-001", "there is no XMP metadata")
            return
        if "/Filter" in stream:
            self.report("06-001", "the XMP metadata is compressed")
        try:
            tree = xml.fromstring(stream.read_bytes().decode("utf-8"))
        except (xml.ParseError, UnicodeDecodeError) as error:
            self.report("06-001", "the XMP metadata is not XML: %s" % error)
            return
        dc, rdf = "{http://purl.org/dc/elements/1.1/}", "{http://www.w3.org/1999/02/22-rdf-syntax-ns#}"
        part = tree.find(".//{http://www.aiim.org/pdfua/ns/id/}part")
        if part is None or part.text != "1":
            self.report("06-002", "the XMP does not say that this is PDF/UA-1")
        titles = [li.text for li in tree.findall(".//%stitle/%sAlt/%sli" % (dc, rdf, rdf))
                  if li.get("{http://www.w3.org/XML/1998/namespace}lang") == "x-default"]
        if not titles or not titles[0]:
            self.report("06-003", "the XMP metadata has no dc:title")
        elif titles[0] != str(self.pdf.docinfo.get("/Title", "")):
            self.report("ISO19005-6.7.3", "the title in Info is not that of the XMP metadata")

    # --- 3. the structure tree ---------------------------------------------------------------

    def read_tree(self):
        tree = self.pdf.Root.get("/StructTreeRoot")
        if tree is None:
            self.report("7.1-11", "there is no structure tree")
            return
        self.root = tree
        seen = set()
        stack = [(kid, None, tree, None) for kid in reversed(self.kids_of(tree))]
        while stack:
            kid, parent, parent_dictionary, page = stack.pop()
            if isinstance(kid, int):
                self.add_mark(parent, page, kid)
                continue
            kind = kid.get("/Type")
            if kind == Name.MCR:
                self.add_mark(parent, kid.get("/Pg", page), int(kid.MCID))
                continue
            if kind == Name.OBJR:
                parent.objects += 1
                continue
            if kid.objgen in seen:
                self.report("ISO32000-14.7.2", "a node stands in the tree twice")
                continue
            seen.add(kid.objgen)
            element = Element(kid, parent)
            self.elements.append(element)
            if parent is not None:
                parent.children.append(element)
            if "/P" not in kid:
                self.report("7.1-12", "%s has no parent entry" % element.where())
            elif kid.P.objgen != parent_dictionary.objgen:
                self.report("7.1-12", "%s names another parent than it has" % element.where())
            own_page = kid.get("/Pg", page)
            for below in reversed(self.kids_of(kid)):
                stack.append((below, element, kid, own_page))
        if not self.elements:
            self.report("7.1-11", "the structure tree is empty")

    @staticmethod
    def kids_of(dictionary):
        kids = dictionary.get("/K")
        if kids is None:
            return []
        return list(kids) if isinstance(kids, Array) else [kids]

    def add_mark(self, element, page, mcid):
        if page is None or element is None:
            self.report("7.1-3", "a marked-content reference names no page")
            return
        number = page.objgen[0]
        element.marks.append((number, mcid))
        if self.by_page.setdefault(number, {}).setdefault(mcid, element) is not element:
            self.report("7.1-3", "sequence %d of page object %d belongs to two nodes" % (mcid, number))

    def tree(self):
        role_map = (self.root or {}).get("/RoleMap", {})
        for key in role_map.keys():
            if key[1:] in STANDARD_TYPES:
                self.report("02-004", "the standard type %s is mapped to another" % key)
        notes = set()
        for element in self.elements:
            self.one_element(element, role_map, notes)
        self.headings()

    def one_element(self, element, role_map, notes):
        kind, dictionary = element.kind, element.dictionary
        if kind not in STANDARD_TYPES and "/" + kind not in role_map:
            self.report("02-001", "%s is no standard type" % element.where())
        kinds = [child.kind for child in element.children]
        if kind in CHILDREN:
            number = "09-005" if kind in ("L", "LI") else "09-004"
            for child in kinds:
                if child not in CHILDREN[kind]:
                    self.report(number, "%s has a %s in it" % (element.where(), child))
            if element.marks:
                self.report(number, "%s has text of its own" % element.where())
        parent = element.parent.kind if element.parent else "the root"
        if kind in PARENTS and parent not in PARENTS[kind]:
            number = "09-005" if kind in ("LI", "Lbl", "LBody") else "09-006" if kind == "TOCI" else "09-004"
            self.report(number, "%s stands in %s" % (element.where(), parent))
        if kind == "L" and "LI" not in kinds:
            self.report("09-005", "%s has no items" % element.where())
        if kind == "LI" and not kinds:
            self.report("09-005", "%s is empty" % element.where())
        if kind == "Table":
            self.table(element, kinds)
        if kind == "TH" and str(element.attribute("/Table", "/Scope")) not in ("/Row", "/Column", "/Both"):
            self.report("15-003", "%s does not say what it heads" % element.where())
        if kind == "Figure" and not str(dictionary.get("/Alt", "")):
            self.report("13-004", "%s has no description" % element.where())
        if kind == "Figure" and element.marks and element.attribute("/Layout", "/BBox") is None:
            self.report("LaTeX-tagging-1112", "%s has no bounding box" % element.where())
        if kind == "Formula" and not str(dictionary.get("/Alt", "")):
            self.report("17-002", "%s has no description" % element.where())
        if kind == "Form" and element.attribute("/PrintField", "/Role") is None:
            if element.marks or element.children or element.objects != 1:
                self.report("7.18.4-2", "%s is neither a field nor a printed box" % element.where())
        if kind == "Note":
            identifier = bytes(dictionary.get("/ID", pikepdf.String("")))
            if not identifier:
                self.report("19-003", "%s has no ID" % element.where())
            elif identifier in notes:
                self.report("19-004", "%s has another note's ID" % element.where())
            notes.add(identifier)
        if "/Lang" in dictionary and not LANGUAGE.match(str(dictionary.Lang)):
            self.report("11-001", "%s names no language" % element.where())

    def table(self, table, kinds):
        if kinds.count("THead") > 1 or kinds.count("TFoot") > 1 or kinds.count("Caption") > 1:
            self.report("09-004", "%s has two heads, feet or captions" % table.where())
        if ("THead" in kinds or "TFoot" in kinds) and "TBody" not in kinds:
            self.report("09-004", "%s has a head or foot but no body" % table.where())
        if "Caption" in kinds[1:-1]:
            self.report("09-004", "%s has its caption inside" % table.where())
        rows = []
        for child in table.children:
            rows += [child] if child.kind == "TR" else [r for r in child.children if r.kind == "TR"]
        if not rows:
            self.report("09-004", "%s has no rows" % table.where())
            return
        self.grid(table, rows)

    def grid(self, table, rows):
        filled = set()
        width = None
        for y, row in enumerate(rows):
            x = 0
            for cell in row.children:
                while (x, y) in filled:
                    x += 1
                spans = []
                for key in ("/ColSpan", "/RowSpan"):
                    span = cell.attribute("/Table", key)
                    if span is not None and (not isinstance(span, int) or span < 1):
                        self.report("7.2-41", "%s has a %s that is no whole number" % (cell.where(), key))
                        span = None
                    spans.append(1 if span is None else span)
                for dy in range(spans[1]):
                    for dx in range(spans[0]):
                        if (x + dx, y + dy) in filled:
                            self.report("7.2-41", "cells of %s overlap" % table.where())
                        filled.add((x + dx, y + dy))
                x += spans[0]
            here = max((p[0] + 1 for p in filled if p[1] == y), default=0)
            if width is None:
                width = here
            if here != width or any((i, y) not in filled for i in range(width)):
                self.report("7.2-42", "row %d of %s is not as wide as the first" % (y + 1, table.where()))
        if any(p[1] >= len(rows) for p in filled):
            self.report("7.2-43", "a cell of %s reaches below its last row" % table.where())

    def headings(self):
        last = 0
        for element in self.elements:
            if element.kind == "H":
                self.report("14-006", "%s: headings need a level" % element.where())
            match = re.match(r"^H([1-6])$", element.kind)
            if not match:
                continue
            level = int(match.group(1))
            if last == 0 and level != 1:
                self.report("14-002", "the first heading is %s" % element.where())
            elif level > last + 1:
                self.report("14-003", "%s follows a heading of level %d" % (element.where(), last))
            last = level

    # --- 2. the pages ------------------------------------------------------------------------

    def parent_tree(self):
        self.parents = {}
        if self.root is None:
            return
        if "/ParentTree" not in self.root:
            self.report("7.1-3", "the structure tree has no ParentTree")
            return
        stack = [self.root.ParentTree]
        while stack:
            node = stack.pop()
            stack += list(node.get("/Kids", []))
            numbers = node.get("/Nums", [])
            for i in range(0, len(numbers), 2):
                self.parents[int(numbers[i])] = numbers[i + 1]
        following = self.root.get("/ParentTreeNextKey")
        if following is not None and self.parents and int(following) <= max(self.parents):
            self.report("ISO32000-14.7.2", "ParentTreeNextKey is not above the keys in use")

    def pages(self):
        self.used = {}  # font object -> codes shown with it
        self.font_objects = {}
        keys = set()
        known = {page.obj.objgen[0] for page in self.pdf.pages}
        for number in self.by_page:
            if number not in known:
                self.report("7.1-3", "a node's marks are on an object that is no page")
        for index, page in enumerate(self.pdf.pages):
            where = "page %d" % (index + 1)
            if page.obj.get("/Tabs") != Name.S:
                self.report("28-009", "%s does not say Tabs S" % where)
            for annotation in page.obj.get("/Annots", []):
                self.annotation(annotation, page, keys, where)
            if "/AA" in page.obj:
                self.report("29-001", "%s has actions" % where)
            mcids = self.content(page, where)
            key = page.obj.get("/StructParents")
            if key is None:
                if mcids:
                    self.report("7.1-3", "%s has no StructParents" % where)
                continue
            if int(key) in keys:
                self.report("7.1-3", "%s has another page's StructParents" % where)
            keys.add(int(key))
            self.connected(page.obj.objgen[0], self.parents.get(int(key), []), mcids, where)

    def annotation(self, annotation, page, keys, where):
        if annotation.get("/Subtype") != Name.Link:
            self.report("28-002", "%s has an annotation that is no link" % where)
            return
        if not str(annotation.get("/Contents", "")):
            self.report("28-012", "%s: a link does not say where it leads" % where)
        # PDF/A-2, 6.3.2: printed, and nothing else.
        if int(annotation.get("/F", 0)) != 4:
            self.report("PDFA-6.3.2", "%s: a link is not printed with its page" % where)
        box = [float(edge) for edge in annotation.get("/Rect", [0, 0, 0, 0])]
        if not (0 <= box[0] < box[2] <= float(page.obj.MediaBox[2]) and 0 <= box[1] < box[3] <= float(page.obj.MediaBox[3])):
            self.report("ISO32000-12.5.2", "%s: a link lies beside the paper" % where)
        if not re.match(r"^https?://[^\s]+$", str(annotation.get("/A", Dictionary()).get("/URI", ""))):
            self.report("ISO32000-12.6.4.7", "%s: a link has no address" % where)
        key = annotation.get("/StructParent")
        if key is None or int(key) in keys:
            self.report("28-011", "%s: a link has no place of its own in the parent tree" % where)
            return
        keys.add(int(key))
        node = self.parents.get(int(key))
        if node is None or node.get("/S") != Name.Link:
            self.report("28-011", "%s: a link does not stand in a Link" % where)
        elif not any(isinstance(kid, Dictionary) and kid.get("/Type") == Name.OBJR
                     and kid.Obj.objgen == annotation.objgen for kid in self.kids_of(node)):
            self.report("28-011", "%s: a Link does not refer to its annotation" % where)

    def connected(self, number, parents, mcids, where):
        nodes = self.by_page.get(number, {})
        if sorted(mcids) != list(range(len(mcids))):
            self.report("7.1-3", "%s does not number its sequences 0, 1, 2, ..." % where)
        for mcid in mcids:
            node = nodes.get(mcid)
            if node is None:
                self.report("7.1-3", "%s: sequence %d belongs to no node" % (where, mcid))
                continue
            parent = parents[mcid] if mcid < len(parents) else None
            if parent is None or parent.objgen != node.dictionary.objgen:
                self.report("7.1-3", "%s: ParentTree does not lead from sequence %d to its node" % (where, mcid))
        for mcid in nodes:
            if mcid not in mcids:
                self.report("7.1-3", "%s has no sequence %d, which a node names" % (where, mcid))

    def content(self, page, where):
        stack, mcids, fonts, depth = [], [], [None], 0
        resources = page.obj.get("/Resources", Dictionary())
        for operands, operator in pikepdf.parse_content_stream(page, READ):
            operator = str(operator)
            if operator in ("BDC", "BMC"):
                stack.append(self.begin(operands, resources, stack, mcids, where))
            elif operator == "EMC":
                if not stack:
                    self.report("ISO32000-14.6", "%s ends a sequence that did not begin" % where)
                    continue
                stack.pop()
            elif operator == "q":
                fonts.append(fonts[-1])
            elif operator == "Q":
                if len(fonts) > 1:
                    fonts.pop()
                else:
                    self.report("ISO32000-8.4.2", "%s restores what was not saved" % where)
            elif operator == "BT":
                depth = len(stack)
            elif operator == "ET":
                if len(stack) != depth:
                    self.report("ISO32000-14.6", "%s: sequences and text objects overlap" % where)
            elif operator == "Tf":
                fonts[-1] = resources.get("/Font", Dictionary()).get(str(operands[0]))
                if fonts[-1] is None:
                    self.report("31-009", "%s uses a font that is not in Resources" % where)
            if operator == "Do":
                self.picture(page, resources, operands, stack, mcids, where)
            if operator not in MARKS:
                continue
            if not any(kind in ("artifact", "mcid") for kind in stack):
                self.report("01-005", "%s: a mark (%s) is neither tagged nor an artifact" % (where, operator))
            if operator in TEXT and fonts[-1] is not None:
                self.shown(fonts[-1], operands, where)
        if stack:
            self.report("ISO32000-14.6", "%s does not end its last sequence" % where)
        return mcids

    def picture(self, page, resources, operands, stack, mcids, where):
        image = resources.get("/XObject", Dictionary()).get(str(operands[0]))
        if image is None:
            self.report("ISO32000-8.8", "%s draws %s, which is not in Resources" % (where, operands[0]))
            return
        node = self.by_page.get(page.obj.objgen[0], {}).get(mcids[-1]) if "mcid" in stack else None
        if "artifact" not in stack and (node is None or node.kind != "Figure"):
            self.report("13-001", "%s: a picture stands in no Figure" % where)
        if image.get("/Subtype") == Name.Form:
            # Its marks are the page's where it is shown; so it must have no sequences of its own.
            drawing = image.read_raw_bytes()
            if drawing not in DRAWINGS:
                DRAWINGS[drawing] = len(pikepdf.parse_content_stream(image, "BDC BMC EMC Do BT")) == 0
            if not DRAWINGS[drawing]:
                self.report("ISO32000-14.7.4.2", "%s: a drawing is more than paths" % where)
            return
        # PDF/A-2, 6.2.8, and nothing that a camera wrote.
        if image.get("/Interpolate", False) or "/Alternates" in image or "/OPI" in image:
            self.report("PDFA-6.2.8", "%s: a picture is interpolated or has others beside it" % where)
        if "/Metadata" in image or "/DCTDecode" in str(image.get("/Filter", "")):
            self.report("metadata", "%s: a picture brings data of its own" % where)

    def begin(self, operands, resources, stack, mcids, where):
        tag = str(operands[0])
        properties = operands[1] if len(operands) > 1 else Dictionary()
        if isinstance(properties, Name):
            properties = resources.get("/Properties", Dictionary()).get(str(properties), Dictionary())
        if "/Lang" in properties and not LANGUAGE.match(str(properties.Lang)):
            self.report("11-001", "%s: a sequence names no language" % where)
        if tag == "/Artifact":
            if "mcid" in stack:
                self.report("01-003", "%s: an artifact inside tagged content" % where)
            return "artifact"
        if "/MCID" in properties:
            if "artifact" in stack:
                self.report("01-004", "%s: tagged content inside an artifact" % where)
            if "mcid" in stack:
                self.report("ISO32000-14.7.4", "%s: a tagged sequence inside another" % where)
            mcids.append(int(properties.MCID))
            return "mcid"
        return "span"

    # --- 5. fonts ----------------------------------------------------------------------------

    def shown(self, font, operands, where):
        key = font.objgen
        self.font_objects[key] = font
        codes = self.used.setdefault(key, set())
        strings = operands[-1] if isinstance(operands[-1], Array) else [operands[-1]]
        for piece in strings:
            if not isinstance(piece, pikepdf.String):
                continue
            text = bytes(piece)
            if len(text) % 2:
                self.report("ISO32000-9.7.6", "%s shows half a code" % where)
            codes.update(struct.unpack(">%dH" % (len(text) // 2), text[:len(text) // 2 * 2]))

    def fonts(self):
        for key, codes in sorted(self.used.items()):
            self.font(self.font_objects[key], codes)

    def font(self, font, codes):
        name = str(font.get("/BaseFont", "?"))
        if font.get("/Subtype") != Name.Type0:
            self.report("31-012", "%s is a simple font" % name)
            return
        if font.get("/Encoding") != Name("/Identity-H"):
            self.report("31-006", "%s is not encoded Identity-H" % name)
        descendant = font.DescendantFonts[0]
        descriptor = descendant.get("/FontDescriptor", Dictionary())
        if not re.match(r"^/[A-Z]{6}\+", name):
            self.report("ISO32000-9.6.4", "%s does not say that it is a subset" % name)
        if "/FontFile2" not in descriptor and "/FontFile3" not in descriptor:
            self.report("31-009", "%s is not embedded" % name)
        if descendant.get("/Subtype") == Name.CIDFontType2 and "/CIDToGIDMap" not in descendant:
            self.report("31-004", "%s has no CIDToGIDMap" % name)
        if "/CIDSet" in descriptor:
            self.report("31-014", "%s has a CIDSet" % name)
        if 0 in codes:
            self.report("31-030", "%s shows .notdef" % name)
        self.unicode(font, codes, name)
        if "/FontFile2" in descriptor:
            self.program(descendant, descriptor.FontFile2.read_bytes(), codes, name)

    def unicode(self, font, codes, name):
        if "/ToUnicode" not in font:
            self.report("31-027", "%s has no ToUnicode" % name)
            return
        text = font.ToUnicode.read_bytes().decode("latin-1")
        meaning = {}
        for block in re.findall(r"beginbfchar(.*?)endbfchar", text, re.S):
            for code, target in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>", block):
                meaning[int(code, 16)] = target.upper()
        for block in re.findall(r"beginbfrange(.*?)endbfrange", text, re.S):
            for low, high, target in re.findall(r"<(\w+)>\s*<(\w+)>\s*<(\w+)>", block):
                for code in range(int(low, 16), int(high, 16) + 1):
                    meaning[code] = "%0*X" % (len(target), int(target, 16) + code - int(low, 16))
        for code in sorted(codes):
            if code not in meaning:
                self.report("31-027", "%s: code %04X has no Unicode" % (name, code))
        for code, target in sorted(meaning.items()):
            if target in ("0000", "FEFF", "FFFE"):
                self.report("31-028", "%s: code %04X reads as U+%s" % (name, code, target))

    def program(self, descendant, data, codes, name):
        tables = {}
        for i in range(struct.unpack(">H", data[4:6])[0]):
            tag, _, offset, length = struct.unpack(">4sLLL", data[12 + 16 * i:28 + 16 * i])
            tables[tag] = data[offset:offset + length]
        glyphs = struct.unpack(">H", tables[b"maxp"][4:6])[0]
        em = struct.unpack(">H", tables[b"head"][18:20])[0]
        metrics = struct.unpack(">H", tables[b"hhea"][34:36])[0]
        widths, at, row = {}, 0, list(descendant.get("/W", []))
        while at < len(row):
            if isinstance(row[at + 1], Array):
                for n, width in enumerate(row[at + 1]):
                    widths[int(row[at]) + n] = float(width)
                at += 2
            else:
                for code in range(int(row[at]), int(row[at + 1]) + 1):
                    widths[code] = float(row[at + 2])
                at += 3
        for code in sorted(codes):
            if code >= glyphs:
                self.report("31-011", "%s: code %04X is no glyph of the program" % (name, code))
                continue
            entry = 4 * min(code, metrics - 1)
            advance = struct.unpack(">H", tables[b"hmtx"][entry:entry + 2])[0] * 1000 / em
            if abs(widths.get(code, float(descendant.get("/DW", 1000))) - advance) > 1:
                self.report("31-016", "%s: code %04X is %g wide in the program" % (name, code, advance))


def main():
    if len(sys.argv) < 2:
        print(__doc__.strip())
        return 2
    found = []
    for path in sys.argv[1:]:
        try:
            found += Checker(path).check()
        except (pikepdf.PdfError, OSError) as error:
            found.append("%s: unreadable %s" % (path, error))
    for line in found:
        print(line)
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
