//! L6: lath that is not cut at a control joint, by the plan of joints and by what the texts say.

use crate::finding::{Finding, Severity};
use crate::sound::phrase::{Ask, NOT, each_clause};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "lath-through-joint",
    ids: &["L6"],
    severities: &[Severity::Hold],
    title: "lath goes through a control joint",
    manual: include_str!("lath_through_joint.md"),
    twins: &[("es", include_str!("lath_through_joint.es.md"))],
    run,
};

const LATH: &[&str] = &["lath", "mesh", "malla"];
const JOINT: &[&str] = &["joint", "joints", "junta", "juntas"];
/// Going on past a joint.
const THROUGH: &[&str] = &[
    "through",
    "across",
    "continuous",
    "over",
    "past",
    "unbroken",
    "whole",
    "one",
    "pase",
    "pasa",
    "pasando",
    "corrida",
    "continua",
    "atraviese",
    "atraviesa",
    "entera",
    "sigue",
];
/// Cutting it there.
const CUT: &[&str] = &["cut", "cuts", "stop", "stops", "end", "ends", "break", "corte", "corta", "cortada", "pare", "termine", "termina"];

const ASK: Ask<'static> = Ask { all: &[LATH, JOINT, THROUGH], unless: CUT, not: NOT };
const SOURCE: &str = "ASTM C1063 as a maker of joints prints its rules, neighbor rule of flat plaster (not verified against a copy)";
const HELP: &str = "cut the lath at the joint, tie the joint's flanges to both edges, and write";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for site in &ground.job.sites {
        for plan in site.joints.iter().filter(|p| p.lath.text == "through") {
            let code = &plan.surface.text;
            let joints = |n: &crate::quantity::Node| crate::sound::told::number(n, "");
            let title = format!(
                "lath goes through the joints of {code}, {} upright and {} level: none of them can open",
                joints(plan.upright.node()),
                joints(plan.level.node())
            );
            found.push(
                Finding::new(CHECK.name, Severity::Hold, title)
                    .at(plan.lath.at, "lath is not cut")
                    .related(plan.surface.at, "joints of this surface")
                    .source(SOURCE)
                    .help(format!("{HELP} `lath: cut`"))
                    .about(code.clone())
                    .figure(format!("{}/{code}.joints", site.id)),
            );
        }
    }
    found.extend(each_clause(ground, &ASK, |_, word, at| {
        Finding::new(CHECK.name, Severity::Hold, format!("the text takes `{word}` on through a joint, there it is cut"))
            .at(at, "goes through a joint")
            .source(SOURCE)
            .help(format!("{HELP} that it is cut there"))
    }));
    found
}
