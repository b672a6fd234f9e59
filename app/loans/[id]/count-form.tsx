'use client';

import { useState } from 'react';
import { NumberField } from '@/app/_ui/number-field';
import { Status } from '@/app/_ui/status';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import styles from '../loans.module.css';
import { type SeenLoan, useLoanAct } from '../use-loan-act';
import { ActForm } from './act-form';

interface Line {
  id: string;
  tray: number;
  name: string;
  code: string | null;
  known: boolean;
}

const wholeOf = (text: string | undefined) => (/^\d{1,4}$/.test((text ?? '').trim()) ? Number(text) : null);

/** A whole count of a loan by one person. Nothing is filled in beforehand, and no figure of anybody else is here. */
export function CountForm({
  loan,
  stage,
  lines,
}: {
  loan: SeenLoan;
  stage: 'in' | 'out';
  lines: readonly Line[];
}) {
  const { send, pending, problems } = useLoanAct(loan);
  const [sound, setSound] = useState<Record<string, string>>({});
  const [damaged, setDamaged] = useState<Record<string, string>>({});
  const [own, setOwn] = useState<SentProblem[]>([]);

  function submit() {
    const figures = lines.map(({ id }) => ({
      lineId: id,
      sound: wholeOf(sound[id]),
      // an empty cell says that none is damaged; an empty count says nothing
      damaged: (damaged[id] ?? '').trim() === '' ? 0 : wholeOf(damaged[id]),
    }));
    const wrong = figures.filter((one) => one.sound === null || one.damaged === null);
    const nameOf = (id: string) => lines.find((line) => line.id === id)?.name ?? '';
    setOwn(
      wrong.map(({ lineId, sound: found }) => ({
        path: `${found === null ? 'sound' : 'damaged'}-${lineId}`,
        sentence: `${nameOf(lineId)}: not counted. Write how many are in order, with 0 where there is none.`,
      })),
    );
    if (wrong.length > 0) return;
    return send({ act: 'count', entry: { stage, figures } }, 'your count is on record');
  }
  const counted = lines.filter(({ id }) => wholeOf(sound[id]) !== null).length;
  return (
    <ActForm confirm="This is my count" pending={pending} problems={[...own, ...problems]} onSend={submit}>
      <p aria-live="polite">{`${counted} of ${lines.length} lines counted. Count what lies there; a damaged piece is not one in order.`}</p>
      <ul className={styles.count} aria-label="Lines to count">
        {lines.map((line) => (
          <li key={line.id}>
            <div>
              <strong>{line.name}</strong>
              <span className={styles.soft}>
                {[`tray ${line.tray}`, line.code].filter(Boolean).join(' · ')}
              </span>
              {line.known ? null : (
                <Status tone="unknown" look="plain">
                  not in the catalogue
                </Status>
              )}
            </div>
            <NumberField
              name={`sound-${line.id}`}
              label="In order"
              whole
              value={sound[line.id] ?? ''}
              onValue={(value) => setSound((before) => ({ ...before, [line.id]: value }))}
            />
            <NumberField
              name={`damaged-${line.id}`}
              label="Damaged"
              whole
              value={damaged[line.id] ?? ''}
              onValue={(value) => setDamaged((before) => ({ ...before, [line.id]: value }))}
            />
          </li>
        ))}
      </ul>
    </ActForm>
  );
}
