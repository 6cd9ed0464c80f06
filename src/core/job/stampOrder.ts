interface Stamped {
  readonly id: string;
  readonly at: string;
}

/** Whole days from 1970-01-01 to a date of the Gregorian calendar. Source: H. Hinnant, "days_from_civil". */
const daysFromCivil = (year: number, month: number, day: number): number => {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
};

/** Seconds since 1970 of a record's `at`; the zone it was written in does not matter, nor does this machine's. */
export const secondsOf = (at: string): number => {
  const part = (from: number, to: number): number => Number(at.slice(from, to));
  const tail = /(\.\d+)?(?:Z|([+-])(\d{2}):(\d{2}))$/.exec(at);
  const minutesEast = tail?.[2] ? (Number(tail[3]) * 60 + Number(tail[4])) * (tail[2] === '-' ? -1 : 1) : 0;
  return (
    daysFromCivil(part(0, 4), part(5, 7), part(8, 10)) * 86_400 +
    part(11, 13) * 3600 +
    (part(14, 16) - minutesEast) * 60 +
    part(17, 19) +
    Number(tail?.[1] ?? 0)
  );
};

/** −1, 0 or 1, by code units: the same on every machine, whatever its language. */
export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Earlier first; at the same instant by id. */
export const byStamp = (a: Stamped, b: Stamped): number =>
  secondsOf(a.at) - secondsOf(b.at) || byText(a.id, b.id);

/** The latest by time, then id. */
export const latestOf = <R extends Stamped>(records: readonly R[]): R | undefined =>
  records.reduce<R | undefined>((last, r) => (last && byStamp(last, r) > 0 ? last : r), undefined);
