# The front door: what is asked at the command line, on a page and in the app, and what comes back.

list-or = { $before } or { $last }

### Plants of the herbal

plants-all = { $count ->
    [one] 1 plant
   *[other] { $count } plants
}
plants-fit = { $count ->
    [one] 1 plant whose name fits “{ $words }”
   *[other] { $count } plants whose names fit “{ $words }”
}
plants-near = No name fits “{ $words }”; these come nearest
plants-none = No plant is called “{ $words }”, or nearly so
plants-none-mend = Try the scientific name, or only the beginning of a name.
plants-caption = How badly each can hurt whoever takes it for something else
plants-name = name
plants-common = common name
plants-family = family
plants-harm = harm
plants-harm-none = none listed
plants-harm-irritant = irritant
plants-harm-unknown = not known
plants-harm-harmful = poisonous
plants-harm-deadly = deadly

### A key

fault-key-plant-twice = { $got } is asked for twice: it is { $plant }.
    .want = Each plant once.
    .mend = Take one of the two names out, or name the plant that was meant.
fault-key-how-many = A key to so many plants cannot be made: { $got }.
    .want = 2 plants or more, and { $most } at most.
    .mend = Name the plants that are to be told apart.

### Sorting a basket

fault-sort-how-many-pieces = A basket of { $got } pieces is not sorted here.
    .want = 1 piece or more, and { $most } at most.
    .mend = Count the pieces. A larger heap is sorted lot by lot.
fault-sort-more-wrong-than-pieces = So many wrong pieces cannot be among { $pieces }: { $got }
    .want = As many wrong pieces as there are pieces, or fewer.
    .mend = Put one of the two right.
fault-sort-more-seen-than-pieces = So many pieces cannot be looked at where there are { $pieces }: { $got }
    .want = As many as there are pieces, or fewer.
    .mend = Put one of the two right. Left out, it means every piece.
fault-sort-by-nobody = Nobody sorts.
    .want = Two people, by name.
    .mend = Say who looks at the pieces.
fault-sort-by-one-twice = The same person sorts twice, or has no name: “{ $got }”
    .want = Each person once. Two people are two pairs of eyes.
    .mend = Name somebody else, or take one of the two out.
fault-sort-no-trial = A trial in which { $got } of those planted were missed cannot be.
    .want = Some pieces planted, and no more missed than that.
    .mend = Write it like 1/20: 1 missed of 20.

### A species sheet

sheet-title = { $name } { $authority }
sheet-common = known as
sheet-family = family
sheet-former = formerly
sheet-life-form = grows as
sheet-regions = found in
sheet-habitats = look in
sheet-parents = hybrid of
sheet-aggregate = determined to
sheet-protected = protected

sheet-harm-deadly = Deadly
sheet-harm-harmful = Poisonous
sheet-harm-irritant = Irritant
sheet-harm-unknown = How badly it can hurt is not known
sheet-harm-none = No harm is listed of the uses below

sheet-months = When it is there
sheet-months-caption = Months in which each part is there to be seen and gathered
sheet-part = part
sheet-all-year = all year
sheet-must-look = Look at these before you name it
sheet-characters = How to know it
sheet-organ-whole = The whole plant
sheet-organ-stem = Stem
sheet-organ-leaf = Leaf
sheet-organ-flower = Flower
sheet-organ-fruit = Fruit
sheet-organ-bark = Bark
sheet-organ-underground = Below ground

# $states: states in plain words, joined by "or".
sheet-always = { $states }
sheet-usually = usually { $states }
sheet-sometimes = now and then { $states }
sheet-rarely = seldom { $states }
# $range: a range of lengths or counts.
sheet-outer-limits = at the outside { $range }
sheet-all-genus = , as in all its genus
sheet-all-family = , as in all its family

sheet-twins = What it is taken for
sheet-twin-unlisted = no sheet
sheet-twin-without-sheet = Nothing more is written down about this plant, so it counts as deadly.
sheet-confirmed = ; poisonings by this mix-up are published
# $why: a few words, such as: same leaf outline, same hedge banks.
sheet-why = Why: { $why }.
sheet-why-there = The sheet of { $twin } says: { $why }.
sheet-tells = What tells them apart
sheet-tell = look at

sheet-parts = Part by part
# $forms: a list in words; $use, $harm: a word or two.
sheet-part-says = As { $forms }. Used for: { $use }. Harm: { $harm }.
sheet-contact = On the skin: { $does }.
sheet-use-food = food
sheet-use-flavour = seasoning
sheet-use-tea = tea
sheet-use-medicinal = remedy
sheet-use-skin = skin
sheet-use-none = nothing

sheet-cautions = Who should not have it, or not without asking
sheet-caution-exclude = not for them
sheet-caution-ask = a pharmacist, doctor or midwife decides
sheet-caution-limit = so much, or so long
sheet-caution-note = to know
sheet-caution-none-found = looked for, none found
# $parts and $forms: lists in words.
sheet-caution-of = ({ $parts }; { $forms }).

sheet-gathered = What people gather it for
sheet-gathered-says = That others gather it says nothing about who may have it.

sheet-relatives = Its relatives
sheet-relatives-listed = The herbal lists every relative of the region.
sheet-relatives-alike = Some relatives have no sheet; they are used alike and hurt alike.
sheet-relatives-unknown = Some relatives have no sheet, and they may be used or hurt otherwise.

sheet-conflicts = Where sources disagree
# $kept: what the herbal goes by.
sheet-kept = The herbal goes by: { $kept }
sheet-sources = Sources
sheet-weak-source = {" "}(weak source)

### What the herbal lacks

pairs-title = What could pass for what: { $plants ->
    [one] { $plants } plant that is gathered
   *[other] { $plants } plants that are gathered
}, { $pairs } pairs
pairs-says = How many readings must go wrong before a dangerous plant in hand is determined for the one that is meant. A reading goes wrong when it finds what that plant seldom or never shows: it was misread, or the plant is odd. Readings of one group go wrong together, and count once for each reader. Everything else that must be set aside can only make it more.
pairs-never-determined = { $count ->
    [one] In { $count } pair of named look-alikes no two organs tell the plants apart by what was published: there the gathered plant is never determined.
   *[other] In { $count } pairs of named look-alikes no two organs tell the plants apart by what was published: there the gathered plant is never determined.
}
pairs-counts = How many pairs, by how many readings must go wrong
pairs-worst = The worst first
pairs-caption = Pairs
pairs-target = gathered
pairs-rival = must not be
pairs-harm = harm
pairs-passes = readings gone wrong
pairs-in-month = fewest in
pairs-tells = told apart by
pairs-seen = two organs of it seen
pairs-tells-in = { $count ->
    [one] { $count } character
   *[other] { $count } characters
} of { $organs ->
    [one] { $organs } organ
   *[other] { $organs } organs
}
pairs-named = , a named look-alike
pairs-after-more = more than twelve
pairs-never = never
pairs-left-out = { $count ->
    [one] { $count } more pair is not shown; --worst says how many are wanted.
   *[other] { $count } more pairs are not shown; --worst says how many are wanted.
}

check-title = What the herbal lacks
check-version = version of the herbal
check-species = species with a sheet
check-facts = How many facts rest on what
check-folder = folder
check-weak = weak source
check-practice = custom
check-policy = own choice
check-assumed = supposed
check-contradictory-label = contradictory
check-contradictory = Contradictory: { $count }
check-contradictory-says = Two rows do not go together; one of them is wrong.
check-missing-label = missing
check-missing = Missing: { $count }
check-missing-says = Judging needs these, and they are not there.
check-unjoined-label = unjoined
check-unjoined = Unjoined: { $count }
check-unjoined-says = These rows speak of something that has no row.
check-remembered-label = remembered
check-remembered = Remembered: { $count }
check-remembered-says = These rest on memory or custom: they may stop somebody, and they clear nobody.
check-unused-label = unused
check-unused = Unused: { $count }
check-unused-says = Nothing speaks of these rows.

### Small sums: what was asked

sums-of-alcohol = Spirit of { $strength }
sums-of-alcohol-in = { $volume } of { $strength }
sums-of-dilute = { $volume } of { $from }, let down to { $to }
sums-of-sugar = { $liquid } of liquid, sweetened to { $to }
sums-of-dry = { $herb } of herb, dried from { $from } to { $to } of water
sums-of-measure = { $said }
sums-of-daylight = Daylight on { $day } at { $place }, by the clock of { $zone }
sums-of-walk = { $legs ->
    [one] A walk
   *[other] A walk of { $legs } legs
}
sums-of-degree-days = { $days ->
    [one] Degree-days of 1 day above { $base }
   *[other] Degree-days of { $days } days above { $base }
}
sums-of-survey = { $plots } plots drawn at random from { $of }
sums-place = { $latitude }, { $longitude }
sums-north = { $degrees }° N
sums-south = { $degrees }° S
sums-east = { $degrees }° E
sums-west = { $degrees }° W

### Small sums: the kitchen

sums-strength = strength
sums-strength-by-mass = strength by mass
sums-density = density at { $at }
sums-ethanol-in-100-ml = ethanol in 100 ml
sums-ethanol-in-it = ethanol in it
sums-water-to-add = water to add
sums-water-by-weight = the same, weighed
sums-mixture = makes
sums-contraction = lost in mixing
sums-volumes-shrink = Spirit and water take less room together than apart: adding up volumes would add too little water.
sums-volumes-grow = So weak a spirit and water take a little more room together than apart.
sums-at-20 = Measure at 20 °C, or weigh: warm spirit takes more room.

sums-sugar-to-add = sugar to add
sums-syrup-weighs = syrup, weighed
sums-syrup-measures = syrup, measured
sums-sweetness = sweetness
sums-sugar-in-100-ml = sugar in 100 ml
sums-water-activity = water activity
sums-sugar-held-back = Water holds no more sugar than 67 % at 20 °C, so the sum stops there: more would lie on the bottom.
sums-liquid-is-water = The liquid counts as water with sugar in it, and nothing else.

sums-dried = weighs when dried
sums-water-lost = water to drive off
sums-fresh-to-dried = fresh for each part dried
sums-solids = of it without any water
sums-stop-drying = Stop when the scale shows this weight, and not by the feel alone.

sums-volume = volume
sums-in-kitchen = { $kitchen }
sums-nearest-quarter = Spoons and cups are given to the nearest quarter; the millilitres are exact.
# $quarters chooses the plural, $written is the number: ½, 1, 1½.
sums-kitchen-teaspoon = { $quarters ->
    [1] { $written } teaspoon
    [2] { $written } teaspoon
    [3] { $written } teaspoon
    [4] { $written } teaspoon
   *[other] { $written } teaspoons
}
sums-kitchen-tablespoon = { $quarters ->
    [1] { $written } tablespoon
    [2] { $written } tablespoon
    [3] { $written } tablespoon
    [4] { $written } tablespoon
   *[other] { $written } tablespoons
}
sums-kitchen-fluid-ounce = { $quarters ->
    [1] { $written } fluid ounce
    [2] { $written } fluid ounce
    [3] { $written } fluid ounce
    [4] { $written } fluid ounce
   *[other] { $written } fluid ounces
}
sums-kitchen-gill = { $quarters ->
    [1] { $written } gill
    [2] { $written } gill
    [3] { $written } gill
    [4] { $written } gill
   *[other] { $written } gills
}
sums-kitchen-cup = { $quarters ->
    [1] { $written } cup
    [2] { $written } cup
    [3] { $written } cup
    [4] { $written } cup
   *[other] { $written } cups
}
sums-kitchen-pint = { $quarters ->
    [1] { $written } pint
    [2] { $written } pint
    [3] { $written } pint
    [4] { $written } pint
   *[other] { $written } pints
}
sums-kitchen-quart = { $quarters ->
    [1] { $written } quart
    [2] { $written } quart
    [3] { $written } quart
    [4] { $written } quart
   *[other] { $written } quarts
}
sums-kitchen-gallon = { $quarters ->
    [1] { $written } gallon
    [2] { $written } gallon
    [3] { $written } gallon
    [4] { $written } gallon
   *[other] { $written } gallons
}

### Small sums: outdoors

sums-sunrise = sunrise
sums-sunset = sunset
sums-dawn = light enough to see from
sums-dusk = light enough to see until
sums-noon = sun stands highest
sums-day-length = sunrise to sunset
sums-clock = { $time }
sums-clock-other-day = { $time } on { $day }
sums-sun-stays-above = the sun stays above
sums-sun-stays-below = the sun stays below
sums-sun-open-horizon = This is for an open horizon. Hills, trees and cloud take light away.

sums-walk-langmuir = allowing for the way down (Langmuir)
sums-walk-naismith = by distance and climb (Naismith)
sums-walk-tobler = by slope, on a path (Tobler)
sums-walk-off-path = by slope, off the path (Tobler)
sums-walk-along = along the map
sums-walk-up = up in all
sums-walk-slower = These are for a fit walker without a stop. A group goes at the pace of its slowest, and looks at plants: leave it far more time.
sums-hours = { $hours }{"\u00A0"}h { $minutes }{"\u00A0"}min
sums-minutes = { $minutes }{"\u00A0"}min

sums-degree-days-sine = the day as a sine
sums-degree-days-triangle = the day as a triangle
sums-degree-days-average = mean less base
sums-degree-days-modified = mean less base, both ends brought within
sums-degree-days-four-case = four cases of the weather services
sums-degree-days-methods = A threshold is worth something only with the method and the base it was found with.

sums-survey-total = in all
sums-survey-total-between = 19 such surveys in 20 hold the truth between
sums-survey-mean = in a plot
sums-survey-mean-between = and in a plot between
sums-between = { $low } and { $high }
sums-survey-below-zero = The doubt reaches below nothing. Draw more plots.
sums-survey-at-random = This holds only for plots drawn at random from the whole stand.

### Small sums: faults

sums-percent-of-what = “{ $written }” may be by volume or by mass. Write % vol or % mass.
fault-unit-does-not-fit = { $why }
    .want = An amount in a unit of the kind that is asked for.
    .mend = Write the amount with its unit, such as 500 ml, 480 g, 60 % vol, 12 °C.
fault-one-number-wanted = “{ $got }” is a range.
    .want = One number.
    .mend = Give one end, then the other, and see what each comes to.
fault-amount-not-above-zero = “{ $got }” is nothing, or less than nothing.
    .want = An amount above nothing.
    .mend = Give the amount that there is.
fault-unknown-time-zone = No time zone is called { $got }.
    .want = A name of the time zone database, such as Europe/Dublin or America/Halifax.
    .mend = Give continent and city, joined by a slash.
fault-day-out-of-time = No sun can be worked out for { $got }.
    .want = A day between the years −9999 and 9999, and not at their ends.
    .mend = Give another day.
fault-no-legs = No leg of the walk is given.
    .want = One leg or more.
    .mend = Give each stretch with its length, and with its climb where it climbs.
fault-no-days = No day is given.
    .want = The lowest and highest temperature of one day or more.
    .mend = Give each day as a range, such as 4 to 11 °C.
fault-cut-off-below-base = The cut-off, { $got }, does not lie above the base, { $base }.
    .want = A cut-off above the base.
    .mend = Put the two right, or leave the cut-off out.
fault-plot-out-of-range = Among the plots ({ $got }) is one that cannot be.
    .want = What was found in each plot: numbers from 0 up.
    .mend = Put the number right. A plot in which nothing was found counts as 0.
fault-too-few-plots = { $got } says nothing about how much plots differ.
    .want = Two plots or more; ten are better.
    .mend = Draw more plots at random.
fault-more-plots-than-all = { $plots } plots were drawn from { $got }.
    .want = As many plots in all as were drawn, or more.
    .mend = Give the number of plots that the whole stand has.
fault-unreadable-leg = “{ $got }” is no leg of a walk.
    .want = A length along the map, then up or down with a height, such as 1.2 km up 120 m.
    .mend = Write the leg like that. { $why }

fault-unreadable-amount = “{ $got }” is no amount: { $why }.
    .want = A number with its unit.
    .mend = Write it like 500 ml, 96 % vol, 1½ cups or 4 to 11 °C.
fault-no-such-day = “{ $got }” is no day.
    .want = A day of the calendar, as year, month and day.
    .mend = Write it like 2026-06-21.
fault-unreadable-position = “{ $got }” is no place.
    .want = Degrees north and degrees east, joined by a comma.
    .mend = Write it like 53.35,-6.26: below zero in the south and in the west.

### Files

fault-no-herbal-files = There is no herbal file in this folder.
    .want = A folder that holds species/, glossary/, sources/ or another folder of the herbal, with files in TOML.
    .mend = Give the folder above these.

fault-file-too-large = The file has { $got } bytes.
    .want = { $most } bytes at most.
    .mend = See whether it is the right file.
fault-not-utf-8 = The file is not text in UTF-8: { $got }
    .want = Text in UTF-8.
    .mend = Save the file as UTF-8.
fault-empty-file = The file holds nothing.
    .want = A file with something in it.
    .mend = Fill it, or take it out.
fault-unreadable-file = This cannot be read: { $got }
    .want = A folder or a file that can be read.
    .mend = See whether the name is right and whether you may read it.

### Outing files, table by table

fault-no-civil-moment = “{ $got }” is no day, and no moment of the clock on the wall.
    .want = A day, such as 2027-05-01, or a day with a time, such as 2027-05-01T10:30:00.
    .mend = Leave out what stands behind the time. A time alone stands in quotation marks.
fault-no-such-number = { $got } is no number to count with.
    .want = A finite number; a whole one of at most 18 digits.
    .mend = See whether the number is the right one.
fault-row-twice = The table “{ $got }” stands in these files twice, word for word.
    .want = Each table once.
    .mend = Take one of the two out.
