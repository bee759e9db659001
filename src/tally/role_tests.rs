//! Every rounding role against the side that is safe for it, told here once more from what the value is for.

use super::role::Role;
use super::{House, Tally};
use crate::job::Job;
use crate::quantity::num::Direction;
use crate::quantity::{Num, Quantity};

/// The way that fails safe, by what somebody does with the number. A new role does not compile until it is here.
fn safe(role: Role) -> Direction {
    use Direction::{Down, Nearest, Up};
    match role {
        // Most of something that is put in, put on, carried, allowed or left: less is safe.
        Role::StartWater | Role::Step | Role::Limit | Role::WaterMass | Role::MostLoads | Role::MostThickness => Down,
        Role::Yield | Role::Capacity | Role::WallAllowance | Role::Rating | Role::Allowed | Role::HandLift => Down,
        Role::PlaceBy | Role::OpenTime | Role::Slack | Role::Pace | Role::AreaAllowed | Role::CountAllowed => Down,
        Role::StrengthClass | Role::PanelLength | Role::CreditDays | Role::PigmentAllowed => Down,
        // Freezing looks at the lowest reading, and a late minute is late.
        Role::DayReading | Role::Clock => Down,
        // Least of something, a load on somebody, a purchase, a wait: more is safe.
        Role::LeastWater | Role::LeastThickness | Role::MixMinutes | Role::WetCure | Role::Recoat | Role::NotBefore | Role::Date => Up,
        Role::Loads | Role::Bags | Role::BagsInSteps | Role::OrderArea | Role::FinishVolume | Role::SiteWater => Up,
        Role::BatchVolume | Role::Weight | Role::WallWeight | Role::FloorWeight | Role::LiftIndex => Up,
        Role::Takes | Role::Hours | Role::Count | Role::Drying | Role::Wind | Role::MixTemperature | Role::Uncertainty => Up,
        Role::WaterIndex => Up,
        // Measures and shares that nobody fails by: as near as can be.
        Role::BagMass | Role::MeanThickness | Role::WallLength | Role::Area | Role::Volume | Role::Density | Role::Reading => Nearest,
        Role::Share | Role::Ratio | Role::Humidity | Role::Money | Role::PriceOfArea | Role::Wage | Role::Pigment | Role::Measured => {
            Nearest
        }
    }
}

const ALL: &[Role] = &[
    Role::StartWater,
    Role::LeastWater,
    Role::Step,
    Role::Limit,
    Role::WaterMass,
    Role::Loads,
    Role::Bags,
    Role::BagsInSteps,
    Role::MostLoads,
    Role::BagMass,
    Role::MostThickness,
    Role::LeastThickness,
    Role::MeanThickness,
    Role::WallLength,
    Role::Area,
    Role::OrderArea,
    Role::Volume,
    Role::Yield,
    Role::Capacity,
    Role::BatchVolume,
    Role::Weight,
    Role::WallWeight,
    Role::WallAllowance,
    Role::Rating,
    Role::Density,
    Role::PlaceBy,
    Role::MixMinutes,
    Role::OpenTime,
    Role::WetCure,
    Role::Recoat,
    Role::Reading,
    Role::StrengthClass,
    Role::Share,
    Role::Ratio,
    Role::Count,
    Role::CountAllowed,
    Role::Clock,
    Role::Slack,
    Role::Takes,
    Role::Hours,
    Role::Pace,
    Role::Money,
    Role::PriceOfArea,
    Role::Wage,
    Role::Drying,
    Role::Wind,
    Role::Humidity,
    Role::MixTemperature,
    Role::FloorWeight,
    Role::Allowed,
    Role::HandLift,
    Role::LiftIndex,
    Role::FinishVolume,
    Role::SiteWater,
    Role::PanelLength,
    Role::Uncertainty,
    Role::Measured,
    Role::AreaAllowed,
    Role::CreditDays,
    Role::Pigment,
    Role::PigmentAllowed,
    Role::WaterIndex,
    Role::DayReading,
    Role::Date,
    Role::NotBefore,
];

/// D12: no printed value lies on the unsafe side of what was worked, in either unit system.
#[test]
fn every_role_rounds_to_its_safe_side() {
    let tally = Tally::of(&Job::default());
    let house: House = tally.house();
    for role in ALL {
        for metric in [false, true] {
            let rule = role.rule(metric, house);
            assert_eq!(rule.direction, safe(*role), "{role:?}, metric {metric}");
            // Numbers that stand on no mark of any measure we print, below and above one.
            for exact in [Num::frac(1_234_567, 1_000_003), Num::frac(98_765, 1_009), Num::frac(7, 1_000_003)] {
                let value = rule.unit.map_or_else(|| Quantity::plain(exact.clone()), |unit| Quantity::of(&exact, unit));
                // Water under the smallest mark is printed in smaller units, and still not up.
                let rule = tally.rule(*role, &value, metric);
                let worked = rule.unit.map_or_else(|| Some(value.si.clone()), |unit| value.in_unit(unit)).unwrap();
                let printed = Num::Exact(worked.round(rule.direction, &rule.measure()));
                let over = printed.compare(&worked);
                match safe(*role) {
                    Direction::Down => assert!(over.is_lt(), "{role:?}: {} for {}", printed.plain(), worked.plain()),
                    Direction::Up => assert!(over.is_gt(), "{role:?}: {} for {}", printed.plain(), worked.plain()),
                    Direction::Nearest => {}
                }
            }
        }
    }
}
