//! Pieces of Markdown.

/// A row of a table; signs that would end a cell are made harmless.
pub(crate) fn row<const N: usize>(cells: [&str; N]) -> String {
    let clean = |cell: &str| cell.replace('|', "\\|").replace('\n', " ");
    format!("| {} |\n", cells.map(clean).join(" | "))
}

/// The two first rows of a table.
pub(crate) fn head<const N: usize>(cells: [&str; N]) -> String {
    format!("{}|{}\n", row(cells), "---|".repeat(N))
}

/// Says at the head of a page where it comes from.
pub(crate) fn page(title: &str, body: &str) -> String {
    format!(
        "<!-- Written by `cargo xtask docs`; changes by hand are lost. -->\n\n# {title}\n\n{}\n",
        body.trim_end()
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_in_a_cell_does_not_end_it() {
        assert_eq!(row(["a|b", "c\nd"]), "| a\\|b | c d |\n");
        assert_eq!(head(["a", "b"]), "| a | b |\n|---|---|\n");
    }
}
