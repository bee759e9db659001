//! F15: hours of work, by task and by crew.

use crate::quantity::expr::{Area, Duration, Pace, Plain, Worked};

use super::{Answer, OutOfRange, above_zero, like, refuse, zero_or_more};

/// Hours of a task: `t = A × times ÷ pace`; `A` area, `times` it is gone over (colour passes), `pace` of one person.
///
/// `A ≥ 0`, `times ≥ 0`, `pace > 0`. A pace from a log of the same texture is worth more than any book. Source: `labour`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::labour::task_hours};
/// let t = task_hours(&Worked::read("217 ft2").unwrap(), &Worked::read("1").unwrap(), &Worked::read("14 ft2/h").unwrap()).unwrap();
/// assert_eq!(t.in_unit("h"), 15.5);
/// ```
pub fn task_hours(a: &Worked<Area>, times: &Worked<Plain>, pace: &Worked<Pace>) -> Answer<Duration> {
    zero_or_more("F15 task", "A", a)?;
    zero_or_more("F15 task", "times", times)?;
    above_zero("F15 task", "pace", pace)?;
    let area = like(a.named("A") * times.named("times"), a.node());
    Ok(Worked::new((area / pace.named("pace")).written_in("h").formula("F15 task", "t")))
}

/// Hours of mixer tenders: `t = t_place ÷ n`; one tender keeps `n` placers in mud.
///
/// `t_place ≥ 0` person-hours of placing, `n > 0`. Source: `labour`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::labour::tender_hours};
/// assert_eq!(tender_hours(&Worked::read("15.5 h").unwrap(), &Worked::read("4").unwrap()).unwrap().in_unit("h"), 3.875);
/// ```
pub fn tender_hours(place: &Worked<Duration>, n: &Worked<Plain>) -> Answer<Duration> {
    zero_or_more("F15 tender", "t_place", place)?;
    above_zero("F15 tender", "n", n)?;
    Ok(Worked::new((place.named("t_place") / n.named("n")).written_in("h").formula("F15 tender", "t")))
}

/// Hours of all tasks: `t = t1 + t2 + …`, at least one, each 0 or more.
///
/// Source: `labour`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::labour::total_hours};
/// assert_eq!(total_hours(&[Worked::read("6 h").unwrap(), Worked::read("90 min").unwrap()]).unwrap().in_unit("h"), 7.5);
/// ```
pub fn total_hours(tasks: &[Worked<Duration>]) -> Answer<Duration> {
    const KEY: &str = "F15 tasks";
    for task in tasks {
        zero_or_more(KEY, "t", task)?;
    }
    let sum = tasks.iter().enumerate().map(|(i, t)| t.named(format!("t{}", i + 1))).reduce(|a, b| a + b);
    match sum {
        Some(sum) => Ok(Worked::new(sum.written_in("h").formula(KEY, "t"))),
        None => Err(OutOfRange { formula: KEY, symbol: "tasks", value: "0".to_owned(), wants: "1 task or more".to_owned() }),
    }
}

/// Hours of a crew: `t = people × days × shift`; all 0 or more, the shift at most 24 h.
///
/// A crew is paid for the day, not for the tasks it fits in. Source: `labour`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::labour::crew_hours};
/// let count = |t| Worked::read(t).unwrap();
/// assert_eq!(crew_hours(&count("5"), &count("2"), &Worked::read("8 h").unwrap()).unwrap().in_unit("h"), 80.0);
/// ```
pub fn crew_hours(people: &Worked<Plain>, days: &Worked<Plain>, shift: &Worked<Duration>) -> Answer<Duration> {
    zero_or_more("F15 crew", "people", people)?;
    zero_or_more("F15 crew", "days", days)?;
    zero_or_more("F15 crew", "shift", shift)?;
    if shift.value().si.to_f64() > 86_400.0 {
        return Err(refuse("F15 crew", "shift", shift, "at most 24 h, such as `8 h`"));
    }
    let all = people.named("people") * days.named("days") * shift.named("shift");
    Ok(Worked::new(all.written_in("h").formula("F15 crew", "t")))
}

/// Hours to count: `t = max(t_tasks, t_crew)`, both 0 or more.
///
/// Tasks may leave a crew idle, and a crew cannot do more than its tasks: the larger is paid. Source: `labour`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::labour::labour};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(labour(&read("66 h"), &read("80 h")).unwrap().in_unit("h"), 80.0);
/// ```
pub fn labour(tasks: &Worked<Duration>, crew: &Worked<Duration>) -> Answer<Duration> {
    zero_or_more("F15 labour", "t_tasks", tasks)?;
    zero_or_more("F15 labour", "t_crew", crew)?;
    Ok(Worked::new(tasks.named("t_tasks").max(crew.named("t_crew")).formula("F15 labour", "t")))
}

#[cfg(test)]
pub(crate) mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    /// Hours of the fireplace wall of the design.
    pub fn wall() -> Vec<Worked<Duration>> {
        let wall = "217.22 ft2";
        let task = |a: &str, times: &str, pace: &str| task_hours(&q(a), &q(times), &q(pace)).unwrap();
        let place = task(wall, "1", "14 ft2/h");
        let tender = tender_hours(&place, &q("4")).unwrap();
        vec![
            task(wall, "1", "45 ft2/h"),
            task(wall, "1", "60 ft2/h"),
            place,
            task(wall, "1", "9 ft2/h"),
            tender,
            q("6 h"),
            task("282.386 ft2", "2", "70 ft2/h"),
        ]
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn sixty_six_hours() {
        for (task, printed) in wall().iter().zip(["4.8", "3.6", "15.5", "24.1", "3.9", "6.0", "8.1"]) {
            holds(task, "h", printed);
        }
        let tasks = total_hours(&wall()).unwrap();
        holds(&tasks, "h", "66.0");
        holds(&labour(&tasks, &crew_hours(&q("5"), &q("2"), &q("8 h")).unwrap()).unwrap(), "h", "80.0");
        holds(&labour(&tasks, &crew_hours(&q("4"), &q("2"), &q("8 h")).unwrap()).unwrap(), "h", "66.0");
        let metric = task_hours(&q("27.905 m2"), &q("1"), &q("1.02 m2/h")).unwrap();
        holds(&metric, "h", "27.36");
        assert_eq!(line(&metric), ("t = A × times ÷ pace".to_owned(), "27.905 × 1 ÷ 1.02 = 5581/204 h".to_owned()));
    }

    #[test]
    fn what_is_out_of_range_says_what_would_pass() {
        assert_eq!(task_hours(&q("1 ft2"), &q("1"), &q("0 ft2/h")).unwrap_err().wants, "more than 0, such as `1 ft2/h`");
        assert_eq!(crew_hours(&q("5"), &q("2"), &q("30 h")).unwrap_err().wants, "at most 24 h, such as `8 h`");
        assert_eq!(total_hours(&[]).unwrap_err().wants, "1 task or more");
        assert!(tender_hours(&q("1 h"), &q("0")).is_err());
        assert!(labour(&q("-1 h"), &q("0 h")).is_err());
    }
}
