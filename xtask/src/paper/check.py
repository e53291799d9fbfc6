"""Looks at PDF pages with tools that had no part in making them, and says what is wrong.

Usage: check.py FOLDER PAGE.pdf…   FOLDER is for its own files; beside each page lies its HTML twin. First it
spoils the first page that holds a table in every way that it looks for, and must find each: its silence
means something then. Prints a line a page with what was measured, then a line `finding: …` for each fault;
the pages are looked at on all cores and printed in their order.

Structure and text order by poppler's pdfinfo, fonts by its pdffonts, pictures by its pdftoppm, the file
by qpdf, structure tree and metadata by pikepdf. ISO 14289-1 (PDF/UA-1) and ISO 19005-2 (PDF/A-2a) ask
for most of it; contrast is that of WCAG 2.2, 1.4.6.
"""

import sys
import tempfile
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path

import pikepdf

from codes import codes
from limits import LEAST_CONTRAST, LEAST_LARGE_MM, LEAST_X_HEIGHT_MM, RULER_ERROR
from order import order
from picture import letters, lowest_letters, pictures, ruler
from proof import can_be_spoiled, prove
from structure import fonts, links, metadata, sound, structure, unmarked


def look(path, folder):
    findings = [*sound(path), *fonts(path)]
    with pikepdf.open(path) as pdf:
        findings += [*metadata(pdf), *structure(pdf), *links(pdf), *unmarked(pdf)]
        count = len(pdf.pages)
    findings += order(path)
    pages = list(pictures(path, folder))
    if len(pages) != count:
        findings.append(f"poppler draws {len(pages)} pages, pikepdf counts {count}")
    lowest, faintest = letters(path, pages)
    twin = path.with_suffix(".html").read_text(encoding="utf-8")
    # Labels are as large as the paper they are stuck on allows.
    large = 'class="large"' in twin and 'class="labels' not in twin
    least = LEAST_LARGE_MM if large else LEAST_X_HEIGHT_MM
    lowest = lowest_letters(path, lowest, least, folder)
    if lowest[0] < least:
        findings.append(f"letters {lowest[0]} mm high: {lowest[1]}")
    if faintest[0] < LEAST_CONTRAST:
        findings.append(f"contrast {faintest[0]} to 1: {faintest[1]}")
    error = ruler(pages)
    if error is not None and error > RULER_ERROR:
        findings.append(f"the ruler is out by {100 * error:.2f} %")
    read, unread = codes(path, folder)
    findings += unread
    measured = [f"{count} pages", f"letters {lowest[0]} mm", f"contrast {faintest[0]}"]
    if read is not None:
        measured.append(f"{read} codes read")
    if error is not None:
        measured.append(f"ruler {100 * error:.3f} % out")
    return [f"{path}: {', '.join(measured)}", *(f"  finding: {finding}" for finding in findings)]


def in_own_folder(work, folder, path):
    """What is found on a page, whose pictures get a folder that no other page uses."""
    with tempfile.TemporaryDirectory(dir=folder) as own:
        return list(work(path, Path(own)))


def main():
    folder, *paths = map(Path, sys.argv[1:])
    spoiled = next(filter(can_be_spoiled, paths), None)
    if spoiled is None:
        sys.exit("no page holds a table, and so none can be spoiled in every way that is looked for")
    if missed := in_own_folder(prove, folder, spoiled):
        sys.exit("\n".join(missed))
    with ProcessPoolExecutor() as processes:
        for lines in processes.map(partial(in_own_folder, look, folder), paths):
            print("\n".join(lines), flush=True)


if __name__ == "__main__":
    main()
