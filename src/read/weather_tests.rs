use crate::finding::{Finding, Severity};
use crate::job::Job;
use crate::job::weather::{Date, Hour, Weather};
use crate::quantity::expr::How;
use crate::source::{Folder, Span};
use std::fmt::Write as _;
use std::path::Path;

const HEAD: &str = "time, air (°F), humidity (%), wind (mph), bags (°F), water (°F)\n";

/// The demo job with weather files beside it.
fn demo(files: &[(&str, &str)]) -> (Folder, Job, Vec<Finding>) {
    let folder = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
    // The demo has weather of its own, which would stand between these files and what is read of them.
    let own = folder.files().iter().filter(|f| !f.path.starts_with("weather/")).map(|f| (f.path.clone(), f.text.clone()));
    let folder = Folder::of(own.collect::<Vec<_>>());
    let folder = files.iter().fold(folder, |f, (path, text)| f.with_text(path, text));
    let (job, findings) = super::job(&folder);
    (folder, job, findings)
}

fn one(text: &str) -> (Folder, Weather, Vec<Finding>) {
    let (folder, mut job, findings) = demo(&[("weather/larkenfell.csv", text)]);
    (folder, job.weather.pop().unwrap_or_default(), findings)
}

/// Name, letters pointed at, help.
fn told(text: &str) -> Vec<(&'static str, String, String)> {
    let (folder, _, findings) = one(text);
    let letters = |(at, _): &(Span, String)| folder.file(at.file).unwrap().slice(*at).to_owned();
    findings.iter().map(|f| (f.name, f.at.as_ref().map(letters).unwrap_or_default(), f.help.clone())).collect()
}

fn names(text: &str) -> Vec<&'static str> {
    told(text).into_iter().map(|(name, ..)| name).collect()
}

const CARVE_DAY: &str = "2026-03-11T07:00,74,55,3,78,74\n2026-03-11 10:00, 84, 38, 6, 92, 78\n2026-03-11 12:00,90,28,9,101,80\n\
                         2026-03-11 14:00,94,22,12,106,\n2026-03-11 16:00,91,26,8,104,82\n2026-03-12 07:00,70.5,55,3,,\n";

#[test]
fn a_day_by_the_hour() {
    let (folder, weather, findings) = one(&format!("{HEAD}{CARVE_DAY}"));
    assert!(findings.is_empty(), "{findings:?}");
    let day = weather.day(Date { year: 2026, month: 3, day: 11 });
    let seen: Vec<(f64, f64, f64)> = day.iter().map(|h| (h.at.in_unit("min"), h.air.in_unit("°F"), h.wind.in_unit("mph"))).collect();
    assert_eq!(seen, [(420.0, 74.0, 3.0), (600.0, 84.0, 6.0), (720.0, 90.0, 9.0), (840.0, 94.0, 12.0), (960.0, 91.0, 8.0)]);
    let hot = day.get(3).unwrap();
    assert_eq!(hot.bags.as_ref().map(|b| b.in_unit("°F")), Some(106.0));
    assert!(hot.water.is_none() && hot.mix.is_none());
    assert_eq!(hot.humidity.in_unit("%"), 22.0);
    assert!(weather.day(Date { year: 2025, month: 3, day: 11 }).is_empty());
    // Exact, and back to the letters.
    let air = weather.day(Date { year: 2026, month: 3, day: 12 }).first().unwrap().air.node().clone();
    assert!(air.value().si.exact().is_some());
    let How::Authored { text, key, mark } = air.how() else { panic!("{air:?}") };
    assert_eq!((&**text, &**key), ("70.5", "air of 2026-03-12 07:00"));
    let mark = mark.unwrap();
    let file = folder.file(mark.file).unwrap();
    assert_eq!((file.path.as_str(), file.place(mark.start)), ("weather/larkenfell.csv", (7, 18)));
}

#[test]
fn days_beside_hours() {
    let hours = format!("{HEAD}{CARVE_DAY}");
    let days = "date, mean (°C), least (°C)\n2026-03-02,14.4,6\n2026-03-03,-1,-4.5\n";
    let (_, job, findings) = demo(&[("weather/larkenfell.csv", &hours), ("weather/larkenfell.days.csv", days)]);
    assert!(findings.is_empty(), "{findings:?}");
    let weather = job.weather.first().unwrap();
    assert_eq!((job.weather.len(), weather.hours.len(), weather.daily().len()), (1, 6, 2));
    let frost = weather.daily().get(1).unwrap();
    assert_eq!((frost.mean.in_unit("°C"), frost.least.in_unit("°C")), (-1.0, -4.5));
    let (_, _, twice) = demo(&[("weather/larkenfell.csv", days), ("weather/larkenfell.days.csv", days)]);
    assert_eq!(twice.iter().map(|f| f.name).collect::<Vec<_>>(), ["weather-twice"]);
}

/// Station, then the header, as such files are published; every column that is not read is passed over.
const TYPICAL: &str = "999999,\"MADE, UP\",XX,-6.0,40.000,-90.000,100\n\
    Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),Dry-bulb (C),Dry-bulb source,RHum (%),RHum source,Wspd (m/s)\n\
    02/28/1996,01:00,0,-3.9,A,70,A,2.1\n02/28/1996,24:00,0,1.0,A,100,A,0.0\n03/01/1983,01:00,0,2.0,A,64,A,3.6\n";

#[test]
fn a_typical_year_as_it_is_published() {
    let (_, weather, findings) = one(TYPICAL);
    // Its hours are one for each hour of the day, so a day of two lines is told.
    assert_eq!(findings.iter().map(|f| (f.name, f.severity)).collect::<Vec<_>>(), [("hours-missing", Severity::Hold)]);
    assert!(weather.typical);
    let day = |year, month, day| weather.day(Date { year, month, day });
    let seen = |hours: &[Hour]| hours.iter().map(|h| (h.at.in_unit("h"), h.air.in_unit("°C"), h.wind.in_unit("m/s"))).collect::<Vec<_>>();
    assert_eq!(seen(&day(2026, 2, 28)), [(1.0, -3.9, 2.1), (24.0, 1.0, 0.0)]);
    assert_eq!(seen(&day(2028, 2, 29)), seen(&day(2026, 2, 28)));
    assert_eq!(seen(&day(2026, 3, 1)), [(1.0, 2.0, 3.6)]);
}

#[test]
fn headers_say_what_would_pass() {
    let row = "2026-03-11 07:00,74,55,3\n";
    let unit = told(&format!("time, air, humidity (%), wind (mph)\n{row}"));
    assert_eq!(unit, [("unit-missing", "air".into(), "write `air (°F)`".into())]);
    let wrong = told(&format!("time, air (mph), humidity (%), wind (mph)\n{row}"));
    assert_eq!(wrong, [("unit-unknown", "air (mph)".into(), "write the unit in the header, like `air (°F)`".into())]);
    let share = told(&format!("time, air (°F), humidity (°), wind (mph)\n{row}"));
    assert_eq!(share.first().unwrap().0, "unit-unknown");
    let near = told(&format!("time, air (°F), humidty (%), wind (mph)\n{row}"));
    assert_eq!(near.iter().map(|t| t.0).collect::<Vec<_>>(), ["column-missing", "column-not-read"]);
    assert_eq!(near.last().unwrap().2, "did you mean `humidity`?");
    assert_eq!(names(&format!("time, air (°F), humidity (%), wind (mph), air (°C)\n{row}")), ["column-twice"]);
    let semicolons = told("time; air (°F); humidity (%); wind (mph)\n");
    assert_eq!(semicolons.iter().map(|t| t.2.as_str()).filter(|help| *help == "separate the cells with commas").count(), 1);
    assert_eq!(names(""), ["weather-empty"]);
    assert_eq!(names("\n\n"), ["weather-empty"]);
    // Near misses that pass: other units, other letters, another order, a column of notes that is named.
    let good = "Wind (km/h), Time, HUMIDITY (%), air (C)\n5,2026-03-11 07:00,55,23\n";
    assert_eq!(names(good), Vec::<&str>::new());
    assert_eq!(names(&format!("time, air (°F), humidity (%), wind (mph), sky\n{row}")), ["column-not-read"]);
}

#[test]
fn bad_cells_are_pointed_at() {
    let head = "time, air (°F), humidity (%), wind (mph)\n";
    let with = |row: &str| told(&format!("{head}{row}\n")).into_iter().map(|(name, at, _)| (name, at)).collect::<Vec<_>>();
    assert_eq!(with("2026-03-11 07:00,warm,55,3"), [("number-unreadable", "warm".into())]);
    assert_eq!(with("2026-03-11 07:00,74 °F,55,3"), [("number-unreadable", "74 °F".into())]);
    assert_eq!(with("2026-03-11 07:00,74,155,3"), [("value-out-of-range", "155".into())]);
    assert_eq!(with("2026-03-11 07:00,74,55,-1"), [("value-out-of-range", "-1".into())]);
    assert_eq!(with("2026-03-11 07:00,,55,3"), [("value-empty", String::new())]);
    assert_eq!(with("2026-03-11 07:00,74,55"), [("line-short", "55".into())]);
    assert_eq!(with(&format!("2026-03-11 07:00,{},55,3", "7".repeat(50))), [("value-too-long", "7".repeat(50))]);
    for bad in ["2026-03-11", "2026-02-29 07:00", "3/11/2026 7:00", "2026-03-11 24:00", "2026-03-11 07:60", "07:00", "２026-03-11 07:00"] {
        assert_eq!(with(&format!("{bad},74,55,3")), [("time-unreadable", bad.into())], "{bad}");
    }
    assert_eq!(names("date, mean (°F), least (°F)\n2026-3-11,50,40\n"), ["date-unreadable"]);
    // Two things wrong in a line are two findings, and the lines beside it are read.
    let (_, weather, findings) = one(&format!("{head}2026-03-11 07:00,a,b,3\n2026-03-11 08:00,74,55,3\n"));
    assert_eq!((findings.len(), weather.hours.len()), (2, 1));
}

#[test]
fn what_was_read_at_the_wall_stands_before_the_forecast() {
    let head = "time, air (°F), humidity (%), wind (mph), rain (%), wall air (°F), wall humidity (%), wall wind (mph), made\n";
    let (_, weather, findings) =
        one(&format!("{head}2026-03-11 07:00,74,55,9,60,70,58,2,2026-03-10 18:30\n2026-03-11 08:00,76,50,8,,,,,\n"));
    assert!(findings.is_empty(), "{findings:?}");
    let hours: Vec<&Hour> = weather.lines(Date { year: 2026, month: 3, day: 11 }).collect();
    let (first, second) = (hours[0], hours[1]);
    let felt = |h: &Hour| (h.at_wall().0.in_unit("°F").round(), h.at_wall().1.in_unit("%"), h.at_wall().2.in_unit("mph").round());
    assert_eq!((felt(first), felt(second)), ((70.0, 58.0, 2.0), (76.0, 50.0, 8.0)));
    assert_eq!((first.read_at_wall(), second.read_at_wall()), (true, false));
    assert_eq!(first.rain.as_ref().map(|r| r.in_unit("%")), Some(60.0));
    let made = first.made.as_ref().unwrap();
    assert_eq!((made.date.iso().as_str(), made.minutes, second.made.is_none()), ("2026-03-10", 18 * 60 + 30, true));
    let wrong = told(&format!("{head}2026-03-11 07:00,74,55,9,,,,,yesterday\n"));
    assert_eq!(wrong.iter().map(|t| (t.0, t.1.as_str())).collect::<Vec<_>>(), [("time-unreadable", "yesterday")]);
}

#[test]
fn times_come_in_order() {
    let head = "time, air (°F), humidity (%), wind (mph)\n";
    let at = |times: &[&str]| {
        let rows: String = times.iter().map(|t| format!("2026-03-{t},74,55,3\n")).collect();
        let (_, weather, findings) = one(&format!("{head}{rows}"));
        (findings.iter().map(|f| (f.name, f.severity)).collect::<Vec<_>>(), weather.hours.len())
    };
    assert_eq!(at(&["11 07:00", "11 07:00"]), (vec![("time-twice", Severity::Stop)], 1));
    assert_eq!(at(&["11 08:00", "11 07:00", "11 09:00"]), (vec![("time-out-of-order", Severity::Stop)], 2));
    // Three hours are no gap, a minute more is one; a night is none.
    assert_eq!(at(&["11 07:00", "11 10:00", "12 07:00"]), (vec![], 3));
    assert_eq!(at(&["11 07:00", "11 10:01"]), (vec![("hours-missing", Severity::Warn)], 2));
    assert_eq!(at(&["11 07:00", "11 13:01"]), (vec![("hours-missing", Severity::Hold)], 2));
    let days = "date, mean (°F), least (°F)\n2026-02-28,50,40\n2026-03-01,50,40\n2026-03-03,50,40\n";
    assert_eq!(names(days), ["days-missing"]);
}

#[test]
fn files_of_no_site_and_files_that_are_no_tables() {
    let (_, job, findings) = demo(&[("weather/larkenfel.csv", HEAD)]);
    assert!(job.weather.is_empty());
    let finding = findings.first().unwrap();
    assert_eq!((finding.name, finding.help.as_str()), ("weather-without-site", "did you mean `larkenfell`?"));
    // A table that is wrong all the way is told about, and given up.
    let rows: String = (0..9000).map(|i| format!("x{i},y,z,w\n")).collect();
    let told = names(&format!("time, air (°F), humidity (%), wind (mph)\n{rows}"));
    assert_eq!((told.len(), told.iter().filter(|n| **n == "weather-unreadable").count()), (super::weather::MOST_FINDINGS + 2, 1));
    for torn in ["\"", "time,\"", "\u{feff}", ",,,\n,,,", "time, air (), humidity (%), wind ((mph)\n", "\0\0,\0", "a\r\r\nb"] {
        assert!(!names(torn).is_empty(), "{torn:?}");
    }
}

/// The outside check lays a table down and compares what is written here with its own reading.
#[test]
#[ignore = "the outside check of weather runs it, on the file that it has laid down"]
fn the_table_of_the_outside_check() {
    let place = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/outside");
    let folder = Folder::open(&place.join("weather-job")).unwrap();
    let (job, _) = super::job(&folder);
    let mut csv = "year,month,day,minute,air_C,humidity_percent,wind_m_s\n".to_owned();
    for (d, h) in &job.weather.first().unwrap().hours {
        let values = [h.air.in_unit("°C"), h.humidity.in_unit("%"), h.wind.in_unit("m/s")].map(|v| v.to_string()).join(",");
        writeln!(csv, "{},{},{},{},{values}", d.year, d.month, d.day, h.at.in_unit("min")).unwrap();
    }
    crate::source::write_atomic(&place.join("weather-read.csv"), csv.as_bytes()).unwrap();
}
