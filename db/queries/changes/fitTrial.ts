import { pairsEffectOf } from '@/lib/changes/fitEffect';
import type { Trial } from '@/lib/changes/trial';
import { effectSteps } from '@/lib/fit/change';
import { createFitEngine, type FitEngine } from '@/lib/fit/engine';
import { overFamilies, screwFamiliesOf } from '@/lib/fit/exceptions';
import type { FitException, FitRule, Relation } from '@/lib/fit/rule';
import { standingOn } from '@/lib/fit/standing';
import type { Solver } from '@/lib/kits/solver';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { mayRead, type Reading } from '../../reader';
import { keptCatalogue } from '../caseKit';
import { listFitExceptions, listFitRules, loadFitBasis, loadFitEngine } from '../fitRules';
import { readSetting } from '../settings';
import { contentDigestOf, fitBasisDigest } from './fitDigests';
import { type Side, trySubjects } from './trySubjects';

export type FitSubject = {
  kind: 'fit-rule' | 'fit-exception';
  id: string;
  change: 'putInForce' | 'withdraw';
};

/** A change of the rules, ready to be tried: the engine as it is and as it would be, and digests of what is tried. */
export interface FitChange {
  relation: Relation;
  before: FitEngine;
  after: FitEngine;
  contentDigest: string;
  basisDigest: string;
}

/**
 * The engine with a draft in force, or without a rule or exception that is, or is to come; `null` where there is no such
 * thing now.
 */
export async function loadFitChange(
  db: Reading,
  { kind, id, change }: FitSubject,
  today: PlainDate,
): Promise<FitChange | null> {
  mayRead(db, 'readHospital');
  const [basis, now, basisDigest] = await Promise.all([
    loadFitBasis(db, today),
    loadFitEngine(db, today),
    fitBasisDigest(db.read, today),
  ]);
  const listed = kind === 'fit-rule' ? await listFitRules(db) : await listFitExceptions(db);
  const subject = listed.find((one) => one.id === id);
  if (!subject) return null;
  const standing = standingOn(subject, today);
  if (standing === 'ended' || (standing === 'draft') !== (change === 'putInForce')) return null;
  const withIt = createFitEngine(
    'code' in subject
      ? {
          ...basis,
          rules: [
            ...basis.rules.filter(({ code }) => code !== subject.code),
            { ...subject, status: 'inForce' as const },
          ],
        }
      : {
          ...basis,
          exceptions: [
            ...without(basis.exceptions, listed, subject),
            ...overFamilies(subject, screwFamiliesOf(await keptCatalogue(db))),
          ],
        },
  );
  const withoutIt = () =>
    createFitEngine(
      'code' in subject
        ? { ...basis, rules: basis.rules.filter(({ code }) => code !== subject.code) }
        : { ...basis, exceptions: without(basis.exceptions, listed, subject) },
    );
  const digests = { contentDigest: contentDigestOf(subject), basisDigest };
  const { relation } = subject;
  if (change === 'putInForce') return { relation, before: now, after: withIt, ...digests };
  // one that has not begun gives way to what holds now, one in force to nothing
  return standing === 'toCome'
    ? { relation, before: withIt, after: now, ...digests }
    : { relation, before: now, after: withoutIt(), ...digests };
}

/** Exceptions in force without one and without others for the same pair, which it replaces. */
function without(
  inForce: readonly FitException[],
  listed: readonly (FitRule | FitException)[],
  subject: FitException,
): FitException[] {
  const replaced = new Set(
    listed.filter((one) => !('code' in one) && samePair(one, subject)).map(({ id }) => id as string),
  );
  return inForce.filter(({ id }) => !replaced.has(id));
}

/** The same exception, or another for the same two designs, which it replaces. */
function samePair(
  a: { relation: string; firstItemId: string; secondItemId: string },
  b: { relation: string; firstItemId: string; secondItemId: string },
): boolean {
  const pair = (one: typeof a) => [one.firstItemId, one.secondItemId].sort().join();
  return a.relation === b.relation && pair(a) === pair(b);
}

/** Tries a change of the rules against the whole catalogue, then all plans. Yields often; see `trySubjects`. */
export async function* tryFitChange(
  db: Reading,
  { relation, before, after }: FitChange,
  { now, solver }: { now: string; solver: Solver | null },
): AsyncGenerator<{ done: number; of: number; label: string }, Trial> {
  const [catalogue, settings] = await Promise.all([keptCatalogue(db), readSetting(db.read, 'kits')]);
  const current = catalogue.filter(({ status }) => status === 'current');
  const rows = effectSteps(before, after, current, relation);
  let row = rows.next();
  while (!row.done) {
    yield { ...row.value, label: 'the catalogue' };
    row = rows.next();
  }
  const side = (engine: FitEngine): Side => ({
    engine,
    store: (store) => store,
    touches: new Set(),
    versionOf: (version) => version,
  });
  const subjects = yield* trySubjects(db, {
    now,
    catalogue,
    settings,
    solver,
    before: side(before),
    after: side(after),
  });
  return { ...subjects, pairs: pairsEffectOf(row.value), version: null };
}
