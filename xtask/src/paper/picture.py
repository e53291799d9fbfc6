"""The picture of a page: its letters and its ruler."""

import re

import numpy
from PIL import Image

from command import run

DPI = 300
FINE_DPI = 600
MM = DPI / 25.4


def pictures(path, folder, dpi=DPI):
    run("pdftoppm", "-r", str(dpi), "-gray", str(path), str(folder / str(dpi)))
    return (numpy.asarray(Image.open(page)) for page in sorted(folder.glob(f"{dpi}-*.pgm")))


def words_of(path, dpi=DPI):
    """Of each page the words with their boxes, in pixels."""
    _, said, _ = run("pdftotext", "-bbox", str(path), "-")
    box = r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>'
    for page in said.split("<page ")[1:]:
        yield [(w[4], [float(v) * dpi / 72 for v in w[:4]]) for w in re.findall(box, page)]


def luminance(grey):
    share = grey / 255
    return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4


def contrast(patch):
    """Of the darkest against the commonest."""
    ground = numpy.bincount(patch.ravel(), minlength=256).argmax()
    ink = patch.min() if ground > 127 else patch.max()
    light, dark = sorted([luminance(ground), luminance(int(ink))], reverse=True)
    return (light + 0.05) / (dark + 0.05)


def x_height(patch, dpi):
    """Rows of ink of a word without ascenders and descenders, in millimetres."""
    rows = numpy.flatnonzero((patch < 128).any(axis=1))
    return (rows[-1] - rows[0] + 1) * 25.4 / dpi if len(rows) else None


def letters(path, pages):
    return letters_in(pages, words_of(path))


def lowest_letters(path, lowest, least, folder):
    """The lowest letters, looked at more closely where a single dot decides whether they are too low."""
    if abs(lowest[0] - least) > 25.4 / DPI:
        return lowest
    return letters_in(pictures(path, folder, FINE_DPI), words_of(path, FINE_DPI), FINE_DPI)[0]


def letters_in(pages, all_words, dpi=DPI):
    """The lowest letters in millimetres, and the faintest in contrast, each with its word."""
    lowest, faintest = (99.0, ""), (99.0, "")
    for picture, words in zip(pages, all_words):
        for word, (left, top, right, bottom) in words:
            patch = picture[int(top) : int(bottom) + 1, int(left) : int(right) + 1]
            if patch.size == 0 or not re.search(r"\w", word):
                continue
            faintest = min(faintest, (round(float(contrast(patch)), 2), word))
            if re.fullmatch("[acemnorsuvwxz]{2,}", word) and (height := x_height(patch, dpi)):
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
