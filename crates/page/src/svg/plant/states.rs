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
        AlongStem = "along-stem",
        PairedOnStem = "paired-on-stem",
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
        NoneAboveGround = "none-above-ground",
    }
    /// What is within a stem.
    StemInterior of "stem_interior" {
        Hollow = "hollow",
        Solid = "solid",
        Pithy = "pithy",
        NoneAboveGround = "none-above-ground",
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
        Achene = "achene",
        Nutlet = "nutlet",
        Schizocarp = "schizocarp",
        Nut = "nut",
        Samara = "samara",
        Utricle = "utricle",
        WoodyCone = "woody-cone",
        BerryLikeCone = "berry-like-cone",
        ArillateSeed = "arillate-seed",
        NakedSeed = "naked-seed",
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
    /// The way a whole plant grows.
    Habit of "habit" {
        Herb = "herb",
        Shrub = "shrub",
        Tree = "tree",
        Climber = "climber",
    }
    /// How long it lives.
    Duration of "duration" {
        Annual = "annual",
        Biennial = "biennial",
        Perennial = "perennial",
    }
    /// What holds a climber.
    Climbing of "climbing_by" {
        None = "none",
        Twining = "twining",
        Tendrils = "tendrils",
        AdhesiveDisks = "adhesive-disks",
        AerialRoots = "aerial-roots",
        Scrambling = "scrambling",
    }
    /// Whether leaves last through the winter.
    Persistence of "leaf_persistence" {
        Deciduous = "deciduous",
        Evergreen = "evergreen",
    }
    /// Which way the hooks of an edge point.
    Prickles of "leaf_prickle_direction" {
        Forward = "forward",
        Backward = "backward",
    }
    /// The upper face of a leaf.
    Face of "leaf_surface" {
        Smooth = "smooth",
        Hairy = "hairy",
        Glossy = "glossy",
        Rough = "rough",
        Waxy = "waxy",
        FeltedBelow = "felted-below",
        Wrinkled = "wrinkled",
        Pleated = "pleated",
        Stinging = "stinging",
        Mealy = "mealy",
    }
    /// The hairs of a leaf.
    Hairs of "leaf_hairs" {
        None = "none",
        Sparse = "sparse",
        SoftSimple = "soft-simple",
        Bristly = "bristly",
        Glandular = "glandular",
        BranchedFelted = "branched-felted",
        Silky = "silky",
        Stinging = "stinging",
        StarShaped = "star-shaped",
        Scaly = "scaly",
    }
    /// The lower side of a leaf.
    Underside of "leaf_underside" {
        Green = "green",
        Pale = "pale",
        Glaucous = "glaucous",
        WhiteBanded = "white-banded",
        WhiteMarked = "white-marked",
        WhiteFelted = "white-felted",
        Silky = "silky",
        Cobwebby = "cobwebby",
        RedTinged = "red-tinged",
        Mealy = "mealy",
        RustyFelted = "rusty-felted",
    }
    /// Whether the lower side shines.
    Sheen of "leaf_underside_sheen" {
        Matt = "matt",
        Glossy = "glossy",
    }
    /// Spots and bands of a blade.
    LeafMarks of "leaf_marks" {
        None = "none",
        DarkSpotted = "dark-spotted",
        WhiteFlecks = "white-flecks",
        PaleBand = "pale-band",
        WhiteMidline = "white-midline",
        WhiteMargined = "white-margined",
    }
    /// Fine dots of a blade.
    LeafDots of "leaf_dots" {
        None = "none",
        Translucent = "translucent",
        Black = "black",
        BrownBelow = "brown-below",
        Pitted = "pitted",
        GlandDottedBelow = "gland-dotted-below",
    }
    /// A leaf stalk cut across.
    PetioleForm of "petiole_form" {
        Round = "round",
        Channelled = "channelled",
        Winged = "winged",
        Triangular = "triangular",
        Flattened = "flattened",
    }
    /// What is within a leaf stalk.
    PetioleInterior of "petiole_interior" {
        Hollow = "hollow",
        Solid = "solid",
    }
    /// The gland on the back of a scale leaf.
    ScaleGland of "scale_gland" {
        Prominent = "prominent",
        Faint = "faint",
        Absent = "absent",
    }
    /// What stands at the foot of a leaf stalk.
    Stipules of "stipules" {
        Absent = "absent",
        Small = "small",
        Leafy = "leafy",
        Sheath = "sheath",
    }
    /// Whether a tube stands round the stem.
    StemSheath of "stem_sheath" {
        None = "none",
        PaperySheath = "papery-sheath",
    }
    /// How pith is built.
    PithForm of "pith_form" {
        Continuous = "continuous",
        Chambered = "chambered",
        DiaphragmAtNode = "diaphragm-at-node",
    }
    /// The surface of a stem.
    StemFace of "stem_surface" {
        Smooth = "smooth",
        Hairy = "hairy",
        Bristly = "bristly",
        Rough = "rough",
        Winged = "winged",
        Stinging = "stinging",
        Warty = "warty",
        Mealy = "mealy",
        Scaly = "scaly",
        NoneAboveGround = "none-above-ground",
    }
    /// How hairs run down a stem.
    HairLine of "stem_hair_line" {
        None = "none",
        OneLine = "one-line",
        TwoLines = "two-lines",
        AllRound = "all-round",
    }
    /// A twig where its leaves have gone.
    TwigFace of "twig_surface" {
        Smooth = "smooth",
        Hairy = "hairy",
        Silky = "silky",
        GreenRidged = "green-ridged",
        SmoothRoundScars = "smooth-round-scars",
        RoughPegged = "rough-pegged",
        ResinWarty = "resin-warty",
    }
    /// How a stem is armed.
    Armature of "stem_armature" {
        None = "none",
        Prickles = "prickles",
        Thorns = "thorns",
    }
    /// Spots and tinges of a stem.
    StemMarking of "stem_marking" {
        None = "none",
        RedTinged = "red-tinged",
        PurpleBlotched = "purple-blotched",
    }
    /// Whether a stem swells at its joints.
    Node of "node_form" {
        Even = "even",
        Swollen = "swollen",
    }
    /// The bark of a trunk.
    Bark of "bark" {
        Smooth = "smooth",
        Fissured = "fissured",
        Flaking = "flaking",
        Stripping = "stripping",
        Ringed = "ringed",
        Corky = "corky",
        ResinBlistered = "resin-blistered",
    }
    /// The form of a winter bud.
    Bud of "bud_form" {
        PointedDry = "pointed-dry",
        BluntResinous = "blunt-resinous",
        SmallScaly = "small-scaly",
    }
    /// What is below ground.
    Underground of "underground" {
        Rhizome = "rhizome",
        Taproot = "taproot",
        Fibrous = "fibrous",
        Tubers = "tubers",
        Bulb = "bulb",
        Corm = "corm",
        ChamberedRootstock = "chambered-rootstock",
        WoodyRoots = "woody-roots",
    }
    /// Whether one dark flower stands in an umbel.
    DarkFlower of "central_dark_flower" {
        Present = "present",
        Absent = "absent",
    }
    /// Whether a flower looks the same all round.
    Symmetry of "flower_symmetry" {
        Radial = "radial",
        Bilateral = "bilateral",
    }
    /// The stalk that bears the flowers.
    FlowerStalk of "flower_stalk" {
        LeaflessSingle = "leafless-single",
        Branched = "branched",
        Leafy = "leafy",
        Scaly = "scaly",
    }
    /// Small leaves under a whole umbel.
    Bracts of "bracts" {
        Absent = "absent",
        Few = "few",
        ManyDivided = "many-divided",
    }
    /// Small leaves under a small umbel.
    Bracteoles of "bracteoles" {
        Absent = "absent",
        Few = "few",
        Many = "many",
        DeflexedOneSided = "deflexed-one-sided",
    }
    /// Small leaves below a calyx.
    Epicalyx of "epicalyx" {
        ThreeFree = "three-free",
        SixToNineJoined = "six-to-nine-joined",
    }
    /// The floor of a daisy head.
    Receptacle of "receptacle" {
        Hollow = "hollow",
        Solid = "solid",
        Chaffy = "chaffy",
    }
    /// Whether the core comes off with the fruit.
    Core of "core_on_picking" {
        StaysInFruit = "stays-in-fruit",
        LeftOnPlant = "left-on-plant",
    }
    /// The surface of a fruit.
    FruitFace of "fruit_surface" {
        Shiny = "shiny",
        Smooth = "smooth",
        Dull = "dull",
        Bloomed = "bloomed",
        Hairy = "hairy",
        Ridged = "ridged",
        Winged = "winged",
        Spiny = "spiny",
        Warty = "warty",
        SpirallyTwisted = "spirally-twisted",
    }
    /// The tip of a loose nut.
    NutTip of "nut_tip" {
        Tufted = "tufted",
        Pointed = "pointed",
        None = "none",
    }
    /// The form of a seed.
    SeedShape of "seed_shape" {
        Crescent = "crescent",
        PearShaped = "pear-shaped",
        Rounded = "rounded",
        Flattened = "flattened",
        ThreeAngled = "three-angled",
    }
    /// Whether fruits hang or stand.
    Posture of "fruit_posture" {
        Drooping = "drooping",
        Erect = "erect",
    }
    /// What is left of the calyx on a fruit.
    CalyxLeft of "calyx_on_fruit" {
        Absent = "absent",
        StarCollar = "star-collar",
        CrownAtTip = "crown-at-tip",
    }
}
