//! A reader of printed arithmetic that shares nothing with the code that prints it.

use hodbook::quantity::print::Line;

/// Every line's numbers give its result, to one in the sixth digit, or, where large numbers nearly cancel, to
/// what the seventh digits of the numbers in the line can move.
pub fn follows(lines: &[Line]) {
    let faults = faults(lines);
    assert!(faults.is_empty(), "{faults:#?}");
}

/// Lines whose numbers do not give their result.
pub fn faults(lines: &[Line]) -> Vec<String> {
    let mut found = Vec::new();
    for line in lines {
        let (left, right) = (value(&line.numbers), value(&line.result));
        let sixth = if right == 0.0 { 1e-9 } else { 10_f64.powf(right.abs().log10().floor() - 5.0) };
        let slack = sixth.max(seventh_digits(&line.numbers, left));
        if (left - right).is_nan() || (left - right).abs() > slack {
            found.push(format!("{} = {left} but {} = {right}", line.numbers, line.result));
        }
    }
    found
}

/// The value of a printed expression.
pub fn value(text: &str) -> f64 {
    read(text, usize::MAX).0
}

fn read(text: &str, nudge: usize) -> (f64, usize) {
    let mut reader = Reader { rest: text, numbers: 0, nudge };
    let value = reader.sum();
    assert!(reader.rest.trim().is_empty(), "`{}` is left of `{text}`", reader.rest);
    (value, reader.numbers)
}

fn seventh_digits(text: &str, value: f64) -> f64 {
    let count = read(text, usize::MAX).1;
    (0..count).map(|i| (read(text, i).0 - value).abs()).sum()
}

struct Reader<'a> {
    rest: &'a str,
    /// Numbers read so far.
    numbers: usize,
    /// Which of them to raise by half a step of its seventh digit, if it has seven.
    nudge: usize,
}

impl Reader<'_> {
    fn take(&mut self, sign: &str) -> bool {
        self.rest = self.rest.trim_start();
        match self.rest.strip_prefix(sign) {
            Some(rest) => {
                self.rest = rest;
                true
            }
            None => false,
        }
    }

    fn sum(&mut self) -> f64 {
        let mut value = self.product();
        loop {
            if self.take("+") {
                value += self.product();
            } else if self.take("−") {
                value -= self.product();
            } else {
                return value;
            }
        }
    }

    fn product(&mut self) -> f64 {
        let mut value = self.power();
        loop {
            if self.take("×") {
                value *= self.power();
            } else if self.take("÷") || self.take("/") {
                value /= self.power();
            } else {
                return value;
            }
        }
    }

    fn power(&mut self) -> f64 {
        let base = self.single();
        if self.take("^") { base.powf(self.single()) } else { base }
    }

    fn single(&mut self) -> f64 {
        if self.take("(") {
            let value = self.sum();
            assert!(self.take(")"));
            return value;
        }
        for name in ["sqrt", "sin", "asin", "cos", "acos", "exp", "ln", "log10", "abs", "up", "down", "nearest", "max", "min"] {
            if self.take(&format!("{name}(")) {
                let mut args = vec![self.sum()];
                while self.take(",") {
                    args.push(self.sum());
                }
                assert!(self.take(")"));
                return call(name, &args);
            }
        }
        if self.take("pi") {
            return std::f64::consts::PI;
        }
        let negative = self.take("-");
        let end = self.rest.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(self.rest.len());
        let (digits, rest) = self.rest.split_at(end);
        self.rest = rest;
        let mut number: f64 = digits.parse().unwrap_or_else(|_| panic!("no number at `{digits}{rest}`"));
        let shown = digits.trim_start_matches(['0', '.']).bytes().filter(u8::is_ascii_digit).count();
        if self.numbers == self.nudge && shown >= 7 {
            number += 0.5 * 10_f64.powf(number.log10().floor() - 6.0);
        }
        self.numbers += 1;
        if negative { -number } else { number }
    }
}

fn call(name: &str, args: &[f64]) -> f64 {
    // Seven printed digits may stand a hair off a step that the value itself stands on.
    let steps =
        |x: f64, m: f64, to: fn(f64) -> f64| if ((x / m) - (x / m).round()).abs() < 1e-6 { (x / m).round() * m } else { to(x / m) * m };
    match (name, args) {
        ("sqrt", [x]) => x.sqrt(),
        ("sin", [x]) => x.sin(),
        ("asin", [x]) => x.asin(),
        ("cos", [x]) => x.cos(),
        ("acos", [x]) => x.acos(),
        ("exp", [x]) => x.exp(),
        ("ln", [x]) => x.ln(),
        ("log10", [x]) => x.log10(),
        ("abs", [x]) => x.abs(),
        ("up", [x, m]) => steps(*x, *m, f64::ceil),
        ("down", [x, m]) => steps(*x, *m, f64::floor),
        ("nearest", [x, m]) => steps(*x, *m, f64::round),
        ("max", _) => args.iter().copied().fold(f64::MIN, f64::max),
        ("min", _) => args.iter().copied().fold(f64::MAX, f64::min),
        _ => panic!("{name} takes other than {} numbers", args.len()),
    }
}

#[test]
fn it_reads_what_a_calculator_reads() {
    assert_eq!(value("2 + 3 × 4 − (1 − 5 ÷ 100)"), 13.05);
    assert_eq!(value("up(34.282, 0.5)"), 34.5);
    assert_eq!(value("min(2^((70 − 90) ÷ 20), 1.5)"), 0.5);
    assert_eq!(value("(7/8) × 16 − -2"), 16.0);
    assert_eq!(value("sqrt(9) × 2 × asin(1) ÷ pi"), 3.0);
}
