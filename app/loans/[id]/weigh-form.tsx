'use client';

import { useState } from 'react';
import { FieldGrid } from '@/app/_ui/field-grid';
import { NumberField } from '@/app/_ui/number-field';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import { writeGrams } from '@/lib/quantities/mass';
import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';

/** What each tray weighs, against the limits. */
export function WeighForm({
  loan,
  stage,
  trays,
  limitsGrams,
}: {
  loan: SeenLoan;
  stage: 'in' | 'out';
  trays: readonly number[];
  limitsGrams: readonly number[];
}) {
  const { send, pending, problems } = useLoanAct(loan);
  const [kilos, setKilos] = useState<Record<number, string>>({});
  const [own, setOwn] = useState<SentProblem[]>([]);

  function submit() {
    const read = trays.map((tray) => ({
      tray,
      grams: Math.round(Number((kilos[tray] ?? '').trim()) * 1000),
    }));
    const wrong = read.filter(
      ({ tray, grams }) => (kilos[tray] ?? '').trim() === '' || !(grams >= 1 && grams <= 60_000),
    );
    setOwn(
      wrong.map(({ tray }) => ({
        path: `tray-${tray}`,
        sentence: `Tray ${tray}: write what the scale shows, in kilograms.`,
      })),
    );
    if (wrong.length > 0) return;
    return send({ act: 'weigh', entry: { stage, grams: read } }, 'its trays are weighed');
  }
  return (
    <ActForm confirm="Enter the masses" pending={pending} problems={[...own, ...problems]} onSend={submit}>
      <p>{`Limits here: ${limitsGrams.map(writeGrams).join(', ')}. Above the highest, ask the lender to divide the tray.`}</p>
      <FieldGrid>
        {trays.map((tray) => {
          const grams = Number((kilos[tray] ?? '').trim()) * 1000;
          const over = limitsGrams.filter((limit) => grams > limit).at(-1);
          return (
            <NumberField
              key={tray}
              name={`tray-${tray}`}
              label={`Tray ${tray}`}
              unit="kg"
              hint={over === undefined ? undefined : `above ${writeGrams(over)}`}
              value={kilos[tray] ?? ''}
              onValue={(value) => setKilos((before) => ({ ...before, [tray]: value }))}
              problems={own.filter(({ path }) => path === `tray-${tray}`).map(({ sentence }) => sentence)}
            />
          );
        })}
      </FieldGrid>
    </ActForm>
  );
}
