'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { newClientId } from '@/app/_outbox/new-id';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { NumberField } from '@/app/_ui/number-field';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { TextArea } from '@/app/_ui/text-area';
import { QUESTION_ACT_WORDS } from '@/lib/wording/theatre-counts';
import { SettleDialog } from './settle-dialog';

type Kind = 'found' | 'xRayAsked' | 'discarded' | 'stillOpen';
const KINDS: readonly Kind[] = ['found', 'xRayAsked', 'discarded', 'stillOpen'];
const NOTE_LABEL: Record<Kind, string> = {
  found: 'Where it was found',
  xRayAsked: 'What was asked for',
  discarded: 'Where it was thrown away, and how that is known',
  stillOpen: 'Where it was looked for',
};

/** What is done about one open question. None of it settles the question; that is a press of its own, by two people. */
export function QuestionActs({
  question,
  maySettleAsNotFound,
}: {
  question: { id: string; thing: string; unaccounted: number };
  maySettleAsNotFound: boolean;
}) {
  const { act, pending, refusal, forget } = useAct();
  const [kind, setKind] = useState<Kind | null>(null);
  const [pieces, setPieces] = useState('');
  const [note, setNote] = useState('');
  const [id, setId] = useState('');
  const counts = kind === 'found' || kind === 'discarded';

  function choose(next: Kind): void {
    forget();
    // one id for however many presses: what is sent twice is done once
    setId(newClientId('entry'));
    setPieces('');
    setNote('');
    setKind(next);
  }
  async function send(): Promise<void> {
    if (kind === null) return;
    const said = note.trim() === '' && kind === 'xRayAsked' ? null : note.trim();
    const body = { act: { kind, id, note: said, ...(counts ? { pieces: Number(pieces) } : {}) } };
    const done = `${question.thing}: ${QUESTION_ACT_WORDS[kind].toLowerCase()}. The question stays open.`;
    if ((await act(`/api/v1/theatre-questions/${question.id}/acts`, body, done)) === undefined) setKind(null);
  }
  return (
    <div className={`${kitStyles.acts} ${kitStyles.whole}`}>
      {KINDS.filter((one) => question.unaccounted > 0 || (one !== 'found' && one !== 'discarded')).map(
        (one) => (
          <Button
            key={one}
            size="bench"
            onClick={() => choose(one)}
            aria-label={`${question.thing}: ${QUESTION_ACT_WORDS[one]}`}
          >
            {`${QUESTION_ACT_WORDS[one]}…`}
          </Button>
        ),
      )}
      <SettleDialog question={question} maySettleAsNotFound={maySettleAsNotFound} />
      <Dialog
        title={kind === null ? '' : `${QUESTION_ACT_WORDS[kind]}: ${question.thing}`}
        open={kind !== null}
        onOpen={(open) => !open && setKind(null)}
        actions={
          <Button kind="primary" size="bench" pending={pending} onClick={send}>
            Record it
          </Button>
        }
      >
        <div className={kitStyles.form} data-size="bench">
          {counts ? (
            <NumberField
              name="question-pieces"
              label="How many"
              whole
              required
              value={pieces}
              onValue={setPieces}
            />
          ) : null}
          <TextArea
            name="question-note"
            label={kind === null ? '' : NOTE_LABEL[kind]}
            required={kind !== 'xRayAsked'}
            rows={2}
            maxLength={400}
            value={note}
            onValue={setNote}
          />
          <PatientDataHint text={note} />
          {refusal ? <p role="alert">{refusal}</p> : null}
        </div>
      </Dialog>
    </div>
  );
}
