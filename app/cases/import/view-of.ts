import type { ListAnswer } from '@/db/operations/theatre/import-list';
import { FIELD_HEADINGS } from '@/lib/theatre/import/fields';
import type { RowOutcome } from '@/lib/theatre/import/outcome';
import type { ReadList } from '@/lib/theatre/import/readList';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { faultWords, remarkWords, understoodWords } from '@/lib/wording/list-import';
import { LIMB_WORDS, REGION_WORDS, URGENCY_WORDS } from '@/lib/wording/plans';
import { momentWords } from '@/lib/wording/sets';
import { theatreListWords } from '@/lib/wording/theatre-list';
import type { Choices, ImportLine, ImportView } from './import-view';

/** What the screen shows of a tried or imported list: words, and nothing of the file that is not needed for them. */
export function viewOf(
  answer: ListAnswer,
  list: ReadList,
  choices: Choices,
  now: string,
): Omit<ImportView, 'planned'> {
  const { understood } = list;
  const table = understood.format === 'fhir' ? null : understood.columns;
  const has = (code: string) => answer.problems.some(({ fault }) => fault.code === code);
  return {
    digest: answer.digest,
    understood: understoodWords(list),
    sheets: understood.format === 'xlsx' ? understood.sheets : [],
    sheet: understood.format === 'xlsx' ? understood.sheet : null,
    columns: table?.columns ?? [],
    chosen: table?.chosen ?? null,
    choices,
    open: {
      dateOrder: has('date-either-order') || has('date-other-order') || choices.dateOrder !== null,
      repeatedHour: has('time-repeated') || choices.repeatedHour !== null,
      urgency:
        choices.urgencyWhereNone !== null ||
        answer.problems.some(({ field, fault }) => field === 'urgency' && fault.code === 'needed'),
    },
    lines: answer.outcomes.map((one) => lineOf(one, answer)).sort((a, b) => a.row - b.row),
    links: answer.outcomes.filter((one) => one.kind === 'unchanged' && one.links).length,
    problems: answer.problems.map((problem, at) => ({
      id: String(at),
      row: problem.row,
      column: problem.column ?? (problem.field === null ? null : FIELD_HEADINGS[problem.field]),
      value: problem.value,
      withheld: problem.withheld,
      sentence: faultWords(problem.fault, problem.field),
    })),
    notNamed: answer.notNamed.map(({ reference, startsAt }) => `${reference}, ${momentWords(startsAt, now)}`),
    lost: lostWords(answer),
    importedBefore:
      answer.importedBefore === null
        ? null
        : `${momentWords(answer.importedBefore.at, now)}${answer.importedBefore.by === null ? '' : ` by ${answer.importedBefore.by}`}`,
    done:
      answer.done === null
        ? null
        : {
            booked: answer.done.booked.length,
            moved: answer.done.moved.length,
            linked: answer.done.linked,
          },
  };
}

function lostWords({ lost }: ListAnswer): string[] {
  const setsOf = new Map<string, string[]>();
  for (const { reference, setCode } of lost)
    setsOf.set(reference, [...(setsOf.get(reference) ?? []), setCode]);
  return [...setsOf].map(([reference, sets]) => theatreListWords.wouldLose(reference, sets));
}

function lineOf(one: RowOutcome, { theatres, bookedRows }: ListAnswer): ImportLine {
  const named = (id: string) => theatres.find((theatre) => theatre.id === id)?.name ?? id;
  const remarks = one.remarks.map(remarkWords);
  if (one.kind === 'new') {
    const { region, limb, surgeon, urgency, to } = one;
    return {
      row: one.row,
      kind: one.kind,
      reference: bookedRows.get(one.row)?.reference ?? null,
      caseId: bookedRows.get(one.row)?.id ?? null,
      startsAt: to.startsAt,
      when: whenWords(to),
      before: null,
      theatre: to.theatre.name,
      what: whatWords(region, limb),
      surgeon: surgeon.name,
      urgency: URGENCY_WORDS[urgency],
      remarks,
    };
  }
  const { listed } = one;
  const place =
    one.kind === 'moved'
      ? { ...one.to, name: one.to.theatre.name }
      : { startsAt: listed.startsAt, endsAt: listed.endsAt, name: named(listed.theatreId) };
  return {
    row: one.row,
    kind: one.kind,
    reference: listed.reference,
    caseId: listed.id,
    startsAt: place.startsAt,
    when: whenWords(place),
    before: one.kind === 'moved' ? `${whenWords(listed)}, ${named(listed.theatreId)}` : null,
    theatre: place.name,
    what: whatWords(listed.region, listed.limb),
    surgeon: listed.surgeon,
    urgency: URGENCY_WORDS[listed.urgency],
    remarks,
  };
}

const whatWords = (region: keyof typeof REGION_WORDS, limb: 'left' | 'right') =>
  `${REGION_WORDS[region]}, ${LIMB_WORDS[limb].toLowerCase()}`;

function whenWords({ startsAt, endsAt }: { startsAt: string; endsAt: string }): string {
  const [from, until] = [wallClock(startsAt), wallClock(endsAt)];
  const ends = from.date === until.date ? until.time : `${until.time} on ${dayWords(until.date)}`;
  // with its year: a date that was misread is often out by one
  return `${dayWords(from.date)} ${from.date.slice(0, 4)}, ${from.time}–${ends}`;
}
