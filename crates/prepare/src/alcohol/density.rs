//! The general formula of OIML R 22 for the density of mixtures of ethanol and water.

/// Powers of the mass fraction at 20 °C.
const A: [f64; 12] = [
    998.201_23,
    -192.976_949_5,
    389.123_895_8,
    -1_668.103_923,
    13_522.154_41,
    -88_292.783_88,
    306_287.404_2,
    -613_838.123_4,
    747_017.299_8,
    -547_846.135_4,
    223_446.033_4,
    -39_032.854_26,
];

/// Powers of the temperature, from the first.
const B: [f64; 6] = [
    -0.206_185_13,
    -5.268_254_2e-3,
    3.613_001_3e-5,
    -3.895_770_2e-7,
    7.169_354e-9,
    -9.973_923_1e-11,
];

/// Mixed terms: one row for each power of the temperature, in it one coefficient for each power of
/// the mass fraction, both from the first.
const C: [&[f64]; 5] = [
    &[
        1.693_443_461_530_087e-1,
        -1.046_914_743_455_169e1,
        7.196_353_469_546_523e1,
        -7.047_478_054_272_792e2,
        3.924_090_430_035_045e3,
        -1.210_164_659_068_747e4,
        2.248_646_550_400_788e4,
        -2.605_562_982_188_164e4,
        1.852_373_922_069_467e4,
        -7.420_201_433_430_137e3,
        1.285_617_841_998_974e3,
    ],
    &[
        -1.193_013_005_057_01e-2,
        2.517_399_633_803_461e-1,
        -2.170_575_700_536_993,
        1.353_034_988_843_029e1,
        -5.029_988_758_547_014e1,
        1.096_355_666_577_57e2,
        -1.422_753_946_421_155e2,
        1.080_435_942_856_23e2,
        -4.414_153_236_817_392e1,
        7.442_971_530_188_783,
    ],
    &[
        -6.802_995_733_503_803e-4,
        1.876_837_790_289_664e-2,
        -2.002_561_813_734_156e-1,
        1.022_992_966_719_22,
        -2.895_696_483_903_638,
        4.810_060_584_300_675,
        -4.672_147_440_794_683,
        2.458_043_105_903_461,
        -5.411_227_621_436_812e-1,
    ],
    &[
        4.075_376_675_622_027e-6,
        -8.763_058_573_471_11e-6,
        6.515_031_360_099_368e-6,
        -1.515_784_836_987_21e-6,
    ],
    &[-2.788_074_354_782_409e-8, 1.345_612_883_493_354e-8],
];

/// Density in kg/m³ of a mixture with this mass fraction of ethanol (0 to 1) at this temperature
/// (°C; −20 to 40, above freezing).
///
/// Formula: ρ(p, t) = A₁ + Σ Aₖ pᵏ⁻¹ + Σ Bₖ xᵏ + Σ Σ Cᵢₖ pᵏ xⁱ with x = t − 20 (OIML R 22, *International
/// alcoholometric tables*, 1973; Directive 76/766/EEC, annex).
pub(super) fn regression(p: f64, celsius: f64) -> f64 {
    let x = celsius - 20.0;
    let mixed = C.map(|row| p * polynomial(row, p));
    polynomial(&A, p) + x * (polynomial(&B, x) + polynomial(&mixed, x))
}

/// Horner's rule, lowest power first.
pub(crate) fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
}
