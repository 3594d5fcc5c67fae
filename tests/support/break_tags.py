#!/usr/bin/python3
"""Makes a good tagged PDF wrong, in each way alone, to show that check_tags.py sees it.

usage: break_tags.py GOOD.pdf FOLDER      writes FOLDER/bad-NAME.pdf for each way; prints NAME and the condition it breaks
"""
import sys

import pikepdf
from pikepdf import Array, Dictionary, Name, Operator

WAYS = {}


def way(name, number):
    def keep(function):
        WAYS[name] = (number, function)
        return function
    return keep


def nodes(pdf, kind):
    found, stack = [], [pdf.Root.StructTreeRoot.K]
    while stack:
        node = stack.pop()
        if isinstance(node, Array):
            stack += list(reversed(list(node)))
        elif isinstance(node, Dictionary) and "/S" in node:
            if node.S == Name("/" + kind):
                found.append(node)
            if "/K" in node:
                stack.append(node.K)
    return found


def edit_content(pdf, change):
    page = pdf.pages[0]
    steps = [(list(o), str(op)) for o, op in pikepdf.parse_content_stream(page)]
    page.Contents = pdf.make_stream(pikepdf.unparse_content_stream(
        [(operands, Operator(op)) for operands, op in change(steps)]))


def font(pdf):
    return sorted(pdf.pages[0].Resources.Font.items())[0][1]


def edit_unicode(pdf, old, new):
    stream = font(pdf).ToUnicode
    stream.write(stream.read_bytes().replace(old, new, 1))


def simple(name, number, code):
    WAYS[name] = (number, lambda pdf: exec(code, {"pdf": pdf, "nodes": nodes, "font": font,
                                                  "Name": Name, "Array": Array,
                                                  "Dictionary": Dictionary, "pikepdf": pikepdf}))


simple("no-metadata", "06-001", "del pdf.Root.Metadata")
simple("no-identifier", "06-002",
       "pdf.Root.Metadata.write(pdf.Root.Metadata.read_bytes().replace(b'<pdfuaid:part', b'<pdfuaid:rev').replace(b'pdfuaid:part>', b'pdfuaid:rev>'))")
simple("another-part", "06-002",
       "pdf.Root.Metadata.write(pdf.Root.Metadata.read_bytes().replace(b'>1</pdfuaid:part>', b'>2</pdfuaid:part>'))")
simple("no-preference", "07-001", "del pdf.Root.ViewerPreferences")
simple("preference-false", "07-002", "pdf.Root.ViewerPreferences.DisplayDocTitle = False")
simple("not-marked", "6.2-1", "del pdf.Root.MarkInfo")
simple("suspects", "01-007", "pdf.Root.MarkInfo.Suspects = True")
simple("no-language", "11-001", "pdf.Root.Lang = pikepdf.String('')")
simple("no-tabs", "28-009", "del pdf.pages[0].Tabs")
simple("no-parent-key", "7.1-3", "del pdf.pages[0].StructParents")
simple("no-parent", "7.1-12", "del nodes(pdf, 'P')[0]['/P']")
simple("mark-dropped", "7.1-3", "del nodes(pdf, 'H1')[0]['/K']")
simple("parent-tree-hole", "7.1-3", "pdf.Root.StructTreeRoot.ParentTree.Nums[1][0] = nodes(pdf, 'P')[0]")
simple("odd-type", "02-001", "nodes(pdf, 'P')[0].S = Name('/Blob')")
simple("mapped-type", "02-004", "pdf.Root.StructTreeRoot.RoleMap = Dictionary(P=Name.Span)")
simple("no-scope", "15-003", "del nodes(pdf, 'TH')[0]['/A']")
simple("cell-lost", "7.2-42", "row = nodes(pdf, 'TR')[2]; row.K = Array([])")
simple("span-too-wide", "7.2-42", "nodes(pdf, 'TD')[2].A.ColSpan = 3")
simple("span-a-name", "7.2-41", "c = nodes(pdf, 'TD')[0]; c.A = Dictionary(O=Name.Table, ColSpan=Name.One)")
simple("text-in-table", "09-004", "nodes(pdf, 'THead')[0].S = Name.Caption; nodes(pdf, 'Table')[0].K.append(nodes(pdf, 'Table')[0].K[0]); del nodes(pdf, 'Table')[0].K[0]")
simple("label-as-text", "09-005", "nodes(pdf, 'Lbl')[0].S = Name.Span")
simple("first-heading-2", "14-002", "nodes(pdf, 'H1')[0].S = Name.P")
simple("heading-jump", "14-003", "nodes(pdf, 'H2')[0].S = Name.H3")
simple("no-description", "13-004", "del nodes(pdf, 'Figure')[0]['/Alt']")
simple("picture-in-paragraph", "13-001", "nodes(pdf, 'Figure')[1].S = Name.P")
simple("picture-smoothed", "PDFA-6.2.8", "pdf.pages[0].Resources.XObject.I0.Interpolate = True")
simple("picture-with-metadata", "metadata",
       "pdf.pages[0].Resources.XObject.I0.Metadata = pdf.make_stream(b'GPS')")
simple("picture-missing", "ISO32000-8.8", "del pdf.pages[0].Resources.XObject['/I0']")
simple("plain-form", "7.18.4-2", "del nodes(pdf, 'Form')[0]['/A']")
simple("note-without-id", "19-003", "del nodes(pdf, 'Note')[0]['/ID']")
simple("no-unicode", "31-027", "del font(pdf)['/ToUnicode']")
simple("no-map", "31-004", "del font(pdf).DescendantFonts[0]['/CIDToGIDMap']")
simple("not-embedded", "31-009", "del font(pdf).DescendantFonts[0].FontDescriptor['/FontFile2']")
simple("widths-off", "31-016", "font(pdf).DescendantFonts[0].W[1][3] = 990")


@way("code-without-unicode", "31-027")
def code_without_unicode(pdf):
    edit_unicode(pdf, b"<0001> <", b"<7001> <")


@way("unicode-zero", "31-028")
def unicode_zero(pdf):
    text = font(pdf).ToUnicode.read_bytes()
    at = text.index(b"<0001> <") + 8
    edit_unicode(pdf, text[at - 8:at + 4], b"<0001> <0000")


@way("untagged-mark", "01-005")
def untagged_mark(pdf):
    edit_content(pdf, lambda steps: steps + [([0, 0, 5, 5], "re"), ([], "f")])


@way("artifact-inside", "01-003")
def artifact_inside(pdf):
    def change(steps):
        out = []
        for operands, operator in steps:
            out.append((operands, operator))
            if operator == "BDC" and "/MCID" in operands[1] and len(out) and not change.done:
                out += [([Name.Artifact], "BMC"), ([], "EMC")]
                change.done = True
        return out
    change.done = False
    edit_content(pdf, change)


@way("tagged-inside-artifact", "01-004")
def tagged_inside_artifact(pdf):
    def change(steps):
        first = next(i for i, (o, op) in enumerate(steps) if op == "BDC" and "/MCID" in o[1])
        last = next(i for i in range(first, len(steps)) if steps[i][1] == "EMC")
        return (steps[:first] + [([Name.Artifact], "BMC")] + steps[first:last + 1]
                + [([], "EMC")] + steps[last + 1:])
    edit_content(pdf, change)


simple("drawing-untagged", "13-001", "nodes(pdf, 'Figure')[2].S = Name.P")
simple("drawing-of-sequences", "ISO32000-14.7.4.2", "a = [x for _, x in pdf.pages[0].Resources.XObject.items() "
       "if str(x.Subtype) == '/Form'][0]; a.write(b'/P <</MCID 0>> BDC ' + a.read_bytes() + b' EMC')")
simple("link-unnamed", "28-012", "del pdf.pages[0].Annots[0].Contents")
simple("link-in-paragraph", "28-011", "nodes(pdf, 'Link')[0].S = Name.P")
simple("link-forgotten", "28-011", "k = nodes(pdf, 'Link')[0].K; del k[len(k) - 1]")
simple("link-without-place", "28-011", "del pdf.pages[0].Annots[0].StructParent")
simple("link-not-printed", "PDFA-6.3.2", "pdf.pages[0].Annots[0].F = 2")
simple("link-elsewhere", "ISO32000-12.5.2", "pdf.pages[0].Annots[0].Rect = Array([900, 1, 950, 2])")
simple("link-to-nowhere", "ISO32000-12.6.4.7", "del pdf.pages[0].Annots[0].A")
simple("other-annotation", "28-002", "pdf.pages[0].Annots[0].Subtype = Name.Text")


@way("notdef-shown", "31-030")
def notdef_shown(pdf):
    def change(steps):
        at = next(i for i, (o, op) in enumerate(steps) if op == "TJ")
        steps[at] = ([Array([pikepdf.String("\0\0")] + list(steps[at][0][0]))], "TJ")
        return steps
    for _, one in pdf.pages[0].Resources.Font.items():  # so that only the glyph itself is wrong
        text = one.ToUnicode.read_bytes()
        one.ToUnicode.write(text.replace(b"endcmap", b"1 beginbfchar\n<0000> <003F>\nendbfchar\nendcmap"))
        width = pikepdf.Object.parse(b"[0 [0]]")
        program = one.DescendantFonts[0].FontDescriptor.FontFile2.read_bytes()
        width[1][0] = notdef_width(program)
        one.DescendantFonts[0].W = Array(list(width) + list(one.DescendantFonts[0].W))
    edit_content(pdf, change)


def notdef_width(program):
    import struct
    tables = {}
    for i in range(struct.unpack(">H", program[4:6])[0]):
        tag, _, offset, length = struct.unpack(">4sLLL", program[12 + 16 * i:28 + 16 * i])
        tables[tag] = program[offset:offset + length]
    return round(struct.unpack(">H", tables[b"hmtx"][:2])[0] * 1000
                 / struct.unpack(">H", tables[b"head"][18:20])[0])


def main():
    good, folder = sys.argv[1:]
    for name, (number, break_it) in sorted(WAYS.items()):
        pdf = pikepdf.open(good)
        break_it(pdf)
        pdf.save("%s/bad-%s.pdf" % (folder, name), fix_metadata_version=False)
        print(name, number)


main()
