"""Looks at PDF pages with tools that had no part in making them, and says what is wrong.

Usage: check.py FOLDER PAGE.pdf…   FOLDER is for its own files; beside each page lies its HTML twin. First it
spoils a copy of the first page in every way that it looks for, and must find each: its silence means
something then. Prints a line a page with what was measured, then a line `finding: …` for each fault.

Structure and text order by poppler's pdfinfo, fonts by its pdffonts, pictures by its pdftoppm, the file
by qpdf, structure tree and metadata by pikepdf. ISO 14289-1 (PDF/UA-1) and ISO 19005-2 (PDF/A-2a) ask
for most of it; contrast is that of WCAG 2.2, 1.4.6.
"""

import sys
from pathlib import Path

import pikepdf

from codes import codes
from limits import LEAST_CONTRAST, LEAST_LARGE_MM, LEAST_X_HEIGHT_MM, RULER_ERROR
from order import order
from picture import letters, pictures, ruler
from proof import prove
from structure import fonts, links, metadata, sound, structure, unmarked


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


def main():
    folder, *paths = map(Path, sys.argv[1:])
    if missed := list(prove(paths[0], folder)):
        sys.exit("\n".join(missed))
    for path in paths:
        print("\n".join(look(path, folder)), flush=True)


if __name__ == "__main__":
    main()
