import 'server-only';
import { findCase } from '@/db/queries/cases';
import { type RecordOfUse, recordOfUse } from '@/db/queries/usage/recordOfUse';
import { type DelayLine, delayLines, type RecordLine, recordLines } from '@/lib/usage/lines';
import { reckonUse, type UseReckoned } from '@/lib/usage/reckon';
import { sourceKey } from '@/lib/usage/state';
import { openUseWords } from '@/lib/wording/usage';
import type { Access } from './session';

/** A record of use as it leaves the program, on paper or as a file. */
export interface RecordToGive {
  booked: NonNullable<Awaited<ReturnType<typeof findCase>>>;
  record: RecordOfUse;
  reckoned: UseReckoned;
  lines: RecordLine[];
  delays: DelayLine[];
  /** Sentences: open as it was closed, or now. */
  open: string[];
  itemName: (itemId: string) => string;
  /** Names a source, a set, or a question of a count. */
  nameOf: (key: string) => string;
}

/** `null` where there is no such case. */
export async function recordToGive(db: Access['db'], id: string): Promise<RecordToGive | null> {
  const booked = await findCase(db, id);
  const record = booked && (await recordOfUse(db, booked.id));
  if (!booked || !record) return null;
  const items = new Map(record.items.map((item) => [item.itemId, item]));
  const itemName = (itemId: string) => items.get(itemId)?.name ?? itemId;
  const code = (setId: string) => record.sets.find(({ id: one }) => one === setId)?.code ?? setId;
  const names = new Map([
    ...record.slots.map(
      (slot) => [sourceKey(slot), `${itemName(slot.itemId)}, ${code(slot.setId)}`] as const,
    ),
    ...record.packs.map(
      ({ pickId, itemId, lot }) =>
        [pickId, `${itemName(itemId)}${lot === null ? '' : `, lot ${lot}`}`] as const,
    ),
    ...record.sets.map(({ id: setId, code: name }) => [setId, name] as const),
    ...record.countQuestions.map(({ id: question, thing }) => [question, thing] as const),
  ]);
  const nameOf = (key: string) => names.get(key) ?? key;
  const reckoned = reckonUse(
    {
      sources: [...record.slots, ...record.packs],
      construct: record.plan?.construct ?? null,
      countQuestions: record.countQuestions,
      asksReason: record.asksReason,
      unopenedSets: new Set(record.sets.flatMap(({ id: set, unopened }) => (unopened ? [set] : []))),
    },
    record.entries,
    (itemId) => items.get(itemId) ?? null,
  );
  const questions = record.closed?.questions ?? reckoned.questions;
  return {
    booked,
    record,
    reckoned,
    lines: recordLines(record),
    delays: delayLines(record, (about) => aboutName(record, about) ?? itemName(about)),
    open: questions.map((question) => openUseWords(question, nameOf)),
    itemName,
    nameOf,
  };
}

/** The code of a set that a delay was about; `null`: it is no set. */
const aboutName = ({ aboutSets }: RecordOfUse, id: string): string | null =>
  aboutSets.find((set) => set.id === id)?.code ?? null;
