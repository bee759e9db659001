//! Sunrise and sunset over a grid of places and days, written where the outside check looks for them.

use std::fmt::Write as _;
use std::path::Path;

use hodbook::quantity::expr::Node;
use hodbook::trade::sun::{Spot, day_number, sunrise, sunset};
use hodbook::trade::sun_face::sun_on_face;

use crate::run::q;

fn spot(latitude: i32, longitude: i32, zone: i32) -> Spot {
    Spot { latitude: q(&format!("{latitude} °")), longitude: q(&format!("{longitude} °")), zone: q(&format!("{zone} min")) }
}

/// Results that print every formula of the sun.
pub fn nodes() -> Vec<Node> {
    let (day, spot) = (day_number(2026, 6, 11).unwrap(), spot(41, -96, -300));
    let mut all = vec![sunrise(&day, &spot).unwrap().node().clone(), sunset(&day, &spot).unwrap().node().clone()];
    for azimuth in ["15 °", "200 °", "270 °"] {
        let spells = sun_on_face(&day, &spot, &q(azimuth)).unwrap();
        all.extend(spells.iter().flat_map(|(from, to)| [from.node().clone(), to.node().clone()]));
    }
    all
}

#[test]
fn the_grid_of_the_outside_check() {
    let mut csv = "latitude,longitude,zone_min,date,sunrise_min,sunset_min\n".to_owned();
    let mut rows = 0;
    for latitude in (-50..=60).step_by(10) {
        for (longitude, zone) in [(-96, -360), (13, 60), (172, 720)] {
            for month in 1..=12 {
                let (d, spot) = (1 + (month * 7) % 28, spot(latitude, longitude, zone));
                let day = day_number(2026, month, d).unwrap();
                let (rise, set) = (sunrise(&day, &spot).unwrap(), sunset(&day, &spot).unwrap());
                let (rise, set) = (rise.in_unit("min"), set.in_unit("min"));
                assert!(rise < set && rise.fract() == 0.0 && set.fract() == 0.0);
                writeln!(csv, "{latitude},{longitude},{zone},2026-{month:02}-{d:02},{rise},{set}").unwrap();
                rows += 1;
            }
        }
    }
    assert_eq!(rows, 12 * 3 * 12);
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/outside");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join("sun.csv"), csv).unwrap();
}
