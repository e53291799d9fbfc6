"""The file itself: whole, its fonts in it, tagged, and each mark in its place in the structure."""

import re

import pikepdf

from command import run


def sound(path):
    code, said, wrong = run("qpdf", "--check", str(path))
    return [] if code == 0 else [f"qpdf: {(said + wrong).strip().splitlines()[-1]}"]


def fonts(path):
    _, said, _ = run("pdffonts", str(path))
    for line in said.splitlines()[2:]:
        embedded, subset, mapped = re.search(r"(yes|no)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+$", line).groups()
        if (embedded, subset, mapped) != ("yes", "yes", "yes"):
            yield f"font not embedded as a mapped subset: {line.split()[0]}"


def metadata(pdf):
    root = pdf.Root
    if not root.get("/MarkInfo", {}).get("/Marked"):
        yield "not marked as tagged"
    if not str(root.get("/Lang", "")):
        yield "no language"
    if not root.get("/ViewerPreferences", {}).get("/DisplayDocTitle"):
        yield "the title is not shown"
    with pdf.open_metadata() as said:
        if not said.get("dc:title"):
            yield "no title"
        ua, a = "{http://www.aiim.org/pdfua/ns/id/}", "{http://www.aiim.org/pdfa/ns/id/}"
        for key, wanted in [(ua + "part", "1"), (a + "part", "2"), (a + "conformance", "A")]:
            if said.get(key) != wanted:
                yield f"{key} is {said.get(key)}, not {wanted}"
    if "/JavaScript" in root.get("/Names", {}) or pdf.is_encrypted or pdf.attachments:
        yield "holds a script, a lock or an attachment"


def unmarked(pdf):
    """Whatever is painted must be content with a place in the structure, or an artifact."""
    painting = {"Tj", "TJ", "'", '"', "f", "F", "f*", "B", "B*", "S", "s", "b", "b*", "sh", "Do"}
    for number, page in enumerate(pdf.pages, 1):
        depth = 0
        for _, operator in pikepdf.parse_content_stream(page):
            name = str(operator)
            depth += {"BDC": 1, "BMC": 1, "EMC": -1}.get(name, 0)
            if name in painting and depth == 0:
                yield f"page {number}: {name} outside the structure"
                break


def children(element):
    kids = element.get("/K", [])
    kids = kids if isinstance(kids, pikepdf.Array) else [kids]
    return [kid for kid in kids if isinstance(kid, pikepdf.Dictionary) and "/S" in kid]


def elements(element):
    yield element
    for kid in children(element):
        yield from elements(kid)


def all_elements(pdf):
    tree = pdf.Root.get("/StructTreeRoot", {})
    for kid in children(tree):
        yield from elements(kid)


def structure(pdf):
    if "/StructTreeRoot" not in pdf.Root:
        yield "no structure tree"
        return
    level = 0
    for element in all_elements(pdf):
        kind = str(element.S)[1:]
        if kind in ("Figure", "Formula") and not str(element.get("/Alt", "")):
            yield f"{kind} without words that stand for it"
        if kind == "Table" and not any(e.S == "/TH" for e in elements(element)):
            yield "table without heads"
        if kind == "Link" and not any("/Obj" in k for k in references(element)):
            yield "link without its annotation"
        if found := re.fullmatch(r"H([1-6])", kind):
            deeper = int(found[1])
            if deeper > level + 1 or (deeper == 1 and level > 0):
                yield f"heading {deeper} after heading {level}"
            level = deeper
    if level == 0:
        yield "no heading"


def references(element):
    kids = element.get("/K", [])
    kids = kids if isinstance(kids, pikepdf.Array) else [kids]
    return [kid for kid in kids if isinstance(kid, pikepdf.Dictionary)]


def links(pdf):
    for number, page in enumerate(pdf.pages, 1):
        if page.get("/Tabs") != "/S" and "/Annots" in page:
            yield f"page {number}: annotations are not in structure order"
        for note in page.get("/Annots", []):
            if note.get("/Subtype") == "/Link" and "/StructParent" not in note:
                yield f"page {number}: a link has no place in the structure"
