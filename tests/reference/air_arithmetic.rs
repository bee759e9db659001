//! The formulas of air and mix temperature once each, scales mixed, and no input that panics.

use hodbook::quantity::expr::{Sort, Worked};
use hodbook::trade::evaporation::{Air, curing_guide, evaporation, menzel_si, menzel_us, uno_si, uno_us};
use hodbook::trade::mix_temperature::{Batch, Dry, melting, mix_temperature};
use hodbook::trade::{dew_point, drying_limits, mix_targets, vapour};

use crate::derivations::Seen;
use crate::run::q;

fn batch(mass: &str, t: &str, moisture: &str, water: &str, work: &str) -> Batch {
    let sand = Dry { name: "sand", mass: q(mass), temperature: q(t), moisture: Some(q(moisture)) };
    let bags = Dry { name: "bags", mass: q("80 lb"), temperature: q("30 °C"), moisture: None };
    Batch { dry: vec![sand, bags], water: q(water), work: Some(q(work)) }
}

/// Every formula of the four files.
pub fn all(seen: &mut Seen) {
    seen.add(&vapour::saturation(&q("-40 °F")).unwrap());
    seen.add(&vapour::saturation(&q("-12.5 °C")).unwrap());
    seen.add(&vapour::magnus(&q("71 °F")).unwrap());
    seen.add(&vapour::tetens(&q("71 °F")).unwrap());
    for (t, rh) in [("72 °F", "45 %"), ("72 °F", "5 %"), ("22.5 °C", "45 %"), ("-10 °C", "80 %"), ("32 °F", "100 %"), ("90 °F", "100 %")]
    {
        seen.add(&dew_point::dew_point(&q(t), &q(rh)).unwrap());
        seen.add(&dew_point::magnus_dew_point(&q(t), &q(rh)).unwrap());
    }
    for (mortar, air, wind) in [("88 °F", "92 °F", "11 mph"), ("31 °C", "80 °F", "5 m/s"), ("80.5 °F", "24.3 °C", "9 km/h")] {
        let at = Air { mortar: q(mortar), air: q(air), humidity: q("24 %"), wind: q(wind) };
        for form in [evaporation, uno_si, uno_us, menzel_us, menzel_si, curing_guide] {
            seen.add(&form(&at).unwrap());
        }
        let shown = drying_limits::printed_rate(&evaporation(&at).unwrap()).unwrap();
        seen.add(&shown);
        seen.add(&drying_limits::wind_for_rate(&shown, &at.mortar, &at.air, &at.humidity).unwrap().unwrap());
        seen.add(&drying_limits::humidity_for_rate(&shown, &at.mortar, &at.air, &at.wind).unwrap());
        seen.add(&drying_limits::menzel_humidity_for_rate(&shown, &at.mortar, &at.air, &at.wind).unwrap());
    }
    seen.add(&melting().unwrap());
    let mixes = [batch("240 lb", "95 °F", "12 lb", "20 kg", "2 °F"), batch("100 kg", "36.5 °C", "1 kg", "41 lb", "1 °C")];
    for mix in mixes {
        for water in ["70 °F", "20 °C"] {
            seen.add(&mix_temperature(&mix, &q(water), None).unwrap());
            seen.add(&mix_temperature(&mix, &q(water), Some(&q("3 lb"))).unwrap());
            seen.add(&mix_targets::ice_for(&mix, &q(water), &q("78 °F")).unwrap());
            seen.add(&mix_targets::ice_for(&mix, &q(water), &q("25 °C")).unwrap());
        }
        seen.add(&mix_targets::water_temperature(&mix, &q("85 °F"), &q("0 °C"), &q("60 °C")).unwrap());
        seen.add(&mix_targets::water_temperature(&mix, &q("30 °C"), &q("32 °F"), &q("140 °F")).unwrap());
        let share = mix_targets::water_share(&mix).unwrap();
        seen.add(&mix_targets::moves(&share, &q("10 °F")).unwrap());
        seen.add(&mix_targets::dry_share(&mix, "sand").unwrap());
    }
}

fn each<S: Sort>(numbers: &[&str], unit: &str) -> Vec<Worked<S>> {
    numbers.iter().map(|n| q(&format!("{n} {unit}"))).collect()
}

#[test]
fn no_weather_panics() {
    let readings = each(&["-459.67", "-40", "-0.4", "0", "32", "33", "71", "140", "500"], "°F");
    let humidities = each(&["-1", "0", "0.001", "1", "50", "100", "101"], "%");
    let winds = each(&["-1", "0", "0.001", "7", "1000"], "mph");
    let rates = each(&["-1", "0", "0.0001", "0.2", "50"], "lb/ft2/h");
    let masses = each(&["-1", "0", "0.001", "12", "1000"], "lb");
    let mut answers = 0;
    let mut count = |ok: bool| answers += usize::from(ok);
    for t in &readings {
        for rh in &humidities {
            count(dew_point::dew_point(t, rh).is_ok());
            count(dew_point::magnus_dew_point(t, rh).is_ok());
        }
        for air in &readings {
            for rh in &humidities {
                for wind in &winds {
                    let at = Air { mortar: t.clone(), air: air.clone(), humidity: rh.clone(), wind: wind.clone() };
                    for form in [evaporation, uno_us, menzel_us, menzel_si, curing_guide] {
                        count(form(&at).is_ok());
                    }
                }
                for rate in &rates {
                    count(drying_limits::wind_for_rate(rate, t, air, rh).is_ok());
                }
            }
            for (rate, wind) in rates.iter().zip(&winds) {
                count(drying_limits::humidity_for_rate(rate, t, air, wind).is_ok());
                count(drying_limits::menzel_humidity_for_rate(rate, t, air, wind).is_ok());
            }
            for mass in &masses {
                for water in &masses {
                    let dry = vec![Dry { name: "bags", mass: mass.clone(), temperature: t.clone(), moisture: None }];
                    let mix = Batch { dry, water: water.clone(), work: None };
                    count(mix_temperature(&mix, air, Some(mass)).is_ok());
                    count(mix_targets::ice_for(&mix, air, t).is_ok());
                    count(mix_targets::water_temperature(&mix, air, t, air).is_ok());
                    count(mix_targets::water_share(&mix).is_ok());
                }
            }
        }
    }
    assert!(answers > 3000, "{answers} answers");
}
