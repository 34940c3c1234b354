//! Rounding and money.

use proptest::prelude::*;
use rust_decimal::Decimal;

use super::super::rounding::{rounded_decimal, settled};
use super::super::{Money, MoneyFault, Rounding, rounded, rounded_to_step};

fn text(value: Option<Decimal>) -> String {
    value.map_or_else(|| "none".to_owned(), |value| value.to_string())
}

/// Handbook E.3 and 0.6: the raw value and what is shown.
#[test]
fn worked_examples_of_the_handbook_round_in_the_safe_direction() {
    let examples = [
        (383.64, 0, Rounding::Up, "384"),
        (237.69, 0, Rounding::Up, "238"),
        (366.96, 0, Rounding::Up, "367"),
        (883_468.0 / 30_000.0, 1, Rounding::Down, "29.4"),
        (883_468.0 / 160_950.0, 1, Rounding::Down, "5.4"),
        (27.5 / 0.5, 1, Rounding::Down, "55.0"),
        (27.5 / 0.7, 1, Rounding::Down, "39.2"),
        (4000.0 * (1.0 - 0.035 * 4.7), 0, Rounding::Down, "3342"),
        (325.0 / 120.0, 1, Rounding::Up, "2.8"),
        (80.0 / 48.7, 1, Rounding::Down, "1.6"),
        (libm::sqrt(270.0 * 270.0 + 94.0 * 94.0) - 270.0, 0, Rounding::Up, "16"),
        (65.0 * 0.9, 0, Rounding::Up, "59"),
        (65.0 * 0.8, 0, Rounding::Up, "52"),
        (75.0 * 0.8, 0, Rounding::Up, "60"),
        (380.0 * 5.0 * 0.75 / 12.8, 0, Rounding::Down, "111"),
    ];
    for (value, places, rounding, wanted) in examples {
        assert_eq!(text(rounded(value, places, rounding)), wanted, "{value}");
    }
}

#[test]
fn noise_below_twelve_digits_does_not_move_a_number() {
    assert_eq!(text(rounded(0.1 + 0.2, 1, Rounding::Up)), "0.3");
    assert_eq!(text(rounded(58.000_000_000_000_01, 0, Rounding::Up)), "58");
    assert_eq!(text(rounded(57.999_999_999_999_99, 0, Rounding::Down)), "58");
    assert_eq!(text(rounded(0.3 - 0.1 - 0.2, 0, Rounding::Up)), "0");
    assert_eq!(text(rounded(-4e-13, 0, Rounding::Down)), "0");
    assert_eq!(text(rounded(58.001, 0, Rounding::Up)), "59");
}

#[test]
fn directions_hold_below_zero_and_leave_no_minus_zero() {
    assert_eq!(text(rounded(-6.67, 0, Rounding::Up)), "-6");
    assert_eq!(text(rounded(-6.01, 0, Rounding::Down)), "-7");
    assert_eq!(text(rounded(-0.4, 0, Rounding::Up)), "0");
    assert_eq!(text(rounded(-0.4, 0, Rounding::Nearest)), "0");
    assert_eq!(text(rounded(2.5, 0, Rounding::Nearest)), "3");
    assert_eq!(text(rounded(-2.5, 0, Rounding::Nearest)), "-3");
    assert_eq!(text(rounded(1.0 / 3.0, 4, Rounding::Exact)), "0.333333333");
    assert_eq!(text(rounded(12.75, 0, Rounding::Exact)), "12.75");
    assert_eq!(text(rounded(2.0, 1, Rounding::Down)), "2.0");
}

#[test]
fn twelve_digits_are_taken_half_even() {
    // Both doubles are exact, so each is a true tie at the twelfth digit.
    assert_eq!(text(settled(100_000_000_000.5)), "100000000000");
    assert_eq!(text(settled(100_000_000_001.5)), "100000000002");
}

#[test]
fn what_is_no_number_is_not_shown() {
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300, -1e29] {
        assert_eq!(rounded(value, 0, Rounding::Nearest), None, "{value}");
    }
    assert_eq!(text(rounded(5e-324, 2, Rounding::Up)), "0.00");
    assert_eq!(rounded_to_step(1.0, Decimal::ZERO, Rounding::Up), None);
}

#[test]
fn steps_are_whole() {
    let eighth: Decimal = "0.125".parse().unwrap();
    assert_eq!(text(rounded_to_step(0.7, eighth, Rounding::Down)), "0.625");
    assert_eq!(text(rounded_to_step(0.7, eighth, Rounding::Up)), "0.750");
    assert_eq!(text(rounded_to_step(0.6875, eighth, Rounding::Nearest)), "0.750");
    assert_eq!(rounded_to_step(7.0 / 8.0, eighth, Rounding::Down), Some("0.875".parse().unwrap()));
}

/// Half up as Council Regulation (EC) 1103/97 article 5 and 40 CFR 50.8(d) have it; values computed with the
/// decimal module of Python (`ROUND_HALF_UP`).
#[test]
fn money_rounds_half_up() {
    for (sum, wanted) in [
        ("0.125", "0.13"),
        ("29.625", "29.63"),
        ("10.005", "10.01"),
        ("2.665", "2.67"),
        ("0.135", "0.14"),
        ("-0.125", "-0.13"),
        ("1.005", "1.01"),
        ("87.841875", "87.84"),
        ("24.5385", "24.54"),
        ("31.925850", "31.93"),
    ] {
        assert_eq!(Money::round_half_up(sum.parse().unwrap()).unwrap().to_string(), wanted, "{sum}");
    }
}

/// Handbook E.3, FIG-25: the bill of the Wren, and the trap of E.2.
#[test]
fn a_bill_adds_up_to_the_cent() {
    let money = |text: &str| text.parse::<Money>().unwrap();
    let sum = |lines: &[&str]| lines.iter().fold(Money::ZERO, |sum, line| sum.plus(money(line)).unwrap());
    let rate = |text: &str| text.parse::<Decimal>().unwrap();
    let fuel = money("6.25").times(rate("13.75")).unwrap();
    assert_eq!(fuel.to_string(), "85.94");
    let taxed = sum(&["95.76", "26.80", "20.00", "95.00", "40.00"]);
    assert_eq!(taxed.to_string(), "277.56");
    let tax = taxed.times(rate("0.075")).unwrap();
    assert_eq!(tax.to_string(), "20.82");
    let total = taxed.plus(tax).unwrap().plus(sum(&["85.94", "18.00", "24.00"])).unwrap();
    assert_eq!(total.to_string(), "426.32");
    assert_eq!(money("1500.00").minus(total).unwrap().to_string(), "1073.68");
    assert_eq!(money("205.00").times(rate("0.075")).unwrap().to_string(), "15.38");
}

#[test]
fn money_is_read_from_whole_cents_only() {
    assert_eq!("45".parse::<Money>().unwrap().to_string(), "45.00");
    assert_eq!("-5.00".parse::<Money>().unwrap().to_string(), "-5.00");
    assert_eq!("-0.00".parse::<Money>().unwrap(), Money::ZERO);
    assert_eq!("-0.00".parse::<Money>().unwrap().to_string(), "0.00");
    for wrong in
        ["", "$45.00", "45,00", "1,500.00", "NaN", "4.5e1", ".50", "45.", " 45.00", "+45.00", "٤٥.٠٠"]
    {
        assert!(matches!(wrong.parse::<Money>(), Err(MoneyFault::NotMoney(_))), "{wrong}");
    }
    for wrong in ["45.5", "45.005"] {
        assert!(matches!(wrong.parse::<Money>(), Err(MoneyFault::Places(_))), "{wrong}");
    }
    assert_eq!("1000000000.00".parse::<Money>(), Err(MoneyFault::TooLarge));
    assert_eq!(
        "999999999.99".parse::<Money>().unwrap().plus("0.01".parse().unwrap()),
        Err(MoneyFault::TooLarge)
    );
    assert_eq!("9.00".parse::<Money>().unwrap().times(Decimal::MAX), Err(MoneyFault::TooLarge));
    assert!(serde_json::from_str::<Money>("45.0").unwrap_err().to_string().contains("45.00"));
    assert!(ron::from_str::<Money>("45.00").is_err(), "a float is no sum");
    assert_eq!(serde_json::to_string(&"45".parse::<Money>().unwrap()).unwrap(), "\"45.00\"");
}

proptest! {
    /// A number that is rounded lies on its side, less than one last digit away.
    #[test]
    fn rounding_stays_on_its_side(value in -1e6_f64..1e6, places in 0_u32..4) {
        let exact = settled(value).unwrap();
        let unit = Decimal::new(1, places);
        let down = rounded(value, places, Rounding::Down).unwrap();
        let up = rounded(value, places, Rounding::Up).unwrap();
        let nearest = rounded(value, places, Rounding::Nearest).unwrap();
        prop_assert!(down <= exact && exact - down < unit);
        prop_assert!(up >= exact && up - exact < unit);
        prop_assert!((nearest - exact).abs() * Decimal::TWO <= unit);
        prop_assert_eq!(rounded_decimal(down, places, Rounding::Up), down);
    }

    #[test]
    fn money_reads_back(cents in -99_999_999_999_i64..99_999_999_999) {
        let money = Money::round_half_up(Decimal::new(cents, 2)).unwrap();
        prop_assert_eq!(money.to_string().parse::<Money>().unwrap(), money);
    }
}
