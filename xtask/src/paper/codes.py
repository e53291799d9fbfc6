"""The codes on a page of labels."""

import re

import numpy
from PIL import Image

from command import run

CODE_DPI = 150
# White around a code that is cut out, in dots: four modules of half a millimetre.
QUIET = 12
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


def cut_out(picture, square):
    """A code with the white that a reader needs around it, as it is before a reader of one label."""
    left, top, right, bottom = square
    return picture[max(0, top - QUIET) : bottom + QUIET, max(0, left - QUIET) : right + QUIET]


def blotted(code, at):
    """A code that was cut out with a black square on it, of a twentieth of its area."""
    code = code.copy()
    side = max(code.shape) - 2 * QUIET
    half = side * BLOT**0.5 / 2
    x, y = (QUIET + share * side for share in at)
    code[int(y - half) : int(y + half) + 1, int(x - half) : int(x + half) + 1] = 0
    return code


def hidden(picture, squares, folder):
    """Each code that is no longer read, alone, once a blot lies on it."""
    for code in (cut_out(picture, square) for square in squares):
        clean = decoded(code, folder)
        if len(clean) != 1:
            yield f"a code is read as {clean or 'nothing'} when it is cut out"
        for at in BLOTS:
            if decoded(blotted(code, at), folder) != clean:
                yield f"a blot at {at} hides {', '.join(clean)}"


def codes(path, folder):
    """Every code on a page of labels is read by zbar at 150 dpi in grey and says what stands beside it;
    so is each alone with a blot."""
    twin = path.with_suffix(".html").read_text(encoding="utf-8")
    wanted = len(re.findall(r'<div class="code"[^>]*><svg', twin))
    if wanted == 0:
        return None, []
    run("pdftoppm", "-r", str(CODE_DPI), "-gray", str(path), str(folder / "code"))
    pictures = [numpy.asarray(Image.open(page)) for page in sorted(folder.glob("code-*.pgm"))]
    found, findings = [], []
    for number, picture in enumerate(pictures, 1):
        clean = decoded(picture, folder)
        found += clean
        squares = list(boxes(picture)) if clean else []
        if len(squares) != len(clean):
            findings.append(f"page {number}: {len(clean)} codes are read, {len(squares)} are blotted")
        findings += (f"page {number}: {finding}" for finding in hidden(picture, squares, folder))
    if len(found) != wanted:
        findings.append(f"{wanted} codes are printed, {len(found)} are read")
    findings += [f"the code {words} does not stand in the text" for words in found if words not in twin]
    return len(found), findings
