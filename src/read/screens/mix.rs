//! Screens of a mix.

use super::Case;

pub(super) const CASES: &[Case] = &[
    (
        "mixes/carve-24.md",
        "  limit: 2 gal\n",
        "  limt: 2 gal\n",
        r#"
STOP[unknown-key]: no key is called `limt` here
  --> mixes/carve-24.md:20:3
   |
20 |   limt: 2 gal
   |   ^^^^
   |
   = help: did you mean `limit`?
"#,
    ),
    (
        "mixes/carve-24.md",
        "  limit: 2 gal\n",
        "",
        r#"
STOP[missing-key]: `limit` is missing from `water`
  --> mixes/carve-24.md:14:1
   |
14 | water:
   | ^^^^^ here
   |
   = help: add `limit: 2 gal`: most water ever, per load
"#,
    ),
    (
        "mixes/carve-24.md",
        "rev: C\n",
        "rev: C\nrev: D\n",
        r#"
STOP[duplicate-key]: `rev` is written twice
 --> mixes/carve-24.md:6:1
  |
5 | rev: C
  | --- the first time
6 | rev: D
  | ^^^ the second time
  |
  = help: keep one of them
"#,
    ),
    (
        "mixes/carve-24.md",
        "lift: 1 1/2 in",
        "lift: 11/2 in",
        r#"
STOP[fraction-ambiguous]: `11/2` can be read two ways
  --> mixes/carve-24.md:24:7
   |
24 | lift: 11/2 in
   |       ^^^^ `lift`: most thickness of one lift
   |
   = help: write `1 1/2` or `5 1/2`
"#,
    ),
    (
        "mixes/carve-24.md",
        "step: 1 cup",
        "step: 1 lb",
        r#"
STOP[unit-wrong]: `lb` is a mass, this key holds a volume
  --> mixes/carve-24.md:19:9
   |
19 |   step: 1 lb
   |         ^^^^ `step`: one late addition per load
   |
   = help: write it like `1 cup`
"#,
    ),
    (
        "mixes/carve-24.md",
        "start: 1 gal 2 qt 1 pt",
        "start: 1 L 2 qt 1 pt",
        r#"
STOP[units-of-two-systems]: `qt` after `L`: one amount in two unit systems
  --> mixes/carve-24.md:17:13
   |
17 |   start: 1 L 2 qt 1 pt
   |             ^^^^^ `start`: start water per load, before any powder
   |
   = help: write all of it in one of them, such as `5 ft 6 in` or `1.68 m`
"#,
    ),
    (
        "mixes/carve-24.md",
        "\"10:3 by mass\"",
        "\"10:3\"",
        r#"
STOP[ratio-unsaid]: parts of what: mass or volume?
  --> mixes/carve-24.md:12:22
   |
12 | mortar_to_additive: "10:3"
   |                      ^^^^ `mortar_to_additive`: design ratio of mortar to additive
   |
   = help: write `3:1 by mass` or `3:1 by volume`
"#,
    ),
    (
        "mixes/carve-24.md",
        "open_time: 50 min at 70 °F",
        "open_time: 50 min",
        r#"
STOP[reading-missing]: `open_time` is `50 min`, a time at a temperature is wanted
  --> mixes/carve-24.md:22:12
   |
22 | open_time: 50 min
   |            ^^^^^^ open time, from powder in water, at the temperature where it holds
   |
   = help: say at what temperature it holds, like `50 min at 70 °F`
"#,
    ),
    (
        "mixes/carve-24.md",
        "open_time: 50 min at 70 °F",
        "open_time: 50 min at 70 F°",
        r#"
STOP[unit-unknown]: no unit is called `°`
  --> mixes/carve-24.md:22:26
   |
22 | open_time: 50 min at 70 F°
   |                          ^ `open_time`: open time, from powder in water, at the temperature where it holds
   |
   = help: write a number and a unit, such as `1 gal 2 qt` or `3/8 in`
"#,
    ),
    (
        "mixes/carve-24.md",
        "hodbook: 1",
        "hodbook: 2",
        r#"
STOP[newer-format]: the file is marked format 2, this program reads format 1
 --> mixes/carve-24.md:2:10
  |
2 | hodbook: 2
  |          ^
  |
  = help: use the newer program that wrote the mark
"#,
    ),
    (
        "mixes/carve-24.md",
        "kind: mix",
        "kind: site",
        r#"
STOP[kind-wrong]: the file says it is a `site`, a file in `mixes/` is a `mix`
 --> mixes/carve-24.md:3:7
  |
3 | kind: site
  |       ^^^^
  |
  = help: write `kind: mix`, or move the file to `sites/`
"#,
    ),
    (
        "mixes/carve-24.md",
        "air: 9 %",
        "air: 90 %",
        r#"
STOP[value-out-of-range]: `air` is 90 %, over 40 %
  --> mixes/carve-24.md:13:6
   |
13 | air: 90 %
   |      ^^^^ air in the mixed mortar
   |
   = help: write from 0 % to 40 %, such as `9 %`
"#,
    ),
    (
        "mixes/carve-24.md",
        "coat: carve",
        "coat: crave",
        r#"
STOP[choice-unknown]: `coat` is `crave`, one of `scratch`, `carve` is wanted
 --> mixes/carve-24.md:7:7
  |
7 | coat: crave
  |       ^^^^^ the coat it is for
  |
  = help: did you mean `carve`?
"#,
    ),
    (
        "mixes/carve-24.md",
        "mixing: {least",
        "mixing: [least",
        r#"
STOP[yaml-unreadable]: the front matter cannot be read here: mismatched bracket '[' closed by '}'
  --> mixes/carve-24.md:21:9
   |
21 | mixing: [least: 4 min, after_step: 1 min, mixer: paddle, order: [water, half mortar, additive, slurry, rest], we...
   |         ^
   |
   = help: check the indentation, the quotes and the brackets above this place
"#,
    ),
    (
        "mixes/carve-24.md",
        "  start: 1 gal",
        "\tstart: 1 gal",
        r#"
STOP[yaml-tab]: a tab indents this line of the front matter
  --> mixes/carve-24.md:17:1
   |
17 |     start: 1 gal 2 qt 1 pt
   | ^^^^
   |
   = help: indent with spaces
"#,
    ),
    (
        "mixes/carve-24.md",
        "---\n",
        "",
        r#"
STOP[front-matter-missing]: the file does not begin with front matter
 --> mixes/carve-24.md:1:1
  |
1 | hodbook: 1
  | ^^^^^^^^^^
  |
  = help: begin the file with a line `---`, then `hodbook: 1` and `kind:`, then `---` again
"#,
    ),
];
