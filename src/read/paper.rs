//! Papers by name, in whole micrometres.

use crate::job::Paper;

/// Name, width and height in micrometres, upright.
const SHEETS: &[(&str, u32, u32)] = &[
    ("letter", 215_900, 279_400),
    ("tabloid", 279_400, 431_800),
    ("half letter", 139_700, 215_900),
    ("3x5 in", 76_200, 127_000),
    ("door hanger", 107_950, 279_400),
    ("A3", 297_000, 420_000),
    ("A4", 210_000, 297_000),
    ("A5", 148_000, 210_000),
    ("A6", 105_000, 148_000),
];

/// Every paper name, for the tables.
pub const NAMES: &[&str] = &[
    "letter",
    "letter landscape",
    "tabloid",
    "tabloid landscape",
    "half letter",
    "half letter landscape",
    "3x5 in",
    "3x5 in landscape",
    "door hanger",
    "A3",
    "A3 landscape",
    "A4",
    "A4 landscape",
    "A5",
    "A5 landscape",
    "A6",
    "A6 landscape",
];

/// The paper of a name.
pub fn find(name: &str) -> Option<Paper> {
    let (sheet, lying) = name.strip_suffix(" landscape").map_or((name, false), |s| (s, true));
    let (_, short, long) = SHEETS.iter().find(|(n, _, _)| *n == sheet)?;
    let (width_um, height_um) = if lying { (*long, *short) } else { (*short, *long) };
    Some(Paper { name: name.to_owned(), width_um, height_um })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_name_has_its_sheet() {
        for name in NAMES {
            assert!(find(name).is_some(), "{name}");
        }
        let lying = find("tabloid landscape").unwrap();
        assert_eq!((lying.width_um, lying.height_um), (431_800, 279_400));
        assert_eq!(find("foolscap"), None);
    }
}
