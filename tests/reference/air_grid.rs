//! Our pressures and dew points over a grid, for a property library to judge from outside.

use std::fmt::Write as _;
use std::path::Path;

use hodbook::quantity::expr::{Share, Temperature};
use hodbook::trade::dew_point::{dew_point, magnus_dew_point};
use hodbook::trade::vapour::saturation;

use crate::run::q;

/// 0 to 50 °C by whole degrees, 5 to 100 % by fives, both scales; read by the outside check of the same name.
#[test]
fn the_grid_is_written() {
    let mut text = String::from("celsius,humidity,saturation_kpa,saturation_psi,dew_f,magnus_dew_f\n");
    for celsius in 0..=50 {
        let t = q::<Temperature>(&format!("{celsius} °C"));
        let f = q::<Temperature>(&format!("{:.1} °F", f64::from(celsius) * 1.8 + 32.0));
        let (si, us) = (saturation(&t).unwrap().in_unit("kPa"), saturation(&f).unwrap().in_unit("psi"));
        for humidity in (5..=100).step_by(5) {
            let rh = q::<Share>(&format!("{humidity} %"));
            let (dew, by_magnus) = (dew_point(&f, &rh).unwrap().in_unit("°F"), magnus_dew_point(&t, &rh).unwrap().in_unit("°F"));
            writeln!(text, "{celsius},{humidity},{si:.7},{us:.7},{dew:.5},{by_magnus:.5}").unwrap();
        }
    }
    assert_eq!(text.lines().count(), 1 + 51 * 20);
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target").join("outside");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join("air.csv"), text).unwrap();
}
