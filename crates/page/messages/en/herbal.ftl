# What can be wrong in the files of a herbal, and what a check of it says.

## Files

fault-unreadable-toml = This file cannot be read: { $got }
    .want = A file in TOML, with the fields that docs/herbal-format.md lists.
    .mend = Put the line right; a misspelt or stray field is a frequent cause.
fault-file-twice = Two files are called { $got }.
    .want = One file of each name.
    .mend = Put them together in one file, or give one another name.
fault-stray-file = Nothing reads the file { $got }.
    .want = Files in the folders that docs/herbal-format.md lists.
    .mend = Move it into the right folder, or take it out.
fault-file-name = The file of { $got } has another name.
    .want = species/{ $slug }.toml
    .mend = Rename the file, or mend the name in it.

## Sources

fault-no-source = This row names no source.
    .want = At least one source, or one of the words practice, policy, assumed, memory.
    .mend = Add src = ["…"] with the source it was read in, or src = ["memory"] when it is remembered.
fault-unknown-source = No source is called { $got }.
    .want = The id of a source in the folder sources/.
    .mend = Mend the id, or list the source.
fault-source-twice = The source { $got } is listed twice.
    .want = One entry for each source.
    .mend = Take one of them out, or give it another id.
fault-source-reserved = { $got } cannot be the id of a source.
    .want = Another id: practice, policy, assumed and memory mark what has no source.
    .mend = Give the source another id.

## Words

fault-unknown-word = { $got } is not one of the words for this.
    .want = { $known }
    .mend = Use one of these words.
fault-unknown-character = The glossary has no character { $got }.
    .want = The id of a character in the folder glossary/.
    .mend = Mend the id, or add the character to the glossary.
fault-unknown-state = { $got } is not a state of this character.
    .want = { $known }
    .mend = Use one of these states, or add it to the glossary.
fault-name-twice = { $got } stands here twice.
    .want = Each name once.
    .mend = Take one of them out.
fault-missing-field = The field { $got } is missing.
    .want = A whole sheet; only a file laid over a known sheet may leave fields out.
    .mend = Add the field.

## Glossary

fault-character-twice = The character { $got } is in the glossary twice.
    .want = One entry for each character.
    .mend = Put the two together.
fault-no-unit = The length { $got } does not say its unit.
    .want = A name that ends in _mm, and lengths in millimetres.
    .mend = Rename the character, and turn its lengths into millimetres.
fault-states-and-kind = A character of kind { $got } does not fit its states.
    .want = States for kind states, and none for length and count.
    .mend = Change the kind, or add or remove states.
fault-kind-changed = This character was of another kind; { $got } does not fit what sheets say of it.
    .want = The kind that it had.
    .mend = Keep the kind, or add a character of another name.
fault-impossible-seconds = Nobody looks for { $got } seconds.
    .want = Whole seconds, 1 or more.
    .mend = Write how long one reading takes.
fault-state-names-itself = The state { $got } names itself.
    .want = Another state of the same character.
    .mend = Name the more general state, or the one that it is taken for.
fault-kind-of-ring = Going from state to kind, and on from { $got }, comes back to the start.
    .want = Kinds that lead to ever more general states.
    .mend = Take one kind_of of the ring out.

## Cells

fault-empty-cell = Nothing is said of { $got }.
    .want = always, usually, sometimes or rarely for states; range for a length or a count.
    .mend = Say what is seen, or take the row out.
fault-always-beside-others = { $got } has always beside other words.
    .want = always by itself: these are the only states seen.
    .mend = Write usually instead of always, or take the other states out.
fault-state-twice = The state { $got } stands here twice.
    .want = Each state once.
    .mend = Keep it where it belongs.
fault-range-of-states = { $got } has states, and a range is given.
    .want = always, usually, sometimes or rarely with states.
    .mend = Name the states that are seen.
fault-state-of-range = { $got } is a state, and this character is measured or counted.
    .want = range = [least, most], with extreme = [least, most] where it is known.
    .mend = Give the range.
fault-impossible-range = { $got } is no possible range.
    .want = The lower end first, and no end below zero.
    .mend = Put the two ends right.
fault-extreme-inside-range = The outer limits { $got } lie inside the ordinary range.
    .want = Outer limits that hold the ordinary range.
    .mend = Put the limits right, or leave them out.

## Sheets

fault-no-such-month = { $got } are not two months.
    .want = Two numbers from 1 to 12; [10, 3] runs from October to March.
    .mend = Put the months right.
fault-look-alike-itself = { $got } is named as its own look-alike.
    .want = Another plant.
    .mend = Mend the name, or take the row out.
fault-look-alike-twice = The look-alike { $got } is named twice.
    .want = One row for each look-alike.
    .mend = Put the two together.

## Mix-ups

fault-no-sheet = No sheet is called { $got }.
    .want = The scientific name of a plant that has a sheet in the folder species/.
    .mend = Mend the name, or write a sheet for the plant.
fault-mix-up-twice = The mix-up { $got } is told twice.
    .want = One row for each mix-up, and an id of its own.
    .mend = Put the two together, or give one another id.
fault-mix-up-itself = { $got } is said to have been taken for itself.
    .want = Two plants.
    .mend = Mend one of the two names.
fault-mix-up-empty = This mix-up names no { $got }.
    .want = At least one.
    .mend = Add what the source tells, or what the season of the plant that was meant says.
fault-mix-up-deaths = { $got } are said to have died, more than the people who are counted.
    .want = At most as many deaths as people.
    .mend = Put the two numbers right, or leave out what the source does not tell.
fault-no-month = { $got } is no month.
    .want = Numbers from 1 to 12, each month by itself.
    .mend = Put the month right.

## Names of plants

fault-unknown-plant = No plant in the herbal is called { $got }.
    .want = A name that the herbal knows. The nearest are: { $near }.
    .mend = Mend the spelling, or give the scientific name.
fault-unknown-plant-none-near = No plant in the herbal is called { $got }, or nearly so.
    .want = A name that the herbal knows.
    .mend = Give the scientific name, or add a sheet for the plant.
fault-several-plants = { $got } is the name of several plants: { $near }.
    .want = The name of one plant.
    .mend = Give the scientific name of the one that is meant.

## What a check finds

herbal-look-alike-without-sheet = { $plant } is taken for { $other }, which has no sheet. Without one it counts as deadly.
herbal-tell-empty = { $tell } should tell { $plant } from { $other }, but nothing is said of it for { $empty }.
herbal-tell-tells-nothing = { $tell } should tell { $plant } from { $other }, but what is seen as a rule is the same in both.
herbal-few-tells = { $plant } is gathered and { $other } harms; published characters that tell them apart: { $count } ({ $tells }). Three are wanted.
herbal-mix-up-unconfirmed = { $mix_up } tells of { $plant } and { $other }, but the sheet of { $plant } does not name the other as a look-alike with confirmed = true.
herbal-cells-remembered = { $plant }: { $count } characters rest on memory or custom and settle nothing: { $characters }.
herbal-harm-remembered = { $plant }: how badly it can hurt rests on memory. Where it is said to be harmless, judging takes that for unknown.
herbal-relatives-remembered = { $plant }: what is known of its relatives rests on memory.
herbal-former-name-is-a-sheet = { $former } is given as a former name of { $plant }, and has a sheet of its own.
herbal-months-missing = { $plant }: nothing says in which months its { $part } is seen, so it counts all year.
herbal-name-of-several = { $name } is the name of { $plants }, and not all are harmless. Whoever asks by that name gets the list.
herbal-group-without-members = { $group } has rows, but no sheet belongs to it.
herbal-source-unused = No fact names the source { $source }.
herbal-character-unused = No sheet and no group says anything of { $character }.
herbal-column-empty = { $character } is named as a tell, but no sheet and no group says anything of it.
herbal-states-unused = { $character }: no row names these states: { $states }.
herbal-state-without-words = The state { $state } of { $character } has no plain words.
herbal-no-part-rows = { $plant }: no row says what its parts may be used for, so everything made of it is withheld.
herbal-row-joins-nothing = The row { $row } of the table { $table } speaks of { $plant }, which no sheet is or is kin to.
herbal-use-without-part-row = { $plant }: people gather its { $part } for { $forms }, but no part row speaks of that.
herbal-use-not-cleared = { $plant }: people gather its { $part } for { $forms }, but no source that was read clears that, so it is withheld.
herbal-use-refused = { $plant }: people gather its { $part } for { $forms }, but every part row that speaks of that refuses.
herbal-part-rows-remembered = { $plant }: { $count } part rows call it harmless from memory, and so refuse.
herbal-harm-milder-than-part = { $plant }: the sheet says { $harm }, but its { $part }, eaten raw, is { $worst }.
