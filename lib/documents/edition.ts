import { wallClock } from '../theatre/localTime';
import { cautions, paperCaution } from '../wording/cautions';
import type { Edition, RecordCode, SheetKind } from './sheet';

/** Who prints, when, as an ISO instant, and in which hospital. */
export interface Printing {
  hospital: string;
  at: string;
  by: string;
}

const KIND_CODES: Record<SheetKind, string> = {
  countSheet: 'CS',
  pickList: 'PL',
  layUpCard: 'LC',
  loadList: 'LL',
  loadInDoubt: 'LD',
  morningReport: 'MR',
  dayBeforeReport: 'DR',
  loanRequest: 'LQ',
  supplyOrder: 'SO',
  usageOrder: 'UO',
  reconciliation: 'RL',
  loanReturn: 'LR',
  preferenceCard: 'PC',
  recordOfUse: 'RU',
  recall: 'RC',
};

/** Characters that an element string of AI 91 may hold (GS1 General Specifications, character set 82). */
const NOT_IN_SET_82 = /[^!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]/g;

/** GS1 General Specifications: AI 91 to 99 hold up to 90 characters. */
const MOST_CHARACTERS = 90;

/**
 * The record code of a sheet: kind, thing, version and the minute of printing in UTC, such as
 * `CS/SFS-01/V1-R4/20260114T0630Z`, under the GS1 application identifier 91 (company internal information). It is no
 * GDTI (AI 253): that key needs a company prefix of the hospital's own, and none is made up here.
 *
 * Brackets are left out of the value, for they mark identifiers where the string is written.
 */
export function recordCode(
  kind: SheetKind,
  thing: string,
  version: string,
  at: string,
  number: string | null = null,
): RecordCode {
  const minute = `${at.slice(0, 16).replaceAll(/[-:]/g, '')}Z`;
  const head = `${KIND_CODES[kind]}/${thing}`.replaceAll(/[()]/g, '');
  const tail = `/${version}/${minute}`;
  const value = `${head.slice(0, MOST_CHARACTERS - tail.length)}${tail}`.replaceAll(NOT_IN_SET_82, '_');
  return { number, elementString: `(91)${value}`, text: value };
}

/** `14 January 2026, 06:30` by the hospital's clock. */
export function momentWords(at: string): string {
  const { date, time } = wallClock(at);
  return `${dateWords(date)}, ${time}`;
}

/** `2026-01-14 → 14 January 2026`. */
export function dateWords(date: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  }).format(new Date(`${date}T12:00:00Z`));
}

/** `2026-01-14 → 14 Jan 2026`, for narrow columns. */
export function shortDateWords(date: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  }).format(new Date(`${date}T12:00:00Z`));
}

export function editionOf(version: string, printing: Printing): Edition {
  return {
    version,
    hospital: printing.hospital,
    printedAt: momentWords(printing.at),
    printedBy: printing.by,
  };
}

/** The cautions of every sheet, and the one that only paper carries. */
export function sheetCautions(edition: Edition): string[] {
  return [...cautions.map(({ sentence }) => sentence), paperCaution(edition.version, edition.printedAt)];
}
