import { pageFirst } from '@/app/_server/page-first';
import { ChartFigure } from '@/app/_ui/charts/chart-figure';
import { RowBars } from '@/app/_ui/charts/row-bars';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { Section } from '@/app/_ui/section';
import { workingHref } from '@/app/_ui/working';
import type { Reading } from '@/db/reader';
import { groupBy } from '@/lib/lists/groupBy';
import type { LossTable } from '@/lib/loss/lossTables';
import { writePence } from '@/lib/quantities/money';
import type { PeriodMonths } from '@/lib/review/period';
import { wasteCodeWords } from '@/lib/wording/costs';
import { unitsWord } from '@/lib/wording/expiry-loss';
import { notFoundStepWords, unfitWords, lossWords as words } from '@/lib/wording/loss';
import { LIFE_STATE_WORDS } from '@/lib/wording/service-life';
import { loadLossTables } from './loss-tables';
import { LifeTable, LotTable, RepairTable } from './tables';

/** Rows of a table that are listed; its file has all of them. */
const SHOWN = 200;

/** What asks for something first. */
const URGENCY = ['replaceNow', 'replaceAfter', 'mayBeDue', 'notEstablished', 'within'] as const;

const shownOf = (all: number, first: string): string =>
  all > SHOWN ? `; the first ${SHOWN} of ${all}, ${first}, and the file has all` : '';

/** All of the report on loss and life. */
export async function LossBody({
  access,
  months,
  now,
}: {
  access: Reading;
  months: PeriodMonths;
  now: string;
}) {
  await pageFirst();
  const { losses, lots, waste, missing, repairs, lives, tables } = await loadLossTables(access, months, now);
  const file = (which: LossTable) => `/reports/loss/export?table=${which}&months=${months}`;
  const sum = (values: readonly number[]) => values.reduce((all, one) => all + one, 0);
  const priced = lots.every(({ worthPence }) => worthPence !== null);
  const worth = sum(lots.map(({ worthPence }) => worthPence ?? 0));
  const due = lives.filter(({ life }) => life.state === 'replaceNow' || life.state === 'replaceAfter').length;
  const byUrgency = lives
    .toSorted((a, b) => URGENCY.indexOf(a.life.state) - URGENCY.indexOf(b.life.state))
    .slice(0, SHOWN);
  const inputs = new Map(losses.map(({ shelf, input }) => [shelf.itemId, input]));
  return (
    <>
      <FigureRow>
        <Figure
          size="medium"
          label="Expected to pass its use-by"
          value={unitsWord(sum(lots.map(({ expectedLost }) => expectedLost)))}
          unit="units"
          note={`${priced ? '' : 'at least '}${writePence(worth)}, of ${sum(lots.map(({ units }) => units))} units on the shelf`}
        />
        <Figure
          size="medium"
          label="Past use-by already"
          value={sum(lots.filter(({ pastUseBy }) => pastUseBy).map(({ units }) => units))}
          unit="units"
        />
        <Figure
          size="medium"
          label="Not found"
          value={sum(missing.map(({ pieces }) => pieces))}
          unit="pieces"
        />
        <Figure
          size="medium"
          label="Due to be replaced"
          value={due}
          note={`of ${lives.length} slots with a stated limit`}
        />
      </FigureRow>
      <Section
        title={words.tables.shelf}
        note={`by what left the shelf in ${months} months; our own sterile stock with a use-by${shownOf(lots.length, 'the most costly loss first')}`}
      >
        <ChartFigure table={tables.shelf} file={file('shelf')} withoutTable>
          <LotTable
            rows={lots.slice(0, SHOWN).map((lot) => ({
              ...lot,
              said: lot.neverUsed ? `${words.neverUsed(months)} ${lot.sentence}` : lot.sentence,
              workingHref: workingHref('expiry-loss', inputs.get(lot.itemId)),
            }))}
          />
        </ChartFigure>
      </Section>
      <Section title={words.tables.shelfWaste} note="what was wasted in cases stands under cost and waste">
        {waste.length === 0 ? (
          <p>Nothing was thrown away in this time.</p>
        ) : (
          <ChartFigure table={tables.shelfWaste} file={file('shelfWaste')}>
            <RowBars
              label={words.tables.shelfWaste}
              rows={waste.map(({ code, pieces, pence, unknown }) => ({
                id: code,
                label: wasteCodeWords(code),
                value: pence,
                shown: writePence(pence),
                note: `${pieces} pieces${unknown > 0 ? `, ${unknown} of them without a price` : ''}`,
              }))}
            />
          </ChartFigure>
        )}
      </Section>
      <Section title={words.tables.notFound} note="by step and kind of set; nobody is named">
        {missing.length === 0 ? (
          <p>Nothing was missed in this time.</p>
        ) : (
          <ChartFigure table={tables.notFound} file={file('notFound')}>
            <RowBars
              label="Pieces not found, by step"
              rows={[...groupBy(missing, ({ step }) => step)].map(([step, rows]) => ({
                id: step ?? 'none',
                label: notFoundStepWords(step),
                value: sum(rows.map(({ pieces }) => pieces)),
                shown: `${sum(rows.map(({ pieces }) => pieces))} pieces`,
                note: writePence(sum(rows.map(({ pence }) => pence))),
              }))}
            />
            <RowBars
              label="Pieces not found, by kind of set"
              rows={[...groupBy(missing, ({ set }) => set)].map(([set, rows]) => ({
                id: set ?? 'none',
                label: words.notFoundFrom(set),
                value: sum(rows.map(({ pieces }) => pieces)),
                shown: `${sum(rows.map(({ pieces }) => pieces))} pieces`,
              }))}
            />
          </ChartFigure>
        )}
      </Section>
      <Section
        title={words.tables.repairs}
        note={`what became of it, and what a new one costs${shownOf(repairs.length, 'the most put aside first')}`}
      >
        <ChartFigure table={tables.repairs} file={file('repairs')} withoutTable>
          <RepairTable
            rows={repairs.slice(0, SHOWN).map((row) => ({
              id: `${row.itemId} ${row.condition}`,
              itemId: row.itemId,
              name: `${row.name} (${row.code})`,
              because: unfitWords(row.condition),
              putAside: row.putAside,
              repaired: row.repaired,
              discarded: row.discarded,
              newPence: row.unitPence,
            }))}
          />
        </ChartFigure>
      </Section>
      <Section
        title={words.tables.life}
        note={`slots whose pieces have a stated limit of cycles${shownOf(lives.length, 'the most urgent first')}`}
      >
        <ChartFigure table={tables.life} file={file('life')} withoutTable>
          <LifeTable
            rows={byUrgency.map(({ setId, setCode, itemId, name, thing, life }) => ({
              id: thing.thing,
              setId,
              setCode,
              itemId,
              name,
              state: life.state,
              stands: LIFE_STATE_WORDS[life.state],
              sentence: life.sentence,
              cycles:
                thing.cycles === null
                  ? null
                  : thing.mostCycles === null
                    ? String(thing.cycles)
                    : `${thing.cycles}–${thing.mostCycles}`,
              limit: thing.limitCycles,
              booked: thing.booked.length,
              workingHref: workingHref('service-life', { things: [thing] }),
            }))}
          />
        </ChartFigure>
      </Section>
    </>
  );
}
