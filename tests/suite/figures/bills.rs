//! Return bills.

use super::*;
use rust_decimal::Decimal;
use sendoff::figures::Detail;
use sendoff::figures::bill::{Bill, Line, Policy, places_of};
use sendoff::unit::MoneyRounding;

fn bill(unit: &str, fields: &str) -> Bill {
    let figure = of(unit, "return_total", fields);
    assert_eq!(figure.state, State::Ok);
    let Detail::Bill(bill) = figure.detail else { panic!("no bill") };
    *bill
}

fn sums(bill: &Bill) -> [String; 4] {
    [bill.taxed, bill.tax, bill.total, bill.back.expect("a deposit")].map(|sum| sum.to_string())
}

const WREN: &str = "nights: 5, returned: (odometer: (out: \"48213.4\", back: \"48941.9\"), \
    generator: (out: \"612.4\", back: \"634.1\"), fuel: (out: \"7/8\", back: \"5/8\"), \
    propane: (out: \"3/4\", back: \"1/2\"), black_full: true, late: \"80 min\", missing: [\"W03\"])";

/// Handbook E.3, FIG-25.
#[test]
fn the_worked_bills() {
    let wren = bill("wren", WREN);
    let amounts: Vec<String> = wren.lines.iter().map(|line| line.amount.to_string()).collect();
    assert_eq!(amounts, ["95.76", "26.80", "85.94", "20.00", "18.00", "95.00", "40.00", "24.00"]);
    assert_eq!(sums(&wren), ["277.56", "20.82", "426.32", "1073.68"]);
    let plover = bill(
        "plover",
        "nights: 3, returned: (odometer: (out: \"22904.6\", back: \"23391.2\"), fuel: (out: \"1\", back: \"7/8\"), \
         cassette_full: true, missing: [\"P05\"])",
    );
    assert_eq!(sums(&plover), ["142.88", "10.72", "195.85", "804.15"]);
}

/// 205.00 × 7.5 % is exactly 15.375 and must give 15.38 (handbook E.2).
#[test]
fn no_cent_is_lost_in_binary() {
    let policy = policy(MoneyRounding::HalfUp, "7.5", false);
    let line = Line::new("x", Decimal::ONE, dec("205.00"), true, &policy).expect("a line");
    assert_eq!(Bill::of(vec![line], &policy, None).expect("a bill").tax.to_string(), "15.38");
}

fn dec(text: &str) -> Decimal {
    text.parse().expect("a decimal")
}

fn policy(rounding: MoneyRounding, tax: &str, tax_by_line: bool) -> Policy {
    Policy { places: 2, rounding, tax: dec(tax), tax_by_line }
}

/// Python's `decimal`: pairs of half-even and half-up.
#[test]
fn halves_go_where_the_policy_says() {
    for (sum, even, up) in [
        ("0.125", "0.12", "0.13"),
        ("29.625", "29.62", "29.63"),
        ("10.005", "10.00", "10.01"),
        ("2.665", "2.66", "2.67"),
        ("0.135", "0.14", "0.14"),
        ("-0.125", "-0.12", "-0.13"),
        ("2.675", "2.68", "2.68"),
        ("1.005", "1.00", "1.01"),
    ] {
        assert_eq!(policy(MoneyRounding::HalfEven, "0", false).round(dec(sum)).to_string(), even, "{sum}");
        assert_eq!(policy(MoneyRounding::HalfUp, "0", false).round(dec(sum)).to_string(), up, "{sum}");
    }
}

/// A worked return with tariffs of three decimals (ECJ C-19/03: only totals need rounding), computed with Python's
/// `decimal`: tax on the sum is a cent more than tax by line.
#[test]
fn tax_by_line_differs_by_a_cent() {
    for (by_line, tax, total) in [(false, "31.93", "418.91"), (true, "31.92", "418.90")] {
        let policy = policy(MoneyRounding::HalfUp, "8.25", by_line);
        let lines: Vec<Line> = [
            ("20.625", "4.259"),
            ("97", "0.45"),
            ("5.6", "3.75"),
            ("6.3", "3.895"),
            ("1", "75.00"),
            ("1", "29.95"),
            ("3", "35"),
        ]
        .iter()
        .map(|(count, price)| Line::new("x", dec(count), dec(price), true, &policy).expect("a line"))
        .collect();
        let amounts: Vec<String> = lines.iter().map(|l| l.amount.to_string()).collect();
        assert_eq!(amounts, ["87.84", "43.65", "21.00", "24.54", "75.00", "29.95", "105.00"]);
        let bill = Bill::of(lines, &policy, None).expect("a bill");
        assert_eq!((bill.tax.to_string().as_str(), bill.total.to_string().as_str()), (tax, total));
    }
    // The lot's setting reaches the figure.
    let facts = facts_with("wren", &[], &[("tax_on: Bill", "tax_on: Line")]);
    let Detail::Bill(bill) = figure(&facts, "return_total", Some(&trip(WREN))).detail else {
        panic!("no bill")
    };
    assert_eq!(bill.tax.to_string(), "20.82", "7.18 + 2.01 + 1.50 + 7.13 + 3.00");
}

/// ISO 4217 (table of the package `iso4217` 1.16.20260101).
#[test]
fn currencies_have_their_decimals() {
    for (code, places) in [
        ("USD", 2),
        ("CAD", 2),
        ("EUR", 2),
        ("GBP", 2),
        ("AUD", 2),
        ("NZD", 2),
        ("MXN", 2),
        ("CHF", 2),
        ("SEK", 2),
        ("NOK", 2),
        ("HUF", 2),
        ("JPY", 0),
        ("KRW", 0),
        ("ISK", 0),
        ("KWD", 3),
        ("BHD", 3),
        ("TND", 3),
        ("CLF", 4),
    ] {
        assert_eq!(places_of(code), Some(places), "{code}");
    }
    assert_eq!(places_of("dollars"), None);
    let yen = Policy { places: 0, rounding: MoneyRounding::HalfUp, tax: Decimal::ZERO, tax_by_line: false };
    assert_eq!(yen.round(dec("1234.5")).to_string(), "1235");
}

#[test]
fn odd_returns() {
    // Under the allowances nothing is charged, and the deposit goes back whole.
    let none = bill(
        "wren",
        "nights: 9, returned: (odometer: (out: \"10.0\", back: \"500.9\"), fuel: (out: \"1/2\", back: \"7/8\"), late: \"30 min\")",
    );
    assert_eq!((none.lines.len(), sums(&none)[3].as_str()), (0, "1500.00"));
    // A reading that runs backward is a slip, not a gift.
    let back = of("wren", "return_total", "returned: (odometer: (out: \"500.0\", back: \"499.9\"))");
    assert_eq!(missing(&back), "trip.returned.odometer");
    assert_eq!(missing(&of("wren", "return_total", "returned: (missing: [\"W99\"])")), "kit.W99");
    assert_eq!(
        missing(&of("wren", "return_total", "returned: (missing: [\"W03\", \"W03\"])")),
        "kit.W03",
        "only one was lent"
    );
    assert_eq!(missing(&of("wren", "return_total", "returned: (cassette_full: true)")), "fees.cassette");
    assert_eq!(
        missing(&of("wren", "return_total", "returned: (fuel: (out: \"1 1/8\", back: \"1\"))")),
        "trip.returned.fuel"
    );
    // A minute past the grace is a started hour.
    assert_eq!(bill("wren", "returned: (late: \"31 min\")").lines[0].count, Decimal::ONE);
}
