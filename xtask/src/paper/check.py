"""Looks at PDF pages with tools that had no part in making them, and says what is wrong.

Usage: check.py FOLDER PAGE.pdf…   FOLDER is for its own files; beside each page lies its HTML twin. First it
spoils the first page that holds a table in every way that it looks for, and must find each: its silence
means something then. Prints a line a page with what was measured, then a line `finding: …` for each fault;
the pages are looked at on all cores and printed in their order. At the end it prints figures over all
pages: name, value and unit, tabs between.

Structure and text order by poppler's pdfinfo, fonts by its pdffonts, pictures by its pdftoppm, the file
by qpdf, structure tree and metadata by pikepdf. ISO 14289-1 (PDF/UA-1) and ISO 19005-2 (PDF/A-2a) ask
for most of it; contrast is that of WCAG 2.2, 1.4.6.
"""

import sys
import tempfile
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import pikepdf

from codes import codes
from figures import figures
from limits import LEAST_CONTRAST, LEAST_LARGE_MM, LEAST_X_HEIGHT_MM, RULER_ERROR
from order import order
from picture import letters, lowest_letters, pictures, ruler
from proof import can_be_spoiled, prove
from structure import fonts, links, metadata, sound, structure, unmarked


@dataclass
class Looked:
    """What was measured on a PDF page, and what is wrong with it."""

    path: Path
    sides: int
    lowest: tuple
    faintest: tuple
    codes: int | None
    ruler: float | None
    findings: list

    def lines(self):
        measured = [f"{self.sides} pages", f"letters {self.lowest[0]} mm", f"contrast {self.faintest[0]}"]
        if self.codes is not None:
            measured.append(f"{self.codes} codes read")
        if self.ruler is not None:
            measured.append(f"ruler {100 * self.ruler:.3f} % out")
        return [f"{self.path}: {', '.join(measured)}", *(f"  finding: {finding}" for finding in self.findings)]


def look(path, folder):
    findings = [*sound(path), *fonts(path)]
    with pikepdf.open(path) as pdf:
        findings += [*metadata(pdf), *structure(pdf), *links(pdf), *unmarked(pdf)]
        count = len(pdf.pages)
    findings += order(path, folder)
    pages = list(pictures(path, folder))
    if len(pages) != count:
        findings.append(f"poppler draws {len(pages)} pages, pikepdf counts {count}")
    lowest, faintest, too_faint = legible(path, pages, folder)
    error = ruler(pages)
    if error is not None and error > RULER_ERROR:
        findings.append(f"the ruler is out by {100 * error:.2f} %")
    read, unread = codes(path, folder)
    return Looked(path, count, lowest, faintest, read, error, [*findings, *too_faint, *unread])


def legible(path, pages, folder):
    """The lowest and the faintest letters, and what is wrong with them."""
    lowest, faintest = letters(path, pages)
    twin = path.with_suffix(".html").read_text(encoding="utf-8")
    # Labels are as large as the paper they are stuck on allows.
    large = 'class="large"' in twin and 'class="labels' not in twin
    least = LEAST_LARGE_MM if large else LEAST_X_HEIGHT_MM
    lowest = lowest_letters(path, lowest, least, folder)
    findings = []
    if lowest[0] < least:
        findings.append(f"letters {lowest[0]} mm high: {lowest[1]}")
    if faintest[0] < LEAST_CONTRAST:
        findings.append(f"contrast {faintest[0]} to 1: {faintest[1]}")
    return lowest, faintest, findings


def in_own_folder(work, folder, path):
    """Work on a page, whose pictures get a folder that no other page uses."""
    with tempfile.TemporaryDirectory(dir=folder) as own:
        return work(path, Path(own))


def proven(paths, folder):
    """Ends the program unless everything that was spoiled on a page is found."""
    spoiled = next(filter(can_be_spoiled, paths), None)
    if spoiled is None:
        sys.exit("no page holds a table, and so none can be spoiled in every way that is looked for")
    if missed := in_own_folder(prove, folder, spoiled):
        sys.exit("\n".join(missed))


def main():
    folder, *paths = map(Path, sys.argv[1:])
    proven(paths, folder)
    all_looked = []
    with ProcessPoolExecutor() as processes:
        for looked in processes.map(partial(in_own_folder, look, folder), paths):
            print("\n".join(looked.lines()), flush=True)
            all_looked.append(looked)
    for figure in figures(all_looked):
        print(*figure, sep="\t")


if __name__ == "__main__":
    main()
