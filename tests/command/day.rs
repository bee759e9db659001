//! `daysheet` as a shell sees it.

use super::{demo, in_job};

/// Rows of a table of the JSON output, by its title.
pub fn table(out: &str, title: &str) -> serde_json::Value {
    let tables = out.lines().map(|l| serde_json::from_str::<serde_json::Value>(l).unwrap());
    tables.into_iter().find(|t| t["table"].as_str().unwrap().starts_with(title)).unwrap_or_else(|| panic!("no table `{title}` in {out}"))
}

pub fn cell(table: &serde_json::Value, row: usize, head: &str) -> String {
    let at = table["columns"].as_array().unwrap().iter().position(|c| c == head).unwrap_or_else(|| panic!("no `{head}`"));
    table["rows"][row][at].as_str().unwrap().replace('\u{a0}', " ")
}

const BATCHES: &str = "Batches";

#[test]
fn every_planned_day_of_the_demo_can_be_placed_and_carved() {
    let job = demo();
    for (site, days) in [
        ("larkenfell", &["02", "03", "04", "05"][..]),
        ("brack-ferry", &["10", "11", "12", "13", "16", "17", "18", "19", "20", "23"]),
        ("sedge-basin", &["02", "03", "04", "05", "06", "07"]),
    ] {
        for day in days {
            let (code, out, err) = in_job(&job, &["daysheet", site, &format!("2026-03-{day}")]);
            assert_eq!(code, Some(0), "{site} {day}: {err}");
            assert!(err.contains("all can be placed and carved in time"), "{site} {day}: {err}");
            assert!(out.contains("Cure keeper tonight: LEAD"), "{out}");
        }
    }
}

#[test]
fn a_batch_is_clocked_from_its_water_in() {
    let job = demo();
    let (code, out, _) = in_job(&job, &["--format", "json", "daysheet", "LF", "2026-03-02"]);
    assert_eq!(code, Some(0));
    let batches = table(&out, BATCHES);
    let first = |head: &str| cell(&batches, 0, head);
    assert_eq!([first("Water in"), first("Mixed"), first("Start water")], ["7:30 am", "7:36 am", "3 gal 1 qt"]);
    // 15.6 ft² at 56 ft² an hour are 17 minutes, after 6 of mixing and 2 of moving; 56 minutes of open time.
    assert_eq!([first("Placed by"), first("Discard by"), first("To spare")], ["7:55 am", "8:26 am", "31 min"]);
    // A metric site has the other clock.
    let (_, metric, _) = in_job(&job, &["--format", "json", "daysheet", "SB", "2026-03-02"]);
    let batches = table(&metric, BATCHES);
    assert_eq!([cell(&batches, 0, "Water in"), cell(&batches, 0, "Start water")], ["8:30", "9.20 L"]);
}

#[test]
fn hours_that_forbid_it_black_the_rows_out_and_say_why() {
    let job = demo();
    let path = job.path().join("weather/brack-ferry.csv");
    let calm = std::fs::read_to_string(&path).unwrap();
    // The screens come down at seven: hot, dry and windy.
    let windy: String = calm
        .lines()
        .map(|l| match l.split_once(':') {
            Some((at, _)) if at.starts_with("2026-03-11T") && at > "2026-03-11T06" => format!("{at}:00, 92, 22, 14, 101, 80\n"),
            _ => format!("{l}\n"),
        })
        .collect();
    std::fs::write(&path, windy).unwrap();
    let (code, out, err) = in_job(&job, &["--format", "json", "daysheet", "BF", "2026-03-11"]);
    // The rest of the sheet is printed: a bad hour is no STOP.
    assert_eq!(code, Some(0), "{err}");
    let batches = table(&out, BATCHES);
    assert_eq!(cell(&batches, 0, "Discard by"), "6:54 am");
    let last = batches["rows"].as_array().unwrap().len() - 1;
    assert_eq!([cell(&batches, last, "Discard by"), cell(&batches, last, "Start water")], ["■", "■"]);
    assert!(cell(&batches, last, "").starts_with("do not mix: evaporation 0."), "{batches}");
    assert!(err.contains("cannot be placed and carved in time"), "{err}");
}

#[test]
fn late_starts_are_worked_again_and_not_shifted() {
    let job = demo();
    let (_, out, _) = in_job(&job, &["--format", "json", "daysheet", "BF", "2026-03-11"]);
    let late = table(&out, "If the first water goes in later");
    let minutes = |text: &str| {
        let (hours, rest) = text.split_once(':').unwrap();
        hours.parse::<i32>().unwrap() % 12 * 60 + rest[..2].parse::<i32>().unwrap()
    };
    let at = |head: &str| minutes(&cell(&late, 3, head));
    assert_eq!(at("+60 min: water in") - at("Water in"), 60);
    // An hour later the mix is warmer, so it is dead less than an hour later.
    assert!(at("+60 min: discard by") - at("Discard by") < 60);
}

#[test]
fn a_day_that_is_not_planned_ends_with_three() {
    let job = demo();
    let (code, out, err) = in_job(&job, &["daysheet", "larkenfell", "2026-04-02"]);
    assert_eq!((code, out.as_str()), (Some(3), ""));
    assert!(err.contains("2026-04-02") && err.contains("2026-03-02"), "{err}");
    let (code, ..) = in_job(&job, &["daysheet", "larkenfel", "2026-03-02"]);
    assert_eq!(code, Some(3));
    let path = job.path().join("sites/larkenfell.md");
    let text = std::fs::read_to_string(&path).unwrap();
    let plan = text.find("plan:\n").unwrap()..text.find("lath: {").unwrap();
    std::fs::write(&path, text.replace(&text[plan], "")).unwrap();
    let (code, _, err) = in_job(&job, &["daysheet", "larkenfell", "2026-03-02"]);
    assert_eq!(code, Some(2));
    assert!(err.contains("sites/larkenfell.md has no `plan`"), "{err}");
}

#[test]
fn without_weather_the_worst_of_the_band_stands() {
    let job = demo();
    std::fs::remove_file(job.path().join("weather/larkenfell.csv")).unwrap();
    let (code, out, _) = in_job(&job, &["daysheet", "larkenfell", "2026-03-02"]);
    assert_eq!(code, Some(0));
    assert!(out.contains("No weather on file for this day"), "{out}");
    // 50 min at 70 °F are 43 at the hot end of the band, 74 °F.
    assert!(out.contains("8:13 am"), "{out}");
}
