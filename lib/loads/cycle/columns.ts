import { failed, ok, type Problem, type Result } from '@/lib/identity/result';
import { cycleWords as words } from '@/lib/wording/cycles';
import type { CsvRow } from '../../lists/splitCsv';

/** Which column says what, as its own heading states it. */
export interface CycleColumns {
  /** Line of the heading in the file. */
  line: number;
  time: number;
  temperature: { column: number; unit: 'C' | 'F' };
  pressure: { column: number; unit: 'mbar' | 'kPa' | 'bar' } | null;
  headings: string[];
}

const TIME = /^(time|elapsed|seconds|second|date and time|timestamp|clock|zeit|temps|hora)\b/i;
const TEMPERATURE = /temp|°|\bdeg|celsius|fahrenheit|^t\s*[([]/i;
const CELSIUS = /°\s*c\b|\bdeg\.?\s*c\b|\bcelsius\b|[([]\s*c\s*[)\]]/i;
const FAHRENHEIT = /°\s*f\b|\bdeg\.?\s*f\b|\bfahrenheit\b|[([]\s*f\s*[)\]]/i;
const PRESSURE = /press/i;
const PRESSURE_UNITS = { mbar: /\bmbar\b|\bhpa\b/i, kPa: /\bkpa\b/i, bar: /\bbar\b/i } as const;

/** The first line that names a time and a temperature. What stands above it is not read. */
export function findColumns(rows: readonly CsvRow[]): Result<CycleColumns> | null {
  for (const { line, cells } of rows) {
    const headings = cells.map((cell) => cell.trim());
    const time = headings.findIndex((heading) => TIME.test(heading));
    const temperatures = headings.flatMap((heading, at) =>
      at !== time && TEMPERATURE.test(heading) ? [at] : [],
    );
    if (time < 0 || temperatures.length === 0) continue;
    return columnsOf(line, headings, time, temperatures);
  }
  return null;
}

function columnsOf(
  line: number,
  headings: string[],
  time: number,
  temperatures: number[],
): Result<CycleColumns> {
  const problems: Problem[] = [];
  const [column] = temperatures;
  if (column === undefined) throw new Error('a heading with a temperature was found');
  const heading = headings[column] ?? '';
  const at = (index: number) => ['lines', line, index + 1];
  if (temperatures.length > 1)
    problems.push({
      path: at(temperatures[1] ?? column),
      code: 'several-temperatures',
      message: words.severalTemperatures(
        line,
        temperatures.map((one) => headings[one] ?? ''),
      ),
    });
  const units = [CELSIUS.test(heading) ? 'C' : null, FAHRENHEIT.test(heading) ? 'F' : null].filter(
    (unit): unit is 'C' | 'F' => unit !== null,
  );
  const [unit] = units;
  if (unit === undefined || units.length > 1)
    problems.push({ path: at(column), code: 'no-unit', message: words.noUnit(line, column + 1, heading) });
  const pressureAt = headings.findIndex((one) => PRESSURE.test(one));
  const pressureUnit = (Object.keys(PRESSURE_UNITS) as (keyof typeof PRESSURE_UNITS)[]).find((one) =>
    PRESSURE_UNITS[one].test(headings[pressureAt] ?? ''),
  );
  if (pressureAt >= 0 && pressureUnit === undefined)
    problems.push({
      path: at(pressureAt),
      code: 'no-unit',
      message: words.noPressureUnit(line, pressureAt + 1, headings[pressureAt] ?? ''),
    });
  if (problems.length > 0 || unit === undefined) return failed(...problems);
  return ok({
    line,
    headings,
    time,
    temperature: { column, unit },
    pressure:
      pressureAt < 0 || pressureUnit === undefined ? null : { column: pressureAt, unit: pressureUnit },
  });
}
