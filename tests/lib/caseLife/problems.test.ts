import { describe, expect, it } from 'vitest';
import { type PackFacts, packProblems } from '@/lib/caseLife/packProblems';
import { type SetPickFacts, setPickProblems } from '@/lib/caseLife/setProblems';
import { plainDate } from '@/lib/quantities/plainDate';

const TODAY = plainDate.parse('2026-01-14');
const PACK: PackFacts = {
  name: 'Locking screw 2.7 × 22',
  form: 'sterilePacked',
  status: 'current',
  heldBecause: null,
  lot: 'L27-5537',
  useBy: plainDate.parse('2026-02-01'),
  placeName: 'Implant cupboard',
  letOutFor: null,
  pouchState: null,
  free: 1,
  quantity: 1,
  instead: { lot: 'L27-6001', placeName: 'Implant cupboard' },
  case: { reference: 'LM-26-9RTB', caseDate: TODAY },
};

describe('single packs', () => {
  it('go where nothing is wrong, also on the very day of their use-by', () => {
    expect(packProblems(PACK)).toEqual([]);
    expect(packProblems({ ...PACK, useBy: TODAY })).toEqual([]);
    expect(packProblems({ ...PACK, useBy: null, lot: null })).toEqual([]);
  });

  // common practice, no source, but use-by: good through the day printed (ISO 15223-1, 5.1.4, from memory)
  it.each<[Partial<PackFacts>, string, RegExp]>([
    [{ status: 'recalled' }, 'recalled', /put it aside/],
    [{ heldBecause: 'recall' }, 'held', /take lot L27-6001 from Implant cupboard/],
    [{ heldBecause: 'recall', instead: null }, 'held', /work the list out again/],
    [
      { useBy: plainDate.parse('2026-01-13') },
      'past-use-by',
      /good through 2026-01-13, the case is on 2026-01-14/,
    ],
    [{ form: 'unsterile' }, 'not-sterile', /closed sterile pack/],
    [{ form: 'pouch', pouchState: 'opened' }, 'not-sterile', /closed sterile pack/],
    [{ letOutFor: { reference: 'LM-26-7K2P' } }, 'let-out-for-another', /LM-26-7K2P alone/],
    [{ free: 0 }, 'none-left', /none is free in Implant cupboard/],
    [{ free: 1, quantity: 3 }, 'none-left', /only one is free/],
  ])('are refused with %o: %s, with the way out', (wrong, code, words) => {
    const problems = packProblems({ ...PACK, ...wrong });
    expect(problems.map((one) => one.code)).toEqual([code]);
    expect(problems[0]?.message).toMatch(words);
  });

  it('are told of everything that is wrong at once', () => {
    const all = packProblems({
      ...PACK,
      status: 'recalled',
      heldBecause: 'recall',
      form: 'unsterile',
      useBy: plainDate.parse('2026-01-01'),
      free: 0,
    });
    expect(all.map(({ code }) => code)).toEqual([
      'recalled',
      'held',
      'not-sterile',
      'past-use-by',
      'none-left',
    ]);
  });
});

describe('sets', () => {
  const SET: SetPickFacts = {
    code: 'DRT-01',
    step: 'inSterileStore',
    heldBecause: [],
    pack: { state: 'sterile', loadAccepted: true, useBy: null, forCase: null, decisionLapsesAt: null },
    case: {
      id: 'case_one',
      reference: 'LM-26-9RTB',
      caseDate: TODAY,
      endsAt: '2026-01-14T12:00:00.000Z',
      cancelled: false,
    },
    promisedTo: null,
    onKitOf: null,
    sterility: 'useBy',
    now: '2026-01-14T06:00:00.000Z',
    outOfService: false,
    otherPack: false,
  };
  it.each<[Partial<SetPickFacts>, string[]]>([
    [{}, []],
    [{ outOfService: true }, ['out-of-service']],
    [{ onKitOf: { reference: 'LM-26-7K2P' } }, ['on-other-kit']],
    [{ otherPack: true }, ['other-pack']],
    [{ step: 'held', heldBecause: ['recall'] }, ['held']],
    [{ step: 'washing' }, ['not-in-store']],
    [
      {
        promisedTo: { reference: 'LM-26-7K2P', startsAt: '2026-01-14T09:00:00.000Z' },
        outOfService: true,
        pack: {
          state: 'sterile',
          loadAccepted: false,
          useBy: plainDate.parse('2026-01-13'),
          forCase: { id: 'case_two', reference: 'LM-26-7K2P' },
          decisionLapsesAt: '2026-01-14T05:00:00.000Z',
        },
      },
      [
        'out-of-service',
        'promised-to-another',
        'not-sterile',
        'past-use-by',
        'short-for-another',
        'decision-lapsed',
      ],
    ],
  ])('with %o are refused for %o', (wrong, codes) => {
    expect(setPickProblems({ ...SET, ...wrong }).map(({ code }) => code)).toEqual(codes);
  });
});
