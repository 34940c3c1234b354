//! A real disk that never waits for its writes: what is tested with it is what is kept, not that it outlives a power
//! cut.

use std::path::Path;

use sendoff::ports::system::SystemDisk;
use sendoff::ports::{Access, Appender, Disk, DiskFault, Held};

#[derive(Debug)]
pub struct Hasty;

type Answer<T> = Result<T, DiskFault>;

fn done(path: &Path, result: std::io::Result<()>) -> Answer<()> {
    let fault = |source| DiskFault::Io {
        action: "write",
        path: path.to_owned(),
        source: std::sync::Arc::new(source),
    };
    result.map_err(fault)
}

impl Disk for Hasty {
    fn read(&self, path: &Path, cap: u64) -> Answer<Vec<u8>> {
        SystemDisk.read(path, cap)
    }
    fn list(&self, dir: &Path) -> Answer<Vec<String>> {
        SystemDisk.list(dir)
    }
    fn is_dir(&self, path: &Path) -> bool {
        path.is_dir()
    }
    fn make_dir(&self, dir: &Path) -> Answer<()> {
        done(dir, std::fs::create_dir_all(dir))
    }
    fn put_new(&self, path: &Path, bytes: &[u8], access: Access) -> Answer<()> {
        if path.exists() {
            return Err(DiskFault::Exists { path: path.to_owned() });
        }
        self.replace(path, bytes, access)
    }
    fn replace(&self, path: &Path, bytes: &[u8], _access: Access) -> Answer<()> {
        done(path, std::fs::write(path, bytes))
    }
    fn settle(&self, _dir: &Path) -> Answer<()> {
        Ok(())
    }
    fn append(&self, path: &Path) -> Answer<Box<dyn Appender>> {
        Ok(Box::new(HastyEnd(SystemDisk.append(path)?)))
    }
    fn rename(&self, from: &Path, to: &Path) -> Answer<()> {
        done(to, std::fs::rename(from, to))
    }
    /// No other process writes there. A real lock would be held for a moment by any process that another test starts.
    fn lock(&self, _path: &Path) -> Answer<Option<Box<dyn Held>>> {
        Ok(Some(Box::new(Unlocked)))
    }
    fn remove(&self, path: &Path) -> Answer<()> {
        if path.exists() { done(path, std::fs::remove_file(path)) } else { Ok(()) }
    }
    fn remove_dir(&self, dir: &Path) -> Answer<()> {
        SystemDisk.remove_dir(dir)
    }
}

#[derive(Debug)]
struct Unlocked;

impl Held for Unlocked {}

#[derive(Debug)]
struct HastyEnd(Box<dyn Appender>);

impl Appender for HastyEnd {
    fn len(&self) -> u64 {
        self.0.len()
    }
    fn append(&mut self, bytes: &[u8]) -> Answer<()> {
        self.0.append(bytes)
    }
    fn sync(&mut self) -> Answer<()> {
        Ok(())
    }
    fn cut(&mut self, len: u64) -> Answer<()> {
        self.0.cut(len)
    }
}
