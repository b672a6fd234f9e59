import { describe, expect, test } from 'vitest';
import { HIBC_ALPHABET, hibcCheckCharacter } from '@/lib/calculations/identifier/checkDigits';
import { show } from './show';

/** A HIBC code with its check character, by the rule of ANSI/HIBC 2. */
const checked = (body: string) => `${body}${hibcCheckCharacter(body)}`;
/** What was read, without the characters that only check. */
const data = (text: string) =>
  show(text)
    .output.elements.filter(
      ({ meaning }) => !['checkCharacter', 'packLevel', 'linkCharacter'].includes(meaning),
    )
    .map(({ identifier, plain }) => `${identifier}=${plain}`)
    .join(' ');

// strings as listed among accredited-agency examples, check characters recomputed
describe('HIBC, published strings', () => {
  test.each([
    ['+A123BJC5D6E71G', '+=A123BJC5D6E71'],
    // $$ with month and year; /S serial; /16D production date
    [
      '+X999123ABC0/$$05191234AB/S5678EDFG/16D20151001A',
      '+=X999123ABC0 $$=2019-05-31 null=1234AB /S=5678EDFG /16D=2015-10-01',
    ],
    // $$2 with month, day and year
    [
      '+X999123ABC0/$$20515191234AB/S5678EDFG/16D20151001I',
      '+=X999123ABC0 $$2=2019-05-15 null=1234AB /S=5678EDFG /16D=2015-10-01',
    ],
    // $$5 with year and day of the year: the 135th of 2019 is 15 May
    [
      '+X999123ABC0/$$5191351234AB/S5678EDFG/16D20151001J',
      '+=X999123ABC0 $$5=2019-05-15 null=1234AB /S=5678EDFG /16D=2015-10-01',
    ],
  ])('%s', (text, read) => {
    expect(data(text)).toBe(read);
    expect(show(text)).toMatchObject({ scheme: 'hibc', state: 'read', problems: '' });
    expect(data(`*${text}*`)).toBe(read);
    expect(show(`]C0${text}\r`).state).toBe('read');
  });
});

// ANSI/HIBC 2, formats of secondary data (from memory); each date is 30 June 2027, the 181st day of its year
describe('HIBC, secondary codes', () => {
  test.each([
    ['month and year', '+$$0627LOT7', '$$=2027-06-30 null=LOT7'],
    ['month, day, year', '+$$2063027LOT7', '$$2=2027-06-30 null=LOT7'],
    ['year, month, day', '+$$3270630LOT7', '$$3=2027-06-30 null=LOT7'],
    ['with hour', '+$$427063014LOT7', '$$4=2027-06-30 14:00 null=LOT7'],
    ['day of the year', '+$$527181LOT7', '$$5=2027-06-30 null=LOT7'],
    ['day of the year with hour', '+$$62718114LOT7', '$$6=2027-06-30 14:00 null=LOT7'],
    ['lot without date', '+$$7LOT7', '$$7=LOT7'],
    ['lot alone', '+$LOT7', '$=LOT7'],
    ['serial alone', '+$+SER9', '$+=SER9'],
    ['serial with date', '+$$+3270630SER9', '$$+3=2027-06-30 null=SER9'],
    ['serial without date', '+$$+7SER9', '$$+7=SER9'],
    ['two-figure quantity and date', '+$$8243270630LOT7', '$$8=24 3=2027-06-30 null=LOT7'],
    ['five-figure quantity, no date', '+$$9001007LOT7', '$$9=100 7=LOT7'],
    ['quantity alone', '+$$824', '$$8=24'],
    ['five digits and lot', '+27181LOT7', 'null=2027-06-30 null=LOT7'],
  ])('%s', (_why, body, read) => {
    // the link character is the primary's check character: G for +A123BJC5D6E71
    const text = checked(`${body}G`);
    expect(data(text)).toBe(read);
    expect(show(text)).toMatchObject({ scheme: 'hibc', state: 'read' });
    expect(show(text).output.elements.find(({ meaning }) => meaning === 'linkCharacter')?.plain).toBe('G');
  });

  test('a space as check character is kept, and other spaces at the end are not', () => {
    const spaced = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ']
      .map((end) => `+A123B${end}1`)
      .find((body) => hibcCheckCharacter(body) === ' ');
    expect(spaced).toBeDefined();
    expect(show(`${spaced} `).state).toBe('read');
    expect(show(`${checked('+A123BJC5D6E71')}  `).state).toBe('read');
  });
});

describe('HIBC, what is wrong', () => {
  test('any one character changed is caught, and nothing is given as read', () => {
    const sound = '+X999123ABC0/$$05191234AB/S5678EDFG/16D20151001A';
    for (let at = 1; at < sound.length; at += 1) {
      for (const other of HIBC_ALPHABET) {
        if (other === sound[at]) continue;
        const { state, output } = show(`${sound.slice(0, at)}${other}${sound.slice(at + 1)}`);
        expect(state).not.toBe('read');
        expect(output.elements.every(({ plain }) => plain === null)).toBe(true);
      }
    }
  });

  test.each([
    ['check character', '+A123BJC5D6E71H', 'check-character@15'],
    ['small letter', '+A123bJC5D6E71G', 'bad-character@6'],
    ['no month 13', checked('+A123B1/$$1327LOT'), 'no-such-date@11'],
    ['no 31 June', checked('+A123B1/$$3270631LOT'), 'no-such-date@12'],
    ['no 366th day of 2027', checked('+A123B1/$$527366LOT'), 'no-such-date@12'],
    ['production on 30 February', checked('+A123B1/$LOT/16D20260230'), 'no-such-date@17'],
    ['lot over 18', checked(`+A123B1/$${'L'.repeat(19)}`), 'too-long@28'],
    ['appended data that is not known', checked('+A123B1/$LOT/ZZ9'), 'unknown-identifier@14'],
  ])('%s', (_why, text, problems) => expect(show(text).problems).toBe(problems));
});

// FDA, UDI formats by FDA-accredited issuing agency v1.3 (2017), ICCBBA; blood container as in HL7 FHIR R4 device-example-udi4
describe('ICCBBA', () => {
  test.each([
    [
      'tissue',
      '=/A9999XYZ100T0944=,000025=A99971312345600=>014032=}013032&,1000000000000XYZ123',
      '=/=A9999XYZ100T0944 =,=000025 ==A99971312345600 =>=2014-02-01 =}=2013-02-01 &,1=000000000000XYZ123',
    ],
    ['blood container', '=)1TE123456A&)RZ12345678', '=)=1TE123456A &)=RZ12345678'],
    ['last day of a leap year', '=>024366', '=>=2024-12-31'],
    ['with time', '&>0270011430', '&>=2027-01-01 14:30'],
    ['last century', '=}999001', '=}=1999-01-01'],
  ])('%s', (_why, text, read) => expect(show(text)).toMatchObject({ scheme: 'iccbba', state: 'read', read }));

  test.each([
    ['no 366th day of 2014', '=>014366', 'no-such-date@6'],
    ['device identifier too short', '=/A9999XYZ100T=>014032', 'too-short@3'],
    ['letter in a date', '=>01403A', 'bad-character@8'],
    ['no time 24:00', '&>0270012400', 'no-such-time@9'],
    ['data that is not known', '=>014032=?1', 'unknown-identifier@9'],
    ['lot too long', '&,10000000000000XYZ1234', 'too-long@22'],
  ])('%s', (_why, text, problems) => expect(show(text)).toMatchObject({ state: 'faulty', problems }));
});
