//! The walk of every unit of the demo lot on the screen: whatever is fitted or not, each page fits and is drawn.

use sendoff::kiosk::screen::walk::Message;
use sendoff::kiosk::{self, screen};

use crate::kiosk_support::{Kiosk, SIZES, Setup, opened};

fn go(kiosk: &mut Kiosk, step: usize) {
    kiosk.message(kiosk::Message::Screen(screen::Message::Walk(Message::StepChosen(step))));
}

#[test]
fn every_step_of_every_unit_fits_on_its_page() {
    let mut faults = Vec::new();
    for unit in ["heron", "plover", "wren"] {
        for size in SIZES {
            let mut kiosk = Setup::new().size(size).resume(unit, &opened("en-US", "us"));
            let steps: Vec<String> = kiosk.walk().route().steps.iter().map(|s| s.id.clone()).collect();
            for (at, step) in steps.iter().enumerate() {
                go(&mut kiosk, at);
                for fault in kiosk.look().faults() {
                    faults.push(format!("{unit} {size:?} {step}: {fault}"));
                }
                if at % 16 == 0 {
                    kiosk.renders();
                }
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}
