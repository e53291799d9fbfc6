# The outing file: what may be wrong with it.

### The file

fault-unreadable-outing = This file cannot be read: { $got }
    .want = A file in TOML, with the tables and fields that demo/spring-evening.toml shows.
    .mend = Put the line right; a misspelt or stray field is a frequent cause. A file that a newer version wrote needs that version.
fault-no-such-file = { $got } is asked for and is not there.
    .want = The name of a file beside this one.
    .mend = Mend the name, or take it out.
fault-one-outing-wanted = There are { $got } tables called “outing”.
    .want = One table “outing” in all files together.
    .mend = Keep one of them, or add the one that is missing.
fault-ends-before-it-begins = The outing ends at { $got }, before it begins.
    .want = A time after its beginning.
    .mend = Put the two times right.

### Names

fault-no-such-name = Nothing is called { $got } here.
    .want = { $count ->
        [0] The name of something that these files give; they give nothing of its kind.
       *[other] One of { $list }.
     }
    .mend = Mend the name, or add what it names.
fault-no-such-character = The glossary has no character { $got }.
    .want = A character of the glossary; the nearest are { $near }.
    .mend = Mend the name of the character.
fault-no-such-taxon = The table has no plant { $got }.
    .want = One of { $list }.
    .mend = Mend the name.
fault-unknown-recipe = There is no recipe { $got }.
    .want = One of { $list }.
    .mend = Mend the name of the recipe.
fault-unknown-amount = No recipe asks for an amount of “{ $got }”.
    .want = Amounts of { $list }.
    .mend = Give the amount under one of these names.
fault-unknown-question = This is an answer to a question that nobody asks.
    .want = One of { $list }.
    .mend = Mend the name of the question.
fault-no-such-entry = No entry has the number { $got }.
    .want = The number of the entry that is corrected.
    .mend = Copy it from the entry.

### Amounts, numbers and times

fault-amount-out-of-range = “{ $got }” cannot be: it is below nothing, or far too much.
    .want = An amount from nothing up, and at most { $most }.
    .mend = See whether number and unit are the right ones.
fault-number-out-of-range = { $got } cannot be: it is below nothing, or far too many.
    .want = A whole number from 0 to { $most }.
    .mend = See whether the number is the right one.
fault-nothing-counted = { $got } asks for nothing.
    .want = A whole number from 1 up.
    .mend = Give the number, or take the whole table out.
fault-share-wanted = “{ $got }” is no share.
    .want = A share between nothing and all, such as 10 % or 80–84 %.
    .mend = Write it in per cent.
fault-strength-wanted = “{ $got }” is no strength.
    .want = A strength by volume, such as 40 % vol.
    .mend = Write the strength that stands on the bottle.
fault-no-such-moment = “{ $got }” is no moment.
    .want = A day with a time, such as 2027-05-01T10:30:00.
    .mend = See whether the day is in the calendar, and add the time.
fault-no-such-time = “{ $got }” is no time of day.
    .want = Hours and minutes, such as 10:30.
    .mend = Write it like that.
fault-no-such-zone = No time zone is called { $got }.
    .want = A standard name, such as Europe/London.
    .mend = Give continent and city, joined by a slash.
fault-no-such-place = { $got } degrees lead off the map.
    .want = Degrees from −{ $most } to { $most }.
    .mend = See whether latitude and longitude changed places.
fault-one-distribution-wanted = It is not said in one way how { $got } spreads.
    .want = Exactly one of exact, uniform, log-uniform, triangular, log-normal.
    .mend = Keep one of them.
fault-no-such-distribution = The numbers of { $got } do not fit: { $why }.
    .want = Numbers from low to high.
    .mend = Put them in order.

### Tables that do not fit each other

fault-for-whom = It is not said for whom { $got } is meant, or said twice.
    .want = Either “everybody = true” or a list of people.
    .mend = Keep one of the two.
fault-stand-of-another-plant = { $got } is a stand of another plant.
    .want = A stand of { $plant }.
    .mend = Name the right stand, or the right plant.
fault-lot-of-another-plant = { $got } holds another plant, or another part of it.
    .want = A lot of the part of { $plant } that is named here.
    .mend = Name the right lot, or the right plant and part.
fault-specimen-at-two-stands = One plant in hand was looked at both at { $other } and at { $got }.
    .want = Each plant in hand at one stand.
    .mend = Give the second plant a name of its own.
fault-unreadable-look = “{ $got }” says nothing of this character.
    .want = What the character asks for: states, a length with its unit, or a number; “?” when it could not be told.
    .mend = Write it so.
fault-look-twice = One reader says this character twice: “{ $before }” and “{ $got }”.
    .want = Each character once for each reader; states that cannot be told apart joined by |.
    .mend = Keep the one that is right, or give the second reader's apart.
fault-counted-and-weighed = Some of the { $got } plots were counted and some weighed.
    .want = Plots that were all counted, or all weighed.
    .mend = Make two surveys of them.
fault-nothing-weighed = This weighing of { $got } gives neither mass nor volume.
    .want = A mass or a volume.
    .mend = Give what the scale said, or take it out.

correction-because = { $why }
