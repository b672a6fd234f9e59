import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { casePicks, caseReturns, stock } from '@/db/schema';
import { itemId } from '@/lib/identity/ids';
import { idOfCode } from '../catalogue/entry';
import type { History } from '../history/history';
import { DAY, type PastCase } from '../history/pastCases';
import type { Row } from '../history/pastRows';

/** The lot that its maker calls back: four packs of it lie on the held shelf. */
export const RECALLED = { itemId: itemId.parse(idOfCode('SF-C35-16')), lot: 'C35-4009' };

const MINUTE = 60_000;
const ARRIVED_DAYS_AGO = 64;
/** Cases that had packs of it, by how many days ago, and what became of each pack. */
const USED_BETWEEN = { from: 52, until: 18 };
const OUTCOMES = ['implanted', 'cameBack', 'implanted', 'dropped'] as const;
const iso = (ms: number) => new Date(ms).toISOString();

/**
 * Rows of how the lot came, and went to a few cases before anybody called it back: packs beside sets in which that length had run
 * out. Answers its heap, which needs no other arrival; needs the stock and the past cases.
 */
export async function recalledLotRows(
  write: Queries,
  rows: Row[],
  { cases, work }: History,
  now: number,
): Promise<string> {
  const heap = (await write.select().from(stock)).find(
    (one) => one.itemId === RECALLED.itemId && one.lot === RECALLED.lot,
  );
  if (!heap) throw new Error(`the demo holds ${RECALLED.lot}`);
  const takes = ({ set }: PastCase) =>
    work.get(set.versionId)?.lines.some((line) => line.itemId === RECALLED.itemId) === true;
  const among = cases.filter(
    (one) =>
      takes(one) &&
      one.startsAt > now - USED_BETWEEN.from * DAY &&
      one.endsAt < now - USED_BETWEEN.until * DAY,
  );
  const used = OUTCOMES.flatMap((outcome, at) => {
    const one = among[Math.floor((at * among.length) / OUTCOMES.length)];
    return one
      ? [{ outcome, used: one, pickId: `pick_past-${one.id.slice('case_'.length)}-recalled-${at}` }]
      : [];
  });
  const what = {
    itemId: RECALLED.itemId,
    quantity: 1,
    lot: RECALLED.lot,
    useBy: heap.useBy,
    owner: heap.owner,
  };
  const gone = used.filter(({ outcome }) => outcome !== 'cameBack').length;
  rows.push({
    ...what,
    at: now - ARRIVED_DAYS_AGO * DAY,
    act: 'received',
    quantity: heap.quantity + gone,
    toStockId: heap.id,
    personId: 'person_kofi-brandreth',
  });
  for (const { outcome, used: one, pickId } of used) {
    const issued = one.startsAt - 30 * MINUTE;
    const at = endOf(one, outcome);
    const ofCase = { ...what, caseId: one.id, pickId };
    rows.push({
      ...ofCase,
      at: issued,
      act: 'issued',
      fromStockId: heap.id,
      personId: 'person_tomas-birkett',
    });
    rows.push({
      ...ofCase,
      at,
      act: outcome === 'dropped' ? 'wasted' : outcome,
      reason: outcome === 'dropped' ? 'dropped' : null,
      ...(outcome === 'cameBack' ? { toStockId: heap.id } : {}),
      personId: 'person_piotr-lennard',
    });
  }
  await insertMany(
    write,
    casePicks,
    used.map(({ used: one, pickId }) => ({
      id: pickId,
      caseId: one.id,
      stockId: heap.id,
      ...{ itemId: what.itemId, lot: what.lot, useBy: what.useBy, quantity: 1 },
      how: 'scan',
      pickedBy: 'person_tomas-birkett',
      doneAt: iso(one.startsAt - 40 * MINUTE),
      enteredAt: iso(one.startsAt - 40 * MINUTE),
      issuedBy: 'person_tomas-birkett',
      issuedAt: iso(one.startsAt - 30 * MINUTE),
    })),
  );
  await insertMany(
    write,
    caseReturns,
    used.map(({ outcome, used: one, pickId }) => {
      const at = iso(endOf(one, outcome));
      const back = outcome === 'cameBack';
      return {
        id: `return_${pickId.slice('pick_'.length)}`,
        pickId,
        outcome: back ? 'returnedUnopened' : 'opened',
        quantity: 1,
        attested: back ? { meaning: 'iLookedAtTheBarrier', method: 'pin', at } : null,
        personId: 'person_piotr-lennard',
        doneAt: at,
        enteredAt: at,
      };
    }),
  );
  return heap.id;
}

/** During the case, or, where it came back, after it. */
const endOf = ({ startsAt, endsAt }: PastCase, outcome: (typeof OUTCOMES)[number]): number =>
  outcome === 'cameBack' ? endsAt + 15 * MINUTE : startsAt + Math.round((endsAt - startsAt) * 0.6);
