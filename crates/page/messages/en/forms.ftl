# Forms that are filled in by hand: before the outing, at the basket, at the table.

### What people are asked before they come

forms-intake-title = Before you come: { $name }
forms-intake-head = We taste wild plants. Some are not for everybody. Your answers let the leader decide what you are handed.
forms-intake-who-label = who reads it
forms-intake-who = { $leader } alone, who leads. Helpers see what is handed to you, and what is not. They never see why.
forms-intake-where-label = where it is kept
forms-intake-where = With the leader: this sheet, and one file on the leader’s own machine.
forms-intake-until-label = how long
# $day: the last day.
forms-intake-until = Until { $day }: that is a rule of this school. Then the leader destroys sheet and file.
forms-intake-until-open = Until 30 days after the last jar is used up: that is a rule of this school. Then the leader destroys sheet and file. The leader writes the day here:{" "}
forms-intake-erase-label = to take it back
forms-intake-erase = Tell the leader, at any time. Your answers are destroyed. From then on they count as not given.
forms-intake-free-label = if you leave one out
forms-intake-free = You need not answer. What you leave out counts as the strictest answer. You may then be handed less, or nothing. Nobody asks why.
forms-intake-name = Your name, or your code from the list:{" "}
forms-intake-nothing = Nothing that is made asks anything of you.
forms-intake-parents = For a child, a parent answers and signs.

forms-topic-you = About you
forms-topic-expecting = Pregnancy and breast-feeding
forms-topic-medicines = Medicines
forms-topic-allergies = Allergies
forms-topic-illnesses = Illnesses
forms-topic-plans = The days after
# $number: counts the questions; $question: one of them.
forms-numbered = { $number }. { $question }
# $dishes: names; $rules: what kinds of rule.
forms-why = Why we ask: { $rules }. The answer bears on { $dishes }.
forms-why-every-dish = everything that is made
forms-by-caution = published cautions
forms-by-amount = usual amounts
forms-by-limit = published limits
forms-by-unmeasured = limits on what nobody measured
forms-yes = yes
forms-no = no
forms-not-known = I do not know
forms-rather-not = I would rather not say
forms-kilograms = {" "}kg
forms-age-infant = under 1
forms-age-toddler = 1 to 3
forms-age-child = 4 to 11
forms-age-adolescent = 12 to 17
forms-age-adult = 18 or more

forms-medicines-free = Medicines you take, if you want to name them
forms-allergies-free = Other things you must not eat, drink or touch
forms-changed = Has anything changed today? Write it here, or tell the leader alone
forms-foot = I answer of my own will. I know that I can take it back.
forms-date = Date:{" "}
forms-signature = Signature:{" "}
forms-parent = Under 18, a parent signs here:{" "}

forms-ask-age = How old are you?
forms-ask-body-mass = How much do you weigh?
forms-ask-pregnant = Are you pregnant, or may you be?
forms-ask-breastfeeding = Do you breast-feed?
forms-ask-salicylate = Does aspirin make you ill, or anything like it?
forms-ask-asteraceae = Are you allergic to daisies, ragweed, camomile or their family?
forms-ask-apiaceae = Are you allergic to celery, carrot, mugwort or anise?
forms-ask-lamiaceae = Are you allergic to mint, thyme, sage or their family?
forms-ask-birchpollen = Are you allergic to birch pollen? Do raw apples or nuts make your mouth itch?
forms-ask-anymedicine = Do you take any medicine from a doctor? The Pill counts.
forms-ask-anticoagulant = Do you take a blood thinner? Do you bleed easily?
forms-ask-heartmed = Do you take medicine for heart or blood pressure?
forms-ask-diuretic = Do you take water tablets or lithium?
forms-ask-sedative = Do you take something to sleep or to calm down? Will you drink alcohol that evening?
forms-ask-surgery = Will you have an operation within 14 days?
forms-ask-heartdisease = Is your heart weak? Do your legs swell because of it?
forms-ask-hypertension = Is your blood pressure high, or your potassium low?
forms-ask-kidney = Are your kidneys ill?
forms-ask-oxalatestones = Have you had oxalate stones? Must you eat little oxalate?
forms-ask-liver = Is your liver ill, or was it?
forms-ask-bileduct = Are your bile ducts ill?
forms-ask-gallstones = Do you have gallstones?
forms-ask-ulcer = Do you have an ulcer, or a sore stomach?
forms-ask-epilepsy = Do you have epilepsy? Have you ever had a fit?
forms-ask-diabetes = Do you have diabetes? Do you take something for blood sugar?
forms-ask-g6pd = Do you have G6PD deficiency?
forms-ask-sun = Does your skin burn fast? Does a medicine make it so? Do you plan strong sun?
forms-ask-alcoholdep = Do you stay away from alcohol? Any reason counts.
forms-ask-driver = Will you drive or work a machine afterwards?
forms-ask-hormone = Do you have an illness that hangs on hormones?
forms-ask-iron = Is your iron low? Do you take iron tablets?

### At the basket

forms-sorting-title = Sorting sheet: { $common } ({ $name }), { $stand }
forms-sorting-take = from stand { $stand }: { $part }
forms-sorting-rule = Two people look at every piece, one after the other. What is not the plant comes out. What you are not sure of comes out too.
forms-sorting-sample = A sample will not do. If one wrong piece is in it, a look at a tenth leaves it in 9 times in 10 or more.
forms-sorting-holds = One piece that can hurt holds the lot. It holds every lot pooled with it.
forms-sorting-again = A held lot is not used. Two people go through every piece again. Only when they find nothing does it pass.
forms-sorting-twins = What may lie among it, the worst first
forms-sorting-no-twins = The herbal names nothing that is taken for it. That does not mean that there is nothing. Hold each piece against the signs of the plant itself.
forms-sorting-signs = What to look at first
forms-sorting-signs-says = What tells them apart, the most urgent sign first
forms-sorting-own-says = The signs of the plant itself
forms-sorting-sign = look at
forms-sorting-this = { $plant } shows
forms-sorting-other = out with it if it shows
forms-sorting-on-plant = {" "}(on the growing plant, not on the piece)
forms-sorting-no-sign = No sign of it stands in the table: { $says }
forms-sorting-unknown-plant = The herbal has no sheet of this plant here. Nobody sorts it by this page alone.
forms-sorting-first = First round
forms-sorting-second = Second round, after anything that can hurt
forms-sorting-one = First sorter:{" "}
forms-sorting-two = Second sorter:{" "}
forms-sorting-began = Began:{" "}
forms-sorting-ended = Ended:{" "}
forms-sorting-pieces = Pieces:{" "}
forms-sorting-found = What came out
forms-sorting-found-what = what
forms-sorting-found-pieces = pieces
forms-sorting-found-where = put where
forms-sorting-passed = passed: every piece is the plant
forms-sorting-held = held: something that can hurt was found
forms-sorting-passed-again = passed: nothing was found this time
forms-sorting-held-again = held still: something was found again
forms-sorting-done = What is written down so far
# $lot: short name; $state: how it stands.
forms-sorting-lot = Lot { $lot }: { $state }

### At the table

forms-list-code = code
# $from, $to: places of dishes in the list.
forms-list-dishes = Dishes { $from } to { $to }
forms-list-tick = Tick each cup as it is handed, and write the time.
forms-list-head-count = Heads counted, and when
forms-list-changed = Anything changed since people answered? Who asked, and when
forms-list-box = {" "}☐{" "}

### A sheet of one plant, for the teacher

forms-sheets-title = Sheets of { $count } plants
forms-sheet-title = { $common } ({ $name })
forms-sheet-near = How to know it, from far to near
forms-sheet-twins = Its twins, beside it
forms-sheet-hurts = What hurts
forms-sheet-gather = How to gather, and how much to leave
forms-sheet-questions = Three questions
forms-step-afar = From afar
forms-step-leaf = Stem, bark and leaf
forms-step-flower = Flower and fruit
forms-step-hand = In the hand: feel it, measure it, smell it
forms-step-ground = Below the ground
# $part: in words; $says: a rule.
forms-sheet-share = { $part }: { $says }
forms-sheet-no-share = { $part }: no share is set. Nothing is taken until somebody sets one.
forms-sheet-protected = Protected in places: { $says } Look it up before you go.
forms-sheet-no-twins = The herbal names nothing that is taken for it. That does not mean that there is nothing.
forms-sheet-date = Date:{" "}
forms-sheet-author = Teacher:{" "}
# $herbal: the beginning of the herbal's version.
forms-sheet-version = Herbal { $herbal }
forms-sheet-herbal = herbal
forms-home-deadly-twin = Something deadly is taken for it. Do not make this from a plant that nobody who knows both has seen.
# $character: in words; $one, $other: plants; $shows: a state.
forms-quiz-which = { $character }: one shows “{ $shows }”. Which is it, { $one } or { $other }? How would you show it?
forms-quiz-name = Name one sign that tells { $one } from { $other }. Where do you look for it?
forms-quiz-see = { $character }: what does { $one } show? How do you look?
forms-quiz-first = What do you do before you pick the first one?
forms-quiz-doubt = One piece in the basket looks wrong. What do you do with the basket?
forms-quiz-leave = How much do you leave standing, and why?
