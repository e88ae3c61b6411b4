//! A browser that ends without a warning, as when a battery is empty or the system needs room.

use anyhow::{Result, ensure};
use std::process::Command;

/// Ends a phone's browser from outside, at any moment.
#[derive(Clone, Copy, Debug)]
pub struct Switch {
    driver: u32,
}

impl Switch {
    pub(super) fn of(driver: u32) -> Self {
        Self { driver }
    }

    /// Kills all processes of the browser at once; none of them can finish anything. Its driver goes
    /// too: Firefox's would wait a minute for the answer of a browser that is gone.
    pub fn off(self) -> Result<()> {
        let all = processes()?;
        let mut family = vec![self.driver];
        let mut place = 0;
        while let Some(&parent) = family.get(place) {
            family.extend(all.iter().filter(|(_, of)| *of == parent).map(|(id, _)| *id));
            place += 1;
        }
        ensure!(family.len() > 1, "there is no browser to kill");
        let ids = family.iter().map(u32::to_string);
        // One that has ended in the meantime is no trouble.
        Command::new("kill").arg("-KILL").args(ids).output()?;
        Ok(())
    }
}

/// Each process with its parent, as the system lists them.
fn processes() -> Result<Vec<(u32, u32)>> {
    let mut processes = Vec::new();
    for entry in std::fs::read_dir("/proc")? {
        let entry = entry?;
        let Ok(id) = entry.file_name().to_string_lossy().parse() else {
            continue;
        };
        // A name may hold anything, so what follows its last bracket is read: state, then parent.
        let stat = std::fs::read_to_string(entry.path().join("stat")).unwrap_or_default();
        let parent = stat.rsplit(')').next().and_then(|rest| rest.split_whitespace().nth(1));
        if let Some(parent) = parent.and_then(|parent| parent.parse().ok()) {
            processes.push((id, parent));
        }
    }
    Ok(processes)
}
