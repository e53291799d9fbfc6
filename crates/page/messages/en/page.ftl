# The machinery of pages: dates, lists, amounts, notices, workings, faults.
#
# In every file: an amount $x is written with its unit, rounded to the nearest. It comes also as
# $x-down (for limits and allowances) and $x-up (for loads held against a limit).

### Sentences around numbers

# $day, $month, $year: already words.
day = { $day }{"\u00A0"}{ $month } { $year }
day-month-first = { $month }{"\u00A0"}{ $day }, { $year }
day-year-first = { $year } { $month }{"\u00A0"}{ $day }
month-1 = January
month-2 = February
month-3 = March
month-4 = April
month-5 = May
month-6 = June
month-7 = July
month-8 = August
month-9 = September
month-10 = October
month-11 = November
month-12 = December
# One or two letters each, for a strip of twelve boxes.
month-short-1 = J
month-short-2 = F
month-short-3 = M
month-short-4 = A
month-short-5 = M
month-short-6 = J
month-short-7 = J
month-short-8 = A
month-short-9 = S
month-short-10 = O
month-short-11 = N
month-short-12 = D

list-last = { $before } and { $last }
list-none = none
range = { $low } to { $high }
# $other: the same amount in the measures that the reader is used to.
beside = { $amount } ({ $other })
months-between = { $first } to { $last }
months-none = in no month

# $middle, $low, $high: amounts. The ends are the 5th and the 95th percentile.
spread = about { $middle }; 9 in 10 lie between { $low } and { $high }
spread-exact = { $middle }
# $many in $of, such as 19 in 20; $things, such as batches.
stays-below = { $many } { $things } in { $of } stay below { $amount-up }
stays-above = { $many } { $things } in { $of } stay above { $amount-down }
share-below = { $many } in { $of } stay below { $amount-up }
unknown = not known

### Units that are said in words. $number is written already, $shown chooses the plural.

unit-day = { $shown ->
    [one] { $number }{"\u00A0"}day
   *[other] { $number }{"\u00A0"}days
 }
unit-year = { $shown ->
    [one] { $number }{"\u00A0"}year
   *[other] { $number }{"\u00A0"}years
 }
unit-week = { $shown ->
    [one] { $number }{"\u00A0"}week
   *[other] { $number }{"\u00A0"}weeks
 }
unit-hour = { $shown ->
    [one] { $number }{"\u00A0"}hour
   *[other] { $number }{"\u00A0"}hours
 }
unit-minute = { $shown ->
    [one] { $number }{"\u00A0"}minute
   *[other] { $number }{"\u00A0"}minutes
 }
unit-second = { $shown ->
    [one] { $number }{"\u00A0"}second
   *[other] { $number }{"\u00A0"}seconds
 }
unit-mile = { $shown ->
    [one] { $number }{"\u00A0"}mile
   *[other] { $number }{"\u00A0"}miles
 }
unit-acre = { $shown ->
    [one] { $number }{"\u00A0"}acre
   *[other] { $number }{"\u00A0"}acres
 }
unit-fluid-ounce = { $number }{"\u00A0"}fl{"\u00A0"}oz
unit-cup = { $shown ->
    [one] { $number }{"\u00A0"}cup
   *[other] { $number }{"\u00A0"}cups
 }
unit-pint = { $shown ->
    [one] { $number }{"\u00A0"}pint
   *[other] { $number }{"\u00A0"}pints
 }
unit-quart = { $shown ->
    [one] { $number }{"\u00A0"}quart
   *[other] { $number }{"\u00A0"}quarts
 }
unit-percent = { $number }{"\u00A0"}%
unit-percent-mass = { $number }{"\u00A0"}% by mass
unit-gram-per-day = { $number }{"\u00A0"}g a day
unit-milligram-per-day = { $number }{"\u00A0"}mg a day
unit-microgram-per-day = { $number }{"\u00A0"}µg a day
unit-milligram-per-body = { $number }{"\u00A0"}mg for each kg of body weight
unit-microgram-per-body = { $number }{"\u00A0"}µg for each kg of body weight
unit-milligram-per-body-day = { $number }{"\u00A0"}mg a day for each kg of body weight
unit-microgram-per-body-day = { $number }{"\u00A0"}µg a day for each kg of body weight

### Drawings

ruler-title = A ruler in centimetres
ruler-describes = Lines one millimetre apart, numbered in centimetres, for paper.
ruler-check = Centimetres. Hold a real ruler against it before you measure: printers may scale a page.

### Notices and the frame of a page

notice-question = Open question
notice-caution = Caution
notice-do-not = Do not
page-skip = Skip to the content
page-sealed = For the leader only. It holds what people said about their health: do not copy it, and do not leave it lying about.
refusal-settle = What would settle it: { $settle }

### Workings

working-open = How { $what } came about
working-input = written in { $place }
working-assumed = supposed: { $why }

### Places and faults

place-file = { $file }
place-file-line = { $file }:{ $line }:{ $column }
place-entry = { $table } { $entry }
place-unknown = the input
said-fault = { $place }: { $fault }
said-want = Wanted: { $want }
said-mend = To mend it: { $mend }

fault-unknown-page = There is no page called { $got }.
    .want = One of these, or how several of them begin: { $known }.
    .mend = Write one of these names, or leave --pages out for all of them.
fault-page-does-not-fit = "{ $got }" does not fit on its one side of paper.
    .want = So few words that they can be read at 7 points, in large print at 11.
    .mend = Say less in what the page is made from: fewer stops, shorter names.
fault-page-not-set = The page could not be set: { $got }.
    .want = A page that the typesetter takes.
    .mend = This is a mistake of the program: tell those who look after it, and send them the outing file.
