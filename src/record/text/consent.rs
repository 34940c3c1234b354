//! The consent to an electronic record, as screens show it and records keep it.

use crate::record::seal::Digest;
use crate::script::Speaker;

/// How many points of 15 USC 7001(c) it makes.
pub const CONSENT_POINTS: usize = 7;

/// Title, seven points, the sentence that is agreed to; and the SHA-256 over these lines, each ended by a line
/// feed, that an answer is bound to. The points follow 15 USC 7001(c)(1): paper and withdrawal (B)(i), scope
/// (B)(ii), how to withdraw and to tell a new address (B)(iii), a paper copy later (B)(iv), what is needed to
/// read it (C)(i), what happens when that changes (D); the sentence is (A) and (C)(ii).
#[must_use]
pub fn consent_text(speaker: &Speaker<'_>) -> (Vec<String>, String) {
    let points = (1..=CONSENT_POINTS).map(|n| format!("consent-{n}"));
    let keys = std::iter::once("consent-title".to_owned()).chain(points).chain(["consent-check".to_owned()]);
    let lines: Vec<String> = keys.map(|key| speaker.say_steady(&key)).collect();
    let text: String = lines.iter().flat_map(|line| [line.as_str(), "\n"]).collect();
    let digest = Digest::of(text.as_bytes()).to_string();
    (lines, digest)
}
