//! Days of the calendar, as rules begin and end on them.

use std::fmt;

/// A day: year, month and day of the Gregorian calendar. Earlier days are less.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    year: u16,
    month: u8,
    day: u8,
}

/// What a date looks like, for faults.
const HOPE: &str = "expected a date such as `2024-10-01`";
/// What a day, month or year looks like, for faults.
const HOPE_PERIOD: &str =
    "expected a date such as `2024-10-01`, a month such as `2024-10` or a year such as `2024`";

impl Date {
    /// A day of the years 1 to 9999; `None` if the calendar has no such day.
    #[must_use]
    pub fn new(year: u16, month: u8, day: u8) -> Option<Date> {
        let is_there = (1..=9999).contains(&year) && (1..=days(year, month)).contains(&day);
        is_there.then_some(Date { year, month, day })
    }

    /// Reads `2024-10-01`.
    ///
    /// # Errors
    /// What was expected, if it is written otherwise or the calendar has no such day.
    pub fn read(text: &str) -> Result<Date, String> {
        match parts(text).as_deref() {
            Some([year, month, day]) => Date::of(*year, *month, *day),
            _ => None,
        }
        .ok_or_else(|| HOPE.to_owned())
    }

    fn of(year: u16, month: u16, day: u16) -> Option<Date> {
        Date::new(year, u8::try_from(month).ok()?, u8::try_from(day).ok()?)
    }

    /// A whole number that grows with the date: 20241001.
    pub(super) fn number(self) -> i64 {
        i64::from(self.year) * 10_000 + i64::from(self.month) * 100 + i64::from(self.day)
    }

    /// The day after; the last day of all stays itself.
    pub(super) fn next(self) -> Date {
        Date::new(self.year, self.month, self.day + 1)
            .or_else(|| Date::new(self.year, self.month + 1, 1))
            .or_else(|| Date::new(self.year + 1, 1, 1))
            .unwrap_or(self)
    }

    /// The day written as a whole number, if it is one.
    pub(super) fn from_number(number: i64) -> Option<Date> {
        let year = u16::try_from(number / 10_000).ok()?;
        let month = u8::try_from(number / 100 % 100).ok()?;
        Date::new(year, month, u8::try_from(number % 100).ok()?)
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

/// The days something may have happened on: a day, a month or a year, as far as it is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Period {
    first: Date,
    last: Date,
}

impl Period {
    /// Reads a day `2024-10-01`, a month `2024-10` or a year `2024`.
    ///
    /// # Errors
    /// What was expected, if it is written otherwise or the calendar has no such days.
    pub fn read(text: &str) -> Result<Period, String> {
        let ends = match parts(text).as_deref() {
            Some([year, month, day]) => {
                Date::of(*year, *month, *day).map(|date| (Some(date), Some(date)))
            }
            Some([year, month]) => u8::try_from(*month).ok().map(|month| {
                let last = days(*year, month);
                (Date::new(*year, month, 1), Date::new(*year, month, last))
            }),
            Some([year]) => Some((Date::new(*year, 1, 1), Date::new(*year, 12, 31))),
            _ => None,
        };
        match ends {
            Some((Some(first), Some(last))) => Ok(Period { first, last }),
            _ => Err(HOPE_PERIOD.to_owned()),
        }
    }

    /// The earliest day it may be.
    #[must_use]
    pub fn first(self) -> Date {
        self.first
    }

    /// The latest day it may be.
    #[must_use]
    pub fn last(self) -> Date {
        self.last
    }
}

impl From<Date> for Period {
    fn from(date: Date) -> Period {
        Period {
            first: date,
            last: date,
        }
    }
}

/// Numbers between hyphens: four digits, then two and two.
fn parts(text: &str) -> Option<Vec<u16>> {
    let mut numbers = Vec::new();
    for (at, part) in text.trim().split('-').enumerate() {
        let digits = if at == 0 { 4 } else { 2 };
        if part.len() != digits || !part.bytes().all(|byte| byte.is_ascii_digit()) {
            return None;
        }
        numbers.push(part.parse().ok()?);
    }
    Some(numbers)
}

/// How many days a month has; none if there is no such month.
fn days(year: u16, month: u8) -> u8 {
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => 0,
    }
}
