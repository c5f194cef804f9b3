//! The closed lists of words in a catalog: what covers, cores, finishes, tiers and colours there are.

/// Makes an enum whose values are words, with the list of them in order.
macro_rules! words {
    ($(#[$about:meta])* $name:ident { $($(#[$meaning:meta])* $value:ident = $word:literal,)+ }) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$meaning])* $value,)+ }

        impl $name {
            /// Every value, in the order of [`Self::NAMES`].
            pub const ALL: &'static [$name] = &[$($name::$value,)+];
            /// Every word, as files write it.
            pub const NAMES: &'static [&'static str] = &[$($word,)+];

            /// The word, as files write it.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $($name::$value => $word,)+ }
            }

            /// The place of the word in [`Self::NAMES`], from 0.
            #[must_use]
            pub const fn index(self) -> usize {
                self as usize
            }
        }
    };
}

words! {
    /// What the outside of a ball is made of.
    Cover {
        /// Hard plastic; hardly grips the lane.
        Polyester = "polyester",
        /// Softer plastic without pores.
        Urethane = "urethane",
        /// Reactive urethane of one dull material.
        Solid = "solid",
        /// Reactive urethane, solid and pearl mixed.
        Hybrid = "hybrid",
        /// Reactive urethane with a pearly additive.
        Pearl = "pearl",
    }
}

words! {
    /// The shape of the weight block inside.
    Core {
        /// A flat block or none to speak of.
        Pancake = "pancake",
        /// The same all round its long axis.
        Symmetric = "symmetric",
        /// Different on each of its three axes.
        Asymmetric = "asymmetric",
    }
}

words! {
    /// The surface as it leaves the factory.
    Finish {
        /// Shiny.
        Polished = "polished",
        /// Dull, fine.
        Matte = "matte",
        /// Dull, coarse.
        Sanded = "sanded",
    }
}

words! {
    /// The price class a maker sells the ball in.
    Tier {
        /// Plastic balls to begin with or for spares.
        Starter = "starter",
        /// The cheapest balls that grip the lane.
        Entry = "entry",
        /// The middle of the range.
        Middle = "middle",
        /// The dearest balls.
        High = "high",
    }
}

words! {
    /// A colour a ball can be asked for in.
    Colour {
        /// Black.
        Black = "black",
        /// Blue.
        Blue = "blue",
        /// Green.
        Green = "green",
        /// Grey.
        Grey = "grey",
        /// Orange.
        Orange = "orange",
        /// Pink.
        Pink = "pink",
        /// Purple.
        Purple = "purple",
        /// Red.
        Red = "red",
        /// Silver.
        Silver = "silver",
        /// White.
        White = "white",
        /// Yellow.
        Yellow = "yellow",
    }
}
