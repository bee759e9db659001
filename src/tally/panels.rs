//! What a panel on record measured: its mean, its fill and how well a grid of so many points knows them.

use crate::job::{Job, Panel, Site, Texture};
use crate::quantity::expr::Length;
use crate::quantity::{Dim, Kind, Node, Num, Quantity, Worked};
use crate::trade::relief::{Grid, depth_grid};

use super::{Basis, Role, Tally};

/// Works them for the panels of a site.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site) {
    for panel in of(job, site) {
        let Some(texture) = site.textures.iter().find(|x| x.name.text == panel.texture.text) else { continue };
        let id = |name: &str| format!("{}/{}.{name}", site.id, panel.id);
        let grid = grid(panel, texture);
        let length = |of: fn(&Grid) -> &Worked<Length>| grid.as_ref().map(|g| of(g).clone()).map_err(ToString::to_string);
        t.put(id("mean"), "figure.panel_mean", Role::MeanThickness, Basis::Geometry, length(|g| &g.mean));
        t.put(id("deviation"), "figure.panel_deviation", Role::MeanThickness, Basis::Geometry, length(|g| &g.deviation));
        if texture.least.is_some() {
            let share = |of: fn(&Grid) -> Worked<_>| grid.as_ref().map(of).map_err(ToString::to_string);
            t.put(id("fill"), "figure.panel_fill", Role::Measured, Basis::Geometry, share(|g| g.fill.clone()));
            t.put(id("fill_error"), "figure.panel_fill_error", Role::Uncertainty, Basis::Geometry, share(|g| g.fill_error.clone()));
        }
    }
}

/// The panels on record of a site.
pub fn of<'a>(job: &'a Job, site: &Site) -> impl Iterator<Item = &'a Panel> {
    job.panels.iter().filter(|p| p.site.text == site.code.text)
}

/// What the grid of a panel says of its texture. A texture that states no least has no fill, and its grid counts from
/// nothing.
///
/// # Errors
/// Why the formula refuses the depths.
pub fn grid(panel: &Panel, texture: &Texture) -> Result<Grid, crate::trade::OutOfRange> {
    let from: Worked<Length> = match &texture.least {
        Some(least) => least.clone(),
        None => {
            let none = Quantity { si: Num::int(0), dim: Dim::LENGTH, kind: Kind::Plain };
            Worked::new(Node::constant(none, texture.most.node().unit(), "t_min", "the texture states no least"))
        }
    };
    depth_grid(&panel.depths, &from, &texture.most)
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use crate::source::Folder;
    use crate::tally::{Ask, Tally, Voice};
    use crate::words::EN;

    /// The grid of twelve that the formulas are tested with, and a texture of planks.
    #[test]
    fn panels_of_the_demo() {
        let folder = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let (job, _) = crate::read::job(&folder);
        let tally = Tally::of(&job);
        let say = |id: &str| tally.say(id, Ask::Own, Voice { lang: EN, metric: false }).unwrap().text.replace('\u{a0}', " ");
        let rubble = |name: &str| say(&format!("larkenfell/lf-panel-rubble.{name}"));
        assert_eq!([rubble("mean"), rubble("deviation"), rubble("fill")], ["1.21 in", "0.44 in", "60.6 %"]);
        assert_eq!(say("brack-ferry/bf-panel-plank.fill"), "77.8 %");
        assert!(tally.figure("sedge-basin/lf-panel-rubble.fill").is_none());
    }
}
