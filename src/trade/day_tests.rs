use super::day::{Batch, Blank, Day, Fault, Hour, Kept, Plan, Row, Times, cut, day};
use super::loads::Step;
use super::open_time::{carve_time, open_time};
use super::testing::{holds, line, q};
use crate::quantity::expr::{Clock, Duration, Temperature, Worked};

fn at(text: &str) -> Worked<Clock> {
    let (hours, minutes) = text.split_once(':').unwrap();
    let time: Worked<Duration> = q(&format!("{} min", hours.parse::<i64>().unwrap() * 60 + minutes.parse::<i64>().unwrap()));
    Worked::new(time.node().clone())
}

fn said(clock: &Worked<Clock>) -> String {
    let minutes = clock.in_unit("min");
    assert_eq!(minutes.fract(), 0.0);
    format!("{}:{:02}", (minutes / 60.0).floor(), minutes % 60.0)
}

fn hour(from: &str, t: &str) -> Hour {
    let (base, t): (Worked<Temperature>, _) = (q("70 °F"), q(t));
    let times = || -> Result<Times, super::OutOfRange> {
        Ok(Times {
            open: open_time(&q("50 min"), &base, &t)?,
            opens: carve_time(&q("75 min"), &base, &t)?,
            closes: carve_time(&q("210 min"), &base, &t)?,
        })
    };
    Hour { from: at(from), times: times().map_err(|e| e.wants) }
}

/// The rubble day: four people who place and then carve, lunch at noon.
fn rubble(area: &str) -> Plan {
    Plan {
        starts: at("7:30"),
        batches: cut(&q(area), &q("2 loads"), &q("0.93385 ft3"), &q("1.4683 in"), Step::Half).unwrap(),
        mixing: q("6 min"),
        moving: q("2 min"),
        place: q("56 ft2/h"),
        carve: q("36 ft2/h"),
        split: false,
        hours: vec![hour("7:00", "70 °F")],
        breaks: vec![(at("12:00"), at("12:30"))],
        ends: at("15:30"),
        clean_up: q("45 min"),
        sunset: None,
    }
}

fn kept(row: &Row) -> &Kept {
    row.times.as_ref().unwrap()
}

fn faults(day: &Day) -> Vec<&[Fault]> {
    day.rows.iter().map(|r| r.times.as_ref().map_or(&[][..], |k| &k.faults)).collect()
}

/// One line as the design's table has it: water in, mixed, placed, discard, slack, ft2, opens first and last, closes.
fn table_line(row: &Row) -> String {
    let k = kept(row);
    let clocks = [&row.water_in, &row.mixed, &row.placed, &k.discard].map(said).join(" ");
    let (first, last) = (&k.opens.0, &k.opens.1);
    let (slack, area) = (k.slack.in_unit("min"), row.batch.area.in_unit("ft2"));
    format!("{clocks} {slack} {area:.1} {}-{} {}", said(first), said(last), said(&k.closes))
}

// Worked example of the design, common practice, no source. In whole minutes placing takes 17 min and not 16.35, so
// the batches fall half a minute later each, up to 5 min at the eighth, and one minute of slack is gone. The design:
// 7:30 7:36 7:54 8:20 26 15.3 8:53-9:09 11:08 | 7:46 … 9:09-9:26 11:24 | 8:03 … | 8:19 … | 8:35 … | 8:52 … |
// 9:08 … 12:46 | 9:24 9:30 9:34 10:14 41 1.2 10:47-10:49 13:02; carving 9:34 to 13:04.
#[test]
fn the_rubble_day_in_whole_minutes() {
    let table = day(&rubble("108 ft2"), None).unwrap();
    let lines: Vec<String> = table.rows.iter().map(table_line).collect();
    assert_eq!(
        lines,
        [
            "7:30 7:36 7:55 8:20 25 15.3 8:53-9:10 11:08",
            "7:47 7:53 8:12 8:37 25 15.3 9:10-9:27 11:25",
            "8:04 8:10 8:29 8:54 25 15.3 9:27-9:44 11:42",
            "8:21 8:27 8:46 9:11 25 15.3 9:44-10:01 11:59",
            "8:38 8:44 9:03 9:28 25 15.3 10:01-10:18 12:16",
            "8:55 9:01 9:20 9:45 25 15.3 10:18-10:35 12:33",
            "9:12 9:18 9:37 10:02 25 15.3 10:35-10:52 12:50",
            "9:29 9:35 9:39 10:19 40 1.2 10:52-10:54 13:07",
        ]
    );
    holds(&table.rows.last().unwrap().batch.loads, "", "0.5");
    let carve: Vec<String> = table.rows.iter().map(|r| format!("{}-{}", said(&kept(r).carve.0), said(&kept(r).carve.1))).collect();
    // Each patch takes 26 min; the sixth has lunch in it.
    assert_eq!(carve.first().unwrap(), "9:39-10:05");
    assert_eq!(carve.get(5).unwrap(), "11:49-12:45");
    assert_eq!(carve.last().unwrap(), "13:11-13:13");
    assert_eq!((said(table.carved.as_ref().unwrap()), said(table.done.as_ref().unwrap())), ("13:13".into(), "13:58".into()));
    // The design finds no slack at all; with the first mud of each patch as its limit the last three are late.
    let closed = [Fault::Closed];
    assert_eq!(faults(&table), [&[][..], &[], &[], &[], &[], &closed, &closed, &closed]);
    holds(table.area.as_ref().unwrap(), "ft2", "108");
    assert_eq!(table.good, 6);
}

#[test]
fn a_tenth_less_is_carved_in_time() {
    let table = day(&rubble("97 ft2"), None).unwrap();
    assert_eq!((table.rows.len(), table.good), (7, 7));
    assert_eq!(said(table.carved.as_ref().unwrap()), "12:42");
    holds(table.good_area.as_ref().unwrap(), "ft2", "97");
    // Staggered lunch: nobody stops, and 108 ft2 are carved by 12:43, before 12:50.
    let mut plan = rubble("108 ft2");
    plan.breaks.clear();
    assert_eq!(day(&plan, None).unwrap().good, 8);
}

#[test]
fn clocks_print_minutes_since_midnight() {
    let table = day(&rubble("108 ft2"), None).unwrap();
    let second = table.rows.get(1).unwrap();
    assert_eq!(
        line(&second.water_in),
        (
            "water_in = max(mixed_before, placed_before − up(mixing, 1) − up(moving, 1))".into(),
            "max(456, 475 − up(6, 1) − up(2, 1)) = 467 min".into()
        )
    );
    assert_eq!(line(&kept(second).closes).1, "475 + down(210, 1) = 685 min");
    assert_eq!(line(&kept(table.rows.get(5).unwrap()).carve.1).1, "max(709 + 26 + 750 − 720, 635) = 765 min");
}

#[test]
fn a_slow_mixer_sets_the_pace() {
    let mut plan = rubble("60 ft2");
    plan.mixing = q("20.5 min");
    let table = day(&plan, None).unwrap();
    assert_eq!(said(&table.rows.get(1).unwrap().water_in), "7:51");
}

#[test]
fn no_break_falls_into_a_batch() {
    let mut plan = rubble("60 ft2");
    // The second batch would be on its way from 7:47 to 8:12, and after the first break into the second.
    plan.breaks = vec![(at("8:00"), at("8:10")), (at("8:20"), at("8:30")), (at("8:55"), at("9:00"))];
    let table = day(&plan, None).unwrap();
    let starts: Vec<String> = table.rows.iter().map(|r| said(&r.water_in)).collect();
    assert_eq!(starts, ["7:30", "8:30", "9:00", "9:17"]);
    // A batch that is placed at the stroke of the break does not wait.
    plan.breaks = vec![(at("8:12"), at("8:20"))];
    assert_eq!(said(&day(&plan, None).unwrap().rows.get(1).unwrap().water_in), "7:47");
}

#[test]
fn other_hands_carve_as_it_opens() {
    let mut plan = rubble("108 ft2");
    plan.split = true;
    let table = day(&plan, None).unwrap();
    assert_eq!(table.good, 8);
    // Opens at 8:53 and takes 26 min; the second patch opens before the first is carved.
    let carve: Vec<String> = table.rows.iter().take(2).map(|r| format!("{}-{}", said(&kept(r).carve.0), said(&kept(r).carve.1))).collect();
    assert_eq!(carve, ["8:53-9:19", "9:19-9:45"]);
    // Fast carvers cannot finish before the last mud opens.
    plan.carve = q("600 ft2/h");
    assert_eq!(said(&kept(day(&plan, None).unwrap().rows.first().unwrap()).carve.1), "9:10");
}

#[test]
fn heat_shortens_and_blackens_rows() {
    let mut plan = rubble("108 ft2");
    plan.hours = vec![hour("7:40", "70 °F"), hour("8:10", "92 °F"), hour("8:50", "101 °F")];
    let table = day(&plan, None).unwrap();
    let blank = |i: usize| table.rows.get(i).unwrap().times.as_ref().unwrap_err();
    assert_eq!(blank(0), &Blank::NoWeather);
    // Water in at 7:47 at 70 °F, but placed until 8:12: the hotter hour's 23 min hold.
    assert_eq!(said(&kept(table.rows.get(1).unwrap()).discard), "8:10");
    assert_eq!(kept(table.rows.get(1).unwrap()).faults, [Fault::Stale, Fault::Closed]);
    assert!(matches!(blank(7), Blank::NoTime(why) if why.contains("ask the maker")));
    // It opens no sooner than the cooler hour says, and black rows are not placed: hands are free at 8:46.
    assert_eq!(said(&kept(table.rows.get(1).unwrap()).carve.0), "9:10");
    assert_eq!(said(&kept(table.rows.get(3).unwrap()).opens.0), "9:04");
    assert_eq!((table.good, table.good_area.is_none()), (0, true));
    holds(table.area.as_ref().unwrap(), "ft2", "45.8");
}

#[test]
fn late_starts_are_worked_again_on_the_same_hours() {
    let mut plan = rubble("30 ft2");
    plan.hours = vec![hour("7:00", "70 °F"), hour("9:00", "80 °F"), hour("10:00", "90 °F")];
    let open = |by: &str| {
        let table = day(&plan, Some(&q(by))).unwrap();
        let row = table.rows.first().unwrap();
        (said(&row.water_in), said(&kept(row).discard), kept(row).faults.is_empty())
    };
    assert_eq!(open("0 min"), ("7:30".into(), "8:20".into(), true));
    assert_eq!(open("60 min"), ("8:30".into(), "9:20".into(), true));
    assert_eq!(open("90 min"), ("9:00".into(), "9:35".into(), true));
    // 25 min at 90 °F, just as long as the batch needs: nothing left.
    assert_eq!(open("150 min"), ("10:00".into(), "10:25".into(), false));
    assert!(day(&plan, Some(&q("-1 min"))).is_err());
}

#[test]
fn dusk_and_the_end_of_the_shift() {
    let mut plan = rubble("97 ft2");
    plan.sunset = Some(at("12:41"));
    plan.ends = at("13:26");
    assert_eq!(faults(&day(&plan, None).unwrap()).last().unwrap(), &[Fault::Dark, Fault::Overtime]);
    plan.sunset = Some(at("12:42"));
    plan.ends = at("13:27");
    assert_eq!(day(&plan, None).unwrap().good, 7);
}

#[test]
fn absurd_input_is_refused() {
    let refused = |change: fn(&mut Plan)| {
        let mut plan = rubble("30 ft2");
        change(&mut plan);
        day(&plan, None).unwrap_err().to_string()
    };
    assert_eq!(refused(|p| p.place = q("0 ft2/h")), "F14 placing: P is 0 ft2/h, wants more than 0, such as `1 ft2/h`");
    assert_eq!(refused(|p| p.carve = q("-1 ft2/h")), "F16 carving: C is -1 ft2/h, wants more than 0, such as `1 ft2/h`");
    assert!(refused(|p| p.hours.clear()).contains("at least one hour"));
    assert!(refused(|p| p.hours.push(hour("7:00", "70 °F"))).contains("a later hour"));
    assert!(refused(|p| p.batches.clear()).contains("1 to 200 batches"));
    let many = |p: &mut Plan| {
        let one: Batch = p.batches.first().unwrap().clone();
        p.batches = vec![one; 10_000];
    };
    assert!(refused(many).contains("batches is 10000, wants 1 to 200"));
    assert!(refused(|p| p.starts = at("24:00")).contains("before midnight"));
    assert!(refused(|p| p.breaks.push((at("12:10"), at("12:40")))).contains("after the end of the break before"));
    assert!(refused(|p| p.breaks = vec![(at("12:00"), at("12:00"))]).contains("later time"));
    assert!(refused(|p| p.mixing = q("-1 min")).contains("mixing is -1 min"));
    assert!(cut(&q("100000 ft2"), &q("2 loads"), &q("1 ft3"), &q("1 in"), Step::Half).unwrap_err().wants.contains("at most 200"));
    assert!(cut(&q("100 ft2"), &q("0.3 loads"), &q("1 ft3"), &q("1 in"), Step::Half).is_err());
    // Two hundred batches run into the next day: those rows are black, and nothing hangs.
    let mut plan = rubble("30 ft2");
    plan.batches = vec![plan.batches.first().unwrap().clone(); 200];
    let table = day(&plan, None).unwrap();
    assert_eq!(table.rows.last().unwrap().times.as_ref().unwrap_err(), &Blank::NextDay);
    plan.place = q("0.00001 ft2/h");
    assert_eq!(day(&plan, None).unwrap().rows.first().unwrap().times.as_ref().unwrap_err(), &Blank::NextDay);
}
