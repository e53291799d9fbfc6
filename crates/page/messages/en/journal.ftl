# The log of records: what can be wrong with its lines, and with what they say of each other.

# $got: the beginning of the line.
fault-unreadable-record = This line cannot be read as a record: { $got }
    .want = A whole record, as it was written.
    .mend = Take the line from another copy of the log. A last line that breaks off was never finished: take it out.
fault-changed-record = This line was changed after it was written: { $got }
    .want = The line as it was written.
    .mend = Take the line from another copy of the log.
fault-newer-record = This line is of version { $got } of the log.
    .want = Version { $newest } at most.
    .mend = Read it with a newer version of this program.
fault-record-id-taken = { $got } is the name of two different records.
    .want = Each name once.
    .mend = Keep both copies as they are, and see which device wrote the second.
fault-record-cannot-be-written = What the record { $got } says could not be read again.
    .want = Words, and numbers that are finite.
    .mend = Say it in another way.
fault-clock-at-its-end = The clock of { $got } cannot go on.
    .want = Records from before the year 10889.
    .mend = See which record lies so far ahead, and begin a log without it.
fault-record-missing = The record written before this one is not here as it was: { $got }
    .want = Every record of a device, from its first.
    .mend = Merge another copy of the log, best that of the device itself. Nothing was taken out.
fault-record-forked = { $got } wrote this record after it went back to an earlier state.
    .want = Each record of a device after the one before.
    .mend = Nothing is lost. Give a device that was set up from a copy a name of its own.
