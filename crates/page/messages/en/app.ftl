# The app: what its screens say besides the pages they show.

app-home = The school
app-herbal = The herbal
app-herbal-words = A name, or part of one
app-herbal-look = Look it up
app-herbal-found = { $count ->
    [0] No plant is called so.
    [one] One plant.
   *[other] { $count } plants.
 }
app-compare = Side by side
app-compare-with = Hold it against what it is taken for:
app-nowhere = Nothing lies here
app-nowhere-says = This address leads to no screen:
app-not-understood = This could not be answered
app-name = trug
app-about = Which plant it is, what may be taken, what is made of it, and who may have it.
app-starting = The program and the herbal are being fetched. After this first time they are kept on this device.
app-no-script = This needs scripts, which are turned off in this browser. The command line does the same without one.
app-newer = A newer version of this program is here. It waits until you ask for it.
app-renew = Change to the newer version
app-not-kept = This address is neither https nor this device itself, so the browser keeps nothing of it: without a network it will not start. Open it on the device that serves it, or put the exported folder on any web space that has https.
app-not-started = The program did not start
app-not-started-says = Its files could not be fetched or read. Load this page again; with a network, if it was the first time.
app-not-kept-now = This was not kept
app-not-kept-now-says = The browser had no room for it, or would not write. What you filled in still stands below. Make room on this device, then do it again.
app-held = What is written down here stays until somebody deletes it.
app-not-held = The browser may throw away what is written down here when the device is full. Save the records of each outing.
app-emergency = Emergency
app-emergency-says = No outing of today, or more than one, is on this device. The card of each outing:
app-hand = Held in
app-hand-right = the right hand
app-hand-left = the left hand
app-choices = Looks, hand, measures and dates
app-looks = Looks
app-looks-day = by day
app-looks-dusk = at dusk
app-looks-contrast = high contrast
app-measures = Measures
app-measures-metric = metric
app-measures-us = metric and US
app-measures-imperial = metric and imperial
app-dates = Dates
app-dates-day-month-year = 2 May 2027
app-dates-month-day-year = May 2, 2027
app-dates-year-month-day = 2027 May 2
fault-app-not-built = This program was built without the app.
    .want = A program that was built together with the app.
    .mend = Where the sources lie: cargo xtask app. It builds both and serves the app.
fault-folder-not-an-app = { $got } is no folder that the app can take the place of.
    .want = A folder that is not there yet, an empty one, or one that the app was written into before.
    .mend = Name another folder: what stands there would be lost.
app-harm = harm:
app-day = { $day }
app-moment = { $day }, { $time }
app-outings = Outings
app-outings-found = { $count ->
    [0] None is kept on this device yet.
    [one] One is kept on this device.
   *[other] { $count } are kept on this device.
 }
app-days-until = { $count ->
    [0] (today)
    [one] (tomorrow)
   *[other] (in { $count } days)
 }
app-days-ago = { $count ->
    [one] (yesterday)
   *[other] ({ $count } days ago)
 }
# $now: what the clock says; $latest: when something was written down last.
app-clock-behind = The clock of this device says { $now }. Something was written down on { $latest } already. If the clock is wrong, set it: verdicts, permissions and how long something keeps go by it.
app-outing-unnamed = An outing without a name
app-take-in = Take in an outing
app-take-in-says = Choose an outing file together with the files that it includes, or the records that another device saved. What people said of their health is left out: it does not go afield.
app-take-in-do = Take it in
app-plan = The plan, what is open first
app-pages = Pages for paper
app-print = Print this page
app-as-pdf = As PDF
app-to-fold = to fold for a wallet
app-as-pdf-of = As PDF: { $page }
app-no-passphrase = A passphrase does not work at this address
app-no-passphrase-says = Browsers lock things up only at a secure address: one that begins with https, or that lies on this device itself. Open the app there to write down answers.
app-no-pdf = No PDF was made
app-no-pdf-says = PDFs are made by the program trug on this computer, and it does not answer. Start it again with trug app, then tap once more. Without it, a page can be printed from the browser.
app-hand-out = Give it to another device
app-hand-out-says = The outing file holds what stands now. The records hold every change, too.
app-unsaved = { $count ->
    [0] Every record of this device was handed out. Look whether the file is where you want it.
    [one] One record lies on this device alone.
   *[other] { $count } records lie on this device alone.
 }
app-outing-file = Save the outing file
app-records = Save the records
fault-app-no-file = No file was chosen.
    .want = An outing file, with those that it includes.
    .mend = Choose it, then take it in.

# Outings that are filled in.

app-new = Begin an outing
app-journal = What was written down
app-journal-says = Nothing is ever rubbed out. What was taken back can be brought back.
app-take-back = Take this back
app-bring-back = Bring it back
app-taken-back = taken back
app-took-back = Taken back:
app-taken-out = Taken out
app-and-more = { $count ->
    [one] one more
   *[other] { $count } more
 }
app-unread = An outing that cannot be read
app-unread-says = A line of its records is broken. Nothing is worked out from the others, because what that line said might have held something up. Save the records, and take them in from a device that has them whole.
app-add = Add one
app-keep = Keep it
app-take-out = Take it out
app-may = may be left out
app-choose = choose
app-yes = yes
app-no = no
app-not-known = not known
app-none-yet = There is none to choose yet.
app-wrong = Not kept:
app-wrong-head = This was not kept yet
app-not-worked-out = This could not be worked out
app-tables = What is written down
app-table-outing = The outing itself
app-table-emergency = If something happens
app-table-number = Numbers to call
app-table-way-back = The way back
app-table-reader = Who reads plants
app-table-site = Places
app-table-permission = Permissions
app-table-stand = Stands
app-table-stop = Stops on the way
app-table-survey = Counts and weights of plots
app-table-weighing = What was weighed
app-table-confirmation = Who stands for a decision
app-table-make = What is made
app-table-participant = Who comes
app-table-take = What was gathered
app-table-lot = Lots
app-table-sorting = Sortings
app-table-batch = Batches
app-table-serving = What was handed out
app-row-outing = The outing
app-row-emergency = If something happens
app-row-number = A number to call
app-row-way-back = The way back
app-row-reader = Somebody who reads plants
app-row-site = A place
app-row-permission = A permission
app-row-stand = A stand
app-row-survey = A survey
app-row-weighing = A weighing
app-row-confirmation = A confirmation
app-row-stop = A stop
app-row-make = Something to make
app-row-flag = A flag
app-row-participant = Somebody who comes
app-row-take = Something gathered
app-row-lot = A lot
app-row-sorting = A sorting
app-row-batch = A batch
app-row-serving = Something handed out
app-field-name = What it is called
app-field-called = What it is called
app-field-reader-called = Name
app-field-participant-called = Name
app-field-date = Day
app-field-from = From
app-field-to = Until
app-field-leader = Who leads
app-field-region = Region
app-field-purpose = What it is for
app-field-zone = Time zone
app-field-kitchen = Whose spoons and cups
app-field-records-since = Every take has been written down since
app-field-latitude = Latitude, for the hour of sunset
app-field-longitude = Longitude
app-field-first-aider = Who gives first aid
app-field-deputy = Who leads if the leader cannot
app-field-base = Who stays at base
app-field-overdue-after = How long after the end the alarm is raised
app-field-meeting-point = Where everybody meets
app-field-second-way = How to call where the first way fails
app-field-number-what = Whom it reaches
app-field-number-called = What they are called
app-field-number = The number, as it is dialled
app-field-source = Where it was found
app-field-looked-up = Looked up on
app-field-way-back-walk = How far it is from the last stop to the end
app-field-early = How the group gets back that turns early
app-field-in-an-hour = How far the group goes in an hour
app-field-before-sunset = How long before sunset it is back
app-early-same-way = the way it came
app-early-onward = on through the other stops
app-field-level = How well they read
app-field-landholder = Whose land it is
app-field-land = What kind of land
app-field-jurisdiction = Whose law holds there
app-field-grid = Grid reference
app-field-road = Nearest road
app-field-way-in = How help gets in
app-field-public-right = Is there a public right to gather?
app-field-site = Place
app-field-permission-from = Who gave it
app-field-given = Given on
app-field-until = Last day
app-field-purposes = For what
app-field-plants = Plants
app-field-parts = Parts
app-field-at-most = At most
app-field-plant = Plant
app-field-area = Area
app-field-without = Looked for, and not near
app-field-in-water = Does it grow in water, or where it floods?
app-field-at = When
app-field-stop-at = When you are there
app-field-lasts = How long
app-field-walk = How far the walk is from the stop before
app-field-climb = How far it goes up
app-field-recipe = Recipe
app-field-part = Part
app-field-stands = From which stands
app-field-herb = Does the herb go in fresh or dried?
app-field-amounts = What goes in
app-field-stage = At which stage
app-field-stages = Which stages somebody saw
app-field-make-lots = From which lots
app-field-weighed = Is each serving weighed out?
app-field-moisture = Water in the herb
app-field-serving = One serving
app-field-servings-a-day = Servings a day
app-field-days = Days
app-field-everybody = Is it for everybody?
app-field-people = For whom, where it is not for everybody
app-field-stand = Stand
app-field-on = Day
app-field-by = Who did it
app-field-confirmation-by = Who stands for it
app-field-plots-in-stand = How many plots of this size the stand has
app-field-survey-pieces = Pieces counted in each plot
app-field-piece-weights = Weights of ten single pieces
app-field-weights = Weight of each plot
app-field-pattern = The plant in hand that every piece was held against
app-field-found = What else was found
app-field-of = Of which batch
app-field-what = What was weighed
app-field-mass = How heavy
app-field-volume = How much to the brim
app-field-participants = For whom
app-field-confirmation-at-most = At most so many servings
app-field-amount = How much
app-field-pickers = Who picked
app-field-takes = Which takes went in
app-field-lot = Lot
app-field-sorters = Who looked at every piece
app-field-pieces = How many pieces were looked at
app-field-every-piece = Was every piece looked at?
app-field-make = Which wish
app-field-lots = Which lots went in
app-field-cook = Who made it
app-field-batch = Batch
app-field-serving-to = To whom
app-field-serving-servings = Servings for each
app-field-taken-home = Does it go home in a jar?
app-hint-latitude = In degrees, such as 52.31; south of the equator with a minus.
app-hint-longitude = In degrees, such as -2.94; west of Greenwich with a minus.
app-hint-base = A name, a comma, and their telephone number, such as Hedda Marrow, 01632 960183.
app-hint-overdue-after = Such as 45 min.
app-hint-second-way = Such as the landline at the lodge.
app-hint-source = Their own page, or who told it.
app-hint-in-an-hour = Such as 3 km. Left out: 3 km.
app-hint-before-sunset = Such as 1 h. Left out: 1 h.
app-hint-found = One plant on a line: how many pieces, then its name, such as 2 Lamium album.
app-hint-survey-pieces = One plot on a line, the empty ones too. Begin with the first: the others can then be counted with large buttons.
app-hint-weights = One plot on a line, with its unit, such as 52 g. Either weigh plots or count pieces.
app-hint-weights-not-metric = One plot on a line, with its unit, such as 1.8 oz or 52 g. Either weigh plots or count pieces.
app-hint-piece-weights = One on a line, with its unit, such as 1.9 g.
app-hint-mass = With its unit, such as 800 g.
app-hint-mass-not-metric = With its unit, such as 28 oz or 800 g.
app-hint-volume = With its unit, such as 1.2 l.
app-hint-what = Such as herb or solvent.
app-hint-confirmation-at-most = Only to tighten: fewer than were worked out.
app-hint-zone = By its standard name, such as Europe/London.
app-hint-area = With its unit, such as 600 m².
app-hint-area-not-metric = With its unit, such as 6500 sq ft, 0.15 acres or 600 m².
app-hint-amount = With its unit, such as 150 g.
app-hint-amount-not-metric = With its unit, such as 5.3 oz or 150 g.
app-hint-at-most = With its unit, such as 3 kg.
app-hint-at-most-not-metric = With its unit, such as 6.5 lb or 3 kg.
app-hint-amounts = One on a line: what it is, then how much, such as herb 800 g or water 2.2 l.
app-hint-amounts-not-metric = One on a line: what it is, then how much, such as herb 28 oz or water 2.2 l.
app-hint-serving = With its unit, such as 150 ml.
app-hint-moisture = Such as 10 %, or a range such as 78–82 %.
app-hint-lasts = Such as 1 h 30 min.
app-hint-walk = Such as 600 m.
app-hint-walk-not-metric = Such as 2000 ft or 0.4 miles.
app-hint-climb = Such as 20 m.
app-hint-climb-not-metric = Such as 65 ft.
app-hint-plant = By its scientific or common name.
app-hint-plants = One on a line.
app-hint-without = Tick what you looked for and did not find.
app-hint-stand-name = Short, as on a label: brook, north-bank.
app-hint-take-name = Short, as on a label: nettle-13-may.
app-hint-lot-name = Short, as on a label.
app-hint-batch-name = Short, as on a label.
app-purpose-own-use = for those who pick
app-purpose-lesson = a lesson without a fee
app-purpose-paid-lesson = a lesson for a fee
app-purpose-sale = to sell
app-kitchen-us-customary = US, as defined by law
app-kitchen-us-kitchen = US kitchens: cup of 240 ml
app-kitchen-imperial = British: pint of 568 ml
app-kitchen-metric = metric: cup of 250 ml
app-kitchen-australian = Australian: tablespoon of 20 ml
app-level-leader = leads: reads and teaches
app-level-trained = trained
app-level-public = comes for the first time
fault-app-nothing-said = Nothing was said here.
    .want = An answer: without it the outing cannot be worked out.
    .mend = Fill it in. What you do not know yet you can change later.
fault-app-nothing-to-take-back = This entry is not there, or was taken back already.
    .want = An entry that stands.
    .mend = Look at what was written down, and choose again.
fault-app-no-message = The page and its program did not understand each other: { $got }
    .want = A page and a program of one version.
    .mend = Load this page again. What was kept is kept.
fault-app-not-read = { $got } could not be read.
    .want = A day like 2027-05-13, a time like 09:05, a number like 14.
    .mend = A number is written like 14, a day like 2027-05-13, a time like 09:05.

# A plant in hand.

app-in-hand = Plants in hand
app-in-hand-says = Who looks at which plant? Each reads alone, without knowing what the others saw or what it could be.
app-in-hand-other-day = What is read counts on the day on which it is read. The day of this outing is { $day }.
app-in-hand-no-stand = No stand is written down yet.
app-in-hand-no-reader = Nobody is written down yet who reads.
app-in-hand-new = Another plant
app-in-hand-looks = { $count ->
    [0] not yet
    [one] one look
   *[other] { $count } looks
 }
app-in-hand-misread = What goes wrong:
app-in-hand-cannot-tell = I cannot tell
app-in-hand-not-there = There is none to look at
app-in-hand-length = How long, with its unit, such as 46 mm or 2 in
app-in-hand-count = How many
app-ruler = A ruler
app-ruler-is = Ten centimetres with a line for each millimetre, true to size on this screen alone.
app-ruler-set = Set the ruler of this screen
app-ruler-says = Lay a bank card upright on the bar: its short side is 54 mm on every card (ISO/IEC 7810). Tap until the bar is as wide as the card.
app-ruler-shorter = narrower
app-ruler-longer = wider
app-ruler-fits = It is as wide as the card
app-in-hand-none-now = No look that can be made here today would settle which it is. Often a plant shows too little of itself at that time of the year. Nothing may be taken by it.
app-in-hand-all = Nothing more to look at
app-in-hand-all-says = Nothing that you can see here today would settle more.
app-in-hand-another = You have read all that you are asked for. Somebody else must read it too, or a leader again, ten minutes later.
app-in-hand-more = { $count ->
    [one] One more to look at
   *[other] { $count } more to look at
 }
app-in-hand-said = { $count ->
    [one] One look of yours
   *[other] { $count } looks of yours
 }
app-in-hand-looked = I have looked: show what it is
app-in-hand-looked-says = Whoever sees what it could be reads otherwise. What you read after that does not count as a second reading.
app-row-looks = A plant in hand
fault-no-such-stand = No stand is called { $got }.
    .want = A stand of this outing; the nearest are { $near }.
    .mend = Mend its name, or write the stand down.

# Counting plots.

app-allowance = How much may go
app-count = Count its plots
app-count-plot = Plot { $count }
app-count-pieces = Pieces in this plot
app-count-keep = Keep this plot
app-count-so-far = Counted so far:

# Who may have what.

app-serving = Who may have what
app-answers = What people said of themselves
app-answers-closed = What people say of their health is kept on this device alone, enciphered by a passphrase. It goes into no file, and holds for the day of the outing only. While it is closed, everybody counts as not asked, unless a flag was left for them.
app-answers-are-open = The answers are open on this device.
app-answers-open = Open them
app-answers-close = Close them
app-flags = For a device that goes along without the answers
app-flags-says = Flags say how many servings each person may be handed of each dish, and never why. They are kept with the records of the outing and go where these go. A flag holds to the end of the day, for the very dish that it was worked out for: once amounts or dishes change, leave flags anew. An answer that is given takes the flags of that person out; another device learns of that with the records.
app-flags-known = { $count ->
    [one] One flag was left already; it is replaced.
   *[other] { $count } flags were left already; they are replaced.
  }
app-flags-leave = Leave flags
fault-app-flags-stay-gone = Flags that were taken out do not come back: an answer may have changed since.
    .want = Flags that rest on the answers as they are.
    .mend = Open the answers and leave flags anew.
fault-app-nothing-to-flag = There is nothing to flag: nobody said anything yet, or nothing is made.
    .want = Answers of somebody who comes, and something that is made for them.
    .mend = Ask people first, and say what is made.
app-answers-lapsed = The day of this outing is over. What people said for it no longer counts, and cannot be opened.
app-answers-destroy-all = Destroy all answers
app-answers-destroy-one = Destroy what this person said
app-answers-destroy-says = They cannot be brought back, and neither can flags that rest on them. From then on they count as not given.
app-answers-destroy = Destroy them
app-passphrase = Passphrase
app-passphrase-says = The first time, the one that you give is the one that holds: 15 letters or more, such as a few words that mean nothing together. Nobody can find it out or set it back. Who forgets it asks everybody again.
fault-app-passphrase-short = This passphrase is too short to keep what people say of their health.
    .want = 15 letters or more.
    .mend = Choose a few words that mean nothing together, and write them on paper.
fault-app-passphrase-wrong = This passphrase does not open the answers.
    .want = The one that was chosen the first time on this device.
    .mend = Give it again. If it is lost, destroy the answers and ask anew.
app-head-count-says = At the head count, ask everybody: has anything changed since?
app-asked-never = not asked yet
app-asked-today = asked today
# $day: when.
app-asked-on = asked on { $day }
app-ask-nothing = Nothing that is made asks anything of this person.
app-ask-says = One question after the other. Whoever does not know, or would rather not say, is not asked why.
# $person: who.
app-ask-next = Next: { $person }
app-ask-all = Ask from the beginning
# $number: counts the questions; $count: how many there are.
app-ask-counted = Question { $number } of { $count }
app-ask-years = Years, as a whole number
app-ask-weight = With its unit, such as 62 kg or 140 lb
app-changed = Has anything changed since?
app-changed-says = If so, tap what changed below.
app-changed-no = Nothing has changed
app-said-yes = yes
app-said-no = no
app-said-unanswered = I do not know
app-said-rather-not = I would rather not say
app-said-nothing = open
app-hand-over = Hand it over
app-hand-over-none = Nothing is made yet. A batch that is made is handed over here.
app-hand-over-says = A name without a button is not handed this. Nobody asks why: whoever leads knows.
app-stand-for-says = What was worked out is a proposal until somebody stands for it by name. Look at who may have it first.
# $leader: who leads.
app-stand-for = { $leader } stands for it
app-hand-over-one = One serving
app-hand-over-not = not handed
app-hand-over-had = { $count ->
    [one] had one
   *[other] had { $count }
 }
fault-app-not-handed = { $got } is not handed this.
    .want = Somebody who may have one more, as things stand now.
    .mend = Look at the list again: something was found or said since.
app-hand-over-no-wish = What this batch was made for is no longer written down, so nothing is known of who may have it.
app-why = Why, for the leader alone
app-why-says = What people said of their health is read off the next screen. Show it only when nobody else looks on.
app-why-show = Nobody else looks on: show it

# The basket and the kitchen.

app-basket = The basket
app-gathered = Write down what was gathered
app-lot-new = Put takes into a lot
app-sort = Sort
app-kitchen = The kitchen
app-kitchen-none = Nothing is to be made yet.
app-make-change = Change what is written of it
app-kitchen-add = Something else to make
app-made-now = It was made: write the batch down
app-weigh = Weigh it
app-labels = Labels
app-clocks = Clocks
# $count: minutes.
app-clock-start = { $count ->
    [one] 1 min
   *[other] { $count } min
 }
app-work-out = Work out a preparation
app-work-out-do = Work it out
app-work-out-more = More that can be said
app-work-out-recipe = Recipe
app-work-out-herb = How much herb, such as 30 g or ½ cup
app-work-out-moisture = Water in the herb, such as 10 % or 78–82 %
app-work-out-state = Is the herb fresh or dried?
app-work-out-servings = How many servings are wanted, in place of the amount of herb
app-work-out-water = How much water
app-work-out-spirit = How much spirit
app-work-out-stock = Strength of the spirit in the bottle, such as 40 % vol
app-work-out-jar = Strength wanted in the jar
app-work-out-sugar = How much sugar
app-work-out-sweetened = How much of what was strained is sweetened, by weight
app-work-out-serving = What one person is handed
app-work-out-kitchen = Whose spoons and cups
app-state-fresh = fresh
app-state-dried = dried
fault-app-no-amount = “{ $got }” is no amount: { $why }.
    .want = A number with its unit.
    .mend = Write a number with its unit, such as 30 g, 1½ cups or 40 % vol.
app-clock-up = time is up
app-clock-stop = Put it away
