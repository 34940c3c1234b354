//! Every page and card of the Closing at every size.

use sendoff::kiosk::Message;
use sendoff::kiosk::screen::closing::{AskMessage, Message as Said, Page};
use sendoff::kiosk::screen::{self, Screen};
use sendoff::kiosk::theme::{TextSize, Theme};
use sendoff::kiosk::ui::HoldEvent;
use sendoff::walk::{CopyChoice, Decision};

use super::{ANN, BO, closing, page, whole, write};
use crate::kiosk_support::{Kiosk, PSEUDO, SIZES, Setup, opened};

fn fits(kiosk: &mut Kiosk, what: &str) {
    let seen = kiosk.look();
    assert!(!seen.contains("⟨"), "{what}: words are missing: {:#?}", seen.words());
    let faults = seen.faults();
    assert!(faults.is_empty(), "{what} at {:?}, {:?}: {faults:#?}", kiosk.setup.size, kiosk.setup.text);
    kiosk.renders();
}

#[test]
fn every_page_fits_every_size() {
    let say = |said: Said| Message::Screen(screen::Message::Closing(said));
    let looks = [
        ("en-US", TextSize::Usual, Theme::Paper),
        ("en-US", TextSize::Largest, Theme::Daylight),
        (PSEUDO, TextSize::Usual, Theme::Dusk),
    ];
    for size in SIZES {
        for (language, text, theme) in looks {
            let setup = || Setup::new().size(size).staff(language).text(text).theme(theme);
            let mut kiosk = closing(setup(), &opened(language, "us"));
            fits(&mut kiosk, "much is missing");
            let mut kiosk = closing(setup(), &whole(language));
            fits(&mut kiosk, "who takes it");
            kiosk.message(say(Said::TakenBy(ANN)));
            fits(&mut kiosk, "what you take");
            kiosk.message(say(Said::PageAsked(Page::Sign)));
            fits(&mut kiosk, "consent");
            for said in [Said::ConsentChosen(true), Said::ConsentDone] {
                kiosk.message(say(said));
            }
            fits(&mut kiosk, "a signature");
            kiosk.message(say(Said::AgentAsked));
            fits(&mut kiosk, "back to the agent");
            kiosk.message(say(Said::StayPressed));
            write(&mut kiosk);
            fits(&mut kiosk, "a signature with ink");
            kiosk.message(say(Said::SignPressed));
            fits(&mut kiosk, "on to the next");
            kiosk.message(say(Said::TakenBy(BO)));
            kiosk.message(say(Said::Ask(AskMessage::RefusePressed(BO))));
            kiosk.message(say(Said::Ask(AskMessage::ReasonTyped("Not today".into()))));
            kiosk.message(say(Said::Ask(AskMessage::AgentCalled)));
            kiosk.message(say(Said::Ask(AskMessage::DecisionChosen(Decision::HandOver))));
            fits(&mut kiosk, "the decision");
            kiosk.message(say(Said::Ask(AskMessage::Decided(HoldEvent::Done))));
            assert_eq!(page(&kiosk), Page::Copy);
            fits(&mut kiosk, "to a renter for the copy");
            kiosk.message(say(Said::TakenBy(ANN)));
            fits(&mut kiosk, "your copy");
            kiosk.message(say(Said::CopyChosen(CopyChoice::Slip)));
            fits(&mut kiosk, "back for the last signature");
            kiosk.message(say(Said::TakenBack(HoldEvent::Done)));
            write(&mut kiosk);
            kiosk.message(say(Said::SignPressed));
            kiosk.no_notice();
            fits(&mut kiosk, "the seal");
            kiosk.message(say(Said::SealPressed));
            kiosk.no_notice();
            assert!(matches!(kiosk.screen(), Screen::Sealed(_)));
            fits(&mut kiosk, "sealed");
        }
    }
}
