# Money: what an outing costs, what it brings, and the list for those who come.

### Amounts

# $number is written already: units, a point, cents.
money-gbp = £{ $number }
money-eur = €{ $number }
# $code: the code of the currency, such as USD.
money-other = { $code }{"\u00A0"}{ $number }
money = { $amount }

money-two-ways = it can be read in two ways
money-no-number = it is no number
money-finer-than-a-cent = it is finer than a cent
money-too-much = it is more than ten million
money-below-nothing = it is below nothing
money-other-currency = “{ $said }” is not how { $currency } is written
money-no-share = it is no share in per cent

fault-unreadable-money = “{ $got }” is no amount that can be counted with: { $why }.
    .want = An amount such as 28.00, or a share such as 1.5 %.
    .mend = Write units, a point and two digits, without marks between thousands.
fault-money-twice = Money stands in a second file, in { $got }.
    .want = One table “money” in all files together.
    .mend = Put the two together.
fault-cost-without-currency = A cost of { $got } is given, and no currency.
    .want = A table “money” with a currency, such as GBP.
    .mend = Add the table, or take the costs out.

### What is open, and what does not fit

money-open-costs = Not known: what it costs. No cost is listed, so nothing here says whether the outing carries itself.
money-open-price = Not known: what people pay. Neither a price nor a scale is given.
money-open-places = Not known: how many can come. The number of places is not given.
money-open-fee = Not known: what a payment costs. No fee for cards is given, so none is counted.
money-mind-full = { $coming } people have signed up, and there are { $places } places.
money-mind-never = At this price it never carries itself: each person who comes costs as much as they bring, or more.
money-mind-too-many = At this price it takes { $people } people to carry it, and there are { $places } places.
money-mind-scale-full = The scale counts on { $people } people, and there are { $places } places.
money-mind-scale-short = The scale is short of { $short }.

### Workings

money-working-cost = { $called }
money-working-once = paid once (F)
money-working-each = paid for each person (v)
money-working-people = people (n)
money-working-signed-up = as many as have signed up, as places are not known
money-working-price = price (p)
money-working-fee = one payment costs (c)
money-working-share = share of the price (s)
money-working-fixed = fixed amount (f)
money-working-a-head = what each person costs
money-working-leaves = what each person leaves (m)
money-working-break-even = the number of people from which it carries itself
money-working-left = what is left
money-working-rung = price that { $people ->
    [one] 1 person pays
   *[other] { $people } people pay
 }
money-working-taken = what the scale brings
money-working-fees = what its payments cost
money-working-costs = what so many people cost
money-working-scale = what is left of the scale
money-working-others = what the other prices bring
money-working-lowest = the least that the lowest price may be
formula-money-sum = all of them together
formula-money-a-head = a share of what is paid once, and what is paid for each, up to a whole cent
formula-money-fee = the share of the price, up to a whole cent, and the fixed amount
formula-money-leaves = the price, less what a person costs and what the payment costs (the contribution margin of OpenStax, Managerial Accounting, chapter 3)
formula-money-break-even = what is paid once over what each person leaves, up to a whole person (the break-even point of OpenStax, Managerial Accounting, chapter 3)
formula-money-left = what all of them leave, less what is paid once
formula-money-taken = each price times its people
formula-money-fees = each payment's fee times its people
formula-money-costs = what is paid once, and what is paid for each of them
formula-money-scale-left = what it brings, less what its payments and its people cost
formula-money-others = each of the other prices, its fee off, times its people
formula-money-lowest = found by trying: the first cent at which the lowest price carries what the others leave

### The page of the money

view-money-title = Money: { $name }
view-money-says = For those who run the outing. Every amount is in { $currency }, in whole cents; nothing is rounded in our favour.
view-money-open = What is not known
view-money-mind = What does not fit
view-money-costs = What it costs
view-money-costs-caption = Every cost
view-money-cost = what for
view-money-amount = amount
view-money-per = paid
view-money-per-outing = once
view-money-per-person = for each person
view-money-once = all that is paid once
view-money-each = all that is paid for each person
view-money-fee = one payment costs
# $share: such as 1.5 %; $fixed: money.
view-money-fee-says = { $share } of the price and { $fixed }

view-money-sizes = What each person costs
view-money-sizes-caption = By how many come
view-money-people = people
view-money-all-cost = all cost
view-money-a-head = each costs
view-money-least = price that carries it, fee paid
view-money-left-at = left at { $price }
view-money-evenly = Paid evenly to the cent by the { $people } who have signed up: { $shares }.
view-money-shares = { $people } × { $amount }

view-money-break-even = From how many on it carries itself
# $people: a number; $exact: the same with two decimals.
view-money-from = At { $price } it carries itself from { $people } people on ({ $exact } to be exact).
view-money-never = At { $price } it carries itself with no number of people.
view-money-price-open = Not known: a price, what it costs, or both.

view-money-scale = The sliding scale
view-money-workings = How each number came about
view-money-scale-caption = Prices, and how many are expected to choose each
view-money-rung = price
view-money-brings = brings
view-money-true-cost = true cost of a place, for { $people } people
view-money-taken = brings
view-money-mean = on average
view-money-fees = payments cost
view-money-scale-left = left
view-money-lowest = lowest price that the scale bears
view-money-scale-says = Show the true cost beside the prices. Each person chooses their own. Never ask for proof, and never ask why.

### The list for those who come

view-sign-title = Who comes: { $name }
view-sign-says = This list stays with the leader. Do not pin it up, and do not pass it round: one person's address is no business of another's.
view-sign-terms = On what terms
view-sign-terms-lines = The terms
view-sign-places = { $known } of { $places } places are taken.
view-sign-places-open = { $known } have signed up. Not known: how many can come.
view-sign-caption = One line for each party
view-sign-name = name
view-sign-contact = one way to reach you
view-sign-grown = 18 and over
view-sign-13 = 13 to 17
view-sign-9 = 9 to 12
view-sign-4 = 4 to 8
view-sign-0 = 0 to 3
view-sign-emergency = call if something happens
view-sign-price = pays
view-sign-read = terms read
view-sign-photo = pictures
# $prices: a list of money.
view-sign-prices = Prices to choose from: { $prices }. Write the one that was chosen; never ask why.
view-sign-photo-says = Pictures: nothing written means none. Else write what was said yes to. G: a group picture, for those who came. O: a copy of their own. W: the web. F: film. What is printed or copied cannot be called back. Under 16, the child and a parent both say yes. No child's name stands beside a picture.
view-sign-not-here = Nothing about health stands on this list. Whoever tastes something gets a form of their own for that.
view-sign-kept = Until when each is kept
view-sign-kept-caption = A rule of this house, without a source; the law of the place goes before it
view-sign-asked = what is asked
view-sign-why = what for
view-sign-until = kept until
view-sign-asked-name = name
view-sign-why-name = who was handed what, should a jar turn out bad
view-sign-asked-contact = one way to reach you
view-sign-why-contact = a change of plan, or something found afterwards
view-sign-asked-party = who comes with you, by age
view-sign-why-party = how many grown-ups the children need
view-sign-asked-emergency-contact = whom to call
view-sign-why-emergency-contact = if something happens on the day
view-sign-asked-price = what you pay
view-sign-why-price = the accounts
view-sign-asked-terms = that you read the terms
view-sign-why-terms = what comes back if you cannot come
view-sign-asked-photo = pictures
view-sign-why-photo = which pictures of you may be used, and where
view-sign-until-jar = { $days } days after the date on the last jar
view-sign-until-accounts = as long as the law wants accounts kept
view-sign-until-pictures = as long as a picture is used
