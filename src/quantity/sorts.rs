//! The sorts of quantity that formulas take and give, as types.

use super::dim::{Dim, Kind};

/// A sort of quantity that formulas take and give.
pub trait Sort {
    /// Dimension.
    const DIM: Dim;
    /// Kind.
    const KIND: Kind;
    /// The trade's word.
    const NAME: &'static str;
}

macro_rules! sorts {
    ($($(#[$doc:meta])* $name:ident, $dim:expr, $kind:expr, $word:literal;)*) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug)]
        pub enum $name {}
        impl Sort for $name {
            const DIM: Dim = $dim;
            const KIND: Kind = $kind;
            const NAME: &'static str = $word;
        }
    )*};
}

sorts! {
    /// A length.
    Length, Dim::LENGTH, Kind::Plain, "length";
    /// An area.
    Area, Dim::AREA, Kind::Plain, "area";
    /// A volume.
    Volume, Dim::VOLUME, Kind::Plain, "volume";
    /// A mass.
    Mass, Dim::MASS, Kind::Plain, "mass";
    /// A mass per volume.
    Density, Dim::DENSITY, Kind::Plain, "density";
    /// A mass per area.
    Areal, Dim::AREAL, Kind::Plain, "weight per area";
    /// A duration that is neither of the two clocks.
    Duration, Dim::TIME, Kind::Plain, "time";
    /// Counted from powder-meets-water.
    OpenTime, Dim::TIME, Kind::Plain, "open time";
    /// Counted from mud-meets-wall.
    CarveTime, Dim::TIME, Kind::Plain, "carve time";
    /// A thermometer reading.
    Temperature, Dim::TEMPERATURE, Kind::Reading, "temperature";
    /// Loads.
    Loads, Dim::NONE, Kind::Loads, "loads";
    /// Bags.
    Bags, Dim::NONE, Kind::Bags, "bags";
    /// A share of one.
    Share, Dim::NONE, Kind::Share, "share";
    /// A ratio or other plain number.
    Plain, Dim::NONE, Kind::Plain, "number";
    /// Parts by mass.
    PartsByMass, Dim::NONE, Kind::ByMass, "parts by mass";
    /// Parts by volume.
    PartsByVolume, Dim::NONE, Kind::ByVolume, "parts by volume";
    /// A strength class.
    Strength, Dim::STRESS, Kind::Plain, "strength";
    /// A pressure of vapour.
    Pressure, Dim::STRESS, Kind::Plain, "pressure";
    /// A temperature difference.
    Difference, Dim::TEMPERATURE, Kind::Difference, "temperature difference";
    /// A speed of wind.
    Speed, Dim::SPEED, Kind::Plain, "speed";
    /// Water that leaves a surface.
    Drying, Dim::DRYING, Kind::Plain, "evaporation";
    /// Area covered in an hour.
    Pace, Dim::PACE, Kind::Plain, "pace";
    /// Heat per mass.
    Heat, Dim::HEAT, Kind::Plain, "heat";
    /// Energy of activation of a mole: the mole is a count.
    Activation, Dim::ENERGY, Kind::Plain, "energy of activation";
    /// Temperature times time.
    Maturity, Dim::MATURITY, Kind::Plain, "maturity";
    /// An amount of money.
    Money, Dim::MONEY, Kind::Plain, "money";
    /// Money per area.
    PriceOfArea, Dim::PRICE_OF_AREA, Kind::Plain, "price per area";
    /// Money per hour.
    Wage, Dim::WAGE, Kind::Plain, "wage";
    /// Area that a volume of paint or sealer covers.
    Coverage, Dim::COVERAGE, Kind::Plain, "coverage";
    /// Lifts in a minute.
    Frequency, Dim::FREQUENCY, Kind::Plain, "frequency";
    /// An angle, in degrees.
    Angle, Dim::NONE, Kind::Angle, "angle";
    /// A civil time of day, counted from midnight.
    Clock, Dim::TIME, Kind::Clock, "time of day";
    /// A day of the calendar, counted from 1970-01-01.
    Date, Dim::TIME, Kind::Date, "date";
}
