//! The states that can be drawn, by their names in the glossary.

/// Declares the states of a character that have a drawing.
macro_rules! states {
    ($($(#[$doc:meta])* $name:ident of $character:literal { $($state:ident = $word:literal,)* })*) => {
        $(
            $(#[$doc])*
            #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
            pub(crate) enum $name { $($state,)* }

            impl $name {
                pub(crate) const CHARACTER: &'static str = $character;

                /// The state of this name, if it can be drawn.
                pub(crate) fn of(state: &str) -> Option<Self> {
                    match state {
                        $($word => Some(Self::$state),)*
                        _ => None,
                    }
                }
            }
        )*

        /// Every character with its states that can be drawn.
        pub(crate) const DRAWN: &[(&str, &[&str])] = &[$(($character, &[$($word),*]),)*];
    };
}

states! {
    /// How a leaf is put together.
    Build of "leaf_type" {
        Simple = "simple",
        Pinnate = "pinnate",
        Bipinnate = "bipinnate",
        Tripinnate = "tripinnate",
        Trifoliate = "trifoliate",
        Palmate = "palmate",
        Ternate = "ternate-compound",
        Needle = "needle",
        Scale = "scale",
    }
    /// How far a blade is cut.
    Division of "leaf_division" {
        ToMidrib = "to-midrib",
        ToPetiole = "to-petiole",
        Twice = "twice-divided",
        Thrice = "three-times-divided",
    }
    /// The outline of a blade or leaflet.
    Shape of "leaf_shape" {
        Ovate = "ovate",
        Elliptic = "elliptic",
        Lanceolate = "lanceolate",
        Obovate = "obovate",
        Linear = "linear",
        Cordate = "cordate",
        Orbicular = "orbicular",
        Triangular = "triangular",
        PinnatelyLobed = "pinnately-lobed",
        PalmatelyLobed = "palmately-lobed",
        Rhombic = "rhombic",
        Reniform = "reniform",
        Sagittate = "sagittate",
        Hastate = "hastate",
        Obcordate = "obcordate",
    }
    /// The edge of a blade or leaflet.
    Edge of "leaf_margin" {
        Entire = "entire",
        Serrate = "serrate",
        Dentate = "dentate",
        Crenate = "crenate",
        DoublySerrate = "doubly-serrate",
        Lobed = "lobed",
        Spiny = "spiny",
    }
    /// How the veins run.
    Veins of "leaf_venation" {
        Parallel = "parallel",
        Netted = "netted",
        Pinnate = "pinnate",
        Palmate = "palmate",
        Looped = "looped",
        Single = "single",
    }
    /// Where the side veins end.
    VeinEnds of "vein_endings" {
        Teeth = "teeth",
        Notches = "notches",
    }
    /// How a leaf sits.
    Foot of "leaf_base" {
        Petiolate = "petiolate",
        Sessile = "sessile",
        Sheathing = "sheathing",
        Clasping = "clasping",
        Decurrent = "decurrent",
        EquitantFan = "equitant-fan",
        Peltate = "peltate",
    }
    /// How leaves stand along a stem.
    Arrangement of "leaf_arrangement" {
        Alternate = "alternate",
        Opposite = "opposite",
        Whorled = "whorled",
        Rosette = "rosette",
        TwoRanked = "two-ranked",
        Fascicled = "fascicled",
    }
    /// How leaves come out of the ground.
    Emergence of "leaf_emergence" {
        Singly = "singly",
        Tufted = "tufted-from-base",
    }
    /// A narrow leaf cut across.
    LeafSection of "leaf_section" {
        Flat = "flat",
        Channelled = "channelled",
        Tube = "tube",
        HalfRound = "half-round",
        Triangular = "triangular",
        MidribRidged = "midrib-ridged",
    }
    /// How leafy twigs spread.
    Spray of "spray_form" {
        Flat = "flat",
        Bushy = "bushy",
        Pendulous = "pendulous",
    }
    /// How needles or scales stand on a twig.
    NeedleStand of "needle_whorl" {
        Spiral = "spiral",
        Pairs = "pairs",
        Threes = "whorl-of-three",
        Bundle = "bundle",
    }
    /// How a needle joins its twig.
    NeedleFoot of "needle_base" {
        StalkOnSmallPeg = "stalk-on-small-peg",
        StalkRunningDown = "stalk-running-down-twig",
        SuckerDisc = "sucker-disc",
        WoodyPeg = "woody-peg",
        SheathedBundle = "sheathed-bundle",
        Jointed = "jointed",
        StalkOnSmoothTwig = "stalk-on-smooth-twig",
    }
    /// A needle cut across.
    NeedleSection of "needle_section" {
        Flat = "flat",
        FourAngled = "four-angled",
        ThreeAngled = "three-angled",
        HalfRound = "half-round",
        Awl = "awl",
    }
    /// The tip of a needle.
    NeedleTip of "needle_tip" {
        Notched = "notched",
        Blunt = "blunt",
        Pointed = "pointed",
        Prickly = "prickly",
    }
    /// A stem cut across.
    StemSection of "stem_section" {
        Round = "round",
        Ridged = "ridged",
        Square = "square",
        Triangular = "triangular",
        HalfRound = "half-round",
        TwoEdged = "two-edged",
        Flattened = "flattened",
    }
    /// What is within a stem.
    StemInterior of "stem_interior" {
        Hollow = "hollow",
        Solid = "solid",
        Pithy = "pithy",
    }
    /// How flowers are put together.
    Inflorescence of "inflorescence" {
        Raceme = "raceme",
        Panicle = "panicle",
        Cyme = "cyme",
        Solitary = "solitary",
        Corymb = "corymb",
        CompoundUmbel = "compound-umbel",
        Head = "head",
        Umbel = "umbel",
        Spike = "spike",
        Catkin = "catkin",
        Spadix = "spadix",
    }
    /// How many petals, of a flower that stands alone.
    Petals of "petal_count" {
        None = "0",
        Three = "3",
        Four = "4",
        Five = "5",
        Six = "6",
        Many = "many",
    }
    /// The kind of a fruit.
    FruitKind of "fruit_type" {
        Berry = "berry",
        Drupe = "drupe",
        Pome = "pome",
        Aggregate = "aggregate",
        Hip = "hip",
        Capsule = "capsule",
        Follicle = "follicle",
        Legume = "legume",
        Silique = "silique",
        Schizocarp = "schizocarp",
        Samara = "samara",
        BerryLikeCone = "berry-like-cone",
        ArillateSeed = "arillate-seed",
    }
    /// The form of a cone.
    ConeForm of "cone_form" {
        ThinScales = "overlapping-thin-scales",
        Shields = "shield-scales",
        BerryLike = "berry-like",
        CupAril = "cup-aril",
        BreakingUp = "cylindric-breaking-up",
        CylindricWhole = "cylindric-whole",
        EggShaped = "egg-shaped-whole",
        ThreePronged = "three-pronged-bracts",
    }
    /// How fruits stand.
    FruitStand of "fruit_arrangement" {
        Cluster = "cluster",
        Singly = "singly",
        Paired = "paired",
    }
    /// The husk of a nut.
    Husk of "husk" {
        FewStoutSpines = "few-stout-spines",
        DenseFineSpines = "dense-fine-spines",
        LeafyLobed = "leafy-lobed",
        ScalyCup = "scaly-cup",
        SmoothThick = "smooth-thick",
        BristlyFourValved = "bristly-four-valved",
    }
}
