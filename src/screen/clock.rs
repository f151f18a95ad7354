//! The time: milliseconds since 1970, and how far the clock on the wall is from them.

use time::{Date, Duration, Month, OffsetDateTime, PrimitiveDateTime};

/// Milliseconds of a minute.
const MINUTE: i64 = 60_000;

/// The time, and where the clock on the wall stands.
#[derive(Clone, Copy, Debug)]
pub struct Clock {
    /// Milliseconds since 1970.
    pub now: u64,
    /// Minutes that the clock on the wall is ahead of universal time, at a time in milliseconds since 1970.
    pub ahead: fn(i64) -> i64,
}

impl Default for Clock {
    /// The beginning of 1970, universal time.
    fn default() -> Clock {
        Clock { now: 0, ahead: |_| 0 }
    }
}

impl PartialEq for Clock {
    fn eq(&self, other: &Clock) -> bool {
        self.now == other.now
    }
}

impl Clock {
    /// The time in milliseconds since 1970, with a sign.
    #[must_use]
    pub fn now(&self) -> i64 {
        i64::try_from(self.now).unwrap_or(i64::MAX)
    }

    /// Whether it was set back since it was so late, by more than a network sets it right by.
    #[must_use]
    pub const fn is_set_back(&self, since: u64) -> bool {
        since > self.now + 5_000
    }

    /// What the clock on the wall shows.
    fn civil(&self, at: i64) -> PrimitiveDateTime {
        let wall = at.div_euclid(1000) + (self.ahead)(at) * 60;
        let wall = OffsetDateTime::from_unix_timestamp(wall).unwrap_or(OffsetDateTime::UNIX_EPOCH);
        PrimitiveDateTime::new(wall.date(), wall.time())
    }

    /// When the clock on the wall shows this. In the hour that is skipped in spring, an hour later.
    fn at(&self, civil: PrimitiveDateTime) -> i64 {
        let wall = civil.assume_utc().unix_timestamp() * 1000;
        let guess = wall - (self.ahead)(wall) * MINUTE;
        wall - (self.ahead)(guess) * MINUTE
    }

    /// Reads "2026-11-28T18:30", as date fields hold it (ISO 8601), or with a space. None for anything else.
    #[must_use]
    pub fn read(&self, text: &str) -> Option<i64> {
        let (date, time) = text.trim().split_once(['T', ' '])?;
        let mut date = date.splitn(3, '-');
        let year = date.next()?.parse::<u16>().ok().filter(|year| (1970..9_000).contains(year))?;
        let month = Month::try_from(date.next()?.parse::<u8>().ok()?).ok()?;
        let date = Date::from_calendar_date(i32::from(year), month, date.next()?.parse().ok()?).ok()?;
        let mut time = time.splitn(3, ':').map(|part| part.parse::<u8>().ok());
        Some(self.at(date.with_hms(time.next()??, time.next()??, 0).ok()?))
    }

    /// So many days later, at the same time on the wall; the time itself where the calendar ends.
    #[must_use]
    pub fn days_later(&self, at: i64, days: i64) -> i64 {
        let later = self.civil(at).checked_add(Duration::days(days.clamp(0, 100_000)));
        later.map_or(at, |civil| self.at(civil) + at.rem_euclid(MINUTE))
    }

    /// As [`Clock::read`] takes it.
    #[must_use]
    pub fn written(&self, at: i64) -> String {
        let civil = self.civil(at);
        let (year, month, day) = civil.date().to_calendar_date();
        format!("{year:04}-{:02}-{day:02}T{:02}:{:02}", u8::from(month), civil.hour(), civil.minute())
    }

    /// "18:30" today, "Fri 18:30" within six days, "28 Nov, 18:30" else.
    #[must_use]
    pub fn words(&self, at: i64) -> String {
        let civil = self.civil(at);
        let time = format!("{:02}:{:02}", civil.hour(), civil.minute());
        let days = civil.date().to_julian_day() - self.civil(self.now()).date().to_julian_day();
        let weekday = day_name(civil);
        match days {
            0 => time,
            -6..=6 => format!("{weekday} {time}"),
            _ => format!("{} {}, {time}", civil.day(), month_name(civil)),
        }
    }

    /// "Fri 28 Nov, 18:30".
    #[must_use]
    pub fn stamp(&self, at: i64) -> String {
        let civil = self.civil(at);
        format!("{} {} {}, {:02}:{:02}", day_name(civil), civil.day(), month_name(civil), civil.hour(), civil.minute())
    }

    /// "28 Nov", and the year where it is another than now: "28 Nov 2025".
    #[must_use]
    pub fn date(&self, at: i64) -> String {
        let (civil, now) = (self.civil(at), self.civil(self.now()));
        let year = if civil.year() == now.year() { String::new() } else { format!(" {}", civil.year()) };
        format!("{} {}{year}", civil.day(), month_name(civil))
    }

    /// "Fri 28 Nov 2026".
    #[must_use]
    pub fn day(&self, at: i64) -> String {
        let civil = self.civil(at);
        format!("{} {} {} {}", day_name(civil), civil.day(), month_name(civil), civil.year())
    }
}

const MONTHS: [&str; 12] = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const DAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

fn month_name(civil: PrimitiveDateTime) -> &'static str {
    MONTHS[usize::from(u8::from(civil.month()) - 1)]
}

fn day_name(civil: PrimitiveDateTime) -> &'static str {
    DAYS[usize::from(civil.weekday().number_days_from_monday())]
}

/// "45 min", "1 h 30 min", "2 d 4 h", "30 s".
#[must_use]
pub fn lasting(seconds: i64) -> String {
    let seconds = seconds.max(0);
    let (days, hours, minutes) = (seconds / 86_400, seconds / 3_600 % 24, seconds / 60 % 60);
    let two = |big: i64, unit: &str, small: i64, small_unit: &str| match small {
        0 => format!("{big} {unit}"),
        _ => format!("{big} {unit} {small} {small_unit}"),
    };
    match seconds {
        0..60 => format!("{seconds} s"),
        60..3_600 if seconds < 600 => two(minutes, "min", seconds % 60, "s"),
        60..3_600 => format!("{minutes} min"),
        3_600..86_400 => two(hours, "h", minutes, "min"),
        _ => two(days, "d", hours, "h"),
    }
}

/// "44 min 59 s", "1 h 44 min": the time to go, unlike a clock's. Seconds are told in the last hour.
#[must_use]
pub fn to_go(seconds: i64) -> String {
    match seconds.max(0) {
        seconds @ 60..3_600 => format!("{} min {} s", seconds / 60, seconds % 60),
        seconds => lasting(seconds),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_and_times() {
        let clock = Clock { now: 1_795_620_600_000, ahead: |_| 60 };
        assert_eq!(clock.written(clock.now()), "2026-11-25T16:30");
        assert_eq!(clock.read("2026-11-25T16:30"), Some(clock.now()));
        assert_eq!(clock.words(clock.now()), "16:30");
        assert_eq!(clock.words(clock.now() + 86_400_000), "Thu 16:30");
        assert_eq!(clock.words(clock.now() + 30 * 86_400_000), "25 Dec, 16:30");
        assert_eq!(clock.day(clock.now()), "Wed 25 Nov 2026");
        assert_eq!(clock.date(clock.now()), "25 Nov");
        assert_eq!(clock.date(clock.now() - 365 * 86_400_000), "25 Nov 2025");
        assert_eq!(clock.date(clock.now() + 60 * 86_400_000), "24 Jan 2027");
        // A time that no calendar has, as a file may bring it.
        assert_eq!(clock.date(i64::MAX), "1 Jan 1970");
        for wrong in ["", "2026-02-30T10:00", "2026-13-01T10:00", "2026-01-01T25:00", "tomorrow", "2026-01-01"] {
            assert_eq!(clock.read(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn a_clock_that_is_put_back() {
        // Ahead by two hours until then, one after: the end of summer time.
        let clock = Clock { now: 0, ahead: |at| if at < 1_793_000_000_000 { 120 } else { 60 } };
        for at in [1_792_000_020_000, 1_794_000_060_000] {
            let at = at / 60_000 * 60_000;
            assert_eq!(clock.read(&clock.written(at)), Some(at));
        }
    }

    #[test]
    fn days_are_those_of_the_calendar() {
        // The clocks go back in between: half past midnight stays half past midnight.
        let clock = Clock { now: 0, ahead: |at| if at < 1_793_000_000_000 { 120 } else { 60 } };
        let made = clock.read("2026-10-20T00:30").expect("a time");
        assert_eq!(clock.written(clock.days_later(made, 6)), "2026-10-26T00:30");
    }

    #[test]
    fn times_in_words() {
        for (seconds, words) in
            [(30, "30 s"), (90, "1 min 30 s"), (2_700, "45 min"), (5_400, "1 h 30 min"), (187_200, "2 d 4 h")]
        {
            assert_eq!(lasting(seconds), words);
        }
        for (seconds, words) in [
            (-5, "0 s"),
            (59, "59 s"),
            (60, "1 min 0 s"),
            (2_699, "44 min 59 s"),
            (3_600, "1 h"),
            (6_299, "1 h 44 min"),
        ] {
            assert_eq!(to_go(seconds), words);
        }
    }
}
