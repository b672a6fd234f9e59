'use client';

import { useEffect, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Dialog } from '@/app/_ui/dialog';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import type { BenchEntry, RefillSource, SentEntry } from '@/lib/bench/act';
import type { StockForm } from '@/lib/stock/stock';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import { FORM_WORDS } from '@/lib/wording/stock';
import { sendJson } from '../../_parts/send-json';
import styles from './bench.module.css';
import type { BenchLine } from './bench-subject';

interface Lot {
  stockId: string;
  form: StockForm;
  lot: string | null;
  useBy: string | null;
  quantity: number;
  owner: string;
  place: string;
  metres: number;
}

const OTHER = 'other';
const LATER = 'later';
const NOW = 'now';

/**
 * Puts pieces into a line: from a lot of the shelf, the first use-by first, or from elsewhere in words. It goes to the
 * server at once, with the second person's proof where one stands for it here; nothing of it waits in this browser.
 */
export function RefillDialog({
  countId,
  line,
  short,
  open,
  onOpen,
  makeEntry,
  onDone,
}: {
  countId: string;
  line: BenchLine;
  short: number;
  open: boolean;
  onOpen: (open: boolean) => void;
  makeEntry: (act: SentEntry['act']) => SentEntry;
  onDone: (entry: BenchEntry) => void;
}) {
  const [lots, setLots] = useState<Lot[] | null>(null);
  const [from, setFrom] = useState<string | null>(null);
  const [where, setWhere] = useState('');
  const [pieces, setPieces] = useState(short > 0 ? String(short) : '');
  const [second, setSecond] = useState<string | null>(line.lookAlikes.length === 0 ? LATER : null);
  const [wrong, setWrong] = useState<Record<string, string[]>>({});
  const [sending, setSending] = useState(false);
  /** Made once: whatever is pressed again, it is put in once. */
  const [entry, setEntry] = useState<SentEntry | null>(null);
  const [proving, setProving] = useState(false);

  useEffect(() => {
    const stop = new AbortController();
    fetch(`/api/v1/bench/${countId}/shelf?line=${line.id}`, { signal: stop.signal })
      .then((answer) => answer.json() as Promise<{ lots: Lot[] }>)
      .then(({ lots: found }) => setLots(found))
      .catch(() => setLots([]));
    return () => stop.abort();
  }, [countId, line.id]);

  function sourceOf(): RefillSource | null {
    if (from === OTHER) return { kind: 'other', where: where.trim() };
    const lot = lots?.find(({ stockId }) => stockId === from);
    return lot
      ? {
          kind: 'stock',
          stockId: lot.stockId as never,
          form: lot.form,
          lot: lot.lot,
          useBy: lot.useBy as never,
        }
      : null;
  }

  function begin(): void {
    const source = sourceOf();
    const count = Number(pieces);
    const found: Record<string, string[]> = {};
    if (source === null) found.from = ['Choose where the pieces come from.'];
    if (source?.kind === 'other' && source.where === '') found.where = ['Say where from.'];
    if (!/^\d{1,3}$/.test(pieces) || count < 1) found.pieces = ['Whole pieces, at least 1.'];
    if (second === null) found.second = ['Say who looks at it beside you.'];
    setWrong(found);
    if (Object.keys(found).length > 0 || source === null) return;
    const act = { kind: 'refill' as const, lineId: line.id as never, pieces: count, from: source };
    const same = entry && JSON.stringify(entry.act) === JSON.stringify(act);
    const made = same ? entry : makeEntry(act);
    setEntry(made);
    if (second === NOW) setProving(true);
    else void send(made, null).then((sentence) => sentence && setWrong({ form: [sentence] }));
  }

  async function send(made: SentEntry, proof: Proof | null): Promise<string | undefined> {
    setSending(true);
    try {
      const answer = await sendJson(`/api/v1/bench/${countId}/refill`, {
        entry: made,
        ...(proof ? { second: proof } : {}),
      });
      if (!answer.ok) return answer.sentence;
      onDone(made as BenchEntry);
      onOpen(false);
      return undefined;
    } catch {
      return 'The server can’t be reached. Try again: it is put in once, however often you send it.';
    } finally {
      setSending(false);
    }
  }

  return (
    <>
      <Dialog title={`Refill: ${line.name}`} open={open && !proving} onOpen={onOpen} width="wide">
        <div className={styles.form} data-size="bench">
          {wrong.form ? (
            <p role="alert">
              <Status tone="stop">Not put in</Status> {wrong.form.join(' ')}
            </p>
          ) : null}
          <RadioGroup
            name="refill-from"
            label="From"
            hint="the first use-by first; what is past use-by or held is not here"
            problems={wrong.from}
            value={from}
            onValue={setFrom}
            choices={[
              ...(lots ?? []).map((lot) => ({
                value: lot.stockId,
                label: `${lot.place}, ${lot.metres} m: lot ${lot.lot ?? 'not stated'}`,
                note: `${FORM_WORDS[lot.form]} · ${lot.useBy ? `use by ${lot.useBy}` : 'no use-by stated'} · ${lot.quantity} there`,
              })),
              { value: OTHER, label: 'Elsewhere', note: 'its lot is then not known' },
            ]}
          />
          {lots === null ? <p>Looking at the shelf…</p> : null}
          {lots?.length === 0 ? <p>No lot of it on the shelf may be put in.</p> : null}
          {from === OTHER ? (
            <TextField
              name="refill-where"
              label="Where from"
              maxLength={120}
              value={where}
              onValue={setWhere}
              problems={wrong.where}
            />
          ) : null}
          <TextField
            name="refill-pieces"
            label="Pieces put in"
            width="number"
            value={pieces}
            onValue={setPieces}
            problems={wrong.pieces}
          />
          {line.lookAlikes.length > 0 ? (
            <RadioGroup
              name="refill-second"
              label="Two people look at this one"
              hint={`easily taken for ${line.lookAlikes.join(', ')}`}
              problems={wrong.second}
              value={second}
              onValue={setSecond}
              choices={[
                { value: NOW, label: 'A second person looks at it here, now' },
                { value: LATER, label: 'By the blind second check', note: 'the set is not packed before' },
              ]}
            />
          ) : null}
          <ButtonRow>
            <Button kind="primary" size="bench" pending={sending} onClick={begin}>
              {second === NOW ? 'Put in, with the second person…' : 'Put in'}
            </Button>
          </ButtonRow>
        </div>
      </Dialog>
      {proving && entry ? (
        <ProofDialog
          title={`Second person: ${line.name}`}
          meaning={`${MEANING_WORDS.iRefilled} this line together with the other, and looked at each piece`}
          confirm="It is the right piece"
          open
          onOpen={setProving}
          who="another"
          onProof={(proof) => send(entry, proof)}
        />
      ) : null}
    </>
  );
}
