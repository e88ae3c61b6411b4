//! The table a person reads and the file a program reads. Measures nothing.

use crate::{paths, run, tools};
use anyhow::{Result, ensure};
use serde_json::{Value, json};
use std::process::Command;

/// One number, beside what it is measured against.
pub(super) struct Row {
    /// What was measured.
    pub(super) name: String,
    /// The number.
    pub(super) value: f64,
    /// The number's unit.
    pub(super) unit: &'static str,
    /// The number divided by the same number of a reference, and its name.
    pub(super) ratio: Option<(f64, &'static str)>,
}

/// How far a number may go.
#[derive(Clone, Copy)]
pub(super) enum Limit {
    AtLeast(f64),
    AtMost(f64),
}

impl Limit {
    fn holds(self, value: f64) -> bool {
        match self {
            Self::AtLeast(least) => value >= least,
            Self::AtMost(most) => value <= most,
        }
    }

    fn words(self) -> String {
        match self {
            Self::AtLeast(least) => format!("at least {}", number(least)),
            Self::AtMost(most) => format!("at most {}", number(most)),
        }
    }
}

/// All rows of a run, and what could not be measured.
#[derive(Default)]
pub(super) struct Report {
    rows: Vec<Row>,
    notes: Vec<String>,
    /// What went past its limit.
    missed: Vec<String>,
}

impl Report {
    /// Adds a number.
    pub(super) fn row(
        &mut self,
        name: impl Into<String>,
        value: f64,
        unit: &'static str,
        ratio: Option<(f64, &'static str)>,
    ) {
        self.rows.push(Row {
            name: name.into(),
            value,
            unit,
            ratio,
        });
    }

    /// Adds a number that has a limit, and says whether it holds.
    pub(super) fn gate(
        &mut self,
        name: impl Into<String>,
        value: f64,
        unit: &'static str,
        limit: Limit,
        ratio: Option<(f64, &'static str)>,
    ) {
        let name = format!("{}, {}", name.into(), limit.words());
        let holds = limit.holds(value);
        self.row(
            format!("{name}: {}", if holds { "pass" } else { "FAIL" }),
            value,
            unit,
            ratio,
        );
        if !holds {
            self.missed.push(name);
        }
    }

    /// Adds a sentence, such as what is missing here and why.
    pub(super) fn note(&mut self, sentence: impl Into<String>) {
        let sentence = sentence.into();
        println!("{sentence}");
        self.notes.push(sentence);
    }

    /// Writes `target/bench.json`, then what [`Self::show`] does.
    pub(super) fn finish(&self) -> Result<()> {
        let file = paths::target().join("bench.json");
        std::fs::write(&file, serde_json::to_string_pretty(&self.json())? + "\n")?;
        println!("Written to {}", file.display());
        self.show()
    }

    /// Prints the table; fails where a number is past its limit.
    pub(super) fn show(&self) -> Result<()> {
        println!("\n{}", self.table());
        ensure!(self.missed.is_empty(), "past its limit: {}", self.missed.join("; "));
        Ok(())
    }

    pub(super) fn table(&self) -> String {
        let wide = self.rows.iter().map(|row| row.name.chars().count()).max().unwrap_or(0);
        let lines = self.rows.iter().map(|row| {
            let value = number(row.value);
            let ratio = row
                .ratio
                .map(|(ratio, against)| format!("{:>9} × {against}", number(ratio)))
                .unwrap_or_default();
            format!("{:<wide$}  {value:>12} {:<5}{ratio}", row.name, row.unit)
                .trim_end()
                .to_owned()
        });
        let notes = self.notes.iter().map(|note| format!("Note: {note}"));
        lines.chain(notes).collect::<Vec<_>>().join("\n")
    }

    fn json(&self) -> Value {
        let rows: Vec<Value> = self
            .rows
            .iter()
            .map(|row| {
                json!({
                    "name": row.name,
                    "value": row.value,
                    "unit": row.unit,
                    "ratio": row.ratio.map(|(ratio, _)| ratio),
                    "against": row.ratio.map(|(_, against)| against),
                })
            })
            .collect();
        let rustc = run::capture(Command::new("rustc").arg("--version")).unwrap_or_default();
        let yew = tools::locked_version("yew").unwrap_or_default();
        json!({ "rows": rows, "notes": self.notes, "rustc": rustc, "yew": yew })
    }
}

/// Three or four significant digits, whole numbers grouped in threes.
fn number(value: f64) -> String {
    match value.abs() {
        small if small < 10.0 => format!("{value:.2}"),
        middling if middling < 1000.0 => format!("{value:.1}"),
        _ => grouped(&format!("{value:.0}")),
    }
}

fn grouped(digits: &str) -> String {
    let mut out = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            out.push(' ');
        }
        out.push(digit);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_grouped() {
        let shown: Vec<String> = [0.123, 42.04, 999.94, 1234.0, 1_234_567.0].map(number).into();
        assert_eq!(shown, ["0.12", "42.0", "999.9", "1 234", "1 234 567"]);
    }

    #[test]
    fn a_number_past_its_limit_fails_the_run_and_one_at_it_does_not() {
        let mut report = Report::default();
        report.gate("start", 3.0, "s", Limit::AtMost(3.0), None);
        report.gate("score", 99.0, "", Limit::AtLeast(99.0), None);
        assert!(report.show().is_ok());
        report.gate("size", 151.0, "KB", Limit::AtMost(150.0), None);
        let words = report.show().expect_err("151 is over 150").to_string();
        assert_eq!(words, "past its limit: size, at most 150.0");
    }
}
