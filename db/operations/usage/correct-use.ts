import type { NewId } from '@/lib/identity/ids';
import type { SentUseEntry } from '@/lib/usage/act';
import type { Queries } from '../../client';
import type { Person } from '../../queries/people';
import type { TableFacts } from '../../queries/usage/tableFacts';
import { movePiece } from './move-pieces';
import { nameReason } from './name-reason';
import { takeMovesBack } from './take-moves-back';

/**
 * What follows from an entry after the record is closed, inside the write of that entry: an entry taken back has its moves
 * taken back, a further one makes its own; a reason named later is kept beside the moves it speaks of. A delay moves nothing.
 */
export async function correctUse(
  write: Queries,
  {
    facts,
    entry: { id, act, doneAt },
    person,
    now,
    newId,
  }: { facts: TableFacts; entry: SentUseEntry; person: Person; now: string; newId: NewId },
): Promise<void> {
  const by = { facts, personId: person.id, now };
  if (act.kind === 'piece')
    return movePiece(write, { ...by, entry: { id, act, doneAt, reasonId: null }, newId });
  if (act.kind === 'reason') return nameReason(write, { ...act, personId: person.id, now });
  if (act.kind === 'delay') return;
  const wrong = facts.entries.find((one) => one.id === act.entryId);
  if (wrong?.act.kind === 'delay') return;
  if (wrong?.act.kind !== 'piece') throw new Error(`${act.entryId} is no piece of the record`);
  const entry = { id: wrong.id, act: wrong.act, doneAt: wrong.doneAt, reasonId: null };
  await takeMovesBack(write, { ...by, entry, correctedBy: id });
}
