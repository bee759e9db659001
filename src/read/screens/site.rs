//! Screens of a site.

use super::Case;

pub(super) const CASES: &[Case] = &[
    (
        "sites/larkenfell.md",
        "width: 22 ft",
        "width: 0 ft",
        r#"
STOP[value-out-of-range]: `width` is 0 ft, not more than 0 ft
  --> sites/larkenfell.md:34:12
   |
34 |     width: 0 ft
   |            ^^^^ width of the wall
   |
   = help: write more than 0 ft and at most 1000 ft, such as `22 ft`
"#,
    ),
    (
        "sites/larkenfell.md",
        "width: 22 ft",
        "width: \"22 gal\"",
        r#"
STOP[unit-wrong]: `gal` is a volume, this key holds a length
  --> sites/larkenfell.md:34:13
   |
34 |     width: "22 gal"
   |             ^^^^^^ `width`: width of the wall
   |
   = help: write it like `22 ft`
"#,
    ),
    (
        "sites/larkenfell.md",
        "    eave: 9 ft\n",
        "",
        r#"
STOP[missing-key]: `eave` is missing from `surfaces.LF-1`, which a gable needs
  --> sites/larkenfell.md:30:3
   |
30 |   LF-1:
   |   ^^^^ here
   |
   = help: add `eave: 9 ft`: height at the eave
"#,
    ),
    (
        "sites/larkenfell.md",
        "shape: gable",
        "shape: rectangle",
        r#"
STOP[missing-key]: `height` is missing from `surfaces.LF-1`, which a rectangle needs
  --> sites/larkenfell.md:30:3
   |
30 |   LF-1:
   |   ^^^^ here
   |
   = help: add `height: 9 ft`: height of the wall or the columns

STOP[key-out-of-place]: a rectangle has no `eave`
  --> sites/larkenfell.md:35:5
   |
35 |     eave: 9 ft
   |     ^^^^ `shape` is rectangle
   |
   = help: `eave` belongs to `gable`

STOP[key-out-of-place]: a rectangle has no `rise`
  --> sites/larkenfell.md:36:5
   |
36 |     rise: 5 ft 6 in
   |     ^^^^ `shape` is rectangle
   |
   = help: `rise` belongs to `gable`, `segmental arch`
"#,
    ),
    (
        "sites/larkenfell.md",
        "mixer: pan45, loads: 2",
        "mixer: pan54, loads: 2",
        r#"
STOP[reference-unknown]: no mixer is called `pan54`
  --> sites/larkenfell.md:20:28
   |
20 |   - {mix: CARVE-24, mixer: pan54, loads: 2 loads}
   |                            ^^^^^ named here
   |
  ::: company.md:24:3
   |
24 |   pan45:
   |   ----- `pan45` is defined here
   |
   = help: did you mean `pan45`?
"#,
    ),
    (
        "sites/larkenfell.md",
        "texture: log\n",
        "texture: logs\n",
        r#"
STOP[reference-unknown]: no texture of this site is called `logs`
  --> sites/larkenfell.md:58:14
   |
28 |   log: {least: 3/8 in, most: 1 in, fill: 60 %, waste: {carve: 12 %, drop: 5 %}, developed: 1.20}
   |   --- `log` is defined here
...
58 |     texture: logs
   |              ^^^^ named here
   |
   = help: did you mean `log`?
"#,
    ),
    (
        "sites/larkenfell.md",
        "{like: W1",
        "{like: W9",
        r#"
STOP[reference-unknown]: `W2` is like `W9`, which is not beside it
  --> sites/larkenfell.md:43:18
   |
43 |       W2: {like: W9, left: 12 ft 6 in, sill: 5 ft}
   |                  ^^ an entry without a `like` of its own is wanted
   |
   = help: did you mean `W1`?
"#,
    ),
    (
        "sites/larkenfell.md",
        "good_until: 2026-03-31",
        "good_until: 3/31/2026",
        r#"
STOP[date-unreadable]: `3/31/2026` is no date of the calendar
 --> sites/larkenfell.md:9:13
  |
9 | good_until: 3/31/2026
  |             ^^^^^^^^^
  |
  = help: write year, month and day, such as `2026-03-31`
"#,
    ),
    (
        "sites/larkenfell.md",
        "zone: America/Chicago",
        "zone: America/Chicgo",
        r#"
STOP[reference-unknown]: no time zone is called `America/Chicgo`
 --> sites/larkenfell.md:7:7
  |
7 | zone: America/Chicgo
  |       ^^^^^^^^^^^^^^
  |
  = help: did you mean `America/Chicago`?
"#,
    ),
    (
        "sites/larkenfell.md",
        "68 °F to 74 °F",
        "74 °F to 68 °F",
        r#"
STOP[range-backwards]: the range starts above its end
  --> sites/larkenfell.md:10:33
   |
10 | climate: {where: indoors, band: 74 °F to 68 °F, humidity: 38 %}
   |                                 ^^^^^^^^^^^^^^ `band`: temperatures of the planned work
   |
   = help: write the smaller end first
"#,
    ),
    (
        "sites/larkenfell.md",
        "letter: lf-engineer",
        "letter: lf-enginer",
        r#"
STOP[reference-unknown]: no letter on file is called `lf-enginer`
  --> sites/larkenfell.md:16:11
   |
16 |   letter: lf-enginer
   |           ^^^^^^^^^^ named here
   |
  ::: records/lf-engineer.md:1:1
   |
 1 | ---
   | --- `lf-engineer` is defined here
   |
   = help: did you mean `lf-engineer`?
"#,
    ),
    (
        "sites/larkenfell.md",
        "crew: [LEAD, MUD",
        "crew: [LAED, MUD",
        r#"
STOP[reference-unknown]: no role is called `LAED`
  --> sites/larkenfell.md:8:8
   |
 8 | crew: [LAED, MUD, APP1, APP2, APP3]
   |        ^^^^ named here
   |
  ::: company.md:10:3
   |
10 |   LEAD: {role: lead, languages: [en, es]}
   |   ---- `LEAD` is defined here
   |
   = help: did you mean `LEAD`?
"#,
    ),
];
