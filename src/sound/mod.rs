//! The checks: what the paper will say, judged. Every check is one file with its manual page beside it.
//!
//! A check sees the job, its figures, the texts as rendered and how faces fitted ([`Ground`]), and gives
//! findings; it never prints. A verdict on something printed is taken on the printed value, so that a card and
//! its check cannot disagree. Limits come from the mix or from [`limits`], where each row names its source.

pub mod amounts;
pub mod base;
pub mod cure;
pub mod day;
pub mod ids;
pub mod languages;
pub mod limits;
pub mod mixer;
pub mod page;
pub mod paper;
pub mod people;
mod phrase;
mod runs;
pub mod seen;
pub mod signed;
pub mod takeoff;
pub mod thickness;
mod told;
pub mod water;
pub mod weather;

pub(crate) use crate::prose::sentence as text;
pub use page::page;
pub use seen::{Role, Seen};

use std::collections::BTreeSet;
use std::sync::OnceLock;

use crate::finding::{Finding, Severity};
use crate::job::{Fit, Issued, Job};
use crate::quantity::Mark;
use crate::source::{Span, side_by_side};
use crate::tally::Tally;

/// What a run of the checks stands on.
pub struct Ground<'a> {
    /// What the author's files say.
    pub job: &'a Job,
    /// Its figures.
    pub tally: &'a Tally,
    /// Every text that will be printed, once per subject and language.
    pub seen: &'a [Seen<'a>],
    /// How the faces of the cards fitted; empty before layout, and then no face is judged.
    pub fits: &'a [Fit],
    /// Cards in force.
    pub issued: &'a [Issued],
    /// The day of the run: year, month, day.
    pub on: (i16, i8, i8),
    /// From the place that a figure remembers to the place in a file; [`span_of`] unless files are renumbered.
    pub span_of: fn(Mark) -> Span,
    /// The weather of the planned days, worked once for the checks that ask; start it empty.
    pub sky: OnceLock<Vec<weather::sky::Kept>>,
    /// Every text beside its twin, read once for the checks that ask; start it empty.
    pub sides: OnceLock<languages::Sides>,
    /// Texts that differ in words, found once for the checks that ask; start it empty.
    pub alike: OnceLock<Vec<usize>>,
    /// Texts that differ in words or mixes, found once for the checks that ask; start it empty.
    pub of_mixes: OnceLock<Vec<usize>>,
}

impl<'a> Ground<'a> {
    /// A job with its figures on a day: no text, no face and no card in force yet.
    pub fn of(job: &'a Job, tally: &'a Tally, on: (i16, i8, i8)) -> Ground<'a> {
        Ground {
            job,
            tally,
            seen: &[],
            fits: &[],
            issued: &[],
            on,
            span_of,
            sky: OnceLock::new(),
            sides: OnceLock::new(),
            alike: OnceLock::new(),
            of_mixes: OnceLock::new(),
        }
    }
}

impl<'a> Ground<'a> {
    /// The texts, one of each that print the same words: for checks that look at nothing but those.
    ///
    /// A caution stands under many procedures of many sites; whatever is wrong with its words is wrong at one place.
    pub fn texts(&self) -> impl Iterator<Item = &'a Seen<'a>> {
        let seen = self.seen;
        self.alike.get_or_init(|| self.places(|_| ())).iter().filter_map(move |i| seen.get(*i))
    }

    /// The texts, one of each that print the same words for the same mix and batch, or for a site of the same mixes.
    pub fn texts_of_mixes(&self) -> impl Iterator<Item = &'a Seen<'a>> {
        let seen = self.seen;
        self.of_mixes.get_or_init(|| self.places(|seen| seen.subject.kind(self.job))).iter().filter_map(move |i| seen.get(*i))
    }

    /// One place of all texts that print the same words and share a key.
    fn places<K: Ord>(&self, key: impl Fn(&'a Seen<'a>) -> K) -> Vec<usize> {
        let mut told = BTreeSet::new();
        let mut new = |seen: &'a Seen<'a>| told.insert((seen.doc.identity(), std::ptr::from_ref(seen.edition) as usize, key(seen)));
        self.seen.iter().enumerate().filter(|(_, seen)| new(seen)).map(|(i, _)| i).collect()
    }
}

/// A check: what it is called, how bad it is, what its manual says and how it is run.
#[derive(Debug)]
pub struct Check {
    /// Name of its finding.
    pub name: &'static str,
    /// Ids in the trade's own list of checks.
    pub ids: &'static [&'static str],
    /// How bad a finding of it is. One name has one severity.
    pub severities: &'static [Severity],
    /// One line for lists.
    pub title: &'static str,
    /// Manual page, Markdown.
    pub manual: &'static str,
    /// The page in other languages, by code: its title, why and what to do, for the trouble chapter of a book.
    pub twins: &'static [(&'static str, &'static str)],
    /// Finds.
    pub run: fn(&Ground<'_>) -> Vec<Finding>,
}

/// Every check, by family.
pub static CHECKS: &[&Check] = &[
    &amounts::amount_unlikely::CHECK,
    &amounts::unit_of_other_system::CHECK,
    &water::start_water_over_limit::CHECK,
    &water::water_not_scaled::CHECK,
    &water::water_before_mix_time::CHECK,
    &water::step_over_limit::CHECK,
    &water::start_water_under_least::CHECK,
    &water::least_far_under_start::CHECK,
    &water::start_water_off_usual::CHECK,
    &water::step_too_large::CHECK,
    &water::water_unmeasured::CHECK,
    &water::panel_water_off_mix::CHECK,
    &water::water_by_eye::CHECK,
    &water::water_source_untested::CHECK,
    &water::mix_water_too_hot::CHECK,
    &water::ice_not_melted::CHECK,
    &water::water_after_open_time::CHECK,
    &mixer::ratio_off_design::CHECK,
    &mixer::mortar_class_wrong::CHECK,
    &mixer::batch_over_mixer::CHECK,
    &mixer::batch_over_rating::CHECK,
    &mixer::half_load_not_allowed::CHECK,
    &mixer::half_by_eye::CHECK,
    &mixer::half_of_one_bag::CHECK,
    &mixer::bag_differs_from_mix::CHECK,
    &mixer::mixing_time_under_limit::CHECK,
    &mixer::mixing_told_short::CHECK,
    &mixer::charging_order_differs::CHECK,
    &mixer::batch_under_mixer::CHECK,
    &mixer::drum_for_stiff_mix::CHECK,
    &mixer::pigment_over_limit::CHECK,
    &mixer::pigment_without_cement::CHECK,
    &mixer::admixture_off_sheet::CHECK,
    &mixer::chloride_over_lath::CHECK,
    &mixer::wet_density_unlikely::CHECK,
    &mixer::yield_unlikely::CHECK,
    &mixer::yield_not_weighed::CHECK,
    &mixer::weighed_density_off::CHECK,
    &mixer::lot_damp_or_lumpy::CHECK,
    &mixer::lot_past_shelf_life::CHECK,
    &mixer::strength_promised::CHECK,
    &mixer::half_of_mortar_unsaid::CHECK,
    &thickness::lift_too_thick::CHECK,
    &thickness::thinner_than_mix::CHECK,
    &thickness::feather_edge::CHECK,
    &thickness::face_over_mix::CHECK,
    &thickness::smooth_scratch::CHECK,
    &thickness::bags_on_most::CHECK,
    &thickness::lifts_on_mean::CHECK,
    &thickness::fill_impossible::CHECK,
    &thickness::fill_unusual::CHECK,
    &thickness::fill_unmeasured::CHECK,
    &thickness::fill_off_panel::CHECK,
    &thickness::lath_not_buried::CHECK,
    &thickness::groove_under_mix::CHECK,
    &thickness::groove_near_scratch::CHECK,
    &thickness::groove_to_lath::CHECK,
    &thickness::overhead_too_thick::CHECK,
    &thickness::overhead_unplanned::CHECK,
    &thickness::round_taken_flat::CHECK,
    &thickness::texture_off_panel::CHECK,
    &takeoff::surface_unworked::CHECK,
    &takeoff::opening_misplaced::CHECK,
    &takeoff::reveal_unstated::CHECK,
    &takeoff::order_not_whole::CHECK,
    &takeoff::order_knife_edge::CHECK,
    &takeoff::reserve_too_small::CHECK,
    &takeoff::waste_unlikely::CHECK,
    &takeoff::order_over_payload::CHECK,
    &takeoff::own_haul_over_payload::CHECK,
    &takeoff::pallet_floor_unknown::CHECK,
    &takeoff::pallet_over_floor::CHECK,
    &takeoff::wall_spans_lots::CHECK,
    &takeoff::prices_old::CHECK,
    &weather::cold_without_heat::CHECK,
    &weather::freeze_after_set::CHECK,
    &weather::hot_without_plan::CHECK,
    &weather::mix_temperature_out_of_range::CHECK,
    &weather::drying_fast::CHECK,
    &weather::drying_too_fast::CHECK,
    &weather::face_in_sun::CHECK,
    &weather::rain_without_cover::CHECK,
    &weather::base_frozen::CHECK,
    &weather::base_hot_or_saturated::CHECK,
    &weather::heater_unvented::CHECK,
    &weather::spray_drifts::CHECK,
    &weather::forecast_old::CHECK,
    &weather::mix_target_out_of_reach::CHECK,
    &base::weight_over_allowance::CHECK,
    &people::lift_over_advised::CHECK,
    &people::lift_far_over_advised::CHECK,
    &people::dust_plan_missing::CHECK,
    &people::skin_and_eye_caution_missing::CHECK,
    &people::caution_missing::CHECK,
    &people::authority_order_wrong::CHECK,
    &people::eyewash_missing::CHECK,
    &people::wash_station_missing::CHECK,
    &people::ground_fault_missing::CHECK,
    &people::platform_overloaded::CHECK,
    &people::platform_without_tag::CHECK,
    &people::hand_in_turning_mixer::CHECK,
    &people::solvent_without_air::CHECK,
    &people::wash_out_into_ground::CHECK,
    &people::wash_out_unplanned::CHECK,
    &people::safety_text_not_in_crew_language::CHECK,
    &people::heat_without_shade::CHECK,
    &base::mix_on_bad_base::CHECK,
    &base::barrier_missing::CHECK,
    &base::weep_clearance_short::CHECK,
    &base::lath_fastening_wide::CHECK,
    &base::panel_over_limit::CHECK,
    &base::lath_through_joint::CHECK,
    &base::free_standing_unsigned::CHECK,
    &base::framing_bends_too_far::CHECK,
    &base::firebox_uncleared::CHECK,
    &base::metal_touches_mix::CHECK,
    &base::waterproofing_undetailed::CHECK,
    &base::water_contact_unsafe::CHECK,
    &base::scratch_state_unset::CHECK,
    &cure::wet_cure_differs::CHECK,
    &cure::cold_day_counted::CHECK,
    &cure::finish_gate_missing::CHECK,
    &cure::finish_before_gate::CHECK,
    &cure::sealer_on_flat_area::CHECK,
    &cure::plastic_on_color::CHECK,
    &cure::color_by_batch::CHECK,
    &cure::cure_shortened::CHECK,
    &cure::cure_keeper_missing::CHECK,
    &day::batch_stale_before_placed::CHECK,
    &day::day_over_carve_limit::CHECK,
    &day::break_while_patch_closes::CHECK,
    &day::day_without_slack::CHECK,
    &day::crew_over_booked::CHECK,
    &day::stop_line_mid_texture::CHECK,
    &day::dates_out_of_order::CHECK,
    &day::next_coat_too_soon::CHECK,
    &day::next_trade_too_soon::CHECK,
    &day::mixing_slower_than_placing::CHECK,
    &day::carving_after_dark::CHECK,
    &day::last_batch_too_late::CHECK,
    &day::clock_starts_wrong::CHECK,
    &paper::typed_number_differs::CHECK,
    &paper::typed_number_unlinked::CHECK,
    &paper::typed_water::CHECK,
    &paper::typed_number::CHECK,
    &paper::face_overflows::CHECK,
    &paper::type_below_class::CHECK,
    &paper::past_good_until::CHECK,
    &paper::mix_revision_not_in_force::CHECK,
    &paper::code_or_word_twice::CHECK,
    &paper::write_in_without_box::CHECK,
    &paper::placeholder_left::CHECK,
    &paper::fixed_rounded_unsafe::CHECK,
    &paper::units_mixed::CHECK,
    &paper::number_without_unit::CHECK,
    &paper::typed_number_ambiguous::CHECK,
    &paper::brand_named::CHECK,
    &paper::vague_quantity::CHECK,
    &paper::drawing_of_nothing::CHECK,
    &languages::twin_out_of_date::CHECK,
    &languages::twin_behind::CHECK,
    &languages::twin_overflows::CHECK,
    &languages::twin_slots_differ::CHECK,
    &languages::twin_steps_differ::CHECK,
    &languages::twin_missing_on_card::CHECK,
    &languages::twin_missing::CHECK,
    &languages::twin_numbers_differ::CHECK,
    &languages::heard_word_printed::CHECK,
    &languages::glossary_word_twice::CHECK,
    &languages::gallon_unmarked::CHECK,
    &languages::twin_decimal_comma::CHECK,
    &languages::negation_lost::CHECK,
    &signed::approver_missing::CHECK,
    &signed::approver_is_author::CHECK,
    &signed::author_missing::CHECK,
    &signed::acceptance_unknown::CHECK,
    &signed::acceptance_of_stop::CHECK,
    &signed::acceptance_lapsed::CHECK,
    &signed::acceptance_idle::CHECK,
    &signed::acceptance_by_author::CHECK,
];

/// Checks of faces as the press measured them: the only ones that need no texts.
pub static FACES: &[&Check] = &[&paper::face_overflows::CHECK, &paper::type_below_class::CHECK, &languages::twin_overflows::CHECK];

/// Runs every check: by file and place, the same finding reached for several subjects told once.
pub fn run(ground: &Ground<'_>) -> Vec<Finding> {
    run_these(CHECKS, ground)
}

/// Runs some checks.
pub fn run_these(checks: &[&Check], ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = side_by_side(checks, |check| (check.run)(ground)).concat();
    // Findings without a place come last; within a place, the worst first.
    let key = |f: &Finding| (f.at.is_none(), f.at.as_ref().map(|(span, _)| *span), f.severity);
    found.sort_by(|a, b| key(a).cmp(&key(b)).then_with(|| a.name.cmp(b.name)).then_with(|| a.title.cmp(&b.title)));
    let place = |f: &Finding| f.at.as_ref().map(|(span, _)| *span);
    found.dedup_by(|b, a| a.name == b.name && place(a) == place(b) && a.title == b.title);
    found
}

/// The check of this name.
pub fn check(name: &str) -> Option<&'static Check> {
    CHECKS.iter().copied().find(|c| c.name == name)
}

/// The manual page of a check, headed by its name, severity and ids.
pub fn manual(name: &str) -> Option<String> {
    let check = check(name)?;
    let severities: Vec<&str> = check.severities.iter().map(|s| s.word()).collect();
    let head = format!("# {}\n\n{} · {} · {}\n\n", check.name, severities.join(", "), check.ids.join(", "), check.title);
    Some(head + check.manual)
}

/// A figure's mark as a place: the same three numbers.
pub fn span_of(mark: Mark) -> Span {
    Span { file: mark.file, start: mark.start, end: mark.end }
}
