//! Every fault of the four files is told, at its place, once.

use spanwright::document::{Document, Fault, Faults, Format};

use super::{CORES, MODELS, PRICES, SHELF, read};

/// Every fault as `file:line:column code: message`, with its help after ` / `.
pub(super) fn told(faults: &Faults) -> Vec<String> {
    let tell = |fault: &Fault| {
        let place = fault
            .place()
            .map(|place| format!("{}:{}:{}", place.file, place.line, place.column));
        let help = fault
            .help()
            .map(|help| format!(" / {help}"))
            .unwrap_or_default();
        format!(
            "{} {}: {}{help}",
            place.unwrap_or_default(),
            fault.code(),
            fault.message()
        )
    };
    faults.iter().map(tell).collect()
}

/// The four files hold every kind of fault; `expected.txt` says what is told of them and where. Nothing else is.
#[test]
fn every_fault_of_the_four_files_is_told_at_its_place() {
    let [models, cores, shelf, prices] = [
        include_str!("../faults/catalog/models.csv"),
        include_str!("../faults/catalog/cores.csv"),
        include_str!("../faults/catalog/shelf.csv"),
        include_str!("../faults/catalog/prices.yaml"),
    ];
    let mut told = told(&read(models, cores, shelf, prices).unwrap_err());
    let expected = include_str!("../faults/catalog/expected.txt")
        .lines()
        .filter(|line| !line.starts_with('#'));
    let mut expected: Vec<String> = expected.map(str::to_owned).collect();
    // By hand, the file is easier to keep in order of lines than in order of letters.
    told.sort_unstable();
    expected.sort_unstable();
    let missed: Vec<_> = expected
        .iter()
        .filter(|fault| !told.contains(fault))
        .collect();
    let extra: Vec<_> = told
        .iter()
        .filter(|fault| !expected.contains(fault))
        .collect();
    assert!(
        missed.is_empty() && extra.is_empty(),
        "missed: {missed:#?}\nextra: {extra:#?}"
    );
    assert_eq!(told, expected, "a fault is told twice");
}

/// A column that is missing is one fault, not one a row.
#[test]
fn a_missing_column_is_told_once() {
    let models = MODELS.replacen(",tier,", ",teir,", 1);
    let faults = read(&models, CORES, SHELF, PRICES).unwrap_err();
    let want = [
        "models.csv:1:1 missing: the column `tier` is missing",
        "models.csv:1:33 unknown-key: unknown column `teir` / did you mean `tier`?",
    ];
    assert_eq!(told(&faults), want);
}

#[test]
fn a_table_without_rows_is_a_fault() {
    for (models, cores, shelf) in [
        ("id\n", CORES, SHELF),
        (MODELS, "model\n", SHELF),
        (MODELS, CORES, "model\n"),
    ] {
        let faults = read(models, cores, shelf, PRICES).unwrap_err();
        assert!(
            told(&faults)
                .iter()
                .any(|fault| fault.contains("the table has no rows")),
            "{faults}"
        );
    }
}

/// A terminal escape in a name is told and never printed.
#[test]
fn control_characters_in_a_name_are_harmless() {
    let models = MODELS.replacen("Daisy", "Dai\u{1b}[31msy", 1);
    let faults = Document::parse("models.csv", models.as_bytes(), Format::Csv).unwrap_err();
    assert_eq!(faults.len(), 1);
    assert!(
        told(&faults)[0].starts_with("models.csv:2:10 control-character: "),
        "{faults}"
    );
    assert!(!faults.to_string().contains('\u{1b}'));
}

#[test]
fn a_price_list_that_is_no_map_is_a_fault() {
    let faults = read(MODELS, CORES, SHELF, "- $45\n").unwrap_err();
    assert_eq!(
        told(&faults),
        ["prices.yaml:1:1 shape: a price list must be a map of keys and values, found a list"]
    );
}

/// The limits aren't known to apply below 13 lb (the published lists tie them to 13 lb and more): a question, no fault.
#[test]
fn a_light_ball_outside_the_limits_is_a_question() {
    let cores = CORES.replacen("daisy,12 lb,2.", "daisy,12 lb,2.9#", 1);
    let cores: Vec<String> = cores
        .lines()
        .map(|row| {
            if row.contains('#') {
                "daisy,12 lb,2.900,0.061,0.000".to_owned()
            } else {
                row.to_owned()
            }
        })
        .collect();
    let catalog = read(MODELS, &cores.join("\n"), SHELF, PRICES).unwrap();
    let questions: Vec<_> = catalog.questions().iter().cloned().collect();
    assert_eq!(questions.len(), 2, "{questions:?}");
    assert!(
        questions
            .iter()
            .all(|question| question.starts_with("daisy, 12 lb: the ")),
        "{questions:?}"
    );
}
