"""What was found over all pages, as figures: name, value and unit."""

from limits import LEAST_CONTRAST, LEAST_X_HEIGHT_MM, RULER_ERROR
from order import DIFFERS
from picture import DPI


def named(looked):
    """A page by its name and that of its folder: pages of several outings are called alike."""
    return f"{looked.path.parent.name}/{looked.path.stem}"


def figures(all_looked):
    """Of what every page has, and of the ruler where a page has one."""
    findings = [finding for looked in all_looked for finding in looked.findings]
    out_of_order = sum(finding.startswith(DIFFERS) for finding in findings)
    lowest = min(all_looked, key=lambda looked: looked.lowest)
    faintest = min(all_looked, key=lambda looked: looked.faintest)
    sides = sum(looked.sides for looked in all_looked)
    yield "paper-pages", len(all_looked), f"PDF pages looked at, on {sides} sides"
    yield "paper-findings", len(findings), "faults that poppler, qpdf, pikepdf and zbar show (goal 0)"
    yield "paper-order", out_of_order, "pages whose reading order differs from the HTML twin (goal 0)"
    yield "paper-letters", lowest.lowest[0], f"mm, lowest x, drawn at {DPI} dpi and finer: {named(lowest)} (goal {LEAST_X_HEIGHT_MM})"
    yield "paper-contrast", faintest.faintest[0], f"to 1, faintest word: {named(faintest)} (goal {LEAST_CONTRAST:.0f})"
    ruled = [looked for looked in all_looked if looked.ruler is not None]
    if ruled:
        worst = max(ruled, key=lambda looked: looked.ruler)
        yield "paper-ruler", f"{100 * worst.ruler:.3f}", f"% out at worst: {named(worst)} (goal {100 * RULER_ERROR})"
