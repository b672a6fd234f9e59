import { describe, expect, test } from 'vitest';
import { show } from './show';

// FDA, UDI formats by FDA-accredited issuing agency v1.3 (2017): the example, in every notation a scan can have
const UDI = '01=51022222233336 11=2014-12-31 17=2015-07-07 10=A213B1 21=1234';
const start = '01510222222333361114123117150707';

describe('the example of the FDA', () => {
  test.each([
    ['bracketed', '(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234'],
    ['bracketed, with spaces', ' (01) 51022222233336 (11) 141231 (17) 150707 (10) A213B1 (21) 1234 '],
    ['GS, no symbology identifier', `${start}10A213B1\u001d211234`],
    ['GS-led', `\u001d${start}10A213B1\u001d211234`],
    ['GS, and one at the end', `${start}10A213B1\u001d211234\u001d\r\n`],
    ['GS1-128', `]C1${start}10A213B1\u001d211234`],
    ['GS1 DataMatrix', `]d2${start}10A213B1\u001d211234`],
    ['GS1 QR Code', `]Q3${start}10A213B1\u001d211234`],
    ['GS1 DataBar', `]e0${start}10A213B1\u001d211234`],
    ['{GS}', `]d2${start}10A213B1{GS}211234`],
    ['{FNC1}', `]d2${start}10A213B1{FNC1}211234`],
    ['^]', `]d2${start}10A213B1^]211234`],
    ['Ctrl+]', `]d2${start}10A213B1Ctrl+]211234`],
    ['the picture of GS', `]d2${start}10A213B1␝211234`],
  ])('%s', (_notation, text) =>
    expect(show(text)).toMatchObject({ scheme: 'gs1ElementString', state: 'read', read: UDI, problems: '' }),
  );

  test('Digital Link', () =>
    expect(
      show('https://id.example.org/01/51022222233336/10/A213B1/21/1234?11=141231&17=150707'),
    ).toMatchObject({
      scheme: 'gs1DigitalLink',
      state: 'read',
      read: '01=51022222233336 10=A213B1 21=1234 11=2014-12-31 17=2015-07-07',
    }));

  test('a lost separator is not guessed: what is certain is shown, and every reading', () => {
    for (const text of [`]d2${start}10A213B1211234`, `${start}10A213B1211234`]) {
      const { outcome, state, read, readings, answer } = show(text);
      expect({ outcome, state }).toEqual({ outcome: 'notEstablished', state: 'ambiguous' });
      expect(read).toBe('01=51022222233336 11=2014-12-31 17=2015-07-07');
      expect(readings).toContain('(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234');
      expect(readings).toContain('(01)51022222233336(11)141231(17)150707(10)A213B1211234');
      expect(answer).toMatchObject({ missing: [{ path: ['text'] }] });
      for (const reading of readings) expect(show(reading).state).toBe('read');
    }
  });

  test('where separators are known to be sent, the same text has one reading', () =>
    expect(show(`]d2${start}10A213B1211234`, 'sent').read).toBe(
      '01=51022222233336 11=2014-12-31 17=2015-07-07 10=A213B1211234',
    ));
});

// GS1 General Specifications: lengths, characters, check digits, dates of each application identifier
describe('what is wrong is said, and where', () => {
  const key = '0109521234543213';
  test.each([
    // text, problems
    ['check digit of a marked GTIN', ']d20109521234543214', 'check-digit@19'],
    ['check digit, bracketed', '(01)09521234543214', 'check-digit@18'],
    ['letter in a GTIN', ']d2010952123454321O', 'bad-character@19'],
    ['GTIN too short', ']d20109521234', 'too-short@6'],
    ['no month 13', `${key}17261331`, 'no-such-date@21'],
    ['no 30 February', `${key}17260230`, 'no-such-date@23'],
    ['no 29 February 2027', `${key}17270229`, 'no-such-date@23'],
    ['lot empty', '(01)09521234543213(10)', 'too-short@23'],
    ['lot over 20', `${key}10ABCDEFGHIJKLMNOPQRSTUVWXYZ`, 'too-long@39'],
    ['lot with a space', '(01)09521234543213(10)AB C', 'bad-character@25'],
    ['lot with a letter no code has', '(01)09521234543213(10)ABÜ', 'bad-character@25'],
    ['unknown identifier in brackets', '(01)09521234543213(05)12', 'unknown-identifier@19'],
    ['unknown identifier in a scan', `]d2${key}0512`, 'unknown-identifier@20'],
    ['bracket not closed', '(01 09521234543213', 'unclosed-bracket@1'],
    ['text before the first bracket', 'no (01)09521234543213', ''],
    ['two lots', '(01)09521234543213(10)A(10)B', 'repeated-identifier@28'],
    ['the same lot twice', '(01)09521234543213(10)A(10)A', ''],
    ['GTIN and what is contained', '(01)09521234543213(02)09521234543213', 'excluded-pair@23'],
    ['time 24:00', '(7003)2606302400', 'no-such-time@13'],
    ['no day 00 where a time follows', '(7003)2606001200', 'no-such-date@11'],
    ['nothing after the mark', ']d2', 'nothing-after-mark@4'],
    ['lot over 20 in GS1-128 with separators', `]C1${key}10ABCDEFGHIJKLMNOPQRSTU\u001d21A`, 'too-long@42'],
  ])('%s', (_why, text, problems) => {
    const { problems: found, sentences, output } = show(text);
    expect(found).toBe(problems);
    for (const sentence of sentences) expect(sentence).toMatch(/^Character \d+: .+\.$/);
    // a faulty value is never given as read
    if (problems.startsWith('check-digit'))
      expect(output.elements.every(({ plain }) => plain === null)).toBe(true);
  });

  test('all faults at once, in their order', () =>
    expect(show('(01)09521234543214(17)261301(10)A B').problems).toBe(
      'check-digit@18 no-such-date@25 bad-character@34',
    ));
});

// GS1 General Specifications, application identifiers
describe('values', () => {
  test.each([
    ['SSCC', '(00)123456789012345675', '00=123456789012345675'],
    ['count', '(02)09521234543213(37)0024', '02=09521234543213 37=24'],
    ['net weight', '(01)09521234543213(3103)001250', '01=09521234543213 3103=1.250'],
    ['length without decimals', '(01)09521234543213(3110)000012', '01=09521234543213 3110=12'],
    ['use-by with time', '(01)09521234543213(7003)2606301430', '01=09521234543213 7003=2026-06-30 14:30'],
    ['production with hour', '(01)09521234543213(8008)26063014', '01=09521234543213 8008=2026-06-30 14:00'],
    [
      'production with seconds',
      '(01)09521234543213(8008)260630143059',
      '01=09521234543213 8008=2026-06-30 14:30:59',
    ],
    [
      'harvest over two days',
      '(01)09521234543213(7007)260630260701',
      '01=09521234543213 7007=2026-06-30/2026-07-01',
    ],
    ['returnable asset', '(8003)09521234543213A7', '8003=09521234543213A7'],
    ['individual asset', '(8004)9521234TRAY07', '8004=9521234TRAY07'],
    ['piece of an item', '(8006)095212345432130102', '8006=095212345432130102'],
    ['escaped brackets', '(10)A\\(21\\)B(21)7', '10=A(21)B 21=7'],
    ['company internal', '(91)X', '91=X'],
  ])('%s', (_why, text, read) => expect(show(text)).toMatchObject({ state: 'read', read, problems: '' }));

  test('places and meanings', () =>
    expect(show(']d20109521234543213172706001024A7{GS}211234').output.elements).toEqual([
      expect.objectContaining({ identifier: '01', meaning: 'gtin', position: 6 }),
      expect.objectContaining({ identifier: '17', meaning: 'useBy', plain: '2027-06-30', position: 22 }),
      expect.objectContaining({ identifier: '10', meaning: 'lot', plain: '24A7', position: 30 }),
      expect.objectContaining({ identifier: '21', meaning: 'serial', plain: '1234', position: 40 }),
    ]));
});

describe('separators', () => {
  test.each([
    [
      'none needed: the lot is last and has no digits to mistake',
      '010952123454321317270600' + '10ABC',
      '01=09521234543213 17=2027-06-30 10=ABC',
    ],
    [
      'lost after a lot too long for one',
      `010952123454321310${'A'.repeat(20)}2177`,
      `01=09521234543213 10=${'A'.repeat(20)} 21=77`,
    ],
    ['lot before a key', ']C11727060001' + '09521234543213', '17=2027-06-30 01=09521234543213'],
  ])('%s', (_why, text, read) =>
    expect(show(text)).toMatchObject({ outcome: 'answered', state: 'read', read }),
  );

  test('a serial that might begin in the lot is refused', () => {
    const { state, readings } = show('010952123454321310AB21CD');
    expect(state).toBe('ambiguous');
    expect(readings).toEqual(['(01)09521234543213(10)AB21CD', '(01)09521234543213(10)AB(21)CD']);
  });

  test('a reading in which a date does not exist is none', () =>
    // (10)AB(17)268888 is not one: there is no month 88
    expect(show('010952123454321310AB17268888').read).toBe('01=09521234543213 10=AB17268888'));
});

// GS1 Digital Link Standard, URI syntax (from memory; formats as GS1's syntax dictionary lists them)
describe('Digital Link', () => {
  test.each([
    ['key alone', 'https://example.org/01/09521234543213', '01=09521234543213', ''],
    ['with a path before', 'http://example.org/a/b/01/09521234543213/21/X', '01=09521234543213 21=X', ''],
    ['slash at the end, fragment', 'https://example.org/01/09521234543213/#top', '01=09521234543213', ''],
    ['a GTIN-13 as it is', 'https://example.org/01/9521234543213', '01=09521234543213', ''],
    ['percent code', 'https://example.org/01/09521234543213/10/A%2FB', '01=09521234543213 10=A/B', ''],
    [
      'what is no identifier is passed over',
      'https://example.org/01/09521234543213?linkType=all&17=270600',
      '01=09521234543213 17=2027-06-30',
      '',
    ],
    ['wrong check digit', 'https://example.org/01/09521234543214', '01=null', 'check-digit@37'],
    [
      'wrong order of qualifiers',
      'https://example.org/01/09521234543213/21/X/10/Y',
      '01=09521234543213 21=X 10=Y',
      'not-a-key-qualifier@44',
    ],
    [
      'broken percent code',
      'https://example.org/01/09521234543213/10/A%ZZ',
      '01=09521234543213 10=null',
      'bad-percent-code@43',
    ],
    [
      'unknown identifier in the query',
      'https://example.org/01/09521234543213?05=1',
      '01=09521234543213 05=null',
      'unknown-identifier@42',
    ],
  ])('%s', (_why, text, read, problems) =>
    expect(show(text)).toMatchObject({ scheme: 'gs1DigitalLink', read, problems }),
  );

  test.each(['https://example.org/', 'https://example.org/sets/01', 'https://example.org/cases/01/x/y'])(
    '%s is an ordinary address',
    (text) =>
      expect(show(text)).toMatchObject({ scheme: 'unknown', state: 'unknown', read: '', problems: '' }),
  );
});

describe('what is not known stays text', () => {
  test.each([
    ['a set’s own code', 'SFS-03'],
    ['a lot alone', '10ABC123'],
    ['a use-by and a lot without a key or a mark', '1715070710A213B1'],
    ['a telephone number', '(555) 123 4567'],
    ['a number of no key’s length', '12345'],
    ['words', 'pilot bit 2.5'],
    ['a formula', '=SUM(A1)'],
    ['a signed number', '+12'],
  ])('%s', (_why, text) => {
    const { outcome, scheme, state, read, output } = show(text);
    expect({ outcome, scheme, state, read }).toEqual({
      outcome: 'answered',
      scheme: 'unknown',
      state: 'unknown',
      read: '',
    });
    expect(output.text).toBe(text);
  });

  test('a GS1 string in a mark that carries none is said to be that, and not read', () =>
    expect(show(']C00109521234543213')).toMatchObject({ state: 'unknown', problems: 'not-a-gs1-carrier@4' }));

  test('without a mark, a key with a wrong check digit is text, and the digit is said', () =>
    expect(show('0109521234543214')).toMatchObject({ state: 'unknown', problems: 'check-digit@16' }));

  test('control characters are written out', () =>
    expect(show('A\u001dB\u0000').output.text).toBe('A{GS}B{00}'));
});
