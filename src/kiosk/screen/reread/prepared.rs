//! What the pages of one unit are made from: its route, what can be found, the pegs of the plan.

use std::cell::RefCell;
use std::rc::Rc;

use crate::kiosk::plan::{Peg, PegState};
use crate::route::find::{Hit, Index, is_grave};
use crate::route::{Route, Zone, build};
use crate::script::Scripts;
use crate::words::Reader;

/// Made once for a unit; what depends on the reader is made when it is first wanted.
#[derive(Debug)]
pub(super) struct Prepared {
    pub route: Route,
    /// Guides for the unit: those about danger first.
    pub guides: Vec<Guide>,
    found: RefCell<Option<(Reader, Rc<Index>)>>,
    last: RefCell<Option<Answer>>,
}

/// The last query with what it has found.
#[derive(Debug)]
struct Answer {
    reader: Reader,
    query: String,
    hits: Rc<Vec<Hit>>,
}

/// A guide in the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Guide {
    pub id: String,
    /// Whether it is about getting out of danger.
    pub grave: bool,
}

impl Prepared {
    pub fn new(scripts: &Scripts, unit: &str) -> Option<Self> {
        let route = build(scripts, unit)?;
        let facts = scripts.facts(unit)?;
        let fitting = scripts.guides.values().map(|g| &g.value).filter(|g| g.fits(&facts));
        let mut guides: Vec<Guide> =
            fitting.map(|g| Guide { id: g.id.value.clone(), grave: is_grave(g, &facts) }).collect();
        // The order within stays that of their ids.
        guides.sort_by_key(|g| !g.grave);
        Some(Self { route, guides, found: RefCell::default(), last: RefCell::default() })
    }

    /// Stops that have a place on the plan; the one that is listed alone is marked. How anyone's walk stands is not
    /// told.
    pub fn pegs(&self, zone: Zone, stop: Option<u16>) -> Vec<Peg> {
        let placed = self.route.stops.iter().filter(|s| matches!(s.zone, Zone::Outside | Zone::Inside));
        placed
            .filter_map(|s| {
                let here = s.zone == zone && stop == Some(s.number);
                let state = if here { PegState::Here } else { PegState::Open };
                Some(Peg { number: s.number, at: s.at?, inside: s.zone == Zone::Inside, state })
            })
            .collect()
    }

    /// What a query finds; the last answer is kept, since a page is laid out often.
    pub fn hits(&self, scripts: &Scripts, reader: &Reader, query: &str) -> Rc<Vec<Hit>> {
        if let Some(last) = &*self.last.borrow()
            && last.reader == *reader
            && last.query == query
        {
            return Rc::clone(&last.hits);
        }
        let hits = Rc::new(self.index(scripts, reader).map(|i| i.find(query)).unwrap_or_default());
        let answer = Answer { reader: reader.clone(), query: query.to_owned(), hits: Rc::clone(&hits) };
        *self.last.borrow_mut() = Some(answer);
        hits
    }

    fn index(&self, scripts: &Scripts, reader: &Reader) -> Option<Rc<Index>> {
        if let Some((known, index)) = &*self.found.borrow()
            && known == reader
        {
            return Some(Rc::clone(index));
        }
        let index = Rc::new(Index::new(scripts, &self.route, reader)?);
        *self.found.borrow_mut() = Some((reader.clone(), Rc::clone(&index)));
        Some(index)
    }
}
