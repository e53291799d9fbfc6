# What comes after the day of an outing: on the plan, and in its calendar file.

### The plan

view-plan-due = What comes later
view-due-caption = What is to be done on which day
view-due-when = when
view-due-what = what
view-due-make = of
# $on, $until: the first and the last day for it.
view-due-on = { $on }
view-due-between = from { $on } to { $until }
view-due-by = by the end of { $on }
view-due-not-made = not made yet
view-due-counted = Days are counted from when a batch was made; of what is not made yet, from the day of the outing. How long something keeps is counted from the first day that it may be ready.

### What is to be done

due-add = put in what is missing
due-heat = put it on the fire
due-rest = set it to rest
due-strain = strain it
due-press = press it out
due-sweeten = stir in the sugar
due-dry = dry it
due-ready = it is ready
due-hand-out = hand it out, for the first time
due-discard = discard what is left

### What is open

# $make: what it is called; $on: the day it is wanted; $ready: the first day it can be ready.
plan-make-too-early = “{ $make }” is wanted on { $on }, and cannot be ready before { $ready }.
plan-settle-make-too-early = It is had on a later day, or something else is made.

### The calendar file

# $make: what it is called; $act: one of the acts above.
calendar-due = { $make }: { $act }
# $batch: its short name.
calendar-batch = Batch { $batch }.
calendar-not-made = Counted from the day of the outing; what is made on another day has other days.
calendar-until = The last day for it is { $until }.
# $stops: the places in order.
calendar-stops = Stops: { $stops }.
