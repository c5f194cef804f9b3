//! Small words below the drawing: the throw, the lane, the range, the scale, and what to keep in mind.

use super::plot::Plot;
use super::scale::Scale;
use crate::report::paper::canvas::{Canvas, Spot};
use crate::report::paper::flow::Flow;

/// Writes them. Gives back how far down they reach.
pub(super) fn write(canvas: &mut Canvas, plot: &Plot, scale: &Scale, at: Spot, wide: f64) -> f64 {
    let mut flow = Flow::new(canvas, at, wide);
    let mut entry = |name: &str, words: &str, most: usize| {
        if !words.trim().is_empty() {
            flow.short_entry(name, words, most);
        }
    };
    entry("The throw:", &plot.throw.join(", "), 2);
    entry("The lane:", &lane(plot), 2);
    entry("The line:", &line(plot), 3);
    if plot.against.is_some() {
        entry("The range:", &range(plot), 5);
    }
    entry("Taken for granted:", &plot.assumed.join(" "), 3);
    entry("The scale:", &scale.said(), 2);
    entry("Keep in mind:", &caution(plot), 3);
    flow.bottom()
}

fn lane(plot: &Plot) -> String {
    if plot.lane.trim().is_empty() {
        String::new()
    } else if (0.0..=60.0).contains(&plot.oil) {
        format!("{}, oiled for {:.0} ft.", plot.lane.trim(), plot.oil)
    } else {
        plot.lane.clone()
    }
}

fn line(plot: &Plot) -> String {
    let subject = match plot.against {
        Some(_) => "both are sent",
        None => "sent",
    };
    let tenths = libm::round(plot.launch.clamp(-90.0, 90.0) * 10.0);
    let way = if tenths == 0.0 {
        "straight down the lane".to_owned()
    } else {
        let side = if tenths < 0.0 {
            plot.other()
        } else {
            plot.side()
        };
        let degrees = tenths.abs() / 10.0;
        let unit = if degrees == 1.0 { "degree" } else { "degrees" };
        format!("{degrees:.1} {unit} toward the {side}")
    };
    format!(
        "{subject} from board {:.0} counted from the {}, {way}. {}",
        plot.start_board.clamp(0.0, 40.0),
        plot.other(),
        plot.because
    )
}

/// What was varied; what is a sentence of its own follows as one.
fn range(plot: &Plot) -> String {
    let (sentences, varied): (Vec<&str>, Vec<&str>) = plot
        .varied
        .iter()
        .map(String::as_str)
        .partition(|words| words.ends_with('.'));
    let mixed = match varied.as_slice() {
        [] => String::new(),
        varied => format!("every mix of {}.", varied.join("; ")),
    };
    let all: Vec<&str> = std::iter::once(mixed.as_str()).chain(sentences).collect();
    all.join(" ")
}

fn caution(plot: &Plot) -> String {
    let what = match plot.against {
        Some(_) => "This holds two balls against each other on one throw; it promises no boards.",
        None => "This is one throw on one lane; it promises no boards.",
    };
    format!(
        "lanes differ, and each one changes while you bowl. {what} How much a cover grips is our own setting: nobody has published it."
    )
}
