'use client';

import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useRef, useState } from 'react';
import { useScans } from '@/app/_scan/use-scans';
import { Button } from '@/app/_ui/button';
import { ComboField } from '@/app/_ui/combo-field';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { FieldGrid } from '@/app/_ui/field-grid';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Segmented } from '@/app/_ui/radio-group';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';
import type { ReceivedItem } from '@/db/queries/shelf/receiving';
import { deliveryWords } from '@/lib/wording/stock-acts';
import { piecesOfDraft, sentOf } from './draft';
import { LineCard } from './line-card';
import styles from './receive.module.css';
import { type SaidOfLine, useDraft } from './use-draft';

const NOT_REACHED = 'That did not reach the server. Press again: what is sent twice is received once.';
const BY_HAND: SaidOfLine = { lot: null, useBy: null, pieces: null, scanId: null };

/** A delivery as it is unpacked: each pack scanned or found by name, then the whole of it received at once. */
export function ReceiveScreen({
  personId,
  today,
  items,
  places,
  owners,
  first,
}: {
  personId: string;
  today: string;
  items: { value: string; label: string; note: string }[];
  places: { value: string; label: string }[];
  /** Firms whose stock may lie here on consignment. */
  owners: { value: string; label: string }[];
  /** The item this page was opened for. */
  first: string | null;
}) {
  const router = useRouter();
  const { draft, change, changeLine, removeLine, addItem, clear } = useDraft(personId, today);
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  const [pending, setPending] = useState(false);
  const [said, setSaid] = useState('');

  const add = useCallback(
    async (itemId: string, line: SaidOfLine) => {
      try {
        const answer = await fetch(`/api/v1/deliveries/items/${itemId}`);
        if (!answer.ok) throw new Error(String(answer.status));
        const item = (await answer.json()) as ReceivedItem;
        addItem(item, line);
        setSaid(`${item.name}: on the delivery.`);
      } catch {
        setSaid('What is known of that item could not be fetched. Try again.');
      }
    },
    [addItem],
  );

  const opened = useRef(false);
  const ready = draft !== null;
  useEffect(() => {
    if (!ready || opened.current || first === null) return;
    opened.current = true;
    if (!draft.lines.some(({ item }) => item.itemId === first)) void add(first, BY_HAND);
  }, [ready, draft, first, add]);

  useScans(
    ({ id, meaning }) => {
      if (meaning.kind === 'item') {
        const { lot, useBy, quantity: pieces } = meaning;
        void add(meaning.itemId, { lot, useBy, pieces, scanId: id });
        return 'taken';
      }
      if (meaning.kind === 'place' && places.some(({ value }) => value === meaning.placeId)) {
        change({ placeId: meaning.placeId });
        for (const line of draft?.lines ?? []) {
          if (line.placeId === '') changeLine(line.id, { placeId: meaning.placeId });
        }
        setSaid(`What is scanned from here on goes to ${meaning.name}.`);
        return 'taken';
      }
      if (meaning.kind === 'unknown' && meaning.gtin !== null) {
        setSaid(`${meaning.gtin} is not in the catalogue: add the item there first, then receive it.`);
        return 'taken';
      }
      setSaid('That is nothing a delivery is made of: scan the code on a pack, or a place.');
      return 'taken';
    },
    { takes: 'everything' },
  );

  if (!draft) return <p className={styles.soft}>Looking for what was entered here before…</p>;

  async function receive() {
    if (!draft || pending) return;
    setPending(true);
    try {
      const answer = await sendJson<{ lines: number; pieces: number }>('/api/v1/deliveries', sentOf(draft));
      if (!answer.ok) {
        setProblems(answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }]);
        return;
      }
      setProblems([]);
      clear();
      setSaid('');
      const text = deliveryWords.received(answer.value.lines, answer.value.pieces);
      showToast({ tone: 'good', word: 'Received', text });
      router.refresh();
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    } finally {
      setPending(false);
    }
  }

  const pieces = draft.lines.reduce((sum, line) => sum + piecesOfDraft(line), 0);
  return (
    <div className={styles.screen}>
      {problems.length > 0 ? (
        <ProblemSummary heading="Nothing was received yet" problems={problems} focus />
      ) : null}
      <Section title="The delivery note">
        <FieldGrid min="medium">
          <TextField
            name="supplier"
            label="From"
            required
            maxLength={80}
            value={draft.supplier}
            onValue={(supplier) => change({ supplier })}
            problems={problemsAt(problems, 'supplier')}
          />
          <TextField
            name="reference"
            label="Number on the note"
            required
            width="medium"
            maxLength={60}
            value={draft.reference}
            onValue={(reference) => change({ reference })}
            problems={problemsAt(problems, 'reference')}
          />
          <TextField
            name="arrivedOn"
            label="Arrived on"
            hint="as 2028-03-31"
            required
            width="code"
            maxLength={10}
            value={draft.arrivedOn}
            onValue={(arrivedOn) => change({ arrivedOn })}
            problems={problemsAt(problems, 'arrivedOn')}
          />
          <Segmented<'ours' | 'consignment'>
            name="owner"
            label="It belongs to"
            choices={[
              { value: 'ours', label: 'us' },
              { value: 'consignment', label: 'another, on consignment' },
            ]}
            value={draft.owner}
            onValue={(owner) => change({ owner })}
          />
          {draft.owner === 'consignment' ? (
            <SelectField
              name="lenderId"
              label="Owner"
              hint="What is used of it is told to them on a usage order."
              blank="owner not stated"
              options={owners}
              value={draft.lenderId}
              onValue={(lenderId) => change({ lenderId })}
              problems={problemsAt(problems, 'lines.0.lenderId')}
            />
          ) : null}
          <SelectField
            name="place"
            label="Lines go to"
            hint="Or scan the label of a place. Each line can go elsewhere."
            blank="where the item lies now"
            options={places}
            value={draft.placeId}
            onValue={(placeId) => change({ placeId })}
          />
        </FieldGrid>
      </Section>
      <Section
        title="What came"
        note={
          draft.lines.length === 0
            ? 'scan a pack, or find the item'
            : `${draft.lines.length === 1 ? 'one line' : `${draft.lines.length} lines`}, ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`
        }
      >
        <ComboField
          key={draft.lines.length}
          name="item"
          label="Item"
          hint="Scan the code on each pack: the same lot again counts on. Without a code, find the item here."
          options={items}
          value={null}
          onValue={(itemId) => {
            if (itemId !== null) void add(itemId, BY_HAND);
          }}
          placeholder="code or name"
        />
        <p className={styles.said} role="status">
          {said}
        </p>
        {draft.lines.length > 0 ? (
          <ol className={styles.lines} aria-label="Lines of the delivery">
            {draft.lines.map((line, at) => (
              <LineCard
                key={line.id}
                line={line}
                at={at}
                places={places}
                problems={problems}
                onChange={(part) => changeLine(line.id, part)}
                onRemove={() => {
                  setProblems([]);
                  removeLine(line.id);
                }}
              />
            ))}
          </ol>
        ) : null}
      </Section>
      <div className={styles.end}>
        <Button
          kind="primary"
          size="bench"
          pending={pending}
          disabled={draft.lines.length === 0}
          onClick={receive}
        >
          {pieces === 0 ? 'Receive' : `Receive ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`}
        </Button>
        {draft.lines.length > 0 ? (
          <ConfirmDialog
            title="Throw away what was entered?"
            confirm="Throw it away"
            danger
            trigger={{ label: 'Throw away', kind: 'quiet', size: 'bench' }}
            onConfirm={() => {
              clear();
              setProblems([]);
            }}
          >
            <p>{`${draft.lines.length === 1 ? 'One line' : `${draft.lines.length} lines`} entered here, not received.`}</p>
          </ConfirmDialog>
        ) : null}
        <p className={styles.soft}>Kept in this browser as you type. All lines are received, or none.</p>
      </div>
    </div>
  );
}
