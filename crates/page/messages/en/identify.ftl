# Is it the plant? Verdicts and their reasons, what to look at next, workings, faults.
# $character, $group, $state: names out of the table.

### Verdicts

identify-determined = Determined: { $taxon }.
identify-determined-or-alike = Determined: { $taxon }, or a close relative of the same use and harm.
identify-determined-aggregate = Determined: { $aggregate }; its members share use and harm and need not be told apart.
identify-or-harmless-twin = { $determined } It may also be { $twins }, which does no harm: the stricter cautions of both apply.
identify-told-apart = Not { $look_alike }, as { $characters } show.
identify-lapses = The verdict holds for this plant, at this place, until the end of { $day }.
identify-not-yet = Not yet: { $taxon } is not settled.
identify-ruled-out = Ruled out: this is not { $taxon }. It misfits, and something else is ten thousand times likelier.

### What stands in the way

identify-no-looks = Nothing has been looked at.
identify-looks-of-another-day = { $count ->
    [one] One look was made on another day and is left out.
   *[other] { $count } looks were made on another day and are left out.
 }
identify-out-of-season = { $taxon } does not show this in { $month }, so that it speaks against the plant at most, never for it: { $characters }.
identify-contradict = { $character }: { $first } read { $one }, { $second } read { $other }. Both cannot be right: look again.
identify-rivals-in-the-way = It could still be { $rivals }.
identify-unlisted-relative = an unlisted relative of { $taxon }
identify-no-sheet = { $look_alike } is named as a look-alike and has no sheet: it cannot be set aside.
identify-tells-open = Two tells of different organs, one of them not smell, are still wanted against { $look_alike }.
identify-hardly-denied = { $readings ->
    [0] Nothing that was read denies { $rival }
    [one] One reading denies { $rival }
   *[other] { $readings } readings of { $organs ->
        [one] one organ
       *[other] { $organs } organs
    } deny { $rival }
 }: { $wanted } are wanted, of two organs, or twice as many of one, so that no one mistake lets it pass.
identify-must-look-open = Must be looked at: { $character }.
identify-must-look-doubtful = Shows what it shows only now and then, and somebody else must read it: { $character }.
identify-must-look-contrary = Does not agree: { $character }.
identify-must-look-not-known = Must be looked at, but the sheet says nothing of it, or only from memory: { $character }.
identify-misfit = What was seen does not fit: { $groups }.
identify-second-reading-open = A second reading is wanted against { $rivals }: by somebody else, or by the leader ten minutes later, with the candidates hidden.
identify-material-photograph = A photograph is never determined. The plant must be in hand.
identify-material-bought = Bought or given plants are never determined.
identify-material-chopped = Chopped plants are never determined.
identify-material-dried = Dried plants are never determined.

### Why it cannot be settled here today

identify-cannot-must-look = Must be looked at and cannot be seen now, or the sheet says nothing of it, or only from memory: { $character }.
identify-cannot-tell = Nothing that can be seen now tells it from { $look_alike } in two organs.
identify-cannot-read-twice = Nothing that can be seen now can be read a second time against { $rival }.
identify-cannot-deny = Too little that can be seen now denies { $rival }.
identify-cannot-cousin = Relatives of { $taxon } that have no sheet may do harm, and no source that was read says that they do not.
identify-cannot-alike = What can be seen now is too much alike in { $rival }.
identify-cannot-empty = { $rival } cannot be set aside: its sheet says nothing of { $empty }.
identify-cannot-remembered = { $rival } cannot be set aside: only from memory is known { $remembered }.
identify-cannot-empty-and-remembered = { $rival } cannot be set aside: its sheet says nothing of { $empty }, and only from memory is known { $remembered }.

### What was seen, what a sheet says

identify-seen-state = { $state }
identify-seen-one-of = one of { $states }
identify-seen-measured = { $low } to { $high }
identify-seen-counted = { $count }
identify-seen-not-there = not there to be seen
identify-seen-cannot-tell = cannot tell
identify-said = { $parts }
identify-said-always = always { $states }
identify-said-usually = usually { $states }
identify-said-sometimes = sometimes { $states }
identify-said-rarely = rarely { $states }
identify-said-share = { $state } in { $share }
identify-said-range = { $low } to { $high }

### Workings

identify-working-bar = what is left of the bar for { $taxon }
identify-working-rival = what { $taxon } contributes
identify-working-no-sheet = what { $taxon }, which has no sheet, contributes
identify-working-cousin = what an unlisted relative of { $taxon } contributes
identify-working-others = { $count ->
    [one] one more rival
   *[other] { $count } more rivals
 }
identify-working-others-why = Each is less than those above, and worked out the same way.
identify-working-weight = prior times harm
identify-working-group = group { $group }: how many times likelier of the rival
identify-working-character = { $character }: how many times likelier of the rival
identify-working-look = seen by { $reader }
identify-working-sheet = what the sheet of { $taxon } says
identify-working-genus = what the genus of { $taxon } says
identify-working-family = what the family of { $taxon } says
formula-identify-bar = What every rival contributes, added up; at most 1 may be left.
formula-identify-contribution = How bad the rival is, times how likely it is before any look, times how many times likelier what was seen is of it.
formula-identify-group = Characters that go together count once: the best of what favours, and all that is contrary.
formula-identify-look = How often the rival shows what was seen, over how often the plant does, misreading included.

### Faults in a table

fault-identify-no-name = A taxon or character has no name.
    .want = A name.
    .mend = Name it, or take the line out.
fault-identify-name-twice = { $got } stands in the table twice.
    .want = Each name once.
    .mend = Put the two together, or rename one.
fault-identify-no-states = A character of states has none.
    .want = At least one state.
    .mend = Name the states that plants show.
fault-identify-state-twice = The state { $got } is named twice.
    .want = Each state once.
    .mend = Take one of them out.
fault-identify-unknown-state = { $got } is not a state of this character.
    .want = One of { $known }.
    .mend = Use one of these states.
fault-identify-kind-of-itself = The state { $got } ends up a kind of itself.
    .want = Kinds that lead to something more general.
    .mend = Take out the kind that closes the ring.
fault-identify-unknown-character = The table has no character { $got }.
    .want = The name of a character of the table.
    .mend = Mend the name.
fault-identify-unknown-taxon = The table has no taxon { $got }.
    .want = The scientific name of a taxon of the table.
    .mend = Mend the name; a plant without a sheet cannot be determined.
fault-identify-its-own-look-alike = { $got } is named as its own look-alike.
    .want = Other plants.
    .mend = Take it out of its own list.
fault-identify-cell-twice = Something is said twice of one character of { $got }.
    .want = One cell for each taxon and character.
    .mend = Put the two together.
fault-identify-cell-kind = What is said does not fit the character { $got }.
    .want = States for states, a range for a length or a count.
    .mend = Say it in the way the character asks for.
fault-identify-cell-empty = A cell names no state.
    .want = At least one state, or no cell.
    .mend = Name a state, or take the cell out.
fault-identify-share = { $got } is not a share.
    .want = A number from 0 to 1.
    .mend = Mend the number.
fault-identify-shares-sum = The shares of a cell add up to { $got }.
    .want = Shares that add up to 1.
    .mend = Mend the shares.
fault-identify-range = This range is impossible: { $got }.
    .want = A lower and an upper end, not below nothing, within the outer limits.
    .mend = Put the ends in order.

### Faults in looks and priors

fault-identify-no-reader = A look does not say who looked.
    .want = The name of the reader.
    .mend = Add it: a second reading counts only from somebody else.
fault-identify-look-kind = What was seen does not fit the character { $got }.
    .want = A state, a length or a number, as the character asks for.
    .mend = Say it in that way, or that it cannot be told.
fault-identify-no-state-named = A look names no state.
    .want = At least one state.
    .mend = Name what was seen, or say that it cannot be told.
fault-identify-measured = This is not the length of any part of a plant: { $got } mm.
    .want = Two lengths above nothing and up to 130 m, the shorter first: no plant is longer.
    .mend = See whether numbers and unit are the right ones.
fault-identify-weight = { $got } cannot be the weight of a plant.
    .want = A number not below nothing.
    .mend = Mend the number.

### Faults in a table that is to be packed

fault-identify-packed-kind = A cell is of none of the { $got } kinds of its column.
    .want = A kind below that number, counted from 0.
    .mend = Give the column as many kinds as its cells name.
fault-identify-packed-length = A column has { $got } cells, the first another number.
    .want = A cell for each taxon in every column.
    .mend = Add the cells that are missing; an unknown one is a kind too.
fault-identify-packed-kinds = More than 65,536 taxa show each something else of { $got }.
    .want = At most 65,535 different cells in a column.
    .mend = Round lengths or shares.

### Faults in a table from elsewhere

fault-identify-unreadable = This table cannot be read: { $got }
    .want = CSV or TOML as docs/foreign-table.md describes.
    .mend = Put the line right.
fault-identify-no-taxa = The table has no taxa.
    .want = A line for each taxon below the header.
    .mend = Add the taxa.
fault-identify-harm = { $got } is not a word for harm.
    .want = none, irritant, unknown, harmful or deadly.
    .mend = Use one of these words.
fault-identify-relatives = { $got } is not a word for relatives.
    .want = all-listed, unlisted-alike or unlisted-unknown.
    .mend = Use one of these words, or leave the cell empty.
fault-identify-percent = { $got } is no share in per cent.
    .want = A number from 0 to 100.
    .mend = Mend the number.
fault-identify-percent-sum = The shares of a cell add up to { $got } %.
    .want = Shares that add up to 100 %.
    .mend = Mend the shares.
fault-identify-mixed-column = The column { $got } holds numbers and names of states.
    .want = Either shares in per cent or states.
    .mend = Write the whole column in one way.
