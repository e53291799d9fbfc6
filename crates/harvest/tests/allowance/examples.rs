use crate::*;

/// What binds, and what is open, by kind.
fn verdict(asked: &Asked, rules: &Rules) -> (Option<f64>, Kind, Vec<String>) {
    let allowance = allow(asked, rules);
    let amount = allowance.amount.known().map(|amount| amount.number());
    let open = allowance.open.iter().map(|question| question.why.id.clone()).collect();
    (amount, allowance.binding.unwrap().kind, open)
}

/// A fifth of the 698.9989645 g that stand there at least.
#[test]
fn a_share_is_of_the_lower_end_of_the_survey() {
    let allowance = allow(&asked(), &rules());
    let amount = allowance.amount.known().unwrap().number();
    assert!((amount / (0.2 * 698.9989645) - 1.0).abs() < 1e-9, "{amount}");
    assert_eq!(allowance.binding.unwrap().id, "leaf-perennial");
    assert!(allowance.open.is_empty());
    assert!(allowance.working.leaves().len() > 5);
}

#[test]
fn a_clump_found_in_one_plot_still_leaves_a_share_of_what_was_seen() {
    let clump = [3., 4., 4., 4., 14., 23., 247., 63., 2., 10.];
    let asked = Asked { survey: Some(survey(&clump)), ..asked() };
    let allowance = allow(&asked, &rules());
    let amount = allowance.amount.known().unwrap().number();
    assert!((amount - 0.2 * 374.0).abs() < 1e-9, "{amount}");
    let warns = |id: &str| allowance.notes.iter().any(|note| note.says.id == id);
    assert!(warns("harvest-reaches-below-zero"));
}

#[test]
fn no_survey_and_no_permission_are_questions_not_zero_and_not_yes() {
    let unsurveyed = Asked { survey: None, ..asked() };
    let (amount, kind, open) = verdict(&unsurveyed, &rules());
    assert_eq!((amount, kind, open), (None, Kind::Share, vec!["harvest-no-survey".to_owned()]));
    let unasked = Asked { leave: None, ..asked() };
    let (amount, kind, open) = verdict(&unasked, &rules());
    assert_eq!((amount, kind, open), (None, Kind::Leave, vec!["harvest-no-leave".to_owned()]));
}

#[test]
fn out_of_season_there_is_nothing_whatever_else_is_open() {
    let late = Asked { on: date(2027, 11, 1), leave: None, ..asked() };
    let (amount, kind, open) = verdict(&late, &rules());
    assert_eq!((amount, kind), (Some(0.0), Kind::Season));
    assert!(open.contains(&"harvest-no-leave".to_owned()));
}

#[test]
fn a_road_bars_within_its_distance_and_an_unmeasured_one_is_a_question() {
    let at = |metres: Option<f64>| {
        let mut asked = asked();
        asked.stand.hazards.remove("busy-road");
        if let Some(metres) = metres {
            let near = Nearness::At(Length::from_m(metres));
            asked.stand.hazards.insert("busy-road".to_owned(), near);
        }
        allow(&asked, &rules())
    };
    let says = |allowance: Allowance| {
        let hazard = allowance.candidates.into_iter().find(|c| c.rule.id == "busy-road");
        (allowance.amount.known().map(|amount| amount.number() > 0.0), hazard.unwrap().says.id)
    };
    assert_eq!(says(at(Some(50.0))), (Some(true), "harvest-hazard-far-enough".to_owned()));
    assert_eq!(says(at(Some(49.0))), (Some(false), "harvest-hazard-near".to_owned()));
    assert_eq!(says(at(Some(24.0))), (Some(false), "harvest-hazard-too-near".to_owned()));
    assert_eq!(says(at(Some(f64::NAN))), (Some(false), "harvest-hazard-too-near".to_owned()));
    assert_eq!(says(at(None)), (None, "harvest-hazard-unknown".to_owned()));
}

#[test]
fn a_distance_is_widened_freely_narrowed_with_a_reason_and_never_below_its_end() {
    let code = |metres: f64, why: Option<&str>| {
        let kept = rules().keep_off("busy-road", Length::from_m(metres), why);
        kept.map_err(|fault| fault.code)
    };
    assert_eq!(code(80.0, None), Ok(()));
    assert_eq!(code(30.0, None), Err("hazard-no-reason".to_owned()));
    assert_eq!(code(30.0, Some("  ")), Err("hazard-no-reason".to_owned()));
    assert_eq!(code(30.0, Some("a thick hedge, fruit washed")), Ok(()));
    assert_eq!(code(20.0, Some("a thick hedge")), Err("hazard-too-near".to_owned()));
    assert_eq!(code(f64::NAN, Some("a thick hedge")), Err("hazard-too-near".to_owned()));
}

#[test]
fn a_hazard_that_no_rule_knows_is_a_question() {
    let mut asked = asked();
    let near = Nearness::At(Length::from_m(20.0));
    asked.stand.hazards.insert("tannery".to_owned(), near);
    let (amount, _, open) = verdict(&asked, &rules());
    assert_eq!((amount, open), (None, vec!["harvest-hazard-unlisted".to_owned()]));
}

#[test]
fn water_plants_are_asked_about_grazing() {
    let mut asked = asked();
    asked.stand.in_water = None;
    asked.stand.hazards.remove("grazing");
    assert_eq!(allow(&asked, &rules()).amount.known(), None);
    asked.stand.in_water = Some(false);
    assert!(allow(&asked, &rules()).amount.known().is_some());
}

/// A share is of the season's crop: whoever comes second gets what is left of it, not a share of
/// what is left. Three people who each took a tenth of what they found would leave 72.9 %.
#[test]
fn pickers_share_one_share() {
    let (rules, mut asked) = (rules(), asked());
    let first = amount(&asked, &rules);
    let takes = |g: f64| Some(History { since: date(2020, 1, 1), takes: vec![take(DAY, g)] });
    asked.history = takes(first / 2.0);
    assert!((amount(&asked, &rules) - first / 2.0).abs() < 1e-9);
    asked.history = takes(first);
    assert_eq!(amount(&asked, &rules), 0.0);
    // Taken before the survey: the crop was so much larger, and the share with it.
    let early = take(date(2027, 4, 1), 100.0);
    asked.history = Some(History { since: date(2020, 1, 1), takes: vec![early] });
    assert!((amount(&asked, &rules) - (first + 0.2 * 100.0 - 100.0)).abs() < 1e-9);
}

#[test]
fn a_published_limit_binds_when_it_is_stricter_and_asks_for_its_rest() {
    let mut rules = rules();
    rules.ceilings.push(ceiling(0.1, 10));
    let with = |since: Date, takes: Vec<Taken>| Some(History { since, takes });
    let mut asked = Asked { history: with(date(2018, 3, 1), vec![]), ..asked() };
    let (amount, kind, _) = verdict(&asked, &rules);
    assert_eq!(kind, Kind::Ceiling);
    assert!((amount.unwrap() / (0.1 * 698.9989645) - 1.0).abs() < 1e-9);
    asked.history = with(date(2018, 3, 2), vec![]);
    let (amount, _, open) = verdict(&asked, &rules);
    assert_eq!((amount, open), (None, vec!["harvest-short-history".to_owned()]));
    asked.history = with(date(2010, 1, 1), vec![take(date(2018, 3, 1), 1.0)]);
    assert_eq!(verdict(&asked, &rules).1, Kind::Rest);
    asked.history = with(date(2010, 1, 1), vec![take(date(2018, 2, 28), 1.0)]);
    assert_eq!(verdict(&asked, &rules).1, Kind::Ceiling);
}

#[test]
fn a_permission_covers_what_it_names_and_no_more() {
    let rules = rules();
    let open = |change: fn(&mut Asked, &mut Permission)| {
        let mut asked = asked();
        let Some(Leave::Given(mut permission)) = asked.leave.take() else { unreachable!() };
        change(&mut asked, &mut permission);
        asked.leave = Some(Leave::Given(permission));
        let (amount, kind, mut open) = verdict(&asked, &rules);
        assert_eq!((amount, kind), (None, Kind::Leave));
        open.remove(0)
    };
    assert_eq!(open(|_, p| p.from = "Bob".to_owned()), "harvest-leave-of-another");
    assert_eq!(open(|a, _| a.site.landholder = None), "harvest-leave-of-another");
    assert_eq!(open(|_, p| p.until = date(2027, 5, 7)), "harvest-leave-not-now");
    assert_eq!(open(|_, p| p.given = date(2027, 5, 9)), "harvest-leave-not-now");
    assert_eq!(open(|_, p| p.purposes = vec![Purpose::OwnUse]), "harvest-leave-other-purpose");
    assert_eq!(open(|_, p| p.taxa.clear()), "harvest-leave-other-taxon");
    assert_eq!(open(|_, p| p.parts = vec![Part::YoungLeaf]), "harvest-leave-other-part");
}

#[test]
fn a_permitted_amount_is_used_up() {
    let (rules, mut asked) = (rules(), asked());
    let Some(Leave::Given(permission)) = &mut asked.leave else { unreachable!() };
    permission.at_most = Some(grams(50.0));
    assert_eq!(amount(&asked, &rules), 50.0);
    let brook = Taken { stand: "brook".to_owned(), ..take(date(2027, 2, 1), 30.0) };
    let other_wood = Taken { site: "hill".to_owned(), ..brook.clone() };
    let takes = vec![brook, other_wood];
    asked.history = Some(History { since: date(2020, 1, 1), takes });
    let (amount, kind, _) = verdict(&asked, &rules);
    assert_eq!((amount, kind), (Some(20.0), Kind::Leave));
}

#[test]
fn a_public_right_counts_only_where_a_law_that_was_read_gives_it() {
    let mut rules = rules();
    let mut asked = Asked { leave: Some(Leave::PublicRight), ..asked() };
    assert!(amount(&asked, &rules) > 0.0);
    asked.site.jurisdiction = Some("great-britain".to_owned());
    assert_eq!(verdict(&asked, &rules).2, ["harvest-no-public-right"]);
    asked.site.jurisdiction = Some("scotland".to_owned());
    rules.laws[1].from = Sourcing::bare(Standing::Remembered);
    assert_eq!(verdict(&asked, &rules).2, ["harvest-no-public-right"]);
}

#[test]
fn laws_forbid_ask_and_limit() {
    let with = |effect: Effect| {
        let mut rules = rules();
        rules.laws.push(law("extra", Scope::default(), effect));
        rules
    };
    assert_eq!(verdict(&asked(), &with(Effect::Forbidden)).0, Some(0.0));
    assert!(amount(&asked(), &with(Effect::AskOwner)) > 0.0, "the owner was asked");
    let by_right = Asked { leave: Some(Leave::PublicRight), ..asked() };
    assert_eq!(verdict(&by_right, &with(Effect::AskOwner)).1, Kind::Law);
    assert_eq!(verdict(&asked(), &with(Effect::Consent)).0, None);
    let daily = with(Effect::AtMost(grams(40.0), Period::Day));
    assert_eq!(amount(&asked(), &daily), 40.0);
    let mut again = asked();
    let takes = vec![take(date(2027, 5, 7), 5.0), take(DAY, 15.0)];
    again.history = Some(History { since: date(2020, 1, 1), takes });
    assert_eq!(amount(&again, &daily), 25.0);
}

#[test]
fn a_consent_holds_for_its_rule_and_until_its_day() {
    let mut rules = rules();
    rules.laws.push(law("extra", Scope::default(), Effect::Consent));
    let with = |rule: &str, until: Date, protected: Option<&str>| {
        let mut asked = Asked { protected: protected.map(str::to_owned), ..asked() };
        let from = "agency".to_owned();
        asked.site.consents.push(Consent { rule: rule.to_owned(), from, until });
        amount(&asked, &rules) > 0.0
    };
    assert!(with("extra", DAY, None));
    assert!(!with("extra", date(2027, 5, 7), None));
    assert!(!with("another", DAY, None));
    assert!(!with("extra", DAY, Some("protected in some counties")));
    rules.laws.pop();
    let noted = |rule: &str| {
        let mut asked = Asked { protected: Some("in some counties".to_owned()), ..asked() };
        let from = "agency".to_owned();
        asked.site.consents.push(Consent { rule: rule.to_owned(), from, until: DAY });
        verdict(&asked, &rules).0.is_some()
    };
    assert!(noted("protected") && !noted("another"));
}

#[test]
fn what_the_law_asks_about_first_must_be_said() {
    let mut unlisted = asked();
    unlisted.site.land = Some("moon".to_owned());
    assert_eq!(verdict(&unlisted, &rules()).2, ["harvest-land-unlisted"]);
    let purposeless = Asked { purpose: None, leave: Some(Leave::PublicRight), ..asked() };
    assert_eq!(verdict(&purposeless, &rules()).2, ["harvest-no-purpose"]);
}

/// What is not known lies in a rule that bars, and outside one that permits.
#[test]
fn a_rule_that_bars_covers_the_unknown_and_one_that_permits_does_not() {
    let scope = Scope { purposes: vec![Purpose::Sale], ..Scope::default() };
    let at = |purpose| {
        let asked = Asked { purpose, ..asked() };
        (scope.touches(&asked, &[]), scope.covers(&asked, &[]))
    };
    assert_eq!(at(Some(Purpose::Sale)), (true, true));
    assert_eq!(at(Some(Purpose::OwnUse)), (false, false));
    assert_eq!(at(None), (true, false));
}

#[test]
fn a_place_without_a_law_in_the_list_is_a_question() {
    let mut asked = asked();
    asked.site.jurisdiction = Some("atlantis".to_owned());
    assert_eq!(verdict(&asked, &rules()).2, ["harvest-no-law"]);
}

#[test]
fn a_survey_of_another_season_part_or_stand_is_none() {
    let why = |change: fn(&mut SurveyNotes)| {
        let mut notes = survey(&PLOTS).notes().clone();
        change(&mut notes);
        let asked = Asked { survey: Some(Survey::new(notes).unwrap()), ..asked() };
        verdict(&asked, &rules()).2
    };
    assert_eq!(why(|n| n.on = date(2026, 5, 1)), ["harvest-survey-of-another-season"]);
    assert_eq!(why(|n| n.on = date(2027, 5, 9)), ["harvest-survey-of-another-season"]);
    assert_eq!(why(|n| n.part = Part::Herb), ["harvest-survey-of-another-part"]);
    assert_eq!(why(|n| n.stand = "brook".to_owned()), ["harvest-survey-of-another-stand"]);
}

#[test]
fn pieces_are_whole_and_grams_of_them_need_a_weight() {
    let mut notes = survey(&PLOTS).notes().clone();
    notes.plots = Plots::Pieces(PLOTS.iter().map(|n| *n as u32).collect());
    let counted = |weights: &[f64], measure: Measure| {
        let piece_weights = weights.iter().copied().map(Mass::from_g).collect();
        let notes = SurveyNotes { piece_weights, ..notes.clone() };
        Asked { survey: Some(Survey::new(notes).unwrap()), measure, ..asked() }
    };
    let pieces = allow(&counted(&[], Measure::Pieces), &rules());
    assert_eq!(pieces.amount.known(), Some(&Quantity::Pieces(Pieces(139.0))));
    let unweighed = counted(&[], Measure::Mass);
    assert_eq!(verdict(&unweighed, &rules()).2, ["harvest-piece-weight-unknown"]);
    let mut weighed = counted(&[1.0; 10], Measure::Pieces);
    weighed.history = Some(History { since: date(2020, 1, 1), takes: vec![take(DAY, 30.0)] });
    assert_eq!(amount(&weighed, &rules()), 109.0);
}

/// Pieces become grams by the light end where they are a limit, by the heavy end where they were
/// taken.
#[test]
fn doubt_about_a_piece_always_allows_less() {
    let notes = SurveyNotes {
        piece_weights: [1.0, 3.0, 1.5, 2.5, 2.0].map(Mass::from_g).into(),
        ..survey(&PLOTS).notes().clone()
    };
    let survey = Survey::new(notes).unwrap();
    let piece = survey.piece().unwrap();
    assert!(piece.low < 1.5 && 2.5 < piece.high, "{piece:?}");
    let pieces = |n: f64| Quantity::Pieces(Pieces(n));
    let mut asked = Asked { survey: Some(survey), ..asked() };
    let untouched = amount(&asked, &rules());
    let mut limited = rules();
    let most = Effect::AtMost(pieces(10.0), Period::Year);
    limited.laws.push(law("extra", Scope::default(), most));
    assert!((amount(&asked, &limited) - 10.0 * piece.low).abs() < 1e-9);
    let taken = Taken { amount: pieces(10.0), ..take(DAY, 0.0) };
    asked.history = Some(History { since: date(2020, 1, 1), takes: vec![taken] });
    assert!((amount(&asked, &rules()) - (untouched - 10.0 * piece.high)).abs() < 1e-9);
}

/// Nobody knows which came first; counting the take as later than the survey allows less.
#[test]
fn a_take_on_the_day_of_the_survey_comes_off_what_was_surveyed() {
    let first = amount(&asked(), &rules());
    let takes = vec![take(date(2027, 5, 1), 50.0)];
    let history = Some(History { since: date(2020, 1, 1), takes });
    let left = amount(&Asked { history, ..asked() }, &rules());
    assert!((left - (first - 50.0)).abs() < 1e-9);
}

#[test]
fn a_share_for_the_narrower_part_decides() {
    let mut rules = rules();
    let young = Scope { parts: vec![Part::YoungLeaf], ..Scope::default() };
    let herb = Scope { parts: vec![Part::Herb], ..Scope::default() };
    let share = |id: &str, scope: Scope, share: f64| TakeRule {
        id: id.to_owned(),
        scope,
        share: ground::Fraction::from_share(share),
        ..ceiling(0.0, 1)
    };
    rules.shares.push(share("young", young, 0.1));
    rules.shares.push(share("herb", herb, 0.5));
    let id = |part: Part| rules.share_for(&Asked { part, ..asked() }).map(|r| r.id.as_str());
    assert_eq!(id(Part::Leaf), Some("leaf-perennial"));
    assert_eq!(id(Part::YoungLeaf), Some("young"));
    assert_eq!(id(Part::Flower), Some("herb"));
    assert_eq!(id(Part::Root), None);
}
