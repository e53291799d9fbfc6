"""Prints what the library reads of a calendar file: beginning, end and summary of each event, with
tabs between. Fails where anything is wrong with the file, or is lost when the library writes it."""

import sys
from pathlib import Path

from icalendar import Calendar


def events(written: bytes) -> list:
    """Every event as its properties, in order; dates as values, whatever their spelling."""
    calendar = Calendar.from_ical(written)
    if calendar.errors or any(part.errors for part in calendar.subcomponents):
        raise SystemExit(f"errors: {calendar.errors}")
    if calendar.get("VERSION") != "2.0" or not calendar.get("PRODID"):
        raise SystemExit("no version or no maker")
    value = lambda it: it.dt if hasattr(it, "dt") else str(it)
    return [{name: value(it) for name, it in event.items()} for event in calendar.walk("VEVENT")]


written = Path(sys.argv[1]).read_bytes()
read = events(written)
again = events(Calendar.from_ical(written).to_ical())
if read != again:
    raise SystemExit("the library writes other events than it read")
if len({event["UID"] for event in read}) != len(read):
    raise SystemExit("two events share an identity")
for event in read:
    if event["DTSTAMP"].utcoffset().total_seconds() != 0:
        raise SystemExit("a stamp is not in universal time")
    if not event["DTSTART"] < event["DTEND"]:
        raise SystemExit("an event ends before it begins")
    moments = event["DTSTART"].isoformat(), event["DTEND"].isoformat()
    print(*moments, event["SUMMARY"], sep="\t")
