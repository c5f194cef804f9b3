//! One stage: rank the candidates, or take what the fitter fixed, and say why.

use super::explain::{self, Scale};
use super::outcome::Trouble;
use super::reason::{Caution, Reason};
use super::result::Settled;
use crate::rules::{Chooser, Fate, Ranking, RuleSet, World};

/// What a stage found.
pub(super) struct Staged {
    pub(super) chosen: Option<usize>,
    pub(super) settled: Option<Settled>,
    pub(super) cautions: Vec<Caution>,
}

/// Ranks `world` by the rules of `stage`; `fixed` is the candidate the fitter decided on, `next` the one after another in order.
pub(super) fn settle(
    rules: &RuleSet,
    stage: &str,
    world: &dyn World,
    fixed: Option<usize>,
    name: &dyn Fn(usize) -> String,
    next: &dyn Fn(usize) -> Option<usize>,
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
        not_more: next(best)
            .and_then(|c| Some((name(c), against(rules, &chooser, world, &ranking, c)?))),
    };
    let mut cautions: Vec<Caution> = chooser
        .cautions(world, best)
        .iter()
        .map(|line| explain::caution(rules, line, stage))
        .collect();
    // What was fixed against a rule is done, and said.
    if let Fate::RuledOut(lines) = chooser.fate(world, &ranking, best) {
        let said = lines
            .iter()
            .map(|line| explain::caution(rules, line, stage));
        cautions.extend(said);
    }
    Ok(Staged {
        chosen: Some(best),
        settled: Some(settled),
        cautions,
    })
}

/// What rules a candidate out, or speaks most against it.
fn against(
    rules: &RuleSet,
    chooser: &Chooser<'_>,
    world: &dyn World,
    ranking: &Ranking,
    candidate: usize,
) -> Option<Reason> {
    let line = match chooser.fate(world, ranking, candidate) {
        Fate::RuledOut(lines) => lines.into_iter().next()?,
        _ => {
            let ledger = chooser.ledger(world, ranking, candidate);
            let worst = ledger.lines().iter().min_by_key(|line| line.points())?;
            (worst.points() < 0).then(|| worst.clone())?
        }
    };
    Some(explain::reason(rules, &line, Scale::Points))
}
