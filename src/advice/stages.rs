//! One stage: rank the candidates, or take what the fitter fixed, and say why.

use super::explain::{self, Scale};
use super::outcome::Trouble;
use super::reason::Caution;
use super::result::Settled;
use crate::rules::{RuleSet, World};

/// What a stage found.
pub(super) struct Staged {
    pub(super) chosen: Option<usize>,
    pub(super) settled: Option<Settled>,
    pub(super) cautions: Vec<Caution>,
}

/// Ranks `world` by the rules of `stage`; `fixed` is the candidate the fitter decided on.
pub(super) fn settle(
    rules: &RuleSet,
    stage: &str,
    world: &dyn World,
    fixed: Option<usize>,
    name: &dyn Fn(usize) -> String,
) -> Result<Staged, Trouble> {
    let chooser = rules
        .chooser(stage, world)
        .ok_or_else(|| Trouble::Rules(format!("no subject `{stage}`")))?;
    let ranking = chooser.rank(world);
    let chosen = fixed.or_else(|| ranking.order().first().copied());
    let Some(best) = chosen else {
        return Ok(Staged {
            chosen: None,
            settled: None,
            cautions: Vec::new(),
        });
    };
    let ledger = chooser.ledger(world, &ranking, best);
    let lines = ledger
        .lines()
        .iter()
        .map(|line| explain::reason(rules, line, Scale::Points))
        .collect();
    let runner_up = ranking
        .order()
        .iter()
        .find(|&&c| c != best)
        .map(|&c| name(c));
    let settled = Settled {
        stage: stage.to_owned(),
        value: name(best),
        // What the rules would have chosen anyway was not decided by anyone else.
        by_fitter: fixed.is_some() && fixed != ranking.order().first().copied(),
        total: ledger.total(),
        lines,
        runner_up,
    };
    let cautions = chooser
        .cautions(world, best)
        .iter()
        .map(|line| explain::caution(rules, line, stage))
        .collect();
    Ok(Staged {
        chosen: Some(best),
        settled: Some(settled),
        cautions,
    })
}
