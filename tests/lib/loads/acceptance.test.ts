import { describe, expect, it } from 'vitest';
import { type AcceptanceFacts, acceptanceFindings, type PackFacts } from '@/lib/loads/acceptance';
import { packHoldsImplants } from '@/lib/loads/implants';
import { plainDate } from '@/lib/quantities/plainDate';
import { findingSentence } from '@/lib/wording/loads';

const pack = (more: Partial<PackFacts> = {}): PackFacts => ({
  name: 'A-01',
  number: 'P1',
  unloadedAs: 'sound',
  implants: 'no',
  ...more,
});
const chemical = { kind: 'chemical', lot: 'C1', useBy: '2027-01-01', result: 'passed' } as const;
const facts = (more: Partial<AcceptanceFacts> = {}): AcceptanceFacts => ({
  state: 'awaitingAcceptance',
  cycle: null,
  indicators: [chemical],
  requiredIndicators: ['chemical'],
  implantsAwaitBiological: true,
  packs: [pack()],
  ranOn: plainDate.parse('2026-01-14'),
  ...more,
});
const said = (more: Partial<AcceptanceFacts>) =>
  acceptanceFindings(facts(more)).map(({ severity, kind }) => `${severity} ${kind}`);

describe('what is to be known before a load is decided', () => {
  it('nothing stops a load that was run, read and looked at', () => {
    expect(said({})).toEqual(['note noCycleRecord', 'note indicatorPassed', 'note allSound']);
  });

  it.each([
    { why: 'it was not ended', more: { state: 'running' as const }, expect: 'stops notEnded' },
    {
      why: 'a required indicator is not on record',
      more: { indicators: [] },
      expect: 'stops indicatorNotUsed',
    },
    {
      why: 'a required one is not read',
      more: { indicators: [{ ...chemical, result: 'pending' as const }] },
      expect: 'stops indicatorPending',
    },
    {
      why: 'one failed, required or not',
      more: { requiredIndicators: [], indicators: [{ ...chemical, result: 'failed' as const }] },
      expect: 'stops indicatorFailed',
    },
    {
      why: 'one was past use-by when it ran',
      more: { indicators: [{ ...chemical, useBy: '2026-01-13' }] },
      expect: 'stops indicatorPastUseBy',
    },
    {
      why: 'a lot is not stated',
      more: { indicators: [{ ...chemical, lot: null }] },
      expect: 'caution indicatorLotNotStated',
    },
    { why: 'nothing is in it', more: { packs: [] }, expect: 'stops noPacks' },
    {
      why: 'a pack was not looked at',
      more: { packs: [pack({ unloadedAs: null })] },
      expect: 'stops notLookedAt',
    },
    { why: 'no pack is sound', more: { packs: [pack({ unloadedAs: 'wet' })] }, expect: 'stops noneSound' },
    {
      why: 'one of two is wet',
      more: { packs: [pack(), pack({ unloadedAs: 'wet' })] },
      expect: 'note unfit',
    },
    {
      why: 'implants wait',
      more: { packs: [pack({ implants: 'yes' })] },
      expect: 'stops implantsAwaitBiological',
    },
    {
      why: 'implants are not established',
      more: { packs: [pack({ implants: 'notEstablished' })] },
      expect: 'stops implantsNotEstablished',
    },
    {
      why: 'the record leaves the plateau open',
      more: { cycle: { dose: null, missing: ['temperatures between 1 s and 60 s'] } },
      expect: 'caution cycleNotEstablished',
    },
  ])('$why: $expect', ({ more, expect: finding }) => {
    expect(said(more)).toContain(finding);
  });

  it('an indicator is good through its use-by', () => {
    expect(said({ indicators: [{ ...chemical, useBy: '2026-01-14' }] })).not.toContain(
      'stops indicatorPastUseBy',
    );
  });

  it.each([
    {
      why: 'the biological result passed',
      more: { indicators: [chemical, { ...chemical, kind: 'biological' as const }] },
    },
    { why: 'local policy lets them go', more: { implantsAwaitBiological: false } },
    {
      why: 'the pack is wet anyway',
      more: { packs: [pack(), pack({ implants: 'yes', unloadedAs: 'wet' })] },
    },
  ])('implants do not wait where $why', ({ more }) => {
    const kinds = acceptanceFindings(facts({ packs: [pack({ implants: 'yes' })], ...more })).map(
      ({ kind }) => kind,
    );
    expect(kinds).not.toContain('implantsAwaitBiological');
  });

  it('two biological indicators, one pending: implants still wait', () => {
    const two = (['passed', 'pending'] as const).map((result) => ({
      ...chemical,
      kind: 'biological' as const,
      result,
    }));
    expect(said({ packs: [pack({ implants: 'yes' })], indicators: [chemical, ...two] })).toContain(
      'stops implantsAwaitBiological',
    );
  });

  it('all faults are said together, each as a sentence', () => {
    const all = acceptanceFindings(
      facts({
        indicators: [],
        packs: [pack({ unloadedAs: null }), pack({ unloadedAs: 'torn', name: 'B-02' })],
      }),
    );
    expect(all.filter(({ severity }) => severity === 'stops')).toHaveLength(2);
    for (const one of all) expect(findingSentence(one)).toMatch(/[.]$/);
    expect(all.map(findingSentence)).toContain('Torn when unloaded, so not accepted with the rest: B-02.');
  });
});

describe('which packs hold implants', () => {
  const kinds = new Map([
    ['line_a', 'screw'],
    ['line_b', 'driver'],
  ] as const);
  const kindOf = (line: string) => kinds.get(line as 'line_a') ?? null;
  const set = (contents: unknown) => packHoldsImplants({ kind: 'set', itemKind: null, contents }, kindOf);

  it.each([
    { why: 'a screw found', contents: [{ lineId: 'line_a', found: 2 }], expect: 'yes' },
    {
      why: 'no screw left',
      contents: [
        { lineId: 'line_a', found: 0 },
        { lineId: 'line_b', found: 1 },
      ],
      expect: 'no',
    },
    { why: 'a line nobody knows', contents: [{ lineId: 'line_x', found: 1 }], expect: 'notEstablished' },
    {
      why: 'a line nobody knows beside a screw',
      contents: [
        { lineId: 'line_x', found: 1 },
        { lineId: 'line_a', found: 1 },
      ],
      expect: 'yes',
    },
    { why: 'contents that say nothing', contents: [], expect: 'notEstablished' },
    { why: 'contents of another shape', contents: { screws: 3 }, expect: 'notEstablished' },
  ])('$why: $expect', ({ contents, expect: answer }) => expect(set(contents)).toBe(answer));

  it.each([
    ['plate', 'yes'],
    ['washer', 'yes'],
    ['driver', 'no'],
    [null, 'notEstablished'],
  ] as const)('a pouch of a %s: %s', (itemKind, answer) => {
    expect(packHoldsImplants({ kind: 'pouch', itemKind, contents: [] }, kindOf)).toBe(answer);
  });
});
