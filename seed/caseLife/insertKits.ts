import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { sha256 } from '@/db/ledger';
import {
  caseLives,
  casePicks,
  configurationLines,
  configurations,
  configurationVersions,
  items,
  kitCheckEntries,
  kitChecks,
  plans,
  sets,
  theatreCountEntries,
  theatreCounts,
  theatreQuestionActs,
  theatreQuestions,
} from '@/db/schema';
import type { TheatreEntry } from '@/lib/theatreCounts/act';
import { theatreDigestText } from '@/lib/theatreCounts/digest';
import { idOfCode } from '../catalogue/entry';
import type { DemoPerson } from '../hospital/people';
import type { HospitalClock } from '../hospitalClock';
import { setIdOf } from '../insertSets';

interface KitPlan {
  reference: string;
  /** Sets of its list, as the kit of its plan has them: a test compares. */
  list: string[];
  picked: string[];
  by: DemoPerson;
  /** Minutes before now at which it was finished, checked, issued, taken over; left out where it is not so far. */
  finished?: number;
  checked?: { by: DemoPerson; minutesAgo: number };
  issued?: number;
  taken?: { by: DemoPerson; minutesAgo: number };
}

/** One kit picked and waiting for its check, one half picked, one in theatre. */
export const KITS: readonly KitPlan[] = [
  {
    reference: 'LM-26-D3XE',
    list: ['CLO-01'],
    picked: ['CLO-01'],
    by: 'person_wren-adeyemi',
    finished: 40,
  },
  {
    reference: 'LM-26-3JFA',
    list: ['DTT-01', 'SFT-02'],
    picked: ['DTT-01'],
    by: 'person_tomas-birkett',
  },
  {
    reference: 'LM-26-U4HT',
    list: ['SFT-03'],
    picked: ['SFT-03'],
    by: 'person_jolene-stott',
    finished: 150,
    checked: { by: 'person_wren-adeyemi', minutesAgo: 140 },
    issued: 120,
    taken: { by: 'person_ruth-okonjo', minutesAgo: 110 },
  },
];

/** The thing that was not found at the first count of the case in theatre. */
const NOT_FOUND = { setCode: 'SFT-03', itemCode: 'SF-B25-125' };

/** Kits on their way as the demo begins, and the first count of the one in theatre. */
export async function insertKits(write: Queries, clock: HospitalClock): Promise<void> {
  for (const kit of KITS) await insertKit(write, kit, clock);
  await insertFirstCount(write, clock);
}

const caseIdOf = (reference: string) => `case_${reference.toLowerCase()}`;
const ago = (clock: HospitalClock, minutes: number) =>
  new Date(clock.now.getTime() - minutes * 60_000).toISOString();

async function insertKit(write: Queries, kit: KitPlan, clock: HospitalClock): Promise<void> {
  const { reference, by, finished, checked, issued, taken } = kit;
  const caseId = caseIdOf(reference);
  const stem = reference.toLowerCase();
  const confirmed = (await write.select().from(plans)).filter(({ status }) => status === 'confirmed');
  const plan = confirmed.find((one) => one.caseId === caseId);
  if (!plan) throw new Error(`${reference} has no confirmed plan`);
  const begun = (finished ?? 30) + 15;
  const checkId = `check_demo-${stem}`;
  if (checked) {
    const check = {
      id: checkId,
      caseId,
      personId: checked.by,
      beganAt: ago(clock, checked.minutesAgo + 5),
    };
    await write.insert(kitChecks).values(check);
    await insertMany(
      write,
      kitCheckEntries,
      kit.picked.map((code, at) => ({
        id: `entry_demo-${stem}-${at + 1}`,
        checkId,
        act: { kind: 'seen', thing: { kind: 'set', setId: setIdOf(code), packId: null }, quantity: 1 },
        personId: checked.by,
        doneAt: ago(clock, checked.minutesAgo + 3 - at),
        enteredAt: ago(clock, checked.minutesAgo + 3 - at),
      })),
    );
    const closed = { closedAt: ago(clock, checked.minutesAgo), differences: [] };
    await write
      .insert(kitChecks)
      .values({ ...check, ...closed })
      .onConflictDoUpdate({ target: kitChecks.id, set: closed });
  }
  await write.insert(caseLives).values({
    caseId,
    planVersion: plan.version,
    list: await Promise.all(kit.list.map((code) => lineOf(write, code))),
    listMadeBy: by,
    listMadeAt: ago(clock, begun),
    ...(finished === undefined ? {} : { pickedBy: by, pickedAt: ago(clock, finished) }),
    ...(checked ? { checkedBy: checked.by, checkedAt: ago(clock, checked.minutesAgo), checkId } : {}),
    ...(issued === undefined ? {} : { issuedBy: by, issuedAt: ago(clock, issued) }),
    ...(taken ? { takenBy: taken.by, takenAt: ago(clock, taken.minutesAgo) } : {}),
    revision: 1,
  });
  const rows = new Map((await write.select().from(sets)).map((set) => [set.id, set]));
  await insertMany(
    write,
    casePicks,
    kit.picked.map((code, at) => {
      const set = rows.get(setIdOf(code));
      const doneAt = ago(clock, begun - 3 - at);
      return {
        id: `pick_demo-${stem}-${code.toLowerCase()}`,
        caseId,
        setId: setIdOf(code),
        packId: set?.packId ?? null,
        useBy: set?.useBy ?? null,
        quantity: 1,
        placeId: set?.placeId ?? null,
        how: 'scan',
        pickedBy: by,
        doneAt,
        enteredAt: doneAt,
        ...(issued === undefined ? {} : { issuedBy: by, issuedAt: ago(clock, issued) }),
      };
    }),
  );
  if (issued === undefined) return;
  for (const code of kit.picked) {
    const set = rows.get(setIdOf(code));
    if (!set) throw new Error(`there is no ${code}`);
    await write
      .insert(sets)
      .values({ ...set, caseId })
      .onConflictDoUpdate({ target: sets.id, set: { caseId } });
  }
}

async function lineOf(write: Queries, code: string) {
  const [set] = (await write.select().from(sets)).filter((one) => one.code === code);
  const versions = await write.select().from(configurationVersions);
  const version = versions.find(({ id }) => id === set?.versionId);
  const kinds = await write.select().from(configurations);
  const row = kinds.find(({ id }) => id === version?.configurationId);
  return {
    kind: 'set',
    setId: setIdOf(code),
    code,
    configurationName: row?.name ?? '',
    role: 'open',
    alike: [],
    readyAt: null,
  };
}

/** The first count of the case in theatre: every line, ten swabs, and one bit that nobody could find. */
async function insertFirstCount(write: Queries, clock: HospitalClock): Promise<void> {
  const caseId = caseIdOf('LM-26-U4HT');
  const countId = 'theatreCount_demo-first';
  const [counter, second]: [DemoPerson, DemoPerson] = ['person_ruth-okonjo', 'person_piotr-lennard'];
  const setId = setIdOf(NOT_FOUND.setCode);
  const set = (await write.select().from(sets)).find(({ id }) => id === setId);
  const all = await write.select().from(configurationLines);
  const lines = all.filter(({ versionId }) => versionId === set?.versionId);
  const short = lines.find(({ itemId }) => itemId === idOfCode(NOT_FOUND.itemCode));
  if (!short) throw new Error(`${NOT_FOUND.setCode} has no line for ${NOT_FOUND.itemCode}`);
  const count = { id: countId, caseId, moment: 'first', personId: counter, beganAt: ago(clock, 25) };
  await write.insert(theatreCounts).values(count);
  const at = (index: number) => new Date(clock.now.getTime() - 24 * 60_000 + index * 4_000).toISOString();
  const entries: TheatreEntry[] = [
    ...lines.map((line, index) => ({
      id: `entry_demo-first-${index + 1}`,
      act: {
        kind: 'counted',
        thing: { kind: 'line', setId, lineId: line.id },
        pieces: line.id === short.id ? line.expected - 1 : line.expected,
      },
      doneAt: at(index),
    })),
    {
      id: 'entry_demo-first-swabs',
      act: { kind: 'added', key: 'swabs', itemId: null, name: 'Swabs', pieces: 10 },
      doneAt: at(lines.length),
    },
  ] as TheatreEntry[];
  await insertMany(
    write,
    theatreCountEntries,
    entries.map(({ id, act, doneAt }) => ({
      id,
      countId,
      act,
      personId: counter,
      doneAt,
      enteredAt: doneAt,
    })),
  );
  const closedAt = ago(clock, 12);
  const closed = {
    closedAt,
    secondPersonId: second,
    entryCount: entries.length,
    entryDigest: sha256(theatreDigestText(countId, counter, entries)),
  };
  await write
    .insert(theatreCounts)
    .values({ ...count, ...closed })
    .onConflictDoUpdate({ target: theatreCounts.id, set: closed });
  const item = (await write.select().from(items)).find(({ id }) => id === short.itemId);
  await write.insert(theatreQuestions).values({
    id: 'question_demo-first',
    caseId,
    countId,
    setId,
    lineId: short.id,
    itemId: short.itemId,
    thing: item?.name ?? NOT_FOUND.itemCode,
    expected: short.expected,
    counted: short.expected - 1,
    openedAt: closedAt,
  });
  await write.insert(theatreQuestionActs).values({
    id: 'entry_demo-first-looked',
    questionId: 'question_demo-first',
    kind: 'stillOpen',
    pieces: null,
    note: 'Looked through the wrap and the basket; the bench was asked.',
    personId: counter,
    doneAt: ago(clock, 10),
    enteredAt: ago(clock, 10),
  });
}
