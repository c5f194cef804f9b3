//! Reading reasons and their placeholders.

use super::{Reading, unknown};
use crate::document::{Node, Reader};
use crate::rules::reason::{Audience, Piece, Template, Texts, split};
use crate::rules::subject::{Subject, SubjectKind};
use crate::rules::vocabulary::{Fact, FactId};

impl<'d> Reading<'d> {
    /// A reason: one text for all, or one for each audience.
    pub(super) fn texts(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        subject: Option<&Subject>,
    ) -> Option<Texts> {
        if node.text().is_some() || node.is_null() {
            let text = self.template(reader, node, subject)?;
            return Some(Texts {
                newcomer: text.clone(),
                league: text.clone(),
                fitter: text,
            });
        }
        let mut fields = reader.fields(node, "the reason")?;
        let texts = Audience::KEYS.map(|(_, key)| {
            let node = fields.require(key, reader)?;
            self.template(reader, node, subject)
        });
        fields.close(reader);
        let [newcomer, league, fitter] = texts;
        Some(Texts {
            newcomer: newcomer?,
            league: league?,
            fitter: fitter?,
        })
    }

    /// One text with its placeholders.
    pub(super) fn template(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        subject: Option<&Subject>,
    ) -> Option<Template> {
        let written = reader.sentence(node, "a reason")?;
        let Ok(split) = split(written) else {
            let message = "braces do not pair up; a placeholder is `{` fact `}`";
            reader.fault(node, "bad-placeholder", message);
            return None;
        };
        let mut pieces = Vec::with_capacity(split.len());
        let mut whole = true;
        for piece in split {
            match piece {
                Ok(text) => pieces.push(Piece::Text(text.to_owned())),
                Err(name) => match self.placeholder(reader, node, name, subject) {
                    Some(fact) => pieces.push(Piece::Fact(fact)),
                    None => whole = false,
                },
            }
        }
        whole.then(|| Template {
            written: written.to_owned(),
            pieces,
        })
    }

    fn placeholder(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        name: &str,
        subject: Option<&Subject>,
    ) -> Option<FactId> {
        let Some(fact) = self.vocabulary.id(name) else {
            let message = format!("there is no fact `{name}` to print");
            let names = self.vocabulary.facts().iter().map(|fact| fact.name);
            unknown(reader, node, "unknown-placeholder", &message, name, names);
            return None;
        };
        self.in_scope(reader, node, fact, subject).then_some(fact)
    }

    /// Whether rules of this subject may speak of the fact; if not, that is a fault at `node`. Of a subject that is faulty
    /// itself nothing is said.
    pub(super) fn in_scope(
        &self,
        reader: &mut Reader<'d>,
        node: &'d Node,
        id: FactId,
        subject: Option<&Subject>,
    ) -> bool {
        let fact: &Fact = self.vocabulary.fact(id);
        let (Some(owner), Some(subject)) = (fact.subject, subject) else {
            return true;
        };
        if subject.kind == SubjectKind::Choice && subject.id == owner {
            return true;
        }
        let message = format!(
            "`{}` is a fact of the candidates for {owner}; a rule about {} cannot use it",
            fact.name, subject.id
        );
        reader.fault(node, "wrong-subject", message);
        false
    }
}
