"""Looks at PDF pages with tools that had no part in making them, and says what is wrong.

Usage: check.py FOLDER PAGE.pdf…   FOLDER is for its own files; beside each page lies its HTML twin. First it
spoils a copy of the first page in every way that it looks for, and must find each: its silence means
something then. Prints a line a page with what was measured, then a line `finding: …` for each fault.

Structure and text order by poppler's pdfinfo, fonts by its pdffonts, pictures by its pdftoppm, the file
by qpdf, structure tree and metadata by pikepdf. ISO 14289-1 (PDF/UA-1) and ISO 19005-2 (PDF/A-2a) ask
for most of it; contrast is that of WCAG 2.2, 1.4.6.
"""

import html.parser
import re
import subprocess
import sys
from pathlib import Path

import numpy
import pikepdf
from PIL import Image

DPI = 300
LEAST_CONTRAST = 7.0
LEAST_X_HEIGHT_MM = 1.2
# 18 points of a letter whose x is half as high as its type (18 x 0.3528 x 0.508).
LEAST_LARGE_MM = 3.2
RULER_ERROR = 0.005
MM = DPI / 25.4


def run(*command):
    done = subprocess.run(command, capture_output=True, text=True, errors="replace")
    return done.returncode, done.stdout, done.stderr


# ---- the file -------------------------------------------------------------------------------------


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


# ---- the structure --------------------------------------------------------------------------------


def children(element):
    kids = element.get("/K", [])
    kids = kids if isinstance(kids, pikepdf.Array) else [kids]
    return [kid for kid in kids if isinstance(kid, pikepdf.Dictionary) and "/S" in kid]


def elements(element):
    yield element
    for kid in children(element):
        yield from elements(kid)


def structure(pdf):
    tree = pdf.Root.get("/StructTreeRoot")
    if tree is None:
        yield "no structure tree"
        return
    level = 0
    for element in (e for kid in children(tree) for e in elements(kid)):
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


# ---- the order of the words -----------------------------------------------------------------------


class Twin(html.parser.HTMLParser):
    """The words of an HTML page as it prints them, in order."""

    HIDDEN = re.compile(r"\b(blank|lines|sign)\b")
    VOID = {"br", "hr", "meta", "link", "img", "input", "wbr", "col"}

    def __init__(self):
        super().__init__()
        self.words, self.main, self.skip, self.links = [], 0, 0, []

    def handle_starttag(self, tag, attrs):
        if tag in self.VOID:
            return
        attrs = dict(attrs)
        if self.skip or tag == "svg" or attrs.get("aria-hidden") == "true" or self.HIDDEN.search(attrs.get("class") or ""):
            self.skip += 1
            return
        self.main += self.main > 0 or tag == "main"
        if tag == "a":
            self.links.append((attrs.get("href") or "", len(self.words)))

    def handle_endtag(self, tag):
        if tag in self.VOID:
            return
        if self.skip:
            self.skip -= 1
            return
        if tag == "a" and self.links:
            href, since = self.links.pop()
            if href.startswith("http") and "".join(self.words[since:]) != href:
                self.words.append(f"<{href}>")
        self.main -= self.main > 0

    def handle_data(self, data):
        if self.main and not self.skip:
            self.words.append(data)


def squeezed(words):
    return re.sub(r"[\s\u200b\u00ad]+", "", words)


def said_by_html(path):
    twin = Twin()
    twin.feed(path.read_text(encoding="utf-8"))
    return squeezed("".join(twin.words))


def said_by_pdf(path):
    """The words of the structure tree; marks of lists and the insides of drawings are none."""
    _, said, _ = run("pdfinfo", "-struct-text", str(path))
    words, skip = [], None
    for line in said.splitlines():
        indent = len(line) - len(line.lstrip(" "))
        if skip is not None and indent > skip:
            continue
        skip = None
        line = line.strip()
        if re.match(r"(Lbl|Figure)\b", line):
            skip = indent
        elif line.startswith('"') and line.endswith('"'):
            words.append(line[1:-1])
    return squeezed("".join(words))


def order(path):
    here, there = said_by_pdf(path), said_by_html(path.with_suffix(".html"))
    if here == there:
        return []
    at = next((i for i, (a, b) in enumerate(zip(here, there)) if a != b), min(len(here), len(there)))
    return [f"reading order differs from the HTML twin: …{here[max(0, at - 30):at + 30]}… there …{there[max(0, at - 30):at + 30]}…"]


# ---- the picture ----------------------------------------------------------------------------------


def pictures(path, folder):
    run("pdftoppm", "-r", str(DPI), "-gray", str(path), str(folder / path.stem))
    return [numpy.asarray(Image.open(page)) for page in sorted(folder.glob(f"{path.stem}-*.pgm"))]


def words_of(path):
    """Of each page the words with their boxes, in pixels."""
    _, said, _ = run("pdftotext", "-bbox", str(path), "-")
    box = r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>'
    for page in said.split("<page ")[1:]:
        yield [(w[4], [float(v) * DPI / 72 for v in w[:4]]) for w in re.findall(box, page)]


def luminance(grey):
    share = grey / 255
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def contrast(patch):
    """Of the darkest against the commonest."""
    ground = numpy.bincount(patch.ravel(), minlength=256).argmax()
    ink = patch.min() if ground > 127 else patch.max()
    light, dark = sorted([luminance(ground), luminance(int(ink))], reverse=True)
    return (light + 0.05) / (dark + 0.05)


def x_height(patch):
    """Rows of ink of a word without ascenders and descenders, in millimetres."""
    rows = numpy.flatnonzero((patch < 128).any(axis=1))
    return (rows[-1] - rows[0] + 1) / MM if len(rows) else None


def letters(path, pages):
    return letters_in(pages, words_of(path))


def letters_in(pages, all_words):
    """The lowest letters in millimetres, and the faintest in contrast, each with its word."""
    lowest, faintest = (99.0, ""), (99.0, "")
    for picture, words in zip(pages, all_words):
        for word, (left, top, right, bottom) in words:
            patch = picture[int(top) : int(bottom) + 1, int(left) : int(right) + 1]
            if patch.size == 0 or not re.search(r"\w", word):
                continue
            faintest = min(faintest, (round(float(contrast(patch)), 2), word))
            if re.fullmatch("[acemnorsuvwxz]{2,}", word) and (height := x_height(patch)):
                lowest = min(lowest, (round(height, 2), word))
    return lowest, faintest


def ruler(pages):
    """The worst error of the longest row of millimetre strokes on any page; nothing without one."""
    worst = None
    for picture in pages:
        longest = []
        for row in picture[:: 4]:
            edges = numpy.diff((row < 110).astype(numpy.int8))
            starts, ends = numpy.flatnonzero(edges == 1), numpy.flatnonzero(edges == -1)
            if len(starts) < 90 or len(starts) != len(ends):
                continue
            centres = (starts + ends) / 2
            even = numpy.abs(numpy.diff(centres) - MM) < 2
            runs = numpy.split(centres, numpy.flatnonzero(~even) + 1)
            longest = max([longest, *runs], key=len)
        if len(longest) >= 90:
            millimetre = (longest[-1] - longest[0]) / (len(longest) - 1) / MM
            worst = max(worst or 0.0, abs(millimetre - 1))
    return worst


# ---- the codes ------------------------------------------------------------------------------------

CODE_DPI = 150
BLOT = 0.05
# Where the blot falls, in shares of the side: between the marks in the corners, without which no reader
# finds a code at all.
BLOTS = [(0.5, 0.5), (0.5, 0.12), (0.12, 0.5), (0.86, 0.5)]


def decoded(picture, folder):
    """What zbar reads on a picture."""
    sheet = folder / "codes.pgm"
    Image.fromarray(picture).save(sheet)
    _, said, _ = run("zbarimg", "--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", str(sheet))
    return sorted(said.split())


def boxes(picture):
    """The boxes around what is as black and as square as a code: squares of ink at least 12 mm wide with
    white around them."""
    cell = 6
    rows, columns = (side // cell for side in picture.shape)
    dark = (picture[: rows * cell, : columns * cell] < 128).reshape(rows, cell, columns, cell).any(axis=(1, 3))
    seen = numpy.zeros_like(dark)
    for start in zip(*numpy.nonzero(dark)):
        if seen[start]:
            continue
        seen[start], stack, found = True, [start], []
        while stack:
            row, column = stack.pop()
            found.append((row, column))
            for near in [(row + y, column + x) for y in (-1, 0, 1) for x in (-1, 0, 1)]:
                if 0 <= near[0] < rows and 0 <= near[1] < columns and dark[near] and not seen[near]:
                    seen[near] = True
                    stack.append(near)
        ys, xs = zip(*found)
        width, height = max(xs) - min(xs) + 1, max(ys) - min(ys) + 1
        if width * cell > 12 * CODE_DPI / 25.4 and abs(width - height) <= 1 and len(found) > 0.7 * width * height:
            yield min(xs) * cell, min(ys) * cell, (max(xs) + 1) * cell, (max(ys) + 1) * cell


def blotted(picture, squares, at):
    """The picture with a black square on each code, of a twentieth of its area."""
    picture = picture.copy()
    for left, top, right, bottom in squares:
        side = max(right - left, bottom - top)
        half = side * BLOT**0.5 / 2
        x, y = left + at[0] * side, top + at[1] * side
        picture[int(y - half) : int(y + half) + 1, int(x - half) : int(x + half) + 1] = 0
    return picture


def codes(path, folder):
    """Every code on a page of labels is read by zbar at 150 dpi in grey, blotted too, and says what
    stands beside it."""
    twin = path.with_suffix(".html").read_text(encoding="utf-8")
    wanted = len(re.findall(r'<div class="code"[^>]*><svg', twin))
    if wanted == 0:
        return None, []
    run("pdftoppm", "-r", str(CODE_DPI), "-gray", str(path), str(folder / "code"))
    pages = sorted(folder.glob("code-*.pgm"))
    pictures = [numpy.asarray(Image.open(page)) for page in pages]
    for page in pages:
        page.unlink()
    found, findings = [], []
    for number, picture in enumerate(pictures, 1):
        clean = decoded(picture, folder)
        found += clean
        squares = list(boxes(picture)) if clean else []
        if len(squares) != len(clean):
            findings.append(f"page {number}: {len(clean)} codes are read, {len(squares)} are blotted")
        for at in BLOTS if clean else []:
            lost = set(clean) - set(decoded(blotted(picture, squares, at), folder))
            if lost:
                findings.append(f"page {number}: a blot at {at} hides {', '.join(sorted(lost))}")
    if len(found) != wanted:
        findings.append(f"{wanted} codes are printed, {len(found)} are read")
    findings += [f"the code {words} does not stand in the text" for words in found if words not in twin]
    return len(found), findings


# ---- a page ---------------------------------------------------------------------------------------


def look(path, folder):
    findings = [*sound(path), *fonts(path)]
    with pikepdf.open(path) as pdf:
        findings += [*metadata(pdf), *structure(pdf), *links(pdf), *unmarked(pdf)]
        count = len(pdf.pages)
    findings += order(path)
    pages = pictures(path, folder)
    if len(pages) != count:
        findings.append(f"poppler draws {len(pages)} pages, pikepdf counts {count}")
    lowest, faintest = letters(path, pages)
    twin = path.with_suffix(".html").read_text(encoding="utf-8")
    # Labels are as large as the paper they are stuck on allows.
    large = 'class="large"' in twin and 'class="labels' not in twin
    if lowest[0] < (LEAST_LARGE_MM if large else LEAST_X_HEIGHT_MM):
        findings.append(f"letters {lowest[0]} mm high: {lowest[1]}")
    if faintest[0] < LEAST_CONTRAST:
        findings.append(f"contrast {faintest[0]} to 1: {faintest[1]}")
    error = ruler(pages)
    if error is not None and error > RULER_ERROR:
        findings.append(f"the ruler is out by {100 * error:.2f} %")
    for page in folder.glob(f"{path.stem}-*.pgm"):
        page.unlink()
    read, unread = codes(path, folder)
    findings += unread
    measured = [f"{count} pages", f"letters {lowest[0]} mm", f"contrast {faintest[0]}"]
    if read is not None:
        measured.append(f"{read} codes read")
    if error is not None:
        measured.append(f"ruler {100 * error:.3f} % out")
    return [f"{path}: {', '.join(measured)}", *(f"  finding: {finding}" for finding in findings)]


# ---- the proof --------------------------------------------------------------------------------------


def without_structure(pdf):
    del pdf.Root.StructTreeRoot


def without_heads(pdf):
    for element in (e for kid in children(pdf.Root.StructTreeRoot) for e in elements(kid)):
        if element.S == "/TH":
            element.S = pikepdf.Name.TD


def out_of_structure(pdf):
    page = pdf.pages[0]
    page.contents_add(b"q 0 0 m 9 9 l S Q")


SPOILED = [(without_structure, "no structure tree"), (without_heads, "table without heads"), (out_of_structure, "outside the structure")]


def prove(path, folder):
    """What was spoiled and not found."""
    copy = folder / "spoiled.pdf"
    for spoil, wanted in SPOILED:
        with pikepdf.open(path) as pdf:
            spoil(pdf)
            found = [*structure(pdf), *unmarked(pdf)]
        if not any(wanted in finding for finding in found):
            yield f"spoiled, and not found: {wanted}"
    copy.write_bytes(path.read_bytes())
    twin = path.with_suffix(".html").read_text(encoding="utf-8")
    copy.with_suffix(".html").write_text(twin.replace("</h1>", " once more</h1>", 1), encoding="utf-8")
    if not order(copy):
        yield "spoiled, and not found: reading order"
    pages = pictures(path, folder)
    pale = [(255 - (255 - page.astype(int)) // 3).astype(numpy.uint8) for page in pages]
    if letters(path, pale)[1][0] >= LEAST_CONTRAST:
        yield "spoiled, and not found: contrast"
    low = [numpy.asarray(Image.fromarray(page).resize((page.shape[1], page.shape[0] // 2))) for page in pages]
    small = [[(word, [left, top / 2, right, bottom / 2]) for word, (left, top, right, bottom) in words] for words in words_of(path)]
    if letters_in(low, small)[0][0] >= letters(path, pages)[0][0]:
        yield "spoiled, and not found: small letters"
    strokes = numpy.full((40, 2400), 255, numpy.uint8)
    strokes[:, (50 + numpy.arange(150) * MM * 1.01).astype(int)] = 0
    if (ruler([strokes]) or 0) <= RULER_ERROR:
        yield "spoiled, and not found: ruler"


def main():
    folder, *paths = map(Path, sys.argv[1:])
    if missed := list(prove(paths[0], folder)):
        sys.exit("\n".join(missed))
    for path in paths:
        print("\n".join(look(path, folder)), flush=True)


if __name__ == "__main__":
    main()
