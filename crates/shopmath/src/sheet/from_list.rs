//! Rows of bolts from a list of specs, as a manual prints it and Convert reads it.

use super::model::Fastener;
use crate::convert::{self, Conversion};
use crate::tools::Tools;

/// A row for each line that is a torque to tighten to, with what the line says of the bolt; other lines are
/// passed over. The rows' numbers are 0: the sheet that takes them gives them theirs.
///
/// ```
/// use shopmath::sheet::from_list::rows;
/// let rows = rows("Front cover\n- Idler pulley M10 8.8: 45 N·m\nTensioner 30 Nm + 90°\n1.5 qt");
/// let of = |row: usize| [&*rows[row].label, &rows[row].thread, &rows[row].class, &rows[row].spec];
/// assert_eq!(of(0), ["Idler pulley M10 8.8", "M10", "8.8", "45 N·m"]);
/// assert_eq!(of(1), ["Tensioner", "", "", "30 N·m + 90°"]);
/// assert_eq!(rows.len(), 2);
/// ```
#[must_use]
pub fn rows(list: &str) -> Vec<Fastener> {
    let lines = list.lines().filter_map(|line| convert::line(line, Tools::Both).ok());
    lines.filter(Conversion::is_torque).map(|line| row(&line)).collect()
}

fn row(line: &Conversion) -> Fastener {
    let label = line.label.as_deref().unwrap_or_default();
    let (thread, class) = convert::bolt_in(label);
    let label = label.trim_start_matches(|mark: char| !mark.is_alphanumeric() && mark != '(');
    let label = label.trim_end_matches(|mark: char| !mark.is_alphanumeric() && mark != ')');
    Fastener {
        label: label.to_owned(),
        thread: thread.unwrap_or_default().to_owned(),
        class: class.unwrap_or_default().to_owned(),
        spec: line.spec.clone(),
        ..Fastener::default()
    }
}
