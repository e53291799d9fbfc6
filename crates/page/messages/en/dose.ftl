# Who may have it, and how much?

## Outcomes

dose-no-reason-found = no reason to withhold it was found in these sources, at what is planned
dose-no-reason-found-servings = no reason to withhold it was found in these sources, at what is planned; at most { $servings ->
    [one] 1 serving
   *[other] { $servings } servings
} a day
dose-no-reason-found-days = no reason to withhold it was found in these sources, at what is planned; for { $days ->
    [one] 1 day
   *[other] { $days } days
} at most
dose-no-reason-found-servings-days = no reason to withhold it was found in these sources, at what is planned; at most { $servings ->
    [one] 1 serving
   *[other] { $servings } servings
} a day, for { $days ->
    [one] 1 day
   *[other] { $days } days
} at most
dose-at-most = at most what is planned
dose-at-most-servings = at most { $servings ->
    [one] 1 serving
   *[other] { $servings } servings
} a day
dose-at-most-days = for { $days ->
    [one] 1 day
   *[other] { $days } days
} at most
dose-at-most-servings-days = at most { $servings ->
    [one] 1 serving
   *[other] { $servings } servings
} a day, for { $days ->
    [one] 1 day
   *[other] { $days } days
} at most
dose-ask-first = ask first: a pharmacist, doctor or midwife decides
dose-withhold = withhold

## Provisos

dose-proviso-determined = provided that the { $plant } is determined on the day
dose-proviso-sorted = provided that two people sort every piece of the { $plant } { $part } and look for weeds
dose-proviso-stage = provided that the { $plant } { $part } is as it must be: { $stage }
dose-proviso-not = provided that the { $plant } { $part } is not { $stage }

## Identity

dose-identity-ruled-out = this plant was ruled out as { $plant }
dose-identity-not-determined = the { $plant } is not determined
dose-identity-held = something that does not belong was found among the { $plant } { $part }
dose-identity-not-sorted = the { $plant } { $part } was not sorted by two people

## Parts

dose-part-nothing-in-it = nobody said what is in it
dose-part-no-row = nothing is known of { $plant } { $part } as { $form }
dose-part-deadly = { $plant } { $part } as { $form } has killed people. { $note }
dose-part-harmful = { $plant } { $part } as { $form } poisons or hurts organs. { $note }
dose-part-unknown = nobody is known to have looked at { $plant } { $part } as { $form }. { $note }
dose-part-no-use = { $plant } { $part } as { $form } is not used. { $note }
dose-part-irritant = { $plant } { $part } as { $form } smarts or upsets. { $note }
dose-part-none = { $plant } { $part } as { $form } is used like this. { $note }
dose-part-stage-open = nobody confirmed the stage of the { $plant } { $part }: { $stage }

## Cautions and usual amounts

dose-caution = { $plant }, { $who }: { $wording } { $note }
dose-caution-nobody-looked = nobody is known to have looked for cautions about { $plant } { $part } as { $form }
dose-amount-no-data-under = there is no data on { $plant } { $part } as { $form } for people under { $years } years
dose-amount-day = the usual amount of { $plant } { $part } ends at { $most } of dried herb a day
dose-amount-days = the usual course of { $plant } { $part } ends after { $days ->
    [one] 1 day
   *[other] { $days } days
}
dose-amount-day-and-days = the usual amount of { $plant } { $part } ends at { $most } of dried herb a day and after { $days ->
    [one] 1 day
   *[other] { $days } days
}
dose-amount-none = a usual amount of { $plant } { $part } is listed without a number
dose-amount-unknown = a limit on { $plant } is listed, and its number is not known
dose-flag-none = somebody who knew the answers of this person flagged it as not to be handed over
dose-flag = somebody who knew the answers of this person flagged how much may be handed over
dose-none-fits = not even one serving of { $batch } fits under every limit
dose-days-used-up = the days on which { $batch } may be taken are used up

## Limits

dose-window-serving = in one serving
dose-window-day = in a day
dose-window-week = in a week
dose-window-lifetime = over a lifetime
dose-window-product = in one serving of what is sold
dose-limit-within = { $substance }: { $sum-up } { $window } stays within { $most-down } ({ $limit }, set { $date } for { $population })
dose-limit-above = { $substance }: { $sum-up } { $window } passes { $most-down } ({ $limit }, set { $date } for { $population })
dose-limit-unknown = { $substance }: what is taken { $window } cannot be held against { $limit }
dose-limit-none-set = { $substance }: authorities looked and set no value ({ $limit }, { $date })
dose-limit-not-for-them = { $substance }: no limit that was read was set for people like this
dose-guidance-above = { $substance }: { $sum-up } { $window } passes the advice of { $most-down } for { $population }
dose-legal-above = { $substance }: a serving holds { $sum-up }, and what is sold may hold { $most-down } ({ $limit })
dose-legal-unknown = { $substance }: whether it may be sold cannot be told ({ $limit }, { $population })
dose-unmeasured = nobody is known to have measured { $substance } in { $plant } { $part } as { $form }
dose-moisture-supposed = how much water the { $plant } { $part } holds is supposed, and the { $substance } hangs on it: weigh some of it, dry it, weigh it again
dose-share-not-measured = nobody is known to have measured how much { $substance } of { $plant } { $part } passes into the { $form }: all of it is counted

## What cannot be told

dose-gap-unsaid = nobody said how much { $substance } is in a serving
dose-gap-portion = nobody said how much { $plant } is in a serving
dose-gap-content = what { $plant } holds is not known ({ $row })
dose-gap-volume = the volume of a serving is not known, so its { $plant } cannot be counted ({ $row })
dose-gap-moisture-supposed = how much water the { $plant } holds is supposed: what it would weigh dried or fresh is not known
dose-gap-moisture = how much water the fresh { $plant } held is not known
dose-gap-extreme = the most that { $plant } may hold was not published
dose-gap-named = { $substance } is known to be in it, and nobody is known to have measured how much
dose-gap-draws = the sum is not a number
dose-settle-measure = a published measurement of { $substance } in this part and preparation would settle it

## Open questions

dose-open-age = age
dose-open-body-mass = body mass
dose-open-stage = { $plant }: { $stage }?

## Workings

dose-working-day = { $substance } in a day
dose-working-cup = from { $batch }
dose-working-servings = servings a day
dose-working-holds = { $substance } in a serving
dose-working-content = { $substance } in { $plant }
dose-working-transfer = share that reaches the cup
dose-working-supposed = the outing says so, and nobody weighed it
dose-working-in-the-sum = its part of the sum
dose-working-all-of-it = no share was measured, or it is eaten: all of it is counted
dose-working-portion = { $plant } in a serving
dose-working-moisture = water in the fresh { $plant }
formula-dose-day = what every cup of the day adds, summed draw by draw
formula-dose-cup = herb in a serving, times its solids, times what a gram holds, times the share that reaches the cup

## Faults

fault-confirmation-nobody = nobody stands for the decision on { $preparation }
    .want = the name of the person who confirms it
    .mend = Write who confirms it.
fault-confirmation-looser = the word on { $preparation } allows more than was worked out
    .want = the same, or less
    .mend = Mend what the decision rests on, and it is worked out anew.
fault-withhold-is-never-lifted = { $preparation } is withheld, and no word lifts that
    .want = the decision as it is
    .mend = Mend what the decision rests on, and it is worked out anew.
fault-clinician-without-role = the clinician's word on { $preparation } does not say what they are
    .want = a role such as pharmacist, doctor or midwife
    .mend = Write who was asked.
fault-clinician-without-date = the clinician's word on { $preparation } has no date
    .want = the day on which they said so
    .mend = Write the day.
fault-clinician-spoke-of-another = the clinician spoke of “{ $got }”, not of { $preparation }
    .want = a word on this preparation
    .mend = Ask about { $preparation }, or name it.
fault-uses-twice = “{ $got }” is listed twice
    .want = each identifier once in its table
    .mend = Take one of them out, or give it another identifier.
fault-uses-substance = no substance is called “{ $got }”
    .want = a substance that uses/substances.toml lists
    .mend = Mend the name, or list the substance with its source.
fault-uses-amount = { $got } is no possible amount
    .want = a number above nought; a range with its lower end first
    .mend = Mend the number, or leave the field out where no text gives one.
fault-uses-share = { $got } is no possible share
    .want = lowest, likeliest and highest share, in this order, from 0 to 1
    .mend = Mend the three numbers.
fault-uses-reaches-nothing = the row { $got } names no part or no preparation
    .want = at least one of each
    .mend = Write whole for every part, any for every preparation.
fault-uses-caution-taxon = no caution, usual amount or content names “{ $got }”
    .want = a name that a row in uses/ gives to a plant
    .mend = Mend the name, or take it out of caution_taxa.
