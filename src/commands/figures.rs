//! `sendoff figures`: prints the figures of a unit, for a trip if one is given.

mod json;
mod place;

use std::path::Path;
use std::sync::Arc;

use super::cli::{FiguresArgs, Format, Measures};
use place::deepest;

use super::{COULD_NOT_RUN, Console, GOOD, bundle};
use crate::figures::loads::{Break, Fit, Remedy, Rule};
use crate::figures::{self, Detail, Figure, State, Trip, explain, value_text};
use crate::measure::{Measure, Quantity, Rounding, System, rounded};
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

    /// Where a fact that is missing or impossible stands, or where it belongs.
    fn place(&self, fact: &str) -> Option<Place> {
        if let Some(asked) = fact.strip_prefix("trip") {
            let file = self.trip?;
            return Some(file.place_at(deepest(&file.text, asked.trim_start_matches('.'))));
        }
        let sheet = &self.scripts.units.get(self.unit)?.file;
        let lot = &self.scripts.lot.file;
        // A constant of the lot is called a limit, a setting of the lot by its own name.
        let in_lot = match fact.split_once('.') {
            Some(("limit", name)) => Some(format!("constants.{name}")),
            Some(("lot", name)) => Some(name.to_owned()),
            Some(("tires", "cold")) => None,
            Some(("assumed" | "charges" | "people" | "site" | "tires", _)) => Some(fact.to_owned()),
            _ => None,
        };
        Some(match in_lot {
            Some(name) => lot.place_at(deepest(&lot.text, &name)),
            None => sheet.place_at(deepest(&sheet.text, if fact == "tires.cold" { "axles" } else { fact })),
        })
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
                let breaks = fit.breaks.iter().map(|b| self.broken(b));
                let remedies = fit.remedies.iter().map(|remedy| self.remedy(remedy));
                let sets = fit.sets.iter().map(|set| self.set(fit, set));
                breaks.chain(remedies).chain(sets).collect()
            }
            Detail::Projection(projection) => {
                let said = figures::say_projection(&self.words, &self.reader, projection);
                let courses = said.courses.into_iter().map(|(_, text)| text);
                [said.first].into_iter().chain(courses).chain(said.helps).chain(said.unknown).collect()
            }
            // Its formula has a line for each of its lines.
            Detail::Bill(_) => Vec::new(),
        }
    }

    /// A broken rule with its numbers.
    fn broken(&self, broken: &Break) -> String {
        let what = self.say(&format!("fits-break-{}", broken.rule.word()), &Args::new());
        let watts = |value: f64, rounding: Rounding| {
            let number = rounded(value, 0, rounding).unwrap_or_default();
            let quantity = Quantity::new(number, Measure::Watt);
            format::quantity(&self.words, &self.reader, &quantity, rounding, format::Places::AsWritten)
        };
        if matches!(broken.rule, Rule::NotFrom | Rule::RoofAir) {
            return what;
        }
        let args = Args::new()
            .text("what", what)
            .text("sum", watts(broken.sum, Rounding::Up))
            .text("limit", watts(broken.limit, Rounding::Down));
        self.say("fits-over", &args)
    }

    /// A set that fits beside what runs by itself.
    fn set(&self, fit: &Fit, set: &[String]) -> String {
        let args = Args::new().text("set", self.loads(set));
        if fit.always.is_empty() {
            return self.say("fits-set", &args);
        }
        self.say("fits-set-with", &args.text("always", self.loads(&fit.always)))
    }

    fn remedy(&self, remedy: &Remedy) -> String {
        let part = |key: &str, ids: &[String]| {
            (!ids.is_empty()).then(|| self.say(key, &Args::new().text("what", self.loads(ids))))
        };
        let parts = [part("fits-off", &remedy.off), part("fits-propane", &remedy.on_propane)];
        format::list(&self.words, &self.reader, &parts.into_iter().flatten().collect::<Vec<_>>())
    }

    fn value(&self, figure: &Figure) -> String {
        value_text(&self.words, &self.reader, figure)
    }
}
