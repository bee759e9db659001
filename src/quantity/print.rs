//! The arithmetic of a derivation as text that a pocket calculator, or another program, can follow.
//!
//! Numbers: exact values as short decimals or fractions, the others with seven significant digits.
//! Operators `+ − × ÷ ^`, parentheses, `sqrt( )`, `sin( )`, `cos( )`, `asin( )`, `acos( )` in radians, `exp( )`,
//! `ln( )`, `log10( )`, `abs( )`, `pi`, `max(a, b)`, `min(a, b)`, `up(x, m)`, `down(x, m)`, `nearest(x, m)` to whole multiples of `m`.
//! Where two units do not match, the exact factor stands in the line.

use num_rational::BigRational;
use num_traits::{One, Signed, Zero};

use super::dim::Kind;
use super::expr::{How, Mark, Node, Op};
use super::num::{Direction, Num};
use super::units::UnitExpr;

/// One line of a derivation.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Symbol or figure id on the left.
    pub symbol: String,
    /// Formula key such as `F1 gable`, empty for a leaf.
    pub formula: String,
    /// The formula in symbols, empty for a leaf.
    pub symbols: String,
    /// The formula in numbers; for a leaf the number itself.
    pub numbers: String,
    /// The result's number as text.
    pub result: String,
    /// The result's unit, empty for a plain number.
    pub unit: String,
    /// For an authored leaf: the text typed and its key.
    pub authored: Option<(String, String)>,
    /// Place of an authored leaf.
    pub mark: Option<Mark>,
    /// Source of a constant.
    pub source: String,
    /// Figure id, if the line is another figure's.
    pub figure: Option<String>,
    /// Lines this one rests on, by index into the derivation.
    pub rests_on: Vec<usize>,
}

/// The derivation of a node: its lines, the node's own first, each thing explained once, down to the leaves.
pub fn derivation(symbol: &str, node: &Node) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    explain(symbol, node, true, &mut lines, &mut Vec::new());
    lines
}

/// The derivation of a node down to leaves and to other figures, which are named and not explained again.
pub fn own_lines(symbol: &str, node: &Node) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    let top = match node.how() {
        How::Figure { of, .. } => of,
        _ => node,
    };
    explain(symbol, top, false, &mut lines, &mut Vec::new());
    lines
}

fn explain(symbol: &str, node: &Node, through: bool, lines: &mut Vec<Line>, seen: &mut Vec<(Node, usize)>) -> usize {
    // A blank name only re-types or re-writes a value: look through it.
    if let How::Named { symbol: inner, of } = node.how()
        && (node.unit() == of.unit() || inner.is_empty() && matches!(of.how(), How::Authored { .. }))
    {
        return explain(symbol, of, through, lines, seen);
    }
    if let How::Figure { id, of } = node.how() {
        if through {
            let at = explain(symbol, of, through, lines, seen);
            if let Some(line) = lines.get_mut(at) {
                line.figure = Some(id.to_string());
            }
            return at;
        }
        if let Some(at) = lines.iter().position(|l| l.figure.as_deref() == Some(&**id)) {
            return at;
        }
        let mut line = head(symbol, of);
        line.figure = Some(id.to_string());
        lines.push(line);
        return lines.len() - 1;
    }
    if let Some((_, at)) = seen.iter().find(|(n, _)| n.is(node)) {
        return known(symbol, node, *at, lines);
    }
    let at = lines.len();
    lines.push(head(symbol, node));
    seen.push((node.clone(), at));
    let mut inputs = Vec::new();
    let formula = matches!(node.how(), How::Formula { .. });
    // A formula that only looks a constant up rests on that constant; a leaf does not rest on itself.
    collect_inputs(body(node), !formula, &mut inputs);
    let rests: Vec<usize> = inputs.iter().map(|(name, of)| explain(name, of, through, lines, seen)).collect();
    if let Some(line) = lines.get_mut(at) {
        line.rests_on = rests;
    }
    at
}

/// A value met again: the same line under the same symbol, else one more line that says what it is called here.
fn known(symbol: &str, node: &Node, at: usize, lines: &mut Vec<Line>) -> usize {
    let Some(first) = lines.get(at).map(|l| l.symbol.clone()) else { return at };
    if symbol.is_empty() || first == symbol {
        return at;
    }
    let mut line = head(symbol, node);
    if let Some(again) = lines.iter().position(|l| l.symbol == symbol && l.symbols == first && l.rests_on == [at]) {
        return again;
    }
    line.formula.clear();
    line.symbols = first;
    line.numbers.clone_from(&line.result);
    line.authored = None;
    line.mark = None;
    line.source.clear();
    line.rests_on = vec![at];
    lines.push(line);
    lines.len() - 1
}

fn body(node: &Node) -> &Node {
    match node.how() {
        How::Formula { body, .. } => body,
        _ => node,
    }
}

fn head(symbol: &str, node: &Node) -> Line {
    let inner = body(node);
    let (formula, own) = match node.how() {
        How::Formula { key, symbol, .. } => ((*key).to_owned(), *symbol),
        _ => (String::new(), ""),
    };
    let leaf = matches!(node.how(), How::Authored { .. } | How::Constant { .. } | How::Given);
    let (authored, mark) = match node.how() {
        How::Authored { text, key, mark } => (Some((text.to_string(), key.to_string())), *mark),
        _ => (None, None),
    };
    let source = match node.how() {
        How::Constant { source, .. } => (*source).to_owned(),
        _ => String::new(),
    };
    let body_unit = inner.unit();
    let mut numbers = if leaf { node.number().plain() } else { text(inner, Some(DIGITS), 0) };
    if !leaf && body_unit != node.unit() {
        numbers = scaled(numbers, ratio(body_unit, node.unit()), 0);
    }
    Line {
        symbol: if symbol.is_empty() { own.to_owned() } else { symbol.to_owned() },
        formula,
        symbols: if leaf { String::new() } else { text(inner, None, 0) },
        numbers,
        result: node.number().plain(),
        unit: node.unit().map_or_else(String::new, |u| u.symbol()),
        authored,
        mark,
        source,
        figure: None,
        rests_on: Vec::new(),
    }
}

/// The named inputs below a body, without going into them.
fn collect_inputs(node: &Node, top: bool, found: &mut Vec<(String, Node)>) {
    match node.how() {
        How::Op(_, args) => args.iter().for_each(|a| collect_inputs(a, false, found)),
        How::Rounded { of, .. } | How::Bare { of, .. } | How::Dressed { of } => collect_inputs(of, false, found),
        How::Named { symbol, of } if symbol.is_empty() => collect_inputs(of, top, found),
        How::Named { symbol, of } => push_input(symbol, of, found),
        How::Figure { id, of } => push_input(id, of, found),
        How::Formula { symbol, .. } if !top => push_input(symbol, node, found),
        How::Authored { key, .. } if !top => push_input(key.rsplit('.').next().unwrap_or(key), node, found),
        How::Constant { symbol, .. } if !top && *symbol != "pi" => push_input(symbol, node, found),
        _ => {}
    }
}

fn push_input(symbol: &str, node: &Node, found: &mut Vec<(String, Node)>) {
    // One value may stand under two symbols, and both are explained.
    if !found.iter().any(|(s, n)| n.is(node) && s == symbol) {
        found.push((symbol.to_owned(), node.clone()));
    }
}

fn ratio(from: Option<UnitExpr>, to: Option<UnitExpr>) -> BigRational {
    let f = |u: Option<UnitExpr>| u.map_or_else(BigRational::one, |u| u.factor());
    f(from) / f(to)
}

fn scaled(text: String, ratio: BigRational, outer: u8) -> String {
    if ratio.is_one() {
        return text;
    }
    let (sign, factor) = if ratio < BigRational::one() && ratio.numer().is_one() {
        ("÷", BigRational::from_integer(ratio.denom().clone()))
    } else {
        ("×", ratio)
    };
    let number = Num::Exact(factor).plain();
    let number = if number.contains('/') { format!("({number})") } else { number };
    wrap(format!("{text} {sign} {number}"), outer > 2)
}

fn wrap(text: String, yes: bool) -> String {
    if yes { format!("({text})") } else { text }
}

// Binding strength: 1 sums, 2 products, 3 divisors and powers.
fn text(node: &Node, numbers: Option<usize>, outer: u8) -> String {
    match node.how() {
        How::Op(op, args) => operation(*op, args, node, numbers, outer),
        How::Rounded { direction, measure, of } => {
            let name = match direction {
                Direction::Up => "up",
                Direction::Down => "down",
                Direction::Nearest => "nearest",
            };
            let inside = in_unit(of, node.unit(), numbers, 0);
            format!("{name}({inside}, {})", Num::Exact(BigRational::clone(measure)).plain())
        }
        How::Bare { unit, of } => in_unit(of, Some(*unit), numbers, outer),
        How::Dressed { of } => text(of, numbers, outer),
        How::Named { symbol, of } if symbol.is_empty() => in_unit(of, node.unit(), numbers, outer),
        How::Named { symbol, .. } if numbers.is_none() => symbol.to_string(),
        How::Figure { id, .. } if numbers.is_none() => id.to_string(),
        How::Formula { symbol, .. } if numbers.is_none() => (*symbol).to_owned(),
        How::Constant { symbol: "pi", .. } => "pi".to_owned(),
        How::Constant { symbol, .. } if numbers.is_none() => (*symbol).to_owned(),
        How::Authored { key, .. } if numbers.is_none() => key.rsplit('.').next().unwrap_or(key).to_owned(),
        _ => {
            let number = node.number().digits(numbers.unwrap_or(DIGITS));
            let compound = number.contains('/') || number.starts_with('-');
            wrap(number, compound && outer > 0)
        }
    }
}

/// A node's text, multiplied into another unit where numbers are shown.
fn in_unit(node: &Node, unit: Option<UnitExpr>, numbers: Option<usize>, outer: u8) -> String {
    let factor = ratio(node.unit(), unit);
    // °C and K have one step and two zeros.
    if numbers.is_some() && node.value().kind == Kind::Reading && offset(node.unit()) * &factor != offset(unit) {
        return reading_in(node, unit, &factor, outer);
    }
    if numbers.is_none() || factor.is_one() {
        return text(node, numbers, outer);
    }
    scaled(text(node, numbers, 2), factor, outer)
}

fn offset(unit: Option<UnitExpr>) -> BigRational {
    unit.map_or_else(BigRational::zero, |u| u.over.offset.clone())
}

/// A thermometer reading in another scale: `21 × 1.8 + 32`.
fn reading_in(node: &Node, unit: Option<UnitExpr>, factor: &BigRational, outer: u8) -> String {
    let shift = offset(node.unit()) * factor - offset(unit);
    let (sign, size) = if shift.is_negative() { ("−", -shift) } else { ("+", shift) };
    wrap(format!("{} {sign} {}", scaled(text(node, Some(DIGITS), 2), factor.clone(), 0), Num::Exact(size).plain()), outer > 0)
}

/// Significant digits of the terms.
const DIGITS: usize = 7;
/// A real number has some fifteen; no line prints more.
const MOST_LOST: usize = 8;

/// How many digits a sum loses because its terms nearly cancel.
fn lost(args: &[Node], sum: &Node) -> usize {
    let size = |n: &Node| n.value().si.to_f64().abs();
    let largest = args.iter().map(size).fold(0.0, f64::max);
    let mut left = size(sum);
    if left == 0.0 {
        return if largest > 0.0 { MOST_LOST } else { 0 };
    }
    let mut digits = 0;
    while left < largest && digits < MOST_LOST {
        left *= 10.0;
        digits += 1;
    }
    digits
}

fn operation(op: Op, args: &[Node], node: &Node, numbers: Option<usize>, outer: u8) -> String {
    let unit = node.unit();
    let arg = |i: usize| args.get(i).unwrap_or(node);
    let call = |name: &str| {
        let inside: Vec<String> = args.iter().map(|a| in_unit(a, unit, numbers, 0)).collect();
        format!("{name}({})", inside.join(", "))
    };
    // Digits that a sum of nearly equal numbers loses are printed more of each.
    let close = numbers.map(|digits| digits + lost(args, node));
    let of_plain = |name: &str| format!("{name}({})", in_unit(arg(0), None, numbers, 0));
    match op {
        Op::Add => wrap(format!("{} + {}", in_unit(arg(0), unit, close, 1), in_unit(arg(1), unit, close, 1)), outer > 1),
        Op::Sub => wrap(format!("{} − {}", in_unit(arg(0), unit, close, 1), in_unit(arg(1), unit, close, 2)), outer > 1),
        Op::Mul => {
            let product = format!("{} × {}", text(arg(0), numbers, 2), text(arg(1), numbers, 2));
            let factor = ratio(arg(0).unit(), None) * ratio(arg(1).unit(), None) / ratio(unit, None);
            let product = if numbers.is_some() { scaled(product, factor, 0) } else { product };
            wrap(product, outer > 2)
        }
        Op::Div => {
            let quotient = format!("{} ÷ {}", text(arg(0), numbers, 2), text(arg(1), numbers, 3));
            let factor = ratio(arg(0).unit(), None) / ratio(arg(1).unit(), None) / ratio(unit, None);
            let quotient = if numbers.is_some() { scaled(quotient, factor, 0) } else { quotient };
            wrap(quotient, outer > 2)
        }
        Op::Sqrt => {
            let inside = arg(0);
            let factor = ratio(inside.unit(), None) / (ratio(unit, None) * ratio(unit, None));
            let text = text(inside, numbers, if numbers.is_some() && !factor.is_one() { 2 } else { 0 });
            format!("sqrt({})", if numbers.is_some() { scaled(text, factor, 0) } else { text })
        }
        Op::Sin => of_plain("sin"),
        Op::Asin => of_plain("asin"),
        Op::Cos => of_plain("cos"),
        Op::Acos => of_plain("acos"),
        Op::Exp => of_plain("exp"),
        Op::Ln => of_plain("ln"),
        Op::Log10 => of_plain("log10"),
        Op::Exp2 => of_plain("2^"),
        Op::Pow => {
            let (base, power) = (in_unit(arg(0), None, numbers, 3), in_unit(arg(1), None, numbers, 3));
            let simple = |t: &str| t.starts_with('(') || t.chars().all(|c| c.is_alphanumeric() || c == '.' || c == '_');
            let held = |t: String| if simple(&t) { t } else { format!("({t})") };
            format!("{}^{}", held(base), held(power))
        }
        Op::Abs => call("abs"),
        Op::Max => call("max"),
        Op::Min => call("min"),
    }
}

#[cfg(test)]
#[path = "print_tests.rs"]
mod tests;
