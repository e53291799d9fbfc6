# The plan of an outing, and its pages.

### What is open

# $lot: its short name; $found: what was found; $other: the lot it was found in.
plan-lot-held = Lot { $lot } is held: { $found } was found in { $other }.
plan-settle-sort-again = Two people go through every piece of it again, and of every lot pooled with it, and find nothing.
plan-lot-unsorted = Lot { $lot } is not sorted.
plan-settle-sort = Two people go through it piece by piece, against a plant that was determined.
# $plant: scientific name; $common: usual name.
plan-plant-to-be-determined = { $common } ({ $plant }) is to be determined on the day, at every stand.
plan-plant-not-determined = { $common } ({ $plant }) is not determined at every stand.
plan-settle-determine = The looks listed with the plant, read on a plant in hand, by two readers where it says so.
plan-handed-too-much = { $who } was handed { $had } of { $make }; at most { $most } was decided.
plan-settle-handed-too-much = See how they are, keep what is left of it and of the plant, and ask the poison line or a clinician when in doubt. Then write down the word that allowed it, or the correction.
plan-make-from-nowhere = Where the { $plant } for “{ $make }” comes from is not said.
plan-settle-make-from-nowhere = The stands it is gathered at are named, or the lots that are there already.
plan-wanted-open = How much fresh herb “{ $make }” takes is not known, as how it is made is not settled.
plan-settle-wanted-open = What is open about the making is answered.
plan-not-enough = Stand { $stand } does not give the { $wanted } that are wanted.
plan-settle-want-less = Less is made, or another stand is named.
plan-people-open = { $count ->
    [one] 1 person has not answered all that matters.
   *[other] { $count } people have not answered all that matters.
 }
plan-settle-ask-people = They are asked; until then each open answer counts as the one that is feared.
# $make: what is made; $leader: who leads.
plan-word-does-not-fit = { $make }: { $count ->
    [one] a word that was given on 1 decision
   *[other] the words that were given on { $count } decisions
 } would hand out more than was found, and { $count ->
    [one] changes
   *[other] change
 } nothing.
plan-not-confirmed = { $make }: nobody stands for { $count ->
    [one] 1 decision
   *[other] { $count } decisions
 } yet.
plan-settle-confirm = A named person looks at each decision, and writes down what they stand for.
plan-no-recipe = There is no recipe “{ $recipe }”.
plan-settle-no-recipe = A recipe of the herbal is named, or one is written down.

### What to bring

plan-kit-ruler = a ruler with millimetres
plan-kit-lens = a lens, ten times
plan-kit-knife = a knife
plan-kit-spade = a spade
plan-kit-bags = { $count ->
    [one] 1 bag: one stand, one plant, one bag
   *[other] { $count } bags: one stand, one plant, one bag
 }
plan-kit-scale = a scale that weighs grams
plan-kit-labels = labels and a pencil
plan-kit-first-aid = a first-aid kit
plan-kit-numbers = the numbers of the emergency and poison lines, on paper

### The plan

view-plan-title = { $name }
view-plan-before = The evening before: nothing is in hand yet. Every answer about a cup holds provided that the plant is determined on the day and the basket sorted.
view-plan-on-the-day = On the day: what was seen, taken and sorted so far is counted; what was not still stands open.
view-plan-when = when
view-plan-hours = { $day }, { $from } to { $to }
view-plan-leader = leader
view-plan-region = region
view-plan-worked = worked out
# $herbal: the beginning of the herbal's version.
view-plan-as-of = as of { $day }, { $time }; herbal { $herbal }

view-plan-open = What is still open
view-plan-answer = Answer it:
view-plan-nothing-open = Nothing is open.
view-plan-about-handed = Handed out and not meant to be
view-plan-about-held = Held
view-plan-about-plant = Is it the plant?
view-plan-about-take = May we take it?
view-plan-about-amount = Is there enough?
view-plan-about-sorting = Was it sorted?
view-plan-about-make = How is it made?
view-plan-about-person = What people said
view-plan-about-confirmation = Who stands for it?

view-plan-plants = The plants, and how to be sure of each
view-plan-no-harm = No harm is listed.
view-plan-to-look = To be sure of it
# $time: how long all looks take.
view-plan-looks = { $count ->
    [one] One look, { $time }, settles it if the plant shows what it typically does.
   *[other] { $count } looks, { $time } in all, settle it if the plant shows what it typically does.
 }
# $typical: what the plant typically shows.
view-plan-look = { $typical } ({ $time })
view-plan-again = Two people read these, each alone, with the candidates hidden; or the leader again after ten minutes: { $characters }.
view-plan-twins = What it is taken for, the worst first
# $specimen, $stand: short names; $readers: who looked.
view-plan-seen = Plant { $specimen } at stand { $stand }, read by { $readers }.
# $left, $allowed: numbers, of harm times likelihood.
view-plan-bar = All rivals together, weighed by what they can do, come to { $left }; { $allowed } may be left.

view-plan-stands = What may be taken
view-basket-title = What came in
view-basket-empty = Nothing came in yet.
view-basket-rule = A lot may be used once two people went through every piece and found nothing that may harm. One such piece holds the lot, and all that was pooled with it, until two people have gone through every piece again and found nothing.
# $lot: what waits; $of: where it was found; $found: what.
view-basket-held = Nothing of { $lot } is used: { $found } was found in { $of }.
# $count: how many; $batches: their names.
view-basket-holds-up = { $count ->
    [0] No batch was made of it.
   *[other] Nobody is handed any more of what was made of it: { $batches }. Ask whoever had some how they are, and look at the emergency card.
 }
view-plan-lots = What came in
view-plan-lots-says = Lots, and whether they may be used
view-plan-lot = lot
view-plan-lot-from = from
view-plan-lot-mass = weighs
view-plan-lot-state = stands
view-plan-lot-unsorted = unsorted: not to be used
view-plan-lot-sorted = sorted by { $by }
view-plan-lot-held = held: { $found } was found in { $lot }
# $at: the time; $by: who; $found: what did not belong.
view-plan-sorting = { $at }, { $lot }: { $by } went through { $count ->
    [one] 1 piece
   *[other] { $count } pieces
 }; did not belong: { $found }.

view-plan-made = What is made, and how strong it is
# Follows the name of a plant.
view-plan-made-of = , { $part }; { $count ->
    [one] 1 serving
   *[other] { $count } servings
 } a day for each person, { $days ->
    [one] on 1 day
   *[other] on { $days } days
 }
view-plan-adult = What the pot means for a grown-up, whoever comes
# $outcome: a sentence.
view-plan-pot-withheld = As things stand nobody is handed this: it is withheld even from a grown-up of whom nothing is known that matters.
view-plan-adult-says = For a grown-up without any answer that matters: { $outcome }. This is about plant and pot, not about anybody here.
# $substance: a constituent; amounts; $window: over what they sum.
view-plan-passes = { $substance }: about { $middle } { $window } (9 in 10 lie between { $low } and { $high }), and { $least } at the very least. { $count ->
    [one] The limit is { $limits }.
   *[other] The limits are { $limits }.
 }
view-plan-supposed = { $substance }, if no more passed over than is supposed for want of a measurement: about { $middle } { $window } (9 in 10 lie between { $low } and { $high }), and { $least } at the very least. { $count ->
    [one] The limit is { $limits } all the same.
   *[other] The limits are { $limits } all the same.
 }
view-plan-in-a-serving = in a serving
view-plan-in-a-day = in a day
view-plan-in-a-week = in a week
view-plan-in-a-lifetime = in a lifetime
view-plan-in-a-product = in a kilogram
view-plan-limits = Every limit, beside what would be taken
view-plan-limit-of = of
view-plan-limit-taken = would be taken
view-plan-limit-most = limit
view-plan-limit-stands = stands
view-plan-limit-who = set by
view-plan-limit-within = within
view-plan-limit-above = above
view-plan-limit-unknown = cannot be told
view-plan-limit-not-held = not held against it
view-plan-limit-binds = it binds
view-plan-limit-legal = binds what is sold
view-plan-limit-guidance = above it, some ask first
view-plan-limit-shown = shown only
view-plan-limit-history = history: superseded
view-plan-limit-none = authorities set no value

view-plan-people = Who may have how much
view-plan-stands-for = ✓ { $by } stands for { $count }.
view-plan-provided = What must hold first:
view-plan-day = The day in order
view-plan-stops = Stops
view-plan-at = at
view-plan-where = where
view-plan-shown = plants
view-plan-way = way there
view-plan-no-time = no time for the way
view-plan-outside = outside the outing
view-plan-dark = after sunset
view-plan-light-no-place = Sunset is not known: the outing does not say where it is.
view-plan-light-all-day = The sun does not set that day.
view-plan-light-none = The sun does not rise that day.
view-plan-light = Sunrise { $rise }, sunset { $set }.
view-plan-light-dusk = Sunrise { $rise }, sunset { $set }; dark by { $dusk }.
view-plan-kit = What to bring
view-plan-sources = Sources
view-plan-why = Why: for the leader only
view-plan-sums = Limits and sums

### The pages

view-run-title = Run sheet: { $name }
view-run-stops = Stop by stop
view-run-notes = notes
view-run-looks = What must be seen, and who has seen it
view-run-look = look at
view-run-shows = shows, as a rule
view-run-first = first
view-run-second = second
# $twins: names.
view-run-beware = Deadly, and taken for it: { $twins }.
view-run-at-most = at most { $most }
view-run-nothing = nothing may be taken
view-run-wanted-open = not known
view-run-not-settled = not settled: nothing is taken until it is
view-run-take = { $part }, stand { $stand }: { $amount }; wanted { $wanted }
view-run-pots = In the kitchen
view-list-title = Who is handed what: { $name }
view-list-ask = Whoever wants to know why asks the leader, alone.
# $common: usual name; $name: scientific name.
view-home-title = { $common } ({ $name })
view-home-leave = How much to leave
view-home-recipe = What to make of it
view-home-no-recipe = No recipe stands here: something deadly is taken for it.
view-home-ask = Some people should not have it. Some should ask first. Before you use it, ask somebody who knows the plant and you.

### Sources

# $numbers: a list of numbers.
source-numbers = { $count ->
    [one] source { $numbers }
   *[other] sources { $numbers }
 }
