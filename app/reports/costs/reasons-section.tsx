import { ChartFigure } from '@/app/_ui/charts/chart-figure';
import { type RowBar, RowBars } from '@/app/_ui/charts/row-bars';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { Section } from '@/app/_ui/section';
import { procedureOf } from '@/lib/costs/costTables';
import {
  type DelayGroup,
  delayGroup,
  delayGroups,
  shareNotStated,
  type WasteGroup,
  wasteByNamedReason,
  writtenOffByReason,
} from '@/lib/costs/reasonGroups';
import { type ReasonFacts, type ReasonTable, reasonName, reasonTable } from '@/lib/costs/reasonTables';
import { writePence } from '@/lib/quantities/money';
import { reasonReportWords as words } from '@/lib/wording/costs';

/** Waste and delay by the hospital's own reasons: in all, by procedure and by set; whatever has none is shown as not stated. */
export function ReasonsSection({
  facts,
  months,
}: {
  facts: ReasonFacts;
  /** The time the page shows, as its address says it. */
  months: number;
}) {
  const { cases, delays, reasons, nameOf } = facts;
  // the rows of what stands in a file alone are not made for the page
  const figure = (which: ReasonTable, rowsOf: ReasonFacts = facts) => ({
    table: reasonTable(which, rowsOf),
    file: `/reports/costs/export?table=${which}&months=${months}`,
  });
  const waste = wasteByNamedReason(cases);
  const off = writtenOffByReason(facts.writtenOff);
  const unsaid = shareNotStated(waste);
  const all = delayGroup('all', delays);
  return (
    <>
      <Section id="reasons" title="Waste by reason" note="the hospital’s own reasons, in cases">
        {waste.length === 0 ? (
          <p>Nothing was wasted in these cases.</p>
        ) : (
          <>
            <p>{words.notStated(unsaid)}</p>
            <ChartFigure {...figure('wasteReasons')}>
              <RowBars label={words.labels.waste} rows={waste.map((one) => wasteBar(one, reasons))} />
            </ChartFigure>
          </>
        )}
      </Section>
      {waste.length === 0 ? null : (
        <Section title="Waste by reason, procedure and set" note="as tables; the files have every case">
          <ChartFigure {...figure('wasteReasonsByProcedure')}>
            <p>By procedure</p>
          </ChartFigure>
          <ChartFigure {...figure('wasteReasonsBySet')}>
            <p>By set</p>
          </ChartFigure>
          <ChartFigure {...figure('wasteReasonsByCase', { ...facts, cases: [] })} withoutTable>
            <p>By case, in a file</p>
          </ChartFigure>
        </Section>
      )}
      {off.length === 0 ? null : (
        <Section title="Written off from the shelf" note="in no case; by the hospital’s own reasons">
          <ChartFigure {...figure('writtenOff')}>
            <RowBars label={words.labels.writtenOff} rows={off.map((one) => wasteBar(one, reasons))} />
          </ChartFigure>
        </Section>
      )}
      <Section title="Delay by reason" note="as recorded; a case without a record of delay may have had one">
        {delays.length === 0 ? (
          <p>No delay is recorded in these cases.</p>
        ) : (
          <>
            <FigureRow>
              <Figure size="medium" label="Delays" value={all.delays} note={`in ${all.cases} cases`} />
              <Figure
                size="medium"
                label="Minutes in all"
                value={all.stated === 0 ? null : all.minutes}
                note={`over ${all.stated} of which the minutes are stated`}
              />
              <Figure
                size="medium"
                label="Half took less than"
                value={all.medianMinutes}
                unit="min"
                note={all.medianMinutes === null ? words.tooFew : words.quarters(all)}
              />
              <Figure
                size="medium"
                label="Without a reason"
                value={((all.noReason / all.delays) * 100).toFixed(1)}
                unit="%"
                note={`${all.noReason} of ${all.delays}`}
              />
            </FigureRow>
            <ChartFigure {...figure('delayReasons')}>
              <RowBars
                label={words.labels.delay}
                rows={delayGroups(delays, ({ reasonId }) => [reasonId ?? '']).map((one) =>
                  delayBar(one, reasonName(reasons, one.key)),
                )}
              />
            </ChartFigure>
          </>
        )}
      </Section>
      {delays.length === 0 ? null : (
        <Section title="Delay by procedure and set" note="a delay counts with every set of its case">
          <ChartFigure {...figure('delaysByProcedure')}>
            <RowBars
              label={words.labels.delayByProcedure}
              rows={delayGroups(delays, (one) => [procedureOf(one)]).map((one) => delayBar(one, one.key))}
            />
          </ChartFigure>
          <ChartFigure {...figure('delaysBySet')}>
            <RowBars
              label={words.labels.delayBySet}
              rows={delayGroups(delays, ({ configurationIds }) => configurationIds).map((one) =>
                delayBar(one, nameOf(one.key)),
              )}
            />
          </ChartFigure>
          <ChartFigure {...figure('delaysByCase', { ...facts, delays: [] })} withoutTable>
            <p>By case, in a file</p>
          </ChartFigure>
        </Section>
      )}
    </>
  );
}

const wasteBar = (one: WasteGroup, reasons: ReasonFacts['reasons']): RowBar => ({
  id: one.reasonId ?? 'none',
  label: reasonName(reasons, one.reasonId),
  value: one.pence,
  shown: writePence(one.pence),
  note: words.wasteNote(one),
});

const delayBar = (one: DelayGroup, label: string): RowBar => ({
  id: one.key === '' ? 'none' : one.key,
  label,
  value: one.stated === 0 ? null : one.minutes,
  shown: one.stated === 0 ? 'not known' : `${one.minutes} min`,
  note: words.delayNote(one),
});
