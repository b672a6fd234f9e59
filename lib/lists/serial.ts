import { type PlainDate, plainDate } from '../quantities/plainDate';

/** A day and a minute of it; a serial under 1 is a time of no day. */
export interface SerialMoment {
  date: PlainDate | null;
  minute: number;
}

const DAY_MS = 86_400_000;
/** Serials of the 1900 system count a 29 February 1900 that never was. */
const NEVER_WAS = 60;
const LAST_SERIAL = 2_958_465;
/** How far a time may lie off a whole minute: spreadsheets keep days as binary fractions. */
const OFF_BY_SECONDS = 1;

/**
 * The day and time of a spreadsheet's serial number in its 1900 system: whole days since the last of December 1899, with
 * one day too many from serial 60 on, and the part of the day as a fraction. `null` where it is no day, or no whole minute.
 *
 * Source: ECMA-376 Part 1, 18.17.4.1 (1900 backward compatibility date base) and 18.17.4.2 (times).
 */
export function momentOfSerial(serial: number): SerialMoment | null {
  if (!Number.isFinite(serial) || serial < 0 || serial >= LAST_SERIAL + 1) return null;
  const seconds = Math.round(serial * 86_400);
  const minutes = Math.round(seconds / 60);
  if (Math.abs(seconds - minutes * 60) > OFF_BY_SECONDS) return null;
  const day = Math.floor(minutes / 1440);
  const minute = minutes - day * 1440;
  if (day === 0) return { date: null, minute };
  if (day === NEVER_WAS || day > LAST_SERIAL) return null;
  const since = Date.UTC(1899, 11, day < NEVER_WAS ? 31 : 30);
  return { date: plainDate.parse(new Date(since + day * DAY_MS).toISOString().slice(0, 10)), minute };
}

/** The serial of a day in the 1900 system. */
export function serialOfDate(date: PlainDate): number {
  const day = Math.round((Date.parse(`${date}T00:00:00Z`) - Date.UTC(1899, 11, 30)) / DAY_MS);
  return day > NEVER_WAS ? day : day - 1;
}

/**
 * The serial a reader of spreadsheets made a moment of, which it counts from 30 December 1899 throughout; whole seconds.
 */
export const serialOfMs = (ms: number): number => Math.round((ms - Date.UTC(1899, 11, 30)) / 1000) / 86_400;
