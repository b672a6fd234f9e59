'use client';

import { useState } from 'react';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { TextArea } from '@/app/_ui/text-area';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import { ActForm } from './act-form';
import type { LineRow } from './line-row';

/** Another number for one line, and why; kept with the proposal only once it is approved. */
export function ChangeDialog({
  row,
  change,
  onChange,
  onClose,
}: {
  row: LineRow;
  change: { pieces: number; because: string } | undefined;
  /** `null` takes an earlier change back. */
  onChange: (change: { pieces: number; because: string } | null) => void;
  onClose: () => void;
}) {
  const [pieces, setPieces] = useState(String(change?.pieces ?? row.proposed));
  const [because, setBecause] = useState(change?.because ?? '');
  const [problems, setProblems] = useState<SentProblem[]>([]);

  function take() {
    const asked = /^\d{1,6}$/.test(pieces.trim()) ? Number(pieces) : null;
    if (asked === row.proposed) {
      onChange(null);
      return;
    }
    const found: SentProblem[] = [];
    if (asked === null || asked % row.packOf !== 0)
      found.push({
        path: 'pieces',
        sentence:
          row.packOf === 1 ? 'State whole pieces.' : `It comes in packs of ${row.packOf}: state whole packs.`,
      });
    if (because.trim().length < 8)
      found.push({ path: 'because', sentence: 'Say why, in at least 8 characters.' });
    setProblems(found);
    if (found.length === 0 && asked !== null) onChange({ pieces: asked, because: because.trim() });
  }

  return (
    <Dialog title={`${row.code}: another number`} open onOpen={(open) => !open && onClose()}>
      <p>{row.sentence}</p>
      <ActForm confirm="Take this number" pending={false} problems={problems} onSend={take}>
        <NumberField
          name="pieces"
          label="Order"
          unit="pieces"
          hint={row.packOf === 1 ? '0 leaves it out' : `in packs of ${row.packOf}; 0 leaves it out`}
          value={pieces}
          onValue={setPieces}
          step={row.packOf}
          min={0}
          stepper
          whole
          problems={problemsAt(problems, 'pieces')}
        />
        <TextArea
          name="because"
          label="Why"
          rows={3}
          maxLength={300}
          value={because}
          onValue={setBecause}
          problems={problemsAt(problems, 'because')}
        />
      </ActForm>
    </Dialog>
  );
}
