import { RowBars } from '@/app/_ui/charts/row-bars';
import { Section } from '@/app/_ui/section';
import type { CostedCase } from '@/lib/costs/costedCase';
import { procedureOf } from '@/lib/costs/costTables';
import { type CostGroup, LEAST_CASES, LEAST_SURGEONS, ownAndOthers } from '@/lib/costs/groups';
import { type DelayFact, ownDelays, wasteByNamedReason } from '@/lib/costs/reasonGroups';
import { reasonName } from '@/lib/costs/reasonTables';
import { writePence } from '@/lib/quantities/money';
import type { Reason } from '@/lib/reasons/reason';
import { reasonReportWords as words } from '@/lib/wording/costs';
import styles from '../_parts/parts.module.css';

/** A surgeon’s own cases, and all others’ only together; nobody else is shown them. */
export function OwnSection({
  cases,
  delays,
  reasons,
  surgeonId,
  shareWords,
}: {
  cases: readonly CostedCase[];
  delays: readonly DelayFact[];
  reasons: readonly Reason[];
  surgeonId: string;
  shareWords: string;
}) {
  const kinds = [
    ...ownAndOthers(cases, surgeonId, () => ALL),
    ...ownAndOthers(cases, surgeonId, procedureOf).sort((a, b) => b.own.cases - a.own.cases),
  ];
  const beside = ownDelays(delays, surgeonId);
  return (
    <Section title="Your own cases" note="only you are shown these">
      {kinds.length === 0 ? (
        <p>None of yours was over in this time.</p>
      ) : (
        <>
          <RowBars
            label="Your own cases by procedure, a case on average"
            rows={kinds.map(({ key, own, others }) => ({
              id: key,
              label: key,
              value: own.meanPence,
              shown: mean(own),
              note: `${own.cases} cases of yours, ${waste(own)}. ${
                others === null
                  ? 'Too few of others to set beside them.'
                  : `All others together: ${mean(others)}, ${waste(others)}, over ${others.cases} cases.`
              }`,
            }))}
          />
          <RowBars
            label={words.labels.own}
            rows={wasteByNamedReason(cases.filter((one) => one.surgeonId === surgeonId)).map((one) => ({
              id: one.reasonId ?? 'none',
              label: reasonName(reasons, one.reasonId),
              value: one.pence,
              shown: writePence(one.pence),
              note: words.wasteNote(one),
            }))}
          />
          <p>{words.ownDelays(beside.own, beside.others)}</p>
          <p className={styles.soft}>
            {`Share of waste: ${shareWords}. Others are shown together, and only where they are at least ${LEAST_CASES} cases of ${LEAST_SURGEONS} surgeons or more.`}
          </p>
        </>
      )}
    </Section>
  );
}

const ALL = 'All together, whatever they were';

const mean = ({ meanPence }: CostGroup) => (meanPence === null ? 'not known' : writePence(meanPence));
const waste = ({ wasteShare }: CostGroup) =>
  wasteShare === null ? 'share of waste not known' : `${(wasteShare * 100).toFixed(1)} % wasted`;
