//! Rounding roles: which way each printed quantity goes, to what, and how it is written (F29).
//!
//! Limits and start water down, minimums and weights up, purchases up; the second unit goes the same way.

use num_bigint::BigInt;
use num_rational::BigRational;

use crate::quantity::num::Direction;
use crate::quantity::show::Look;
use crate::quantity::units::{UnitExpr, find_expr};

use super::House;

/// What a printed quantity is for; this alone decides its rounding.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Role {
    /// Water before powder: down to the smallest mark on site.
    StartWater,
    /// Least start water: up to the mark.
    LeastWater,
    /// One late addition: down to the mark.
    Step,
    /// Most water ever: down to the mark.
    Limit,
    /// Mass of the start water, for the scale: down.
    WaterMass,
    /// Loads, already in halves.
    Loads,
    /// Bags, already whole.
    Bags,
    /// Bags that go in at one step; a single bag may be halved by eye, so halves are shown.
    BagsInSteps,
    /// Most loads a mixer takes: down.
    MostLoads,
    /// Mass of a bag or of part of one on the scale.
    BagMass,
    /// Greatest thickness: down to 1/8 in or 1 mm.
    MostThickness,
    /// Least thickness: up to 1/8 in or 1 mm.
    LeastThickness,
    /// Mean thickness: nobody places it, so nearest.
    MeanThickness,
    /// A measured length of a wall, as authored.
    WallLength,
    /// An area of the takeoff.
    Area,
    /// An area on an order: up to a whole unit.
    OrderArea,
    /// A volume of mortar.
    Volume,
    /// Yield of a load: down.
    Yield,
    /// What a mixer mixes well: down.
    Capacity,
    /// What a batch takes up: up.
    BatchVolume,
    /// A wet mass that someone or something carries: up.
    Weight,
    /// Weight per area on a wall: up.
    WallWeight,
    /// Weight per area that somebody allows: down.
    WallAllowance,
    /// Wet mass that a mixer may turn: down.
    Rating,
    /// Density.
    Density,
    /// Place-by time of a card that hangs all day: down to 5 min.
    PlaceBy,
    /// Minutes of mixing: up to the minute.
    MixMinutes,
    /// Open time of the mix sheet: down to the minute.
    OpenTime,
    /// Wet hours or days of cure: up.
    WetCure,
    /// A wait before the next coat, in hours: up.
    Recoat,
    /// A reading, to the whole degree.
    Reading,
    /// A strength class: down.
    StrengthClass,
    /// A share in per cent.
    Share,
    /// A plain ratio.
    Ratio,
    /// A count such as lifts or batches.
    Count,
    /// A count that is allowed: down.
    CountAllowed,
    /// A time of day, already whole minutes.
    Clock,
    /// Minutes to spare: down.
    Slack,
    /// Minutes that something takes: up.
    Takes,
    /// Hours of work: up to a tenth.
    Hours,
    /// A pace that is planned with: down.
    Pace,
    /// An amount of money, to the cent, a half going up.
    Money,
    /// Money per area, to the cent.
    PriceOfArea,
    /// A wage, to the cent.
    Wage,
    /// Evaporation: up.
    Drying,
    /// Wind.
    Wind,
    /// Humidity.
    Humidity,
    /// A temperature of the mix that a limit is held to: up.
    MixTemperature,
    /// Weight per area on a floor or a platform: up.
    FloorWeight,
    /// Wet mass that is allowed: down.
    Allowed,
    /// Weight that hands may lift: down.
    HandLift,
    /// Index of a lift: up.
    LiftIndex,
    /// Colour or sealer: up.
    FinishVolume,
    /// Water for a site: up.
    SiteWater,
    /// Length of a panel between joints: down.
    PanelLength,
    /// Share of uncertainty: up.
    Uncertainty,
    /// A share that somebody measured.
    Measured,
    /// An area that may be placed: down.
    AreaAllowed,
    /// Days of credit: down.
    CreditDays,
    /// Pigment on the scale.
    Pigment,
    /// Pigment that is allowed: down.
    PigmentAllowed,
    /// Water against the mix sheet's own, the start being 100: up.
    WaterIndex,
    /// Mean or lowest temperature of a day, as the file states it: down.
    DayReading,
    /// A day of the calendar, already whole.
    Date,
    /// The first day on which something may be.
    NotBefore,
}

/// A unit, a measure in it, a direction and a look.
#[derive(Clone, Copy, Debug)]
pub struct Rule {
    /// Unit of print; `None` for a plain number.
    pub unit: Option<UnitExpr>,
    /// Direction.
    pub direction: Direction,
    /// Measure as a fraction of the unit.
    pub measure: (i64, i64),
    /// How it is written.
    pub look: Look,
}

impl Rule {
    /// The measure as a rational.
    pub fn measure(&self) -> BigRational {
        BigRational::new(BigInt::from(self.measure.0), BigInt::from(self.measure.1.max(1)))
    }
}

impl Role {
    /// The rule in US or metric units; water goes by the smallest marks on site.
    pub fn rule(self, metric: bool, house: House) -> Rule {
        use Direction::{Down, Nearest, Up};
        use Look::{Crew, Decimal, FeetInches, Mixed, Scale};
        let pick = |us: (&str, Direction, (i64, i64), Look), si: (&str, Direction, (i64, i64), Look)| {
            let (unit, direction, measure, look) = if metric { si } else { us };
            Rule { unit: find_expr(unit), direction, measure, look }
        };
        match self {
            Role::StartWater | Role::Step | Role::Limit => pick(("gal", Down, house.us, Crew), ("L", Down, house.metric, Decimal(2))),
            Role::LeastWater => pick(("gal", Up, house.us, Crew), ("L", Up, house.metric, Decimal(2))),
            Role::WaterMass => pick(("lb", Down, (1, 10), Decimal(1)), ("kg", Down, (1, 20), Decimal(2))),
            Role::Loads => pick(("load", Up, (1, 2), Mixed), ("load", Up, (1, 2), Mixed)),
            Role::Bags => pick(("bag", Up, (1, 1), Mixed), ("bag", Up, (1, 1), Mixed)),
            Role::BagsInSteps => pick(("bag", Up, (1, 2), Mixed), ("bag", Up, (1, 2), Mixed)),
            Role::MostLoads => pick(("load", Down, (1, 2), Mixed), ("load", Down, (1, 2), Mixed)),
            Role::BagMass => pick(("lb", Nearest, (1, 10), Scale), ("kg", Nearest, (1, 10), Decimal(1))),
            Role::MostThickness => pick(("in", Down, (1, 8), Mixed), ("mm", Down, (1, 1), Mixed)),
            Role::LeastThickness => pick(("in", Up, (1, 8), Mixed), ("mm", Up, (1, 1), Mixed)),
            Role::MeanThickness => pick(("in", Nearest, (1, 100), Decimal(2)), ("mm", Nearest, (1, 10), Decimal(1))),
            Role::WallLength => pick(("ft", Nearest, (1, 96), FeetInches), ("m", Nearest, (1, 100), Decimal(2))),
            Role::Area => pick(("ft2", Nearest, (1, 10), Decimal(1)), ("m2", Nearest, (1, 100), Decimal(2))),
            Role::OrderArea => pick(("ft2", Up, (1, 1), Decimal(0)), ("m2", Up, (1, 10), Decimal(1))),
            Role::Volume => pick(("ft3", Nearest, (1, 100), Decimal(2)), ("L", Nearest, (1, 1), Decimal(0))),
            Role::Yield => pick(("ft3", Down, (1, 1000), Decimal(3)), ("L", Down, (1, 10), Decimal(1))),
            Role::Capacity => pick(("ft3", Down, (1, 100), Decimal(2)), ("L", Down, (1, 1), Decimal(0))),
            Role::BatchVolume => pick(("ft3", Up, (1, 100), Decimal(2)), ("L", Up, (1, 1), Decimal(0))),
            Role::Weight => pick(("lb", Up, (1, 1), Decimal(0)), ("kg", Up, (1, 1), Decimal(0))),
            Role::WallWeight => pick(("lb/ft2", Up, (1, 10), Decimal(1)), ("kg/m2", Up, (1, 1), Decimal(0))),
            Role::WallAllowance => pick(("lb/ft2", Down, (1, 10), Decimal(1)), ("kg/m2", Down, (1, 1), Decimal(0))),
            Role::Rating => pick(("lb", Down, (1, 1), Decimal(0)), ("kg", Down, (1, 1), Decimal(0))),
            Role::Density => pick(("lb/ft3", Nearest, (1, 10), Decimal(1)), ("kg/m3", Nearest, (1, 1), Decimal(0))),
            Role::PlaceBy => pick(("min", Down, (5, 1), Mixed), ("min", Down, (5, 1), Mixed)),
            Role::MixMinutes => pick(("min", Up, (1, 1), Mixed), ("min", Up, (1, 1), Mixed)),
            Role::OpenTime => pick(("min", Down, (1, 1), Mixed), ("min", Down, (1, 1), Mixed)),
            Role::WetCure => pick(("day", Up, (1, 2), Mixed), ("day", Up, (1, 2), Mixed)),
            Role::Recoat => pick(("h", Up, (1, 1), Mixed), ("h", Up, (1, 1), Mixed)),
            Role::Reading => pick(("°F", Nearest, (1, 1), Mixed), ("°C", Nearest, (1, 1), Mixed)),
            Role::StrengthClass => pick(("psi", Down, (1, 1), Decimal(0)), ("MPa", Down, (1, 10), Decimal(1))),
            Role::Share => pick(("%", Nearest, (1, 10), Mixed), ("%", Nearest, (1, 10), Mixed)),
            Role::Ratio => pick(("", Nearest, (1, 1000), Decimal(3)), ("", Nearest, (1, 1000), Decimal(3))),
            Role::Count => pick(("", Up, (1, 1), Mixed), ("", Up, (1, 1), Mixed)),
            _ => self.works(metric, house),
        }
    }

    // Split from the roles of the first papers only because one list of all would be long.
    fn works(self, metric: bool, house: House) -> Rule {
        use Direction::{Down, Nearest, Up};
        use Look::{Clock12, Clock24, Decimal, FeetInches, Mixed, Scale};
        let pick = |us: (&str, Direction, (i64, i64), Look), si: (&str, Direction, (i64, i64), Look)| {
            let (unit, direction, measure, look) = if metric { si } else { us };
            Rule { unit: find_expr(unit), direction, measure, look }
        };
        let both = |rule: (&str, Direction, (i64, i64), Look)| pick(rule, rule);
        let money = house.money;
        match self {
            Role::CountAllowed => both(("", Down, (1, 1), Mixed)),
            Role::Clock => pick(("min", Down, (1, 1), Clock12), ("min", Down, (1, 1), Clock24)),
            Role::Slack => both(("min", Down, (1, 1), Mixed)),
            Role::Takes => both(("min", Up, (1, 1), Mixed)),
            Role::Hours => both(("h", Up, (1, 10), Decimal(1))),
            Role::Pace => pick(("ft2/h", Down, (1, 1), Decimal(0)), ("m2/h", Down, (1, 10), Decimal(1))),
            Role::Money => both((money, Nearest, (1, 100), Decimal(2))),
            Role::Wage => both((&format!("{money}/h"), Nearest, (1, 100), Decimal(2))),
            Role::PriceOfArea => {
                pick((&format!("{money}/ft2"), Nearest, (1, 100), Decimal(2)), (&format!("{money}/m2"), Nearest, (1, 100), Decimal(2)))
            }
            Role::Drying => pick(("lb/ft2/h", Up, (1, 100), Decimal(2)), ("kg/m2/h", Up, (1, 20), Decimal(2))),
            Role::Wind => pick(("mph", Up, (1, 1), Decimal(0)), ("km/h", Up, (1, 1), Decimal(0))),
            Role::Humidity => both(("%", Nearest, (1, 1), Decimal(0))),
            Role::MixTemperature => pick(("°F", Up, (1, 1), Mixed), ("°C", Up, (1, 1), Mixed)),
            Role::FloorWeight => pick(("lb/ft2", Up, (1, 1), Decimal(0)), ("kg/m2", Up, (1, 1), Decimal(0))),
            Role::Allowed => pick(("lb", Down, (1, 1), Decimal(0)), ("kg", Down, (1, 1), Decimal(0))),
            Role::HandLift => pick(("lb", Down, (1, 10), Decimal(1)), ("kg", Down, (1, 10), Decimal(1))),
            Role::LiftIndex => both(("", Up, (1, 10), Decimal(1))),
            Role::FinishVolume => pick(("gal", Up, (1, 10), Decimal(1)), ("L", Up, (1, 10), Decimal(1))),
            Role::SiteWater => pick(("gal", Up, (1, 1), Decimal(0)), ("L", Up, (5, 1), Decimal(0))),
            Role::PanelLength => pick(("ft", Down, (1, 96), FeetInches), ("m", Down, (1, 100), Decimal(2))),
            Role::Uncertainty => both(("%", Up, (1, 10), Decimal(1))),
            Role::Measured => both(("%", Nearest, (1, 10), Decimal(1))),
            Role::AreaAllowed => pick(("ft2", Down, (1, 10), Decimal(1)), ("m2", Down, (1, 100), Decimal(2))),
            Role::CreditDays => both(("", Down, (1, 100), Decimal(2))),
            Role::Pigment => pick(("lb", Nearest, (1, 1000), Decimal(3)), ("kg", Nearest, (1, 1000), Decimal(3))),
            Role::PigmentAllowed => pick(("lb", Down, (1, 1000), Decimal(3)), ("kg", Down, (1, 1000), Decimal(3))),
            Role::WaterIndex => both(("", Up, (1, 10), Decimal(1))),
            Role::DayReading => pick(("°F", Down, (1, 10), Scale), ("°C", Down, (1, 10), Scale)),
            Role::Date => both(("day", Up, (1, 1), Look::Date)),
            Role::NotBefore => both(("day", Up, (1, 1), Look::NotBefore)),
            // Every other role has its rule above.
            _ => both(("", Nearest, (1, 1000), Decimal(3))),
        }
    }

    /// True for money: the estimator's, never on a crew's paper.
    pub fn is_money(self) -> bool {
        matches!(self, Role::Money | Role::PriceOfArea | Role::Wage)
    }

    /// True for an amount of water: the typed-number audit is strictest on these.
    pub fn is_water(self) -> bool {
        matches!(self, Role::StartWater | Role::LeastWater | Role::Step | Role::Limit | Role::WaterMass)
    }
}
