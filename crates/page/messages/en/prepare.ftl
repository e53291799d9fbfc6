# Preparations: what is done, how it was worked out, how it keeps, and what could not be worked out.

### Steps

prepare-step-add = Put in { $amount } of { $what }.
prepare-step-pour = Pour in { $amount } of cold water.
prepare-step-pour-boiling = Pour { $amount } of boiling water over it.
prepare-step-pour-spirit = Pour in { $amount } of spirit of { $strength }.
prepare-step-steep =
    { $lid ->
        [on] Let it draw, covered, for { $time }.
       *[off] Let it draw, uncovered, for { $time }.
    }
prepare-step-simmer =
    { $lid ->
        [on] Simmer it gently, covered, for { $time }; about { $steam } of water steams off.
       *[off] Simmer it without a lid for { $time }; about { $steam } of water steams off.
    }
prepare-step-reduce = Simmer it without a lid until { $to } are left: about { $time }.
prepare-step-strain = Strain it: { $made } run off.
prepare-step-press = Press it out: { $made } run off.
prepare-step-dissolve = Stir in { $sugar } of sugar until it has dissolved: { $reached } of sugar.
prepare-step-dissolve-all-it-holds = Stir in { $sugar } of sugar: { $reached } is all that water holds at 20 °C, and more would crystallise again.
prepare-step-weigh-off = Weigh off { $part } of it, and set the rest aside. { $then }
prepare-step-dry = Dry it until the scale shows { $to }.
prepare-step-rest = Leave it alone for { $time }.
prepare-step-nothing = Go on.

prepare-time = { $least }
prepare-time-between = { $least } to { $most }

### Kitchen measures: $count is a number in words such as 1½

prepare-teaspoons =
    { $many ->
        [one] { $count } teaspoon
       *[more] { $count } teaspoons
    }
prepare-tablespoons =
    { $many ->
        [one] { $count } tablespoon
       *[more] { $count } tablespoons
    }
prepare-fluid-ounces =
    { $many ->
        [one] { $count } fluid ounce
       *[more] { $count } fluid ounces
    }
prepare-gills =
    { $many ->
        [one] { $count } gill
       *[more] { $count } gills
    }
prepare-cups =
    { $many ->
        [one] { $count } cup
       *[more] { $count } cups
    }
prepare-pints =
    { $many ->
        [one] { $count } pint
       *[more] { $count } pints
    }
prepare-quarts =
    { $many ->
        [one] { $count } quart
       *[more] { $count } quarts
    }
prepare-gallons =
    { $many ->
        [one] { $count } gallon
       *[more] { $count } gallons
    }

### Keeping

prepare-keep-in-room = In a dark place at room temperature, { $time } at most.
prepare-keep-cool = Cool and dark, { $time } at most.
prepare-keep-in-fridge = In the refrigerator, { $time } at most.
prepare-class-keeps = keeps
prepare-class-keeps-cold = keeps in the cold for a while
prepare-class-borderline = near the line below which it spoils
prepare-class-use-at-once = to be used at once

### Workings

prepare-working-brew = { $name }
prepare-working-yield = what comes out
prepare-working-ingredient = { $what }
prepare-working-moisture = water in the herb, as weighed
prepare-working-evaporation = water that the pot loses in a minute
prepare-working-steam = water steamed or dried off
prepare-working-held-by-solids = liquid that the spent herb keeps, for each gram without its water
prepare-working-held-as-weighed = liquid that the spent herb keeps, for each gram as weighed
prepare-working-ethanol = ethanol
prepare-working-water = water, with that of the herb
prepare-working-alcohol = strength at 20 °C
prepare-working-supposed = it is said, and nobody weighed it
prepare-working-sweetness = sugar wanted
prepare-working-sugar = sugar stirred in
prepare-working-density = density at 20 °C
prepare-working-activity = water activity: how much of the water is left for microbes
prepare-working-poured-off = liquid poured off
prepare-working-stands-for = herb, as weighed, that 100 ml stand for
prepare-working-stands-for-solids = herb without its water that 100 ml stand for
prepare-working-keeping = how long it keeps at most. { $why }

formula-brew = nothing is made or lost
formula-brew-yield = what comes out
formula-brew-steam = water lost on the fire
formula-brew-mass = masses add up, volumes do not
formula-brew-stands-for = the liquid that the herb keeps holds its share of the herb
formula-alcohol-mixture = strength of a mixture of ethanol and water
formula-sugar-to-add = sugar for a sweetness
formula-sugar-density = density of sugar in water
formula-sugar-activity = water activity of sugar in water

### What could not be worked out, and what would settle it

prepare-refused-fresh-or-dried = Whether the herb is fresh or dried is not said. Dried leaf is four to six times as strong by weight.
prepare-settle-fresh-or-dried = Say which: fresh or dried.
prepare-refused-other-state = The herb is said to be { $said }, and the recipe is for { $written } herb.
prepare-settle-other-state = Use a recipe for { $said } herb, or { $written } herb.
prepare-refused-no-weight = No weight of “{ $written }” of { $herb } is published.
prepare-refused-no-such-spoon = The spoon by which { $what } was weighed has no size.
prepare-settle-weigh = Weigh what goes in, and give it in grams.
prepare-refused-heap = Whether “{ $written }” of { $herb } is level or heaped is not said.
prepare-settle-heap = Say level or heaped, or better: weigh it and give grams.
prepare-refused-heaped = What a heaped spoon holds differs too much: “{ $written }” of { $herb } says no weight.
prepare-refused-moisture-unknown = How much water the herb holds is not said, and the strength rests on it.
prepare-settle-moisture-unknown = Give the moisture in per cent, or a range: weigh some of the herb, dry it until it loses no more, weigh it again.
prepare-refused-moisture = { $moisture } is no moisture.
prepare-settle-moisture = Give the share of water in what is weighed: from 0 to below 100 %.
prepare-refused-moisture-of-state = { $least } to { $most } of water is not what { $state } herb holds.
prepare-settle-moisture-of-state = Fresh herb holds 50 to 90 % of water, dried herb 8 to 15 %: see whether the state or the number is wrong.
prepare-refused-wetter = The herb holds { $moisture } of water and is to be dried to more.
prepare-settle-wetter = Give a target below the moisture of the herb.
prepare-refused-no-yield = No published yield of drying speaks of this part ({ $part }) of { $taxon }.

prepare-refused-nothing = An amount is nothing, or less than nothing.
prepare-settle-nothing = Give an amount above nothing.
prepare-refused-boils-dry = More water would steam off than the { $water } in the pot.
prepare-settle-boils-dry = Take more water, less time, or a lid.
prepare-refused-drinks-all = The spent herb would keep { $held }: more than the pot holds, so that nothing runs off.
prepare-settle-drinks-all = Take more water or spirit, or less herb.
prepare-refused-no-reduction = A pot does not boil down from { $from } to { $to }.
prepare-settle-no-reduction = Give a volume that is smaller than the first, and a rate above nothing.
prepare-refused-no-rate = How fast the pot loses water is not known.
prepare-settle-no-rate = Weigh the pot, simmer it ten minutes, weigh it again, and give what it lost in a minute.
prepare-refused-no-retention = The herbal has no row “{ $holds }” for what spent herb keeps.
prepare-settle-no-retention = Name a row of kitchen/retention.toml, or add one with its source.
prepare-refused-two-bases = “{ $holds }” counts by another weight of the herb than the recipe's first straining.
prepare-settle-two-bases = Use rows that count by the same weight, solids or weighed, in one recipe.
prepare-refused-dish = A dish that is eaten with its herb has no volume here.
prepare-settle-dish = Give the serving by weight.
prepare-refused-density = Sugar and spirit together, or other food: no density of such a mixture is at hand, so neither volume nor strength can be said.
prepare-settle-density = Measure the volume of the finished mixture, or leave one of them out.
prepare-refused-not-so-much = There are only { $liquid } of strained liquid.
prepare-settle-not-so-much = Sweeten what there is, or make more.
prepare-refused-no-use = The recipe has no use for { $what ->
    [herb] herb
    [water] water
    [spirit] spirit
    [sugar] sugar
   *[other] other food
}, and an amount of it is given.
prepare-settle-no-use = Leave it out, or take a recipe that it goes into.
prepare-refused-backwards = So many servings are wanted, and how much is sweetened or how much sugar is stirred in is said too: the one follows from the other.
prepare-settle-backwards = Leave the servings out, or leave the amounts of sweetened liquid and of sugar out.
prepare-refused-no-spirit = A strength in the jar is wanted, and the recipe has no spirit.
prepare-settle-no-spirit = Take a recipe with spirit, or leave the strength out.

prepare-refused-no-strength = { $strength } is no strength.
prepare-settle-no-strength = Give a strength from 0 to 100 %.
prepare-refused-temperature = The alcohol tables do not reach { $temperature }.
prepare-settle-temperature = Measure between −20 and 40 °C.
prepare-refused-freezing = Spirit of { $strength } may be freezing at { $temperature }.
prepare-settle-freezing = Let it warm up, then measure.
prepare-refused-no-such-spirit = No spirit has that density at { $temperature }, or it cannot be told so cold.
prepare-settle-no-such-spirit = Measure between 10 and 40 °C, and see to it that nothing but spirit is in the glass.
prepare-refused-not-weaker = { $from } cannot be let down to { $to }.
prepare-settle-not-weaker = Take a stronger spirit, or want a weaker mixture, above nothing.
prepare-refused-too-wet = So wet a herb lets the jar reach { $reach } at most, with pure ethanol.
prepare-settle-too-wet = Dry or wilt the herb, take less of it, or want less strength.

prepare-refused-sweetness = { $sugar } of sugar is no solution that the formula knows.
prepare-settle-sweetness = Give 0 to 85 % of sugar by mass.
prepare-refused-no-such-syrup = No sugar solution up to 85 % has that density.
prepare-settle-no-such-syrup = Measure a clear solution of kitchen sugar in water at 20 °C.
prepare-refused-sweeter = The liquid holds { $sugar } of sugar already, which is more than is wanted.
prepare-settle-sweeter = Add water, or want more sugar.
prepare-refused-too-sweet = The water activity of { $sugar } of sugar is not known: the constants were tried up to 67 % of sucrose and 80 % of sugars.
prepare-settle-too-sweet = Add water.
prepare-refused-keeping = No rule says how long such a preparation keeps: { $form }.
prepare-settle-keeping = Use it the same day, or add a rule with its source to kitchen/keeping.toml.
prepare-refused-height = At { $height } the boiling point was not tried.
prepare-settle-height = Give a height from −430 to 4,000 m.

### Faults in recipes

fault-recipe-unit = “{ $got }” is in the wrong unit here.
    .want = Herb by weight or spoons; water and spirit by volume; sugar and other food by weight; times as times; sugar wanted in °Bx or % mass.
    .mend = Write the amount in such a unit.
fault-recipe-nothing = “{ $got }” is nothing.
    .want = An amount above nothing.
    .mend = Give an amount, or take the step out.
fault-recipe-share = “{ $got }” is no share.
    .want = A share above nothing and not above one, such as 2/3 or 10 %.
    .mend = Write the share that is left, taken or wanted.
fault-recipe-strength = The strength belongs to spirit, and this is { $got }.
    .want = strength for spirit, and for nothing else.
    .mend = Give spirit its strength in % vol, or take the strength out.
fault-recipe-twice = { $got } goes in twice.
    .want = Herb, water, spirit and sugar each at most once.
    .mend = Put the two together.
fault-recipe-no-herb = The recipe has no herb.
    .want = One step that adds herb.
    .mend = Add it.
fault-recipe-heats-spirit = Spirit would be hot in this step ({ $got }): its vapour catches fire.
    .want = Spirit stays off the fire.
    .mend = Heat first, let it cool in a rest step, and add the spirit afterwards.
fault-recipe-before-straining = This step ({ $got }) comes before anything was strained.
    .want = Only what was strained is sweetened or mixed.
    .mend = Strain or press first.
fault-recipe-after-straining = This step ({ $got }) comes too late.
    .want = Add, simmer and reduce before straining; strain and press before sweetening or mixing.
    .mend = Move it up; use mix for what goes in after straining.
fault-recipe-dries-and-strains = A recipe that dries herb also strains it.
    .want = Drying as a recipe of its own.
    .mend = Make two recipes of it.

### Faults in the kitchen's files

fault-kitchen-twice = “{ $got }” stands twice in its table.
    .want = One row of each name.
    .mend = Take one out, or give it another name.
fault-kitchen-out-of-range = { $got } is not possible here.
    .want = { $range }
    .mend = Mend the number or its unit.
fault-kitchen-no-such-measure = That kitchen has no { $got }.
    .want = A measure and a kitchen that has it.
    .mend = Mend `measure` or `of`.
fault-kitchen-unknown-retention = No row says what “{ $got }” keeps.
    .want = The name of a row of kitchen/retention.toml.
    .mend = Mend the name, or add the row with its source.
fault-kitchen-unknown-recipe = There is no recipe “{ $got }”.
    .want = The id of a recipe of kitchen/recipes.toml.
    .mend = Mend the name, or leave it out where the note is for every recipe of its forms.
