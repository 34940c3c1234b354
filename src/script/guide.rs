//! A trouble guide as people write it: hazards first, then rows that ask and lead on.

use std::collections::BTreeSet;

use serde::Deserialize;

use crate::source::At;
use crate::unit::Facts;

use super::form::CautionForm;
use crate::unit::When;

/// A guide file.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Guide {
    /// Id, as the file is named.
    pub id: At<String>,
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// Hazards, shown and tapped through before the first row.
    pub hazards: Vec<At<CautionForm>>,
    /// Rows in their order; the first one that applies to the unit begins.
    pub rows: Vec<At<GuideRow>>,
}

/// A row: one look or one act, and a question that is answered yes or no.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GuideRow {
    /// Id within the guide.
    pub id: At<String>,
    /// Equipment it needs; a unit without it never comes here.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// Where yes leads.
    pub yes: Target,
    /// Where no leads.
    pub no: Target,
}

/// Where an answer leads.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub enum Target {
    /// A row of this guide.
    Row(At<String>),
    /// Another guide.
    Guide(At<String>),
    /// It works again.
    Fixed,
    /// Call the road help.
    Call,
    /// Stay out, call from outside.
    Leave,
    /// No fault here: wait or move.
    Wait,
    /// By the unit's equipment: the first that applies.
    By(Vec<Branch>),
}

/// One way of several, by equipment.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Branch {
    /// Equipment it needs.
    #[serde(default, alias = "when?")]
    pub when: Option<When>,
    /// Where it leads.
    pub to: Target,
}

/// Where a path through a guide ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum End {
    /// It works again.
    Fixed,
    /// Call the road help.
    Call,
    /// Stay out, call from outside.
    Leave,
    /// No fault here: wait or move.
    Wait,
}

impl End {
    /// The end as keys of messages spell it: `guide-end-<word>`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fixed => "fixed",
            Self::Call => "call",
            Self::Leave => "leave",
            Self::Wait => "wait",
        }
    }
}

/// Where an answer leads on one unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Way<'a> {
    /// A row of this guide.
    Row(&'a At<String>),
    /// Another guide.
    Guide(&'a At<String>),
    /// It ends.
    End(End),
}

impl Target {
    /// Where it leads on a unit; none when no branch applies.
    #[must_use]
    pub fn on(&self, facts: &Facts) -> Option<Way<'_>> {
        Some(match self {
            Self::Row(id) => Way::Row(id),
            Self::Guide(id) => Way::Guide(id),
            Self::Fixed => Way::End(End::Fixed),
            Self::Call => Way::End(End::Call),
            Self::Leave => Way::End(End::Leave),
            Self::Wait => Way::End(End::Wait),
            Self::By(branches) => {
                let branch = branches.iter().find(|b| b.when.as_ref().is_none_or(|w| w.holds(facts)))?;
                return branch.to.on(facts);
            }
        })
    }

    /// All targets inside it that are no choice themselves, and all conditions.
    #[must_use]
    pub fn flat(&self) -> (Vec<&Self>, Vec<&When>) {
        let Self::By(branches) = self else { return (vec![self], Vec::new()) };
        let mut all = (Vec::new(), Vec::new());
        for branch in branches {
            all.1.extend(branch.when.as_ref());
            let (targets, conditions) = branch.to.flat();
            all.0.extend(targets);
            all.1.extend(conditions);
        }
        all
    }
}

impl Guide {
    /// Whether the guide is for a unit.
    #[must_use]
    pub fn fits(&self, facts: &Facts) -> bool {
        self.when.as_ref().is_none_or(|w| w.holds(facts))
    }

    /// The row of this id, and its place in the file, from 1.
    #[must_use]
    pub fn row(&self, id: &str) -> Option<(usize, &GuideRow)> {
        let at = self.rows.iter().position(|row| row.value.id.value == id)?;
        Some((at + 1, &self.rows.get(at)?.value))
    }

    /// Number of a row on a unit, among those it can come to: whoever helps on the phone asks which unit it is.
    #[must_use]
    pub fn number(&self, id: &str, facts: &Facts) -> Option<usize> {
        let reached = self.reached(facts);
        let mut rows = self.rows.iter().map(|row| row.value.id.value.as_str());
        let at = rows.by_ref().filter(|row| reached.contains(row)).position(|row| row == id)?;
        Some(at + 1)
    }

    /// The row a unit begins with.
    #[must_use]
    pub fn first(&self, facts: &Facts) -> Option<&GuideRow> {
        let applies = |row: &&At<GuideRow>| row.value.when.as_ref().is_none_or(|w| w.holds(facts));
        self.rows.iter().find(applies).map(|row| &row.value)
    }

    /// Hazards of a unit.
    pub fn hazards<'a>(&'a self, facts: &'a Facts) -> impl Iterator<Item = &'a CautionForm> {
        let hazards = self.hazards.iter().map(|h| &h.value);
        hazards.filter(|h| h.when.as_ref().is_none_or(|w| w.holds(facts)))
    }

    /// Ids of the rows that a unit can come to.
    #[must_use]
    pub fn reached(&self, facts: &Facts) -> BTreeSet<&str> {
        let mut open: Vec<&GuideRow> = self.first(facts).into_iter().collect();
        let mut seen = BTreeSet::new();
        while let Some(row) = open.pop() {
            if !seen.insert(row.id.value.as_str()) {
                continue;
            }
            for target in [&row.yes, &row.no] {
                if let Some(Way::Row(id)) = target.on(facts) {
                    open.extend(self.row(&id.value).map(|(_, row)| row));
                }
            }
        }
        seen
    }
}
