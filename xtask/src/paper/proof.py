"""Spoils a page in every way that is looked for: silence of a check that finds each means something."""

import numpy
import pikepdf
from PIL import Image

from limits import LEAST_CONTRAST, RULER_ERROR
from order import order
from picture import MM, letters, letters_in, pictures, ruler, words_of
from structure import all_elements, structure, unmarked


def without_structure(pdf):
    del pdf.Root.StructTreeRoot


def without_heads(pdf):
    for element in all_elements(pdf):
        if element.S == "/TH":
            element.S = pikepdf.Name.TD


def out_of_structure(pdf):
    page = pdf.pages[0]
    page.contents_add(b"q 0 0 m 9 9 l S Q")


SPOILED = [(without_structure, "no structure tree"), (without_heads, "table without heads"), (out_of_structure, "outside the structure")]


def can_be_spoiled(path):
    """Whether a page holds what every way of spoiling needs."""
    with pikepdf.open(path) as pdf:
        return any(element.S == "/TH" for element in all_elements(pdf))


def prove(path, folder):
    """What was spoiled and not found."""
    return [f"spoiled, and not found: {missed}" for missed in overlooked(path, folder)]


def overlooked(path, folder):
    copy = folder / "spoiled.pdf"
    for spoil, wanted in SPOILED:
        with pikepdf.open(path) as pdf:
            spoil(pdf)
            found = [*structure(pdf), *unmarked(pdf)]
        if not any(wanted in finding for finding in found):
            yield wanted
    copy.write_bytes(path.read_bytes())
    twin = path.with_suffix(".html").read_text(encoding="utf-8")
    copy.with_suffix(".html").write_text(twin.replace("</h1>", " once more</h1>", 1), encoding="utf-8")
    if not order(copy, folder):
        yield "reading order"
    pages = list(pictures(path, folder))
    pale = [(255 - (255 - page.astype(int)) // 3).astype(numpy.uint8) for page in pages]
    if letters(path, pale)[1][0] >= LEAST_CONTRAST:
        yield "contrast"
    low = [numpy.asarray(Image.fromarray(page).resize((page.shape[1], page.shape[0] // 2))) for page in pages]
    small = [[(word, [left, top / 2, right, bottom / 2]) for word, (left, top, right, bottom) in words] for words in words_of(path)]
    if letters_in(low, small)[0][0] >= letters(path, pages)[0][0]:
        yield "small letters"
    strokes = numpy.full((40, 2400), 255, numpy.uint8)
    strokes[:, (50 + numpy.arange(150) * MM * 1.01).astype(int)] = 0
    if (ruler([strokes]) or 0) <= RULER_ERROR:
        yield "ruler"
