//! Screens of cards, the book and the company.

use super::Case;

pub(super) const CASES: &[Case] = &[
    (
        "records/lf-panel-rubble.md",
        "kind: panel",
        "kid: panel",
        r#"
STOP[unknown-key]: no key is called `kid` here
 --> records/lf-panel-rubble.md:3:1
  |
3 | kid: panel
  | ^^^
  |
  = help: did you mean `kind`?
"#,
    ),
    (
        "cards/mud.es.md",
        "hodbook: 1",
        "hodbok: 1",
        r#"
STOP[unknown-key]: no key is called `hodbok` here
 --> cards/mud.es.md:2:1
  |
2 | hodbok: 1
  | ^^^^^^
  |
  = help: did you mean `hodbook`?
"#,
    ),
    (
        "cards/mud.md",
        "cautions: [eyes, skin, paddle]",
        "cautions: [eyes, skn, paddle]",
        r#"
STOP[reference-unknown]: no caution is called `skn`
  --> cards/mud.md:15:18
   |
15 | cautions: [eyes, skn, paddle]
   |                  ^^^ named here
   |
  ::: cautions/skin.md:4:7
   |
 4 | word: SKIN
   |       ---- `skin` is defined here
   |
   = help: did you mean `skin`?
"#,
    ),
    (
        "cards/mud.md",
        "tab: yes",
        "tab: maybe",
        r#"
STOP[choice-unknown]: `tab` is `maybe`, `yes` or `no` is wanted
  --> cards/mud.md:10:6
   |
10 | tab: maybe
   |      ^^^^^ corner tab
   |
   = help: write `yes` or `no`
"#,
    ),
    (
        "cards/mud.es.md",
        "\nfollows: ",
        "\ncopies: 3\nfollows: ",
        r#"
STOP[twin-key]: a twin holds words only, `copies` is written once, in the original
 --> cards/mud.es.md:6:1
  |
6 | copies: 3
  | ^^^^^^
  |
  = help: remove it here; it stands in the file without `.es`
"#,
    ),
    (
        "handbook.md",
        "chapters/water.md",
        "../water.md",
        r#"
STOP[path-outside]: `../water.md` leaves the job folder
  --> handbook.md:14:98
   |
14 |   - {id: water, title: Water and the ladder, title_es: El agua y la escala, thumb: WATER, from: [../water.md]}
   |                                                                                                  ^^^^^^^^^^^
   |
   = help: name a file of the job folder, such as `chapters/safety.md`
"#,
    ),
    (
        "company.md",
        "languages: [en, es]",
        "languages: [en, sp]",
        r#"
STOP[language-unknown]: there is no dictionary for `sp`
 --> company.md:6:17
  |
6 | languages: [en, sp]
  |                 ^^
  |
  = help: write one of `en`, `es`
"#,
    ),
];
