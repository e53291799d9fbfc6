# The leader's day on paper: emergency card, turning back, weather, run sheet, sealed list.

### The outing file

fault-no-such-phone = “{ $got }” is no telephone number.
    .want = Digits with gaps between them, and at most a + before them: 2 to 15 digits.
    .mend = Write the number as it is dialled.
fault-no-such-pace = “{ $got }” is no distance that a led group goes in an hour.
    .want = From 0.5 km to 5 km, on the level.
    .mend = Take what the slowest goes.
fault-table-twice = The table “{ $got }” stands in these files twice.
    .want = One such table in all files together.
    .mend = Keep one of them.
fault-day-twice = { $got } is listed twice.
    .want = One row of each name.
    .mend = Take one out, or give it another name.

### What is open

plan-no-first-aider = Nobody is named who gives first aid.
plan-settle-first-aider = Somebody who has learnt it is named.
# $kind: whom the number reaches; $called: what they are called; $day: when it was looked up.
plan-number-missing = No number is given for { $kind }.
plan-number-unsourced = It is not said where and when the number of { $called } was looked up.
plan-number-old = The number of { $called } was last looked up on { $day }; how old it may be is a rule of this house, without a source.
plan-settle-look-up = It is looked up now, at its own page, and written down with that page and the day.
plan-reaches-emergency = the emergency services
plan-reaches-poison-information = poison information
plan-reaches-other = others
# $gaps: a list of what nobody said.
plan-card-gaps = The emergency card does not say { $gaps }.
plan-settle-card-gaps = It is written into the outing, or by hand on every copy of the card.
plan-gap-base = who stays at base
plan-gap-alarm = when base raises the alarm
plan-gap-meeting = where everybody meets
plan-gap-second-way = how to call where the first way fails
plan-gap-deputy = who leads if the leader cannot
plan-no-place = Where { $site } lies is not said: whoever comes to help needs a grid reference or coordinates.
plan-no-road = The road nearest to { $site } is not said.
plan-settle-place = It is looked up on a map and written down with the site.
plan-no-daylight = The sun does not rise that day: by what time to be back is not known.
plan-settle-no-daylight = The leader decides by what light the group walks, and notes it.
plan-no-way-back = The way back from { $site } is not known, and so neither is when to turn back.
plan-settle-way-back = The table “way-back” says how far it is, and how the group gets back if it turns early.
plan-way-back-too-long = The way back takes longer than there is time on that day.
plan-settle-way-back-too-long = The outing ends later, or goes less far.
view-plan-about-emergency = Can help be called?
view-plan-about-way-back = When to turn back?
view-plan-too-late = past the latest time to leave

### The emergency card

view-card-title = Emergency: { $name }
view-card-base-title = Copy at base: { $name }
view-card-call = Call
view-card-look-up = look up now
# $called, $number: the number that is too old.
view-card-old = was { $number } on { $day }
view-card-none = none was given
view-card-source = { $source }, { $day }
view-card-unsourced = { $number }, source or day not noted
view-card-say = Say
view-card-keep = Keep
view-card-where = Where
view-card-more = { $count ->
    [one] and 1 more stop: see the run sheet
   *[other] and { $count } more stops: see the run sheet
 }
view-card-leads = leads
view-card-deputy = leads if the leader cannot
view-card-first-aider = first aid
view-card-base = at base
view-card-overdue = overdue
# $day, $time: when base raises the alarm.
view-card-alarm = base raises the alarm at { $time }, { $day }
view-card-meeting = meet at
view-card-second-way = second way to call
view-card-heads = Heads counted
view-card-time = time
view-card-heads-at = where
view-card-heads-how-many = heads
view-card-start = start
view-card-end = end
view-card-no-treatment = Whoever answers says what is done. Until then: call, say, keep.
view-card-base-do = At that time, when the group is neither back nor heard of: call, and read out where the stops are.
view-card-heard = last heard of them
# $latitude, $longitude: degrees without their sign; $north, $east: on which side.
view-card-degrees = { $latitude }° { $north }, { $longitude }° { $east }
view-card-north = north
view-card-south = south
view-card-east = east
view-card-west = west

### Turning back

view-day-leave-by = leave by
view-day-not-known = not known
view-day-back-by-end = Back at the end of the outing, { $time }, at the latest. “Leave by” is the last moment for that, at { $pace } in an hour and a minute more for each 10 m up or down.
view-day-back-by-sunset = Back by { $time }, in the light, at the latest; how long before sunset is a rule of this house, without a source. “Leave by” is the last moment for that, at { $pace } in an hour and a minute more for each 10 m up or down.
view-day-back-by-open = By what time to be back is not known.

### The run sheet

view-run-glance = The day at a glance
view-run-rules = Weather, water, ticks

view-run-twice = twice


view-run-dish = dish
view-run-herb = herb
view-run-servings = servings
view-run-nobody = withheld: not handed out
view-run-open = open: see above
view-run-plan-sources = Sources of what stands here; the plan has them all

### The sealed list

view-sealed-outside = Sealed: { $name }
view-sealed-band = Sealed
view-sealed-sheets = { $count ->
    [one] 1 sheet inside, more where it runs over
   *[other] { $count } sheets inside, more where one runs over
 }
view-sealed-opens = May open this sheet: { $leader }. In an emergency: { $aider }.
view-sealed-opens-alone = May open this sheet: { $leader }, and in an emergency whoever gives first aid, who is not named yet.
view-sealed-destroy = Kept until { $day }, then destroyed.
view-sealed-destroy-open = Kept until 30 days after the date on the last jar, then destroyed:
view-sealed-fold = ▲ fold the lower edge up to this line, and the upper one down over it ▲
