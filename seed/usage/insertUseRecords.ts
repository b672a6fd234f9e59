import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { sha256 } from '@/db/ledger';
import { caseUses, moveReasons, pieceMoves, useEntries } from '@/db/schema';
import { useAct } from '@/lib/usage/act';
import { digestOfUse } from '@/lib/usage/digest';
import { Chance } from '../history/chance';
import { reasonOfPast } from './reasons';
import type { UseRecord } from './useRecords';

const SEED = 952_022;
/** How much of what was wasted before there were such records had its reason named. */
const NAMED = 0.6;
const KEEPER = 'person_dilys-harrow';

/** Closed records of use of the newest cases, and why things were wasted in the two years. Needs the turns that sets were there by. */
export async function insertUseRecords(write: Queries, records: readonly UseRecord[]): Promise<void> {
  const written = records.map((record) => ({
    ...record,
    entries: record.entries
      .map(({ id, act, doneAt }) => ({ id, act: useAct.parse(act), doneAt }))
      .sort((a, b) => (a.doneAt < b.doneAt ? -1 : a.doneAt > b.doneAt ? 1 : a.id < b.id ? -1 : 1)),
  }));
  await insertMany(
    write,
    caseUses,
    written.map(({ used, scrub, entries }) => ({
      caseId: used.id,
      beganBy: scrub,
      beganAt: beganAt(used, entries),
    })),
  );
  await insertMany(
    write,
    useEntries,
    written.flatMap(({ used, scrub, packId, entries }) =>
      entries.map(({ id, act, doneAt }) => ({
        id,
        caseId: used.id,
        act,
        packId: act.kind === 'piece' && act.source.kind === 'slot' ? packId : null,
        personId: scrub,
        doneAt,
        enteredAt: doneAt,
      })),
    ),
  );
  for (const { used, scrub, entries, closedAt } of written) {
    const closed = {
      closedBy: scrub,
      closedAt,
      entryCount: entries.length,
      entryDigest: sha256(digestOfUse(used.id, entries)),
      // nobody had counted before the set went back
      questions: [{ kind: 'notCounted', key: used.set.setId, setId: used.set.setId }],
      recorded: {},
      attested: { meaning: 'iRecordedThis', method: 'pin', at: closedAt },
    };
    await write
      .insert(caseUses)
      .values({ caseId: used.id, beganBy: scrub, beganAt: beganAt(used, entries), ...closed })
      .onConflictDoUpdate({ target: caseUses.caseId, set: closed });
  }
  await insertReasonsOfMoves(write, written);
}

const beganAt = ({ startsAt }: UseRecord['used'], entries: readonly { doneAt: string }[]): string =>
  entries[0]?.doneAt ?? new Date(startsAt).toISOString();

/** Pieces of a record have the reason it names, or none; of the rest, some were named. */
async function insertReasonsOfMoves(
  write: Queries,
  records: readonly { entries: readonly { id: string; act: ReturnType<typeof useAct.parse> }[] }[],
): Promise<void> {
  const chance = new Chance(SEED);
  const named = new Map<string, string | null>();
  for (const { entries } of records)
    for (const { id, act } of entries) {
      if (act.kind === 'piece') named.set(id, null);
      if (act.kind === 'reason') named.set(act.entryId, act.reasonId);
    }
  const moves = await write
    .select({
      act: pieceMoves.act,
      seq: pieceMoves.seq,
      reason: pieceMoves.reason,
      source: pieceMoves.source,
      personId: pieceMoves.personId,
      enteredAt: pieceMoves.enteredAt,
    })
    .from(pieceMoves);
  const wasted = moves.filter(({ act }) => act === 'wasted');
  await insertMany(
    write,
    moveReasons,
    wasted.flatMap(({ seq, reason, source, personId, enteredAt }) => {
      const own = source === null ? undefined : named.get(source);
      const reasonId = own === undefined ? (chance.is(NAMED) ? reasonOfPast(reason) : null) : own;
      return reasonId === null ? [] : [{ moveSeq: seq, reasonId, personId: personId ?? KEEPER, enteredAt }];
    }),
  );
}
