'use client';

import { type FormEvent, startTransition, useActionState, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { FieldGrid, FieldGridRow } from '@/app/_ui/field-grid';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Segmented } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import { HardTime } from '@/app/theatre-list/hard-time';
import type { Which } from '@/lib/theatre/localTime';
import { LIMB_WORDS, REGION_WORDS, URGENCY_WORDS } from '@/lib/wording/plans';
import { bookCaseAction } from './book-case-action';
import styles from './booking.module.css';

interface Named {
  id: string;
  name: string;
}

interface OfferedCard extends Named {
  surgeonId: string;
  surgeon: string;
  region: string;
  startIds: string[];
  extras: number;
}

const worded = (words: Record<string, string>) =>
  Object.entries(words).map(([value, label]) => ({ value, label }));
const named = (all: readonly Named[]) => all.map(({ id, name }) => ({ value: id, label: name }));

/** Books a case; what was typed stays when something must be put right. */
export function BookingForm({
  theatres,
  surgeons,
  starts,
  cards,
  asked,
}: {
  theatres: Named[];
  surgeons: Named[];
  /** Starts in use; one's own are offered, and those that the chosen card names. */
  starts: (Named & { own: boolean; gone: string[] })[];
  cards: OfferedCard[];
  asked: {
    startId: string;
    cardId: string;
    gone: boolean;
    region: string;
    surgeonId: string;
    date: string;
  };
}) {
  const [problems, send, pending] = useActionState<FieldProblem[], FormData>(bookCaseAction, []);
  const [form, setForm] = useState({
    startId: asked.startId,
    cardId: asked.cardId,
    region: asked.region,
    limb: '',
    date: asked.date,
    time: '',
    which: 'first' as Which,
    minutes: '90',
    theatreId: '',
    surgeonId: asked.surgeonId,
    urgency: 'booked',
  });
  const field = (name: Exclude<keyof typeof form, 'which'>) => ({
    name,
    value: form[name],
    onValue: (value: string) => setForm((before) => ({ ...before, [name]: value })),
    problems: problemsAt(problems, name),
  });
  // Sent by hand: a form sent through its action is emptied afterwards, and what was chosen must stay.
  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const filled = new FormData(event.currentTarget);
    startTransition(() => send(filled));
  }
  const card = cards.find(({ id }) => id === form.cardId);
  const startsFor = (by: OfferedCard | undefined) =>
    starts.filter(({ id, own }) => (by ? by.startIds.includes(id) : own));
  const offered = startsFor(card);
  const start = offered.find(({ id }) => id === form.startId);
  const ofSurgeon = cards.filter(({ surgeonId }) => form.surgeonId === '' || surgeonId === form.surgeonId);

  /** A card is one surgeon's and for one region: both follow it. A start that is then not offered is let go. */
  function chooseCard(id: string) {
    const next = cards.find((one) => one.id === id);
    setForm((before) => ({
      ...before,
      cardId: next?.id ?? '',
      startId: startsFor(next).some((one) => one.id === before.startId) ? before.startId : '',
      ...(next ? { region: next.region, surgeonId: next.surgeonId } : {}),
    }));
  }
  function chooseSurgeon(surgeonId: string) {
    if (card && card.surgeonId !== surgeonId) chooseCard('');
    setForm((before) => ({ ...before, surgeonId }));
  }
  return (
    <form action={send} onSubmit={submit} noValidate className={styles.form}>
      <ProblemSummary problems={problems} />
      {asked.gone ? <Status tone="attention">That start or card is retired, or there is none</Status> : null}
      <FieldGrid>
        {ofSurgeon.length > 0 ? (
          <FieldGridRow>
            <SelectField
              {...field('cardId')}
              onValue={chooseCard}
              label="Preference card"
              hint={
                card
                  ? `${card.extras === 1 ? 'One thing' : `${card.extras} things`} beside the plan will stand on the pick list, as asked for by the card.`
                  : 'What the surgeon wants for the procedure; it adds to the pick list, never an implant.'
              }
              blank="No card"
              options={ofSurgeon.map(({ id, name, surgeon }) => ({
                value: id,
                label: `${name}, ${surgeon}`,
              }))}
            />
          </FieldGridRow>
        ) : null}
        {offered.length > 0 ? (
          <FieldGridRow>
            <SelectField
              {...field('startId')}
              label="Begin the plan from"
              hint={
                card
                  ? 'A saved start that the card names; the plan is a copy of it, and the surgeon confirms it.'
                  : 'One of your own starts; the plan is a copy of it.'
              }
              blank="An empty plan"
              options={named(offered)}
            />
            {start && start.gone.length > 0 ? <Status tone="stop">{start.gone.join('; ')}</Status> : null}
          </FieldGridRow>
        ) : null}
        <SelectField
          {...field('region')}
          label="Region"
          blank="Choose"
          options={worded(REGION_WORDS)}
          required
        />
        <Segmented
          {...field('limb')}
          label="Side"
          choices={[
            { value: 'left', label: LIMB_WORDS.left },
            { value: 'right', label: LIMB_WORDS.right },
          ]}
          required
        />
        <SelectField
          {...field('theatreId')}
          label="Theatre"
          blank="Choose"
          options={named(theatres)}
          required
        />
        <SelectField
          {...field('surgeonId')}
          onValue={chooseSurgeon}
          label="Surgeon"
          blank="Choose"
          options={named(surgeons)}
          required
        />
        <TextField {...field('date')} label="Date" hint="As 2026-01-31" width="code" required />
        <TextField
          {...field('time')}
          label="Begins at"
          hint="24 hours, such as 08:30"
          width="code"
          required
        />
        <TextField
          {...field('minutes')}
          label="Minutes"
          hint="How long theatre is taken"
          width="code"
          required
        />
        <HardTime
          name="which"
          date={form.date}
          time={form.time}
          which={form.which}
          onWhich={(which) => setForm((before) => ({ ...before, which }))}
        />
        <Segmented {...field('urgency')} label="Urgency" choices={worded(URGENCY_WORDS)} required />
      </FieldGrid>
      <ButtonRow>
        <Button type="submit" kind="primary" pending={pending}>
          Book the case
        </Button>
      </ButtonRow>
    </form>
  );
}
