# Labels of jars and bags, the slips that belong to them, and the sheet of a pot.

### The sheet of labels

view-labels-title = Labels
view-labels-none = There is nothing to label.
# $paper: A4 or letter; $size: millimetres.
view-labels-how = On { $paper } paper, { $columns } beside and { $rows } below each other, each { $size } mm. Print them as large as they are: at 100 %, not fitted to the page. The sheets of labels come last.
view-labels-check = Print one sheet on plain paper first and hold it against the labels.
view-labels-a4 = A4
view-labels-letter = letter
view-labels-code = Code of the label
view-labels-code-says = A square code that says { $code }.
view-labels-slips = What belongs to each label
view-labels-slips-says = A label has room for what weighs most. This is all of it, each once, however many jars there are.

### What must not be used

# $reasons: one or several.
label-do-not = Do not use: { $reasons }
label-not-determined = the plant is not determined
label-ruled-out = the plant is not what it was taken for
label-not-sorted = not sorted by two people
label-held = held, as something harmful was found
# $reason: what a decision found.
label-withheld = withheld from everybody ({ $reason })
label-withheld-short = withheld from everybody
label-not-made = nobody wrote down that it was made

### The lines of a label

label-unknown = not known
label-plant-unknown = Plant not known
label-rest = more
label-rest-says = see the slip
label-lot = lot
label-batch = batch
label-no-code = none yet
label-jar = jar { $copy } of { $of }
label-until = throw away
# $place: where it is kept; $kept: where and how long at most.
label-until-day = after { $day }; keep { $place }
label-until-hour = after { $day }, { $time }; keep { $place }
label-until-after = day not known. { $kept }
label-shelf-room = dark
label-shelf-cool = cool and dark
label-shelf-fridge = in the fridge
label-until-unknown = not known
label-what = this is
label-part-unknown = part not known
label-state-fresh = fresh herb
label-state-dried = dried herb
label-state-unknown = fresh or dried: not known
label-sorting = sorted
label-sorted-not = not sorted
label-sorted-by = by { $by }
label-sorted-on = by { $by } on { $day }
label-made = made
label-gathered = gathered
label-day = { $day }
label-strength = strength
label-sugar = { $sugar } of sugar
label-ratio = herb to spirit 1 : { $parts }
label-herb-in-one = { $herb } of herb, as weighed, in a serving
label-moisture = { $water } of water in the herb
label-moisture-supposed = { $water } of water in the herb, supposed: nobody weighed it
label-moisture-unknown = water in the herb not known
label-allergens = allergens
label-allergens-none = none of the 14 by the recipe
label-allergens-carried = { $carried }
label-allergens-unknown = not known of { $of }
label-allergens-and-unknown = { $carried }; not known of { $of }
label-allergens-of-all = what goes in
label-everybody = mind
label-not-for = not for
label-ask = ask first
label-cautions-unknown = no row read for it; not known
label-from = from
# $site: what it is called; $stand: a short name.
label-stand = { $site } ({ $stand })
label-law = in law
label-law-not-sold = not said whether food, remedy or cosmetic; not for sale
label-law-sold = not said whether food, remedy or cosmetic; not to be sold before that is settled
label-family = plant family

### The fourteen of Annex II of Regulation (EU) No 1169/2011

allergen-gluten = cereals with gluten
allergen-crustaceans = crustaceans
allergen-eggs = eggs
allergen-fish = fish
allergen-peanuts = peanuts
allergen-soybeans = soybeans
allergen-milk = milk
allergen-nuts = nuts
allergen-celery = celery
allergen-mustard = mustard
allergen-sesame = sesame
allergen-sulphites = sulphites
allergen-lupin = lupin
allergen-molluscs = molluscs

### Groups of people, in the fewest words

label-who-all = everybody
label-who-pregnant = pregnancy
label-who-breastfeeding = breast-feeding
label-who-under18 = under 18
label-who-under12 = under 12
label-who-under4 = under 4
label-who-under1 = under 12 months
# $years: an age.
label-who-under = { $years ->
    [1] under 12 months
   *[other] under { $years }
 }
label-who-salicylate = salicylate allergy
label-who-asteraceae = daisy-family allergy
label-who-apiaceae = celery, carrot or mugwort allergy
label-who-lamiaceae = mint-family allergy
label-who-birchpollen = birch-pollen allergy
label-who-anymedicine = any medicine
label-who-anticoagulant = blood thinners
label-who-heartmed = heart or pressure medicine
label-who-diuretic = water tablets, lithium
label-who-sedative = sedatives, alcohol
label-who-surgery = surgery ahead
label-who-heartdisease = heart failure
label-who-hypertension = high blood pressure
label-who-kidney = kidney disease
label-who-oxalatestones = oxalate stones
label-who-liver = liver disease
label-who-bileduct = bile-duct disease
label-who-gallstones = gallstones
label-who-ulcer = ulcer, gastritis
label-who-epilepsy = epilepsy
label-who-diabetes = diabetes
label-who-g6pd = G6PD deficiency
label-who-sun = strong sun ahead
label-who-alcoholdep = avoiding alcohol
label-who-driver = driving ahead
label-who-hormone = hormone-dependent illness
label-who-iron = iron deficiency

### Cautions at full length

# $who: a group of people.
label-caution-not-for = Not for: { $who }.
label-caution-ask = Ask first: { $who }.
label-caution-limit = Within limits: { $who }.
label-caution-note = To mind: { $who }.
label-caution-no-data = There is no data.
label-caution-days = { $days ->
    [one] At most 1 day at a time.
   *[other] At most { $days } days at a time.
 }

### The sheet of a pot

view-brew-title = { $name }
view-brew-of = { $part }, for { $outing } on { $day }
view-brew-herb = Before you begin
view-brew-state = the herb goes in
view-brew-fresh = fresh
view-brew-dried = dried
view-brew-moisture = moisture
view-brew-from = from
view-brew-lots = sorted
view-brew-equipment = at hand
view-brew-tool-scale = a scale that weighs grams
view-brew-tool-jug = a measuring jug
view-brew-tool-pot = a pot of steel or glass
view-brew-tool-lid = a lid or plate
view-brew-tool-jar = a clean jar with a lid
view-brew-tool-cloth = a sieve or cloth
view-brew-tool-clock = a clock
view-brew-tool-labels = the printed label
view-brew-steps = What is done
view-brew-tick = Tick what is done, one after the other
view-brew-step = step
view-brew-done-at = done at
view-brew-found = weighed or measured
view-brew-boiling = at 100 °C, or as hot as water boils there
view-brew-checks = What is checked
view-brew-weigh = Weigh or measure, and write it down
view-brew-check = what
view-brew-expected = expected
view-brew-check-herb = herb as it goes in
view-brew-check-yield = what comes out
view-brew-check-serving = one serving
view-brew-done = It is done when every step is ticked, what was found lies where it is expected, and the label is on. What lies outside: stop, and find out why before anybody has of it.
view-brew-keeping = How it keeps
view-brew-away = throw away
view-brew-cautions = Who must mind it
view-brew-no-cautions = No published row says for whom it is or is not. That clears nobody.
view-brew-label = What the label says

### Faults

# $sizes: those that are sold; $paper: a4 or letter.
fault-unreadable-label-size = “{ $got }” is no size of a label.
    .want = Width and height in millimetres, such as 63.5x38.1, below 1 m.
    .mend = Measure a label, or take one of { $sizes } on { $paper } paper.
# $next: the smallest size that would do.
fault-label-too-small = A label of { $got } mm is too small for what it must say in letters that can be read, with its code.
    .want = 50x25 mm and more.
    .mend = Take the next larger size, { $next }.
fault-label-larger-than-paper = A label of { $got } mm does not fit on { $paper } paper.
    .want = A label that is smaller than the paper.
    .mend = Take one of { $sizes }, or other paper.
fault-label-copies = { $got } copies of a label are not printed.
    .want = From 1 to { $most }.
    .mend = Print fewer, and the rest in a second run.
fault-no-such-label = Nothing to label is called { $got }.
    .want = One of { $known }, or the code of a lot or batch.
    .mend = Mend the name, or leave it out to print all.
fault-code-too-long = “{ $got }” is too long for a code.
    .want = Fewer letters.
    .mend = Give it a shorter name.
