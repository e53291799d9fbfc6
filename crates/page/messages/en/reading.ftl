# One plant in hand, asked for look by look in a terminal, and the file of looks.

### How to answer

reading-keys = Answer with the number that stands before the answer. Two that you cannot tell apart: 1, 3. A length has its unit, such as 18 mm, 1.8 cm or ¾ in. A count is a whole number.
reading-keys-words = Instead of an answer:
reading-key-cannot-tell = you cannot tell
reading-key-not-there = there is none to look at
reading-key-back = take your last answer back
reading-key-why = why this is asked
reading-key-verdict = you have looked: show what it is
reading-key-quit = leave; what you answered is in the file, and the same command goes on from there

### What is asked

reading-asks-plant = What is the plant taken for?
reading-asks-plant-how = Any name that the herbal knows.
reading-asks-place = Where was it found?
reading-asks-place-how = Your own words, such as Mill Wood, by the brook. ? where nobody says.
reading-asks-region = In which part of the world?
reading-asks-region-how = ? where nobody knows: then anything could grow there.
reading-asks-reader = Who reads it now?
reading-asks-reader-how = A name. Whoever reads sees nothing of what another reader saw.
reading-asks-reader-known = A number, or the name of somebody new. Whoever reads sees nothing of what another reader saw.
reading-asks-level = How well do you read plants?
reading-level-leader = leads outings
reading-level-trained = was shown the characters
reading-level-public = anybody else
# $how: how to look; $time: how long it takes.
reading-asks-how = { $how } It takes { $time } or so.
reading-asks-length = How long, with its unit?
reading-asks-count = How many?

### What is said

# $reader: a name; $looks: how many looks of theirs the file holds of today.
reading-reads = { $looks ->
    [0] { $reader } reads, and has not looked today.
    [one] { $reader } reads, and has looked once today.
   *[other] { $reader } reads, and has looked { $looks } times today.
}
reading-reads-shown = { $reader } was shown what it could be. What { $reader } reads from now on does not count as a second reading.
reading-other-day = { $looks ->
    [one] 1 look in this file is of another day. It does not count today: a verdict is of one day.
   *[other] { $looks } looks in this file are of another day. They do not count today: a verdict is of one day.
}
# $character: its name; $seen: what was seen of it.
reading-kept = Written down: { $character }, { $seen }.
reading-taken-for = It is taken for { $plant }.
reading-taken-back = Taken back: { $character }.
reading-answer-taken-back = Taken back.
reading-nothing-to-take-back = No answer of yours of today stands at the end of the file, so none is taken back.
# $what: what is wrong with the answer; $want: what was wanted; $mend: how to mend it.
reading-not-an-answer = { $what } Wanted: { $want } { $mend }
reading-left = You have left. What you answered is in the file; the same command goes on from there.

### Why it is asked

reading-why-plant = What it is taken for decides which plants must be set aside, the dangerous ones first.
reading-why-place = A verdict is of one plant at one place on one day.
reading-why-region = It decides which other plants could grow there.
reading-why-reader = Anybody may misread. What could hurt most is read by two people, and the second must not know what the first saw.
reading-why-level = It says how often you are taken to misread. Whoever claims to read better than they do is told too soon that a plant is settled: be strict with yourself.
reading-why-nothing = Nothing is asked now.
reading-why-read-by-another = Somebody has read this already. A mistake in it could hurt most, so it is read by two people, and you are not told what the other one saw.
reading-why-read-before = You have read this already, ten minutes ago or more. A mistake in it could hurt most, so it is read twice. Look as if you had not.
reading-why-must-look = Nobody may leave this out, whatever else was seen: it keeps the plant apart from what could hurt.
reading-why-tells-most = Of all that is still open, this sets most aside for the time it takes.
reading-why-misread = What goes wrong: { $note }

### The end

reading-nothing = Nothing more is asked of you.
reading-nothing-says = No other look that you can make here today would settle that it is what it is taken for. Nothing may be taken by it.
reading-another = Nothing more is asked of you. Somebody else must read it too.
reading-another-says = Give the same command in a fresh window, with the other reader’s name, so that nothing of yours is to be seen. A leader may read again alone, ten minutes later.
reading-end-words = { $verdict } shows what it is by all that was read; after that, what you read no longer counts as a second reading. { $back } takes your last answer back, { $quit } leaves.

### What may be wrong with an answer

fault-answer-none-of-these = “{ $got }” is none of these answers.
    .want = A number from 1 to { $most }.
    .mend = Type the number; of a look also ? if you cannot tell.
fault-answer-no-count = “{ $got }” is no count.
    .want = A whole number, such as 5.
    .mend = Type how many there are, or ? if you cannot tell.
fault-answer-no-length = “{ $got }” is no length.
    .want = A number with its unit, such as 18 mm, 1.8 cm or ¾ in.
    .mend = Measure it and type it so, or ? if you cannot.
fault-answer-other-unit = “{ $got }” is no length: the unit is one of something else.
    .want = A length, such as 18 mm, 1.8 cm or ¾ in.
    .mend = Measure it and type it so, or ? if you cannot.
fault-answer-length-cannot-be = “{ $got }” cannot be the length of any part of a plant.
    .want = A length above nothing and up to 130 m: no plant is longer.
    .mend = See whether number and unit are the right ones.
fault-answer-no-verdict-yet = There is no verdict before somebody reads.
    .want = First what the plant is taken for, where, and who reads.
    .mend = Answer these, then type it again.
fault-answer-to-nothing = Nothing is asked now.
    .want = verdict, back or quit.
    .mend = Type one of these words.
fault-answer-no-name = “{ $got }” is no name.
    .want = What the reader is called.
    .mend = Type a name with a letter in it.
fault-answer-name-too-long = This is too long for a name, or has characters in it that cannot be printed.
    .want = At most { $most } letters.
    .mend = Type a shorter one.

### What may be wrong with the file

fault-unreadable-looks = This file of looks cannot be read: { $got }
    .want = A file in TOML with [plant], [[reader]] and [[looks]], as trug look begins it.
    .mend = Put the line right; a misspelt or stray field is a frequent cause.
fault-looks-cannot-go-on = No answer can be written at the end of this file.
    .want = Tables of looks that each begin with [[looks]], and none that is written as one list.
    .mend = Write each table of looks under a [[looks]] of its own.
fault-looks-of-no-plant = This file does not say what the plant is taken for.
    .want = taken-for = "…" under [plant].
    .mend = Write it, or begin the file with trug look.
fault-looks-changed = { $got } has been changed by somebody else again and again.
    .want = A file that stays as it is while one answer is written.
    .mend = Close what else writes it, and give the command again: nothing of it was lost.
