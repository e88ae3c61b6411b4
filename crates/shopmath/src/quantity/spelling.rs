//! Units as they are spelled: the folding that makes one spelling of the many people type.
//!
//! The spellings themselves stand in the table, with their units.

/// Folds a unit as typed to the form the table's spellings have: separators dropped, superscripts
/// and quotation marks made plain, lower case.
///
/// ```
/// use shopmath::quantity::spelling::fold;
/// assert_eq!([fold("Ft.-Lbs"), fold("N⋅m"), fold("KGF/cm²"), fold("''")], ["ftlbs", "nm", "kgf/cm2", "\""]);
/// ```
#[must_use]
pub fn fold(typed: &str) -> String {
    let mut folded = String::with_capacity(typed.len());
    for letter in typed.chars() {
        match letter {
            '·' | '⋅' | '∙' | '•' | '‧' | '×' | '*' | '.' | '-' | '−' | '⁻' | '‐' | '‑' | '‒' | '–' | '_' | '^' =>
                {}
            '℃' => folded.push_str("°c"),
            '℉' => folded.push_str("°f"),
            '㎜' => folded.push_str("mm"),
            '㎝' => folded.push_str("cm"),
            'ℓ' => folded.push('l'),
            '¹' => folded.push('1'),
            space if space.is_whitespace() => {}
            '²' => folded.push('2'),
            '³' => folded.push('3'),
            '″' | '”' | '“' | '„' => folded.push('"'),
            '\'' | '′' | '’' | '‘' => {
                // Two of them are the inch mark.
                let mark = if folded.ends_with('\'') {
                    folded.pop().map_or('\'', |_| '"')
                } else {
                    '\''
                };
                folded.push(mark);
            }
            'º' | '˚' => folded.push('°'),
            'μ' => folded.push('µ'),
            '∆' => folded.push('δ'),
            '⁄' | '∕' => folded.push('/'),
            'Δ' => folded.push('δ'),
            other => folded.push(other.to_ascii_lowercase()),
        }
    }
    folded
}
