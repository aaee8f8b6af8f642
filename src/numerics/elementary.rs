//! The power of e and the logarithm in plain arithmetic, without a table, a branch or a
//! call: loops over them become vector instructions.
//!
//! # Source
//! Powers of two split off as usual; the logarithm by the series in `f / (2 + f)` whose
//! coefficients stand in `e_log.c` of the library fdlibm (from memory), the power by that of
//! Taylor. Both within two units of the last place of the standard
//! library's, which a test asks.

/// Bits of a fraction, and of the exponent of one.
const FRACTION_BITS: u32 = 52;
const FRACTION: u64 = (1 << FRACTION_BITS) - 1;
const BIAS: u64 = 1023;
/// The root of a half, down to the bits that place it.
const ROOT_OF_HALF: u64 = 0x3fe6_a09e_0000_0000;
const ONE: u64 = BIAS << FRACTION_BITS;
/// 2^52: whole numbers below it are read off the bits of their sum with it.
const WHOLE: f64 = 4_503_599_627_370_496.0;
/// 1.5 times 2^52: a sum with it is rounded to a whole number.
const ROUNDING: f64 = 6_755_399_441_055_744.0;
/// The logarithm of two in a part with room for a factor, and the rest.
const LN_2_HIGH: f64 = 6.931_471_803_691_238e-1;
const LN_2_LOW: f64 = 1.908_214_929_270_587_7e-10;
const LOGARITHM: [f64; 7] = [
    6.666_666_666_666_735e-1,
    3.999_999_999_940_942e-1,
    2.857_142_874_366_239e-1,
    2.222_219_843_214_978_4e-1,
    1.818_357_216_161_805e-1,
    1.531_383_769_920_937_3e-1,
    1.479_819_860_511_658_6e-1,
];
/// One over the factorials of 13 down to 2.
const POWER: [f64; 12] = [
    1.0 / 6_227_020_800.0,
    1.0 / 479_001_600.0,
    1.0 / 39_916_800.0,
    1.0 / 3_628_800.0,
    1.0 / 362_880.0,
    1.0 / 40_320.0,
    1.0 / 5_040.0,
    1.0 / 720.0,
    1.0 / 120.0,
    1.0 / 24.0,
    1.0 / 6.0,
    1.0 / 2.0,
];
/// Powers whose result neither overflows nor loses digits.
const MOST_POWER: f64 = 708.0;

/// Whether [`ln`] holds: positive, finite, no fewer digits than usual.
pub(super) fn has_plain_ln(value: f64) -> bool {
    (f64::MIN_POSITIVE..=f64::MAX).contains(&value)
}

/// Natural logarithm where [`has_plain_ln`].
#[inline]
pub(super) fn ln(value: f64) -> f64 {
    let shifted = value.to_bits().wrapping_add(ONE - ROOT_OF_HALF);
    let exponent = f64::from_bits((shifted >> FRACTION_BITS) | WHOLE.to_bits()) - WHOLE;
    let twos = exponent - BIAS as f64;
    let near_one = f64::from_bits((shifted & FRACTION) + ROOT_OF_HALF);
    let over = near_one - 1.0;
    let share = over / (over + 2.0);
    let square = share * share;
    let series = LOGARITHM
        .iter()
        .rev()
        .fold(0.0, |sum, weight| (sum + weight) * square);
    let half = over * over * 0.5;
    twos * LN_2_HIGH - ((half - (share * (half + series) + twos * LN_2_LOW)) - over)
}

/// Whether [`exp`] holds: neither so large nor so small that digits are lost.
pub(super) fn has_plain_exp(power: f64) -> bool {
    power.abs() <= MOST_POWER
}

/// e to a power where [`has_plain_exp`].
#[inline]
pub(super) fn exp(power: f64) -> f64 {
    let rounded = power * std::f64::consts::LOG2_E + ROUNDING;
    let twos = rounded - ROUNDING;
    let rest = (power - twos * LN_2_HIGH) - twos * LN_2_LOW;
    let series = POWER.iter().fold(0.0, |sum, weight| sum * rest + weight);
    let near_one = 1.0 + (rest + rest * rest * series);
    f64::from_bits(
        near_one
            .to_bits()
            .wrapping_add(rounded.to_bits() << FRACTION_BITS),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_are_those_of_the_standard_library() {
        let apart = |found: f64, expected: f64| (found / expected - 1.0).abs() / f64::EPSILON;
        for step in -7000..=7000 {
            let power = f64::from(step) * 0.1;
            let value = power.exp();
            assert!(apart(exp(power), value) <= 2.0, "{power}");
            if step != 0 {
                assert!(apart(ln(value), value.ln()) <= 2.0, "{value}");
            }
        }
        for step in 1..2000 {
            let value = f64::from(step) / 1000.0;
            let missed = (ln(value) - value.ln()).abs();
            assert!(missed <= 2.0 * f64::EPSILON * value.ln().abs(), "{value}");
        }
    }

    #[test]
    fn what_is_no_plain_number_is_told() {
        let odd = [0.0, -1.0, f64::NAN, f64::INFINITY, 1e-310];
        assert!(odd.into_iter().all(|value| !has_plain_ln(value)));
        assert!(
            [709.0, -709.0, f64::NAN]
                .into_iter()
                .all(|power| !has_plain_exp(power))
        );
    }
}
