import { eq } from 'drizzle-orm';
import { returnId } from '@/lib/identity/ids';
import type { Problem } from '@/lib/identity/result';
import { textProblems } from '@/lib/plans/checkConstruct';
import type { Construct } from '@/lib/plans/plan';
import { plainDate } from '@/lib/quantities/plainDate';
import type { ReasonKind } from '@/lib/reasons/reason';
import { accountOfUse, freePacks } from '@/lib/usage/account';
import { actFaults, type DelayAbout, type OpeningBar, type PieceAct, type UseAct } from '@/lib/usage/act';
import { openingBars, saysOpened } from '@/lib/usage/bars';
import { mayStay } from '@/lib/usage/implant';
import { isWaste } from '@/lib/usage/settle';
import { sourceKey, stateOfUse } from '@/lib/usage/state';
import { reasonsWords } from '@/lib/wording/reasons';
import { ACT_FAULT_WORDS, placeWords, usageWords as words } from '@/lib/wording/usage';
import type { Queries } from '../../client';
import type { TableFacts } from '../../queries/usage/tableFacts';
import { tableItems } from '../../queries/usage/tableItems';
import { caseReturns, items, sets } from '../../schema';

/** Everything that keeps an act from being entered, at once; empty where nothing does. */
export async function entryProblems(
  write: Queries,
  facts: TableFacts,
  act: UseAct,
  closed: boolean,
): Promise<Problem[]> {
  const problems: Problem[] = [];
  const add = (path: string, code: string, message: string) =>
    problems.push({ path: ['act', path], code, message });
  if (closed && act.because === null) add('because', 'needed', words.becauseNeeded);
  if (!closed && act.because !== null) add('because', 'too-early', words.becauseTooEarly);
  problems.push(...textProblems(act.because ?? '', ['act', 'because']));
  if (act.kind === 'takenBack') {
    const known = facts.entries.some(
      ({ id, act: one }) => id === act.entryId && (one.kind === 'piece' || one.kind === 'delay'),
    );
    if (!known) add('entryId', 'unknown', words.noSuchEntry);
    else if (stateOfUse(facts.entries).takenBack.has(act.entryId))
      add('entryId', 'taken-back', words.takenBackAlready);
    return problems;
  }
  if (act.kind === 'reason') {
    const unknown = reasonProblem(facts, act.reasonId, 'waste');
    if (unknown) problems.push(unknown);
    if (!isStandingWaste(facts, act.entryId)) add('entryId', 'no-waste', words.noWaste);
    return problems;
  }
  problems.push(...textProblems(act.note ?? '', ['act', 'note']));
  for (const fault of actFaults(act)) add('', fault, ACT_FAULT_WORDS[fault]);
  if (act.kind === 'delay') {
    const unknown = reasonProblem(facts, act.reasonId, 'delay');
    if (unknown) problems.push(unknown);
    if (act.about !== null && !(await isOnFile(write, act.about))) add('about', 'unknown', words.noSuchThing);
    return problems;
  }
  const item = (await tableItems(write, [act.itemId])).get(act.itemId);
  const name = item?.name ?? act.itemId;
  if (act.outcome === 'implanted' && item && !mayStay(item.kind))
    add('outcome', 'no-implant', words.noImplant(name));
  const place = act.place && !placeIsPlanned(facts.plan?.construct ?? null, act.place);
  if (place) add('place', 'unknown', words.noSuchPlace(placeWords(act.place)));
  const there = sourceProblem(facts, act, name);
  if (there) add('source', there.code, there.message);
  else {
    problems.push(...(await freeProblems(write, facts, act, name)));
    const bars = barsOf(facts, act, item?.status === 'recalled');
    const unsaid = saysOpened(act.outcome) && bars.some((bar) => !act.despite.includes(bar));
    if (unsaid) add('despite', 'do-not-open', words.doNotOpen(name, bars));
    else if (act.despite.length > 0 && act.note === null) add('note', 'needed', words.needsNote);
  }
  return problems;
}

/** A reason must be one of the hospital's own for that kind; one that was retired meanwhile may still arrive. */
function reasonProblem({ reasons }: TableFacts, id: string | null, kind: ReasonKind): Problem | null {
  if (id === null || reasons.some((one) => one.id === id && one.kind === kind)) return null;
  return { path: ['act', 'reasonId'], code: 'unknown', message: reasonsWords.noSuch };
}

/** Whether an entry stands and says that something was wasted. */
function isStandingWaste({ entries, slots, packs }: TableFacts, id: string): boolean {
  const piece = stateOfUse(entries).pieces.find((one) => one.entryId === id);
  const from = piece && [...slots, ...packs].find((one) => sourceKey(one) === sourceKey(piece.source));
  return piece !== undefined && isWaste(piece.outcome, from?.reusable ?? false);
}

async function isOnFile(write: Queries, about: DelayAbout): Promise<boolean> {
  const [row] =
    about.kind === 'set'
      ? await write.select({ id: sets.id }).from(sets).where(eq(sets.id, about.setId))
      : await write.select({ id: items.id }).from(items).where(eq(items.id, about.itemId));
  return row !== undefined;
}

/** Whether the plan has such a place; a hole it says nothing of is one of the plate all the same. */
function placeIsPlanned(plan: Construct | null, place: NonNullable<PieceAct['place']>): boolean {
  if (plan === null) return false;
  if (place.kind === 'free') return plan.freeScrews.some(({ key }) => key === place.screw);
  return plan.plates.some(({ key }) => key === place.plate);
}

function sourceProblem(
  facts: TableFacts,
  { source, itemId }: PieceAct,
  name: string,
): { code: string; message: string } | null {
  const own =
    source.kind === 'slot'
      ? facts.slots.find(({ setId, lineId }) => setId === source.setId && lineId === source.lineId)
      : facts.packs.find(({ pickId }) => pickId === source.pickId);
  if (!own) return { code: 'not-here', message: words.notHere(name) };
  return own.itemId === itemId ? null : { code: 'other-item', message: words.otherItem };
}

/** Of a single pack no more is said than was issued; of a slot whatever happened is recorded, and asked about. */
async function freeProblems(
  write: Queries,
  facts: TableFacts,
  { source, quantity, outcome }: PieceAct,
  name: string,
): Promise<Problem[]> {
  if (source.kind !== 'pack') return [];
  const pack = facts.packs.find(({ pickId }) => pickId === source.pickId);
  if (!pack) return [];
  const state = stateOfUse(facts.entries);
  if (source.returnId === null) {
    const [account] = accountOfUse([pack], state);
    const free = account ? Math.max(0, freePacks(account)) : 0;
    const message = words.nothingFree(name, free);
    return quantity > free ? [{ path: ['act', 'quantity'], code: 'more-than-out', message }] : [];
  }
  const [row] = await write
    .select()
    .from(caseReturns)
    .where(eq(caseReturns.id, returnId.parse(source.returnId)));
  const told = state.pieces.reduce(
    (sum, one) =>
      one.source.kind === 'pack' && one.source.returnId === source.returnId ? sum + one.quantity : sum,
    0,
  );
  const path = ['act', 'source'];
  if (row?.pickId !== pack.pickId || row.outcome !== 'opened' || told + quantity > row.quantity)
    return [{ path, code: 'no-such-return', message: words.noSuchReturn(name) }];
  return saysOpened(outcome) ? [] : [{ path, code: 'makes-clear', message: words.makesClear }];
}

function barsOf(facts: TableFacts, act: PieceAct, recalled: boolean): OpeningBar[] {
  const { source, lot } = act;
  const at =
    source.kind === 'slot'
      ? facts.sets.find(({ id }) => id === source.setId)
      : facts.packs.find(({ pickId }) => pickId === source.pickId);
  const date = (text: string | null | undefined) => (text == null ? null : plainDate.parse(text));
  return openingBars(
    {
      useBys: [date(at?.useBy), lot.kind === 'read' ? lot.useBy : null],
      held: at?.held ?? false,
      recalled,
    },
    plainDate.parse(facts.booked.caseDate),
  );
}
