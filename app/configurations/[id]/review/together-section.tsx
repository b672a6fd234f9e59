import { Section } from '@/app/_ui/section';
import { listConfigurations } from '@/db/queries/configurations';
import type { Period } from '@/db/queries/review/pastCases';
import { loadTogether } from '@/db/queries/review/together';
import type { Reading } from '@/db/reader';
import { togetherNote } from '@/lib/wording/together';
import styles from './review.module.css';
import { TogetherTable } from './together-table';

/** Which other configurations were opened in the same cases, and whether that is oftener than chance alone would have it. */
export async function TogetherSection({
  access,
  configurationId,
  period,
  now,
}: {
  access: Reading;
  configurationId: string;
  period: Period;
  now: string;
}) {
  const [{ compared, pairs }, configurations] = await Promise.all([
    loadTogether(access, configurationId, period, now),
    listConfigurations(access),
  ]);
  const headOf = new Map<string, { code: string; name: string }>(configurations.map((one) => [one.id, one]));
  return (
    <Section title="Opened together" note="in the same cases of this time">
      <TogetherTable
        rows={pairs.map((one) => ({
          ...one,
          code: headOf.get(one.otherId)?.code ?? '',
          name: headOf.get(one.otherId)?.name ?? one.otherId,
        }))}
      />
      {pairs.length === 0 ? null : <p className={styles.soft}>{togetherNote(compared)}</p>}
    </Section>
  );
}
