//! What runs together on one supply, which sets fit, and what to switch off.
//!
//! Rules (handbook FIG-10; NEC 551.73 for sites, 210.20 for loads of three hours or more): the sum and the long
//! loads of each leg, each outlets branch against its own breaker, a generator at its height and against its
//! breaker, an inverter against what is planned with, and the surge of a starting motor where it is known.

/// Watts of the smallest outlet, 15 A at 120 V: never enough for a roof air conditioner (common practice, no
/// source).
const SMALL_OUTLET: f64 = 1_800.0;
/// Loads of this family are roof air conditioners.
const ROOF_AIR: &str = "air-";
/// Room for the noise of doubles, in watts.
const NOISE: f64 = 1e-6;
/// Most loads of which every set is tried.
pub const MOST: usize = 20;
/// Most sets and remedies that are listed.
const LISTED: usize = 64;

/// A load as it is judged.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// Id.
    pub id: String,
    /// Power in watts.
    pub watts: f64,
    /// Whether it may run three hours or more.
    pub long: bool,
    /// Leg of a two-leg cord, 0 or 1; not known counts on both.
    pub leg: Option<usize>,
    /// Whether it hangs on the outlets branch.
    pub branch: bool,
    /// Power as it starts, where it is known, in watts.
    pub start: Option<f64>,
    /// Whether it can run from this supply at all.
    pub allowed: bool,
    /// Whether it can run on propane instead.
    pub propane: bool,
}

/// What a supply gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Number of legs, 1 or 2.
    pub legs: usize,
    /// Most watts of each leg.
    pub each: f64,
    /// Most watts of each leg for three hours or more; none where there is no such rule.
    pub long: Option<f64>,
    /// Most watts of the outlets branch, all and long; none where the unit has none.
    pub branch: Option<(f64, f64)>,
    /// Most watts for the moment a motor starts; none where it makes no difference.
    pub surge: Option<f64>,
    /// Whether it is a post, not the unit's own.
    pub post: bool,
}

/// Which rule a set breaks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rule {
    /// A load cannot run from this supply.
    NotFrom,
    /// A roof air conditioner on a small outlet.
    RoofAir,
    /// The sum of a leg.
    Total,
    /// The long loads of a leg.
    Long,
    /// The sum of the outlets branch.
    Branch,
    /// The long loads of the outlets branch.
    BranchLong,
    /// A motor that starts.
    Start,
}

impl Rule {
    /// The rule as keys and JSON spell it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::NotFrom => "not-from",
            Self::RoofAir => "roof-air",
            Self::Total => "total",
            Self::Long => "long",
            Self::Branch => "branch",
            Self::BranchLong => "branch-long",
            Self::Start => "start",
        }
    }
}

/// A broken rule.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Break {
    /// The rule.
    pub rule: Rule,
    /// Watts there are.
    pub sum: f64,
    /// Watts there may be.
    pub limit: f64,
}

/// A way to make a set fit.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Remedy {
    /// Loads to switch off.
    pub off: Vec<String>,
    /// Loads to run on propane instead.
    pub on_propane: Vec<String>,
}

/// What was found out about a supply.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// The supply in words of the trip: `post`, `generator`, `inverter`, `nothing`.
    pub supply: &'static str,
    /// Loads that were asked about.
    pub on: Vec<String>,
    /// Rules they break.
    pub breaks: Vec<Break>,
    /// The smallest changes that make them fit.
    pub remedies: Vec<Remedy>,
    /// Sets that fit and to which nothing more can be added.
    pub sets: Vec<Vec<String>>,
    /// Loads that run in each of the sets: the charger comes on with the power.
    pub always: Vec<String>,
}

/// Sums of a set, kept while loads come and go.
#[derive(Debug, Clone, Copy, Default)]
struct Sums {
    leg: [f64; 2],
    long: [f64; 2],
    branch: f64,
    branch_long: f64,
    all: f64,
    start_more: f64,
    banned: bool,
}

impl Sums {
    fn with(mut self, item: &Item, limits: &Limits) -> Self {
        for leg in 0..2 {
            let counts = match (limits.legs, item.leg) {
                (2, Some(own)) => own == leg,
                (2, None) => true,
                _ => leg == 0,
            };
            if let (true, Some(sum), Some(long)) = (counts, self.leg.get_mut(leg), self.long.get_mut(leg)) {
                *sum += item.watts;
                if item.long {
                    *long += item.watts;
                }
            }
        }
        if item.branch {
            self.branch += item.watts;
            if item.long {
                self.branch_long += item.watts;
            }
        }
        self.all += item.watts;
        if let Some(start) = item.start {
            self.start_more = self.start_more.max(start - item.watts);
        }
        self.banned |= !item.allowed || on_small_outlet(item, limits);
        self
    }

    fn fits(&self, limits: &Limits) -> bool {
        let within = |sum: f64, limit: f64| sum <= limit + NOISE;
        !self.banned
            && self.leg.iter().all(|sum| within(*sum, limits.each))
            && limits.long.is_none_or(|most| self.long.iter().all(|sum| within(*sum, most)))
            && limits
                .branch
                .is_none_or(|(all, long)| within(self.branch, all) && within(self.branch_long, long))
            && limits.surge.is_none_or(|most| within(self.all + self.start_more.max(0.0), most))
    }
}

fn on_small_outlet(item: &Item, limits: &Limits) -> bool {
    limits.post && limits.legs == 1 && limits.each <= SMALL_OUTLET + NOISE && item.id.starts_with(ROOF_AIR)
}

/// Every rule that a set of loads breaks; none when it fits.
#[must_use]
pub fn judge<'a>(items: impl IntoIterator<Item = &'a Item>, limits: &Limits) -> Vec<Break> {
    let mut sums = Sums::default();
    let mut breaks = Vec::new();
    for item in items {
        sums = sums.with(item, limits);
        if !item.allowed {
            breaks.push(Break { rule: Rule::NotFrom, sum: item.watts, limit: 0.0 });
        } else if on_small_outlet(item, limits) {
            breaks.push(Break { rule: Rule::RoofAir, sum: item.watts, limit: limits.each });
        }
    }
    let mut hold = |rule: Rule, sum: f64, limit: f64| {
        if sum > limit + NOISE {
            breaks.push(Break { rule, sum, limit });
        }
    };
    for leg in 0..2 {
        hold(Rule::Total, sums.leg.get(leg).copied().unwrap_or(0.0), limits.each);
        if let Some(long) = limits.long {
            hold(Rule::Long, sums.long.get(leg).copied().unwrap_or(0.0), long);
        }
    }
    if let Some((all, long)) = limits.branch {
        hold(Rule::Branch, sums.branch, all);
        hold(Rule::BranchLong, sums.branch_long, long);
    }
    if let Some(most) = limits.surge.filter(|_| sums.start_more > 0.0) {
        hold(Rule::Start, sums.all + sums.start_more, most);
    }
    breaks
}

/// Whether a set of loads fits.
#[must_use]
pub fn fits<'a>(items: impl IntoIterator<Item = &'a Item>, limits: &Limits) -> bool {
    judge(items, limits).is_empty()
}

/// How many of all sets of at most [`MOST`] loads fit, the empty one included. Adding a load never makes a set
/// fit that did not, so what does not fit is not searched further.
#[must_use]
pub fn count_fitting(items: &[Item], limits: &Limits) -> u64 {
    fn count(rest: &[Item], sums: Sums, limits: &Limits) -> u64 {
        let Some((first, rest)) = rest.split_first() else { return 1 };
        let with = sums.with(first, limits);
        let without = count(rest, sums, limits);
        if with.fits(limits) { without + count(rest, with, limits) } else { without }
    }
    count(items.get(..MOST).unwrap_or(items), Sums::default(), limits)
}

/// Sets that fit beside `always` and to which nothing more can be added, largest first. At most the first
/// [`MOST`] loads are tried.
#[must_use]
pub fn largest_sets(items: &[Item], always: &[Item], limits: &Limits) -> Vec<Vec<String>> {
    let items = items.get(..MOST).unwrap_or(items);
    let base = always.iter().fold(Sums::default(), |sums, item| sums.with(item, limits));
    let mut found: Vec<Vec<usize>> = Vec::new();
    if base.fits(limits) {
        grow(items, 0, base, limits, &mut Vec::new(), &mut found);
    }
    found.sort_by_key(|set| (std::cmp::Reverse(set.len()), set.clone()));
    found.truncate(LISTED);
    found
        .into_iter()
        .map(|set| set.into_iter().filter_map(|at| items.get(at)).map(|item| item.id.clone()).collect())
        .collect()
}

fn grow(
    items: &[Item],
    at: usize,
    sums: Sums,
    limits: &Limits,
    chosen: &mut Vec<usize>,
    found: &mut Vec<Vec<usize>>,
) {
    let Some(item) = items.get(at) else {
        let full = items
            .iter()
            .enumerate()
            .all(|(other, item)| chosen.contains(&other) || !sums.with(item, limits).fits(limits));
        if full && !chosen.is_empty() {
            found.push(chosen.clone());
        }
        return;
    };
    let with = sums.with(item, limits);
    if with.fits(limits) {
        chosen.push(at);
        grow(items, at + 1, with, limits, chosen, found);
        let _ = chosen.pop();
    }
    grow(items, at + 1, sums, limits, chosen, found);
}

/// The smallest changes that make a set fit: as few loads as possible switched off or put on propane.
#[must_use]
pub fn remedies(items: &[Item], limits: &Limits) -> Vec<Remedy> {
    let items = items.get(..MOST).unwrap_or(items);
    for size in 1..=items.len() {
        let mut found = Vec::new();
        choose(items.len(), size, &mut Vec::new(), &mut |gone| {
            let kept = items.iter().enumerate().filter(|(at, _)| !gone.contains(at)).map(|(_, item)| item);
            if found.len() < LISTED && fits(kept, limits) {
                let (on_propane, off): (Vec<&Item>, Vec<&Item>) =
                    gone.iter().filter_map(|at| items.get(*at)).partition(|item| item.propane);
                let ids = |all: Vec<&Item>| all.into_iter().map(|item| item.id.clone()).collect();
                found.push(Remedy { off: ids(off), on_propane: ids(on_propane) });
            }
        });
        if !found.is_empty() {
            found.sort();
            return found;
        }
    }
    Vec::new()
}

/// Every choice of `size` of `count` positions.
fn choose(count: usize, size: usize, chosen: &mut Vec<usize>, each: &mut dyn FnMut(&[usize])) {
    if chosen.len() == size {
        each(chosen);
        return;
    }
    let from = chosen.last().map_or(0, |last| last + 1);
    for at in from..count {
        chosen.push(at);
        choose(count, size, chosen, each);
        let _ = chosen.pop();
    }
}
