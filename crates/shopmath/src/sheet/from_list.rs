//! Rows of bolts from a list of specs, as a manual prints it and Convert reads it.

use super::limits::cut;
use super::model::Fastener;
use crate::convert::{self, Conversion};
use crate::tools::Tools;

/// A row for each line that is a torque to tighten to, with what the line says of the bolt; other lines are
/// passed over. The rows' numbers are 0: the sheet that takes them gives them theirs. A text past
/// [`super::limits::TEXT`] is cut.
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
        label: cut(label),
        thread: cut(thread.unwrap_or_default()),
        class: cut(class.unwrap_or_default()),
        spec: cut(&line.spec),
        ..Fastener::default()
    }
}

#[cfg(test)]
mod tests {
    use super::rows;
    use crate::fastener::bolt::resolve;
    use crate::sheet::{Sheet, limits};

    #[test]
    fn a_line_of_any_length_leaves_a_sheet_that_can_be_saved() {
        let stages = "60 N·m + ".repeat(100);
        for line in [
            format!("{} M10 8.8: 45 N·m", "Größe ".repeat(100)),
            format!("Head bolt: {stages}90°"),
            format!("Head bolt: {stages}10 N·m"),
            format!("Head bolt: 10 N·m{}", " + 123456°".repeat(100)),
        ] {
            let fasteners = rows(&line);
            assert_eq!(fasteners.len(), 1, "{line}");
            let row = &fasteners[0];
            let whole = [&row.label, &row.spec].map(|text| text.chars().count() < limits::TEXT);
            assert!(whole.contains(&false), "{row:?}");
            // Half a spec is not taken for the whole.
            assert_eq!(resolve(&row.bolt_text()).spec.as_given().is_some(), whole[1], "{row:?}");
            let sheet = Sheet {
                fasteners,
                ..Sheet::new("a")
            };
            assert_eq!(limits::check(&sheet), Ok(()));
        }
    }
}
