import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { otherFormat } from '@/app/_server/fhir/answers';
import { serviceBase } from '@/app/_server/fhir/base';
import { dateBounds } from '@/lib/fhir/dateBounds';
import { fhirId, ownId } from '@/lib/fhir/ids';
import { codesIn, parseSearch } from '@/lib/fhir/search';
import { itemId } from '@/lib/identity/ids';

const parse = (type: Parameters<typeof parseSearch>[0], query: string) => {
  const parsed = parseSearch(type, new URLSearchParams(query));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.search;
};

describe('an id', () => {
  it('goes out as FHIR takes it, and comes back as it was', () => {
    // hl7.org/fhir/R5/datatypes.html#id
    const id = /^[A-Za-z0-9\-.]{1,64}$/;
    fc.assert(
      fc.property(fc.stringMatching(/^[0-9a-z-]{1,50}$/), (rest) => {
        const own = itemId.parse(`item_${rest}`);
        expect(fhirId(own)).toMatch(id);
        expect(ownId(fhirId(own))).toBe(own);
      }),
    );
  });

  it.each(['', 'item', 'item_a', 'item.a.b', 'item.A', '.a', 'item.', 'move.1.2', 'item.a b'])(
    '“%s” is none of ours',
    (id) => expect(ownId(id)).toBeNull(),
  );
});

describe('a token', () => {
  // hl7.org/fhir/R5/search.html#token and #escaping
  it('is a code of any system, of the one it names, or of none', () => {
    const { tokens } = parse('Device', String.raw`identifier=A,http://a|B,|C,D\,E\|F`);
    expect(tokens.identifier).toEqual([
      { system: null, code: 'A' },
      { system: 'http://a', code: 'B' },
      { system: '', code: 'C' },
      { system: null, code: 'D,E|F' },
    ]);
    expect(codesIn(tokens.identifier, 'http://a')).toEqual(['A', 'B', 'D,E|F']);
    expect(codesIn(tokens.status, 'http://a')).toBeNull();
  });

  it('of another system asks for nothing, which is not the same as not asking', () => {
    const { tokens } = parse('Device', 'identifier=http://a|B');
    expect(codesIn(tokens.identifier, 'http://b')).toEqual([]);
  });
});

describe('a date', () => {
  // hl7.org/fhir/R5/search.html#date: prefixes and precision; days are the hospital’s: in July one hour before UTC
  it.each([
    ['2026-01-14', '2026-01-14T00:00:00.000Z', '2026-01-15T00:00:00.000Z'],
    ['eq2026-07-14', '2026-07-13T23:00:00.000Z', '2026-07-14T23:00:00.000Z'],
    ['2026-02', '2026-02-01T00:00:00.000Z', '2026-03-01T00:00:00.000Z'],
    ['2026-12-31', '2026-12-31T00:00:00.000Z', '2027-01-01T00:00:00.000Z'],
    ['2026', '2026-01-01T00:00:00.000Z', '2027-01-01T00:00:00.000Z'],
    ['ge2026-01-14', '2026-01-14T00:00:00.000Z', null],
    ['gt2026-01-14', '2026-01-15T00:00:00.000Z', null],
    ['le2026-01-14', null, '2026-01-15T00:00:00.000Z'],
    ['lt2026-01-14', null, '2026-01-14T00:00:00.000Z'],
    ['2026-01-14T10:30Z', '2026-01-14T10:30:00.000Z', '2026-01-14T10:31:00.000Z'],
    ['ge2026-01-14T10:30:05+01:00', '2026-01-14T09:30:05.000Z', null],
    ['gt2026-01-14T10:30:05.250Z', '2026-01-14T10:30:05.251Z', null],
  ])('%s', (text, from, until) => expect(dateBounds(text)).toEqual({ from, until }));

  it.each([
    '',
    'ge',
    '2026-02-30',
    '2026-13',
    '26-01-14',
    'ne2026',
    'ap2026',
    '2026-01-14T10:30:05',
    '2026-01-14T25:00Z',
    'soon',
  ])('“%s” is none', (text) => expect(dateBounds(text)).toBeNull());

  it('may be given twice, for a range', () => {
    const { dates } = parse('SupplyRequest', 'date=ge2026-01-01&date=lt2026-02-01');
    expect(dates.date).toEqual([
      { from: '2026-01-01T00:00:00.000Z', until: null },
      { from: null, until: '2026-02-01T00:00:00.000Z' },
    ]);
  });
});

it('whatever is asked, it is parsed or refused with a reason', () => {
  const names = fc.oneof(
    fc.constantFrom('_id', '_count', '_after', 'status', 'date', 'lot', 'identifier', '__proto__'),
    fc.string(),
  );
  const pairs = fc.array(fc.tuple(names, fc.string({ unit: 'grapheme' })), { maxLength: 5 });
  fc.assert(
    fc.property(
      fc.constantFrom('Device' as const, 'DeviceUsage' as const, 'SupplyRequest' as const),
      pairs,
      (type, given) => {
        const parsed = parseSearch(type, new URLSearchParams(given));
        if (parsed.ok) expect(parsed.search.count).toBeGreaterThan(0);
        else for (const { message } of parsed.problems) expect(message).not.toBe('');
      },
    ),
    { numRuns: 500 },
  );
});

describe('the format asked for', () => {
  const request = (accept: string | null, query = '') => ({
    url: `http://localhost/api/v1/fhir/Device${query}`,
    headers: new Headers(accept === null ? {} : { accept }),
  });

  // hl7.org/fhir/R5/http.html#mime-type
  it.each([
    [null, ''],
    ['*/*', ''],
    ['application/fhir+json', ''],
    ['application/json; fhirVersion=5.0', ''],
    ['text/html,application/xhtml+xml,*/*;q=0.8', ''],
    ['application/fhir+xml', '?_format=json'],
    [null, '?_format=application/fhir%2Bjson'],
    // a plus that nobody escaped is a blank
    [null, '?_format=application/fhir+json'],
  ])('%s %s is JSON', (accept, query) => expect(otherFormat(request(accept, query))).toBeNull());

  it.each([
    ['application/fhir+xml', ''],
    ['text/turtle', ''],
    ['application/json', '?_format=xml'],
  ])('%s %s is none that is offered', (accept, query) =>
    expect(otherFormat(request(accept, query))).toMatchObject({ status: 406 }),
  );
});

it('identifiers stand under the program’s own address where it has one, else under the one that was asked', () => {
  const request = {
    url: 'http://127.0.0.1:3000/api/v1/fhir/Device',
    headers: new Headers({ host: 'kw.example:3000' }),
  };
  expect(serviceBase(request)).toBe('http://kw.example:3000/api/v1/fhir');
  request.headers.set('x-forwarded-proto', 'https');
  expect(serviceBase(request)).toBe('https://kw.example:3000/api/v1/fhir');
  const before = process.env.KITWRIGHT_ADDRESS;
  process.env.KITWRIGHT_ADDRESS = 'https://kitwright.example/';
  try {
    expect(serviceBase(request)).toBe('https://kitwright.example/api/v1/fhir');
  } finally {
    if (before === undefined) delete process.env.KITWRIGHT_ADDRESS;
    else process.env.KITWRIGHT_ADDRESS = before;
  }
});
