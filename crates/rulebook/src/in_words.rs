//! Values of the code in words, for the pages that set the editions side by side.

use dwelling::{Day, Equipment, RoomUse};
use electrical::{Gauge, Length, Volume};

/// A value that can be said in words.
pub trait InWords {
    /// It in words.
    fn in_words(&self) -> String;
}

/// That a rule stands as it is described; where it stands and how it is known is all there is to say.
impl InWords for () {
    fn in_words(&self) -> String {
        "as the rule says".to_owned()
    }
}

impl InWords for bool {
    fn in_words(&self) -> String {
        if *self { "yes" } else { "no" }.to_owned()
    }
}

impl InWords for &str {
    fn in_words(&self) -> String {
        (*self).to_owned()
    }
}

macro_rules! as_displayed {
    ($($kind:ty),+) => {
        $(impl InWords for $kind {
            fn in_words(&self) -> String {
                self.to_string()
            }
        })+
    };
}
as_displayed!(u32, u64, Day, Equipment, Gauge, Length, RoomUse, Volume);

/// The number of a conductor size.
impl InWords for i8 {
    fn in_words(&self) -> String {
        Gauge::from_number(*self).map_or_else(|| self.to_string(), |gauge| gauge.to_string())
    }
}

impl<T: InWords> InWords for Option<T> {
    fn in_words(&self) -> String {
        self.as_ref().map_or_else(|| "none".to_owned(), InWords::in_words)
    }
}

impl<T: InWords> InWords for &[T] {
    fn in_words(&self) -> String {
        if self.is_empty() {
            return "nothing".to_owned();
        }
        let words: Vec<String> = self.iter().map(InWords::in_words).collect();
        words.join("; ")
    }
}

impl<A: InWords, B: InWords> InWords for (A, B) {
    fn in_words(&self) -> String {
        format!("{}: {}", self.0.in_words(), self.1.in_words())
    }
}

impl<A: InWords, B: InWords, C: InWords> InWords for (A, B, C) {
    fn in_words(&self) -> String {
        format!("{}: {}, {}", self.0.in_words(), self.1.in_words(), self.2.in_words())
    }
}
