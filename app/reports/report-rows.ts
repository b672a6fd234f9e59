import 'server-only';
import type { DayReport } from '@/lib/theatre/report/dayReport';
import type { CaseLine } from '@/lib/theatre/report/lines';
import {
  expectedWords,
  forWords,
  lackWords,
  lineMargin,
  lineNeedBy,
  lineStanding,
  marginWords,
  pouchesOf,
  type ReportNames,
  timesWords,
  turnedWords,
  wantWords,
  whenWords,
  whereWords,
} from '@/lib/wording/day-report';
import { capitalised } from '@/lib/wording/numbers';
import type { SetRow, TheatreRow, WayRow } from './report-tables';

/** The lines of a report as the rows of its tables: plain JSON. */
export function theatreRow(line: CaseLine, names: ReportNames): TheatreRow {
  const { id, reference, surgeon } = line.facts;
  return {
    id,
    reference,
    surgeon,
    times: timesWords(line.facts),
    ...lineStanding(line, names),
    sets: line.sets.map(({ setId, code }) => ({ setId, code })),
    pouches: pouchesOf(line, names),
    needBy: lineNeedBy(line, names.now),
    margin: lineMargin(line),
    late: line.marginMinutes !== null && line.marginMinutes < 0,
  };
}

export function wayRows({ onTheWay }: DayReport, { now }: ReportNames): WayRow[] {
  return onTheWay.map((one) => ({
    setId: one.set.id,
    code: one.set.code,
    where: capitalised(whereWords(one, now)),
    ...expectedWords(one.expected, now),
    needBy: whenWords(one.needByAt, now),
    margin: marginWords(one.marginMinutes),
    late: one.marginMinutes !== null && one.marginMinutes < 0,
    for: forWords(one),
  }));
}

export function lackingRows({ lacking }: DayReport, names: ReportNames): SetRow[] {
  return lacking.map((one) => ({
    key: one.set.id,
    setId: one.set.id,
    code: one.set.code,
    under: one.set.configuration,
    why: lackWords(one, names).map(capitalised),
    about: wantWords(one),
    tone: one.counting.length > 0 ? 'stop' : null,
  }));
}

export function turnedRows({ turned }: DayReport, { now }: ReportNames): SetRow[] {
  return turned.map((one) => ({
    key: `${one.code} ${one.second}`,
    setId: one.setId,
    code: one.code,
    under: '',
    why: [turnedWords(one, now)],
    about: marginWords(one.marginMinutes),
    tone: one.tight ? 'attention' : null,
  }));
}
