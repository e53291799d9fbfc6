# What every craft stands on: amounts as said, standings of facts, and the closed lists of the trade.

### Amounts as people write them

refused-whose-spoon = Whose spoons and cups are meant is not said: “{ $written }”.
settle-whose-spoon = Name the kitchen measures of the outing, or write the amount in ml.
refused-no-such-measure = The { $system } kitchen has no such measure: “{ $written }”.
settle-write-in-ml = Write the amount in ml.
refused-other-dimension = “{ $written }” measures something else.
settle-other-dimension = Write it in a unit of the kind that is asked for.

fault-one-key-two-distributions = The same quantity “{ $got }” was given two different doubts. This is a defect of the program, not of your file.
    .want = One quantity, one distribution.
    .mend = Report it with the file that shows it.

### How far a fact may be trusted

standing-published = published
standing-weak = published, weak source
standing-practice = common practice, no source
standing-policy = policy, no source
standing-assumed = supposed, not measured
standing-remembered = from memory

### How badly it can hurt

harm-none = used like this, says a published source
harm-irritant = irritant
harm-unknown = harm not known
harm-harmful = poisonous
harm-deadly = deadly

### Parts of a plant

part-whole = whole plant
part-herb = herb
part-leaf = leaf
part-young-leaf = young leaf
part-shoot-tip = shoot tip
part-flower = flower
part-flower-bud = flower bud
part-pollen = pollen
part-fruit = fruit
part-ripe-fruit = ripe fruit
part-unripe-fruit = unripe fruit
part-cone-berry = cone berry
part-seed = seed
part-bark = bark
part-underground = underground parts
part-root = root
part-rhizome = rhizome
part-bulb = bulb
part-sap = sap
part-essential-oil = essential oil

### Preparations

form-any = any preparation
form-inward = anything swallowed
form-food = food
form-raw = raw food
form-cooked = cooked food
form-soup = soup
form-brine = brine
form-dried-food = dried food
form-food-oil = oil for the table
form-tea = tea
form-infusion = infusion
form-decoction = decoction
form-macerate = cold macerate
form-sweet = sweet preparation
form-syrup = syrup
form-honey = honey
form-oxymel = oxymel
form-spirit = preparation in alcohol
form-tincture = tincture
form-wine = wine
form-liqueur = liqueur
form-vinegar = vinegar
form-essential-oil-by-mouth = essential oil by mouth
form-outward = anything on the skin
form-skin-oil = oil for the skin
form-salve = salve
form-bath = bath
form-touch = touching the fresh plant
form-breath = breathing it in

### Organs and life forms

organ-whole = whole plant
organ-stem = stem
organ-leaf = leaf
organ-flower = flower
organ-fruit = fruit
organ-bark = bark
organ-underground = underground parts

life-form-annual = annual
life-form-biennial = biennial
life-form-perennial = perennial
life-form-shrub = shrub
life-form-tree = tree
life-form-climber = climber

region-europe = Europe
region-north-america = North America

### Questions about a person

condition-all = everybody
condition-pregnant = pregnant, or may be
condition-breastfeeding = breast-feeding
condition-under18 = under 18
condition-under12 = under 12
condition-under4 = under 4
condition-under1 = under 12 months
condition-salicylate = cannot take aspirin or other salicylates
condition-asteraceae = allergic to the daisy family
condition-apiaceae = allergic to celery, carrot, mugwort or anise
condition-lamiaceae = allergic to the mint family
condition-birchpollen = allergic to birch pollen, or to what goes with it
condition-anymedicine = takes any prescription medicine, the Pill included
condition-anticoagulant = takes a blood thinner, or bleeds easily
condition-heartmed = takes heart or blood-pressure medicine
condition-diuretic = takes water tablets or lithium
condition-sedative = takes sedatives or sleep medicine, or drinks alcohol the same evening
condition-surgery = has surgery within 14 days
condition-heartdisease = heart failure, or swelling from heart disease
condition-hypertension = high blood pressure or low potassium
condition-kidney = kidney disease
condition-oxalatestones = oxalate stones, or a low-oxalate diet
condition-liver = liver disease, now or earlier
condition-bileduct = bile-duct disease
condition-gallstones = gallstones
condition-ulcer = ulcer of stomach or gut, or gastritis
condition-epilepsy = epilepsy, or seizures earlier
condition-diabetes = diabetes, or medicine that lowers blood sugar
condition-g6pd = G6PD deficiency
condition-sun = skin or medicine that the sun makes sore, or strong sun ahead
condition-alcoholdep = no alcohol, for whatever reason
condition-driver = drives or works machines afterwards
condition-hormone = illness that depends on hormones
condition-iron = iron deficiency or iron tablets

### Kitchen measures

measures-us-customary = US customary
measures-us-kitchen = US kitchen
measures-imperial = imperial
measures-metric = metric
measures-australian = Australian
