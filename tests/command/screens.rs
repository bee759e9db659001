//! `takeoff` and `gauge` as a shell sees them: every table of the three sites.

use super::day::{cell, table};
use super::{demo, in_job};

/// Titles of the tables that a command makes, in order.
fn titles(out: &str) -> Vec<String> {
    out.lines().map(|l| serde_json::from_str::<serde_json::Value>(l).unwrap()["table"].as_str().unwrap().to_owned()).collect()
}

fn json(job: &tempfile::TempDir, words: &[&str]) -> String {
    let mut all = vec!["--format", "json"];
    all.extend(words);
    let (code, out, err) = in_job(job, &all);
    assert_eq!((code, err.as_str()), (Some(0), ""), "{words:?}");
    out
}

fn notes(table: &serde_json::Value) -> String {
    table["notes"].as_array().unwrap().iter().map(|n| format!("{}\n", n.as_str().unwrap())).collect()
}

const ALL: [&str; 14] = [
    "takeoff",
    "order",
    "control joints",
    "weights on the wall",
    "lath, fasteners, paper",
    "color and sealer",
    "water on site",
    "hours",
    "cost",
    "lifts by hand",
    "scaffold platform",
    "floor under pallets",
    "error budget",
    "cure and next trade",
];

/// What is on file; only one site has its lots written down.
const FILED: [&str; 4] = ["dates", "as stated", "bags on site", "papers on file"];

#[test]
fn every_table_of_the_three_sites() {
    let job = demo();
    for (site, name, left_out, more) in [
        ("larkenfell", "Larkenfell Inn", &[][..], &[][..]),
        ("brack-ferry", "Brack Ferry Museum", &[], &["cure by the day"]),
        ("sedge-basin", "Sedge Basin Garden", &["control joints", "lath, fasteners, paper"], &["cure by the day"]),
    ] {
        let all = ALL.iter().filter(|t| !left_out.contains(t)).chain(more).chain(&FILED);
        let filed = all.filter(|t| site == "larkenfell" || **t != "bags on site");
        let mut wanted: Vec<String> = filed.map(|title| format!("{name}, {title}")).collect();
        let out = json(&job, &["takeoff", site]);
        assert_eq!(titles(&out), wanted, "{site}");
        for line in out.lines() {
            let table: serde_json::Value = serde_json::from_str(line).unwrap();
            let columns = table["columns"].as_array().unwrap().len();
            for row in table["rows"].as_array().unwrap().iter().chain(table["totals"].as_array().unwrap()) {
                assert_eq!(row.as_array().unwrap().len(), columns, "{}", table["table"]);
                assert!(row.as_array().unwrap().iter().all(|c| !c.as_str().unwrap().contains("not worked")), "{row}");
            }
        }
        // The plain form has each title on a line of its own, in the same order, and rows that a wide terminal holds.
        let (_, plain, _) = in_job(&job, &["takeoff", site]);
        wanted.reverse();
        for line in plain.lines() {
            if wanted.last().is_some_and(|w| w == line) {
                wanted.pop();
            }
            assert!(line.chars().count() <= 168, "{line}");
        }
        assert!(wanted.is_empty(), "{wanted:?} not in {plain}");
    }
}

#[test]
fn control_joints_of_the_long_wall_before_and_after_its_change() {
    let job = demo();
    let joints = |job: &tempfile::TempDir| {
        let table = table(&json(job, &["takeoff", "BF"]), "Brack Ferry Museum, control joints");
        // Columns are on no lath of one plane.
        assert_eq!(table["rows"].as_array().unwrap().len(), 1);
        ["Surface", "Panels", "Joints", "Panel length", "Panel height"].map(|head| cell(&table, 0, head))
    };
    assert_eq!(joints(&job), ["BF-1", "4", "3", "12 ft", "11 ft"]);
    let path = job.path().join("sites/brack-ferry.md");
    let text = std::fs::read_to_string(&path).unwrap();
    assert_eq!(text.matches("width: 48 ft\n").count(), 1);
    std::fs::write(&path, text.replace("width: 48 ft\n", "width: 52 ft\n")).unwrap();
    assert_eq!(joints(&job), ["BF-1", "4", "3", "13 ft", "11 ft"]);
    let gable = table(&json(&job, &["takeoff", "LF"]), "Larkenfell Inn, control joints");
    // 22 ft × 14 ft 6 in: 319 ft² are three times 144.
    assert_eq!([cell(&gable, 0, "Panels"), cell(&gable, 0, "Panel height")], ["3", "14 ft 6 in"]);
}

#[test]
fn the_heaviest_part_stands_beside_the_letter_and_the_published_limits() {
    let job = demo();
    let weights = table(&json(&job, &["takeoff", "LF"]), "Larkenfell Inn, weights");
    let total = |row: usize, column: usize| weights["totals"][row][column].as_str().unwrap().replace('\u{a0}', " ");
    assert_eq!([total(0, 0), total(0, 4)], ["Heaviest 4 × 8 ft", "25.6 lb/ft²"]);
    assert_eq!([total(1, 0), total(1, 4)], ["Weight the engineer allows", "30.0 lb/ft²"]);
    let said = notes(&weights);
    for who in ["TMS 402", "UBC of the 1970s", "neighbor standard", "at most 15.0 lb/ft²", "25.6 lb/ft² is over it"] {
        assert!(said.contains(who), "{who}: {said}");
    }
    // Planks alone are flat at Brack Ferry, and light.
    let planks = table(&json(&job, &["takeoff", "BF"]), "Brack Ferry Museum, weights");
    assert!(notes(&planks).contains("14.0 lb/ft² is within it"), "{}", notes(&planks));
    assert_eq!(planks["totals"].as_array().unwrap().len(), 1, "no letter, no row");
}

#[test]
fn money_is_there_only_with_prices() {
    let job = demo();
    let out = json(&job, &["takeoff", "LF"]);
    let cost = table(&out, "Larkenfell Inn, cost");
    assert!(notes(&cost).contains("no price goes to the crew"));
    assert!(cost["totals"][2][1].as_str().unwrap().ends_with("USD/ft²"));
    let hours = table(&out, "Larkenfell Inn, hours");
    let total = |row: usize| hours["totals"][row][1].as_str().unwrap().replace('\u{a0}', " ");
    assert_eq!([total(1), total(2)], ["240.0 h", "240.0 h"], "the crew's days are more than the tasks");
    let company = job.path().join("company.md");
    let text = std::fs::read_to_string(&company).unwrap();
    let prices = text.find("prices:\n").unwrap()..text.find("transport:").unwrap();
    std::fs::write(&company, text.replace(&text[prices], "")).unwrap();
    let without = titles(&json(&job, &["takeoff", "LF"]));
    assert!(!without.iter().any(|t| t.ends_with("cost")) && without.iter().any(|t| t.ends_with("hours")), "{without:?}");
}

#[test]
fn the_next_trade_waits_for_the_credit_of_each_day() {
    let job = demo();
    let out = json(&job, &["takeoff", "SB"]);
    let days = table(&out, "Sedge Basin Garden, cure by the day");
    assert_eq!(days["rows"].as_array().unwrap().len(), 12);
    let day = |n: usize| ["Day", "Mean", "Lowest", "Credit", "So far, days"].map(|head| cell(&days, n, head));
    assert_eq!(day(5), ["13 Mar 2026", "3.3 °C", "0.5 °C", "0.00", "3.02"]);
    assert_eq!(day(11), ["19 Mar 2026", "15 °C", "7 °C", "0.71", "7.08"]);
    let (_, plain, _) = in_job(&job, &["takeoff", "SB"]);
    assert!(plain.contains("Next trade, pool trade                   not before 20 Mar 2026"), "{plain}");
    assert!(plain.contains("Cure keeper                              LEAD2, lead"), "{plain}");
    // In a room: 7 ÷ (36 ÷ 38) is 7.4, the eighth day, and the morning after it is a Saturday.
    let (_, room, _) = in_job(&job, &["takeoff", "LF"]);
    assert!(room.contains("not before 16 Mar 2026") && room.contains("every day is counted at 68 °F"), "{room}");
    let site = job.path().join("sites/larkenfell.md");
    let text = std::fs::read_to_string(&site).unwrap();
    std::fs::write(&site, text.replace("asks: 2026-03-16, weekends: no", "asks: 2026-03-13, weekends: yes")).unwrap();
    let (_, room, _) = in_job(&job, &["takeoff", "LF"]);
    assert!(room.contains("not before 14 Mar 2026") && room.contains("it asks for is too early"), "{room}");
}

#[test]
fn frost_is_named_by_the_lowest_reading_and_days_without_weather_give_no_date() {
    let job = demo();
    let path = job.path().join("weather/sedge-basin.days.csv");
    let text = std::fs::read_to_string(&path).unwrap();
    std::fs::write(&path, text.replace("2026-03-09, 11.1, 4", "2026-03-09, 11.1, -1.5")).unwrap();
    let out = json(&job, &["takeoff", "SB"]);
    let days = table(&out, "Sedge Basin Garden, cure by the day");
    assert!(
        notes(&days).contains("At or below freezing by the lowest reading, and counted as nothing: 9 Mar 2026 (-1.5 °C)."),
        "{}",
        notes(&days)
    );
    assert_eq!(cell(&days, 1, "Credit"), "0.00");
    assert_eq!(days["rows"].as_array().unwrap().len(), 13, "the frost costs a day");
    // A gap ends the list; a day that is missing is not a warm one.
    std::fs::write(&path, text.replace("2026-03-10, 9.4, 3\n", "")).unwrap();
    let (_, plain, _) = in_job(&job, &["takeoff", "SB"]);
    assert!(plain.contains("at most the 1.2 credit days of the days listed; list more days"), "{plain}");
    assert!(!plain.contains("not before"), "{plain}");
    std::fs::remove_file(job.path().join("weather/brack-ferry.days.csv")).unwrap();
    let (code, plain, _) = in_job(&job, &["takeoff", "BF"]);
    assert_eq!(code, Some(0));
    assert!(plain.contains("list date, mean and least in `weather/brack-ferry.days.csv`"), "{plain}");
    assert!(!plain.contains("not before"), "{plain}");
}

#[test]
fn a_mix_beside_its_batches() {
    let job = demo();
    let out = json(&job, &["gauge", "carve-24"]);
    let wanted = [
        "CARVE-24 rev C, batches at Brack Ferry Museum",
        "CARVE-24, water ladder",
        "CARVE-24, pallets at Brack Ferry Museum",
        "CARVE-24 rev C, batches at Larkenfell Inn",
        "CARVE-24, water ladder",
        "CARVE-24, pallets at Larkenfell Inn",
        "CARVE-24 rev C, start and limit",
        "CARVE-24, color in a load",
        "CARVE-24, times by temperature",
        "CARVE-24, as its sheet states",
        "Evaporation, lb/ft²·h, by wind",
        "Hobnail Heath Works, people by role",
        "Hobnail Heath Works, measures",
        "Hobnail Heath Works, mixers",
        "Hobnail Heath Works, trailer and pallet",
        "Hobnail Heath Works, lifts by hand",
    ];
    assert_eq!(titles(&out), wanted);
    let (_, plain, _) = in_job(&job, &["gauge", "carve-24"]);
    assert!(wanted.iter().all(|title| plain.lines().any(|l| l == *title)), "{plain}");
    let load = table(&out, "CARVE-24 rev C, start");
    let row = |n: usize| ["Per load", "At the start", "At the limit"].map(|head| cell(&load, n, head));
    assert_eq!(row(2), ["Water to dry weight", "0.130", "0.160"]);
    assert_eq!(row(3), ["Water index", "100.0", "123.1"]);
    let color = table(&out, "CARVE-24, color");
    assert_eq!(cell(&color, 2, "Amount"), "1.760 lb");
    let pallets = table(&out, "CARVE-24, pallets at Brack");
    assert_eq!(["To order", "On a pallet", "Full pallets", "Loose"].map(|h| cell(&pallets, 1, h)), ["90 bags", "42 bags", "2", "6 bags"]);
}

#[test]
fn times_by_the_rule_and_by_the_sheet() {
    let job = demo();
    let out = json(&job, &["gauge"]);
    let rows = |title: &str| -> Vec<Vec<String>> {
        let table = table(&out, title);
        table["rows"]
            .as_array()
            .unwrap()
            .iter()
            .map(|r| r.as_array().unwrap().iter().map(|c| c.as_str().unwrap().to_owned()).collect())
            .collect()
    };
    let rule = rows("CARVE-24, times");
    // 50, 75 and 210 min at 70 °F; half of it at 90, and half as much again at most.
    assert_eq!(rule[5], ["70 °F", "50 min", "75 min", "210 min"]);
    assert_eq!(rule[9], ["90 °F", "25 min", "38 min", "105 min"]);
    assert_eq!(rule[0], ["45 °F", "75 min", "113 min", "315 min"]);
    assert_eq!(rule.last().unwrap(), &["105 °F", "ask the maker", "ask the maker", "ask the maker"]);
    assert_eq!(rows("SCRATCH-15, times")[0], ["45 °F", "90 min"], "a scratch coat is not carved");
    let sheet = rows("LITE-10M, times");
    assert_eq!(sheet[2], ["15 °C", "45 min", "90 min", "180 min"], "between two rows the safer one");
    assert_eq!(sheet.last().unwrap()[1], "ask the maker");
    let dries = rows("Evaporation, lb");
    assert_eq!(dries.len(), 12);
    assert_eq!(dries[2], ["25 %", "90 °F", "0.10", "0.17", "0.28", "0.39"]);
    assert_eq!(rows("Evaporation, kg")[2], ["25 %", "32 °C", "0.50", "0.80", "1.35", "1.90"]);
}

#[test]
fn the_yard_list_as_a_table_as_csv_and_as_paper() {
    let job = demo();
    let list = table(&json(&job, &["takeoff", "brack-ferry", "--yard-list"]), "Brack Ferry Museum, yard list");
    assert_eq!(["Bag", "To order", "Full pallets", "Loose"].map(|h| cell(&list, 2, h)), ["80 lb", "90 bags", "2", "6 bags"]);
    let (code, csv, _) = in_job(&job, &["takeoff", "--yard-list=csv"]);
    assert_eq!(code, Some(0));
    let records: Vec<&str> = csv.lines().collect();
    assert_eq!(records.len(), 11, "{csv}");
    assert!(records.contains(&"Brack Ferry Museum,CARVE-24,80,lb,\"bagged Type S mortar, sand in it\",90,2,6,7200,lb,none"), "{csv}");
    assert!(records.iter().skip(1).filter(|r| r.starts_with("Sedge Basin Garden,LITE-10M,")).count() == 2, "{csv}");
    let out = job.path().join("paper");
    let words = ["--out", out.to_str().unwrap(), "--format", "json", "takeoff", "larkenfell", "--yard-list=pdf"];
    let (code, made, err) = in_job(&job, &words);
    assert_eq!(code, Some(0), "{err}");
    let made: serde_json::Value = serde_json::from_str(made.lines().next().unwrap()).unwrap();
    let files = made["files"].as_array().unwrap();
    assert!(!files.is_empty());
    for file in files {
        assert!(std::fs::read(file.as_str().unwrap()).unwrap().starts_with(b"%PDF"), "{file}");
    }
    assert!(!job.path().join("records/register.jsonl").exists(), "nothing is entered");
}
