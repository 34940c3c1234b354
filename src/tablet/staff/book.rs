//! The people of a data folder: what is known of them, and every change kept on disk at once.

use std::path::{Path, PathBuf};

use super::{Cost, NotAllowed, Pin, PinHash, Role, Staff, file, pin::HashFault};
use crate::ports::{Access, DiskFault, Ports};

/// Why the people of a tablet cannot be read or changed.
#[derive(Debug, Clone, thiserror::Error)]
pub enum StaffFault {
    /// The disk refused.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// The file cannot be used. Nothing was changed.
    #[error(
        "{place}: {what}. Mend the file, or take it away and add everybody anew; then start the kiosk again"
    )]
    File {
        /// Where, with line and column where they are known.
        place: String,
        /// What is wrong.
        what: String,
    },
    /// It may not be.
    #[error(transparent)]
    NotAllowed(#[from] NotAllowed),
    /// A hash cannot be computed.
    #[error(transparent)]
    Hash(#[from] HashFault),
    /// There is no randomness for a salt.
    #[error("the system gives no randomness: {0}")]
    Randomness(String),
}

/// A code and the PIN that goes with it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Credential {
    /// Code.
    pub code: String,
    /// PIN as it was typed.
    pub pin: Pin,
}

/// A change of who works here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Change {
    /// Somebody new.
    Add {
        /// Who says so; nobody for the first.
        by: String,
        /// Code and PIN.
        who: Credential,
        /// What they may do.
        role: Role,
    },
    /// Somebody has another PIN.
    Pin {
        /// Who says so.
        by: String,
        /// Code and new PIN.
        who: Credential,
    },
    /// Somebody goes.
    Remove {
        /// Who says so.
        by: String,
        /// Who goes.
        code: String,
    },
    /// The clock was set back: waits begin anew.
    Clock,
}

/// What came of a try.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Tried {
    /// It is the PIN.
    Right,
    /// It is not.
    Wrong,
    /// It is too early, for so many seconds.
    Wait(u32),
    /// It could not be checked, for this reason.
    Unchecked(String),
}

/// The people of a data folder.
#[derive(Debug)]
pub struct StaffBook {
    ports: Ports,
    path: PathBuf,
    cost: Cost,
    staff: Result<Staff, StaffFault>,
}

impl StaffBook {
    /// Reads the people of a data folder. A file that cannot be used is told by [`StaffBook::staff`]; it stays as
    /// it is.
    #[must_use]
    pub fn open(ports: &Ports, dir: &Path, cost: Cost) -> Self {
        let path = dir.join(file::FILE);
        let staff = match ports.disk.read(&path, file::CAP) {
            Ok(bytes) => file::parse(&path, &bytes),
            Err(fault) if fault.is_missing() => Ok(Staff::default()),
            Err(fault) => Err(fault.into()),
        };
        Self { ports: ports.clone(), path, cost, staff }
    }

    /// Everybody, or why nobody is known. While that is so, no gate may open.
    ///
    /// # Errors
    /// The file cannot be used.
    pub fn staff(&self) -> Result<Staff, StaffFault> {
        self.staff.clone()
    }

    /// Keeps what `staff` has become. Where the disk refuses, what is known stays as it was.
    fn keep(&mut self, staff: Staff) -> Result<(), StaffFault> {
        let disk = self.ports.disk.as_ref();
        if staff.is_empty() {
            disk.remove(&self.path)?;
        } else {
            disk.replace(&self.path, file::write(&staff).as_bytes(), Access::Owner)?;
        }
        self.staff = Ok(staff);
        Ok(())
    }

    fn hash(&self, pin: &Pin) -> Result<PinHash, StaffFault> {
        let seed = self.ports.entropy.seed().map_err(|e| StaffFault::Randomness(e.to_string()))?;
        Ok(PinHash::make(pin, self.cost, &seed)?)
    }

    /// Tries a PIN. The try is on disk as a wrong one before it is checked; a disk that refuses is no reason to
    /// keep staff out, and the try counts for as long as the kiosk runs.
    pub fn try_pin(&mut self, who: &Credential) -> Tried {
        let now = self.ports.clock.now();
        let unchecked = |fault: StaffFault| Tried::Unchecked(fault.to_string());
        let mut staff = match self.staff() {
            Ok(staff) => staff,
            Err(fault) => return unchecked(fault),
        };
        staff.clock_set_back(now);
        let hash = match staff.count_try(&who.code, now) {
            Ok(hash) => hash,
            Err(NotAllowed::Wait(seconds)) => return Tried::Wait(seconds),
            Err(why) => return unchecked(why.into()),
        };
        if self.keep(staff.clone()).is_err() {
            self.staff = Ok(staff.clone());
        }
        match hash.is(&who.pin) {
            Ok(false) => Tried::Wrong,
            Ok(true) => {
                staff.passed(&who.code);
                if self.keep(staff.clone()).is_err() {
                    self.staff = Ok(staff);
                }
                Tried::Right
            }
            Err(fault) => unchecked(fault.into()),
        }
    }

    /// Makes a change and keeps it.
    ///
    /// # Errors
    /// It may not be, or the disk refuses; nothing is changed then.
    pub fn change(&mut self, change: &Change) -> Result<(), StaffFault> {
        let mut staff = self.staff()?;
        match change {
            Change::Add { by, who, role } => {
                staff.fits(&who.code)?;
                staff.add(by, &who.code, *role, self.hash(&who.pin)?)?;
            }
            Change::Pin { by, who } => staff.change_pin(by, &who.code, self.hash(&who.pin)?)?,
            Change::Remove { by, code } => staff.remove(by, code)?,
            Change::Clock => {
                if !staff.clock_set_back(self.ports.clock.now()) {
                    return Ok(());
                }
            }
        }
        self.keep(staff)
    }
}
