//! Worked numbers F14 to F17: placing, labour, the day's table, cure.

use hodbook::quantity::expr::{Clock, Duration, Pace, Worked};
use hodbook::trade::cure::{Day, calendar_day, credits};
use hodbook::trade::day::{Hour, Plan, Row, Times, cut, day};
use hodbook::trade::loads::{Step, loads};
use hodbook::trade::open_time::open_time;
use hodbook::trade::{batch, labour, net, placing, relief, sums, window};

use crate::run::q;
use crate::worked::{Book, carve};

const MINUTES: &str = "the batch table runs on whole minutes";

fn applied() -> Worked<hodbook::quantity::expr::Length> {
    let mean = relief::mean_thickness(&q("3/8 in"), &q("1 3/4 in"), &q("62 %")).unwrap();
    relief::applied_thickness(&mean, &q("12 %"), &q("5 %")).unwrap()
}

fn places(book: &mut Book) {
    let y = carve("1.5 gal").yields;
    book.line("F14", "two loads", &sums::batch_volume(&q("2 loads"), &y).unwrap(), "ft3", "1.8677");
    let area = placing::batch_area(&q("2 loads"), &y, &applied()).unwrap();
    book.line("F14", "two loads cover", &area, "ft2", "15.26");
    let pace = placing::crew_pace(&q("3"), &q("14 ft2/h")).unwrap();
    book.line("F14", "three appliers", &pace, "ft2/h", "42");
    let unrounded: Worked<Duration> = labour::task_hours(&area, &q("1"), &pace).unwrap();
    book.line("F14", "placing", &unrounded, "min", "21.8");
    let place = placing::placing_time(&area, &pace).unwrap();
    book.ours("F14", "placing, in whole minutes", &place, "min", ["22", "21.8"], "placing 16.35 min takes 17");
    let age = placing::age(&q("6 min"), &q("4 min"), &place).unwrap();
    book.ours("F14", "age at the end", &age, "min", ["32", "31.8"], "placing 16.35 min takes 17");
    let most = |open: &Worked<_>| placing::loads_in_time(&pace, open, (&q("6 min"), &q("4 min")), &applied(), &y, Step::Whole).unwrap();
    let at = |t: &str| open_time(&q("50 min"), &q("70 °F"), &q(t)).unwrap();
    book.line("F14", "most at 70", &most(&at("70 °F")).exact, "", "3.67");
    book.line("F14", "most at 70", &most(&at("70 °F")).loads, "", "3");
    book.ours(
        "F14",
        "most at 92",
        &most(&at("92 °F")).exact,
        "",
        ["1.19", "1.22"],
        "loads in open time at 92 °F are 1.19, from whole minutes",
    );
    book.line("F14", "most at 92", &most(&at("92 °F")).loads, "", "1");
}

/// Hours by task of the fireplace wall.
pub fn tasks() -> Vec<Worked<Duration>> {
    let wall = "217.22 ft2";
    let task = |a: &str, times: &str, pace: &str| labour::task_hours(&q(a), &q(times), &q(pace)).unwrap();
    let place = task(wall, "1", "14 ft2/h");
    let tender = labour::tender_hours(&place, &q("4")).unwrap();
    // Color goes twice over the developed surface, 1.30 of the flat.
    let color = task("282.386 ft2", "2", "70 ft2/h");
    vec![task(wall, "1", "45 ft2/h"), task(wall, "1", "60 ft2/h"), place, task(wall, "1", "9 ft2/h"), tender, q("6.0 h"), color]
}

fn hours(book: &mut Book) {
    for (task, printed) in tasks().iter().zip(["4.8", "3.6", "15.5", "24.1", "3.9", "6.0", "8.1"]) {
        book.line("F15", "hours", task, "h", printed);
    }
    book.line("F15", "hours in all", &labour::total_hours(&tasks()).unwrap(), "h", "66.0");
}

fn limits(book: &mut Book) {
    let split = window::split_limit(&q("42 ft2/h"), &q("36 ft2/h"), (&q("75 min"), &q("210 min")), &q("0 min")).unwrap().unwrap();
    book.line("F16", "split crew", &split, "ft2", "567");
    let shift = window::shift_limit(&q("36 ft2/h"), &q("8 h"), &q("75 min"), &q("0.75 h"), &q("0 min")).unwrap();
    book.line("F16", "shift", &shift, "ft2", "216");
    let same = |b: &str| window::same_limit(&q("56 ft2/h"), &q("36 ft2/h"), &q("3.5 h"), &q(b)).unwrap();
    book.line("F16", "same crew", &same("0 min"), "ft2", "126");
    book.line("F16", "same crew with lunch", &same("30 min"), "ft2", "108");
    let days = window::days(&q("217.2 ft2"), &same("30 min")).unwrap();
    book.line("F16", "days", &days.need, "", "2.01");
    book.line("F16", "mornings", &days.days, "", "3");
    book.line("F16", "mornings, lunch staggered", &window::days(&q("217.2 ft2"), &same("0 min")).unwrap().days, "", "2");
    book.line("F16", "a tenth kept", &window::with_spare(&same("30 min"), &q("10 %")).unwrap(), "ft2", "97");
    let mud = relief::mixed_volume(&q("108 ft2"), &applied(), &q("0 %"), &q("0 %")).unwrap();
    let need = loads(&mud, &carve("1.5 gal").yields, Step::Half).unwrap();
    book.line("F16", "mud of the day", &need.need, "", "14.15");
    book.line("F16", "loads of the day", &need.loads, "", "14.5");
    book.line("F16", "carving", &labour::task_hours(&q("108 ft2"), &q("1"), &q("36 ft2/h")).unwrap(), "h", "3.0");
}

fn at(text: &str) -> Worked<Clock> {
    let (hours, minutes) = text.split_once(':').unwrap();
    let time: Worked<Duration> = q(&format!("{} min", hours.parse::<i64>().unwrap() * 60 + minutes.parse::<i64>().unwrap()));
    Worked::new(time.node().clone())
}

fn said(clock: &Worked<Clock>) -> String {
    let minutes = clock.in_unit("min");
    format!("{}:{:02}", (minutes / 60.0).floor(), minutes % 60.0)
}

/// The design's table: loads, start water, water in, mixed, placed, discard, slack, area, first and last of the patch, closing.
const TABLE: [[&str; 11]; 8] = [
    ["2", "3 gal", "7:30", "7:36", "7:54", "8:20", "26", "15.3", "8:53", "9:09", "11:08"],
    ["2", "3 gal", "7:46", "7:52", "8:11", "8:36", "26", "15.3", "9:09", "9:26", "11:24"],
    ["2", "3 gal", "8:03", "8:09", "8:27", "8:53", "26", "15.3", "9:26", "9:42", "11:41"],
    ["2", "3 gal", "8:19", "8:25", "8:43", "9:09", "26", "15.3", "9:42", "9:58", "11:57"],
    ["2", "3 gal", "8:35", "8:41", "9:00", "9:25", "26", "15.3", "9:58", "10:15", "12:13"],
    ["2", "3 gal", "8:52", "8:58", "9:16", "9:42", "26", "15.3", "10:15", "10:31", "12:30"],
    ["2", "3 gal", "9:08", "9:14", "9:32", "9:58", "26", "15.3", "10:31", "10:47", "12:46"],
    ["0.5", "3 qt", "9:24", "9:30", "9:34", "10:14", "41", "1.2", "10:47", "10:49", "13:02"],
];

/// The same with placing at 17 whole minutes for 16.35, so that each batch goes in 17 min after the one before: by hand, 7:30
/// and 17 times the row, 6 min to mix, 2 to move, 17 to place, 50 to be dead, 75 to open and 210 to close from the wall.
const OURS: [[&str; 11]; 8] = [
    ["2", "3 gal", "7:30", "7:36", "7:55", "8:20", "25", "15.3", "8:53", "9:10", "11:08"],
    ["2", "3 gal", "7:47", "7:53", "8:12", "8:37", "25", "15.3", "9:10", "9:27", "11:25"],
    ["2", "3 gal", "8:04", "8:10", "8:29", "8:54", "25", "15.3", "9:27", "9:44", "11:42"],
    ["2", "3 gal", "8:21", "8:27", "8:46", "9:11", "25", "15.3", "9:44", "10:01", "11:59"],
    ["2", "3 gal", "8:38", "8:44", "9:03", "9:28", "25", "15.3", "10:01", "10:18", "12:16"],
    ["2", "3 gal", "8:55", "9:01", "9:20", "9:45", "25", "15.3", "10:18", "10:35", "12:33"],
    ["2", "3 gal", "9:12", "9:18", "9:37", "10:02", "25", "15.3", "10:35", "10:52", "12:50"],
    ["0.5", "3 qt", "9:29", "9:35", "9:39", "10:19", "40", "1.2", "10:52", "10:54", "13:07"],
];

fn cells(row: &Row) -> [String; 11] {
    let kept = row.times.as_ref().unwrap();
    let water = batch::batch_water(&row.batch.loads, &q("1.5 gal")).unwrap();
    let water = match water.in_unit("gal") {
        whole if whole >= 1.0 => format!("{whole} gal"),
        _ => format!("{} qt", water.in_unit("qt")),
    };
    [
        row.batch.loads.value().si.to_f64().to_string(),
        water,
        said(&row.water_in),
        said(&row.mixed),
        said(&row.placed),
        said(&kept.discard),
        kept.slack.in_unit("min").to_string(),
        format!("{:.1}", row.batch.area.in_unit("ft2")),
        said(&kept.opens.0),
        said(&kept.opens.1),
        said(&kept.closes),
    ]
}

fn table(book: &mut Book) {
    let times = Times { open: q("50 min"), opens: q("75 min"), closes: q("210 min") };
    let pace: Worked<Pace> = q("56 ft2/h");
    let plan = Plan {
        starts: at("7:30"),
        batches: cut(&q("108 ft2"), &q("2 loads"), &carve("1.5 gal").yields, &applied(), Step::Half).unwrap(),
        mixing: q("6 min"),
        moving: q("2 min"),
        place: pace,
        carve: q("36 ft2/h"),
        split: false,
        hours: vec![Hour { from: at("7:00"), times: Ok(times) }],
        breaks: vec![(at("12:00"), at("12:30"))],
        ends: at("15:30"),
        clean_up: q("45 min"),
        sunset: None,
    };
    let worked = day(&plan, None).unwrap();
    assert_eq!(worked.rows.len(), TABLE.len());
    for (n, ((row, design), ours)) in worked.rows.iter().zip(TABLE).zip(OURS).enumerate() {
        for ((got, design), ours) in cells(row).iter().zip(design).zip(ours) {
            let what = format!("batch {}", n + 1);
            if ours == design { book.text("F16", &what, got, design) } else { book.stands("F16", &what, got, [ours, design], MINUTES) }
        }
    }
    let first = worked.rows[0].times.as_ref().unwrap();
    book.stands("F16", "carving starts", &said(&first.carve.0), ["9:39", "9:34"], MINUTES);
    // Eight patches of 26, the last of 2 or 3 min, and lunch; the design carves 3.0 h in one piece.
    book.stands("F16", "carving ends", &said(worked.carved.as_ref().unwrap()), ["13:13", "13:04"], MINUTES);
    let last = worked.rows[7].times.as_ref().unwrap();
    book.stands("F16", "last patch closes", &said(&last.closes), ["13:07", "13:04"], MINUTES);
    book.line(
        "F16",
        "wall of the table",
        &net::total(&worked.rows.iter().map(|r| r.batch.area.clone()).collect::<Vec<_>>()).unwrap(),
        "ft2",
        "108",
    );
}

fn cure(book: &mut Book) {
    let means = [58, 52, 49, 55, 61, 38, 44, 57, 60, 62, 64, 59, 63, 66];
    let days: Vec<Day> = means.iter().map(|t| Day { mean: q(&format!("{t} °F")), least: None }).collect();
    let credit = ["0.68", "0.53", "0.45", "0.61", "0.76", "0.00", "0.32", "0.66", "0.74", "0.79", "0.84", "0.71", "0.82", "0.89"];
    let sum = ["0.68", "1.21", "1.66", "2.26", "3.03", "3.03", "3.34", "4.00", "4.74", "5.53", "6.37", "7.08", "7.89", "8.79"];
    for ((day, credit), sum) in credits(&days).unwrap().iter().zip(credit).zip(sum) {
        book.line("F17", "credit", &day.credit, "", credit);
        book.line("F17", "sum", &day.sum, "", sum);
    }
    book.line("F17", "calendar day", &calendar_day(&days, &q("7 days"), &q("2 days")).unwrap(), "", "12");
}

/// F14 to F17.
pub fn lines(book: &mut Book) {
    places(book);
    hours(book);
    limits(book);
    table(book);
    cure(book);
}
