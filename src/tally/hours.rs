//! The hours of a day as the mud feels them: how warm the mix is, how fast it dries, how long it stays open.

use crate::job::{DayGoal, Job, Mix, Site, Weather, weather};
use crate::quantity::expr::{CarveTime, Clock, Drying, Node, OpenTime, Temperature, Worked};
use crate::quantity::show;
use crate::quantity::units::find_expr;
use crate::quantity::{Dim, Kind, Num, Quantity};
use crate::trade::day::{Hour, Times};
use crate::trade::evaporation::{Air, evaporation};
use crate::trade::mix_temperature::{Batch, Dry, mix_temperature};
use crate::trade::open_time;
use crate::words::EN;

use super::{Basis, Res, Role, Tally, Voice, nights, res};

/// Where a day's temperatures come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sky {
    /// Hour by hour, from the site's weather file.
    Hours,
    /// A typical year's hours: no forecast.
    Typical,
    /// The band of the planned work: its hot end for what closes, its cold end for what opens.
    Band,
}

/// The hours of a day with the mix's times in each, and the prefix of each hour's figures.
pub(super) fn of_day(t: &mut Tally, job: &Job, site: &Site, goal: &DayGoal, mix: &Mix, prefix: &str) -> (Sky, Vec<(String, Hour)>) {
    let date = weather::Date { year: goal.day.year, month: goal.day.month, day: goal.day.day };
    let file: Option<&Weather> = job.weather.iter().find(|w| w.site == site.id);
    let hours = file.map(|w| w.day(date)).unwrap_or_default();
    if hours.is_empty() {
        return (Sky::Band, vec![(format!("{prefix}/band"), band(site, mix))]);
    }
    let cold = cold_night(job, site, date);
    let sky = if file.is_some_and(|w| w.typical) { Sky::Typical } else { Sky::Hours };
    let worked = hours.iter().map(|h| {
        let own = format!("{prefix}/{}", clock_name(&h.at));
        let hour = of_hour(t, site, mix, h, &own, cold.as_deref());
        (own, hour)
    });
    (sky, worked.collect())
}

/// Why nothing is placed on a day whatever its hours are: the night after it.
pub(super) fn cold_night(job: &Job, site: &Site, date: weather::Date) -> Option<String> {
    let file = job.weather.iter().find(|w| w.site == site.id)?;
    nights::cold_ahead(site, file, date).map(|low| low.said(site.metric))
}

fn clock_name(at: &Worked<Clock>) -> String {
    let minutes = at.in_unit("min") as i64;
    format!("{:02}_{:02}", minutes / 60, minutes % 60)
}

/// One hour all day: whoever has no forecast plans with the worst of the band.
pub(super) fn band(site: &Site, mix: &Mix) -> Hour {
    let midnight = Quantity { si: Num::int(0), dim: Dim::TIME, kind: Kind::Clock };
    let from = Worked::new(Node::constant(midnight, find_expr("min"), "midnight", "the band of the planned work, all day"));
    let (cold, hot) = (&site.climate.band.0, &site.climate.band.1);
    Hour { from, times: times(mix, cold, hot) }
}

/// Open time at a temperature: the sheet's own table wins over the rule of thumb.
pub(super) fn open_at(mix: &Mix, at: &Worked<Temperature>) -> Res<OpenTime> {
    match table(mix, |r| Some(r.open.clone())) {
        Some(rows) => res(open_time::closes_by_table::<OpenTime>(&rows, at)),
        None => res(open_time::open_time(&mix.open_time.0, &mix.open_time.1, at)),
    }
}

/// The mix's times: what closes at the hotter, what opens at the colder temperature.
fn times(mix: &Mix, cold: &Worked<Temperature>, hot: &Worked<Temperature>) -> Result<Times, String> {
    let none = || format!("{} states no carve window", mix.name.text);
    let opens = opens_at(mix, cold).ok_or_else(none)?;
    let closes = closes_at(mix, hot).ok_or_else(none)?;
    Ok(Times { open: open_at(mix, hot)?, opens: opens?, closes: closes? })
}

/// When the wall can be carved from, at a temperature; `None` for a mix that is not carved.
fn opens_at(mix: &Mix, at: &Worked<Temperature>) -> Option<Res<CarveTime>> {
    let window = mix.carve_window.as_ref()?;
    Some(res(match table(mix, |r| r.opens.clone()) {
        Some(rows) => open_time::opens_by_table::<CarveTime>(&rows, at),
        None => open_time::carve_time(&window.opens, &window.at, at),
    }))
}

/// When the wall can be carved no more; as [`opens_at`].
fn closes_at(mix: &Mix, at: &Worked<Temperature>) -> Option<Res<CarveTime>> {
    let window = mix.carve_window.as_ref()?;
    Some(res(match table(mix, |r| r.closes.clone()) {
        Some(rows) => open_time::closes_by_table::<CarveTime>(&rows, at),
        None => open_time::carve_time(&window.closes, &window.at, at),
    }))
}

/// A mix's times at one temperature, each by the sheet's own table or by the rule of thumb; what cannot be said says why.
#[derive(Debug)]
pub struct AtTemperature {
    /// Open time.
    pub open: Result<Worked<OpenTime>, String>,
    /// Opening and closing of the carve window; `None` for a mix that is not carved.
    pub carve: Option<[Result<Worked<CarveTime>, String>; 2]>,
}

/// The times of a mix at a temperature of the mix.
pub fn at_temperature(mix: &Mix, at: &Worked<Temperature>) -> AtTemperature {
    let carve = opens_at(mix, at).zip(closes_at(mix, at)).map(|(opens, closes)| [opens, closes]);
    AtTemperature { open: open_at(mix, at), carve }
}

/// The sheet's own table of one time, if every row of it states that time.
fn table<S>(mix: &Mix, of: impl Fn(&crate::job::TimesAt) -> Option<Worked<S>>) -> Option<Vec<(Worked<Temperature>, Worked<S>)>> {
    if mix.times.is_empty() {
        return None;
    }
    mix.times.iter().map(|row| Some((row.at.clone(), of(row)?))).collect()
}

/// Most evaporation on a fresh wall before precautions are called for: the drying of a wet slab laid flat, used as an index.
fn most_drying() -> Worked<Drying> {
    let unit = find_expr("lb/ft2/h");
    let value = unit.map_or_else(|| Quantity::plain(Num::int(0)), |u| Quantity::of(&Num::frac(1, 5), u));
    Worked::new(Node::constant(value, unit, "E_limit", "ACI 305R, second-hand: take precautions as 0.2 lb/ft2/h is approached"))
}

/// Air at or below which nothing is placed.
const COLD_F: i64 = 40;

fn of_hour(t: &mut Tally, site: &Site, mix: &Mix, hour: &weather::Hour, prefix: &str, cold: Option<&str>) -> Hour {
    let id = |name: &str| format!("{prefix}.{name}");
    t.own(id("air"), "figure.air_temperature", Role::Reading, Basis::Author, &hour.air);
    t.own(id("humidity"), "figure.humidity", Role::Humidity, Basis::Author, &hour.humidity);
    t.own(id("wind"), "figure.wind", Role::Wind, Basis::Author, &hour.wind);
    t.own(id("from"), "figure.hour", Role::Clock, Basis::Author, &hour.at);
    let mud = mix_at(t, mix, hour);
    t.put(id("mix"), "figure.mix_temperature", Role::MixTemperature, Basis::Neighbour, mud);
    let drying: Res<Drying> = (|| {
        let mortar = t.get(&id("mix"))?;
        drying_at(hour, mortar)
    })();
    t.put(id("drying"), "figure.drying", Role::Drying, Basis::Neighbour, drying);
    let times = (|| {
        let mortar: Worked<Temperature> = t.get(&id("mix"))?;
        if let Some(cold) = cold {
            return Err(cold.to_owned());
        }
        let rate = t.get::<Drying>(&id("drying")).ok();
        forbidden(t, site, hour, rate.as_ref().map(Worked::value))?;
        times(mix, &mortar, &mortar)
    })();
    let (open, opens, closes) = match &times {
        Ok(w) => (Ok(w.open.clone()), Ok(w.opens.clone()), Ok(w.closes.clone())),
        Err(why) => (Err(why.clone()), Err(why.clone()), Err(why.clone())),
    };
    t.put(id("open"), "figure.open_time", Role::OpenTime, Basis::Practice, open);
    t.put(id("opens"), "figure.opens_after", Role::Takes, Basis::Practice, opens);
    t.put(id("closes"), "figure.closes_after", Role::OpenTime, Basis::Practice, closes);
    Hour { from: hour.at.clone(), times }
}

/// The mix as measured, or worked from bags and water, or as warm as the air where neither is known.
///
/// # Errors
/// Why the formula refuses what was read.
pub fn mix_at(t: &Tally, mix: &Mix, hour: &weather::Hour) -> Result<Worked<Temperature>, String> {
    if let Some(measured) = &hour.mix {
        return Ok(measured.clone());
    }
    let (Some(bags), Some(water)) = (&hour.bags, &hour.water) else { return Ok(hour.air.clone()) };
    res(mix_temperature(&load(t, mix, bags)?, water, None))
}

/// A load of a mix with its bags at a temperature, and its start water.
///
/// # Errors
/// Why the weight of the load could not be worked.
pub fn load(t: &Tally, mix: &Mix, bags: &Worked<Temperature>) -> Result<Batch, String> {
    let dry = t.get(&format!("{}.dry_weight", mix.id))?;
    Ok(Batch {
        dry: vec![Dry { name: "bags", mass: dry, temperature: bags.clone(), moisture: None }],
        water: t.get(&format!("{}.start_water_weight", mix.id))?,
        work: None,
    })
}

/// Evaporation from mud of a temperature in an hour, by the air at the wall where somebody read it there.
///
/// # Errors
/// Why the formula refuses what was read.
pub fn drying_at(hour: &weather::Hour, mortar: Worked<Temperature>) -> Result<Worked<Drying>, String> {
    let (air, humidity, wind) = hour.at_wall();
    res(evaporation(&Air { mortar, air: air.clone(), humidity: humidity.clone(), wind: wind.clone() }))
}

/// An hour in plain numbers: air and mud in °F, drying in lb/ft2/h, by the formulas of [`mix_at`] and [`drying_at`].
///
/// A season has hundreds of hours and nearly all are fine: this tells which are worth working exactly. `weights` are
/// those of a load's dry mix and of its start water, of any one unit.
pub fn first_look(hour: &weather::Hour, weights: Option<(f64, f64)>) -> [f64; 3] {
    let si = |q: &Quantity| q.si.to_f64();
    let kelvin = match (&hour.mix, &hour.bags, &hour.water, weights) {
        (Some(mix), ..) => si(mix.value()),
        (None, Some(bags), Some(water), Some((dry, wet))) => {
            let dry = 0.22 * dry;
            (dry * si(bags.value()) + wet * si(water.value())) / (dry + wet)
        }
        _ => si(hour.air.value()),
    };
    let (air, humidity, wind) = hour.at_wall();
    let base = |k: f64| libm::pow((k - 273.15 + 18.0).max(0.0), 2.5);
    let rate = 5e-6 * (base(kelvin) - si(humidity.value()) * base(si(air.value()))) * (si(wind.value()) * 3.6 + 4.0);
    let fahrenheit = |k: f64| k * 1.8 - 459.67;
    [fahrenheit(si(hour.air.value())), fahrenheit(kelvin), rate * 0.204_816]
}

/// The mix's times in an hour of weather, without the figures that a day's sheet prints of it.
pub(super) fn times_in(t: &Tally, site: &Site, mix: &Mix, hour: &weather::Hour) -> Result<Times, String> {
    let mortar = mix_at(t, mix, hour)?;
    let rate: Res<Drying> = drying_at(hour, mortar.clone());
    forbidden(t, site, hour, rate.as_ref().ok().map(Worked::value))?;
    times(mix, &mortar, &mortar)
}

/// Why nothing may be placed in this hour, by the printed values: what stands ready against the weather may allow it.
fn forbidden(t: &Tally, site: &Site, hour: &weather::Hour, drying: Option<&Quantity>) -> Result<(), String> {
    let printed = |role, value, metric| {
        let (number, unit, text) = t.print_of(role, value, Voice { lang: EN, metric });
        Some((number, unit?, text.replace(show::JOIN, " ")))
    };
    let plan = site.protection.as_ref();
    // What was read at the wall was read behind the screens and in the fog.
    let fogged = plan.is_some_and(crate::job::Protection::screens_and_fog) && !hour.read_at_wall();
    let limit = most_drying();
    if let Some((rate, unit, text)) = drying.and_then(|rate| printed(Role::Drying, rate, site.metric)).filter(|_| !fogged)
        && limit.value().si.compare(&Quantity::of(&Num::Exact(rate), unit).si).is_le()
    {
        let most = if site.metric { "0.976 kg/m²·h" } else { "0.20 lb/ft²·h" };
        return Err(format!("evaporation {text} reaches {most}: screens and fog, shade on the bags, or wait"));
    }
    if let Some((reading, ..)) = printed(Role::Reading, hour.air.value(), false)
        && reading <= num_rational::BigRational::from_integer(COLD_F.into())
        && !plan.is_some_and(crate::job::Protection::warms)
    {
        return Err(format!("air {} °F is not above {COLD_F} °F: nothing is placed", crate::quantity::num::exact_text(&reading)));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::Folder;

    /// Every hour of the demo: the plain numbers are those of the formulas.
    #[test]
    fn a_first_look_sees_what_the_formulas_say() {
        let folder = Folder::open(&std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let job = crate::read::job(&folder).0;
        let tally = Tally::of(&job);
        let mut seen = 0;
        for site in &job.sites {
            let mix = crate::tally::mix_of(&job, &site.carve_mix.text).unwrap();
            let weight = |name: &str| tally.figure(&format!("{}.{name}", mix.id)).unwrap().worked.as_ref().unwrap().value().si.to_f64();
            let weights = Some((weight("dry_weight"), weight("start_water_weight")));
            for (_, hour) in job.weather.iter().filter(|w| w.site == site.id).flat_map(|w| &w.hours) {
                let mud = mix_at(&tally, mix, hour).unwrap();
                let exact = [hour.air.in_unit("°F"), mud.in_unit("°F"), drying_at(hour, mud).unwrap().in_unit("lb/ft2/h")];
                for (quick, exact) in first_look(hour, weights).into_iter().zip(exact) {
                    assert!((quick - exact).abs() < 1e-4 * exact.abs().max(1.0), "{quick} is not {exact}");
                }
                seen += 1;
            }
        }
        assert!(seen > 100);
    }
}
