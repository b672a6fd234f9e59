import type { CycleRead } from '../loads/cycle/readCycle';
import type { TimeForm } from '../loads/cycle/times';

const TIME_FORMS: Record<TimeForm, string> = {
  seconds: 'whole seconds, such as 120',
  clock: 'hours, minutes and seconds, such as 08:02:00',
  iso: 'date and time, such as 2026-01-14T08:02:00',
};

const shown = (cell: string) => `“${cell.length > 30 ? `${cell.slice(0, 30)}…` : cell}”`;

/** What can be wrong with the CSV of a cycle, and how it was understood. */
export const cycleWords = {
  emptyFile: 'The file is empty.',
  noHeading:
    'No line names both a time and a temperature. A heading such as “Time;Temperature (°C)” is needed, with ; , or tab between the cells.',
  brokenQuote: (line: number) => `Line ${line}: a quotation mark is not closed as it should be.`,
  severalTemperatures: (line: number, headings: string[]) =>
    `Line ${line}: ${headings.map((one) => `“${one}”`).join(' and ')} all look like temperatures. Keep the one of the coolest place.`,
  noUnit: (line: number, column: number, heading: string) =>
    `Line ${line}, column ${column}: “${heading}” must say °C or °F.`,
  noPressureUnit: (line: number, column: number, heading: string) =>
    `Line ${line}, column ${column}: “${heading}” must say mbar, kPa or bar.`,
  noReadings: 'Fewer than two readings follow the heading.',
  tooMany: (count: number, most: number) => `The file has ${count} readings; at most ${most} are read.`,
  cell: (line: number, column: number, heading: string, fault: string) =>
    `Line ${line}, column ${column} (${heading}): ${fault}`,
  number: {
    empty: () => 'is empty.',
    notANumber: (cell: string) => `${shown(cell)} is not a number.`,
    mixedMarks: (cell: string) => `${shown(cell)} has another decimal mark than the rest of the file.`,
    ambiguous: (cell: string) => `${shown(cell)} may be thousands or decimals; no other cell tells which.`,
  } satisfies Record<string, (cell: string) => string>,
  time: (cell: string, form: TimeForm | null) =>
    form === null
      ? `${shown(cell)} is no time: write ${TIME_FORMS.seconds}; ${TIME_FORMS.clock}; or ${TIME_FORMS.iso}.`
      : `${shown(cell)} is not written as ${TIME_FORMS[form]}.`,
  timeOrder: (cell: string, line: number) => `${shown(cell)} is not later than line ${line}.`,
  outOfRange: (cell: string) => `${shown(cell)} is no temperature of a steriliser (−50 to 400 °C).`,
  pressureOutOfRange: (cell: string) => `${shown(cell)} is no pressure of a steriliser (0 to 10 bar).`,

  understood: ({ understood, readings }: CycleRead): string[] => [
    `${readings.length} readings under “${understood.temperatureHeading}”, ${understood.unit === 'C' ? 'degrees Celsius' : 'degrees Fahrenheit, turned into Celsius'}.`,
    understood.pressureHeading === null
      ? 'No pressure column.'
      : `Pressure under “${understood.pressureHeading}”.`,
    `Times as ${TIME_FORMS[understood.timeForm].split(',')[0]}; cells apart by ${SEPARATOR_WORDS[understood.separator]}${understood.decimals === 'none' ? '' : `; decimal ${understood.decimals}`}.`,
    ...(understood.headingLine > 1 ? [`What stands above line ${understood.headingLine} was not read.`] : []),
    ...(understood.midnightAfterLine === null
      ? []
      : [`The clock passed midnight after line ${understood.midnightAfterLine}.`]),
  ],
};

const SEPARATOR_WORDS = { '\t': 'tab', ';': 'semicolon', ',': 'comma' } as const;
