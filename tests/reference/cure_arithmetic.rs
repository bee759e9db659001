//! The formulas of cure, maturity, proportions and colour, once each, in US and metric units mixed.

use hodbook::quantity::expr::{CarveTime, Duration, Mass, OpenTime, Sort, Temperature, Worked};
use hodbook::trade::age::{self, ACI_PLAIN, Curve, METRIC_AIR};
use hodbook::trade::calendar;
use hodbook::trade::classes::{Base, nominal};
use hodbook::trade::cure::{self, Day};
use hodbook::trade::maturity::{self, Step};
use hodbook::trade::proportion::{self, Material, unit_weight};
use hodbook::trade::{moisture, open_time, pigment, yard, yields};

use crate::derivations::Seen;
use crate::run::q;

/// Every one of them.
pub fn all(seen: &mut Seen) {
    cures(seen);
    ages(seen);
    parts(seen);
    water_and_colour(seen);
}

fn cures(seen: &mut Seen) {
    let closes: [(Worked<Temperature>, Worked<OpenTime>); 2] = [(q("50 °F"), q("1 h 10 min")), (q("25 °C"), q("40 min"))];
    seen.add(&open_time::closes_by_table(&closes, &q("65 °F")).unwrap());
    seen.add(&open_time::closes_by_table(&closes, &q("5 °C")).unwrap());
    let opens: [(Worked<Temperature>, Worked<CarveTime>); 2] = [(q("50 °F"), q("2 h")), (q("25 °C"), q("70 min"))];
    seen.add(&open_time::opens_by_table(&opens, &q("65 °F")).unwrap());
    let hours: Vec<_> = ["41 °F", "2 °C", "45 °F"].iter().map(|t| q(t)).collect();
    let least = cure::coldest(&hours).unwrap();
    seen.add(&least);
    let day = |mean: &str, least: &str| Day { mean: q(mean), least: Some(q(least)) };
    let days = [day("58 °F", "44 °F"), day("3.3 °C", "-1 °C"), day("61 °F", "40 °F"), day("20 °C", "50 °F")];
    for credited in cure::credits(&days).unwrap() {
        seen.add(&credited.sum);
    }
    let sheet = cure::sheet_cure(&q("2 days"), &q("30 h")).unwrap();
    seen.add(&cure::whole_days(&sheet).unwrap());
    seen.add(&cure::calendar_day(&days, &q("36 h"), &sheet).unwrap());
    let n = cure::steady_day(&q("20 °C"), &q("168 h"), &sheet).unwrap();
    let over = calendar::cure_over(&calendar::day_of(2026, 3, 5).unwrap(), &n).unwrap();
    seen.add(&calendar::working_day(&calendar::morning_after(&over).unwrap()).unwrap());
    seen.add(&calendar::weekday(&over).unwrap());
    seen.add(&calendar::day_count(&sheet).unwrap());
    seen.add(&nominal(Base::LathOnSolid).total);
}

fn ages(seen: &mut Seen) {
    let step = |time: &str, t: &str| Step { time: q(time), temperature: q(t) };
    let steps = [step("12 h", "68 °F"), step("1 day", "5 °C"), step("90 min", "31 °C")];
    let m = maturity::maturity(&steps, &q("11 °F")).unwrap();
    seen.add(&m);
    let mild = maturity::activation(&q("40 kJ/mol")).unwrap();
    seen.add(&maturity::equivalent_age(&steps, &mild, &q("73.4 °F")).unwrap());
    seen.add(&maturity::equivalent_age(&steps, &q("5000 K"), &q("20 °C")).unwrap());
    seen.add(&maturity::cold_age(&steps).unwrap());
    seen.add(&maturity::model_code_age(&steps).unwrap());
    let week = maturity::maturity(&[step("7 days", "15 °C")], &q("-11 °C")).unwrap();
    seen.add(&age::matured_share(&week, &q("32"), &q("54")).unwrap());
    for curve in [Curve::OneMoist, Curve::ThreeMoist, Curve::OneSteam, Curve::ThreeSteam] {
        seen.add(&age::age_factor(&q("100 h"), curve).unwrap());
    }
    seen.add(&age::age_beta(&q("3 days"), &q("0.38")).unwrap());
    seen.add(&age::strength_by_ratio(&q("0.53"), &ACI_PLAIN).unwrap());
    seen.add(&age::ratio_by_strength(&q("3500 psi"), &METRIC_AIR).unwrap());
    seen.add(&age::abrams(&q("0.55"), false).unwrap());
    seen.add(&age::cement_for_water(&q("300 lb"), &q("0.62")).unwrap());
}

fn parts(seen: &mut Seen) {
    let sand = unit_weight(Material::DampSand);
    let masses: Vec<Worked<Mass>> = [("1", Material::Portland), ("1/2", Material::Lime), ("4 1/2", Material::DampSand)]
        .iter()
        .map(|(p, material)| proportion::part_mass(&q(p), &q("28 L"), &unit_weight(*material)).unwrap())
        .collect();
    seen.add(&proportion::part_share(&masses[1], &masses).unwrap());
    seen.add(&proportion::part_volume(&q("50 kg"), &sand).unwrap());
    let k = proportion::lab_factor(&q("3 lb"), &q("1280 kg/m3"), &q("3 3/4")).unwrap();
    seen.add(&proportion::lab_mass(&q("1/4"), &unit_weight(Material::Putty), &k).unwrap());
    seen.add(&proportion::by_mass(&q("94 lb"), &q("1"), &q("2.75")).unwrap());
    seen.add(&proportion::split(&q("30 kg"), &q("228"), &[q("456"), q("228"), q("719"), q("883")]).unwrap());
    seen.add(&proportion::loose_density(&q("2.65"), &q("1 kg/L"), &q("35 %")).unwrap());
    let cement = yard::rule_38(&q("2.5 ft3"), &q("1"), &q("4 1/4")).unwrap();
    seen.add(&yard::sacks(&cement, &q("1.5 kg/L"), &q("94 lb")).unwrap());
    for n in ["1.5", "4"] {
        seen.add(&yard::barrels(&q(n), &q("3.8 ft3"), &q("96 L"), &q("45 %")).unwrap());
    }
}

fn water_and_colour(seen: &mut Seen) {
    let free = [moisture::free_water(&q("360 lb"), &q("5 %")).unwrap(), moisture::free_water(&q("20 kg"), &q("2 %")).unwrap()];
    seen.add(&moisture::water_to_add(&q("6 gal"), &free, &q("8.345 lb/gal")).unwrap());
    seen.add(&yields::cube_air(&q("1.8 lb"), &q("68 %")).unwrap());
    seen.add(&yields::measure_volume(&q("399 g"), &q("62.27 lb/ft3")).unwrap());
    let m_c = pigment::cement(&q("55 lb"), &q("22 %")).unwrap();
    seen.add(&pigment::pigment(&m_c, &q("4 1/2 %"), &q("10 %")).unwrap());
    seen.add(&pigment::most_pigment(&m_c, &q("2 %")).unwrap());
}

/// Values that break formulas which do not look first.
const NUMBERS: [&str; 6] = ["-1", "0", "0.001", "1/2", "1", "1000"];

fn each<S: Sort>(unit: &str) -> Vec<Worked<S>> {
    NUMBERS.iter().map(|n| q(format!("{n} {unit}").trim())).collect()
}

#[test]
fn no_input_panics() {
    let (celsius, hours, plain, share) = (each("°C"), each::<Duration>("h"), each(""), each("%"));
    let (lb, ft3, density, days) = (each("lb"), each("ft3"), each("lb/ft3"), each("day"));
    let (psi, kelvin, energy, warmth) = (each("psi"), each("K"), each("kJ/mol"), each("°C·h"));
    let mut answers = 0;
    let mut count = |ok: bool| answers += usize::from(ok);
    for a in 0..NUMBERS.len() {
        count(age::age_factor(&days[a], Curve::OneSteam).is_ok());
        count(age::abrams(&plain[a], true).is_ok());
        count(age::strength_by_ratio(&plain[a], &ACI_PLAIN).is_ok());
        count(age::ratio_by_strength(&psi[a], &METRIC_AIR).is_ok());
        count(maturity::activation(&energy[a]).is_ok());
        count(cure::whole_days(&hours[a]).is_ok());
        for b in 0..NUMBERS.len() {
            let steps = [Step { time: hours[a].clone(), temperature: celsius[b].clone() }];
            let day = Day { mean: celsius[a].clone(), least: Some(celsius[b].clone()) };
            count(maturity::cold_age(&steps).is_ok());
            count(maturity::model_code_age(&steps).is_ok());
            count(cure::day_credit(&day.mean, day.least.as_ref()).is_ok());
            count(cure::sheet_cure(&hours[a], &days[b]).is_ok());
            count(open_time::closes_by_table(&[(celsius[a].clone(), hours[b].clone())], &celsius[1]).is_ok());
            count(age::age_beta(&days[a], &plain[b]).is_ok());
            count(age::cement_for_water(&lb[a], &plain[b]).is_ok());
            count(proportion::part_volume(&lb[a], &density[b]).is_ok());
            count(proportion::part_share(&lb[a], &[lb[b].clone()]).is_ok());
            count(moisture::free_water(&lb[a], &share[b]).is_ok());
            count(pigment::cement(&lb[a], &share[b]).is_ok());
            count(pigment::most_pigment(&lb[a], &share[b]).is_ok());
            count(yields::cube_air(&lb[a], &share[b]).is_ok());
            count(yields::measure_volume(&lb[a], &density[b]).is_ok());
            for c in 0..NUMBERS.len() {
                count(maturity::maturity(&steps, &celsius[c]).is_ok());
                count(maturity::equivalent_age(&steps, &kelvin[c], &celsius[a]).is_ok());
                count(cure::calendar_day(&[day.clone(), day.clone()], &days[c], &hours[b]).is_ok());
                count(age::matured_share(&warmth[a], &plain[b], &plain[c]).is_ok());
                count(proportion::part_mass(&plain[a], &ft3[b], &density[c]).is_ok());
                count(proportion::lab_factor(&lb[a], &density[b], &plain[c]).is_ok());
                count(proportion::lab_mass(&plain[a], &density[b], &plain[c]).is_ok());
                count(proportion::by_mass(&lb[a], &plain[b], &plain[c]).is_ok());
                count(proportion::split(&lb[a], &plain[b], &[plain[b].clone(), plain[c].clone()]).is_ok());
                count(proportion::loose_density(&plain[a], &density[b], &share[c]).is_ok());
                count(yard::rule_38(&ft3[a], &plain[b], &plain[c]).is_ok());
                count(yard::sacks(&ft3[a], &density[b], &lb[c]).is_ok());
                count(yard::barrels(&plain[a], &ft3[b], &ft3[c], &share[a]).is_ok());
                count(moisture::water_to_add(&ft3[a], &[lb[b].clone()], &density[c]).is_ok());
                count(pigment::pigment(&lb[a], &share[b], &share[c]).is_ok());
            }
        }
    }
    assert!(answers > 500, "{answers} answers");
}
