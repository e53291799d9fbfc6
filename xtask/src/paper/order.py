"""The order of the words, held against that of the HTML twin."""

import html.parser
import re

import pikepdf

from command import run

# Whatever places text, and names its place in the structure.
TEXT = set("BT ET Tf Td TD Tm T* Tj TJ ' \" Tc Tw Tz TL Ts Tr q Q cm Do BDC BMC EMC DP MP".split())


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


def without_strokes(path, folder):
    """A copy that says the same. poppler reads a page once for each of its elements, and three quarters of that
    would be strokes and colours."""
    copy = folder / "said.pdf"
    with pikepdf.open(path) as pdf:
        for holder, colours in [(pdf.Root, "/OutputIntents"), *((page.Resources, "/ColorSpace") for page in pdf.pages)]:
            if colours in holder:
                del holder[colours]
        for page in pdf.pages:
            kept = [said for said in pikepdf.parse_content_stream(page) if str(said.operator) in TEXT]
            page.Contents = pdf.make_stream(pikepdf.unparse_content_stream(kept))
        pdf.save(copy)
    return copy


def said_by_pdf(path, folder):
    """The words of the structure tree; marks of lists and the insides of drawings are none."""
    _, said, _ = run("pdfinfo", "-struct-text", str(without_strokes(path, folder)))
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


DIFFERS = "reading order differs from the HTML twin"


def order(path, folder):
    here, there = said_by_pdf(path, folder), said_by_html(path.with_suffix(".html"))
    if here == there:
        return []
    at = next((i for i, (a, b) in enumerate(zip(here, there)) if a != b), min(len(here), len(there)))
    return [f"{DIFFERS}: …{here[max(0, at - 30):at + 30]}… there …{there[max(0, at - 30):at + 30]}…"]
