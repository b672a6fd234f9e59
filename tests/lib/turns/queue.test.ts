import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { turnStep } from '@/lib/sets/setState';
import type { BookedNeed } from '@/lib/turns/needs';
import { type OpenSet, queueOf } from '@/lib/turns/queue';
import { type Stage, stageTime } from '@/lib/turns/stageTimes';
import { isWantedNow, type WantedTurn } from '@/lib/turns/wanted';

const NOW = '2026-01-14T08:00:00.000Z';
const at = (minutes: number) => new Date(Date.parse(NOW) + minutes * 60_000).toISOString();

/** Round figures, so that sums are read off: 10, 20, 30, 40, 50 and 60 minutes. */
const MINUTES: Record<Stage, number> = {
  comingBack: 10,
  washing: 20,
  onBench: 30,
  packed: 40,
  inSteriliser: 50,
  awaitingAcceptance: 60,
};
const timeOf = (_kind: string, stage: Stage) => ({ stage, minutes: MINUTES[stage], fromTurns: null });

const set = (over: Partial<OpenSet> & { code: string }): OpenSet => ({
  id: `set_${over.code}`,
  configurationId: 'K',
  step: 'washing',
  since: NOW,
  useBy: null,
  withdrawn: false,
  promisedTo: [],
  caseId: null,
  caseEndsAt: null,
  counted: false,
  rank: 0,
  ...over,
});
const booked = (caseId: string, minutes: number, kinds: string[] = ['K']): BookedNeed => ({
  caseId,
  reference: caseId.toUpperCase(),
  startsAt: at(minutes),
  caseDate: at(minutes).slice(0, 10) as PlainDate,
  holdPlate: new Set(kinds),
});
const queue = (sets: OpenSet[], cases: BookedNeed[] = [], leadMinutes = 60) =>
  queueOf({ now: NOW, leadMinutes, sets, cases, wanted: [], timeOf });

describe('when a set must be begun', () => {
  it('is the case’s start less the lead less every stage that begins with the next act', () => {
    const [line] = queue([set({ code: 'A', since: at(-5), promisedTo: ['c'] })], [booked('c', 600)]);
    // ends washing: bench 30 + packed 40 + steriliser 50 + acceptance 60 = 180
    expect(line).toMatchObject({
      act: 'endWash',
      needBy: at(540),
      takesMinutes: 180,
      beginBy: at(360),
      presentMinutes: 15,
      readyAt: at(195),
      lateMinutes: 0,
      need: { why: { kind: 'promised' } },
    });
  });

  const cases: [why: string, over: Partial<OpenSet>, act: string, takes: number, present: number | null][] = [
    ['in theatre: back when its case ends', { step: 'inTheatre', caseEndsAt: at(45) }, 'receive', 210, 45],
    ['in theatre, nobody knows for which case', { step: 'inTheatre' }, 'receive', 210, null],
    [
      'longer in its stage than usual: none of it is left',
      { step: 'comingBack', since: at(-90) },
      'beginWash',
      200,
      0,
    ],
    [
      'on bench, not counted: its work is still to be begun',
      { step: 'onBench', since: at(-90) },
      'count',
      180,
      0,
    ],
    ['counted on bench', { step: 'onBench', counted: true }, 'pack', 150, 30],
    ['waits for a decision', { step: 'shortAwaitingDecision' }, 'decideShort', 150, null],
    ['packed', { step: 'packed' }, 'load', 110, 40],
    ['in steriliser', { step: 'inSteriliser' }, 'unload', 60, 50],
    ['awaiting acceptance', { step: 'awaitingAcceptance' }, 'accept', 0, 60],
    ['held: washing and all after it may follow', { step: 'held' }, 'liftHold', 200, null],
  ];
  it.each(cases)('%s', (_why, over, act, takesMinutes, presentMinutes) => {
    const [line] = queue([set({ code: 'A', ...over })]);
    expect(line).toMatchObject({ act, takesMinutes, presentMinutes });
    expect(line?.readyAt).toBe(presentMinutes === null ? null : at(presentMinutes + takesMinutes));
  });

  it('is late by the whole minutes it will miss, at the least', () => {
    const [line] = queue([set({ code: 'A', step: 'onBench', promisedTo: ['c'] })], [booked('c', 200)]);
    // needed in 140, 30 left here and 150 to come
    expect(line?.lateMinutes).toBe(40);
    const [held] = queue([set({ code: 'A', step: 'held', promisedTo: ['c'] })], [booked('c', 200)]);
    // nobody knows when the hold is lifted: 200 still to come, needed in 140
    expect(held?.lateMinutes).toBe(60);
  });
});

describe('the order', () => {
  it('is late ones first, then by when needed, then by what a shortage stops, then the longest waiting', () => {
    const lines = queue(
      [
        set({ code: 'waits', since: at(-50), rank: 4 }),
        set({ code: 'waitsLonger', since: at(-500), rank: 4 }),
        set({ code: 'stops', rank: 1 }),
        set({ code: 'tomorrow', promisedTo: ['c3'] }),
        set({ code: 'late', step: 'comingBack', promisedTo: ['c2'], rank: 9 }),
        set({ code: 'soon', step: 'awaitingAcceptance', promisedTo: ['c1'] }),
      ],
      [booked('c1', 180), booked('c2', 240), booked('c3', 1500)],
    );
    expect(lines.map(({ setId }) => setId)).toEqual(
      ['late', 'soon', 'tomorrow', 'stops', 'waitsLonger', 'waits'].map((code) => `set_${code}`),
    );
  });

  it('holds every open set in service once, and no other, whatever the hospital', () => {
    const anySet = fc.record({
      step: fc.constantFrom(...turnStep.options),
      withdrawn: fc.boolean(),
      since: fc.integer({ min: -3000, max: 0 }),
      kind: fc.constantFrom('K', 'L'),
      promised: fc.subarray(['c0', 'c1', 'c2']),
      rank: fc.nat({ max: 9 }),
    });
    fc.assert(
      fc.property(
        fc.array(anySet, { maxLength: 12 }),
        fc.array(fc.nat({ max: 3000 }), { maxLength: 3 }),
        (drawn, starts) => {
          const sets = drawn.map(({ step, withdrawn, since, kind, promised, rank }, n) =>
            set({
              code: `S${n}`,
              step,
              withdrawn,
              since: at(since),
              configurationId: kind,
              promisedTo: promised,
              rank,
            }),
          );
          const lines = queue(
            sets,
            starts.map((minutes, n) => booked(`c${n}`, minutes)),
          );
          const open = sets.filter(({ step, withdrawn }) => step !== 'inSterileStore' && !withdrawn);
          expect(lines.map(({ setId }) => setId).sort()).toEqual(open.map(({ id }) => id).sort());
          const late = lines.map(({ lateMinutes }) => lateMinutes > 0);
          expect(late).toEqual([...late].sort((a, b) => Number(b) - Number(a)));
          for (const line of lines) {
            expect(line.beginBy === null).toBe(line.need === null);
            if (line.beginBy && line.needBy)
              expect(Date.parse(line.needBy) - Date.parse(line.beginBy)).toBe(line.takesMinutes * 60_000);
          }
        },
      ),
      { seed: 20260114 },
    );
  });
});

describe('which set a case needs', () => {
  const needed = (sets: OpenSet[], cases: BookedNeed[]) =>
    Object.fromEntries(queue(sets, cases).flatMap(({ setId, need }) => (need ? [[setId, need]] : [])));

  it('is the promised one; nobody hurries for a case with a free set of its kind in the store', () => {
    expect(
      needed([set({ code: 'A' }), set({ code: 'B', step: 'inSterileStore' })], [booked('c', 600)]),
    ).toEqual({});
    const promised = needed([set({ code: 'A', promisedTo: ['c'] }), set({ code: 'B' })], [booked('c', 600)]);
    expect(Object.keys(promised)).toEqual(['set_A']);
  });

  it('is the quickest of its kind where none is promised, and another for the next case', () => {
    const sets = [
      set({ code: 'A' }),
      set({ code: 'B', step: 'packed' }),
      set({ code: 'C', configurationId: 'L', step: 'packed' }),
    ];
    const found = needed(sets, [booked('c2', 900), booked('c1', 600)]);
    expect(found).toMatchObject({
      set_B: { caseId: 'c1', why: { kind: 'holdsPlate' } },
      set_A: { caseId: 'c2' },
    });
  });

  it('is another of the kind beside a promised one that is held, out of service or past use-by on the day', () => {
    const past = '2026-01-13' as PlainDate;
    for (const over of [
      { step: 'held' },
      { withdrawn: true },
      { step: 'inSterileStore', useBy: past },
    ] as Partial<OpenSet>[]) {
      const found = needed(
        [set({ code: 'A', promisedTo: ['c'], ...over }), set({ code: 'B' })],
        [booked('c', 600)],
      );
      expect(found.set_B, JSON.stringify(over)).toMatchObject({ why: { kind: 'standsInFor', code: 'A' } });
    }
  });

  it('is no set that another case counts on', () => {
    const found = needed([set({ code: 'A', promisedTo: ['other'] })], [booked('c', 600)]);
    expect(found).toEqual({});
  });
});

describe('how long a stage takes', () => {
  it('is the median of past turns, or the usual time where they are fewer than three, and says which', () => {
    expect(stageTime('washing', [90, 100], 75)).toEqual({ stage: 'washing', minutes: 75, fromTurns: null });
    expect(stageTime('washing', [300, 90, 100], 75)).toEqual({
      stage: 'washing',
      minutes: 100,
      fromTurns: 3,
    });
    expect(stageTime('washing', [90, 101, 300, 10], 75)).toEqual({
      stage: 'washing',
      minutes: 96,
      fromTurns: 4,
    });
  });
});

describe('a turn that is wanted sooner', () => {
  const wanted = (over: Partial<WantedTurn> = {}): WantedTurn => ({
    setId: 'set_B',
    wantedBy: at(300),
    forCase: { id: 'c', reference: 'C', startsAt: at(400) },
    afterCase: null,
    askedBy: 'Gwen Sallis',
    askedAt: at(-10),
    storedAt: null,
    ...over,
  });

  it('comes before what is late, and must be there by when it is wanted', () => {
    const sets = [set({ code: 'A', promisedTo: ['late'] }), set({ code: 'B' })];
    const cases = [booked('late', 90, [])];
    const asked = { now: NOW, leadMinutes: 60, sets, cases, timeOf };
    expect(queueOf({ ...asked, wanted: [] }).map(({ setId }) => setId)).toEqual(['set_A', 'set_B']);
    const [first, second] = queueOf({ ...asked, wanted: [wanted()] });
    expect(first).toMatchObject({ setId: 'set_B', needBy: at(300), wanted: { forCase: { reference: 'C' } } });
    expect(second?.lateMinutes).toBeGreaterThan(0);
  });

  type Where = { step: OpenSet['step']; caseId: string | null };
  const open: Where = { step: 'washing', caseId: null };
  const after = { id: 'x', startsAt: at(60) };
  const own = { id: 'c', startsAt: at(100) };
  const moments: [why: string, one: WantedTurn, where: Where, minutes: number, expected: boolean][] = [
    ['in its turn', wanted(), open, 0, true],
    ['there', wanted(), { step: 'inSterileStore', caseId: null }, 0, false],
    ['there meanwhile, and away again', wanted({ storedAt: at(5) }), open, 10, false],
    ['there before it was asked for', wanted({ storedAt: at(-20) }), open, 0, true],
    ['its case has begun', wanted(), open, 400, false],
    ['before the case it comes back from', wanted({ afterCase: after }), open, 30, false],
    ['in theatre for that case', wanted({ afterCase: after }), { step: 'inTheatre', caseId: 'x' }, 30, true],
    ['back from it', wanted({ afterCase: after, storedAt: at(30) }), open, 90, true],
    ['after its own case, not yet due', wanted({ afterCase: own }), open, 200, true],
    ['after its own case, due', wanted({ afterCase: own }), open, 300, false],
  ];
  it.each(moments)('%s', (_, one, where, minutes, expected) => {
    expect(isWantedNow(one, where, at(minutes))).toBe(expected);
  });
});
