import type { Queries } from '../client';
import { mayRead, type Reading } from '../reader';
import { hiddenFrom } from './bench/blind';
import { newestChange } from './ledgerHead';
import { loadSetStandings, type SetStandings } from './setStandings';
import { hospitalToday } from './today';

interface Kept {
  under: string;
  /** By the sets a reader is blind to, which stand otherwise for them. */
  standings: Map<string, Promise<SetStandings>>;
}
const kept = new WeakMap<Queries, Kept>();

/**
 * How every set stands, worked out once and kept until something is written that can change it, and for no longer than the
 * minute: cases end and days begin. The same objects come back meanwhile, so nobody may change them.
 */
export async function keptSetStandings(db: Reading, now: string): Promise<SetStandings> {
  mayRead(db, 'readHospital');
  const { read } = db;
  // what they rest on is asked before they are read: what is written in between only makes them newer than their name
  const change = await newestChange(db);
  const [hidden, today] = await Promise.all([hiddenFrom(db), hospitalToday(read)]);
  if (change === null) return loadSetStandings(db, { now });
  const under = `${change} ${today} ${now.slice(0, 'yyyy-mm-ddThh:mm'.length)}`;
  const before = kept.get(read);
  const { standings } = before?.under === under ? before : { standings: new Map() as Kept['standings'] };
  kept.set(read, { under, standings });
  const of = [...hidden].sort().join(' ');
  const known = standings.get(of);
  if (known) return known;
  const made = loadSetStandings(db, { now });
  standings.set(of, made);
  // what failed is tried again
  made.catch(() => standings.delete(of));
  return made;
}
