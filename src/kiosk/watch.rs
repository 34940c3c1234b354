//! When nobody touches the tablet: it dims, then a cover locks it. Pure: time comes in with each call.

use std::time::Duration;

/// After how long it dims, and after how long it locks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Idle {
    /// Until it dims.
    pub dim: Duration,
    /// Until it locks; longer than `dim`.
    pub lock: Duration,
}

impl Default for Idle {
    fn default() -> Self {
        Self { dim: Duration::from_secs(2 * 60), lock: Duration::from_secs(10 * 60) }
    }
}

/// What lies over the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shade {
    /// Nothing.
    Awake,
    /// The page is dimmed; any touch wakes it.
    Dim,
    /// A cover without personal data.
    Locked,
}

/// Watches over the last touch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Watch {
    idle: Idle,
    last: Duration,
    shade: Shade,
}

impl Watch {
    /// Somebody is there now.
    #[must_use]
    pub const fn new(idle: Idle, now: Duration) -> Self {
        Self { idle, last: now, shade: Shade::Awake }
    }

    /// What lies over the page.
    #[must_use]
    pub const fn shade(&self) -> Shade {
        self.shade
    }

    /// Lets the lot's times count from now on.
    pub const fn set_idle(&mut self, idle: Idle) {
        self.idle = idle;
    }

    /// Somebody touched the tablet. A dimmed page wakes; a cover stays until it is taken off.
    pub fn touched(&mut self, now: Duration) {
        self.tick(now);
        if self.shade < Shade::Locked {
            self.shade = Shade::Awake;
            self.last = self.last.max(now);
        }
    }

    /// The cover is taken off.
    pub fn unlocked(&mut self, now: Duration) {
        self.shade = Shade::Awake;
        self.last = self.last.max(now);
    }

    /// Time has passed.
    pub fn tick(&mut self, now: Duration) {
        let idle = now.saturating_sub(self.last);
        let shade = if idle >= self.idle.lock {
            Shade::Locked
        } else if idle >= self.idle.dim {
            Shade::Dim
        } else {
            Shade::Awake
        };
        self.shade = self.shade.max(shade);
    }

    /// How long nothing changes unless somebody touches the tablet; never, once it is locked.
    #[must_use]
    pub fn rests(&self, now: Duration) -> Option<Duration> {
        let until = match self.shade {
            Shade::Awake => self.idle.dim,
            Shade::Dim => self.idle.lock,
            Shade::Locked => return None,
        };
        Some(self.last.saturating_add(until).saturating_sub(now))
    }
}
