//! What every answer document starts with.

use serde::Serialize;

use super::CONTRACT;

/// The first fields of an answer document, in their order. A field that a question has no use for is left out.
#[derive(Debug, Serialize)]
pub(crate) struct Head<'a> {
    contract: u32,
    version: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    digest: Option<&'a str>,
    question: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    audience: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    bowler: Option<&'a str>,
}

impl<'a> Head<'a> {
    /// The answer to a question that depends on no shop's rules.
    pub(crate) fn new(question: &'static str) -> Head<'a> {
        Head {
            contract: CONTRACT,
            version: env!("CARGO_PKG_VERSION"),
            digest: None,
            question,
            audience: None,
            bowler: None,
        }
    }

    /// By the rules with this digest.
    pub(crate) fn digest(self, digest: &'a str) -> Head<'a> {
        let digest = Some(digest);
        Head { digest, ..self }
    }

    /// About a bowler, in a reader's words.
    pub(super) fn about(self, bowler: &'a str, audience: &'static str) -> Head<'a> {
        Head {
            bowler: Some(bowler),
            audience: Some(audience),
            ..self
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fields_keep_their_order_and_stand_first() {
        #[derive(Serialize)]
        struct Answer<'a> {
            #[serde(flatten)]
            head: Head<'a>,
            held: bool,
        }
        let written =
            |head| serde_json::to_string(&Answer { head, held: true }).unwrap_or_default();
        let version = env!("CARGO_PKG_VERSION");
        let whole = Head::new("refit").digest("abc").about("Ida", "league");
        assert_eq!(
            written(whole),
            format!(
                r#"{{"contract":1,"version":"{version}","digest":"abc","question":"refit","audience":"league","bowler":"Ida","held":true}}"#
            )
        );
        assert_eq!(
            written(Head::new("legal")),
            format!(r#"{{"contract":1,"version":"{version}","question":"legal","held":true}}"#)
        );
    }
}
