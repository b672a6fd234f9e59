'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { newClientId } from '@/app/_outbox/new-id';
import { Button } from '@/app/_ui/button';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { Dialog } from '@/app/_ui/dialog';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { RadioGroup } from '@/app/_ui/radio-group';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import { sendJson } from '@/app/sets/_parts/send-json';
import type { RecallOf } from '@/lib/trace/recall';
import { recallWords } from '@/lib/wording/recall';
import styles from '../trace.module.css';

/**
 * Calls something back, or rehearses that. Which of the two is never chosen beforehand.
 *
 * @param what     in words: "lot 4711 of screw …"
 * @param unknown  sets with pieces whose lot nobody knows
 */
export function OpenRecall({
  of,
  what,
  sets,
  heaps,
  unknown,
}: {
  of: RecallOf;
  what: string;
  sets: number;
  heaps: number;
  unknown: number;
}) {
  const router = useRouter();
  const [open, setOpen] = useState(false);
  const [mode, setMode] = useState('');
  const [reason, setReason] = useState('');
  const [reference, setReference] = useState('');
  const [holdUnknown, setHoldUnknown] = useState(false);
  const [pending, setPending] = useState(false);
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  // the same recall however often it is sent
  const id = useRef<string | null>(null);

  async function send() {
    if (pending) return;
    if (mode === '')
      return setProblems([{ path: 'mode', sentence: 'Choose whether this is a recall or a rehearsal.' }]);
    setPending(true);
    setProblems([]);
    id.current ??= newClientId('recall');
    try {
      const sent = await sendJson<{ id: string }>('/api/v1/recalls', {
        recallId: id.current,
        of,
        reason,
        noticeReference: reference,
        isRehearsal: mode === 'rehearsal',
        holdUnknown,
      });
      if (sent.ok) {
        setOpen(false);
        router.push(`/recalls/${sent.value.id}`);
        return;
      }
      setProblems(sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentence }]);
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    } finally {
      setPending(false);
    }
  }

  return (
    <Dialog
      title={`Call back ${what}`}
      trigger={{ label: 'Call it back', kind: 'danger', size: 'bench' }}
      open={open}
      onOpen={setOpen}
    >
      <div className={styles.form} data-size="bench">
        {problems.length > 0 ? <ProblemSummary problems={problems} focus /> : null}
        <RadioGroup
          name="mode"
          label="What this is"
          value={mode}
          onValue={setMode}
          problems={problemsAt(problems, 'mode')}
          choices={[
            {
              value: 'recall',
              label: 'A recall',
              note: `Holds ${recallWords.held(sets, heaps)} at once, and tells the people concerned.`,
            },
            {
              value: 'rehearsal',
              label: 'A rehearsal',
              note: 'Holds nothing. People are told, and told that it is a rehearsal.',
            },
          ]}
        />
        <TextArea
          name="reason"
          label="Why"
          value={reason}
          onValue={setReason}
          rows={3}
          maxLength={300}
          problems={problemsAt(problems, 'reason')}
        />
        <TextField
          name="noticeReference"
          label="Reference of the maker’s or the authority’s notice"
          hint="Blank where there is none."
          value={reference}
          onValue={setReference}
          maxLength={80}
          problems={problemsAt(problems, 'noticeReference')}
        />
        {unknown > 0 ? (
          <CheckboxField
            name="holdUnknown"
            label={`Hold also ${unknown} ${unknown === 1 ? 'set' : 'sets'} with pieces of it whose lot nobody knows`}
            checked={holdUnknown}
            onChecked={setHoldUnknown}
          />
        ) : null}
        <Button kind="danger" size="bench" pending={pending} onClick={send}>
          {mode === 'rehearsal' ? 'Rehearse it' : 'Call it back'}
        </Button>
      </div>
    </Dialog>
  );
}
