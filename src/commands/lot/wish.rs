//! What a unit is to be like, as far as it was said, and whether it can be.

use super::Refusal;
use super::args::{Cook, FittedArgs, Fridge, Fuel, Heat, Heater, Kind, UnitArgs};
use crate::measure::{Dim, Measure, Of, Quantity, dims};

/// Longest id: it is part of the names of files and messages.
const ID_CAP: usize = 24;
/// Beginnings of messages that a lot shares; a unit of that name would mix its words with them.
const FAMILIES: [&str; 16] = [
    "axle", "caution", "check", "choice", "exit", "guide", "item", "kind", "leaving", "load", "lot", "place",
    "reading", "station", "step", "unit",
];

/// A unit that can be.
pub(super) struct Wish<'a> {
    pub(super) id: &'a str,
    pub(super) name: String,
    pub(super) code: String,
    pub(super) year: Option<u16>,
    pub(super) kind: Kind,
    /// 1 where the curb side is on the right, nose up.
    pub(super) curb: f64,
    pub(super) args: &'a UnitArgs,
    pub(super) fitted: &'a FittedArgs,
    /// Inches.
    pub(super) length: f64,
    /// Inches.
    pub(super) width: f64,
    /// Amperes of the cord.
    pub(super) cord: Option<f64>,
}

impl<'a> Wish<'a> {
    /// Takes the arguments apart.
    pub(super) fn new(args: &'a UnitArgs) -> Result<Self, Refusal> {
        let fitted = &args.fitted;
        let (Some(kind), Some(length), Some(width), Some(height)) =
            (args.kind, &args.length, &args.width, &args.height)
        else {
            return Err("say --kind, --length, --width and --height, or --copy UNIT".to_owned());
        };
        checked_id(&args.id)?;
        let size = |flag, text: &str, from, to, example| {
            number::<dims::Length>(flag, text, (from, to), Measure::Inch, example)
        };
        let length = size("--length", length, 96.0, 900.0, "34 ft")?;
        let width = size("--width", width, 48.0, 120.0, "101 in")?;
        let _ = size("--height", height, 60.0, 180.0, "12 ft 4 in")?;
        if let Some(sill) = &fitted.sill {
            let _ = size("--sill", sill, 6.0, 150.0, "60 in")?;
        }
        let watts = |flag, text: &Option<String>, to, example| match text {
            Some(text) => number::<dims::Power>(flag, text, (10.0, to), Measure::Watt, example).map(drop),
            None => Ok(()),
        };
        watts("--generator", &fitted.generator, 25_000.0, "8000 W")?;
        watts("--inverter", &fitted.inverter, 15_000.0, "2000 W")?;
        watts("--solar", &fitted.solar, 10_000.0, "400 W")?;
        let cord = match &fitted.cord {
            Some(text) => {
                Some(number::<dims::Current>("--cord", text, (10.0, 60.0), Measure::Ampere, "50 A")?)
            }
            None => None,
        };
        let wish = Self {
            id: &args.id,
            name: args.name.clone().unwrap_or_else(|| title(&args.id)),
            code: args.code.clone().unwrap_or_else(|| args.id.to_uppercase()),
            year: args.year,
            kind,
            curb: if args.curb == super::args::Curb::Right { 1.0 } else { -1.0 },
            args,
            fitted,
            length,
            width,
            cord,
        };
        wish.fits()?;
        Ok(wish)
    }

    pub(super) fn is_trailer(&self) -> bool {
        self.kind == Kind::Trailer
    }

    /// Whether anything gives 120 V.
    pub(super) fn has_mains(&self) -> bool {
        self.cord.is_some() || self.fitted.generator.is_some() || self.fitted.inverter.is_some()
    }

    /// Inches of the body: a trailer's tongue lies ahead of it.
    pub(super) fn body(&self) -> f64 {
        libm::floor(self.length - self.tongue())
    }

    /// Inches of the tongue. A stand-in: an eighth of the whole, at most 48 in.
    pub(super) fn tongue(&self) -> f64 {
        if self.is_trailer() { libm::floor((self.length / 8.0).min(48.0)) } else { 0.0 }
    }

    /// Whether the equipment can be together.
    fn fits(&self) -> Result<(), Refusal> {
        let f = self.fitted;
        let no = |is: bool, why: &str| if is { Err(why.to_owned()) } else { Ok(()) };
        let gas = f.propane.is_some();
        no(
            !self.is_trailer() && f.fuel.is_none(),
            "say what the engine burns, since the wrong fuel ruins it: --fuel gasoline or --fuel diesel",
        )?;
        no(self.is_trailer() && f.fuel.is_some(), "a trailer has no engine: leave --fuel out")?;
        no(
            self.is_trailer() && f.generator.is_some(),
            "a generator draws from the engine's tank, and a trailer has none: leave --generator out",
        )?;
        no(self.is_trailer() && f.belts.is_some(), "nobody rides in a trailer: leave --belts out")?;
        no(
            f.heat == Some(Heat::Diesel) && f.fuel != Some(Fuel::Diesel),
            "a diesel heater draws from the engine's tank: it needs --fuel diesel; or say --heat furnace",
        )?;
        no(
            f.heat == Some(Heat::Furnace) && !gas,
            "a furnace burns propane: add --propane frame or --propane cylinders",
        )?;
        no(
            f.cook == Some(Cook::Propane) && !gas,
            "this cooktop burns propane: add --propane frame or --propane cylinders, or say --cook induction",
        )?;
        let mains = "add --cord '30 A', --generator '4000 W' or --inverter '2000 W'";
        let no_mains = !self.has_mains();
        no(
            f.cook == Some(Cook::Induction) && no_mains,
            &format!("an induction zone runs on 120 V: {mains}"),
        )?;
        no(
            f.fridge == Some(Fridge::Residential) && no_mains,
            &format!("a household refrigerator runs on 120 V: {mains}"),
        )?;
        no(
            f.fridge == Some(Fridge::Absorption) && !gas && no_mains,
            &format!("an absorption refrigerator runs on propane or 120 V: add --propane frame, or {mains}"),
        )?;
        no(
            f.water_heater == Some(Heater::OnDemand) && !gas,
            "an on-demand water heater burns propane: add --propane frame or --propane cylinders, or say --water-heater tank",
        )?;
        no(
            f.water_heater == Some(Heater::Tank) && !gas && no_mains,
            &format!("a water heater runs on propane or 120 V: add --propane frame, or {mains}"),
        )?;
        no(
            f.roof_air > 0 && self.cord.is_none() && f.generator.is_none(),
            "a roof air conditioner runs on a cord or a generator: add --cord '30 A' or --generator '4000 W'",
        )?;
        self.counts()
    }

    /// Whether numbers and names can be.
    fn counts(&self) -> Result<(), Refusal> {
        let f = self.fitted;
        let no = |is: bool, why: &str| if is { Err(why.to_owned()) } else { Ok(()) };
        let counts = [
            ("--belts", f.belts.unwrap_or(2), 1, 20),
            ("--beds", f.beds.unwrap_or(2), 1, 20),
            ("--slide-outs", f.slide_outs, 0, 4),
            ("--roof-air", f.roof_air, 0, 4),
            ("--year", self.year.unwrap_or(2020), 1950, 2100),
        ];
        for (flag, count, least, most) in counts {
            no(
                !(least..=most).contains(&count),
                &format!("{flag} {count}: write a number from {least} to {most}"),
            )?;
        }
        for (flag, text) in [("--name", &self.name), ("--code", &self.code)] {
            let odd = |c: char| c.is_control() || matches!(c, '{' | '}' | '"' | '\\');
            no(
                text.trim().is_empty() || text.chars().count() > 40 || text.chars().any(odd),
                &format!("{flag} '{text}': write a short name without quotes or braces, as {flag} 'Harrier'"),
            )?;
        }
        Ok(())
    }
}

/// An id that can be part of the name of a message and of a file.
pub(super) fn checked_id(id: &str) -> Result<(), Refusal> {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    let shaped = id.starts_with(|c: char| c.is_ascii_lowercase())
        && id.chars().all(plain)
        && !id.ends_with('-')
        && id.len() <= ID_CAP;
    if !shaped {
        return Err(format!(
            "--id '{id}': use small letters, digits and dashes, a letter first, at most {ID_CAP}, as --id harrier-2"
        ));
    }
    let family = id.split('-').next().unwrap_or(id);
    if FAMILIES.contains(&family) {
        return Err(format!(
            "--id '{id}': words of the lot begin with `{family}-` already; choose another, as --id harrier"
        ));
    }
    Ok(())
}

/// `harrier-2` becomes `Harrier 2`.
pub(super) fn title(id: &str) -> String {
    let mut chars = id.chars();
    let first = chars.next().map(|c| c.to_ascii_uppercase());
    first.into_iter().chain(chars).map(|c| if c == '-' { ' ' } else { c }).collect()
}

/// A measured argument in a measure, within what can be.
fn number<D: Dim>(
    flag: &str,
    text: &str,
    (from, to): (f64, f64),
    measure: Measure,
    example: &str,
) -> Result<f64, Refusal> {
    let typed = Quantity::parse(text).and_then(Of::<D>::new);
    let value = typed.map_err(|e| format!("{flag} '{text}': {}. For example: {flag} '{example}'", e.what))?;
    let number = value.quantity().to(measure).unwrap_or(f64::NAN);
    if number < 0.0 {
        return Err(format!(
            "{flag} '{text}': it is below zero; write it without the minus, as {flag} '{example}'"
        ));
    }
    if !(from..=to).contains(&number) {
        let symbol = measure.symbol();
        return Err(format!(
            "{flag} '{text}': that is not between {from} {symbol} and {to} {symbol}; is the measure right? For example: {flag} '{example}'"
        ));
    }
    Ok(number)
}
