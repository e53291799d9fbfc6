# Pages of single replies: what a plant is, what tells two apart, what may go, what is made, who may
# have it.

### What a plant is

view-name-is = Is it { $plant }?
view-name-what = What it could be
view-name-nothing = No plant of the table comes near what was seen.
view-name-determined = Determined
view-name-not-yet = Not yet
view-name-ruled-out = Ruled out
view-name-no-more-than-a-name = That gives the plant a name, and says nothing about who may have it.

# $harm: a word for how badly it can hurt.
view-name-harm = How badly it can hurt: { $harm }.

# $left, $allowed, $others-left: numbers, of harm times likelihood.
view-name-rivals = What is left of each rival: about { $left } of all together, and { $allowed } may be left.{ $others ->
    [0] {""}
   *[other] {" "}{ $others } more come to { $others-left }.
 }
view-name-could-be = it could still be
view-name-left = left
view-name-set-aside = what would set it aside

view-name-tells = What tells it from dangerous look-alikes
view-name-tells-says = Wanted against each: two things at different organs, one of them not smell
view-name-look-alike = look-alike
view-name-told-apart = told apart
view-name-told = yes
view-name-not-told = not yet
view-name-by = by what, and how many times likelier it is of the plant
# $character: its plain name; $times: a number.
view-name-tell = { $character } ({ $times } times)

view-name-telling = What would tell most of what it is
view-name-next = What to look at next
view-look-none = Nothing that can be seen today would settle more.
view-look-another = Somebody else must read it too, or a leader again, ten minutes later.
view-name-next-of = What would settle whether it is { $plant }
# $time: how long all of it takes.
view-name-next-says = { $count ->
    [one] One look, { $time }, settles it if the plant shows what it typically does:
   *[other] { $count } looks, { $time } in all, settle it if the plant shows what it typically does:
 }
# $typical: what the plant typically shows, in plain words.
view-name-offer = typically { $typical }; { $time }
view-name-glance = typically { $typical }; { $time }, at a glance with the others
view-name-again = To be read once more, by somebody else or by the leader ten minutes later, with the candidates hidden: { $characters }.
view-name-cannot-settle = Cannot be settled here today

# $verdict: determined, not yet or ruled out.
view-name-other = Is it { $plant }? { $verdict }
view-name-chances = What it could be
view-name-chances-says = This explains and does not decide: a harmful plant is set aside by rules, not by odds
view-name-chance = chance
view-name-none-of-these = none of these

# Asked step by step in a terminal.
view-ask-keys = Answer with a number, or with a length or a count. ? cannot tell, back takes the last answer back, quit is enough.
# $name: a character; $time: how long it takes.
view-ask = { $name } ({ $time }): { $how }
view-ask-settled = That is enough: nothing more is wanted.
view-ask-not-one = “{ $said }” is none of these.
view-ask-first = Nothing was answered before this.

### What may go

view-allowance-title = How much may be taken
view-allowance-none = No stand is asked for: a wish names stands, or a survey does.
# $stand: its short name; $part: in words; $plant: the scientific name.
view-allowance-stand = { $stand }: { $part } of { $plant }
view-allowance-may = may be taken
view-allowance-nothing = nothing
view-allowance-open = not settled: nothing is taken until it is
view-allowance-binds = because
view-allowance-site = at
view-allowance-wanted = wanted
view-allowance-today = taken today
view-allowance-rules-says = What the rules leave
view-allowance-clear-says = These do not stand in the way
view-allowance-clear-rules = { $count ->
    [one] 1 rule does not stand in the way
   *[other] { $count } rules do not stand in the way
 }
view-allowance-to-know = To know, and to check locally
view-allowance-rule = rule
view-allowance-leaves = leaves
view-allowance-says = says
view-allowance-question = an open question
view-allowance-clear = not in the way
view-allowance-law = law
view-allowance-protection = protection
view-allowance-leave = leave
view-allowance-hazard = what lies near
view-allowance-season = season
view-allowance-rest = rest
view-allowance-share = share
view-allowance-ceiling = limit

### What is made

view-make-open = What must be said first
view-make-title = { $name }, with { $state } herb
view-make-fresh = fresh
view-make-dried = dried
view-make-form = this is
view-make-yield = makes
view-make-handed = in servings
view-make-servings = { $count ->
    [one] 1 of { $size }
   *[other] { $count } of { $size }
 }
view-make-a-day = usually
view-make-times = { $count ->
    [one] once a day
   *[other] { $count } times a day
 }
# $middle: an amount; $range: its ends.
view-make-about = { $middle } ({ $range })
view-make-goes-in = What goes in
view-make-what = what
view-make-amount = amount
view-make-kitchen = in the kitchen, nearly
view-make-herb = herb
view-make-water = water
view-make-spirit = spirit
view-make-sugar = sugar
view-make-other = other food
view-make-pour = { $stock } from the bottle and { $water } of water
view-make-steps = What is done
view-make-strength = How strong it is
view-make-stands-for = herb as weighed, for 100 ml
view-make-solids = the same without its water
view-make-in-one = herb as weighed, for one serving
view-make-alcohol = alcohol
view-make-sugar-share = sugar
view-make-keeping = How it keeps
view-make-kept = kept
view-make-class = how well
view-make-why = because
view-make-lost = What does not come out
view-make-steam = water steamed or dried off
view-make-held = liquid that the spent herb keeps
view-make-spent = spent herb
view-make-set-aside = set aside before sweetening

### Who may have it

view-serving-title = Who may have what
view-pots-title = What is made
view-flags-title = Flags to take along
view-flags-none = Nobody’s answers are here, so that nothing can be flagged.
view-flags-caption = What each person may be handed; never why
view-flags-person = Person
view-flags-wish = Of what
view-flags-says = At most
view-flags-not = not handed
view-flags-most = { $count ->
    [one] one serving a day
   *[other] { $count } servings a day
  } { $days ->
    [one] on one day
   *[other] on { $days } days
  }
view-serving-nobody = Nothing is made, or nobody comes.
view-serving-caption = What may be handed to whom
view-serving-person = who
view-serving-not-for = –
view-serving-by-flag = , by a flag
view-serving-withhold = withhold
view-serving-ask-first = ask first
view-serving-at-most = at most what is planned
view-serving-at-most-within = at most { $bounds }
view-serving-no-reason = no reason found
view-serving-no-reason-within = no reason found, { $bounds }
view-serving-servings = { $count } a day
view-serving-days = { $count ->
    [one] for 1 day
   *[other] for { $count } days
 }
view-serving-confirmed = , { $by } stands for it
view-serving-had = ; had { $count }
view-serving-proposal = Each is a proposal until a named person stands for it. “No reason found” means none in these sources, at what is planned.
# $part: in words; $plant: scientific name; $count: servings a day.
view-serving-dish = { $name }: { $part } of { $plant }, { $count ->
    [one] 1 serving
   *[other] { $count } servings
 } a day
view-serving-count-no-reason-found = { $count } with no reason found to withhold it
view-serving-count-at-most = { $count } up to an amount
view-serving-count-ask-first = { $count } to ask first
view-serving-count-withhold = { $count } to withhold from
view-serving-instead = Nobody may have it. What else is planned: { $others }.
view-serving-why = Why
# $question: something nobody answered.
view-serving-unanswered = not answered: { $question }

### What tells two plants apart

view-compare-title = { $one } and { $other }
view-compare-harm = How badly each can hurt
view-compare-telling = What tells them apart
view-compare-telling-says = First what tells most for the time that it takes; told apart: with one plant of each side by side, how often what they show is four times likelier this way round than the other; then the months in which both can be seen
view-compare-remembered = What may tell them apart, from memory
view-compare-remembered-says = Known only from memory on one side or both: it settles nothing
view-compare-alike = What does not tell them apart
view-compare-alike-says = Both show the same, or nearly
view-compare-look-at = look at
view-compare-told = told apart
view-compare-misread = misread
# By a leader, by somebody trained, by anybody.
view-compare-misread-by = { $leader }, { $trained }, { $public }
view-compare-looks = What each look takes, and how often it is misread by a leader, by somebody who was shown it, and by anybody
view-compare-of-organ = { $character } ({ $organ })
view-compare-takes = takes
view-compare-takes-time = { $time }
view-compare-takes-more = { $time }; { $more }
view-compare-ruler = a ruler
view-compare-lens = a hand lens
view-compare-knife = a knife
view-compare-spade = a spade
view-compare-piece = spoils a piece
view-compare-stem = cuts a stem
view-compare-plant = digs the plant up
view-compare-shown-by = { $plant } shows it
view-compare-named = {" "}(named as a tell)
view-compare-mark = {" "}(from memory)
view-compare-now = now:
view-compare-all-year = all year
view-compare-never = not in the same months

### What tells a plant from all that it is taken for

# $common: its usual common name.
view-apart-title = What tells { $common } ({ $plant }) from what it is taken for
view-apart-title-month = What tells { $common } ({ $plant }) from what it is taken for, in { $month }
view-apart-plans = This plans what to look at, and determines nothing: whoever sees all of it as it should be has still to ask for the verdict on the plant in hand, trug name. Other plants that harm may grow there too.
view-apart-no-twins = No sheet names a plant that this one is taken for. That nobody wrote one down does not mean that there is none.
view-apart-open = Not told apart by two looks in which they are never alike
view-apart-section = The fewest looks
view-apart-rule = Two looks of different kinds, in which the two are never alike, tell it from each twin; where the twin harms, on two organs and not both by smell. What is only remembered tells nothing apart.
view-apart-looks = how many looks
view-apart-size = { $count ->
    [one] 1 look
   *[other] { $count } looks
}
view-apart-fewest = are these the fewest
view-apart-proved = { $count ->
    [one] yes, proved: fewer do not do it, nor does any other set as small
   *[other] yes, proved: fewer do not do it; { $count } sets as small do
}
view-apart-proved-not-counted = yes, proved: fewer do not do it; not all sets as small were counted
view-apart-bound = not proved: it takes { $least } looks at least
view-apart-time = how long
view-apart-time-proved = { $time }, the quickest of these sets
view-apart-time-found = { $time }, the quickest set that was found; there may be a quicker one
view-apart-against = told from
view-apart-named = { $count ->
    [one] 1 plant, which a sheet names as a look-alike
   *[other] { $count } plants, all that a sheet names as look-alikes
}
# $region: where in the world.
view-apart-region = { $count } plants: look-alikes, and whatever harms in { $region }
view-apart-when = when
view-apart-in-month = by what it shows in { $month }
view-apart-any-month = no month was said: some of it may not be there yet, or no more
view-apart-reader = readers
view-apart-looks-says = The quickest set: what each look takes, how often it is misread by a leader, by somebody who was shown it, and by anybody, and how many twins it tells apart
view-apart-tells = tells from
# $told: so many of $of twins.
view-apart-so-many = { $told } of { $of }
view-apart-twins-says = Each twin, and which of these looks tell it apart
view-apart-twin = not to be taken for
view-apart-by = told by
view-apart-by-nothing = nothing
view-apart-by-only = only { $characters }: not enough
view-apart-shows = What to see
# $plants: one plant or several.
view-apart-plants = { $plants }
view-apart-others = Other sets of as few looks, the next quickest first
view-apart-other = { $time }: { $characters }
view-apart-more = { $count } more
view-apart-never = nothing always tells it apart.
view-apart-no-sheet = it has no sheet, so nothing is known that tells it apart; it counts as deadly.
view-apart-once = only one look always tells it apart: { $characters }.
view-apart-one-group = only looks of one kind always tell it apart: { $characters }.
view-apart-one-organ = only looks at one organ, or smells, always tell it apart: { $characters }.
view-apart-mostly = mostly, but now and then they are alike: { $characters }
view-apart-not-now = in other months also: { $characters }
view-apart-remembered = known only from memory: { $characters }
view-apart-misread = misread too often by these readers: { $characters }
view-apart-empty = written down of one of the two and not of the other: { $characters }

### A key to print

view-key-title = A key to { $count } plants
view-key-title-month = A key to { $count } plants in { $month }
view-key-teaches = A key teaches and does not determine. It leads to a name, and one wrong reading leads to another name. Whether it is the plant, only the verdict on the plant in hand says: trug name.
view-key-not-listed = A plant that is not in the list ends at a name of the list too, or nowhere. Where no line of a number fits, stop: something was misread, or it is none of these.
view-key-plants = The plants of this key
view-key-plants-says = Whatever else grows there is not in it
view-key-missing = Dangerous plants that are taken for one of these, and that this key does not hold
# $name: what it is called; $harm: a word for how badly it can hurt; $plants: of the key.
view-key-missing-name = { $name }
view-key-missing-twin = { $name } — { $harm }; taken for { $plants }
view-key-worth = What the key is worth
view-key-looks = read on average
view-key-looks-says = { $looks ->
    [one] 1 number
   *[other] { $looks-said } numbers
 }
view-key-time = time on average
view-key-time-says = { $time }
view-key-shortest = is it the quickest
view-key-proved = yes: no key by { $signs } takes less time on average
view-key-bound = not proved: no key by { $signs } takes less than { $time } on average
view-key-all-signs = the signs that were read of these plants
view-key-some-signs = the { $tried } signs that were tried, of { $of }
view-key-month = when
view-key-any-month = no month was said: a number may ask for what is not there yet, or no more
view-key-in-month = only what can be seen in { $month } is asked for
view-key-readers = How often somebody ends at a wrong name
view-key-readers-says = If every plant is met equally often, and its signs vary and are misread one by one
view-key-reader = reader
view-key-reader-leader = leader
view-key-reader-trained = trained
view-key-reader-public = anybody
view-key-reader-own = misreads { $share }
view-key-wrong = another name
view-key-stopped = no line fits
view-key-worst = most often wrong
view-key-dangerous = harmful, and named as a milder one
view-key-nobody = –
# $share: in per cent.
view-key-worst-says = { $plant }: { $share }
view-key-key = The key
view-key-couplet = { $number }. { $character }
view-key-couplet-from = { $number }. { $character } (from { $from })
view-key-up-to = up to { $high }
view-key-over = more than { $low }
view-key-between = more than { $low }, up to { $high }
view-key-count-up-to = { $high ->
    [0] none
   *[other] up to { $high }
 }
view-key-count-over = { $low } or more
view-key-count-between = { $low } to { $high }
view-key-go-to = go to { $number }
view-key-end = { $common } ({ $name })
view-key-end-harm = harm: { $harm }
view-key-together = This key does not tell these apart:
view-key-nothing-tells = Nothing that was read of these plants tells any two of them apart.
# $plant: the name that the key gives.
view-key-check = Before you go on with { $plant }, look also at:
view-key-check-here = in { $plant } { $says }
# $plants: one or several.
view-key-check-deadly = ; in the deadly { $plants } { $says }
view-key-check-harmful = ; in the poisonous { $plants } { $says }
view-key-open-never = Nothing that was read tells { $plant } from { $plants }: this key does not settle it.
view-key-open-once = Only one sign that was read tells { $plant } from { $plants }: this key does not settle it.
view-key-how = How to look
view-key-each = Each plant, as this reader would name it: { $reader }
view-key-each-says = How often it ends where
view-key-right = its own name
view-key-harmless = a milder one’s name
view-key-herbal = Herbal { $herbal }

### A basket that is sorted

sort-title = Sorting a basket of { $count } { $count ->
    [one] piece
   *[other] pieces
 }
sort-title-plant = Sorting { $plant }, { $part }: { $count } { $count ->
    [one] piece
   *[other] pieces
 }
sort-rule = A lot is sorted once two people, each by name, have looked at every piece and found nothing that can hurt. Until then it is not used.
sort-rule-kept = This plan keeps the rule of the house. It lowers what may stay in; it does not take it to nothing.
sort-not-enough = This is not enough. The lot stays unsorted, whatever is found:
sort-one-person = One person looks. Two who share the basket out between them are one person too: each piece is seen once.
sort-not-named = Not everybody who looks is named. Say who.
sort-not-every-piece = { $count ->
    [one] 1 piece is seen by nobody.
   *[other] { $count } pieces are seen by nobody.
 }
sort-comes-to = What it comes to
sort-wrong = wrong pieces supposed in it
sort-none-wrong = none
sort-so-many = { $count } of { $of }
sort-seen = pieces looked at
sort-every-piece = every piece
sort-sorter = sorter
sort-somebody = somebody
# $reader: leader, trained, anybody; $misses: in per cent.
sort-reads = { $reader }: misses { $misses } of wrong pieces
sort-planted = { $reader }, missed { $missed } of { $of } that were planted: may miss up to { $misses } of wrong pieces
sort-both-miss = all who sort miss one that they look at
sort-stays = at least one wrong piece stays in
sort-unnoticed = nothing is found although something is in it
sort-left = wrong pieces left, on average
sort-at-best = the same if nothing is overlooked and nobody errs as the other does
sort-last-net = Sorting is the last net and not the first. What keeps wrong pieces out is to pick piece by piece, each one looked at before it goes into the basket.
sort-sample = Why a sample will not do
# $count: pieces in the basket.
sort-tenth = Take one wrong piece among { $count }. Whoever looks at a tenth of the basket does not even meet it, 9 times in 10 or more, however good the eye. Whoever looks at half of it does not meet it every second time.
# $count: wrong pieces; $of: all.
sort-figure = How likely a wrong piece stays in, { $count } of { $of } being wrong
sort-figure-up = a wrong piece stays in, in %
sort-figure-across = how much of it is looked at, in %
sort-figure-one = one person looks
sort-figure-all = two or more look, each alone
# $one, $all: in per cent.
sort-figure-describes = Both lines begin at 100 % where nothing is looked at. They are lowest where every piece is looked at: { $one } with one person, { $all } with two.
sort-figure-numbers = The numbers of the drawing: how likely a wrong piece stays in
sort-figure-share = looked at
# $count: pieces in the basket.
sort-samples = How many of the { $count } had to be looked at to have a wrong piece among them
sort-samples-wrong = wrong pieces in it
sort-samples-surely = { $surely } surely
sort-so-every-piece = Nobody knows how many are in it. A sample that is to meet a single one is nearly all of the basket; and what it does not meet goes into the pot. So every piece is looked at.
sort-how = How it is done
sort-step-count = Count the pieces as you lay them out. The number goes onto the sheet.
sort-step-pattern = Lay a piece of the plant that was determined today beside the tray. Each piece is held against it.
sort-step-tray = Work tray by tray, one layer deep, in daylight. Rest after each tray.
# $count: pieces.
sort-step-tray-of = Work tray by tray, one layer deep, in daylight: { $count } pieces a tray at most. Rest after each tray.
sort-step-piece = Take up every piece, alone, and turn it over. Say the sign that you look for. Nothing is passed in bundles.
sort-step-doubt = What is not the plant comes out. What you are not sure of comes out too.
sort-step-second = Then the second person does the same with every piece, alone, without having watched the first or been told what they found.
sort-step-plant = Before each round somebody else plants harmless pieces of another plant, and counts them. Count them out again: how many come out says how well you see, and what is met now and then is overlooked less. If one is missing, the round does not count until it is found.
sort-step-write = Write down who looked, how many pieces, and what came out.
sort-look = What each piece is looked at for
sort-look-says = The quickest signs on a piece that tell each dangerous look-alike twice, as far as there are so many. A smell stays on the fingers and is not counted.
sort-look-sign = look at
sort-look-from = tells it from
sort-look-time = takes
sort-look-must = {" "}(its sheet asks for it)
# $plants: one or several.
sort-look-tells = { $plants }
# $piece: one piece; $each: one person, all pieces; $trays: how many.
sort-time = That takes { $piece } a piece, so { $each } for each person, in { $trays } { $trays ->
    [one] tray
   *[other] trays
 }.
sort-untold = Nothing that was read tells a piece of this plant from { $plants }. No sorting finds it: whether it is there is settled on the growing plant, or the lot is not used.
sort-told-once = One sign alone tells a piece of this plant from { $plants }. Whoever misreads it misses it.
# $count: wrong pieces supposed.
sort-twins = How likely it stays in, if the wrong { $count ->
    [one] piece is
   *[other] pieces are
 } of this plant
sort-twin = look-alike
sort-twin-signs = told by
sort-twin-nothing = nothing on a piece
sort-twin-stays = stays in
sort-find = If something is found
sort-find-says = How likely more is left in a basket like any other, after these sorters looked at every piece
sort-find-found = wrong pieces found
sort-find-left = more are left
sort-find-again = still, after a second round found nothing
sort-numbers = Where the numbers come from
sort-from-exact = The chances are exact: pieces are looked at without putting back, as in inspection with acceptance number zero (hypergeometric distribution). Checked against Cannon & Roe 1982 and the rule of three of Hanley & Lippman-Hand 1983, JAMA 249:1743.
sort-from-reading = How often a sign is misread: leader 4 % (Sneath 1974, IJSB 24:508), trained 10 % (between the two), anybody 21 % (Wäldchen et al. 2022, People and Nature 4:1603); of leaves a quarter more (direction published, size policy).
# $share: in per cent.
sort-from-rare = { $share } of wrong pieces are not noticed at all: of targets that are rare 30 to 40 % are missed, even by people who are made to go slowly (Kunar, Rich & Wolfe 2010, Visual Cognition 18:881). That was measured on letters on a screen; that it holds for a basket is policy.
sort-from-shared = In { $share } of cases both miss together: policy, on the careful side. Errors in simple searches were found to be mostly a matter of chance (Wolfe et al. 2024, Attention, Perception & Psychophysics).
sort-from-trial = A trial with planted pieces takes the place of that share: the most that it leaves possible, the upper 95 % bound of Clopper & Pearson 1934, Biometrika 26:404. What is planted is no look-alike, so misreading is added all the same.
# $share, $deadly: in per cent.
sort-from-baskets = { $share } of baskets hold something poisonous, up to { $deadly } something deadly: of mushrooms, by the Swiss inspectors (swissinfo.ch 43646088). Of plants nothing measured was found.
sort-from-followed = Where one wrong piece is, another follows in { $share } of cases: policy. Nothing measured was found.
sort-from-tray = A tray takes { $time } at most: policy.

fault-unreadable-sorter = “{ $got }” does not say who sorts and how well.
    .want = A name, alone or with =leader, =trained, =public or =5 %; behind a comma, of a trial with planted pieces, 1/20 for 1 missed of 20.
    .mend = Write it like Ida=trained or Ida=trained,1/20.

### Files and arguments

fault-no-such-month-number = “{ $got }” is no month.
    .want = A number from 1 for January to 12 for December.
    .mend = Write it like 5.

fault-include-missing = A file that it includes is not there: { $got }
    .want = Every file that is included, named as seen from the file that includes it.
    .mend = Put the file there, mend its name, or take it out of include.
fault-includes-itself = { $got } includes itself, by way of { $chain }.
    .want = Files that include others, and none that leads back to itself.
    .mend = Take out the include that closes the ring.
fault-unreadable-start = “{ $got }” is no random start.
    .want = A whole number from 0 up.
    .mend = Write it like 7.
fault-unreadable-level = “{ $got }” says nothing of how well somebody reads.
    .want = leader, trained, public, or the share that is misread, up to one half.
    .mend = Write it like trained, 5 % or 0.05.
fault-unreadable-pair = “{ $got }” does not say what was seen of which character.
    .want = A character and what was seen of it, joined by =.
    .mend = Write it like leaf_base=petiolate. ? means that it cannot be told, not-there that there is none.
fault-folder-not-ours = { $got } is no folder that pages can take the place of.
    .want = A folder that is not there yet, or one that holds nothing but pages.
    .mend = Name another folder: what stands there would be lost.
