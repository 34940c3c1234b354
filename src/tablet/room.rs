//! Room on the tablet's disk, told before it matters.
//!
//! A reserve of 16 MB lies in the data folder: bytes that the disk has really given. As long as it stands, a walk that
//! is open can be led to its end and sealed, since the reserve is given back when the disk is full. No new walk
//! begins without it. What is free beyond it is found out by writing, which also tells a disk that takes no writes.

use std::path::Path;

use crate::ports::{Access, Disk, DiskFault};

/// Name of the reserve in a data folder.
pub const RESERVE: &str = "reserve";
/// Its size in bytes: many times what the journal and record of a walk take.
pub const RESERVE_BYTES: u64 = 16 << 20;
/// What must fit beside it, in bytes.
pub const SPARE_BYTES: u64 = 2 << 20;
/// Name of what is written to find that out.
const PROBE: &str = "probe";
/// What a reserve is filled with, over and over; larger than the pieces that a disk which packs its files looks at.
const BLOCK: u64 = 256 << 10;

/// How much room there is.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum Room {
    /// The reserve stands, and there is room beside it.
    #[default]
    Enough,
    /// The reserve stands, and there is next to no room beside it.
    Low,
    /// There is no room for the reserve.
    Full,
    /// The disk takes no writes.
    NoWrites {
        /// The system's own words.
        why: String,
    },
}

impl Room {
    /// Whether a new walk may begin.
    #[must_use]
    pub const fn for_a_walk(&self) -> bool {
        matches!(self, Self::Enough | Self::Low)
    }

    /// Key of its words; none where there is nothing to tell.
    #[must_use]
    pub const fn key(&self) -> Option<&'static str> {
        match self {
            Self::Enough => None,
            Self::Low => Some("room-low"),
            Self::Full => Some("room-full"),
            Self::NoWrites { .. } => Some("room-no-writes"),
        }
    }
}

/// Looks how much room there is, and makes the reserve where it is missing.
#[must_use]
pub fn look(disk: &dyn Disk, data: &Path) -> Room {
    if let Err(fault) = reserve(disk, data) {
        return without(&fault, Room::Full);
    }
    let probe = data.join(PROBE);
    let written = disk.replace(&probe, &filler(SPARE_BYTES), Access::Usual);
    let removed = disk.remove(&probe);
    match written.and(removed) {
        Ok(()) => Room::Enough,
        Err(fault) => without(&fault, Room::Low),
    }
}

fn without(fault: &DiskFault, full: Room) -> Room {
    if fault.is_full() { full } else { Room::NoWrites { why: fault.to_string() } }
}

/// Sees to it that the reserve stands.
fn reserve(disk: &dyn Disk, data: &Path) -> Result<(), DiskFault> {
    let path = data.join(RESERVE);
    if stands(disk, &path) {
        return Ok(());
    }
    disk.make_dir(data)?;
    disk.replace(&path, &filler(RESERVE_BYTES), Access::Usual)
}

fn stands(disk: &dyn Disk, path: &Path) -> bool {
    // A file that is longer than nothing is not read.
    matches!(disk.read(path, 0), Err(DiskFault::TooLarge { len, .. }) if len >= RESERVE_BYTES)
}

/// Gives the reserve back, so that what is open can be finished. Whether there was one.
///
/// # Errors
/// The disk refuses.
pub fn release(disk: &dyn Disk, data: &Path) -> Result<bool, DiskFault> {
    let path = data.join(RESERVE);
    let stood = stands(disk, &path);
    disk.remove(&path)?;
    Ok(stood)
}

/// Bytes that cannot be packed into fewer.
fn filler(length: u64) -> Vec<u8> {
    let mut state = 0_u64;
    let mut block = Vec::new();
    while block.len() < usize::try_from(BLOCK.min(length)).unwrap_or(0) {
        // splitmix64
        state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        block.extend((z ^ (z >> 31)).to_le_bytes());
    }
    let mut bytes = block.repeat(usize::try_from(length.div_ceil(BLOCK)).unwrap_or(0));
    bytes.truncate(usize::try_from(length).unwrap_or(0));
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ports::fake::{MemoryDisk, OPERATIONS, Operation};

    fn data() -> &'static Path {
        Path::new("/data")
    }

    fn reserved() -> MemoryDisk {
        let disk = MemoryDisk::new();
        assert_eq!(look(&disk, data()), Room::Enough);
        disk
    }

    #[test]
    fn the_reserve_is_made_once_and_nothing_else_stays() {
        let disk = reserved();
        let writes = disk.count(Operation::Write);
        assert_eq!(look(&disk, data()), Room::Enough);
        assert_eq!(disk.count(Operation::Write), writes + 1, "the probe alone");
        let files = disk.files();
        assert_eq!(files.len(), 1);
        assert_eq!(files[0].1.len() as u64, RESERVE_BYTES);
    }

    #[test]
    fn a_disk_that_fills_up_is_low_and_then_full() {
        let disk = reserved();
        disk.leave_room(SPARE_BYTES);
        assert_eq!(look(&disk, data()), Room::Enough);
        disk.leave_room(SPARE_BYTES - 1);
        assert_eq!(look(&disk, data()), Room::Low);
        assert!(release(&disk, data()).unwrap());
        disk.leave_room(RESERVE_BYTES - 1);
        assert_eq!(look(&disk, data()), Room::Full);
        assert!(!Room::Full.for_a_walk());
        assert!(!release(&disk, data()).unwrap(), "there was none to give back");
        disk.heal();
        assert_eq!(look(&disk, data()), Room::Enough);
    }

    #[test]
    fn a_reserve_that_was_cut_short_is_made_anew() {
        let disk = reserved();
        disk.plant(&data().join(RESERVE), b"short");
        assert_eq!(look(&disk, data()), Room::Enough);
        assert_eq!(disk.files()[0].1.len() as u64, RESERVE_BYTES);
    }

    #[test]
    fn a_disk_that_takes_no_writes_is_told_apart_from_a_full_one() {
        let disk = reserved();
        disk.make_read_only();
        let Room::NoWrites { why } = look(&disk, data()) else { panic!("it takes no writes") };
        assert!(why.contains("read-only"), "{why}");
    }

    #[test]
    fn any_fault_is_told_and_leaves_the_reserve_as_it_is() {
        for operation in OPERATIONS.into_iter().filter(|o| *o != Operation::Read) {
            let disk = reserved();
            disk.fail(operation, 1);
            assert_ne!(look(&disk, data()), Room::Enough, "{operation:?}");
            assert_eq!(look(&disk, data()), Room::Enough, "{operation:?}");
        }
    }

    #[test]
    fn the_filler_does_not_repeat_within_a_block() {
        let bytes = filler(BLOCK * 2);
        let words: std::collections::BTreeSet<&[u8]> = bytes[..BLOCK as usize].chunks(8).collect();
        assert_eq!(words.len() as u64, BLOCK / 8);
    }
}
