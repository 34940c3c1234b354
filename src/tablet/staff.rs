//! Who works with this tablet: people with a code, a role and a PIN, and how long each must wait after wrong tries.
//!
//! A PIN says who did what. It guards no key and no record: four digits are guessed in hours by anyone who holds
//! the file. What is here slows that down at the screen. A try counts before it is checked, so that cutting the
//! power in between gains nothing, and a clock that is set back makes no wait shorter.

mod book;
mod file;
pub mod pin;

use jiff::Timestamp;

pub use book::{Change, Credential, StaffBook, StaffFault, Tried};
pub use pin::{Cost, Pin, PinHash};

/// Most people of one tablet.
pub const PEOPLE_MAX: usize = 40;
/// Most characters of a code.
pub const CODE_MAX: usize = 12;
/// Wrong tries that cost no wait.
pub const FREE_TRIES: u32 = 3;
/// Seconds to wait after the third wrong try, the fourth and so on; the last holds for all that follow.
pub const WAITS: [u32; 5] = [5, 15, 60, 300, 900];

/// What somebody may do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// Leads walks.
    Agent,
    /// As an agent, and says who works here.
    Office,
}

/// Somebody who works here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Member {
    /// The code that records name: initials, say.
    pub code: String,
    /// What they may do.
    pub role: Role,
    /// Their PIN, hashed.
    pub pin: PinHash,
    /// Tries since the PIN was last right.
    pub tries: Tries,
}

/// Tries since the PIN was last right, the one that is being checked among them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tries {
    /// How many.
    pub count: u32,
    /// When the last one was.
    pub last: Option<Timestamp>,
}

/// How long somebody waits after so many tries, in seconds.
#[must_use]
pub fn wait_after(tries: u32) -> u32 {
    let Some(beyond) = tries.checked_sub(FREE_TRIES) else { return 0 };
    let at = usize::try_from(beyond).unwrap_or(usize::MAX);
    WAITS.get(at).or(WAITS.last()).copied().unwrap_or(0)
}

impl Tries {
    /// Seconds that are left to wait, at most those of [`wait_after`]: also when the clock was set back.
    #[must_use]
    pub fn wait(&self, now: Timestamp) -> u32 {
        let whole = wait_after(self.count);
        let Some(last) = self.last else { return 0 };
        let passed = now.as_millisecond().saturating_sub(last.as_millisecond());
        if passed < 0 {
            return whole;
        }
        let left = i64::from(whole).saturating_mul(1000).saturating_sub(passed).max(0);
        // A part of a second counts as one, so that nobody is told to wait for none.
        u32::try_from(left.saturating_add(999) / 1000).unwrap_or(whole)
    }
}

/// Why somebody may not be added, changed, removed or tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NotAllowed {
    /// The code is not a code.
    #[error("a code has 1 to 12 letters, digits and dashes")]
    Code,
    /// Somebody has it.
    #[error("somebody has this code already")]
    Taken,
    /// The first person must be able to add the others.
    #[error("the first person works in the office")]
    FirstIsOffice,
    /// There are as many as there may be.
    #[error("there are 40 people already; remove somebody first")]
    Full,
    /// Nobody has this code.
    #[error("nobody has this code")]
    Unknown,
    /// Only the office says who works here.
    #[error("only somebody of the office may do this")]
    NotOffice,
    /// Nobody could add or remove people any more.
    #[error("the last person of the office stays while there are others")]
    LastOffice,
    /// It is too early for another try.
    #[error("wait {0} seconds")]
    Wait(u32),
}

/// Everybody who works with this tablet, in the order they were added.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Staff {
    people: Vec<Member>,
}

impl Staff {
    /// Everybody.
    #[must_use]
    pub fn people(&self) -> &[Member] {
        &self.people
    }

    /// Whether nobody has a PIN.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.people.is_empty()
    }

    /// Somebody by code; capital and small letters are one.
    #[must_use]
    pub fn member(&self, code: &str) -> Option<&Member> {
        self.people.iter().find(|m| m.code.eq_ignore_ascii_case(code))
    }

    fn member_mut(&mut self, code: &str) -> Result<&mut Member, NotAllowed> {
        self.people.iter_mut().find(|m| m.code.eq_ignore_ascii_case(code)).ok_or(NotAllowed::Unknown)
    }

    /// Whether a code may be given to somebody new.
    ///
    /// # Errors
    /// It is no code, or somebody has it.
    pub fn fits(&self, code: &str) -> Result<(), NotAllowed> {
        let fits = |c: char| c.is_alphanumeric() || c == '-';
        let length = code.chars().count();
        if length == 0 || length > CODE_MAX || !code.chars().all(fits) {
            return Err(NotAllowed::Code);
        }
        if self.member(code).is_some() { Err(NotAllowed::Taken) } else { Ok(()) }
    }

    fn must_be_office(&self, by: &str) -> Result<(), NotAllowed> {
        let office = self.member(by).is_some_and(|m| m.role == Role::Office);
        if office { Ok(()) } else { Err(NotAllowed::NotOffice) }
    }

    /// Adds somebody; `by` must work in the office. The first one is added by nobody and works in the office.
    ///
    /// # Errors
    /// The code cannot be given, `by` may not, or the first one is no office.
    pub fn add(&mut self, by: &str, code: &str, role: Role, pin: PinHash) -> Result<(), NotAllowed> {
        if !self.people.is_empty() {
            self.must_be_office(by)?;
        }
        self.fits(code)?;
        if self.people.is_empty() && role != Role::Office {
            return Err(NotAllowed::FirstIsOffice);
        }
        if self.people.len() >= PEOPLE_MAX {
            return Err(NotAllowed::Full);
        }
        self.people.push(Member { code: code.to_owned(), role, pin, tries: Tries::default() });
        Ok(())
    }

    /// Gives somebody another PIN: they themselves do, or the office for who forgot theirs.
    ///
    /// # Errors
    /// Nobody has this code, or `by` may not.
    pub fn change_pin(&mut self, by: &str, code: &str, pin: PinHash) -> Result<(), NotAllowed> {
        if !by.eq_ignore_ascii_case(code) {
            self.must_be_office(by)?;
        }
        let member = self.member_mut(code)?;
        member.pin = pin;
        member.tries = Tries::default();
        Ok(())
    }

    /// Removes somebody; `by` must work in the office.
    ///
    /// # Errors
    /// Nobody has this code, `by` may not, or no office would be left for those who stay.
    pub fn remove(&mut self, by: &str, code: &str) -> Result<(), NotAllowed> {
        self.must_be_office(by)?;
        let office = |m: &&Member| m.role == Role::Office;
        let goes = self.member(code).ok_or(NotAllowed::Unknown)?;
        let last = goes.role == Role::Office && self.people.iter().filter(office).count() == 1;
        if last && self.people.len() > 1 {
            return Err(NotAllowed::LastOffice);
        }
        self.people.retain(|m| !m.code.eq_ignore_ascii_case(code));
        Ok(())
    }

    /// Seconds until somebody may try their PIN again.
    #[must_use]
    pub fn wait(&self, code: &str, now: Timestamp) -> u32 {
        self.member(code).map_or(0, |m| m.tries.wait(now))
    }

    /// Counts a try as wrong and gives what it is checked against; [`Staff::passed`] takes it back.
    ///
    /// # Errors
    /// Nobody has this code, or it is too early; nothing is counted then.
    pub fn count_try(&mut self, code: &str, now: Timestamp) -> Result<PinHash, NotAllowed> {
        let member = self.member_mut(code)?;
        match member.tries.wait(now) {
            0 => {
                member.tries.count = member.tries.count.saturating_add(1);
                member.tries.last = Some(now);
                Ok(member.pin.clone())
            }
            wait => Err(NotAllowed::Wait(wait)),
        }
    }

    /// The PIN was right.
    pub fn passed(&mut self, code: &str) {
        if let Ok(member) = self.member_mut(code) {
            member.tries = Tries::default();
        }
    }

    /// Waits that began after `now` begin now: the clock was set back, and a wait lasts no longer for it, and no
    /// shorter. Says whether there were any.
    pub fn clock_set_back(&mut self, now: Timestamp) -> bool {
        let mut any = false;
        for member in &mut self.people {
            if member.tries.last.is_some_and(|last| last > now) {
                member.tries.last = Some(now);
                any = true;
            }
        }
        any
    }
}
