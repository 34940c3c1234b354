//! The pages of the office, which takes in the record that the tour has sealed.

use std::path::Path;
use std::sync::Arc;

use super::tour::{Tour, Visit};
use super::{DATA, Kiosk, TourFault};
use crate::archive::{Archive, ArchiveFault};
use crate::kiosk::screen;
use crate::kiosk::screen::office::{Change, Message, Which};
use crate::kiosk::ui::RowsEvent;
use crate::ports::fake::FixedEntropy;
use crate::ports::{Access, Ports};
use crate::tablet::Tablet;

/// The archive in memory.
pub(super) const ARCHIVE: &str = "/office";
/// A folder with a file that is no record.
const REFUSED: &str = "/shared/tablets";
/// Sections of the text that are shown: more than one page of them is alike.
const SECTIONS: [usize; 7] = [1, 3, 5, 7, 9, 11, 14];

/// An archive that trusts the tablet.
pub(super) fn archive(ports: &Ports, tablet: &Tablet) -> Result<(), ArchiveFault> {
    // Its key is another than that of the tablet.
    let ports = Ports { entropy: Arc::new(FixedEntropy([77; 32])), ..ports.clone() };
    let mut archive = Archive::open_or_create(&ports, Path::new(ARCHIVE))?;
    let _ = archive.trust(&tablet.signers_line())?;
    // Something that is no record, as it may lie on a stick.
    let letter = Path::new(REFUSED).join("t1-0a1b2c-000007.zip");
    ports.disk.make_dir(Path::new(REFUSED))?;
    ports.disk.put_new(&letter, b"half of a file", Access::Usual)?;
    Ok(())
}

impl<P: Kiosk, V: Visit> Tour<'_, '_, P, V> {
    /// The empty list, taking in, the list, filters, a record, copying out, and what is not found.
    pub(super) fn office(&mut self) -> Result<(), TourFault> {
        self.part("office");
        self.open_office()?;
        self.page("empty")?;
        self.at_office(Message::TakeInAsked)?;
        self.page("take-in")?;
        self.at_office(Message::FolderTyped(format!("{DATA}/records")))?;
        self.at_office(Message::FolderGiven)?;
        self.page("taken-in")?;
        self.at_office(Message::Back)?;
        self.page("list")?;
        self.at_office(Message::FiltersAsked)?;
        self.page("filters")?;
        self.at_office(Message::Filter(Change::CautionTyped("awning".to_owned())))?;
        self.page("filters-caution")?;
        self.at_office(Message::FiltersCleared)?;
        self.at_office(Message::Back)?;
        self.at_office(Message::Rows(RowsEvent::Pressed(0), 5))?;
        self.page("record")?;
        for at in SECTIONS {
            self.at_office(Message::SectionChosen(at))?;
            self.page(&format!("section-{at}"))?;
        }
        self.at_office(Message::ExportAsked)?;
        self.page("copy-out")?;
        self.at_office(Message::FolderTyped("/no/such/folder".to_owned()))?;
        self.at_office(Message::FolderGiven)?;
        self.page("not-copied")?;
        self.at_office(Message::Back)?;
        self.at_office(Message::Back)?;
        self.at_office(Message::Filter(Change::Good(Some(false))))?;
        self.page("nothing-found")?;
        self.at_office(Message::FilterRemoved(Which::Good))?;
        self.refused()?;
        self.at_office(Message::YardAsked)
    }

    /// What is not taken in, and where it waits.
    fn refused(&mut self) -> Result<(), TourFault> {
        self.at_office(Message::TakeInAsked)?;
        self.at_office(Message::FolderTyped(REFUSED.to_owned()))?;
        self.at_office(Message::FolderGiven)?;
        self.page("refused")?;
        self.at_office(Message::TakeInAsked)?;
        self.page("take-in-more")?;
        self.at_office(Message::QuarantineAsked)?;
        self.page("quarantine")?;
        self.at_office(Message::KeptChosen(0))?;
        self.page("quarantine-file")?;
        self.at_office(Message::Back)?;
        self.at_office(Message::Back)?;
        self.at_office(Message::Back)
    }

    fn at_office(&mut self, message: Message) -> Result<(), TourFault> {
        self.send(screen::Message::Office(message))
    }
}
