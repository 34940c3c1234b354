//! What it can cost: what goes with the renter and its price, and what can be charged.

use super::Show;
use super::account::Part;
use crate::unit::Value;
use crate::words::{Args, format};

/// Fees in the order in which people ask for them, and the fact each stands on. What a unit does not have is not
/// listed.
const FEES: [(&str, &str); 19] = [
    ("deposit", "fees.deposit"),
    ("miles", "fees.miles_night"),
    ("mile", "fees.mile"),
    ("generator", "fees.generator_night"),
    ("generator-hour", "fees.generator_hour"),
    ("fuel", "fees.fuel_gallon"),
    ("fuel-service", "fees.fuel_service"),
    ("propane", "fees.propane_quarter"),
    ("cylinder", "fees.propane_cylinder"),
    ("black", "fees.black"),
    ("cassette", "fees.cassette"),
    ("grey", "fees.grey"),
    ("clean", "fees.clean"),
    ("griddle", "fees.griddle"),
    ("smoke", "fees.smoke"),
    ("pet", "fees.pet"),
    ("pet-hidden", "fees.pet_hidden"),
    ("late", "fees.late_hour"),
    ("tax", "charges.tax"),
];

/// What goes with the renter; none when nothing is lent.
pub(super) fn lent(show: &Show<'_, '_>) -> Option<Part> {
    let lines = items(show);
    (!lines.is_empty()).then(|| Part { title: show.say("take-items"), lines })
}

/// What can be charged, in this many parts of about the same length.
pub(super) fn charged(show: &Show<'_, '_>, parts: usize) -> Vec<Part> {
    let all = fees(show);
    let most = all.len().div_ceil(parts.max(1)).max(1);
    let title = |at: usize| if at == 0 { show.say("take-fees") } else { show.say("take-fees-more") };
    all.chunks(most).enumerate().map(|(at, lines)| Part { title: title(at), lines: lines.to_vec() }).collect()
}

/// What was counted, else what is lent.
fn items(show: &Show<'_, '_>) -> Vec<(String, String)> {
    let walk = &show.hall.walk;
    let (words, reader) = (&show.ctx.scripts.words, show.speaker.reader());
    let currency = &show.ctx.scripts.lot.value.currency;
    let line = |item: &crate::route::Item| {
        let count = walk.item(&item.tag).map_or(item.count, |c| c.value.count);
        if count == 0 {
            return None;
        }
        let args = Args::new().number("count", u64::from(count)).text("item", show.speaker.say(&item.words));
        let price = format::money(words, reader, &item.price, currency);
        let price =
            if count == 1 { price } else { show.say_with("take-each", Args::new().text("price", price)) };
        Some((show.say_with("take-item", args), price))
    };
    walk.route().items.iter().filter_map(line).collect()
}

fn fees(show: &Show<'_, '_>) -> Vec<(String, String)> {
    let Some(facts) = show.ctx.scripts.facts(&show.hall.walk.route().unit) else { return Vec::new() };
    // A fee whose sum nobody has looked up is charged all the same.
    let charged =
        |fact: &str| facts.is_not_known(fact) || facts.get(fact).is_some_and(|f| f.value != Value::NotFitted);
    let line = |fee: &str| (show.say(&format!("fee-{fee}")), show.say(&format!("fee-{fee}.sum")));
    FEES.iter().filter(|(_, fact)| charged(fact)).map(|(fee, _)| line(fee)).collect()
}
