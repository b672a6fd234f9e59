import { and, eq } from 'drizzle-orm';
import type { ConfigurationVersionId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { checkVersion } from '@/lib/sets/checkVersion';
import { changeWords } from '@/lib/wording/changes';
import { configurationWords as words } from '@/lib/wording/configurations';
import type { Database, Queries } from '../client';
import { appendLedger } from '../ledger';
import { versionFromRows } from '../mappers/configuration';
import { itemFromRow } from '../mappers/item';
import { versionBasisDigest, versionContentDigest } from '../queries/changes/configurationDigests';
import type { Person } from '../queries/people';
import { configurationLines, configurations, configurationVersions, items, ledger } from '../schema';
import { trialSeen } from './changes/trial-seen';
import { settleDueVersions } from './configurations/settle-due';

interface PutConfigurationInForce {
  db: Pick<Database, 'tx'>;
  now: string;
  today: PlainDate;
  person: Person;
  versionId: ConfigurationVersionId;
  baseRevision: number;
  /** The first day it is in force: today, or a day to come. */
  from: PlainDate;
  attestation: Attestation;
  /** The approver's own trial of this draft. */
  trialId: string;
}

/**
 * Approves a draft: in force at once, or from a day to come. By another person than those who wrote it, who saw what it would
 * do and proved who they are, and only when nothing is wrong with it. From then on it never changes. On its day it supersedes
 * the version before it; sets follow it when they are next refitted, not before.
 */
export async function putConfigurationInForce(
  request: PutConfigurationInForce,
): Promise<Outcome<{ version: number; from: PlainDate }, { revision: number }>> {
  const { db, now, today, person, versionId, baseRevision, from, attestation } = request;
  if (!may(person, 'approveConfiguration')) {
    return refused('notPermitted', `${person.name} can’t put a configuration in force.`);
  }
  const early =
    from < today ? [{ path: ['from'], code: 'in-the-past', message: words.inThePast(today) }] : [];
  if (early.length > 0) return refusedFor(early);
  return db.tx(async (write) => {
    await settleDueVersions(write, now);
    const [row] = await write
      .select()
      .from(configurationVersions)
      .where(eq(configurationVersions.id, versionId));
    if (!row) return refused('notFound', 'There is no such version.');
    if (row.status !== 'draft' || row.approvedAt !== null)
      return refused('frozen', `Version ${row.version} is not a draft any more.`);
    if (row.revision !== baseRevision) {
      return refused('conflict', 'The draft was changed since you opened it. Look at it again.', {
        revision: row.revision,
      });
    }
    const [head] = await write
      .select()
      .from(configurations)
      .where(eq(configurations.id, row.configurationId));
    if (head?.withdrawnAt) return refused('frozen', words.outOfUse(head.name));
    if (row.draftedBy === person.id || (await wroteIn(write, row.configurationId, versionId, person))) {
      return refused(
        'notPermitted',
        'A version is put in force by another person than the one who drafted it.',
      );
    }
    if (!attests(attestation, person.id, 'iApprove', now))
      return refused('notPermitted', changeWords.notProven);
    const seen = await trialSeen(write, {
      trialId: request.trialId,
      subject: { kind: 'configuration-version', id: versionId, change: 'putInForce' },
      person,
      contentDigest: (await versionContentDigest(write, versionId)) ?? '',
      basisDigest: await versionBasisDigest(write, row.configurationId, today),
      now,
    });
    if (!seen.ok) return refusedFor([seen.problem]);
    const lines = await write
      .select()
      .from(configurationLines)
      .where(eq(configurationLines.versionId, versionId));
    const catalogue = (await write.select().from(items)).map(itemFromRow);
    const problems = checkVersion(
      versionFromRows(row, lines),
      new Map(catalogue.map((item) => [item.id, item])),
    );
    if (problems.length > 0) return refusedFor(problems);
    const atOnce = from <= today;
    if (atOnce)
      await write
        .update(configurationVersions)
        .set({ status: 'superseded' })
        .where(
          and(
            eq(configurationVersions.configurationId, row.configurationId),
            eq(configurationVersions.status, 'inForce'),
          ),
        );
    await write
      .update(configurationVersions)
      .set({
        ...(atOnce ? { status: 'inForce' } : {}),
        approvedBy: person.id,
        approvedAt: now,
        inForceFrom: from,
        revision: row.revision + 1,
      })
      .where(eq(configurationVersions.id, versionId));
    const { meaning, method, at } = attestation;
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: atOnce ? 'put-configuration-in-force' : 'approve-configuration',
      subjectKind: 'configuration',
      subjectId: row.configurationId,
      detail: {
        versionId,
        version: row.version,
        from,
        trial: seen.seen,
        attested: { meaning, method, at },
      },
    });
    return { ok: true, value: { version: row.version, from } };
  });
}

const WRITES = new Set(['add-configuration', 'begin-configuration-draft', 'save-configuration-draft']);

/** Whether a person ever saved this draft: whoever wrote some of it does not approve the rest. */
async function wroteIn(
  write: Queries,
  configuration: string,
  versionId: ConfigurationVersionId,
  person: Person,
): Promise<boolean> {
  const entries = await write
    .select({ action: ledger.action, detail: ledger.detail })
    .from(ledger)
    .where(
      and(
        eq(ledger.subjectKind, 'configuration'),
        eq(ledger.subjectId, configuration),
        eq(ledger.personId, person.id),
      ),
    );
  return entries.some(
    ({ action, detail }) => WRITES.has(action) && (detail as { versionId?: string }).versionId === versionId,
  );
}
