use crate::*;
use proptest::prelude::*;

/// Weights found in two or more plots of fifty.
fn plots() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(0.0..200.0f64, 2..20)
}

/// Everything in an allowance that somebody could have known, made unknown one at a time.
fn fade(asked: &Asked, which: usize) -> Option<Asked> {
    let mut faded = asked.clone();
    match which {
        0 => faded.survey = None,
        1 => faded.leave = None,
        2 => faded.history = None,
        3 => faded.season = None,
        4 => faded.life_form = None,
        5 => faded.purpose = None,
        6 => faded.site.landholder = None,
        7 => faded.site.land = None,
        8 => faded.site.jurisdiction = None,
        9 => faded.stand.in_water = None,
        10 => faded.site.consents.clear(),
        _ => {
            let hazard = faded.stand.hazards.keys().nth(which - 11)?.clone();
            faded.stand.hazards.remove(&hazard);
        }
    }
    Some(faded)
}

/// A wish of any kind: near or far, with much or little taken, by anybody's leave.
fn any_asked() -> impl Strategy<Value = Asked> {
    let leave = prop_oneof![
        Just(None),
        Just(Some(Leave::PublicRight)),
        prop::option::of(0.0..300.0f64).prop_map(|most| {
            let Some(Leave::Given(permission)) = asked().leave else { unreachable!() };
            Some(Leave::Given(Permission { at_most: most.map(grams), ..permission }))
        }),
    ];
    let takes = prop::collection::vec((0..600i32, 0.0..80.0f64), 0..4);
    let water = prop::option::of(any::<bool>());
    (plots(), leave, takes, 20.0..80.0f64, water, 1..=12i8).prop_map(
        |(plots, leave, takes, road, in_water, month)| {
            let mut asked = asked();
            asked.on = date(2027, month, 8);
            asked.survey = Some(survey(&plots));
            asked.leave = leave;
            let ago = |(days, g): (i32, f64)| take(DAY - jiff::Span::new().days(days), g);
            let takes = takes.into_iter().map(ago).collect();
            asked.history = Some(History { since: date(2020, 1, 1), takes });
            let near = Nearness::At(Length::from_m(road));
            asked.stand.hazards.insert("busy-road".to_owned(), near);
            asked.stand.in_water = in_water;
            asked
        },
    )
}

fn any_rules() -> impl Strategy<Value = Rules> {
    let effects = prop::collection::vec(
        prop_oneof![
            Just(Effect::AskOwner),
            Just(Effect::Consent),
            Just(Effect::Note),
            (0.0..200.0f64).prop_map(|g| Effect::AtMost(grams(g), Period::Year)),
        ],
        0..3,
    );
    (effects, prop::option::of((0.0..=1.0f64, 1..4u16))).prop_map(|(effects, limit)| {
        let mut rules = rules();
        let laws = effects.into_iter().map(|effect| law("extra", Scope::default(), effect));
        rules.laws.extend(laws);
        rules.ceilings.extend(limit.map(|(share, years)| ceiling(share, years)));
        rules
    })
}

proptest! {
    #[test]
    fn making_anything_unknown_never_raises_it(
        asked in any_asked(), rules in any_rules(), which in 0..14usize,
    ) {
        if let Some(faded) = fade(&asked, which) {
            prop_assert!(amount(&faded, &rules) <= amount(&asked, &rules));
        }
    }

    #[test]
    fn it_never_exceeds_the_stand_nor_falls_below_nothing(
        asked in any_asked(), rules in any_rules(),
    ) {
        let crop = asked.survey.as_ref().unwrap().crop(Measure::Mass).ok().unwrap();
        let got = amount(&asked, &rules);
        prop_assert!((0.0..=crop.at_least.number()).contains(&got), "{got}");
    }

    #[test]
    fn taking_more_before_never_raises_it(
        asked in any_asked(), rules in any_rules(), days in 0..600i32, g in 0.0..200.0f64,
    ) {
        let mut more = asked.clone();
        let on = DAY - jiff::Span::new().days(days);
        more.history.as_mut().unwrap().takes.push(take(on, g));
        // Sums that differ in one term may differ in the last bit of a few hundred grams.
        prop_assert!(amount(&more, &rules) <= amount(&asked, &rules) + 1e-9);
    }

    #[test]
    fn the_order_of_plots_takes_and_rules_changes_not_a_bit(
        asked in any_asked(), mut rules in any_rules(), mut plots in plots(),
    ) {
        let straight = allow(&Asked { survey: Some(survey(&plots)), ..asked.clone() }, &rules);
        plots.reverse();
        rules.hazards.reverse();
        let turned = allow(&Asked { survey: Some(survey(&plots)), ..asked }, &rules);
        let bytes = |a: &Allowance| serde_json::to_string(&(&a.amount, &a.binding)).unwrap();
        prop_assert_eq!(bytes(&straight), bytes(&turned));
    }

    /// The same mean and spread from fewer plots.
    #[test]
    fn a_smaller_survey_never_raises_it(
        n in 2..49u32, mean in 0.0..100.0f64, sd in 0.0..100.0f64,
    ) {
        let least = |n: u32| {
            let sample = Sample::from_moments(n, mean, sd * sd).unwrap();
            let total = sample.total_of(50, Confidence::NINETEEN_IN_TWENTY);
            total.low.max(mean * f64::from(n))
        };
        prop_assert!(least(n) <= least(n + 1) + 1e-9);
    }

    #[test]
    fn an_answer_survives_being_written_and_read(asked in any_asked(), rules in any_rules()) {
        let allowance = allow(&asked, &rules);
        let text = serde_json::to_string(&allowance).unwrap();
        prop_assert_eq!(serde_json::from_str::<Allowance>(&text).unwrap(), allowance);
    }
}
