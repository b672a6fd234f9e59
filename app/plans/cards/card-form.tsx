'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import type { ComboOption } from '@/app/_ui/combo-field';
import { problemsAt } from '@/app/_ui/field-problem';
import { LinkButton } from '@/app/_ui/link-button';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextArea } from '@/app/_ui/text-area';
import { showToast } from '@/app/_ui/toast';
import { type SentProblem, sendJson } from '@/app/sets/_parts/send-json';
import styles from '../plans.module.css';
import { type Extra, ExtraLine } from './extra-line';

/** What the form is for: a new card, or the next version of one. */
type Of = { kind: 'new' } | { kind: 'version'; id: string; baseVersion: number };

/** A preference card as it is written: which starts, what is wanted beside the plan, and a note. */
export function CardForm({
  of,
  procedures,
  starts,
  items,
  given,
}: {
  of: Of;
  /** The procedures a new card may be for; of a card that is changed, its own. */
  procedures: readonly { id: string; name: string; region: string }[];
  /** The surgeon's own starts, with the region each is for. */
  starts: readonly { id: string; name: string; region: string; retired: boolean }[];
  items: readonly ComboOption[];
  given: { procedureId: string; startIds: string[]; extras: Extra[]; note: string };
}) {
  const router = useRouter();
  const [procedureId, setProcedureId] = useState(given.procedureId);
  const [startIds, setStartIds] = useState<readonly string[]>(given.startIds);
  const [extras, setExtras] = useState<readonly Extra[]>(given.extras);
  const [note, setNote] = useState(given.note);
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);
  const region = procedures.find(({ id }) => id === procedureId)?.region;
  const offered = starts.filter(
    (start) => start.region === region && (!start.retired || given.startIds.includes(start.id)),
  );
  // starts of another region stay chosen while the procedure is chosen anew, and are left out
  const chosen = startIds.filter((id) => offered.some((start) => start.id === id));

  async function save(event: FormEvent) {
    event.preventDefault();
    if (pending) return;
    const blank = extras.flatMap(({ itemId, quantity }, at) => [
      ...(itemId === ''
        ? [{ path: `extras.${at}.itemId`, sentence: `Line ${at + 1}: choose an item, or remove the line.` }]
        : []),
      ...(/^\d+$/.test(quantity.trim())
        ? []
        : [{ path: `extras.${at}.quantity`, sentence: `Line ${at + 1}: say how many.` }]),
    ]);
    if (blank.length > 0) {
      setProblems(blank);
      return;
    }
    setPending(true);
    const card = {
      startIds: chosen,
      extras: extras.map(({ itemId, quantity, note: said }) => ({
        itemId,
        quantity: Number(quantity.trim()),
        note: said.trim() === '' ? null : said,
      })),
      note: note.trim() === '' ? null : note,
    };
    try {
      const sent =
        of.kind === 'new'
          ? await sendJson<{ id: string }>('/api/v1/plans/cards', { procedureId, card })
          : await sendJson<{ version: number }>(`/api/v1/plans/cards/${of.id}/versions`, {
              baseVersion: of.baseVersion,
              card,
            });
      if (!sent.ok) {
        setProblems(sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentence }]);
        return;
      }
      const id = of.kind === 'new' ? (sent.value as { id: string }).id : of.id;
      showToast({ tone: 'good', word: 'Saved', text: 'The card is kept, with the versions before it.' });
      router.push(`/plans/cards/${id}`);
      router.refresh();
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    } finally {
      setPending(false);
    }
  }

  return (
    <form onSubmit={save} noValidate className={styles.form}>
      <ProblemSummary problems={problems} />
      {of.kind === 'new' ? (
        <SelectField
          name="procedureId"
          label="Procedure"
          hint="From the hospital’s own list"
          blank="Choose"
          options={procedures.map(({ id, name }) => ({ value: id, label: name }))}
          value={procedureId}
          onValue={setProcedureId}
          problems={problemsAt(problems, 'procedureId')}
          required
        />
      ) : null}
      <Section title="Saved starts" note="your own, for the region of the procedure">
        {region === undefined ? <p>Choose the procedure first.</p> : null}
        {region !== undefined && offered.length === 0 ? (
          <p>You keep no start for this region. In a plan, “Save as a start” keeps one.</p>
        ) : null}
        {offered.map(({ id, name, retired }) => (
          <CheckboxField
            key={id}
            name={`start-${id}`}
            label={retired ? `${name} (retired)` : name}
            checked={startIds.includes(id)}
            onChecked={(on) => setStartIds(on ? [...startIds, id] : startIds.filter((one) => one !== id))}
            problems={problemsAt(problems, `startIds.${chosen.indexOf(id)}`)}
          />
        ))}
      </Section>
      <Section title="Beside the plan" note="instruments and consumables; implants are stated in the plan">
        <ul className={styles.extras} aria-label="Wanted beside the plan">
          {extras.map((extra, at) => (
            <ExtraLine
              // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name of their own until an item is chosen
              key={at}
              at={at}
              extra={extra}
              items={items}
              problems={problems}
              onChange={(change) =>
                setExtras(extras.map((one, index) => (index === at ? { ...one, ...change } : one)))
              }
              onRemove={() => setExtras(extras.filter((_, index) => index !== at))}
            />
          ))}
        </ul>
        <ButtonRow>
          <Button onClick={() => setExtras([...extras, { itemId: '', quantity: '1', note: '' }])}>
            Add a line
          </Button>
        </ButtonRow>
      </Section>
      <TextArea
        name="note"
        label="Note"
        hint="For whoever prepares the case. Nothing about a patient: the card serves every case."
        value={note}
        onValue={setNote}
        problems={problemsAt(problems, 'note')}
      />
      <ButtonRow>
        <Button type="submit" kind="primary" pending={pending}>
          {of.kind === 'new' ? 'Make the card' : `Save as version ${of.baseVersion + 1}`}
        </Button>
        <LinkButton href={of.kind === 'new' ? '/plans' : `/plans/cards/${of.id}`} kind="quiet">
          Leave it as it is
        </LinkButton>
      </ButtonRow>
    </form>
  );
}
