import { Button } from '@/app/_ui/button';
import { SelectField } from '@/app/_ui/select-field';
import { PERIOD_MONTHS, type PeriodMonths } from '@/lib/review/period';
import styles from './parts.module.css';

const WORDS: Record<PeriodMonths, string> = {
  3: 'the last three months',
  12: 'the last twelve months',
  24: 'the last two years',
  60: 'the last five years',
};

/** How far back the page looks; a plain form, so that an address says it and scripts are not needed. */
export function PeriodBar({ action, months }: { action: string; months: PeriodMonths }) {
  return (
    <search aria-label="Period" data-print="no">
      <form action={action} method="get" className={styles.period}>
        <SelectField
          name="months"
          label="Cases of"
          defaultValue={String(months)}
          options={PERIOD_MONTHS.map((one) => ({ value: String(one), label: WORDS[one] }))}
        />
        <Button type="submit">Look</Button>
      </form>
    </search>
  );
}
