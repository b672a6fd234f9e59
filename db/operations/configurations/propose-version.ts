import { eq } from 'drizzle-orm';
import { z } from 'zod';
import {
  type ConfigurationId,
  type ConfigurationVersionId,
  configurationVersionId,
  lineId,
  type NewId,
} from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { type ConfigurationLine, configurationLine } from '@/lib/sets/configuration';
import { reviewWords as words } from '@/lib/wording/review';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { lineFromRow } from '../../mappers/configuration';
import type { Person } from '../../queries/people';
import { configurationLines } from '../../schema';
import { insertNextVersion, versionsBeforeNext } from './next-version';

/** What a review proposes: lines of the version in force with the quantity they would have; 0 takes a line out. */
export const versionProposal = z.strictObject({
  versionId: configurationVersionId,
  lines: z
    .array(
      z.strictObject({
        lineId,
        expected: z.number('a whole number').int('whole pieces only').min(0).max(999),
      }),
    )
    .min(1, words.nothingChanged)
    .max(600),
  because: z.string().trim().min(1, words.sayWhy).max(400),
});

interface ProposeVersion {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  configurationId: ConfigurationId;
  /** As sent from outside; parsed here against `versionProposal`. */
  entry: unknown;
}

/**
 * Makes a draft of what a review proposes: the version in force with other quantities. Nothing comes of it by itself: the draft
 * is tried, changed, approved by a second person or thrown away as any other. A back-up cannot be taken out or made fewer by it, and no
 * line goes below its minimum without going altogether. A draft that is open already is never overwritten.
 */
export async function proposeVersion(
  request: ProposeVersion,
): Promise<Outcome<{ versionId: ConfigurationVersionId; version: number }>> {
  const { db, now, newId, person, configurationId } = request;
  if (!may(person, 'writeConfiguration'))
    return refused('notPermitted', `${person.name} can’t change a configuration.`);
  const parsed = versionProposal.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { versionId: seen, because } = parsed.data;
  return db.tx(async (write) => {
    const versions = await versionsBeforeNext(write, { configurationId, now });
    if (!versions.ok) return versions;
    const [newest] = versions.value;
    if (newest?.status === 'draft') return refused('frozen', words.draftOpen(newest.version));
    const from = versions.value.find(({ status }) => status === 'inForce');
    if (!newest || !from || from.id !== seen) return refused('conflict', words.otherInForce);
    const rows = await write
      .select()
      .from(configurationLines)
      .where(eq(configurationLines.versionId, from.id));
    const before = rows.map(lineFromRow);
    const problems = problemsOf(parsed.data.lines, before);
    if (problems.length > 0) return refusedFor(problems);
    const wanted = new Map(parsed.data.lines.map((line) => [line.lineId, line.expected]));
    const lines = before.flatMap((line): ConfigurationLine[] => {
      const expected = wanted.get(line.id) ?? line.expected;
      return expected === 0 ? [] : [configurationLine.parse({ ...line, id: newId('line'), expected })];
    });
    const version = newest.version + 1;
    const next = { configurationId, from, version, lines, note: because, person, newId };
    const versionId = await insertNextVersion(write, next);
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'propose-version',
      subjectKind: 'configuration',
      subjectId: configurationId,
      detail: {
        versionId,
        version,
        from: from.version,
        because,
        changes: before.flatMap((line) => {
          const expected = wanted.get(line.id) ?? line.expected;
          return expected === line.expected
            ? []
            : [{ itemId: line.itemId, from: line.expected, to: expected }];
        }),
      },
    });
    return { ok: true, value: { versionId, version } };
  });
}

function problemsOf(
  wanted: readonly { lineId: string; expected: number }[],
  before: readonly ConfigurationLine[],
): Problem[] {
  const problems = wanted.flatMap(({ lineId: id, expected }, at): Problem[] => {
    const path = ['lines', at, 'expected'];
    const line = before.find((one) => one.id === id);
    if (!line) return [{ path: ['lines', at, 'lineId'], code: 'unknown-line', message: words.noSuchLine }];
    if (wanted.findIndex((one) => one.lineId === id) !== at)
      return [{ path: ['lines', at, 'lineId'], code: 'duplicate', message: words.lineTwice }];
    if (line.mustHaveClass === 3 && expected < line.expected)
      return [{ path, code: 'back-up', message: words.backUpStays }];
    if (expected > 0 && expected < line.minimum)
      return [{ path, code: 'below-minimum', message: words.belowMinimum(line.minimum) }];
    return [];
  });
  const changed = wanted.some(({ lineId: id, expected }) =>
    before.some((line) => line.id === id && line.expected !== expected),
  );
  return changed || problems.length > 0
    ? problems
    : [{ path: ['lines'], code: 'nothing-changed', message: words.nothingChanged }];
}
