//! A shop's own arm and density, as people and programs read them.

use serde::Serialize;

use super::Look;
use super::json::CONTRACT;
use super::page::Page;
use crate::advice::{Calibrated, Setting};

/// What each setting is called, in the order of [`Calibrated::settings`].
const CALLED: [&str; 2] = ["Scale arm", "Density"];

/// Writes the two numbers with their errors, what to know of them, and the lines that set them: those are never wrapped.
#[must_use]
pub fn calibrated_text(calibrated: &Calibrated, look: &Look) -> String {
    let mut page = Page::new(look);
    let fit = calibrated.calibration();
    page.heading(&format!(
        "Your bench, from {} readings of {} {}",
        fit.n(),
        calibrated.balls(),
        if calibrated.balls() == 1 {
            "ball"
        } else {
            "balls"
        }
    ));
    for (called, setting) in CALLED.iter().zip(calibrated.settings()) {
        page.row(2, 11, called, &found(setting));
    }
    let left = format!("{:.3} oz a reading (root mean square)", fit.residual_rms());
    page.row(2, 11, "Left over", &left);
    page.paragraph(
        2,
        "Give or take is one standard error: two times in three the truth lies no farther off.",
    );
    page.heading("To know");
    for note in calibrated.notes() {
        page.item(2, "- ", note);
    }
    page.heading("To set them");
    page.paragraph(
        2,
        "Save the lines below as a file, and name it with --rules in every command.",
    );
    let mut text = page.finish();
    text.push('\n');
    // Text for a program: it starts at the margin and keeps its lines.
    text.push_str(calibrated.rules_file());
    text
}

fn found(setting: &Setting) -> String {
    let unit = setting.notation().unit();
    let present = match setting.present() {
        Some(present) => setting.notation().write(present),
        None => "nothing".to_owned(),
    };
    format!(
        "{:.3} {unit}, give or take {:.3} {unit} (set now: {present})",
        setting.value(),
        setting.error()
    )
}

#[derive(Serialize)]
struct CalibratedDoc<'a> {
    contract: u32,
    version: &'static str,
    digest: &'a str,
    question: &'static str,
    balls: usize,
    readings: usize,
    arm: SettingDoc<'a>,
    density: SettingDoc<'a>,
    residual_rms: f64,
    notes: &'a [String],
    rules_file: &'a str,
}

#[derive(Serialize)]
struct SettingDoc<'a> {
    subject: &'a str,
    value: f64,
    error: f64,
    unit: &'static str,
    setting: Option<f64>,
    rule: Option<&'a str>,
    agrees: bool,
}

/// Writes the same as an answer document, ending in a line break; inches, g/cc and ounces are rounded once, to four decimals.
#[must_use]
pub fn calibrated_json(calibrated: &Calibrated) -> String {
    let fit = calibrated.calibration();
    let [arm, density] = calibrated.settings();
    let document = CalibratedDoc {
        contract: CONTRACT,
        version: env!("CARGO_PKG_VERSION"),
        digest: calibrated.digest(),
        question: "calibrate",
        balls: calibrated.balls(),
        readings: fit.n(),
        arm: SettingDoc::new(arm),
        density: SettingDoc::new(density),
        residual_rms: rounded(fit.residual_rms()),
        notes: calibrated.notes(),
        rules_file: calibrated.rules_file(),
    };
    super::json::written(&document)
}

impl<'a> SettingDoc<'a> {
    fn new(setting: &'a Setting) -> SettingDoc<'a> {
        SettingDoc {
            subject: setting.subject(),
            value: rounded(setting.value()),
            error: rounded(setting.error()),
            unit: setting.notation().unit(),
            setting: setting.present().map(|steps| steps as f64 / 1000.0),
            rule: setting.rule(),
            agrees: setting.agrees(),
        }
    }
}

fn rounded(value: f64) -> f64 {
    libm::round(value * 1e4) / 1e4
}
