import { pageFirst } from '@/app/_server/page-first';
import { ChartFigure } from '@/app/_ui/charts/chart-figure';
import { ColumnChart } from '@/app/_ui/charts/column-chart';
import { RowBars } from '@/app/_ui/charts/row-bars';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { Section } from '@/app/_ui/section';
import { workingHref } from '@/app/_ui/working';
import { listConfigurations } from '@/db/queries/configurations';
import { caseCostsSeen } from '@/db/queries/costs/caseCosts';
import { loadDelays, loadWrittenOff } from '@/db/queries/costs/reasons';
import type { Person } from '@/db/queries/people';
import { listReasons } from '@/db/queries/reasons/reasons';
import type { Reading } from '@/db/reader';
import { COST_PARTS } from '@/lib/calculations/caseCost/caseCost';
import { type CostTable, costFigures, costTable, procedureOf } from '@/lib/costs/costTables';
import { writePence } from '@/lib/quantities/money';
import { type PeriodMonths, periodUntil } from '@/lib/review/period';
import { wallClock } from '@/lib/theatre/localTime';
import { monthWords, wasteCodeWords, costsWords as words } from '@/lib/wording/costs';
import { CaseTable } from './case-table';
import { OwnSection } from './own-section';
import { ReasonsSection } from './reasons-section';

/** Cases that are listed; the file has all of them. */
const SHOWN = 100;

/** All of the cost report, from one reading of the cases of the period. */
export async function CostsBody({
  access,
  person,
  months,
  now,
}: {
  access: Reading;
  person: Person;
  months: PeriodMonths;
  now: string;
}) {
  await pageFirst();
  const period = periodUntil(wallClock(now).date, months);
  const [{ cases, notRecorded, costs, hidden }, configurations, delays, writtenOff, reasons] =
    await Promise.all([
      caseCostsSeen(access, period, now),
      listConfigurations(access),
      loadDelays(access, period, now),
      loadWrittenOff(access, period),
      listReasons(access),
    ]);
  if (cases.length === 0 && hidden > 0)
    return (
      <EmptyState title="Nothing of this time can be shown now">{words.leftOutBlind(hidden)}</EmptyState>
    );
  if (cases.length === 0)
    return (
      <EmptyState title="Nothing is recorded of this time">
        {notRecorded === 0
          ? 'No case was over in it.'
          : `${notRecorded} cases are over, and of none of them is it recorded what was used.`}
      </EmptyState>
    );
  const all = costFigures.all(cases);
  const name = (id: string) => {
    const found = configurations.find((one) => one.id === id);
    return found ? `${found.code} ${found.name}` : id;
  };
  const table = (which: CostTable) => costTable(which, cases, name);
  const file = (which: CostTable) => `/reports/costs/export?table=${which}&months=${months}`;
  const byMonth = costFigures.months(cases);
  // what never came up in all this time has no place in the legend
  const parts = COST_PARTS.filter((part) => all.parts[part] > 0);
  const shareWords = words.wasteShare(costs.wasteShareOf);
  return (
    <>
      {hidden === 0 ? null : <p role="note">{words.leftOutBlind(hidden)}</p>}
      <FigureRow>
        <Figure
          size="medium"
          label="Cases"
          value={cases.length}
          note={
            notRecorded === 0
              ? 'all with their use recorded'
              : `${notRecorded} more without a record of what was used are left out`
          }
        />
        <Figure
          size="medium"
          label="A case, on average"
          value={all.meanPence === null ? null : writePence(all.meanPence)}
          note={
            all.whole === cases.length
              ? 'every price is known'
              : `over ${all.whole} cases of which every price is known`
          }
        />
        <Figure size="medium" label="Wasted" value={writePence(all.parts.wasted)} />
        <Figure
          size="medium"
          label="Share of waste"
          value={all.wasteShare === null ? null : (all.wasteShare * 100).toFixed(1)}
          unit="%"
          note={shareWords}
        />
      </FigureRow>
      {person.role === 'surgeon' ? (
        <OwnSection
          cases={cases}
          delays={delays}
          reasons={reasons}
          surgeonId={person.id}
          shareWords={shareWords}
        />
      ) : null}
      <Section title="By month">
        <ChartFigure table={table('months')} file={file('months')}>
          <ColumnChart
            said={words.chart(byMonth.length)}
            series={parts.map((part) => words.parts[part])}
            unit="£"
            divisor={100}
            rows={byMonth.map(({ key, parts: pence }) => ({
              label: monthWords(key),
              values: parts.map((part) => pence[part]),
            }))}
          />
        </ChartFigure>
      </Section>
      <Section title="Waste by what became of it">
        <ChartFigure table={table('reasons')} file={file('reasons')}>
          <RowBars
            label={words.tables.reasons}
            rows={costFigures.waste(cases).map(({ code, pieces, pence, unknown }) => ({
              id: code,
              label: wasteCodeWords(code),
              value: pence,
              shown: writePence(pence),
              note: `${pieces} pieces${unknown > 0 ? `, ${unknown} of them without a price` : ''}`,
            }))}
          />
        </ChartFigure>
      </Section>
      <ReasonsSection facts={{ cases, delays, writtenOff, reasons, nameOf: name }} months={months} />
      <Section title="By procedure" note="what a case cost on average">
        <ChartFigure table={table('procedures')} file={file('procedures')}>
          <RowBars
            label={words.tables.procedures}
            rows={costFigures.procedures(cases).map((group) => ({
              id: group.key,
              label: group.key,
              value: group.meanPence,
              shown: group.meanPence === null ? 'not known' : writePence(group.meanPence),
              note: `${group.cases} cases; half cost between ${spread(group)}; ${
                group.wasteShare === null
                  ? 'share of waste not known'
                  : `${(group.wasteShare * 100).toFixed(1)} % wasted`
              }`,
            }))}
          />
        </ChartFigure>
      </Section>
      <Section title="By set" note="wasted from its slots, a turn on average">
        <ChartFigure table={table('sets')} file={file('sets')}>
          <RowBars
            label={words.tables.sets}
            rows={costFigures.sets(cases).map(({ configurationId, turns, implantedPence, wastedPence }) => ({
              id: configurationId,
              label: name(configurationId),
              href: `/configurations/${configurationId}/review?months=${months}`,
              value: turns === 0 ? null : wastedPence / turns,
              shown: turns === 0 ? 'not known' : writePence(wastedPence / turns),
              note: `${turns} turns; ${writePence(implantedPence)} implanted from it`,
            }))}
          />
        </ChartFigure>
      </Section>
      <Section
        title="Case by case"
        note={
          cases.length > SHOWN
            ? `the newest ${SHOWN} of ${cases.length}; the file has all`
            : 'the newest first'
        }
      >
        <ChartFigure table={costTable('cases', [], name)} file={file('cases')} withoutTable>
          <CaseTable
            rows={cases
              .slice(-SHOWN)
              .reverse()
              .map((one) => ({
                id: one.caseId,
                reference: one.reference,
                on: one.on,
                procedure: procedureOf(one),
                implantedPence: one.cost.implanted.pence,
                wastedPence: one.cost.wasted.pence,
                totalPence: one.cost.totalPence,
                whole: one.whole,
                wastePercent:
                  one.cost.wasteShare === null ? null : Math.round(one.cost.wasteShare * 1000) / 10,
                workingHref: workingHref('case-cost', one.input),
              }))}
          />
        </ChartFigure>
      </Section>
    </>
  );
}

function spread({
  lowerPence,
  upperPence,
}: {
  lowerPence: number | null;
  upperPence: number | null;
}): string {
  return lowerPence === null || upperPence === null
    ? 'what is not known'
    : `${writePence(lowerPence)} and ${writePence(upperPence)}`;
}
