import { describe, expect, it } from 'vitest';
import { highsSolver } from '@/app/_server/solver/highs';
import { setTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import { setTurnaround } from '@/lib/calculations/setTurnaround/setTurnaround';
import { configurationId, itemId } from '@/lib/identity/ids';
import type { PlanningFacts } from '@/lib/theatre/planning/facts';
import { loansForShort } from '@/lib/theatre/planning/loanForShort';
import { type Offer, offersFor, rankOffers } from '@/lib/theatre/planning/offers';
import { planChange } from '@/lib/theatre/planning/planChange';
import { turnaroundInput } from '@/lib/theatre/planning/turnaroundInput';
import { offerWords, plannedAnewWords } from '@/lib/wording/ways-out';
import { caseOf, factsOf, NOW, setOf } from './facts';

const at = (time: string, day = '14') => `2026-01-${day}T${time}:00.000Z`;

async function offersOf(facts: PlanningFacts, reference: string) {
  const one = facts.cases.find((other) => other.reference === reference);
  if (!one) throw new Error('no such case');
  const input = setTurnaroundInput.parse({ ...turnaroundInput(facts), repairsFor: [reference] });
  const said = await setTurnaround(input, { solver: highsSolver });
  const offers = offersFor(facts, said.outcome === 'answered' ? said.answer : said.known, one);
  const needBy = new Date(Date.parse(one.startsAt) - one.leadMinutes * 60_000).toISOString();
  return {
    offers,
    words: offers.map((offer) => offerWords(offer, { now: NOW, reference, needBy, pouch: (id) => id })),
  };
}

/** One set for two cases of one morning: the second waits for it in vain. */
const oneSet = () =>
  factsOf(
    [
      caseOf('FIRST', at('09:00'), { by: ['A-01'] }),
      caseOf('NEXT', at('15:00'), { by: ['A-01'], theatre: '2' }),
    ],
    [setOf('A-01')],
    [{ case: 'FIRST', set: 'A-01' }],
  );

describe('what is offered', () => {
  it('says by how much a turn must be quicker, a slot later, and what comes from elsewhere', async () => {
    const { words } = await offersOf(oneSet(), 'NEXT');
    // FIRST ends at 11:00; nine times in ten the set is back by 16:00, half of the time by 15:00; it is needed by 14:00
    expect(words.map(({ title, confirm }) => [title, confirm])).toEqual([
      ['Ask for A-01 2 h sooner', 'Ask for it'],
      ['Begin 2 h later', 'Move the case'],
      ['Borrow a set: A', null],
      ['Ask for a loan set: A', null],
      // the promise of a person goes last: it takes another case its set
      ['Take A-01', 'Promise this set'],
    ]);
    expect(words[0]?.does[0]).toBe(
      'Its turn after FIRST must end by 14:00. Fewer than half of its turns are as quick.',
    );
    expect(words[1]?.does).toEqual([
      'NEXT begins 17:00 instead of 15:00.',
      'A-01 in time: ready by 16:00, when it is needed.',
    ]);
    expect(words[4]?.costs).toEqual(['FIRST would have no set.']);
  });

  it('promises what the plan gives, and moves what the plan moves for it', async () => {
    const facts = factsOf(
      [caseOf('ONE', at('10:00'), { by: ['A-01', 'A-02'] })],
      [setOf('A-01', 60, 100), setOf('A-02', 20, 30)],
    );
    const { offers, words } = await offersOf(facts, 'ONE');
    expect(words.map(({ title, costs }) => [title, costs])).toEqual([['Take A-02', []]]);
    expect(offers[0]).toMatchObject({
      ready: { at: at('07:00') },
      gives: [{ reference: 'ONE', sets: ['A-02'] }],
    });
    // once promised, there is nothing left to do: the other set would come later
    const promised = factsOf(facts.cases, facts.sets, [{ case: 'ONE', set: 'A-02' }]);
    expect((await offersOf(promised, 'ONE')).offers).toEqual([]);
  });

  it('reads otherwise as soon as it does otherwise', async () => {
    const [before, later] = [await offersOf(oneSet(), 'NEXT'), oneSet()];
    later.cases[0] = caseOf('FIRST', at('09:30'), { by: ['A-01'] });
    const after = await offersOf(later, 'NEXT');
    const slot = ({ offers }: typeof before) => offers.find(({ kind }) => kind === 'laterSlot')?.key;
    expect(slot(after)).not.toBe(slot(before));
    expect(slot(await offersOf(oneSet(), 'NEXT'))).toBe(slot(before));
  });
});

describe('the order', () => {
  const offer = (over: Partial<Offer>): Offer => ({
    kind: 'otherSets',
    key: JSON.stringify(over),
    sets: ['A-01'],
    pouches: [],
    ready: 'there',
    cost: { unserved: [], moved: [] },
    moves: [],
    gives: [{ reference: 'ONE', sets: ['A-01'] }],
    quicker: null,
    elsewhere: null,
    theatreTakenBy: null,
    ...over,
  });
  const moved = (one: string) => ({ case: one, from: 'A-01', to: ['A-02'] });
  const cases = [
    caseOf('NOW', at('09:00'), { urgency: 'now' }),
    caseOf('BOOKED', at('09:00')),
    caseOf('OTHER', at('09:00')),
  ];
  const ordered = [
    offer({}),
    offer({ pouches: ['stock_bit'] }),
    offer({ sets: ['A-01', 'A-02'] }),
    offer({ ready: { at: at('08:00') } }),
    offer({ ready: { at: at('08:30') } }),
    offer({ ready: null }),
    offer({ kind: 'quickerTurn' }),
    offer({ kind: 'changeOrder' }),
    offer({ kind: 'laterSlot' }),
    offer({ kind: 'borrow' }),
    offer({ kind: 'loan' }),
    offer({ kind: 'laterSlot', theatreTakenBy: 'OTHER' }),
    offer({ cost: { unserved: [], moved: [moved('BOOKED')] } }),
    offer({ cost: { unserved: [], moved: [moved('BOOKED'), moved('OTHER')] } }),
    offer({ cost: { unserved: ['BOOKED'], moved: [] } }),
    offer({ cost: { unserved: ['BOOKED', 'OTHER'], moved: [] } }),
    offer({ cost: { unserved: ['NOW'], moved: [] } }),
  ];

  it('is by what others lose, the most urgent first, then by kind, then by what is there soonest and simplest', () => {
    const shuffled = ordered.map((one, at) => ({ one, place: (at * 7) % ordered.length }));
    const given = shuffled.sort((a, b) => a.place - b.place).map(({ one }) => one);
    expect(rankOffers(given, cases).map(({ key }) => key)).toEqual(ordered.map(({ key }) => key));
  });

  it('its own promise that moves is no cost to others', () => {
    const own = offer({ cost: { unserved: [], moved: [moved('ONE')] }, ready: null });
    const other = offer({ cost: { unserved: [], moved: [moved('BOOKED')] } });
    expect(rankOffers([other, own], cases)[0]).toBe(own);
  });
});

it('a loan is asked for of the kind that should hold most of what is missing', () => {
  const [plate, screw, bit] = ['plate', 'screw', 'bit'].map((name) => itemId.parse(`item_${name}`));
  if (!plate || !screw || !bit) throw new Error('ids');
  const one = caseOf('ONE', at('10:00'), { by: 'short' });
  if (!one.ways) throw new Error('planned');
  one.ways.missing = [
    { kind: 'pieces', pieces: 1, anyOf: [plate], asked: plate },
    { kind: 'chain', anyOf: [[{ itemId: bit, pieces: 1 }]], slots: ['pilotBit'] },
  ];
  const kind = (name: string, holds: (typeof plate)[]) => ({
    id: configurationId.parse(`configuration_${name.toLowerCase()}`),
    name,
    holds: new Set(holds),
  });
  const facts = factsOf([one], [setOf('A-01')]);
  const loans = loansForShort(facts, one, [kind('A', [plate]), kind('B', [plate, bit]), kind('C', [screw])]);
  expect(loans.map(({ kind: how, elsewhere }) => [how, elsewhere?.missing, elsewhere?.neededBy])).toEqual([
    ['borrow', ['B'], at('09:00')],
    ['loan', ['B'], at('09:00')],
  ]);
  expect(loansForShort(facts, one, [kind('C', [screw])])).toEqual([]);
});

it('what planning anew changed is told by case', () => {
  const kept = {
    given: [{ caseId: 'a' }, { caseId: 'b' }],
    taken: [{ caseId: 'b' }, { caseId: 'c' }, { caseId: 'd' }],
  };
  const named = ['a', 'b', 'c', 'd'].map((id) => ({ id, reference: id.toUpperCase(), hasSets: id !== 'c' }));
  const change = planChange(kept, named);
  expect(change).toEqual({ gained: ['A'], changed: ['B', 'D'], without: ['C'] });
  expect(plannedAnewWords(change)).toBe('C has no set any more; B and D have other sets; A has sets now.');
  expect(plannedAnewWords({ gained: [], changed: [], without: [] })).toBe('No other promise had to move.');
  expect(plannedAnewWords(null)).toMatch(/did not work/);
});
