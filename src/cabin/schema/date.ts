import { describeValue } from './describe-value.ts';
import type { Schema } from './schema.ts';
import { plain } from './schema.ts';

/** Whether a text is a day of the Gregorian calendar as `YYYY-MM-DD` (ISO 8601-1, extended form), years 1900 to 2199. */
export function isCalendarDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(text);
  if (match === null) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (year < 1900 || year > 2199 || month < 1 || month > 12 || day < 1) return false;
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = month === 2 ? (leap ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
  return day <= days;
}

const hint = 'Dates are written year-month-day, for example 2031-03-01.';

/** A calendar day, `YYYY-MM-DD`. */
export const date = (): Schema<string> => plain('a date YYYY-MM-DD', (value, faults) => {
  if (typeof value === 'string' && isCalendarDate(value)) return value;
  faults.add(typeof value === 'string' ? 'bad-date' : 'wrong-type', {
    expected: 'a day of the calendar as YYYY-MM-DD', found: describeValue(value), hint,
  });
  return undefined;
});

/** A day, or a day with the time: `2031-03-01T08:30`, seconds and zone as wanted. */
export const dateTime = (): Schema<string> => plain('a date or a date with time', (value, faults) => {
  if (typeof value === 'string') {
    const match = /^(.{10})(?:T([01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d{1,9})?)?(?:Z|[+-](?:0\d|1[0-4]):[0-5]\d)?)?$/u.exec(value);
    if (match?.[1] !== undefined && isCalendarDate(match[1])) return value;
  }
  faults.add(typeof value === 'string' ? 'bad-date' : 'wrong-type', {
    expected: 'a day of the calendar as YYYY-MM-DD, or with the time as YYYY-MM-DDThh:mm', found: describeValue(value), hint,
  });
  return undefined;
});
