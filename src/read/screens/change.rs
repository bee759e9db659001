//! Screens of a change order that could not be applied.

use super::Case;

pub(super) const CASES: &[Case] = &[
    (
        "changes/bf-wider.md",
        "file: sites/brack-ferry.md",
        "file: sites/brack-fery.md",
        r#"
STOP[reference-unknown]: no file is called `sites/brack-fery.md`
 --> changes/bf-wider.md:9:12
  |
9 |   - {file: sites/brack-fery.md, key: surfaces.BF-1.width, value: 52 ft}
  |            ^^^^^^^^^^^^^^^^^^^ named here
  |
  = help: did you mean `sites/brack-ferry.md`?
"#,
    ),
    (
        "changes/bf-wider.md",
        "key: surfaces.BF-1.width",
        "key: surfaces.BF-1.widht",
        r#"
STOP[reference-unknown]: `sites/brack-ferry.md` has no key `surfaces.BF-1.widht`
 --> changes/bf-wider.md:9:39
  |
9 |   - {file: sites/brack-ferry.md, key: surfaces.BF-1.widht, value: 52 ft}
  |                                       ^^^^^^^^^^^^^^^^^^^
  |
  = help: did you mean `surfaces.BF-1.width`?
"#,
    ),
    (
        "changes/bf-wider.md",
        "key: surfaces.BF-1.width",
        "key: surfaces.BF-9.width",
        r#"
STOP[reference-unknown]: `sites/brack-ferry.md` has no key `surfaces.BF-9.width`
 --> changes/bf-wider.md:9:39
  |
9 |   - {file: sites/brack-ferry.md, key: surfaces.BF-9.width, value: 52 ft}
  |                                       ^^^^^^^^^^^^^^^^^^^
  |
  = help: write one of `surfaces.BF-1`, `surfaces.BF-2`, `surfaces.BF-3`
"#,
    ),
    (
        "changes/bf-wider.md",
        "value: 52 ft",
        "value: 52 lb",
        r#"
STOP[unit-wrong]: `52 lb` cannot stand where a length stands now
 --> changes/bf-wider.md:9:67
  |
9 |   - {file: sites/brack-ferry.md, key: surfaces.BF-1.width, value: 52 lb}
  |                                                                   ^^^^^
  |
  = help: write it with a unit, like `48 ft`
"#,
    ),
    (
        "changes/bf-wider.md",
        "value: 52 ft",
        "value: 52",
        r#"
STOP[unit-wrong]: `52` is a number without a unit
 --> changes/bf-wider.md:9:67
  |
9 |   - {file: sites/brack-ferry.md, key: surfaces.BF-1.width, value: 52}
  |                                                                   ^^
  |
  = help: write it with a unit, like `48 ft`
"#,
    ),
    (
        "changes/bf-wider.md",
        "from: general contractor",
        "form: general contractor",
        r#"
STOP[unknown-key]: no key is called `form` here
 --> changes/bf-wider.md:7:1
  |
7 | form: general contractor
  | ^^^^
  |
  = help: did you mean `from`?
"#,
    ),
];
