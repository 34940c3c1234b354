//! `sendoff archive search` and `sendoff archive rebuild`.

use std::fmt;

use super::{ListFormat, RebuildArgs, SearchArgs, table};
use crate::archive::index::keep::{self, Kept};
use crate::archive::index::{Count, Hit, Index, IndexFault, Query, Sort};
use crate::archive::{Archive, ArchiveFault};
use crate::commands::{COULD_NOT_RUN, Console, GOOD};
use crate::ports::Ports;

/// Beyond this, what is found is not counted.
const COUNTED: u64 = 100_000;

/// Why nothing could be searched.
#[derive(Debug, thiserror::Error)]
enum SearchFault {
    #[error(transparent)]
    Archive(#[from] ArchiveFault),
    #[error(transparent)]
    Index(#[from] IndexFault),
}

/// What was found.
struct Found {
    hits: Vec<Hit>,
    count: Count,
}

impl fmt::Display for Found {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let shown = self.hits.len();
        match self.count {
            Count::Exactly(0) => f.write_str("nothing was found"),
            Count::Exactly(1) => f.write_str("1 record"),
            Count::Exactly(all) if u64::try_from(shown).is_ok_and(|n| n == all) => write!(f, "{all} records"),
            Count::Exactly(all) => write!(f, "{shown} of {all} records; --limit lists more"),
            Count::MoreThan(many) => {
                write!(f, "{shown} of more than {many} records; --limit lists more, a filter fewer")
            }
        }
    }
}

pub(super) fn run(args: &SearchArgs, ports: &Ports, console: &mut Console) -> u8 {
    match find(args, ports, console) {
        Ok(found) => {
            match args.format {
                ListFormat::Table => table::text(&found.hits, console),
                ListFormat::Csv => table::csv(&found.hits, console),
                ListFormat::Json => console.say(table::json(&found.hits, found.count)),
            }
            if args.format == ListFormat::Table {
                console.say(found);
            } else {
                console.tell(found);
            }
            GOOD
        }
        Err(fault) => failed(fault, console),
    }
}

pub(super) fn rebuild(args: &RebuildArgs, ports: &Ports, console: &mut Console) -> u8 {
    let done = Archive::open(std::sync::Arc::clone(&ports.disk), &args.archive)
        .map_err(SearchFault::from)
        .and_then(|archive| Ok(keep::rebuild(&archive, ports, &mut |done, of| show(console, done, of))?));
    console.progress("");
    match done {
        Ok((_, Kept::Remade { records, .. })) => {
            console.say(format!("the index was made anew from {records} records"));
            GOOD
        }
        Ok((_, kept)) => {
            told(&kept, console);
            COULD_NOT_RUN
        }
        Err(fault) => failed(fault, console),
    }
}

fn failed(fault: SearchFault, console: &mut Console) -> u8 {
    console.progress("");
    console.complain(fault);
    COULD_NOT_RUN
}

fn show(console: &mut Console, done: usize, of: usize) {
    // A line for every record would take longer than reading it.
    if done.is_multiple_of(50) {
        console.progress(format_args!("index: {done} of {}", of.max(done)));
    }
}

fn find(args: &SearchArgs, ports: &Ports, console: &mut Console) -> Result<Found, SearchFault> {
    let query = Query {
        words: args.query.join(" "),
        unit: args.unit.clone(),
        from: args.from,
        to: args.to,
        caution: args.caution.clone(),
        answer: args.answer,
        kind: args.kind,
        agent: args.agent.clone(),
        language: args.language.clone(),
        item: args.item.clone(),
        good: None,
        sort: Sort::Best,
        reversed: false,
    };
    let archive = Archive::open(std::sync::Arc::clone(&ports.disk), &args.archive)?;
    let (index, kept) = keep::open(&archive, ports, &mut |done, of| show(console, done, of))?;
    console.progress("");
    told(&kept, console);
    match ask(&index, &query, args.limit) {
        // The file was whole; what it holds makes no sense all the same.
        Err(fault) if fault.can_be_remade() => {
            console.tell(format!("{fault}; it is made anew"));
            let (index, _) = keep::rebuild(&archive, ports, &mut |done, of| show(console, done, of))?;
            console.progress("");
            Ok(ask(&index, &query, args.limit)?)
        }
        other => Ok(other?),
    }
}

fn ask(index: &Index, query: &Query, limit: usize) -> Result<Found, IndexFault> {
    let hits = index.search(query, None, limit)?.hits;
    Ok(Found { hits, count: index.count(query, COUNTED)? })
}

/// Says what had to be done to the index.
fn told(kept: &Kept, console: &mut Console) {
    match kept {
        Kept::AsItWas | Kept::Added(_) => {}
        Kept::Remade { why, records } => {
            console.tell(format!("{why}: the index was made anew from {records} records"));
        }
        Kept::InMemory { why } => {
            console.tell(format!("the index could not be kept ({why}); it was made for this time alone"));
        }
        Kept::Behind { why, missing } => {
            console.tell(format!("{missing} new records are not in the index yet: {why}"));
        }
    }
}
