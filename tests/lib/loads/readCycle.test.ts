import { describe, expect, it } from 'vitest';
import { readCycle } from '@/lib/loads/cycle/readCycle';
import { cycleOutcome, summarise } from '@/lib/loads/cycle/summary';
import { cycleFile } from '../../fixtures/cycleFile';

const read = (text: string) => {
  const result = readCycle(text);
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join(' | '));
  return result.value;
};
const wrong = (text: string) => {
  const result = readCycle(text);
  if (result.ok) throw new Error('it is refused');
  return result.problems;
};
const lines = (...all: string[]) => all.join('\n');

describe('the ways a file may be written', () => {
  it.each([
    { why: 'semicolons and decimal commas', text: lines('Time;Temp (°C)', '0;134,2', '5;134,4') },
    { why: 'commas and decimal points', text: lines('Time,Temp (°C)', '0,134.2', '5,134.4') },
    { why: 'tabs', text: lines('Time\tTemp (°C)', '0\t134.2', '5\t134.4') },
    {
      why: 'quoted cells with decimal commas',
      text: lines('"Time","Temp (°C)"', '"0","134,2"', '"5","134,4"'),
    },
    {
      why: 'a byte order mark and Windows line ends',
      text: '\uFEFFTime;Temp (°C)\r\n0;134,2\r\n5;134,4\r\n',
    },
    { why: 'clock times', text: lines('Time;Temp (°C)', '08:00:00;134,2', '08:00:05;134,4') },
    {
      why: 'date and time',
      text: lines('Date and time;Temp (°C)', '2026-01-14T08:00:00Z;134,2', '2026-01-14 08:00:05Z;134,4'),
    },
    {
      why: 'lines above the heading',
      text: lines('Steriliser;1', 'Cycle;4711', 'Time;Temp (°C)', '0;134,2', '5;134,4'),
    },
    { why: 'another column between', text: lines('Time;Phase;Temp (°C)', '0;heat;134,2', '5;hold;134,4') },
    // 0 °C = 32 °F and 5 K = 9 °F, by definition
    { why: 'degrees Fahrenheit', text: lines('Time;Temp (°F)', '0;273,56', '5;273,92') },
  ])('$why', ({ text }) => {
    expect(read(text).readings).toEqual([
      { second: 0, millicelsius: 134_200, millibar: null },
      { second: 5, millicelsius: 134_400, millibar: null },
    ]);
  });

  it.each([
    ['mbar', '3040', 3040],
    ['kPa', '304', 3040],
    ['bar', '3.04', 3040],
  ])('pressure in %s', (unit, written, millibar) => {
    const text = lines(`Time,Temp (°C),Pressure (${unit})`, `0,134.2,${written}`, `5,134.4,${written}`);
    expect(read(text).readings.map((one) => one.millibar)).toEqual([millibar, millibar]);
  });

  it('a clock that passes midnight goes on, and says so', () => {
    const { readings, understood } = read(lines('Time;Temp (°C)', '23:59:55;134,2', '00:00:05;134,4'));
    expect(readings.map(({ second }) => second)).toEqual([0, 10]);
    expect(understood.midnightAfterLine).toBe(2);
  });
});

describe('what is wrong is said all at once, by line and column', () => {
  it('every cell', () => {
    const problems = wrong(lines('Time;Temp (°C)', '0;134,2', 'five;hot', '10;', '10;134,2', '20;1340,5'));
    expect(problems.map(({ path, code }) => `${path.join('.')} ${code}`).sort()).toEqual([
      'lines.3.1 time',
      'lines.3.2 number-notANumber',
      'lines.4.2 number-empty',
      'lines.5.1 time-order',
      'lines.6.2 out-of-range',
    ]);
    expect(problems.map(({ message }) => message)).toContain(
      'Line 3, column 2 (Temp (°C)): “hot” is not a number.',
    );
  });

  it.each([
    { why: 'an empty file', text: '  \n', code: 'empty-file' },
    { why: 'no heading', text: lines('0;134,2', '5;134,4'), code: 'no-heading' },
    { why: 'no unit', text: lines('Time;Temperature', '0;134,2', '5;134,4'), code: 'no-unit' },
    {
      why: 'two temperatures',
      text: lines('Time;Temp 1 (°C);Temp 2 (°C)', '0;134;134', '5;134;134'),
      code: 'several-temperatures',
    },
    { why: 'one reading', text: lines('Time;Temp (°C)', '0;134,2'), code: 'no-readings' },
    { why: 'an open quote', text: lines('Time;Temp (°C)', '0;"134,2', '5;134,4'), code: 'broken-quote' },
    {
      why: 'both decimal marks',
      text: lines('Time;Temp (°C)', '0;134,2', '5;134.4'),
      code: 'number-mixedMarks',
    },
    {
      why: 'a comma that may be thousands',
      text: lines('Time;Temp (°C);Pressure (mbar)', '0;134;3,040', '5;134;3,040'),
      code: 'number-ambiguous',
    },
    { why: 'times in two ways', text: lines('Time;Temp (°C)', '0;134,2', '00:00:05;134,4'), code: 'time' },
    { why: 'times that go back', text: lines('Time;Temp (°C)', '10;134,2', '5;134,4'), code: 'time-order' },
    {
      why: 'a pressure without unit',
      text: lines('Time;Temp (°C);Pressure', '0;134;3', '5;134;3'),
      code: 'no-unit',
    },
  ])('$why is refused', ({ text, code }) => {
    expect(wrong(text).map((one) => one.code)).toContain(code);
  });

  it('never throws, whatever is sent', () => {
    for (const text of [
      '"',
      ';;;',
      'Time;°C\n"a""b',
      '\0\0',
      'Time;Temp (°C)\n'.repeat(3),
      'x'.repeat(100_000),
    ])
      expect(() => readCycle(text)).not.toThrow();
  });
});

describe('a cycle against its programme', () => {
  const ran = {
    name: '134 °C wrapped',
    bandMillicelsius: [134_000, 137_000] as [number, number],
    holdSeconds: 180,
  };
  const imported = {
    importedBy: 'person_a',
    importedAt: '2026-01-14T08:00:00.000Z',
    fileName: null,
    understood: [],
  };
  const outcomeOf = (text: string) => cycleOutcome(summarise(read(text).readings, ran, imported));

  it('kept, not kept, not established: never anything else', () => {
    expect(outcomeOf(cycleFile({ holdSeconds: 210 }))).toBe('kept');
    expect(outcomeOf(cycleFile({ holdSeconds: 150 }))).toBe('notKept');
    expect(outcomeOf(cycleFile({ holdC: 133.6 }))).toBe('notKept');
    const rows = cycleFile({ holdSeconds: 210 }).split('\n');
    expect(outcomeOf([...rows.slice(0, 75), ...rows.slice(82)].join('\n'))).toBe('notEstablished');
    expect(cycleOutcome(null)).toBe('notEstablished');
  });

  it('says what was missing and the least the sums can be', () => {
    const rows = cycleFile().split('\n');
    const summary = summarise(
      read([...rows.slice(0, 75), ...rows.slice(82)].join('\n')).readings,
      ran,
      imported,
    );
    expect(summary.missing).toEqual(['temperatures between 365 s and 405 s']);
    expect(summary.dose?.f0Minutes).toBeGreaterThan(0);
  });
});
