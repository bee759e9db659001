//! Dimensions and kinds: what may be added to what.

use std::fmt;

/// Powers of the base dimensions. Money is one of them, so that a price per bag is not a mass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub struct Dim {
    /// Power of length (m).
    pub length: i8,
    /// Power of mass (kg).
    pub mass: i8,
    /// Power of time (s).
    pub time: i8,
    /// Power of temperature (K).
    pub temperature: i8,
    /// Power of money.
    pub money: i8,
}

impl Dim {
    /// A plain number.
    pub const NONE: Dim = Dim { length: 0, mass: 0, time: 0, temperature: 0, money: 0 };
    /// Length.
    pub const LENGTH: Dim = Dim { length: 1, ..Dim::NONE };
    /// Area.
    pub const AREA: Dim = Dim { length: 2, ..Dim::NONE };
    /// Volume.
    pub const VOLUME: Dim = Dim { length: 3, ..Dim::NONE };
    /// Mass.
    pub const MASS: Dim = Dim { mass: 1, ..Dim::NONE };
    /// Time.
    pub const TIME: Dim = Dim { time: 1, ..Dim::NONE };
    /// Temperature, reading or difference.
    pub const TEMPERATURE: Dim = Dim { temperature: 1, ..Dim::NONE };
    /// Mass per volume.
    pub const DENSITY: Dim = Dim { mass: 1, length: -3, ..Dim::NONE };
    /// Mass per area: what a coat weighs on a wall.
    pub const AREAL: Dim = Dim { mass: 1, length: -2, ..Dim::NONE };
    /// Force per area: a strength class.
    pub const STRESS: Dim = Dim { mass: 1, length: -1, time: -2, ..Dim::NONE };
    /// Money.
    pub const MONEY: Dim = Dim { money: 1, ..Dim::NONE };
    /// Length per time: wind.
    pub const SPEED: Dim = Dim { length: 1, time: -1, ..Dim::NONE };
    /// Area per time: how fast a hand covers a wall.
    pub const PACE: Dim = Dim { length: 2, time: -1, ..Dim::NONE };
    /// Mass per area and time: evaporation.
    pub const DRYING: Dim = Dim { mass: 1, length: -2, time: -1, ..Dim::NONE };
    /// Energy.
    pub const ENERGY: Dim = Dim { mass: 1, length: 2, time: -2, ..Dim::NONE };
    /// Energy per mass: heat of melting.
    pub const HEAT: Dim = Dim { length: 2, time: -2, ..Dim::NONE };
    /// Temperature times time: maturity.
    pub const MATURITY: Dim = Dim { temperature: 1, time: 1, ..Dim::NONE };
    /// Money per area.
    pub const PRICE_OF_AREA: Dim = Dim { money: 1, length: -2, ..Dim::NONE };
    /// Money per time.
    pub const WAGE: Dim = Dim { money: 1, time: -1, ..Dim::NONE };
    /// Area per volume: coverage. Its inverse, volume per area, is a length.
    pub const COVERAGE: Dim = Dim { length: -1, ..Dim::NONE };
    /// A count per time.
    pub const FREQUENCY: Dim = Dim { time: -1, ..Dim::NONE };

    /// Dimension of a product.
    pub fn times(self, o: Dim) -> Dim {
        Dim {
            length: self.length + o.length,
            mass: self.mass + o.mass,
            time: self.time + o.time,
            temperature: self.temperature + o.temperature,
            money: self.money + o.money,
        }
    }

    /// Dimension of a quotient.
    pub fn over(self, o: Dim) -> Dim {
        Dim {
            length: self.length - o.length,
            mass: self.mass - o.mass,
            time: self.time - o.time,
            temperature: self.temperature - o.temperature,
            money: self.money - o.money,
        }
    }

    /// The trade's word for the dimension, or its powers when it has none.
    pub fn name(self) -> String {
        let known = [
            (Dim::NONE, "a plain number"),
            (Dim::LENGTH, "a length"),
            (Dim::AREA, "an area"),
            (Dim::VOLUME, "a volume"),
            (Dim::MASS, "a mass"),
            (Dim::TIME, "a time"),
            (Dim::TEMPERATURE, "a temperature"),
            (Dim::DENSITY, "a mass per volume"),
            (Dim::AREAL, "a mass per area"),
            (Dim::STRESS, "a strength"),
            (Dim::MONEY, "an amount of money"),
            (Dim::SPEED, "a speed"),
            (Dim::PACE, "an area per time"),
            (Dim::DRYING, "a mass per area and time"),
            (Dim::ENERGY, "an energy"),
            (Dim::HEAT, "an energy per mass"),
            (Dim::MATURITY, "a temperature times a time"),
            (Dim::PRICE_OF_AREA, "an amount of money per area"),
            (Dim::WAGE, "an amount of money per time"),
            (Dim::COVERAGE, "an area per volume"),
            (Dim::FREQUENCY, "a number per time"),
        ];
        known.iter().find(|(d, _)| *d == self).map_or_else(|| self.to_string(), |(_, n)| (*n).to_owned())
    }
}

impl fmt::Display for Dim {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let parts =
            [("length", self.length), ("mass", self.mass), ("time", self.time), ("temperature", self.temperature), ("money", self.money)];
        let text: Vec<String> =
            parts.iter().filter(|(_, p)| *p != 0).map(|(n, p)| if *p == 1 { (*n).to_owned() } else { format!("{n}^{p}") }).collect();
        f.write_str(&text.join(" · "))
    }
}

/// What sort of thing a number of one dimension is; kinds of the same dimension do not mix by accident.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub enum Kind {
    /// No special kind.
    #[default]
    Plain,
    /// A thermometer reading: differences may be taken, sums may not.
    Reading,
    /// A temperature difference.
    Difference,
    /// Loads of a mix design.
    Loads,
    /// Bags.
    Bags,
    /// A share, written in per cent.
    Share,
    /// Parts by mass.
    ByMass,
    /// Parts by volume.
    ByVolume,
    /// An angle, held in degrees.
    Angle,
    /// A civil time of day, held as the time since midnight.
    Clock,
    /// A day of the calendar, held as the time since 1970-01-01.
    Date,
}
