//! `sendoff figures`: prints the figures of a unit, for a trip if one is given.

mod json;

use std::path::Path;
use std::sync::Arc;

use super::cli::{FiguresArgs, Format, Measures};
use super::{COULD_NOT_RUN, Console, GOOD, bundle};
use crate::figures::{self, Action, Detail, Figure, State, Trip, explain, projection, value_text};
use crate::measure::System;
use crate::ports::Ports;
use crate::script::{Bundle, Scripts};
use crate::source::{FILE_CAP, Fault, Place, Severity, SourceFile, nearest, read};
use crate::unit::Facts;
use crate::words::{Args, Reader, Words, format};

/// Everything a figure is told with.
struct Telling<'a> {
    scripts: &'a Scripts,
    /// Words of the lot, or the demo lot's where the lot has none for figures.
    words: Words,
    reader: Reader,
    unit: &'a str,
    facts: &'a Facts,
    trip: Option<&'a SourceFile>,
}

pub(super) fn run(args: &FiguresArgs, ports: &Ports, console: &mut Console) -> u8 {
    let bundle = match bundle(ports, args.places.lot.as_deref()) {
        Ok(bundle) => Arc::new(bundle),
        Err(fault) => {
            console.complain(fault);
            return COULD_NOT_RUN;
        }
    };
    let (scripts, faults) = Scripts::load(bundle);
    let Some(scripts) = scripts else {
        tell_faults(&faults, console);
        return COULD_NOT_RUN;
    };
    let Some(facts) = scripts.facts(&args.unit) else {
        unknown_unit(&scripts, &args.unit, &faults, console);
        return COULD_NOT_RUN;
    };
    let trip = match args.trip.as_deref().map(|path| read_trip(ports, path)) {
        None => None,
        Some(Ok(trip)) => Some(trip),
        Some(Err(faults)) => {
            for fault in faults {
                console.complain(fault);
            }
            return COULD_NOT_RUN;
        }
    };
    let all = match &trip {
        None => figures::of_unit(&facts),
        Some((trip, _)) => figures::of_trip(&facts, trip),
    };
    let telling = Telling {
        scripts: &scripts,
        words: words(&scripts),
        reader: reader(&scripts, args.measures),
        unit: &args.unit,
        facts: &facts,
        trip: trip.as_ref().map(|(_, file)| file),
    };
    match args.format {
        Format::Text => telling.text(&all, console),
        Format::Json => match serde_json::to_string_pretty(&telling.json(&all)) {
            Ok(json) => console.say(json),
            Err(e) => {
                console.complain(format!("the figures cannot be written as JSON: {e}"));
                return COULD_NOT_RUN;
            }
        },
    }
    GOOD
}

fn tell_faults(faults: &[Fault], console: &mut Console) {
    for fault in faults.iter().filter(|f| f.severity == Severity::Fault) {
        console.complain(format!("{} at {}; {}", fault.what, fault.place, fault.hint));
    }
}

fn unknown_unit(scripts: &Scripts, unit: &str, faults: &[Fault], console: &mut Console) {
    tell_faults(faults, console);
    let known = scripts.units.keys().map(String::as_str);
    let hint = nearest(unit, known.clone()).map_or_else(
        || format!("the lot has {}", known.collect::<Vec<_>>().join(", ")),
        |near| format!("did you mean `{near}`?"),
    );
    console.complain(format!("the lot has no unit `{unit}` that can be read; {hint}"));
}

/// Reads a trip file.
fn read_trip(ports: &Ports, path: &Path) -> Result<(Trip, SourceFile), Vec<String>> {
    let bytes = ports.disk.read(path, FILE_CAP).map_err(|fault| vec![fault.to_string()])?;
    let name = path.display().to_string();
    let text = String::from_utf8(bytes)
        .map_err(|_| vec![format!("{name} is not UTF-8; save it as a UTF-8 text")])?;
    let file = SourceFile::new(&name, &text);
    let (trip, faults) = read::<Trip>(&file);
    let told = |f: &Fault| format!("{} at {}; {}", f.what, f.place, f.hint);
    trip.map(|trip| (trip, file)).ok_or_else(|| faults.iter().map(told).collect())
}

/// A lot that says nothing of figures is told in the demo lot's words.
fn words(scripts: &Scripts) -> Words {
    if scripts.words.has(crate::words::SOURCE_LANGUAGE, "figure-payload_left") {
        return scripts.words.clone();
    }
    let (demo, _) = Scripts::load(Arc::new(Bundle::demo()));
    demo.map_or_else(|| scripts.words.clone(), |demo| demo.words)
}

/// Reads in the lot's usual language, in the measures asked for or the lot's usual ones.
fn reader(scripts: &Scripts, measures: Option<Measures>) -> Reader {
    let lot = &scripts.lot.value;
    let lang = lot.languages.first().map_or(crate::words::SOURCE_LANGUAGE, String::as_str);
    let usual = match lot.measures.first().map(String::as_str) {
        Some("metric") => System::Metric,
        Some("uk") => System::Uk,
        _ => System::Us,
    };
    let system = match measures {
        None => usual,
        Some(Measures::Us) => System::Us,
        Some(Measures::Uk) => System::Uk,
        Some(Measures::Metric) => System::Metric,
    };
    Reader::new(lang, system)
}

impl Telling<'_> {
    fn say(&self, key: &str, args: &Args) -> String {
        self.words.say(&self.reader, key, args)
    }

    /// Where a fact that is missing belongs.
    fn place(&self, fact: &str) -> Option<Place> {
        if fact == "trip" || fact.starts_with("trip.") {
            return self.trip.map(|file| file.place_at(0));
        }
        let sheet = self.scripts.units.get(self.unit)?;
        if let Some(at) = self.facts.section_at(fact) {
            return Some(sheet.file.place_at(at));
        }
        let of_lot = ["assumed.", "limit.", "charges.", "people.", "site.", "lot."];
        if of_lot.iter().any(|family| fact.starts_with(family)) {
            return Some(Place::start(&self.scripts.lot.file.name));
        }
        Some(Place::start(&sheet.file.name))
    }

    fn text(&self, all: &[Figure], console: &mut Console) {
        let (fitted, absent): (Vec<&Figure>, Vec<&Figure>) =
            all.iter().partition(|figure| figure.state != State::NotFitted);
        for figure in fitted {
            let told = explain(&self.words, &self.reader, figure);
            console.say(format!("{}: {}", told.title, told.value));
            if let State::Missing(fact) = &figure.state
                && let Some(place) = self.place(fact)
            {
                console.say(format!("  at {place}"));
            }
            if !told.formula.is_empty() {
                console.say(format!("  {}", told.formula));
                console.say(format!("  {}; {}", told.rounding, told.source));
            }
            for text in [told.caveat, told.caution].into_iter().filter(|text| !text.is_empty()) {
                console.say(format!("  {text}"));
            }
            for line in self.detail(&figure.detail) {
                console.say(format!("  {line}"));
            }
        }
        let names: Vec<String> =
            absent.iter().map(|f| self.say(&format!("figure-{}", f.id), &Args::new())).collect();
        if !names.is_empty() {
            let list = format::list(&self.words, &self.reader, &names);
            console.say(format!("{}: {list}", self.say("figure-not-fitted", &Args::new())));
        }
    }

    fn load(&self, id: &str) -> String {
        let key = format!("load-{id}");
        self.words.try_say(&self.reader, &key, &Args::new()).unwrap_or_else(|_| id.to_owned())
    }

    fn loads(&self, ids: &[String]) -> String {
        let names: Vec<String> = ids.iter().map(|id| self.load(id)).collect();
        format::list(&self.words, &self.reader, &names)
    }

    fn detail(&self, detail: &Detail) -> Vec<String> {
        match detail {
            Detail::None => Vec::new(),
            Detail::Loads(fit) => {
                let breaks = fit
                    .breaks
                    .iter()
                    .map(|b| self.say(&format!("fits-break-{}", b.rule.word()), &Args::new()));
                let remedies = fit.remedies.iter().map(|remedy| self.remedy(remedy));
                let sets = fit.sets.iter().map(|set| self.loads(set));
                breaks.chain(remedies).chain(sets).collect()
            }
            Detail::Projection(projection) => {
                projection.helps.iter().map(|help| self.help(projection, help)).collect()
            }
            Detail::Bill(bill) => {
                let lines = bill.lines.iter();
                lines
                    .map(|l| format!("{}: {} × {} = {}", l.id, l.count.normalize(), l.price, l.amount))
                    .collect()
            }
        }
    }

    fn remedy(&self, remedy: &figures::loads::Remedy) -> String {
        let part = |key: &str, ids: &[String]| {
            (!ids.is_empty()).then(|| self.say(key, &Args::new().text("what", self.loads(ids))))
        };
        let parts = [part("fits-off", &remedy.off), part("fits-propane", &remedy.on_propane)];
        format::list(&self.words, &self.reader, &parts.into_iter().flatten().collect::<Vec<_>>())
    }

    /// A day of the trip: its day of the week where the trip says when it leaves.
    fn day(&self, projection: &projection::Projection, day: u16) -> String {
        match projection.weekday {
            Some(first) => {
                let at = (u16::from(first) + 5 + day) % 7 + 1;
                self.say(&format!("weekday-{at}"), &Args::new())
            }
            None => self.say("trip-day", &Args::new().text("n", day.to_string())),
        }
    }

    fn help(&self, projection: &projection::Projection, help: &figures::Help) -> String {
        let after = match help.after {
            None => self.say("help-lasts", &Args::new()),
            Some(end) => {
                let day = figures::day_of(end);
                self.say("help-lasts-to", &Args::new().text("day", self.day(projection, day)))
            }
        };
        let mut args = Args::new()
            .text("resource", self.say(&format!("part-{}", help.resource.word()), &Args::new()))
            .text("after", after);
        if let Some(day) = help.action.day() {
            args = args.text("day", self.day(projection, day));
        }
        if let Some(hours) = help.action.hours() {
            let hours = crate::measure::Quantity::new(
                rust_decimal::Decimal::from(hours),
                crate::measure::Measure::Hour,
            );
            let text = format::quantity(
                &self.words,
                &self.reader,
                &hours,
                crate::measure::Rounding::Exact,
                format::Places::AsWritten,
            );
            args = args.text("hours", text);
        }
        let action: Action = help.action;
        self.say(&format!("help-{}", action.word()), &args)
    }

    fn value(&self, figure: &Figure) -> String {
        value_text(&self.words, &self.reader, figure)
    }
}
