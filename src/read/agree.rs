//! Keys of a site that must agree with one another: coats, textures, the rule for openings.

use crate::finding::{Finding, Severity};
use crate::job::Text;
use crate::quantity::expr::Length;
use crate::source::Span;

use super::group::Group;

fn stop(name: &'static str, title: String, at: Span, label: &str, help: &str) -> Finding {
    Finding::new(name, Severity::Stop, title).at(at, label).help(help)
}

/// Checks a site.
pub(super) fn check(g: &Group, out: &mut Vec<Finding>) {
    coats(g, out);
    g.map("textures").iter().for_each(|(name, t)| texture(name, t, out));
    if g.says("opening_rule", "IS 1200-12") {
        let openings = g.map("surfaces").iter().flat_map(|(_, s)| s.map("openings"));
        for (code, opening) in openings.filter(|(_, o)| o.lacks("reveal")) {
            let title = format!("`reveal` is missing from opening `{}`, the rule `IS 1200-12` goes by it", code.text);
            let help = "add `reveal: narrower`, `equal` or `wider`: this face's reveal against that of the wall's other face";
            out.push(stop("missing-key", title, opening.at, "here", help));
        }
    }
}

/// A surface that is not carved straight on the base needs a scratch coat and a mix for it.
fn coats(g: &Group, out: &mut Vec<Finding>) {
    let Some(base) = g.group("base") else { return };
    let direct = base.yes("direct");
    let mut coated: Option<&Text> = None;
    for (code, surface) in g.map("surfaces") {
        let own = surface.group("scratch");
        if surface.said("direct").unwrap_or(direct) {
            if let Some(own) = own {
                let title = format!("`{}` is carved straight on the base, it has no scratch coat", code.text);
                out.push(stop("keys-disagree", title, own.at, "this says how its scratch coat is", "take one of them out"));
            }
            continue;
        }
        coated = coated.or(Some(code));
        let whole = own.is_some_and(|o| ["thickness", "key", "waste"].iter().all(|key| !o.lacks(key)));
        if g.lacks("scratch") && !whole && !surface.faulty.contains(&"scratch") {
            let title = format!("`scratch` is missing: `{}` has a scratch coat that nothing describes", code.text);
            let help =
                "add `scratch: {thickness: 1/2 in, key: 1/8 in, waste: {drop: 5 %}}` to the site, or say `direct: yes` where there is none";
            out.push(stop("missing-key", title, code.at, "this surface", help));
        }
    }
    if let (Some(code), Some(mixes)) = (coated, g.group("mixes"))
        && mixes.lacks("scratch")
    {
        let title = format!("`scratch` is missing from `mixes`: `{}` has a scratch coat", code.text);
        let help = "name the mix of it, such as `scratch: SCRATCH-15`, or say `direct: yes` in `base` where there is no scratch coat";
        out.push(stop("missing-key", title, mixes.at, "here", help));
    }
}

/// Either least, most and fill, or mean and most; each in its order.
fn texture(name: &Text, t: &Group, out: &mut Vec<Finding>) {
    let get = |key: &str| t.worked::<Length>(key);
    if !t.lacks("mean") {
        if !t.lacks("fill") {
            let title = format!("texture `{}` states its mean and a fill that would give another", name.text);
            out.push(stop("keys-disagree", title, name.at, "", "keep `mean`, or `least` and `fill`"));
        }
    } else if t.lacks("least") || t.lacks("fill") {
        let title = format!("texture `{}` does not say how thick it is in the mean", name.text);
        let help = "add `least: 3/8 in` and `fill: 62 %`, or `mean: 1 1/4 in` as measured on the panel";
        out.push(stop("missing-key", title, name.at, "here", help));
    }
    for (low, high) in [("least", "mean"), ("mean", "most"), ("least", "most")] {
        if let (Some(a), Some(b)) = (get(low), get(high))
            && a.value().si.compare(&b.value().si).is_gt()
        {
            let title = format!("texture `{}` is thicker at its `{low}` than at its `{high}`", name.text);
            out.push(stop("keys-disagree", title, name.at, "", "write the thicknesses in order: least, mean, most"));
            return;
        }
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use crate::source::Folder;

    /// T6 of the trade's list, as far as reading finds it: the checks see only textures in order.
    #[test]
    fn a_texture_out_of_order_is_refused() {
        let demo = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        for (site, from, to, name) in [
            ("larkenfell", "log: {least: 3/8 in", "log: {least: 1 1/8 in", "keys-disagree"),
            ("sedge-basin", "flat-worn: {mean: 22 mm", "flat-worn: {mean: 31 mm", "keys-disagree"),
            ("sedge-basin", "flat-worn: {mean: 22 mm", "flat-worn: {least: 23 mm, mean: 22 mm", "keys-disagree"),
            ("larkenfell", "fill: 60 %", "fill: 120 %", "value-out-of-range"),
            ("larkenfell", "fill: 60 %", "fill: -5 %", "value-out-of-range"),
        ] {
            let path = format!("sites/{site}.md");
            let text = &demo.at(&path).unwrap().text;
            assert_eq!(text.matches(from).count(), 1, "{from}");
            let (job, findings) = crate::read::job(&demo.with_text(&path, &text.replace(from, to)));
            assert!(findings.iter().any(|f| f.name == name), "{to}: {findings:?}");
            assert!(job.sites.len() < 3 || name == "keys-disagree", "{to}: nothing is worked from such a fill");
        }
    }
}
