//! The trade's own list of checks, and where each of them is kept: so that "all of them" is a test.

/// Families of the list: letter, how many, what they are about.
pub const FAMILIES: &[(char, u8, &str)] = &[
    ('W', 16, "water"),
    ('M', 17, "mix and mixer"),
    ('T', 12, "thickness, coats, texture"),
    ('Q', 14, "quantities and order"),
    ('S', 12, "day plan and crew"),
    ('E', 12, "weather"),
    ('L', 12, "base, lath, weight"),
    ('C', 8, "cure, color, seal"),
    ('H', 11, "people"),
    ('D', 16, "the paper itself"),
    ('B', 8, "two languages"),
    ('R', 10, "logs"),
    ('K', 7, "class"),
];

/// Ids that reading or rendering finds before any check runs: id, name of the finding, what it says.
pub const BEFORE: &[(&str, &str, &str)] = &[
    ("T6", "keys-disagree", "a least over the most, or a mean outside the two"),
    ("T6", "value-out-of-range", "a fill under 0 % or over 100 %"),
    ("W15", "gallon-not-us", "an imperial gallon: only the US gallon and the litre are read"),
    ("W16", "missing-key", "a mix without the limit of its water"),
    ("Q2", "value-out-of-range", "an arch with a rise of 0"),
    ("Q8", "missing-key", "a surface without a texture, a site without a mix"),
    ("Q8", "reference-unknown", "a texture or a mix that nothing defines"),
    ("Q8", "duplicate-key", "a surface listed twice"),
    ("D3", "unit-missing", "a quantity of the front matter has no unit"),
    ("D7", "fraction-ambiguous", "a fraction of the front matter can be read two ways"),
    ("D7", "decimal-comma", "a number of the front matter has a comma"),
    ("D8", "name-taken", "two procedures or two kinds of card have one code"),
    ("D11", "slot-unknown", "a slot names nothing"),
    ("D11", "fence-unknown", "a drawing is asked for that does not exist"),
    ("D11", "markdown-unprinted", "a picture, which would have no scale"),
    ("B5", "gallon-not-us", "a gallon of the front matter is not the US one"),
];

/// Ids whose inputs do not exist yet, and what brings them.
pub const LATER: &[(&str, &str)] = &[
    ("W2", "the batch log: next start of the day"),
    ("W13", "the batch log: carry-over over a reset"),
    ("Q13", "the register: an order that was issued"),
    ("Q14", "the batch log: empties counted"),
    ("D15", "the register: cards superseded and not recalled"),
    ("R1", "the batch log"),
    ("R2", "the batch log"),
    ("R3", "the batch log"),
    ("R4", "the batch log"),
    ("R5", "the batch log"),
    ("R6", "the batch log"),
    ("R7", "the batch log"),
    ("R8", "the batch log"),
    ("R9", "the batch log"),
    ("R10", "the batch log"),
    ("K1", "a class"),
    ("K2", "a class"),
    ("K3", "a class"),
    ("K4", "a class"),
    ("K5", "a class"),
    ("K6", "a class"),
    ("K7", "a class"),
];

/// Every id of the list.
pub fn all() -> impl Iterator<Item = String> {
    FAMILIES.iter().flat_map(|(letter, count, _)| (1..=*count).map(move |n| format!("{letter}{n}")))
}
