//! The return bill: decimals only, rounded as the lot says, once a line and once for the tax.

use rust_decimal::{Decimal, RoundingStrategy};

use crate::measure::rounding::settled;
use crate::measure::{Measure, Money, Quantity, Rounding};
use crate::unit::{MoneyRounding, Value};

use super::trip::{Joined, Returned};
use super::work::{Work, quantity};
use super::{Asked, Detail, Figure};

/// Currencies that do not have two decimals (ISO 4217).
const PLACES: [(&str, u32); 26] = [
    ("BIF", 0),
    ("CLP", 0),
    ("DJF", 0),
    ("GNF", 0),
    ("ISK", 0),
    ("JPY", 0),
    ("KMF", 0),
    ("KRW", 0),
    ("PYG", 0),
    ("RWF", 0),
    ("UGX", 0),
    ("VND", 0),
    ("VUV", 0),
    ("XAF", 0),
    ("XOF", 0),
    ("XPF", 0),
    ("UYI", 0),
    ("BHD", 3),
    ("IQD", 3),
    ("JOD", 3),
    ("KWD", 3),
    ("LYD", 3),
    ("OMR", 3),
    ("TND", 3),
    ("CLF", 4),
    ("UYW", 4),
];

/// Decimals of a currency by its ISO 4217 code; none for what is no code.
#[must_use]
pub fn places_of(currency: &str) -> Option<u32> {
    let is_code = currency.len() == 3 && currency.bytes().all(|b| b.is_ascii_uppercase());
    let other = PLACES.iter().find(|(code, _)| *code == currency).map(|(_, places)| *places);
    is_code.then(|| other.unwrap_or(2))
}

/// How sums are rounded and taxed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Policy {
    /// Decimals of the currency.
    pub places: u32,
    /// Half up or half to even.
    pub rounding: MoneyRounding,
    /// Tax in percent.
    pub tax: Decimal,
    /// Whether tax is rounded on each line instead of once.
    pub tax_by_line: bool,
}

impl Policy {
    /// A sum rounded; halves away from zero, or to the even digit.
    #[must_use]
    pub fn round(&self, sum: Decimal) -> Decimal {
        let strategy = match self.rounding {
            MoneyRounding::HalfUp => RoundingStrategy::MidpointAwayFromZero,
            MoneyRounding::HalfEven => RoundingStrategy::MidpointNearestEven,
        };
        let mut rounded = sum.round_dp_with_strategy(self.places, strategy);
        rounded.rescale(self.places);
        rounded
    }
}

/// A line of the bill.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// What it is for: `extra-miles`, `missing-W03`.
    pub id: String,
    /// How many.
    pub count: Decimal,
    /// Price of each.
    pub price: Decimal,
    /// The sum, rounded.
    pub amount: Decimal,
    /// Whether it is a service, which is taxed.
    pub taxed: bool,
}

impl Line {
    /// A line; none when the sum is beyond any bill.
    #[must_use]
    pub fn new(id: &str, count: Decimal, price: Decimal, taxed: bool, policy: &Policy) -> Option<Self> {
        let amount = policy.round(count.checked_mul(price)?);
        Some(Self { id: id.into(), count, price, amount, taxed })
    }
}

/// A bill.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bill {
    /// Its lines.
    pub lines: Vec<Line>,
    /// Sum of the taxed lines.
    pub taxed: Decimal,
    /// Tax.
    pub tax: Decimal,
    /// All together.
    pub total: Decimal,
    /// Deposit held, where it is known.
    pub deposit: Option<Decimal>,
    /// What goes back to the renter; below zero the renter owes it.
    pub back: Option<Decimal>,
}

impl Bill {
    /// Adds lines up; none when a sum is beyond any bill.
    #[must_use]
    pub fn of(lines: Vec<Line>, policy: &Policy, deposit: Option<Decimal>) -> Option<Self> {
        let hundred = Decimal::from(100);
        let sum = |taxed_only: bool| {
            let mut amounts = lines.iter().filter(|l| l.taxed || !taxed_only).map(|l| l.amount);
            amounts.try_fold(Decimal::ZERO, Decimal::checked_add)
        };
        let (all, taxed) = (sum(false)?, sum(true)?);
        let of = |amount: Decimal| Some(policy.round(amount.checked_mul(policy.tax)?.checked_div(hundred)?));
        let tax = if policy.tax_by_line {
            let mut each = lines.iter().filter(|l| l.taxed);
            each.try_fold(Decimal::ZERO, |sum, line| sum.checked_add(of(line.amount)?))?
        } else {
            of(taxed)?
        };
        let mut total = all.checked_add(tax)?;
        total.rescale(policy.places);
        let back = match deposit {
            Some(deposit) => {
                let mut back = deposit.checked_sub(total)?;
                back.rescale(policy.places);
                Some(back)
            }
            None => None,
        };
        Some(Self { lines, taxed, tax, total, deposit, back })
    }
}

/// The policy of the lot.
fn policy(w: &mut Work<'_>) -> Option<Policy> {
    let lists = w.given.facts.lists();
    let Some(rounding) = lists.rounding else { return w.missing("lot.rounding") };
    let Some(places) = places_of(&lists.currency) else { return w.missing("lot.currency") };
    let _ = w.take("charges.tax", Measure::Percent)?;
    let Some(tax) = w.given.facts.quantity("charges.tax").and_then(percent) else {
        return w.missing("charges.tax");
    };
    let by_line = matches!(w.given.facts.get("charges.tax_on").map(|f| &f.value), Some(Value::Word("line")));
    Some(Policy { places, rounding, tax, tax_by_line: by_line })
}

/// A part in percent, exactly.
fn percent(q: &Quantity) -> Option<Decimal> {
    match q.measure() {
        Measure::Percent => Some(q.amount()),
        _ => q.amount().checked_mul(Decimal::from(100)),
    }
}

/// A fee of the sheet.
fn fee(w: &mut Work<'_>, name: &str) -> Option<Decimal> {
    match w.given.facts.get(name).map(|fact| &fact.value) {
        Some(Value::Money(sum)) => {
            let amount = Money::amount(*sum);
            w.input_text(name, || amount.to_string(), "sheet");
            Some(amount)
        }
        Some(Value::NotFitted) | None => w.missing(name),
        Some(_) => w.missing(name),
    }
}

/// Difference of two readings; one that runs backward is impossible.
fn run(w: &mut Work<'_>, name: &str, read: Joined<Decimal>) -> Option<Decimal> {
    w.input_text(&format!("trip.returned.{name}"), || format!("{} to {}", read.out, read.back), "reading");
    match read.back.checked_sub(read.out) {
        Some(run) if run >= Decimal::ZERO => Some(run),
        _ => w.missing(&format!("trip.returned.{name}")),
    }
}

/// Part of a tank that is missing, in whole parts of `of` (eighths of fuel, quarters of propane).
fn missing_parts(w: &mut Work<'_>, name: &str, read: Joined<Quantity>, of: u32) -> Option<Decimal> {
    w.input_text(&format!("trip.returned.{name}"), || format!("{} to {}", read.out, read.back), "reading");
    let parts = |q: Quantity| {
        let parts = q.to(Measure::Fraction)? * f64::from(of);
        settled(parts).filter(|n| *n >= Decimal::ZERO && *n <= Decimal::from(of))
    };
    match (parts(read.out), parts(read.back)) {
        (Some(out), Some(back)) => Some((out - back).max(Decimal::ZERO)),
        _ => w.missing(&format!("trip.returned.{name}")),
    }
}

struct Writing<'w, 'a> {
    w: &'w mut Work<'a>,
    policy: Policy,
    lines: Vec<Line>,
}

impl Writing<'_, '_> {
    fn line(&mut self, id: &str, count: Decimal, fee_name: &str, taxed: bool) -> Option<()> {
        if count.is_zero() {
            return Some(());
        }
        let price = fee(self.w, fee_name)?;
        self.priced(id, count, price, taxed)
    }

    fn priced(&mut self, id: &str, count: Decimal, price: Decimal, taxed: bool) -> Option<()> {
        match Line::new(id, count, price, taxed, &self.policy) {
            Some(line) => self.lines.push(line),
            None => return self.w.missing("trip.returned"),
        }
        Some(())
    }

    /// Miles, generator hours: what was run beyond the allowance of the nights.
    fn runs(&mut self, found: &Returned, nights: Decimal) -> Option<()> {
        if let Some(read) = found.odometer {
            let miles = run(self.w, "odometer", read)?.floor();
            let each = self.w.take("fees.miles_night", Measure::Fraction)?;
            let free = settled(each)?.checked_mul(nights)?;
            self.line("extra-miles", (miles - free).max(Decimal::ZERO), "fees.mile", true)?;
        }
        if let Some(read) = found.generator {
            let hours = run(self.w, "generator", read)?;
            let each = self.w.take("fees.generator_night", Measure::Hour)?;
            let free = settled(each)?.checked_mul(nights)?;
            self.line(
                "extra-generator-hours",
                (hours - free).max(Decimal::ZERO),
                "fees.generator_hour",
                true,
            )?;
        }
        Some(())
    }

    /// Fuel and propane that are missing.
    fn fuels(&mut self, found: &Returned) -> Option<()> {
        if let Some(read) = found.fuel {
            let eighths = missing_parts(self.w, "fuel", read, 8)?;
            let gallon = match self.w.given.facts.lists().gallon {
                crate::measure::Gallon::Us => Measure::GallonUs,
                crate::measure::Gallon::Imperial => Measure::GallonImperial,
            };
            let tank = settled(self.w.take("engine.tank", gallon)?)?;
            let gallons = eighths.checked_mul(tank)?.checked_div(Decimal::from(8))?;
            self.line("fuel", gallons, "fees.fuel_gallon", false)?;
            if !gallons.is_zero() && self.w.has("fees.fuel_service") {
                self.line("fuel-service", Decimal::ONE, "fees.fuel_service", true)?;
            }
        }
        if let Some(read) = found.propane {
            let quarters = missing_parts(self.w, "propane", read, 4)?;
            self.line("propane", quarters, "fees.propane_quarter", false)?;
        }
        self.line("propane-cylinder", Decimal::from(found.empty_cylinders), "fees.propane_cylinder", false)
    }

    /// Tanks, cleaning, lateness, pets.
    fn services(&mut self, found: &Returned) -> Option<()> {
        let one = |yes: bool| if yes { Decimal::ONE } else { Decimal::ZERO };
        self.line("black", one(found.black_full), "fees.black", true)?;
        self.line("cassette", one(found.cassette_full), "fees.cassette", true)?;
        self.line("grey", Decimal::from(found.grey_full), "fees.grey", true)?;
        self.line("clean", one(found.dirty), "fees.clean", true)?;
        self.line("smoke", one(found.smoked), "fees.smoke", true)?;
        self.line("pet", one(found.pet), "fees.pet", true)?;
        self.line("pet-hidden", one(found.pet_hidden), "fees.pet_hidden", true)?;
        if let Some(late) = found.late {
            let late = self.w.asked("returned.late", quantity(Some(late)), Measure::Minute)?;
            let grace = self.w.take("charges.late_grace", Measure::Minute)?;
            let hours = crate::measure::rounded((late - grace).max(0.0) / 60.0, 0, Rounding::Up)?;
            self.line("late", hours, "fees.late_hour", true)?;
        }
        Some(())
    }

    /// Loaned items that are missing, at the price shown at handoff.
    fn items(&mut self, found: &Returned) -> Option<()> {
        let mut tags: Vec<&String> = found.missing.iter().collect();
        tags.sort();
        let mut at = tags.as_slice();
        while let Some(tag) = at.first() {
            let count = at.iter().take_while(|other| other == &tag).count();
            let kit = &self.w.given.facts.lists().kit;
            let line = kit.iter().find(|line| line.tag.value == **tag && usize::from(line.count) >= count);
            let Some(line) = line else { return self.w.missing(&format!("kit.{tag}")) };
            let price = line.price.amount();
            self.w.input_text(&format!("kit.{tag}"), || price.to_string(), "sheet");
            self.priced(&format!("missing-{tag}"), Decimal::from(count), price, false)?;
            at = at.get(count..).unwrap_or_default();
        }
        Some(())
    }
}

/// The return bill (handbook FIG-13 to FIG-16 and FIG-25): each line rounded once, tax once on the taxed lines, the
/// deposit less the total. The value is the total.
pub(super) fn return_total(asked: Asked<'_>) -> Figure {
    let source = "the lot's fees, tax and rounding; half up: Council Regulation (EC) 1103/97 Art. 5";
    Work::run(asked, "return_total", Rounding::Exact, source, |w| {
        let trip = w.trip()?;
        let Some(found) = &trip.returned else { return w.missing("trip.returned") };
        let policy = policy(w)?;
        let nights = Decimal::from(trip.nights);
        w.input("trip.nights", Quantity::new(nights, Measure::Fraction), "trip");
        let currency = &w.given.facts.lists().currency;
        w.input_text("lot.currency", || currency.clone(), "lot");
        let mut writing = Writing { w, policy, lines: Vec::new() };
        writing.runs(found, nights)?;
        writing.fuels(found)?;
        writing.services(found)?;
        writing.items(found)?;
        let lines = writing.lines;
        let deposit = fee(w, "fees.deposit")?;
        let Some(bill) = Bill::of(lines, &policy, Some(deposit)) else { return w.missing("trip.returned") };
        for line in &bill.lines {
            w.say(|| format!("{} × {} = {}", line.count.normalize(), line.price, line.amount));
        }
        w.say(|| format!("tax {} % of {} = {}", policy.tax.normalize(), bill.taxed, bill.tax));
        w.figure.values.push(Quantity::new(bill.total, Measure::Fraction));
        w.figure.detail = Detail::Bill(Box::new(bill));
        Some(())
    })
}
