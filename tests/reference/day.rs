//! The day plan's formulas once, for the reader of printed arithmetic, and against absurd input.

use hodbook::quantity::expr::{Clock, Duration, Node, Pace, Worked};
use hodbook::trade::day::{self, Batch, Hour, Plan, Times};
use hodbook::trade::loads::Step;
use hodbook::trade::{placing, window};

use crate::run::q;

fn clock(text: &str) -> Worked<Clock> {
    let time: Worked<Duration> = q(text);
    Worked::new(time.node().clone())
}

fn plan(batches: Vec<Batch>, place: Worked<Pace>, carve: Worked<Pace>) -> Plan {
    let times = |open: &str, opens: &str, closes: &str| Ok(Times { open: q(open), opens: q(opens), closes: q(closes) });
    Plan {
        starts: clock("450 min"),
        batches,
        mixing: q("6.5 min"),
        moving: q("2 min"),
        place,
        carve,
        split: false,
        hours: vec![
            Hour { from: clock("7 h"), times: times("50.5 min", "75.2 min", "210 min") },
            Hour { from: clock("9 h"), times: times("35.35534 min", "53.03301 min", "2 h 30 min") },
            Hour { from: clock("17 h"), times: Err("too hot".to_owned()) },
        ],
        breaks: vec![(clock("8 h 30 min"), clock("8 h 45 min")), (clock("12 h"), clock("12 h 30 min"))],
        ends: clock("930 min"),
        clean_up: q("45 min"),
        sunset: Some(clock("17 h 52 min")),
    }
}

/// Results that print every formula of the day plan, in US and metric units mixed.
pub fn nodes() -> Vec<Node> {
    let p = placing::crew_pace(&q("4"), &q("1.3 m2/h")).unwrap();
    let c = placing::crew_pace(&q("4"), &q("9 ft2/h")).unwrap();
    let place = placing::placing_time(&q("15.26 ft2"), &p).unwrap();
    let age = placing::age(&q("6.5 min"), &q("0.05 h"), &place).unwrap();
    let in_time =
        placing::loads_in_time(&p, &q("23.3 min"), (&q("6 min"), &q("4 min")), &q("38 mm"), &q("0.9338 ft3"), Step::Half).unwrap();
    let same = window::same_limit(&p, &c, &q("3.5 h"), &q("30 min")).unwrap();
    let days = window::days(&q("20.2 m2"), &window::with_spare(&same, &q("10 %")).unwrap()).unwrap();
    let mut all = vec![
        placing::applied(&q("240 L"), &q("100 ft2")).unwrap().node().clone(),
        window::today(&q("20.2 m2"), &[q("97 ft2")], &q("100 ft2")).unwrap().node().clone(),
        window::left_after(&q("20.2 m2"), &[q("97 ft2"), q("20 ft2")]).unwrap().node().clone(),
        window::shift_length(&clock("450 min"), &clock("930 min")).unwrap().node().clone(),
        window::rests(&[(clock("720 min"), clock("750 min")), (clock("840 min"), clock("850 min"))]).unwrap().node().clone(),
        placing::slack(&q("23.3 min"), &age).unwrap().node().clone(),
        in_time.loads.node().clone(),
        window::split_limit(&p, &c, (&q("75 min"), &q("3.5 h")), &q("10 min")).unwrap().unwrap().node().clone(),
        window::shift_limit(&c, &q("8 h"), &q("75 min"), &q("45 min"), &q("30 min")).unwrap().node().clone(),
        days.days.node().clone(),
    ];
    let batches = day::cut(&q("12 m2"), &q("2 loads"), &q("26.4 L"), &q("1.4683 in"), Step::Half).unwrap();
    let table = day::day(&plan(batches, p, c), Some(&q("12.5 min"))).unwrap();
    for row in &table.rows {
        all.extend([row.batch.area.node().clone(), row.batch.loads.node().clone()]);
        let k = row.times.as_ref().unwrap();
        let clocks = [&k.discard, &k.opens.0, &k.opens.1, &k.closes, &k.carve.0, &k.carve.1];
        all.extend(clocks.map(|c| c.node().clone()));
        all.push(k.slack.node().clone());
    }
    all.extend([table.area.unwrap().node().clone(), table.done.unwrap().node().clone()]);
    all
}

/// Values that break formulas which do not look first.
const NUMBERS: [&str; 6] = ["-1", "0", "0.000001", "1/2", "10", "1000000"];

#[test]
fn no_plan_panics_or_hangs() {
    let (mut given, mut refused) = (0, 0);
    let mut count = |ok: bool| if ok { given += 1 } else { refused += 1 };
    for a in NUMBERS {
        for b in NUMBERS {
            let (p, c) = (q(&format!("{a} ft2/h")), q(&format!("{b} ft2/h")));
            let one = |loads: &str, area: &str| Batch { loads: q(&format!("{loads} loads")), area: q(&format!("{area} ft2")) };
            count(day::day(&plan(vec![one("2", a); 5], p.clone(), c.clone()), Some(&q(&format!("{b} min")))).is_ok());
            let mut odd = plan(vec![one("2", "15"); 200], q("56 ft2/h"), c.clone());
            odd.mixing = q(&format!("{a} min"));
            odd.clean_up = q(&format!("{b} min"));
            count(day::day(&odd, None).is_ok());
            odd.starts = clock(&format!("{a} min"));
            odd.split = true;
            count(day::day(&odd, None).is_ok());
            count(window::same_limit(&p, &c, &q("3 h"), &q(&format!("{a} min"))).is_ok());
            count(window::split_limit(&p, &c, (&q(&format!("{a} min")), &q("3 h")), &q(&format!("{b} min"))).is_ok());
            count(day::cut(&q(&format!("{a} ft2")), &q(&format!("{b} loads")), &q("1 ft3"), &q("1 in"), Step::Half).is_ok());
        }
    }
    assert!(given > 30 && refused > 100, "{given} answers, {refused} refused");
}
