use std::cell::RefCell;
use std::path::{Path, PathBuf};

use clap::CommandFactory;

use super::args::Line as Arguments;
use super::paint::Paint;
use super::*;
use crate::finding::Finding;
use crate::quantity::print::Line as Step;
use crate::work::{Align, Hod, Missing, Narrator, Place, Printed, Product, Table, Tree};

/// Keeps what it was asked, and ends as it is told.
#[derive(Default)]
struct Spy {
    asked: RefCell<Vec<String>>,
    exit: Exit,
    bug: bool,
}

impl Spy {
    fn note(&self, what: String) -> Outcome {
        assert!(!self.bug, "the hod fell over");
        self.asked.borrow_mut().push(what);
        Outcome { exit: self.exit, ..Outcome::default() }
    }
}

impl Jobs for Spy {
    fn setout(&self, _: &Options, dir: &Path, _: &dyn Narrator) -> Outcome {
        self.note(format!("setout {}", dir.display()))
    }
    fn takeoff(&self, o: &Options, site: Option<&str>, _: &dyn Narrator) -> Outcome {
        self.note(format!("takeoff {site:?} of {} on {:?}", o.job.display(), o.on.map(|d| d.to_string())))
    }
    fn sound(&self, o: &Options, deny: Option<Severity>, layout: bool, _: &dyn Narrator) -> Outcome {
        self.note(format!("sound {deny:?} {layout} {:?}", o.look))
    }
    fn why(&self, _: &Options, check: &str, _: &dyn Narrator) -> Outcome {
        self.note(format!("why {check}"))
    }
    fn plumb(&self, _: &Options, figure: Option<&str>, _: &dyn Narrator) -> Outcome {
        self.note(format!("plumb {figure:?}"))
    }
    fn issue(&self, o: &Options, ids: &[String], proof: bool, _: &dyn Narrator) -> Outcome {
        self.note(format!("issue {ids:?} {proof} to {}", o.out.display()))
    }
}

fn go(jobs: &dyn Jobs, line: &str) -> String {
    let words: Vec<OsString> = ["hodbook"].into_iter().chain(line.split_whitespace()).map(OsString::from).collect();
    format!("{:?}", respond(&words, jobs))
}

fn code(n: u8) -> String {
    format!("{:?}", ExitCode::from(n))
}

fn page_of(line: &str) -> String {
    let words = ["hodbook"].into_iter().chain(line.split_whitespace());
    Arguments::command().term_width(100).try_get_matches_from(words).unwrap_err().to_string()
}

#[test]
fn the_definitions_hold_together() {
    Arguments::command().debug_assert();
}

#[test]
fn the_main_page_shows_the_order_of_the_job() {
    assert_eq!(
        page_of("--help"),
        "\
Turns a wall and a mix design into the cards at the mixer and the book in the gang box

Usage: hodbook [OPTIONS] <COMMAND>

In the order of the job:
  setout    Lay out a new job folder with commented starter files
  takeoff   Measure the walls: areas, volumes, loads, bags, weight
  gauge     Measure the batches: powder and water for each mixer, and the ladder
  sound     Tap for hollow spots: run every check and list what was found
  daysheet  Plan a day: batches by the clock, carve windows, late starts, on the day's weather
  plumb     Follow one printed number down to the line somebody typed
  issue     Make the cards and the book, and enter them in the register

For every command:
      --job <DIR>                  Job folder to read [default: content]
      --out <DIR>                  Folder for everything generated [default: out]
      --on <DATE>                  Date, as 2026-03-02 [default: the company file's or today]
      --format <plain|short|json>  For reading, a line each, or a JSON value a line [default: plain]
      --color <auto|always|never>  Colour; auto asks the terminal and NO_COLOR [default: auto]
  -h, --help                       Show this page
  -V, --version                    Show the version

Example, a whole job:
  hodbook setout yard-wall            then fill in the files
  hodbook --job yard-wall takeoff     what to buy
  hodbook --job yard-wall sound       what is wrong
  hodbook --job yard-wall issue       cards and book in out/

Findings and results go to standard output, the rest to standard error.
`hodbook COMMAND --help` has an example of each.

Exit codes:
  0  clean: nothing stops the paper (an open HOLD prints with its band)
  1  a STOP: the papers it touches were not printed
  2  could not run: a folder, a file or an option is not as it must be
  3  nothing found under that name
  101  a bug of ours
"
    );
}

#[test]
fn a_page_of_a_command() {
    assert_eq!(
        page_of("plumb --help"),
        "\
Follow one printed number down to the line somebody typed

Usage: hodbook plumb [OPTIONS] <FIGURE>
       hodbook plumb [OPTIONS] --all

Arguments:
  [FIGURE]  Figure id, such as larkenfell/LF-1.net_area

Options:
      --all  Every figure that was worked, printed or not

For every command:
      --job <DIR>                  Job folder to read [default: content]
      --out <DIR>                  Folder for everything generated [default: out]
      --on <DATE>                  Date, as 2026-03-02 [default: the company file's or today]
      --format <plain|short|json>  For reading, a line each, or a JSON value a line [default: plain]
      --color <auto|always|never>  Colour; auto asks the terminal and NO_COLOR [default: auto]
  -h, --help                       Show this page

Example:
  hodbook plumb larkenfell/LF-1.net_area
  hodbook plumb --all --format json

Exit codes:
  0  clean: nothing stops the paper (an open HOLD prints with its band)
  1  a STOP: the papers it touches were not printed
  2  could not run: a folder, a file or an option is not as it must be
  3  nothing found under that name
  101  a bug of ours
"
    );
}

#[test]
fn every_page_has_an_example_that_parses_and_the_exit_codes() {
    for command in Arguments::command().get_subcommands() {
        let page = page_of(&format!("{} --help", command.get_name()));
        assert!(page.contains("\nExit codes:\n  0  "), "{page}");
        let examples: Vec<&str> = page.lines().filter_map(|l| l.strip_prefix("  hodbook ")).collect();
        assert!(!examples.is_empty(), "{page}");
        for example in examples {
            let words = example.split("  ").next().unwrap().split('>').next().unwrap();
            let words = ["hodbook"].into_iter().chain(words.split_whitespace());
            Arguments::command().try_get_matches_from(words).unwrap();
        }
    }
}

#[test]
fn words_arrive_at_the_job_asked_for() {
    let spy = Spy::default();
    for line in [
        "setout yard",
        "--job a takeoff --on 2026-03-02 larkenfell",
        "takeoff",
        "sound --deny warn --format json --color always",
        "sound --no-layout",
        "sound --why start-water-over-limit",
        "plumb a.b",
        "plumb --all",
        "issue M-01 M-02 --proof --out there",
    ] {
        assert_eq!(go(&spy, line), code(0), "{line}");
    }
    let json = "Look { format: Json, color: false }";
    assert_eq!(
        *spy.asked.borrow(),
        [
            "setout yard".to_owned(),
            "takeoff Some(\"larkenfell\") of a on Some(\"2026-03-02\")".to_owned(),
            "takeoff None of content on None".to_owned(),
            format!("sound Some(Warn) true {json}"),
            "sound None false Look { format: Plain, color: false }".to_owned(),
            "why start-water-over-limit".to_owned(),
            "plumb Some(\"a.b\")".to_owned(),
            "plumb None".to_owned(),
            "issue [\"M-01\", \"M-02\"] true to there".to_owned(),
        ]
    );
}

#[test]
fn exit_codes() {
    for exit in [Exit::Clean, Exit::Stop, Exit::CouldNot, Exit::Nothing] {
        assert_eq!(go(&Spy { exit, ..Spy::default() }, "sound"), code(exit.code()));
    }
    assert_eq!(go(&Spy { bug: true, ..Spy::default() }, "sound"), code(101));
    for wrong in ["plumb", "plumb a --all", "isue", "", "--on 2-3-2026 sound", "--on 2026-02-30 sound", "--on 2026-03-02T10 sound"] {
        assert_eq!(go(&Hod, wrong), code(2), "{wrong}");
    }
    assert_eq!(go(&Hod, "man nosuch"), code(3));
    let hold = [Finding::new("a", Severity::Hold, "")];
    assert_eq!(Exit::of(&hold, None), Exit::Clean);
    assert_eq!(Exit::of(&hold, Some(Severity::Hold)), Exit::Stop);
    assert_eq!(Exit::of(&hold, Some(Severity::Warn)), Exit::Stop);
}

fn table() -> Table {
    let row = |cells: [&str; 4]| cells.iter().map(|c| (*c).to_owned()).collect::<Vec<_>>();
    Table {
        title: "Larkenfell Inn".to_owned(),
        columns: [("surface", Align::Left), ("what", Align::Left), ("net area", Align::Right), ("loads", Align::Right)]
            .map(|(head, side)| (head.to_owned(), side))
            .to_vec(),
        rows: vec![
            row(["LF-1", "hastial de la chimenea", "217.2\u{a0}ft²", "19 1/2\u{a0}loads"]),
            row(["LF-2", "cañón 石\x1b[31m", "9.4\u{a0}ft²", "1\u{a0}load"]),
        ],
        totals: vec![row(["all", "", "226.6\u{a0}ft²", "20 1/2\u{a0}loads"])],
        notes: vec!["Planning figures: they certify nothing.".to_owned()],
    }
}

#[test]
fn a_table() {
    let outcome = Outcome { product: Product::Tables(vec![table()]), findings: "note: one\n".to_owned(), ..Outcome::default() };
    assert_eq!(
        print::page(&outcome, Look::default()),
        "\
Larkenfell Inn

surface  what                     net area         loads
────────────────────────────────────────────────────────
LF-1     hastial de la chimenea  217.2 ft²  19 1/2 loads
LF-2     cañón 石\u{fffd}[31m             9.4 ft²        1 load
────────────────────────────────────────────────────────
all                              226.6 ft²  20 1/2 loads
Planning figures: they certify nothing.

note: one
"
    );
    let short = print::page(&outcome, Look { format: Format::Short, color: false });
    assert!(short.starts_with("LF-1\thastial de la chimenea\t217.2 ft²\t19 1/2 loads\n"), "{short}");
    let json = print::page(&Outcome { findings: String::new(), ..outcome }, Look { format: Format::Json, color: false });
    assert!(json.starts_with(r#"{"format":1,"table":"Larkenfell Inn","columns":["surface","#), "{json}");
    assert_eq!(json.lines().count(), 1);
}

fn step(symbol: &str, formula: &str, symbols: &str, numbers: &str, result: (&str, &str), rests_on: &[usize]) -> Step {
    Step {
        symbol: symbol.to_owned(),
        formula: formula.to_owned(),
        symbols: symbols.to_owned(),
        numbers: numbers.to_owned(),
        result: result.0.to_owned(),
        unit: result.1.to_owned(),
        authored: None,
        mark: None,
        source: String::new(),
        figure: None,
        rests_on: rests_on.to_vec(),
    }
}

fn tree() -> Tree {
    let mut w = step("w", "", "", "22", ("22", "ft"), &[]);
    w.authored = Some(("22 ft".to_owned(), "surfaces.LF-1.width".to_owned()));
    let mut k = step("k", "", "", "62.4", ("62.4", "lb/ft3"), &[]);
    k.source = "water constant of the mix".to_owned();
    Tree {
        figure: "larkenfell/LF-1.net_area".to_owned(),
        label: "net area".to_owned(),
        basis: "geometry and arithmetic".to_owned(),
        missing: None,
        lines: vec![
            step("A", "F1 net", "G + w × k", "242 + 22 × 62.4", ("1614.8", "ft2"), &[1, 2, 4]),
            step("G", "F1 rectangle", "w × h", "22 × 11", ("242", "ft2"), &[2, 3]),
            w,
            step("h", "F1 sum", "9 + 2", "9 + 2", ("11", "ft"), &[]),
            k,
        ],
        places: vec![None, None, Some(Place { path: "sites/larkenfell.md".to_owned(), line: 36, column: 12 }), None, None],
        printed: vec![Printed {
            system: "us",
            text: "1,614.8\u{a0}ft²".to_owned(),
            direction: "nearest",
            measure: "1/10".to_owned(),
            unit: "ft2".to_owned(),
        }],
    }
}

#[test]
fn a_derivation() {
    assert_eq!(
        tree::draw(&tree(), Paint(false)),
        "\
larkenfell/LF-1.net_area  net area
  printed   1,614.8 ft²  rounded nearest to 1/10 ft2
  basis     geometry and arithmetic

1  A = G + w × k   [F1 net]
     = 242 + 22 × 62.4
     = 1614.8 ft2
2    G = w × h   [F1 rectangle]
       = 22 × 11
       = 242 ft2
3      w = 22 ft   typed `22 ft` as surfaces.LF-1.width, sites/larkenfell.md:36:12
4      h = 9 + 2   [F1 sum]
         = 11 ft
     w  as in line 3
5    k = 62.4 lb/ft3   source: water constant of the mix
"
    );
    let json = tree::json(&tree()).to_string();
    assert!(json.starts_with(r#"{"format":1,"figure":"larkenfell/LF-1.net_area","label":"net area","basis":"#), "{json}");
    assert!(
        json.contains(r#""authored":{"text":"22 ft","key":"surfaces.LF-1.width"},"path":"sites/larkenfell.md","line":36,"column":12"#),
        "{json}"
    );
    // The no-break space of the paper stays in JSON.
    assert!(json.contains(r#""printed":{"us":{"text":"1,614.8 ft²","direction":"nearest","measure":"1/10","unit":"ft2"}}"#), "{json}");
}

#[test]
fn a_long_symbol_stands_on_its_own_row_and_a_fraction_has_a_decimal_beside_it() {
    let mut tree = tree();
    tree.lines = vec![step("larkenfell/LF-1.volume", "F2", "A × t", "905 ÷ 38", ("905/38", "ft3"), &[])];
    tree.missing = None;
    let text = tree::draw(&tree, Paint(false));
    let rows = "\
1  larkenfell/LF-1.volume
     = A × t   [F2]
     = 905 ÷ 38
     = 905/38 ft3, about 23.81579 ft3
";
    assert!(text.ends_with(rows), "{text}");
    tree.missing = Some("no thickness; ask the maker".to_owned());
    assert!(tree::draw(&tree, Paint(false)).ends_with("  no value  no thickness; ask the maker\n"));
}

#[test]
fn a_name_that_is_not_there() {
    let known = ["larkenfell", "brack-ferry", "sedge-basin"].map(str::to_owned).to_vec();
    let line = |asked: &str, known: &[String]| nearest::line(&Missing { kind: "site", asked: asked.to_owned(), known: known.to_vec() });
    assert_eq!(line("Larkenfel", &known), "no site `Larkenfel`; did you mean `larkenfell`?");
    assert_eq!(line("x", &known), "no site `x`; there is larkenfell, brack-ferry, sedge-basin");
    assert_eq!(line("x", &[]), "no site `x`; there is none");
    let many: Vec<String> = (10..30).map(|n| format!("site-number-{n}")).collect();
    assert!(line("x", &many).ends_with("site-number-17 and 12 more"));
}

#[test]
fn completions_and_man_pages() {
    let text = |outcome: Outcome| match outcome.product {
        Product::Text(text) => text,
        other => panic!("{other:?}"),
    };
    let bash = text(extra::completions(clap_complete::Shell::Bash));
    assert!(bash.contains("takeoff") && bash.contains("--proof"));
    let page = text(extra::man(None));
    assert!(page.contains(".TH hodbook 1") && page.contains("setout") && !page.contains("schema"), "{page}");
    assert!(text(extra::man(Some("issue"))).contains("PROOF"));
    assert_eq!(extra::man(Some("isue")).exit, Exit::Nothing);
}

#[test]
fn files_and_text() {
    let files = Product::Files(vec![PathBuf::from("out/cards/M-01.pdf")]);
    let page = |product: Product, format| print::page(&Outcome { product, ..Outcome::default() }, Look { format, color: false });
    assert_eq!(page(files.clone(), Format::Plain), "out/cards/M-01.pdf\n");
    assert_eq!(page(files, Format::Json), "{\"format\":1,\"files\":[\"out/cards/M-01.pdf\"]}\n");
    assert_eq!(page(Product::Text("no end".to_owned()), Format::Plain), "no end\n");
}
