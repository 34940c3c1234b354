//! Facts: every value of sheet and lot under one name, `section.field`.

use std::collections::BTreeMap;

use crate::measure::{Dimension, Gallon, Measure, Money, Quantity};
use crate::source::At;

use super::derate::Derate;
use super::lot::{self, Lot, MoneyRounding};
use super::section::{Fitted, Section};
use super::sheet::{Axle, KitLine, Load, NightLoad, Sheet};

/// What kind of value a fact is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FactKind {
    /// A quantity of this dimension.
    Quantity(Dimension),
    /// A whole number.
    Count,
    /// One of these words.
    Word(&'static [&'static str]),
    /// A code printed as it stands.
    Code,
    /// Yes or no.
    Flag,
    /// A sum of money.
    Money,
    /// A list.
    List,
}

/// A value.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// A quantity with its measure.
    Quantity(Quantity),
    /// A whole number.
    Count(u16),
    /// A word, as `electric`.
    Word(&'static str),
    /// A code printed as it stands.
    Code(String),
    /// Yes or no.
    Flag(bool),
    /// A sum of money in the lot's currency.
    Money(Money),
    /// Several.
    List(Vec<Self>),
    /// The unit does not have it.
    NotFitted,
}

/// Where a fact came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// The unit's data sheet.
    Sheet,
    /// The lot's settings.
    Lot,
}

impl Origin {
    /// The origin as records spell it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Sheet => "sheet",
            Self::Lot => "lot",
        }
    }
}

/// A value and where it came from.
#[derive(Debug, Clone, PartialEq)]
pub struct Fact {
    /// Value.
    pub value: Value,
    /// Origin.
    pub from: Origin,
}

/// What a sheet or lot gives that is more than one value with a name.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Lists {
    /// Tires by axle.
    pub axles: Vec<Axle>,
    /// 120 V loads.
    pub loads: Vec<Load>,
    /// 12 V loads of a night.
    pub night: Vec<NightLoad>,
    /// 12 V loads of the day, where they are known.
    pub day: Option<Vec<NightLoad>>,
    /// Loaned items.
    pub kit: Vec<KitLine>,
    /// How the generator loses power with height.
    pub derate: Option<Derate>,
    /// Which gallon the lot means.
    pub gallon: Gallon,
    /// Currency of sums (ISO 4217).
    pub currency: String,
    /// Rounding of sums.
    pub rounding: Option<MoneyRounding>,
}

/// All facts of one unit on its lot.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Facts {
    facts: BTreeMap<String, Fact>,
    /// Sections of the sheet, and whether they are fitted.
    fitted: BTreeMap<&'static str, bool>,
    /// Where the sections of the sheet stand in it.
    sections: BTreeMap<&'static str, usize>,
    /// What the sheet gives a stand-in for, and where it says so.
    not_known: BTreeMap<String, usize>,
    lists: Lists,
}

impl Facts {
    /// The facts of a unit; its values stand before the lot's.
    #[must_use]
    pub fn new(sheet: &Sheet, lot: &Lot) -> Self {
        let mut all = Self::default();
        each_lot(lot, &mut |name, value| all.put(name, value, Origin::Lot, lot.gallon));
        each_sheet(sheet, &mut |name, value| all.put(name, value, Origin::Sheet, lot.gallon));
        each_list(sheet, &mut |name, value| all.put(name.into(), value, Origin::Sheet, lot.gallon));
        all.fitted = fitted(sheet);
        let _ = all.fitted.insert(SLIDE_OUT, !sheet.slides.is_empty());
        all.sections = sections(sheet);
        all.lists = lists(sheet, lot);
        sheet.not_known.iter().for_each(|name| all.forget(name));
        all
    }

    /// Takes a stand-in out, so that nothing is reckoned with it. What is not fitted is known.
    fn forget(&mut self, name: &At<String>) {
        match name.value.as_str() {
            "loads" => self.lists.loads.clear(),
            "night" => self.lists.night.clear(),
            // Not as if none were given: then the day would count as nothing.
            "day" => self.lists.day = Some(Vec::new()),
            "generator.derate" => {
                self.lists.derate = None;
                let _ = self.facts.remove("generator.derate");
            }
            "places" | "rooms" => {}
            fact => {
                let stand_in = self.facts.get(fact).filter(|f| f.from == Origin::Sheet);
                if stand_in.is_none_or(|f| f.value == Value::NotFitted) {
                    return;
                }
                let _ = self.facts.remove(fact);
                if fact == "tires.cold" {
                    self.lists.axles.clear();
                }
            }
        }
        let _ = self.not_known.insert(name.value.clone(), name.at);
    }

    fn put(&mut self, name: String, value: Value, from: Origin, gallon: Gallon) {
        let value = resolve(value, gallon);
        // A section that is not fitted leaves no lot default behind.
        let _ = self.facts.insert(name, Fact { value, from });
    }

    /// The fact of this name.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Fact> {
        self.facts.get(name)
    }

    /// The quantity of this name, if it is one and is fitted.
    #[must_use]
    pub fn quantity(&self, name: &str) -> Option<&Quantity> {
        match self.facts.get(name).map(|f| &f.value) {
            Some(Value::Quantity(q)) => Some(q),
            _ => None,
        }
    }

    /// What is more than one value with a name.
    #[must_use]
    pub const fn lists(&self) -> &Lists {
        &self.lists
    }

    /// Byte in the data sheet where the section of a fact stands, or where it says that the fact is not known; none
    /// for what the lot gives.
    #[must_use]
    pub fn section_at(&self, name: &str) -> Option<usize> {
        if let Some(at) = self.not_known.get(name) {
            return Some(*at);
        }
        self.sections.get(name.split_once('.').map_or(name, |(section, _)| section)).copied()
    }

    /// Whether the sheet says that it gives only a stand-in for this fact or list.
    #[must_use]
    pub fn is_not_known(&self, name: &str) -> bool {
        self.not_known.contains_key(name)
    }

    /// Facts and lists for which the sheet gives only a stand-in, by name.
    pub fn not_known(&self) -> impl Iterator<Item = &str> {
        self.not_known.keys().map(String::as_str)
    }

    /// All facts by name.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &Fact)> {
        self.facts.iter().map(|(name, fact)| (name.as_str(), fact))
    }

    /// Whether a section, or a field as `waste.black`, is fitted. `None` when there is no such thing.
    #[must_use]
    pub fn is_fitted(&self, name: &str) -> Option<bool> {
        if let Some(fitted) = self.fitted.get(name) {
            return Some(*fitted);
        }
        let (section, _) = name.split_once('.')?;
        if self.fitted.get(section) == Some(&false) {
            return Some(false);
        }
        if self.is_not_known(name) {
            return Some(true);
        }
        self.facts.get(name).map(|f| f.value != Value::NotFitted)
    }
}

fn resolve(value: Value, gallon: Gallon) -> Value {
    match value {
        Value::Quantity(q) => Value::Quantity(q.resolve(gallon)),
        Value::List(items) => Value::List(items.into_iter().map(|v| resolve(v, gallon)).collect()),
        other => other,
    }
}

/// Section of the facts that slide-outs give.
const SLIDE_OUT: &str = "slide_out";

/// Names and kinds of the facts that come from the lists of a sheet and from its head.
const FROM_LISTS: [(&str, FactKind); 6] = [
    ("unit.code", FactKind::Code),
    ("tires.cold", FactKind::List),
    ("tires.count", FactKind::Count),
    ("tires.twins", FactKind::Flag),
    ("slide_out.count", FactKind::Count),
    ("slide_out.reach", FactKind::Quantity(Dimension::Length)),
];

/// What a sheet may name as not known beside its facts: lists, and where things are.
pub const NOT_KNOWN_LISTS: [&str; 5] = ["loads", "night", "day", "places", "rooms"];

/// Wheels of an axle that carries them in pairs.
const TWIN_WHEELS: u16 = 4;

/// Facts that come from the lists of a sheet and from its head. Slide-outs reach as far as the longest.
fn each_list(sheet: &Sheet, put: &mut dyn FnMut(&'static str, Value)) {
    put("unit.code", Value::Code(sheet.code.clone()));
    let cold = sheet.axles.iter().map(|a| Value::Quantity(*a.cold.quantity())).collect();
    put("tires.cold", Value::List(cold));
    put("tires.count", Value::Count(sheet.axles.iter().map(|a| a.wheels).fold(0, u16::saturating_add)));
    put("tires.twins", Value::Flag(sheet.axles.iter().any(|a| a.wheels >= TWIN_WHEELS)));
    let inches = |slide: &super::sheet::Slide| slide.reach.quantity().to(Measure::Inch).unwrap_or(0.0);
    let reach = sheet.slides.iter().max_by(|a, b| inches(a).total_cmp(&inches(b)));
    if let Some(longest) = reach {
        put("slide_out.count", Value::Count(u16::try_from(sheet.slides.len()).unwrap_or(u16::MAX)));
        put("slide_out.reach", Value::Quantity(*longest.reach.quantity()));
    }
}

fn lists(sheet: &Sheet, lot: &Lot) -> Lists {
    Lists {
        axles: sheet.axles.clone(),
        loads: sheet.loads.clone(),
        night: sheet.night.clone(),
        day: sheet.day.clone(),
        kit: sheet.kit.clone(),
        derate: sheet.generator.value.get().map(|g| g.derate.clone()),
        gallon: lot.gallon,
        currency: lot.currency.clone(),
        rounding: Some(lot.rounding),
    }
}

fn each_lot(lot: &Lot, put: &mut dyn FnMut(String, Value)) {
    lot.phone.value.facts("phone", put);
    lot.quiet.value.facts("quiet", put);
    lot.site.value.facts("site", put);
    lot.awning.value.facts("awning", put);
    lot.people.value.facts("people", put);
    lot.tires.value.facts("tires", put);
    lot.charges.value.facts("charges", put);
    lot.assumed.value.facts("assumed", put);
    for (name, q) in &lot.constants {
        put(format!("limit.{name}"), Value::Quantity(q.value));
    }
}

/// Lists the sections of a sheet once: `always` are on every unit, `perhaps` may be not fitted.
macro_rules! sheet_sections {
    (always: $($a:ident)*; perhaps: $($p:ident: $ty:ident)*; types: $($t:ident: $tt:ident)*) => {
        fn each_sheet(sheet: &Sheet, put: &mut dyn FnMut(String, Value)) {
            $(sheet.$a.value.facts(stringify!($a), put);)*
            $(if let Fitted::Is(section) = &sheet.$p.value {
                section.facts(stringify!($p), put);
            })*
        }

        fn sections(sheet: &Sheet) -> BTreeMap<&'static str, usize> {
            BTreeMap::from([$((stringify!($a), sheet.$a.at),)* $((stringify!($p), sheet.$p.at),)*])
        }

        fn fitted(sheet: &Sheet) -> BTreeMap<&'static str, bool> {
            let mut all = BTreeMap::new();
            $(let _ = all.insert(stringify!($a), { let _ = &sheet.$a; true });)*
            $(let _ = all.insert(stringify!($p), sheet.$p.value.get().is_some());)*
            all
        }

        /// Names and kinds of all facts that a sheet or lot can give, and of all sections.
        /// Constants of the lot are not in it: they are as many as the lot writes.
        #[must_use]
        pub fn catalogue() -> (BTreeMap<String, FactKind>, Vec<&'static str>) {
            use super::equipment::*;
            use super::terms::*;
            let mut all = BTreeMap::new();
            let mut put = |name: String, kind: FactKind| { let _ = all.insert(name, kind); };
            $(<$tt as Section>::catalogue(stringify!($t), &mut put);)*
            $(<$ty as Section>::catalogue(stringify!($p), &mut put);)*
            lot::catalogue(&mut put);
            FROM_LISTS.iter().for_each(|(name, kind)| put((*name).into(), *kind));
            (all, vec![$(stringify!($a),)* $(stringify!($p),)* SLIDE_OUT])
        }
    };
}

sheet_sections! {
    always: size roof weight berths door safety wheels house water waste frost driving fees;
    perhaps: step: EntryStep awning: Awning engine: Engine generator: Generator charger: Charger
        engine_charger: EngineCharger solar: Solar inverter: Inverter shore: Shore outside_outlet: OutsideOutlet
        outdoor_kitchen: OutdoorKitchen roof_air: RoofAir propane: Propane furnace: Furnace diesel_heater: DieselHeater
        water_heater: WaterHeater fridge: Fridge cook: Cook hitch: Hitch;
    types: size: Size roof: Roof weight: Weight berths: Berths door: Door safety: Safety wheels: Wheels house: House
        water: Water waste: Waste frost: Frost driving: Driving fees: Fees
}

/// In which direction a fact is rounded when it is shown in another measure (handbook 0.6): what is needed up,
/// what must not be passed and what one has down, set points and sizes to nearest.
#[must_use]
pub fn rounding_of(name: &str) -> crate::measure::Rounding {
    use crate::measure::Rounding::{Down, Nearest, Up};
    const NEEDED: [&str; 15] = [
        "size.",
        "generator.clear",
        "weight.uvw",
        "weight.kit",
        "people.weight",
        "driving.follow",
        "limit.flames_away",
        "limit.gas_away",
        "limit.slide_clear",
        "limit.swing_spare",
        "slide_out.reach",
        "hitch.tongue_dry",
        "hitch.gear",
        "hitch.rating",
        "waste.cassette_full",
    ];
    const NOT_PASSED: [&str; 15] = [
        "weight.",
        "step.limit",
        "berths.bunk_limit",
        "awning.wind_limit",
        "driving.",
        "wheels.speed",
        "water.most",
        "waste.rinse",
        "propane.full",
        "generator.pickup",
        "hitch.tongue_most",
        "hitch.trailer_most",
        "wheels.recheck",
        "limit.hitch_recheck",
        "limit.backing_speed",
    ];
    if NEEDED.iter().any(|p| name.starts_with(p)) {
        Up
    } else if name == "frost.dry_below" {
        // The warmer side.
        Up
    } else if NOT_PASSED.iter().any(|p| name.starts_with(p)) {
        Down
    } else {
        Nearest
    }
}
