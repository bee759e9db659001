//! The units of the trade, each an exact factor to SI with the row of the published table it comes from.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use num_bigint::BigInt;
use num_rational::BigRational;

use super::dim::{Dim, Kind};
use super::num::Num;

/// One unit: `SI value = (number + offset) × factor`; the offset is non-zero only for thermometer readings.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// The symbol we print and the first one we read.
    pub symbol: &'static str,
    /// Other spellings we read.
    pub also: &'static [&'static str],
    /// Dimension.
    pub dim: Dim,
    /// Kind that a number in this unit has.
    pub kind: Kind,
    /// Exact factor to SI.
    pub factor: BigRational,
    /// Added before the factor is applied (°F 459.67, °C 273.15, else 0).
    pub offset: BigRational,
    /// Row or standard that states the factor.
    pub source: &'static str,
}

/// A unit, a quotient of two or one per two, as written by an author or chosen for print.
#[derive(Clone, Copy, Debug)]
pub struct UnitExpr {
    /// Upper unit.
    pub over: &'static Unit,
    /// Lower unit, if it is a quotient.
    pub under: Option<&'static Unit>,
    /// Second lower unit, as the hour in `lb/ft2/h`.
    pub per: Option<&'static Unit>,
}

impl PartialEq for UnitExpr {
    fn eq(&self, other: &UnitExpr) -> bool {
        self.symbol() == other.symbol()
    }
}

impl UnitExpr {
    /// One unit alone.
    pub fn alone(over: &'static Unit) -> UnitExpr {
        UnitExpr { over, under: None, per: None }
    }

    fn lower(&self) -> impl Iterator<Item = &'static Unit> {
        self.under.into_iter().chain(self.per)
    }

    /// Symbol such as `gal`, `lb/ft2` or `lb/ft2/h`.
    pub fn symbol(&self) -> String {
        self.lower().fold(self.over.symbol.to_owned(), |text, unit| text + "/" + unit.symbol)
    }

    /// Dimension.
    pub fn dim(&self) -> Dim {
        self.lower().fold(self.over.dim, |dim, unit| dim.over(unit.dim))
    }

    /// Kind of a number in this unit.
    pub fn kind(&self) -> Kind {
        if self.under.is_some() { Kind::Plain } else { self.over.kind }
    }

    /// Exact factor to SI.
    pub fn factor(&self) -> BigRational {
        let over = |factor: BigRational, unit: &Unit| {
            let quotient = Num::Exact(factor.clone()).div(&Num::Exact(unit.factor.clone()));
            quotient.and_then(|q| q.exact().cloned()).unwrap_or(factor)
        };
        self.lower().fold(self.over.factor.clone(), over)
    }
}

struct Row(&'static str, &'static [&'static str], Dim, Kind, &'static str, &'static str, &'static str);

const P: Kind = Kind::Plain;

// Factors are products of exact decimals, written as "a*b/c" so that the definition stays visible.
const ROWS: &[Row] = &[
    Row("mm", &["millimetre", "millimetres", "millimeter", "millimeters"], Dim::LENGTH, P, "0.001", "0", "SI"),
    Row("cm", &["centimetre", "centimetres", "centimeter", "centimeters"], Dim::LENGTH, P, "0.01", "0", "SI"),
    Row("m", &["metre", "metres", "meter", "meters"], Dim::LENGTH, P, "1", "0", "SI"),
    Row("in", &["inch", "inches", "\""], Dim::LENGTH, P, "0.0254", "0", "UD-07"),
    Row("ft", &["foot", "feet", "'"], Dim::LENGTH, P, "12*0.0254", "0", "UD-07, UD-05"),
    Row("yd", &["yard", "yards"], Dim::LENGTH, P, "36*0.0254", "0", "UD-07, UD-09"),
    Row("in2", &["in²", "sq in"], Dim::AREA, P, "0.0254*0.0254", "0", "UD-07"),
    Row("ft2", &["ft²", "sq ft"], Dim::AREA, P, "144*0.0254*0.0254", "0", "UD-07"),
    Row("yd2", &["yd²", "sq yd"], Dim::AREA, P, "1296*0.0254*0.0254", "0", "UD-07"),
    Row("m2", &["m²"], Dim::AREA, P, "1", "0", "SI"),
    Row("in3", &["in³", "cu in"], Dim::VOLUME, P, "0.000016387064", "0", "U-22"),
    Row("ft3", &["ft³", "cu ft"], Dim::VOLUME, P, "1728*0.000016387064", "0", "UD-05, U-22"),
    Row("yd3", &["yd³", "cu yd"], Dim::VOLUME, P, "46656*0.000016387064", "0", "UD-09, U-22"),
    Row("m3", &["m³"], Dim::VOLUME, P, "1", "0", "SI"),
    Row("gal", &["gallon", "gallons", "galón", "galones"], Dim::VOLUME, P, "231*0.000016387064", "0", "UD-01"),
    Row("qt", &["quart", "quarts", "cuarto", "cuartos"], Dim::VOLUME, P, "231*0.000016387064/4", "0", "UD-02"),
    Row("pt", &["pint", "pints", "pinta", "pintas"], Dim::VOLUME, P, "231*0.000016387064/8", "0", "UD-03"),
    Row("cup", &["cups", "taza", "tazas"], Dim::VOLUME, P, "231*0.000016387064/16", "0", "UD-01 (1/16 gal)"),
    Row("fl oz", &["fluid ounce", "fluid ounces"], Dim::VOLUME, P, "231*0.000016387064/128", "0", "UD-04"),
    Row("L", &["l", "litre", "litres", "liter", "liters", "litro", "litros"], Dim::VOLUME, P, "0.001", "0", "SI"),
    Row("mL", &["ml", "millilitre", "millilitres", "milliliter", "milliliters"], Dim::VOLUME, P, "0.000001", "0", "SI"),
    Row("lb", &["lbs", "pound", "pounds", "libra", "libras"], Dim::MASS, P, "0.45359237", "0", "UD-06"),
    Row("oz", &["ounce", "ounces"], Dim::MASS, P, "0.45359237/16", "0", "UD-06"),
    Row("kg", &["kilogram", "kilograms", "kilo", "kilos"], Dim::MASS, P, "1", "0", "SI"),
    Row("g", &["gram", "grams"], Dim::MASS, P, "0.001", "0", "SI"),
    Row("s", &["second", "seconds"], Dim::TIME, P, "1", "0", "SI"),
    Row("min", &["minute", "minutes", "minuto", "minutos"], Dim::TIME, P, "60", "0", "SI"),
    Row("h", &["hour", "hours", "hr", "hora", "horas"], Dim::TIME, P, "3600", "0", "SI"),
    Row("day", &["days", "día", "días"], Dim::TIME, P, "86400", "0", "SI"),
    Row("°F", &["F", "deg F"], Dim::TEMPERATURE, Kind::Reading, "5/9", "459.67", "SI (ITS-90)"),
    Row("°C", &["C", "deg C"], Dim::TEMPERATURE, Kind::Reading, "1", "273.15", "SI (ITS-90)"),
    Row("K", &["kelvin"], Dim::TEMPERATURE, Kind::Reading, "1", "0", "SI"),
    Row("km", &["kilometre", "kilometres", "kilometer", "kilometers"], Dim::LENGTH, P, "1000", "0", "SI"),
    Row("mi", &["mile", "miles"], Dim::LENGTH, P, "5280*12*0.0254", "0", "UD-07 (5280 ft)"),
    Row("mph", &[], Dim::SPEED, P, "5280*12*0.0254/3600", "0", "UD-07 (5280 ft an hour)"),
    Row("°C·h", &[], Dim::MATURITY, P, "3600", "0", "SI"),
    Row("Pa", &[], Dim::STRESS, P, "1", "0", "SI"),
    Row("hPa", &["mbar"], Dim::STRESS, P, "100", "0", "SI"),
    Row("kPa", &[], Dim::STRESS, P, "1000", "0", "SI"),
    Row("J", &["joule", "joules"], Dim::ENERGY, P, "1", "0", "SI"),
    Row("kJ", &[], Dim::ENERGY, P, "1000", "0", "SI"),
    Row("Btu", &["BTU"], Dim::ENERGY, P, "1055.05585262", "0", "IT calorie 4.1868 J, pound, °F"),
    Row("mol", &[], Dim::NONE, P, "1", "0", "definition"),
    Row("°", &["deg", "degree", "degrees", "grado", "grados"], Dim::NONE, Kind::Angle, "1", "0", "held in degrees"),
    Row("USD", &["$", "dollar", "dollars"], Dim::MONEY, P, "1", "0", "definition"),
    Row("CAD", &[], Dim::MONEY, P, "1", "0", "definition"),
    Row("AUD", &[], Dim::MONEY, P, "1", "0", "definition"),
    Row("MXN", &[], Dim::MONEY, P, "1", "0", "definition"),
    Row("EUR", &["€", "euro", "euros"], Dim::MONEY, P, "1", "0", "definition"),
    Row("GBP", &["£"], Dim::MONEY, P, "1", "0", "definition"),
    Row("psi", &[], Dim::STRESS, P, "0.45359237*9.80665/0.0254/0.0254", "0", "UD-08"),
    Row("MPa", &[], Dim::STRESS, P, "1000000", "0", "SI"),
    Row("%", &["percent", "per cent"], Dim::NONE, Kind::Share, "0.01", "0", "definition"),
    Row("load", &["loads", "juego", "juegos"], Dim::NONE, Kind::Loads, "1", "0", "definition"),
    Row("lift", &["lifts"], Dim::NONE, P, "1", "0", "definition"),
    Row("bag", &["bags", "saco", "sacos"], Dim::NONE, Kind::Bags, "1", "0", "definition"),
];

fn factor(text: &str) -> BigRational {
    // The table above is the only input: digits, one point, `*` and `/`, all exact.
    let mut value = BigRational::from_integer(BigInt::from(1));
    let mut divide = false;
    for piece in text.split_inclusive(['*', '/']) {
        let number =
            super::parse::decimal(piece.trim_end_matches(['*', '/'])).unwrap_or_else(|| BigRational::from_integer(BigInt::from(1)));
        value = if divide { value / number } else { value * number };
        divide = piece.ends_with('/');
    }
    value
}

/// Every unit, in table order.
pub fn units() -> &'static [Unit] {
    static UNITS: OnceLock<Vec<Unit>> = OnceLock::new();
    UNITS.get_or_init(|| {
        ROWS.iter()
            .map(|Row(symbol, also, dim, kind, f, offset, source)| Unit {
                symbol,
                also,
                dim: *dim,
                kind: *kind,
                factor: factor(f),
                offset: factor(offset),
                source,
            })
            .collect()
    })
}

/// Spellings of units that begin with a character, the longest first.
pub fn spelled_from(first: char) -> &'static [(&'static str, &'static Unit)] {
    type Spellings = BTreeMap<char, Vec<(&'static str, &'static Unit)>>;
    static SPELLINGS: OnceLock<Spellings> = OnceLock::new();
    let all = SPELLINGS.get_or_init(|| {
        let mut all = Spellings::new();
        for unit in units() {
            for name in unit.also.iter().chain([&unit.symbol]) {
                all.entry(name.chars().next().unwrap_or(' ')).or_default().push((*name, unit));
            }
        }
        all.values_mut().for_each(|names| names.sort_by_key(|(name, _)| std::cmp::Reverse(name.len())));
        all
    });
    all.get(&first).map_or(&[], Vec::as_slice)
}

/// The unit spelled `text`, by symbol or by any other spelling, case kept.
pub fn find(text: &str) -> Option<&'static Unit> {
    let names = spelled_from(text.chars().next()?);
    names.iter().find(|(name, _)| *name == text).map(|(_, unit)| *unit)
}

/// The unit or quotient spelled `text`, such as `lb/ft2` or `lb/ft2/h`.
pub fn find_expr(text: &str) -> Option<UnitExpr> {
    let mut words = text.split('/').map(|word| find(word.trim()));
    let over = words.next()??;
    let (under, per) = (words.next(), words.next());
    if words.next().is_some() || under == Some(None) || per == Some(None) {
        return None;
    }
    Some(UnitExpr { over, under: under.flatten(), per: per.flatten() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use num_traits::ToPrimitive;

    fn per(a: &str, b: &str) -> BigRational {
        find_expr(a).unwrap().factor() / find_expr(b).unwrap().factor()
    }

    fn dec(text: &str) -> BigRational {
        super::super::parse::decimal(text).unwrap()
    }

    /// Definitions of NIST Handbook 44 app. C and the derived rows of `mortar-units-and-print`, §1.
    #[test]
    fn factors_are_the_published_ones() {
        assert_eq!(per("gal", "in3"), dec("231")); // UD-01
        assert_eq!(per("gal", "L"), dec("3.785411784")); // UD-01
        assert_eq!(per("qt", "in3"), dec("57.75")); // UD-02
        assert_eq!(per("pt", "in3"), dec("28.875")); // UD-03
        assert_eq!(per("gal", "fl oz"), dec("128")); // UD-04
        assert_eq!(per("ft3", "in3"), dec("1728")); // UD-05
        assert_eq!(per("lb", "kg"), dec("0.45359237")); // UD-06
        assert_eq!(per("in", "mm"), dec("25.4")); // UD-07
        assert!((per("psi", "MPa").to_f64().unwrap() - 0.006_894_757_293).abs() < 1e-12); // UD-08
        assert_eq!(per("yd3", "ft3"), dec("27")); // UD-09
        assert_eq!(per("ft3", "gal"), BigRational::new(576.into(), 77.into())); // U-01
        assert_eq!(per("gal", "ft3"), BigRational::new(231.into(), 1728.into())); // U-02
        assert_eq!(per("ft3", "L"), dec("28.316846592")); // U-03
        assert_eq!(per("qt", "mL"), dec("946.352946")); // U-06
        assert_eq!(per("fl oz", "mL"), dec("29.5735295625")); // U-07
        assert_eq!(per("fl oz", "in3"), dec("1.8046875")); // U-08
        assert!((per("ft3", "fl oz").to_f64().unwrap() - 957.506_493_506).abs() < 1e-9); // U-09
        assert_eq!(per("lb", "g"), dec("453.59237")); // U-10
        assert_eq!(per("oz", "g"), dec("28.349523125")); // U-11
        assert!((1000.0 / per("lb/ft3", "kg/m3").to_f64().unwrap() - 62.427_960_576_145).abs() < 1e-9); // U-13
        assert!((1.0 / per("lb/ft3", "kg/m3").to_f64().unwrap() - 0.062_427_960_576).abs() < 1e-12); // U-14
        assert_eq!(per("in3", "mL"), dec("16.387064")); // U-22
    }

    #[test]
    fn no_spelling_means_two_units() {
        let mut seen = std::collections::BTreeMap::new();
        for unit in units() {
            for name in unit.also.iter().chain([&unit.symbol]) {
                assert!(seen.insert(*name, unit.symbol).is_none(), "{name} is in the table twice");
            }
            assert!(!unit.source.is_empty());
        }
    }
}
