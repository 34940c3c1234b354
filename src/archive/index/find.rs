//! Finding: a query becomes a few lists of keys, walked in order and only as far as a page needs.

use std::collections::BTreeSet;

use rusqlite::types::Value;
use rusqlite::{params, params_from_iter};

use super::file::mark;
use super::hit::{HIT, Hit, hit};
use super::page::{Count, Cursor, Page, Tier};
use super::query::{Query, Sort};
use super::words::{self, Phrase};
use super::{Index, IndexFault, Part};

/// A word that stands in texts of more groups than this tells little: its records are looked through one by one.
const BROAD: usize = 64;
/// Columns that say which record it is.
const HEAD: &str = "{names which}";
/// Columns of all words of a record itself.
const WORDS: &str = "{names which other notes}";

/// Whether one record fits an expression; the key follows.
const FOUND_AT: &str = "SELECT 1 FROM found WHERE found MATCH ? AND found.rowid =";
const INSIDE_AT: &str = "SELECT 1 FROM inside WHERE inside MATCH ? AND inside.rowid =";

/// A word of the query, looked up.
#[derive(Debug)]
struct Word {
    quoted: String,
    /// Numbers of the groups with texts that hold it, sorted.
    groups: Vec<u32>,
}

impl Word {
    const fn is_broad(&self) -> bool {
        self.groups.len() > BROAD
    }

    /// In which records it stands, shared texts included.
    fn anywhere(&self) -> String {
        let mut all = format!("({WORDS} : {}*", self.quoted);
        for group in &self.groups {
            all.push_str(" OR ");
            all.push_str(&quoted(i64::from(*group)));
        }
        all.push(')');
        all
    }
}

/// A query, looked up.
#[derive(Debug)]
struct Plan {
    words: Vec<Word>,
    /// Expression for parts of names.
    inside: Option<String>,
    /// Marks that must stand there.
    marks: Vec<String>,
    least: i64,
    most: i64,
}

impl Plan {
    /// `None` when nothing can be found, since a filter names what no record has. Shared texts are looked up only where
    /// their tier is wanted.
    fn of(index: &Part, query: &Query, last: Tier) -> Result<Option<Self>, IndexFault> {
        let mut marks = Vec::new();
        let mut groups = index
            .connection()
            .prepare_cached("SELECT grp FROM tags JOIN grouped ON member = id WHERE key = ?1 ORDER BY grp")?;
        for key in query.tags() {
            let any = groups.query_map([key], |row| row.get(0))?.map(|id| Ok(quoted(id?)));
            let any = any.collect::<Result<Vec<String>, IndexFault>>()?;
            if any.is_empty() {
                return Ok(None);
            }
            marks.push(format!("({})", any.join(" OR ")));
        }
        let phrases = words::phrases(&query.words);
        let parts: Option<Vec<String>> = phrases.iter().map(Phrase::part).collect();
        let inside = parts.filter(|all| !all.is_empty()).map(|all| all.join(" AND "));
        let word = |phrase| look_up(index, phrase, last == Tier::Shared);
        let words = phrases.iter().map(word).collect::<Result<_, _>>()?;
        let (least, most) = query.keys();
        Ok(Some(Self { words, inside, marks, least, most }))
    }

    /// All words, as they are or as beginnings.
    fn each(&self, star: &str) -> String {
        self.words.iter().map(|w| format!("{}{star}", w.quoted)).collect::<Vec<_>>().join(" AND ")
    }

    /// Expression for a tier in the table of what says which record it is. That table has no words in other columns to
    /// be passed over, and no marks.
    fn head(&self, tier: Tier, without: Option<Tier>) -> Option<String> {
        if self.words.is_empty() || !self.marks.is_empty() {
            return None;
        }
        match (tier, without) {
            (Tier::Whole, _) => Some(self.each("")),
            (Tier::Begun, None) => Some(self.each("*")),
            (Tier::Begun, Some(_)) => Some(format!("({}) NOT ({})", self.each("*"), self.each(""))),
            _ => None,
        }
    }

    /// Expression for a tier, without the marks; none if it asks for nothing.
    fn fits(&self, tier: Tier) -> Option<String> {
        let all = match tier {
            _ if self.words.is_empty() => return None,
            Tier::Whole => format!("{HEAD} : ({})", self.each("")),
            Tier::Begun => format!("{HEAD} : ({})", self.each("*")),
            Tier::Inside => return self.inside.clone(),
            Tier::Said => format!("{WORDS} : ({})", self.each("*")),
            Tier::Shared => {
                let narrow = self.words.iter().filter(|w| !w.is_broad());
                let all: Vec<String> = narrow.map(Word::anywhere).collect();
                return (!all.is_empty()).then(|| all.join(" AND "));
            }
        };
        Some(all)
    }

    /// The whole expression for a tier; none if every record fits it.
    fn expression(&self, tier: Tier, without: Option<Tier>) -> Option<String> {
        let parts: Vec<String> =
            self.fits(tier).map(|f| format!("({f})")).into_iter().chain(self.marks.iter().cloned()).collect();
        let all = (!parts.is_empty()).then(|| parts.join(" AND "))?;
        Some(match without.and_then(|tier| self.fits(tier)) {
            Some(without) => format!("({all}) NOT ({without})"),
            None => all,
        })
    }

    /// Whether a tier can hold anything that those before it do not.
    fn has(&self, tier: Tier) -> bool {
        match tier {
            Tier::Inside => self.inside.is_some(),
            Tier::Shared => self.words.is_empty() || self.words.iter().any(|w| !w.groups.is_empty()),
            Tier::Whole | Tier::Begun | Tier::Said => !self.words.is_empty(),
        }
    }
}

/// The mark of a group in an expression.
fn quoted(group: i64) -> String {
    let mut name = String::new();
    mark(&mut name, group);
    format!("\"{}\"", name.trim())
}

fn look_up(index: &Part, phrase: &Phrase, shared: bool) -> Result<Word, IndexFault> {
    let quoted = phrase.quoted();
    let mut groups = Vec::new();
    if shared && phrase.in_texts() {
        let mut find = index.connection().prepare_cached(
            "SELECT DISTINCT grp FROM texts JOIN grouped ON member = texts.rowid WHERE texts MATCH ?1 ORDER BY grp",
        )?;
        let found = find.query_map([format!("{quoted}*")], |row| row.get::<_, u32>(0))?;
        groups = found.collect::<Result<_, _>>()?;
    }
    Ok(Word { quoted, groups })
}

impl Index {
    /// A page of what a query finds, from its beginning or from where the page before ended.
    ///
    /// # Errors
    /// The index cannot be read.
    pub fn search(&self, query: &Query, after: Option<&Cursor>, limit: usize) -> Result<Page, IndexFault> {
        // One more than is shown tells whether there is a next page.
        let most = limit.saturating_add(1);
        let mut found: Vec<(Cursor, &Part)> = Vec::new();
        let mut last = Tier::Shared;
        for part in &self.parts {
            let cursors = part.search(query, after, most, last)?;
            // A full page of better ones leaves no room for worse ones, wherever they are.
            if let Some(worst) = cursors.get(limit) {
                last = worst.tier;
            }
            found.extend(cursors.into_iter().map(|cursor| (cursor, part)));
        }
        if self.parts.len() > 1 {
            found.sort_by(|(a, _), (b, _)| a.order(b, query));
        }
        let more = found.len() > limit;
        found.truncate(limit);
        let hits = found.iter().map(|(cursor, part)| part.hit(cursor.key)).collect::<Result<_, _>>()?;
        Ok(Page { hits, next: found.pop().filter(|_| more).map(|(cursor, _)| cursor) })
    }

    /// How many records a query finds, counted up to a limit.
    ///
    /// # Errors
    /// The index cannot be read.
    pub fn count(&self, query: &Query, limit: u64) -> Result<Count, IndexFault> {
        let most = usize::try_from(limit).unwrap_or(usize::MAX).saturating_add(1);
        let mut found = 0_usize;
        for part in &self.parts {
            found = found.saturating_add(part.count(query, most)?);
        }
        let found = u64::try_from(found).unwrap_or(u64::MAX);
        Ok(if found > limit { Count::MoreThan(limit) } else { Count::Exactly(found) })
    }
}

/// What a tier leaves to those before it.
#[derive(Debug, Clone, Copy)]
enum Without<'a> {
    /// All of this tier, and of those that it holds.
    Tier(Option<Tier>),
    /// These keys.
    Keys(&'a BTreeSet<i64>),
}

/// The question for a tier without those before it: its beginning, the column of its keys, and what it is asked with.
fn select(plan: &Plan, tier: Tier, before: Option<Tier>) -> Option<(String, &'static str, Vec<Value>)> {
    let (mut sql, key, mut given): (String, &str, Vec<Value>);
    if tier == Tier::Inside {
        (sql, key) = ("SELECT rowid FROM inside WHERE inside MATCH ?".to_owned(), "inside.rowid");
        given = vec![plan.inside.clone()?.into()];
        if !plan.marks.is_empty() {
            sql.push_str(&format!(" AND EXISTS ({FOUND_AT} {key})"));
            given.push(plan.marks.join(" AND ").into());
        }
        // Beginnings were found before.
        if let Some(begun) = before.and_then(|tier| plan.fits(tier)) {
            sql.push_str(&format!(" AND NOT EXISTS ({FOUND_AT} {key})"));
            given.push(begun.into());
        }
    } else if let Some(head) = plan.head(tier, before) {
        (sql, key) = ("SELECT rowid FROM head WHERE head MATCH ?".to_owned(), "head.rowid");
        given = vec![head.into()];
    } else {
        if let Some(expression) = plan.expression(tier, before) {
            (sql, key) = ("SELECT rowid FROM found WHERE found MATCH ?".to_owned(), "found.rowid");
            given = vec![expression.into()];
        } else {
            (sql, key) = ("SELECT key FROM records WHERE TRUE".to_owned(), "records.key");
            given = Vec::new();
        }
        if let Some(inside) = plan.inside.clone().filter(|_| tier > Tier::Inside && before.is_some()) {
            sql.push_str(&format!(" AND NOT EXISTS ({INSIDE_AT} {key})"));
            given.push(inside.into());
        }
    }
    Some((sql, key, given))
}

impl Part {
    /// Where the first records stand that a query finds, in order and down to a tier.
    fn search(
        &self,
        query: &Query,
        after: Option<&Cursor>,
        most: usize,
        last: Tier,
    ) -> Result<Vec<Cursor>, IndexFault> {
        let Some(plan) = Plan::of(self, query, last)? else { return Ok(Vec::new()) };
        match query.sort {
            Sort::Best => self.ranked(&plan, after, most, last),
            _ => self.sorted(&plan, query, after, most),
        }
    }

    fn hit(&self, key: i64) -> Result<Hit, IndexFault> {
        let mut load = self.connection().prepare_cached(&format!("{HIT} WHERE key = ?1"))?;
        Ok(load.query_row([key], hit)?)
    }

    /// How many records a query finds, counted up to `most`.
    fn count(&self, query: &Query, most: usize) -> Result<usize, IndexFault> {
        let Some(plan) = Plan::of(self, query, Tier::Shared)? else { return Ok(0) };
        let widest = if plan.has(Tier::Shared) { Tier::Shared } else { Tier::Said };
        let wide = self.keys(&plan, widest, Without::Tier(None), None, most)?;
        let mut found = wide.len();
        if found < most && plan.inside.is_some() {
            let room = most.saturating_add(found);
            let inside = self.keys(&plan, Tier::Inside, Without::Tier(None), None, room)?;
            found += inside.iter().filter(|key| wide.binary_search(key).is_err()).count();
        }
        Ok(found)
    }

    fn ranked(
        &self,
        plan: &Plan,
        after: Option<&Cursor>,
        limit: usize,
        last: Tier,
    ) -> Result<Vec<Cursor>, IndexFault> {
        let mut found = Vec::new();
        let first = after.map_or(Tier::Whole, |cursor| cursor.tier);
        // From the beginning, what the tiers before hold is known, and little: a page is not full yet.
        let mut known = after.is_none().then(BTreeSet::new);
        let mut before = None;
        for tier in Tier::ALL.into_iter().take_while(|tier| *tier <= last) {
            if tier >= first && plan.has(tier) {
                let from = after.filter(|cursor| cursor.tier == tier).map(|cursor| cursor.key);
                let without = match &known {
                    Some(known) => Without::Keys(known),
                    None => Without::Tier(before),
                };
                let keys = self.keys(plan, tier, without, from, limit.saturating_sub(found.len()))?;
                if let Some(known) = &mut known {
                    known.extend(keys.iter().copied());
                }
                found.extend(keys.into_iter().map(|key| Cursor { tier, sorted: Value::Null, key }));
                if found.len() >= limit {
                    break;
                }
            }
            if plan.has(tier) && tier != Tier::Inside {
                before = Some(tier);
            }
        }
        Ok(found)
    }

    /// Keys of a tier in order, without those of the tiers before it.
    fn keys(
        &self,
        plan: &Plan,
        tier: Tier,
        without: Without<'_>,
        after: Option<i64>,
        limit: usize,
    ) -> Result<Vec<i64>, IndexFault> {
        let (before, known) = match without {
            Without::Tier(before) => (before, None),
            Without::Keys(known) => (None, Some(known)),
        };
        let least = after.map_or(plan.least, |key| plan.least.max(key.saturating_add(1)));
        let Some((mut sql, key, mut given)) = select(plan, tier, before) else { return Ok(Vec::new()) };
        sql.push_str(&format!(" AND {key} BETWEEN ? AND ? ORDER BY {key}"));
        given.extend([least.into(), plan.most.into()]);
        let mut statement = self.connection().prepare_cached(&sql)?;
        let mut rows = statement.query(params_from_iter(given))?;
        let mut keys = Vec::new();
        let check = tier == Tier::Shared;
        while keys.len() < limit {
            let Some(row) = rows.next()? else { break };
            let key = row.get(0)?;
            if known.is_some_and(|known| known.contains(&key)) {
                continue;
            }
            if !check || self.fits_broad(plan, key)? && !self.fits_before(plan, before, key)? {
                keys.push(key);
            }
        }
        Ok(keys)
    }

    /// Whether a record holds every word that is too frequent to be looked up.
    fn fits_broad(&self, plan: &Plan, key: i64) -> Result<bool, IndexFault> {
        for word in plan.words.iter().filter(|w| w.is_broad()) {
            let mut shown = self.connection().prepare_cached("SELECT groups FROM shown WHERE record = ?1")?;
            let blob: Vec<u8> = shown.query_row([key], |row| row.get(0))?;
            let mut groups = blob.as_chunks::<4>().0.iter().map(|four| u32::from_le_bytes(*four));
            let holds = groups.any(|group| word.groups.binary_search(&group).is_ok())
                || self.matches(&format!("{WORDS} : {}*", word.quoted), key)?;
            if !holds {
                return Ok(false);
            }
        }
        Ok(true)
    }

    /// Whether a record that no expression was needed for fits an earlier tier.
    fn fits_before(&self, plan: &Plan, before: Option<Tier>, key: i64) -> Result<bool, IndexFault> {
        let unasked = plan.expression(Tier::Shared, None).is_none();
        match before.filter(|_| unasked).and_then(|tier| plan.fits(tier)) {
            Some(expression) => self.matches(&expression, key),
            None => Ok(false),
        }
    }

    fn matches(&self, expression: &str, key: i64) -> Result<bool, IndexFault> {
        let mut one = self.connection().prepare_cached(&format!("{FOUND_AT} ?2"))?;
        Ok(one.exists(params![expression, key])?)
    }

    /// Everything that fits, in the order of a column.
    fn sorted(
        &self,
        plan: &Plan,
        query: &Query,
        after: Option<&Cursor>,
        limit: usize,
    ) -> Result<Vec<Cursor>, IndexFault> {
        let column = match query.sort {
            Sort::Best | Sort::Sealed => "key",
            Sort::Received => "received",
            Sort::Renter => "renter_key",
            Sort::Unit => "unit",
        };
        let (beyond, way) = if query.reversed { ("<", "DESC") } else { (">", "ASC") };
        let widest = if plan.has(Tier::Shared) { Tier::Shared } else { Tier::Said };
        let expression = plan.expression(widest, None);
        // The plus keeps the walk on the column that sorts.
        let days = if column == "key" { "key" } else { "+key" };
        let mut sql = format!("SELECT {column}, key FROM records WHERE {days} BETWEEN ? AND ?");
        let mut given = vec![Value::from(plan.least), Value::from(plan.most)];
        if let Some(expression) = expression {
            sql.push_str(" AND +key IN (SELECT rowid FROM found WHERE found MATCH ?");
            given.push(expression.into());
            if let Some(inside) = &plan.inside {
                sql.push_str(" UNION ALL SELECT rowid FROM inside WHERE inside MATCH ?");
                given.push(inside.clone().into());
                if !plan.marks.is_empty() {
                    sql.push_str(&format!(" AND EXISTS ({FOUND_AT} inside.rowid)"));
                    given.push(plan.marks.join(" AND ").into());
                }
            }
            sql.push(')');
        }
        if let Some(after) = after {
            sql.push_str(&format!(" AND ({column}, key) {beyond} (?, ?)"));
            given.extend([after.sorted.clone(), after.key.into()]);
        }
        sql.push_str(&format!(" ORDER BY {column} {way}, key {way}"));
        let mut statement = self.connection().prepare_cached(&sql)?;
        let mut rows = statement.query(params_from_iter(given))?;
        let mut found = Vec::new();
        while found.len() < limit {
            let Some(row) = rows.next()? else { break };
            let cursor = Cursor { tier: Tier::Shared, sorted: row.get(0)?, key: row.get(1)? };
            if self.fits_broad(plan, cursor.key)? || self.fits_inside(plan, cursor.key)? {
                found.push(cursor);
            }
        }
        Ok(found)
    }

    fn fits_inside(&self, plan: &Plan, key: i64) -> Result<bool, IndexFault> {
        let Some(inside) = &plan.inside else { return Ok(false) };
        let mut one = self.connection().prepare_cached(&format!("{INSIDE_AT} ?2"))?;
        Ok(one.exists(params![inside, key])?)
    }
}
