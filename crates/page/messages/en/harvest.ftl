# May we take it, and how much: surveys, allowances, land rules, hazards, seasons.

### Amounts

harvest-grams = { $mass-down }
harvest-pieces = { $n ->
    [one] 1 piece
   *[other] { $n } pieces
}

### Surveys

harvest-one-plot = One plot at { $stand } says nothing about how much plots differ.
harvest-settle-more-plots = Draw more plots at { $stand } at random, ten or more if there is time.
harvest-piece-weight-unknown = Nobody knows what a piece from { $stand } weighs.
harvest-settle-weigh-ten = Pick ten pieces of { $part } without choosing, weigh each, and write the weights down.
harvest-pieces-not-counted = The plots at { $stand } were weighed, not counted.
harvest-settle-count-pieces = Count the pieces in each plot at { $stand }, or ask for a weight.
harvest-few-plots = Only { $n } plots were drawn: the doubt is large, and so the amount is small.
harvest-reaches-below-zero = The doubt of the survey reaches below nothing, so it counts only what was found in the plots. Draw more plots.
harvest-clumped = The plant grows in clumps: plots that miss them, or hit them, mislead. Draw more plots, spread over the whole stand.
harvest-few-weighed = Only { $n ->
    [one] one piece was weighed
   *[other] { $n } pieces were weighed
}: weigh ten.
harvest-plots-of = { $n } of { $all } plots

### The amount

harvest-no-rule = No rule was asked.
harvest-settle-no-rule = Give the program the rules of the herbal.

### Whose leave

harvest-the-landholder = the landholder
harvest-no-leave = Nobody has asked { $landholder } about { $site }.
harvest-settle-ask-owner = Ask { $landholder }, and write down which plants, which parts, how much, for what and until when.
harvest-no-public-right = No law in the list leaves this to everybody at { $site }.
harvest-public-right = Left to everybody, as it was read: { $says } Check locally.
harvest-leave-of-another = { $site } belongs to { $landholder }; the permission is from { $from }.
harvest-leave-not-now = The permission of { $from } holds from { $given } to { $until }.
harvest-leave-other-purpose = The permission of { $from } does not cover { $purpose }.
harvest-leave-other-taxon = The permission of { $from } does not name { $taxon }.
harvest-leave-other-part = The permission of { $from } does not name this part: { $part }.
harvest-leave-given = { $from } gave leave until { $until }.
harvest-leave-amount = { $from } gave leave for so much that { $left } are left.

harvest-purpose-own-use = own use
harvest-purpose-lesson = a lesson without a fee
harvest-purpose-paid-lesson = a lesson for a fee
harvest-purpose-sale = sale
harvest-purpose-unknown = an unknown purpose

### The law

harvest-law = { $says } (Read { $seen }. Check locally.)
harvest-law-unread = { $says } (Not read at its source. Check locally.)
harvest-law-amount = { $says } Of that { $left } are left. Check locally.
harvest-consented = { $from } has consented.
harvest-settle-consent = Ask the authority for { $site }, and write its consent down under the rule { $rule }.
harvest-protected = The sheet of { $taxon } says: { $note }
harvest-settle-protected = Find out whether { $taxon } may be taken there, and write the consent down under the rule protected.
harvest-no-jurisdiction = Whose law holds at { $site } is not said.
harvest-settle-jurisdiction = Say whose law holds at { $site }.
harvest-no-law = No law of { $place } is in the list.
harvest-settle-no-law = Look up what holds at { $site }, and add it to your own land rules with its source.
harvest-no-land = What class of land { $site } is, is not said.
harvest-land-unlisted = No rule knows the class of land { $land }.
harvest-settle-land = Say which class of land { $site } is, in the words of the land rules.
harvest-no-purpose = What the gathering at { $site } is for is not said; a fee changes what the law says.
harvest-settle-purpose = Say what it is for: own use, a lesson, a lesson for a fee, or sale.

### What lies near

harvest-hazard-unknown = Nobody has said whether there is a { $hazard } near { $stand }, or how far off.
harvest-settle-hazard-distance = Measure from the nearest plant to the { $hazard }, or write that there is none. { $keep } are kept.
harvest-settle-hazard-history = Find out, from the owner or an old map, whether there is any: { $hazard }.
harvest-hazard-not-there = No { $hazard } near { $stand }.
harvest-hazard-far-enough = { $hazard }: { $distance } off, and { $keep } are kept.
harvest-hazard-near = { $hazard }: { $distance } off, where { $keep } are kept. { $why }
harvest-hazard-too-near = { $hazard }: { $distance } off; nearer than { $never } nothing is taken. { $why }
harvest-hazard-anywhere = { $hazard }: nothing is taken there. { $why }
harvest-hazard-unlisted = No rule knows how far to keep from this: { $hazard }.
harvest-settle-hazard-unlisted = Give { $hazard } a distance in your own land rules, or write it in their words.
harvest-not-there = looked for, not there
harvest-anywhere = anywhere near
harvest-narrowed = The leader keeps nearer than usual: { $why }
harvest-care = { $says }

fault-hazard-unknown = No hazard is called { $got }.
    .want = One of: { $known }
    .mend = Use one of these words.
fault-hazard-no-distance = No distance makes this hazard harmless: { $got }.
    .want = A hazard that is kept off by a distance.
    .mend = Take the line out.
fault-hazard-too-near = { $got } is nearer than anybody may gather.
    .want = { $never } or more.
    .mend = Keep farther off.
fault-hazard-no-reason = { $got } is nearer than the rules keep, and no reason is given.
    .want = { $keep } or more, or a reason.
    .mend = Keep farther off, or say why nearer will do there.

### The season and rest

harvest-in-season = { $part } of { $taxon } can be had from { $first } to { $last }.
harvest-out-of-season = { $part } of { $taxon } can be had from { $first } to { $last }, not on { $day }.
harvest-no-season = When { $part } of { $taxon } can be had is not known.
harvest-settle-season = Add the months of { $part } to the sheet of { $taxon }, with their source.
harvest-rested = { $stand } has rested: { $says }
harvest-resting = { $stand } was last picked on { $day }, and is picked in one season of { $years }. { $says }

### The share

harvest-share = { $says } Of the { $standing } that stand there at least, { $left } are left to take.
harvest-no-share = No share is set for { $part } of { $taxon }.
harvest-settle-share = Set a share for { $part } in your own land rules.
harvest-no-life-form = Whether { $taxon } lives one year or many is not known, and so no share is either.
harvest-settle-life-form = Add the life form to the sheet of { $taxon }.
harvest-no-survey = Nobody has surveyed { $stand }.
harvest-settle-survey = Draw ten plots at { $stand } at random, and count or weigh { $part } in each.
harvest-survey-of-another-season = The survey of { $stand } is of { $day }, and not of this season.
harvest-survey-of-another-part = At { $stand } something else was surveyed: { $surveyed }, not { $part }.
harvest-survey-of-another-stand = The survey is of { $surveyed }, not of { $stand }.
harvest-no-history = What was taken at { $stand } before is not written down.
harvest-short-history = What was taken at { $stand } is written down only since { $since }.
harvest-settle-history = Ask those who know { $stand } what was taken there since { $day }, and write it down.
harvest-pieces-of-another = A take of { $taxon } was counted in pieces, and nobody knows what they weigh.
harvest-settle-weigh-take = Write the take from { $stand } down by weight.
harvest-others = If others pick at { $stand } too, write their takes down: three people who each take a tenth leave less than three quarters.

### Workings

harvest-what-allowance = what may be taken
harvest-what-at-least = what stands there at least
harvest-what-plots = { $n } plots, drawn at random
harvest-what-piece = weight of a piece
harvest-what-taken = taken before
harvest-what-taken-before = taken this season before the survey
harvest-what-taken-after = taken this season since the survey
harvest-what-share = share: { $says }
harvest-what-share-left = what the share leaves
harvest-what-rest = years of rest
harvest-what-season = months of the part
harvest-what-leave = the landholder’s leave
harvest-what-leave-amount = amount that the landholder named
harvest-what-law-amount = amount that the law names
harvest-what-consent = consent of the authority
harvest-what-distance = distance
harvest-what-keep = distance to keep: { $hazard }
harvest-what-hazard = distance from { $hazard }

formula-harvest-allowance = The least that any rule leaves. A rule that leaves nothing decides at once.
formula-harvest-crop = The lower end of the interval that holds the true total in 19 surveys of 20, or what was counted in the plots where that is more.
formula-harvest-share = The share is of the season’s crop before anybody took anything; what was taken this season comes off it.
formula-harvest-left = What is allowed, less what was taken of it.
formula-harvest-distance = The distance must be at least the one to keep.

### Faults of surveys and places

fault-survey-no-plots = The survey holds no plot.
    .want = What was found in each plot that was drawn.
    .mend = Add the plots, or take the survey out.
fault-survey-too-many-plots = { $got } plots were drawn from a stand that holds { $all }.
    .want = No more plots than the stand holds.
    .mend = Say how many plots of that size the whole stand holds.
fault-survey-weight = A plot cannot weigh this: { $got }.
    .want = A weight of nothing or more.
    .mend = Mend the weight.
fault-survey-piece-weight = A piece cannot weigh this: { $got }.
    .want = A weight above nothing.
    .mend = Mend the weight, or take it out.
fault-latitude-range = There is no latitude { $got }.
    .want = Degrees north, from -90 to 90.
    .mend = Mend the number; south is below zero.
fault-longitude-range = There is no longitude { $got }.
    .want = Degrees east, from -180 to 180.
    .mend = Mend the number; west is below zero.

### Faults of land files

fault-land-twice = { $got } is listed twice.
    .want = One row of each name.
    .mend = Take one out, or give it another name.
fault-land-unknown-place = No place is called { $got } in the list.
    .want = A place with a row of its own under jurisdiction.
    .mend = Mend the name, or add the place.
fault-land-unknown-class = No class of land is called { $got }.
    .want = A class with a row of its own under land.
    .mend = Mend the name, or add the class.
fault-land-share = { $got } is no share.
    .want = A number from 0 to 1.
    .mend = Write one in ten as 0.1.
fault-land-at-most = The amount of { $got } and its effect do not fit together.
    .want = effect = "at-most" with amount and period, or another effect with neither.
    .mend = Add what is missing, or take out what is too much.
fault-land-amount = This is not an amount of the kind that is wanted: { $got }.
    .want = A mass, a number of pieces, or a length, as the row asks.
    .mend = Mend the amount or its unit; the upper end of a range comes last.
fault-land-distance = The distances of { $got } do not fit together.
    .want = keep and never, the second no longer than the first; or anywhere = true.
    .mend = Add what is missing, or take out what is too much.
