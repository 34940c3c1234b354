//! A tablet that is turned in the middle of a signature.

use sendoff::walk::Who;

use super::{ANN, closing, consent, signed, to_consent, whole, write};
use crate::kiosk_support::Setup;

#[test]
fn half_a_signature_survives_turning() {
    let mut kiosk = closing(Setup::new(), &whole("en-US"));
    to_consent(&mut kiosk);
    consent(&mut kiosk);
    write(&mut kiosk);
    let wide = kiosk.setup.size;
    for size in [(800.0, 1280.0), wide] {
        kiosk.resize(size);
        kiosk.expect("Done");
    }
    write(&mut kiosk);
    kiosk.click("Done");
    let ink = signed(&kiosk, Who::Person(ANN)).expect("Ann has signed");
    assert_eq!(ink.strokes.len(), 2, "the stroke from before it was turned counts");
}
