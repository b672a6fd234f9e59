/** What was measured of a server beside clients that send slowly, not at all, or do not read. */
export interface BesideSlow {
  /** Milliseconds of ordinary requests, undisturbed and beside the slow ones, in the same run. */
  undisturbedMs: readonly number[];
  besideMs: readonly number[];
  /** Ordinary requests beside them that failed. */
  failed: readonly string[];
  /** The median beside them may be so many times the undisturbed one. */
  mostTimes: number;
  /** Connections the server holds open: before, while they are there, and after they went. */
  connections: { before: number; during: number; after: number };
  /** How many slow clients there were. */
  clients: number;
  /** Memory in bytes after each of several rounds of the same: it must level off. */
  memory: readonly number[];
  /** After how many seconds the server closed what never came to its end; `null`: not while it was watched. */
  limits: readonly { what: string; seconds: number | null; within: number }[];
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length / 2;
  const at = (index: number) => sorted[index] ?? 0;
  return sorted.length % 2 === 1 ? at(Math.floor(middle)) : (at(middle - 1) + at(middle)) / 2;
}

/** A round may need somewhat more than the one before it: what the engine keeps is no leak. */
const MORE_TIMES = 1.25;
const MORE_BYTES = 40e6;

/** Where others are held up or refused, connections or memory stay behind, or nothing ever ends a dead connection. */
export function clientFaults(seen: BesideSlow): string[] {
  const { undisturbedMs, besideMs, failed, mostTimes, connections, clients, memory, limits } = seen;
  const faults: string[] = [];
  if (besideMs.length === 0) faults.push('nobody else was served');
  const times = median(besideMs) / median(undisturbedMs);
  if (times > mostTimes)
    faults.push(`others waited ${times.toFixed(1)} times as long as undisturbed, more than ${mostTimes}`);
  if (failed.length > 0) faults.push(`${failed.length} requests of others failed: ${failed[0]}`);
  if (connections.during - connections.before < clients / 2)
    faults.push(
      `only ${connections.during - connections.before} of ${clients} slow clients were held: the trouble was none`,
    );
  if (connections.after - connections.before > clients / 10)
    faults.push(`${connections.after - connections.before} connections stayed behind`);
  const [first = 0, last = 0] = [memory.at(-2), memory.at(-1)];
  if (last > first * MORE_TIMES + MORE_BYTES)
    faults.push(`memory grows from round to round: ${mega(first)}, then ${mega(last)}`);
  for (const { what, seconds, within } of limits)
    if (seconds === null || seconds > within)
      faults.push(
        `${what} was ${seconds === null ? 'never closed' : `closed after ${seconds.toFixed(0)} s`}, not within ${within} s`,
      );
  return faults;
}

export const mega = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`;
