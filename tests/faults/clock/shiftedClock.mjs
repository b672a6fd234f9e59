// Loaded before a program (node --import): its clock is the machine's plus the milliseconds in the file named by SHIFTED_BY,
// read anew at most every 20 ms. What measures durations (performance.now, timers) goes on as it is, as on a machine whose
// clock is set.
import { readFileSync } from 'node:fs';

const file = process.env.SHIFTED_BY;
const RealDate = Date;
const realNow = RealDate.now.bind(RealDate);
let shift = 0;
let readAt = Number.NEGATIVE_INFINITY;

function shiftedNow() {
  const now = realNow();
  if (file && now - readAt > 20) {
    readAt = now;
    try {
      shift = Number(readFileSync(file, 'utf8')) || 0;
    } catch {
      shift = 0;
    }
  }
  return now + shift;
}

// written as a function: a class could not be called without new, as some callers do
function ShiftedDate(...parts) {
  if (!new.target) return new RealDate(shiftedNow()).toString();
  return Reflect.construct(RealDate, parts.length === 0 ? [shiftedNow()] : parts, new.target);
}
Object.setPrototypeOf(ShiftedDate, RealDate);
ShiftedDate.prototype = RealDate.prototype;
// own ones, for whoever copies them: Date.parse, Date.UTC
Object.assign(ShiftedDate, { parse: RealDate.parse, UTC: RealDate.UTC, now: shiftedNow });
ShiftedDate.prototype.constructor = ShiftedDate;
globalThis.Date = ShiftedDate;
