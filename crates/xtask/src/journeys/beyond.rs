//! What an engine cannot show, and why: the one place where a journey is left out.

use crate::browser::Engine;
use anyhow::{Result, ensure};

/// Journeys that an engine cannot run.
struct Beyond {
    engine: Engine,
    /// What the engine or its driver lacks: "not there, as …".
    reason: &'static str,
    /// Names of journeys, or of modules of them, which end in `::`.
    journeys: &'static [&'static str],
}

const BEYOND: &[Beyond] = &[
    Beyond {
        engine: Engine::Firefox,
        reason: "the widths, the paper, the owner's preferences and the pace of the processor are set by Chromium's developer protocol",
        journeys: &[
            "accessibility::matrix::",
            "accessibility::preferences::",
            "pace::keys_pressed_while_an_answer_is_drawn_stay",
        ],
    },
    Beyond {
        engine: Engine::Firefox,
        reason: "once Shift and Tab have gone past the first stop it shows no ring on it, for a cause not found",
        journeys: &["accessibility::keyboard::bolt::bolt_takes_a_whole_bolt_by_keys"],
    },
    Beyond {
        engine: Engine::Firefox,
        reason: "it can be given no limit of room, and its store is cleared by Chromium's developer protocol",
        journeys: &[
            "sheet::storage::a_full_device_is_said_and_saved_again_once_there_is_room",
            "faults::full::",
            "faults::wrong_answers::a_first_visit_is_not_called_ready_and_the_next_one_makes_it_good",
        ],
    },
    Beyond {
        engine: Engine::Firefox,
        reason: "it waits for the rest of half a module for ever, so only the start text says what to do",
        journeys: &["faults::install::half_a_module_is_said_and_loaded_whole_at_the_next_visit"],
    },
    Beyond {
        engine: Engine::Firefox,
        reason: "this version of it has no Trusted Types",
        journeys: &["policy::no_text_becomes_code"],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "its driver starts every browser as one that has never seen the page",
        journeys: &[
            "cold_start::the_page_starts_from_a_dead_network",
            "convert::settings_stay_and_decide_what_comes_first",
            "faults::",
            "pace::",
            "sheet::killed::",
            "sheet::storage::a_full_device_is_said_and_saved_again_once_there_is_room",
        ],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "its driver runs nothing before a page",
        journeys: &[
            "cannot_run::a_browser_without_webassembly_is_told_what_can_run_the_page",
            "cannot_run::a_browser_that_blocks_storage_runs_the_page_and_says_what_is_missing",
            "hostile_links::",
            "ready_is_true::a_worker_that_does_not_answer_is_not_waited_for",
            "sheet::hostile::",
            "policy::",
            "sheet::two_tabs::tabs_that_do_not_hear_each_other_keep_both_sheets",
            "update::",
        ],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "its driver sends no keys to where the focus is, and has no other preferences to set",
        journeys: &["accessibility::"],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "it has no setting that keeps a site from storing",
        journeys: &["sheet::storage::a_browser_that_keeps_nothing_still_lets_one_write_and_says_so"],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "its browser puts no file where it is told to",
        journeys: &[
            "sheet::files::files_of_the_page_have_the_published_form_and_come_back_whole",
            "sheet::files::tables_open_in_a_spreadsheet_and_run_nothing_there",
            "sheet::share::a_sheet_too_long_for_a_code_says_so_and_goes_as_link_or_file",
            "sheet::share::a_browser_that_cannot_deflate_says_so_and_still_gives_the_file",
            "sheet::storage::a_sheet_that_no_file_may_hold_does_not_keep_the_others_from_a_backup",
            "sheet::storage::a_record_that_cannot_be_read_is_set_aside_whole_and_can_be_saved",
            "sheet::storage::a_backup_holds_what_could_not_be_saved_and_says_what_it_leaves_out",
            "sheet::storage::a_record_of_a_newer_version_is_left_alone",
        ],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "it lets no script read what was copied",
        journeys: &["sheet::share::a_clipboard_that_is_blocked_says_so"],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "the reader finds no code in the coarse picture its driver takes",
        journeys: &["sheet::share::a_code_on_the_screen_brings_the_sheet_to_another_phone"],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "its driver does not answer once there is a second tab",
        journeys: &[
            "sheet::take::a_bolt_comes_back_to_its_row_as_another_tab_has_left_it",
            "sheet::two_tabs::a_conflict_found_elsewhere_leaves_the_screen_and_says_so_on_the_sheet_screen",
            "sheet::two_tabs::a_save_in_one_tab_shows_in_the_other",
            "sheet::two_tabs::what_a_tab_typed_last_before_it_went_is_not_written_over",
        ],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "its driver cannot print",
        journeys: &["sheet::job::a_job_goes_from_plan_to_paper_on_a_dead_network"],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "its window cannot be made as small as wanted",
        journeys: &[
            "belt::edit::everything_to_tap_is_large_enough_and_nothing_is_cut_off",
            "bolt::look::it_takes_gloves_and_a_narrow_phone",
            "bolt::look::on_its_side_the_phone_shows_the_verdict",
        ],
    },
    Beyond {
        engine: Engine::WebKit,
        reason: "a field tapped again loses the focus in this journey, for a cause not found; by the same taps from a script it keeps it",
        journeys: &["bolt::verdict::a_person_asks_whether_to_believe_a_spec"],
    },
];

/// What an engine shows, but not as well as another.
const WEAKER: &[(Engine, &str)] = &[
    (
        Engine::Firefox,
        "a clipboard that refuses is put in by the journey, as it has no setting for that",
    ),
    (
        Engine::Firefox,
        "a request to where it fetches lists of its own would not be noticed",
    ),
    (Engine::WebKit, "a finger is a mouse, as its driver has no finger"),
    (Engine::WebKit, "the screen is 447 points wide instead of 390"),
];

/// Fails when an entry names no journey: what has been renamed would be left out unsaid, or run.
pub(super) fn check(all: &[String]) -> Result<()> {
    for entry in BEYOND.iter().flat_map(|beyond| beyond.journeys) {
        ensure!(
            all.iter().any(|journey| is_named(entry, journey)),
            "`{entry}` in journeys/beyond.rs is no journey"
        );
    }
    Ok(())
}

/// Why an engine cannot run a journey; none if it can.
pub(super) fn reason(engine: Engine, journey: &str) -> Option<&'static str> {
    BEYOND
        .iter()
        .find(|beyond| beyond.engine == engine && beyond.journeys.iter().any(|entry| is_named(entry, journey)))
        .map(|beyond| beyond.reason)
}

/// Journeys that are left out, by what the engine lacks.
pub(super) fn by_reason<'a>(engine: Engine, journeys: &[&'a str]) -> Vec<(&'static str, Vec<&'a str>)> {
    let reasons = BEYOND.iter().filter(|beyond| beyond.engine == engine);
    let groups = reasons.map(|beyond| {
        let of_it = |journey: &&&str| reason(engine, journey) == Some(beyond.reason);
        (beyond.reason, journeys.iter().filter(of_it).copied().collect())
    });
    groups
        .filter(|(_, journeys): &(_, Vec<_>)| !journeys.is_empty())
        .collect()
}

/// What an engine shows less well than another.
pub(super) fn weaker(engine: Engine) -> impl Iterator<Item = &'static str> {
    WEAKER
        .iter()
        .filter(move |(of, _)| *of == engine)
        .map(|(_, what)| *what)
}

fn is_named(entry: &str, journey: &str) -> bool {
    journey == entry || (entry.ends_with("::") && journey.starts_with(entry))
}
