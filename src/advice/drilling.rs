//! The drilled ball, computed before the drill touches it: where every hole lies, what stands between, what it will weigh.
//!
//! Lengths are inches, weights ounces unless a name says pounds, angles degrees. Everything is stated for a right hand: x
//! to the right as the fitter looks at the grip with the fingers up, y toward the fingers, z out through the grip centre.
//! A left hand's ball is the mirror image: turn the sign of every x, every lateral and every `over`.

macro_rules! views {
    (@get [$(#[$doc:meta])*] $name:ident $type:ty) => {
        $(#[$doc])* pub fn $name(&self) -> $type { self.$name }
    };
    (@get [$(#[$doc:meta])*] $name:ident $type:ty => $shown:ty) => {
        $(#[$doc])* pub fn $name(&self) -> $shown { &self.$name }
    };
    ($($(#[$about:meta])* $kind:ident { $($(#[$doc:meta])* $name:ident : $type:ty $(=> $shown:ty)?),* $(,)? })*) => { $(
        $(#[$about])*
        #[derive(Clone, Debug, PartialEq)]
        #[non_exhaustive]
        pub struct $kind { $(pub(crate) $name: $type),* }
        impl $kind { $( views!(@get [$(#[$doc])*] $name $type $(=> $shown)?); )* }
    )* };
}

views! {
    /// The drilled ball as computed. Parts that could not be computed are empty, and `open` says what to do about it.
    Drilling {
        /// Inches once around the ball.
        circumference: f64,
        /// True for a left hand: every drawing and lateral is turned round.
        left_hand: bool,
        /// Thumb (if there is one), middle, ring.
        holes: Vec<PlannedHole> => &[PlannedHole],
        /// Every pair of holes, thinnest wall first; then walls to the plugs of old holes, thinnest first.
        webs: Vec<PlannedWeb> => &[PlannedWeb],
        /// Why this may not be drilled as it stands; nothing is drilled while one is left.
        refusals: Vec<Refusal> => &[Refusal],
        /// Pin, heavy spot, mass bias and PAP on the ball.
        layout: Option<PlannedLayout> => &Option<PlannedLayout>,
        /// Weight taken out, finished weight, static weights.
        balance: Option<Predicted> => &Option<Predicted>,
        /// How the core turns before and after.
        core: Option<CoreChange> => &Option<CoreChange>,
        /// Whose limits the drilled ball is held against.
        body: crate::standards::Body,
        /// What that body's rules say of the drilled ball.
        findings: Vec<crate::standards::Finding> => &[crate::standards::Finding],
        /// What could not be computed, the action first.
        open: Vec<String> => &[String],
    }

    /// One hole as it will be cut.
    PlannedHole {
        /// `thumb`, `middle` or `ring`.
        name: &'static str => &'static str,
        /// Diameter the finger feels; the narrow one of an oval.
        bore: f64,
        /// Diameter cut into the ball for a slug or an insert; none where the bore is cut into the ball itself.
        outside: Option<f64>,
        /// The thinnest wall of slug, sleeve or insert around its bore, over the whole depth; none where there is none.
        wall: Option<f64>,
        /// An oval's wide and narrow size, and the angle of its wide direction from the hole's right, counter-clockwise.
        oval: Option<(f64, f64, f64)>,
        /// Depth along the axis, from the surface; a stand-in for drawing only where it isn't known.
        depth: f64,
        /// Whether the depth is known. Nothing is drilled to one that isn't.
        depth_known: bool,
        /// Where the axis leaves the ball: inches over along the midline (right is more), then up toward the fingers.
        place: (f64, f64),
        /// The same point in space.
        mouth: [f64; 3],
        /// Unit direction of the axis, into the ball.
        axis: [f64; 3],
        /// Forward (+) or reverse (-) pitch.
        forward: f64,
        /// Pitch to the right (+) or left (-), zero at the ball's centre.
        lateral: f64,
        /// The same lateral with zero where both finger holes run side by side; fingers only.
        parallel_lateral: Option<f64>,
        /// What to set the jig to, in words, in order.
        jig: Vec<String> => &[String],
    }

    /// What stands between two holes.
    PlannedWeb {
        /// The two holes: `middle and ring`, `ring and the old thumb hole`.
        between: String => &str,
        /// The thinnest wall from the surface down to the bottom.
        least: f64,
        /// The depth at which it is thinnest.
        at_depth: f64,
        /// The depth at which the two holes would meet, if they ever did.
        breaks_at: Option<f64>,
        /// The least that is allowed.
        limit: f64,
    }

    /// Why something may not be drilled, with each single change that would mend it.
    Refusal {
        /// What is wrong, with its numbers.
        what: String => &str,
        /// One change each, enough by itself: "bridge 9/32 in in place of 1/4 in".
        mends: Vec<String> => &[String],
    }

    /// Pin, heavy spot, mass bias and PAP on the ball, and how to draw them.
    PlannedLayout {
        /// The layout in words: "pin from the grip".
        kind: String => &str,
        /// Named points as inches over and up from the grip centre: `pin`, `centre of gravity`, `mass bias`, `PAP`.
        points: Vec<(&'static str, (f64, f64))> => &[(&'static str, (f64, f64))],
        /// The same layout stated in each of the usual ways: label and numbers.
        stated: Vec<(String, String)> => &[(String, String)],
        /// What to draw with the wax pencil, in order.
        steps: Vec<LayoutStep> => &[LayoutStep],
        /// Whether the track runs over a hole, in words; empty without a PAP.
        track: Vec<String> => &[String],
    }

    /// One wax-pencil line: the words, and the points it joins as inches over and up.
    LayoutStep {
        /// What to draw.
        text: String => &str,
        /// The line, as points on the ball; one point alone is a mark.
        line: Vec<(f64, f64)> => &[(f64, f64)],
    }

    /// What the drilled ball will weigh, and where.
    Predicted {
        /// Which one from the shelf: its pin-out and top weight.
        unit: String => &str,
        /// Why this one, in a sentence or two.
        because: Vec<String> => &[String],
        /// Ounces drilled out.
        out: f64,
        /// Ounces of slug, inserts and plugs put back.
        back: f64,
        /// Pounds of the drilled ball.
        pounds: f64,
        /// Inches the mass centre lies from the ball's centre.
        offset: f64,
        /// Top (+) or bottom (-) weight in ounces, as the shop's scale should show it.
        top: f64,
        /// Weight to the right (+) or left (-) of a right hand's grip.
        side: f64,
        /// Finger (+) or thumb (-) weight.
        finger: f64,
        /// Ounces left to the nearest limit; none where no limit is known.
        margin: Option<f64>,
        /// What the prediction rests on: scale arm, densities.
        settings: Vec<(String, String)> => &[(String, String)],
    }

    /// How the core turns, before and after.
    CoreChange {
        /// Lowest RG, total differential, intermediate differential of the undrilled ball, in inches.
        before: (f64, f64, f64),
        /// The same of the drilled ball.
        after: (f64, f64, f64),
        /// Unit directions of the drilled ball's principal axes, of lowest, middle and highest RG; each is a line.
        axes: [[f64; 3]; 3],
        /// Inches along the surface that the axis of lowest RG moved; none where the core has no such axis.
        moved: Option<f64>,
    }
}

impl Drilling {
    /// True if the holes may not be drilled as they stand.
    pub fn is_refused(&self) -> bool {
        !self.refusals.is_empty()
    }
}
