//! `issue`: makes cards, press sheets and books, and enters the cards in the register.

use std::path::{Path, PathBuf};

use crate::finding::{Finding, Severity};
use crate::job::Fit;
use crate::press::{self, PressError};
use crate::register::{self, Assigned, Entry};
use crate::source::write_atomic;

use super::desk::{Desk, Sets, in_force};
use super::load::Loaded;
use super::measured::Measured;
use super::runs::{self, Batch, Pressed, Printed, Ready};
use super::seam::{Exit, Narrator, Options, Outcome, Product};
use super::{attach, book, dump};

/// Version that register lines name.
const VERSION: &str = env!("CARGO_PKG_VERSION");

/// Runs the command.
pub fn issue(options: &Options, ids: &[String], proof: bool, narrator: &dyn Narrator) -> Outcome {
    let way = if proof { Way::Proof } else { Way::Enter };
    match try_issue(options, ids, way, narrator) {
        Ok(outcome) | Err(outcome) => outcome,
    }
}

/// Makes some papers as `issue` would, without print runs, and enters nothing: for a paper that is read once.
pub fn paper_only(options: &Options, ids: &[String], narrator: &dyn Narrator) -> Outcome {
    match try_issue(options, ids, Way::Only, narrator) {
        Ok(outcome) | Err(outcome) => outcome,
    }
}

/// What becomes of what is made.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    /// A PROOF band, nothing entered.
    Proof,
    /// Entered in the register.
    Enter,
    /// As it would be issued, but nothing entered.
    Only,
}

fn try_issue(options: &Options, ids: &[String], way: Way, narrator: &dyn Narrator) -> Result<Outcome, Outcome> {
    let proof = way == Way::Proof;
    narrator.stage("reading and working", 1);
    let loaded = Loaded::open(options)?;
    let (register, found) = loaded.register()?;
    let mut desk = Desk::open(&loaded, &register, found, ids, Sets::All)?;
    narrator.step();
    let (cards, books) = (desk.free(), desk.free_books());
    let dump = options.dump.as_deref();
    let mut made = make(&loaded, &desk, &register, &Order { cards: &cards, books: &books, proof, dump }, narrator)?;
    // What the press measured may stop a card that read well; then the rest is set again without it.
    desk.keep(fit_findings(&loaded, &made.fits));
    desk.keep(std::mem::take(&mut made.findings));
    if ids.is_empty() {
        desk.close(&loaded)
    } else {
        desk.settle(&loaded)
    }
    let left: Vec<usize> = desk.free().into_iter().filter(|i| cards.contains(i)).collect();
    let left_books: Vec<usize> = desk.free_books().into_iter().filter(|i| books.contains(i)).collect();
    if left.len() != cards.len() || left_books.len() != books.len() {
        made = make(&loaded, &desk, &register, &Order { cards: &left, books: &left_books, proof, dump }, narrator)?;
        desk.keep(std::mem::take(&mut made.findings));
    }
    let mut entered = 0;
    if way == Way::Only {
        made.files.retain(|f| f.path.starts_with("cards/"));
    }
    if way == Way::Enter {
        register::commit(&loaded.kept(), &register, &made.assigned).map_err(|why| Outcome::could_not(why.to_string()))?;
        entered = made.assigned.iter().filter(|a| a.is_new()).count();
    }
    let root = if proof { options.out.join("proof") } else { options.out.clone() };
    let paths = write(&root, &made.files, ids.is_empty())?;
    Ok(report(&loaded, options, &desk, (&left, &left_books), paths, entered, way))
}

struct Made {
    files: Vec<Printed>,
    fits: Vec<Fit>,
    assigned: Vec<Assigned>,
    findings: Vec<Finding>,
}

/// What to make: cards and books by their place on the desk.
struct Order<'o> {
    cards: &'o [usize],
    books: &'o [usize],
    proof: bool,
    dump: Option<&'o Path>,
}

fn make(
    loaded: &Loaded,
    desk: &Desk<'_>,
    register: &register::Register,
    order: &Order<'_>,
    narrator: &dyn Narrator,
) -> Result<Made, Outcome> {
    let Order { cards, books, proof, dump } = *order;
    let drafts = desk.drafts(loaded, cards);
    let assigned = register::assign(register, &drafts, loaded.on, VERSION).map_err(|stuck| Outcome::could_not(stuck.to_string()))?;
    let ready = ready(desk, cards, &assigned, proof);
    let batches = runs::batches(loaded, &ready, proof);
    let force: Vec<&Entry> = in_force(register, &assigned);
    let bound: Vec<(String, press::payload::Book, Vec<u8>, &book::Draft<'_>)> = books
        .iter()
        .filter_map(|i| desk.books.get(*i).map(|draft| (*i, draft)))
        .map(|(i, draft)| {
            let band = if proof { Some("band.proof") } else { desk.book_held(i).then_some("band.hold") };
            let attached = attach::document(&draft.name, &draft.title, &[(draft.name.clone(), &draft.face)]);
            (format!("book/{}.pdf", draft.name), book::book(loaded, draft, &force, band, &desk.book_accepted(i)), attached, draft)
        })
        .collect();
    if let Some(dir) = dump {
        let books: Vec<_> = bound.iter().map(|(path, book, attached, _)| (path.clone(), book.clone(), attached.clone())).collect();
        dump::dump(dir, &batches, &books)?;
    }
    let total = u64::try_from(batches.len() + bound.len()).unwrap_or(0);
    narrator.stage("setting", total);
    let (pressed, books) = set(&batches, &bound);
    let mut made = Made { files: Vec::new(), fits: Vec::new(), assigned, findings: Vec::new() };
    for result in pressed {
        narrator.step();
        let pressed = result.map_err(|errors| broken(&errors))?;
        made.files.extend(pressed.files);
        made.fits.extend(pressed.fits);
        made.findings.extend(pressed.findings);
    }
    for (result, (path, _, _, draft)) in books.into_iter().zip(&bound) {
        narrator.step();
        let bound = result.map_err(|errors| broken(&errors))?;
        for value in draft.face.values.iter().filter(|v| !bound.shows(&v.text)) {
            made.findings.push(runs::not_printed(&draft.name, value));
        }
        made.findings.extend(
            bound
                .overlaps
                .iter()
                .map(|(page, a, b)| runs::overprinted(&format!("{} page {}", draft.name, page + 1), a, b).figure(&draft.name)),
        );
        made.files.push(Printed { path: path.clone(), pdf: bound.pdf });
    }
    Ok(made)
}

/// Cards with their codes, revisions and bands.
fn ready<'a, 'd>(desk: &'d Desk<'a>, cards: &[usize], assigned: &[Assigned], proof: bool) -> Vec<Ready<'a, 'd>> {
    let one = |(i, a): (&usize, &Assigned)| {
        let band = match (proof, desk.held(*i)) {
            (true, _) => Some("band.proof"),
            (false, true) => Some("band.hold"),
            (false, false) => None,
        };
        desk.documents.get(*i).map(|document| Ready { document, entry: a.entry.clone(), band, accepted: desk.accepted(*i) })
    };
    cards.iter().zip(assigned).filter_map(one).collect()
}

type Set<T> = Vec<Result<T, Vec<PressError>>>;

/// Sets runs and books side by side. Plain threads: the typesetter has a pool of its own inside.
fn set(
    batches: &[Batch<'_, '_, '_>],
    books: &[(String, press::payload::Book, Vec<u8>, &book::Draft<'_>)],
) -> (Set<Pressed>, Set<press::Bound>) {
    std::thread::scope(|scope| {
        let books: Vec<_> = books.iter().map(|(_, b, attached, _)| scope.spawn(|| press::book(b, Some(attached)))).collect();
        let runs: Vec<_> = batches.iter().map(|b| scope.spawn(|| runs::press(b))).collect();
        (
            runs.into_iter().map(|t| t.join().unwrap_or_else(|_| Err(lost()))).collect(),
            books.into_iter().map(|t| t.join().unwrap_or_else(|_| Err(lost()))).collect(),
        )
    })
}

fn lost() -> Vec<PressError> {
    vec![PressError::plain("the press stopped: this is a fault of Hodbook")]
}

/// A complaint of the typesetter that no check foresaw.
fn broken(errors: &[PressError]) -> Outcome {
    let lines: Vec<String> = errors.iter().map(ToString::to_string).collect();
    Outcome::could_not(format!("the page could not be set: {}", lines.join("; ")))
}

/// What the checks say of the faces as they came off the press.
fn fit_findings(loaded: &Loaded, fits: &[Fit]) -> Vec<Finding> {
    crate::sound::run_these(crate::sound::FACES, &crate::sound::Ground { fits, ..loaded.ground() })
}

/// Writes the files; a full run first clears what an earlier one left, so that no withheld card lies about.
fn write(root: &std::path::Path, files: &[Printed], whole: bool) -> Result<Vec<PathBuf>, Outcome> {
    if whole {
        let keep: Vec<PathBuf> = files.iter().map(|f| root.join(&f.path)).collect();
        for folder in ["cards", "runs", "book"] {
            crate::source::clear(&root.join(folder), &keep)
                .map_err(|e| Outcome::could_not(format!("cannot clear {}: {e}", root.join(folder).display())))?;
        }
    }
    let mut paths = Vec::new();
    for file in files {
        let path = root.join(&file.path);
        write_atomic(&path, &file.pdf).map_err(|e| Outcome::could_not(format!("cannot write {}: {e}", path.display())))?;
        paths.push(path);
    }
    Ok(paths)
}

#[allow(clippy::too_many_arguments)]
fn report(
    loaded: &Loaded,
    options: &Options,
    desk: &Desk<'_>,
    (cards, books): (&[usize], &[usize]),
    paths: Vec<PathBuf>,
    entered: usize,
    way: Way,
) -> Outcome {
    let (findings, count) = loaded.draw(options, &desk.findings);
    let withheld: Vec<&str> =
        (0..desk.documents.len()).filter(|i| !cards.contains(i)).filter_map(|i| desk.codes.get(i)).map(String::as_str).collect();
    let runs = paths.iter().filter(|p| p.parent().is_some_and(|d| d.ends_with("runs"))).count();
    let register = match way {
        Way::Proof => "proof only, nothing entered".to_owned(),
        Way::Only => "nothing entered".to_owned(),
        Way::Enter => format!("{entered} entered in the register"),
    };
    let mut summary = format!(
        "{} in {}, {} in {}, {register}",
        counted(cards.len(), "card", "cards"),
        counted(runs, "print run", "print runs"),
        counted(books.len(), "book", "books"),
        options.out.display()
    );
    if !withheld.is_empty() {
        summary.push_str(&format!("; withheld: {}", withheld.join(", ")));
    }
    if books.len() < desk.books.len() {
        summary.push_str(&format!("; {} withheld", counted(desk.books.len() - books.len(), "book", "books")));
    }
    if !desk.findings.is_empty() {
        summary.push_str(&format!("\n{count}"));
    }
    let stopped = desk.findings.iter().any(|f| f.severity == Severity::Stop);
    Outcome {
        product: Product::Files(paths),
        findings,
        summary,
        exit: if stopped { Exit::Stop } else { Exit::Clean },
        ..Outcome::default()
    }
}

fn counted(n: usize, one: &str, many: &str) -> String {
    format!("{n} {}", if n == 1 { one } else { many })
}

/// Sets every card that may be printed, those aside that were measured before, and tells what the checks say of its faces.
/// Writes nothing but what it measured, to the output folder.
///
/// # Errors
/// What the typesetter could not do.
pub fn measure(
    loaded: &Loaded,
    desk: &Desk<'_>,
    register: &register::Register,
    out: &Path,
    narrator: &dyn Narrator,
) -> Result<Vec<Finding>, Outcome> {
    let cards = desk.free();
    let drafts = desk.drafts(loaded, &cards);
    let assigned = match register::assign(register, &drafts, loaded.on, VERSION) {
        // So many cannot be in force at once, and `issue` will say so; each can be measured all the same.
        Err(stuck @ register::Stuck::NoWordLeft) => {
            narrator.say(&format!("{stuck}: they cannot all be issued, and are measured with the words of single cards"));
            let one = |draft: &register::Draft| register::assign(register, std::slice::from_ref(draft), loaded.on, VERSION);
            drafts.iter().map(one).collect::<Result<Vec<_>, _>>().map(|all| all.concat())
        }
        other => other,
    };
    let assigned = assigned.map_err(|stuck| Outcome::could_not(stuck.to_string()))?;
    let ready = ready(desk, &cards, &assigned, true);
    let batches = runs::batches(loaded, &ready, true);
    narrator.stage("measuring", 1);
    let mut known = Measured::open(out);
    let measured = known.runs(&batches).map_err(|errors| broken(&errors))?;
    narrator.step();
    let fits: Vec<Fit> = batches.iter().zip(&measured).flat_map(|(batch, faces)| runs::fits(batch, faces)).collect();
    let findings = batches.iter().zip(&measured).flat_map(|(batch, faces)| runs::shown(batch, faces));
    let mut all = fit_findings(loaded, &fits);
    all.extend(findings);
    known.close(out);
    Ok(all)
}
