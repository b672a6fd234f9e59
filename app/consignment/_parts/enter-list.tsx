'use client';

import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { newClientId } from '@/app/_outbox/new-id';
import { useScans } from '@/app/_scan/use-scans';
import { problemsAt } from '@/app/_ui/field-problem';
import { Segmented } from '@/app/_ui/radio-group';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import { ActForm } from '@/app/restock/_parts/act-form';
import { useRestockAct } from '@/app/restock/_parts/use-restock-act';
import styles from './consignment.module.css';
import { scannedInto } from './scanned-list';

type How = 'list' | 'count';

/** The list as text: pasted, loaded from a file, or written line by line as packs are scanned. */
export function EnterList({
  owner,
  today,
  codes,
}: {
  owner: { id: string; name: string };
  today: string;
  /** Codes of the catalogue by item. */
  codes: Record<string, string>;
}) {
  const router = useRouter();
  const { send, pending, problems } = useRestockAct();
  const id = useRef<string | null>(null);
  const [how, setHow] = useState<How | null>(null);
  const [listedOn, setListedOn] = useState(today);
  const [text, setText] = useState('');
  const [said, setSaid] = useState('');

  useScans(
    ({ meaning }) => {
      if (meaning.kind !== 'item') {
        setSaid('That is no pack of an item in the catalogue: nothing was counted.');
        return 'taken';
      }
      const code = codes[meaning.itemId] ?? meaning.itemId;
      setText((before) => scannedInto(before, { code, lot: meaning.lot, pieces: meaning.quantity ?? 1 }));
      setHow('count');
      setSaid(`${code}, ${meaning.lot === null ? 'no lot on it' : `lot ${meaning.lot}`}: counted.`);
      return 'taken';
    },
    { takes: 'everything' },
  );

  async function load(file: File | undefined) {
    if (!file) return;
    setText(await file.text());
    setHow('list');
    setSaid(`${file.name} is loaded.`);
  }

  async function enter() {
    id.current ??= newClientId('reconciliation');
    const done = await send<{ id: string; number: string }>(
      '/api/v1/consignment/reconciliations',
      { id: id.current, lenderId: owner.id, how, listedOn, text },
      ({ number }) => `${number} is set beside our record.`,
    );
    if (done) router.push(`/consignment/reconciliations/${done.id}`);
  }

  return (
    <ActForm confirm="Set it beside our record" pending={pending} problems={problems} onSend={enter}>
      <Segmented<How>
        name="how"
        label="What it is"
        required
        choices={[
          { value: 'list', label: 'their list' },
          { value: 'count', label: 'counted here, on the shelf' },
        ]}
        value={how}
        onValue={setHow}
        problems={problemsAt(problems, 'how')}
      />
      <TextField
        name="listedOn"
        label="Of which day"
        hint="as 2028-03-31"
        required
        width="code"
        maxLength={10}
        value={listedOn}
        onValue={setListedOn}
        problems={problemsAt(problems, 'listedOn')}
      />
      <label className={styles.file}>
        <span>Load a file (CSV)</span>
        <input
          type="file"
          accept=".csv,.txt,text/csv,text/plain"
          onChange={(event) => load(event.target.files?.[0])}
        />
      </label>
      <TextArea
        name="text"
        label="The list"
        hint="A heading, then a line for each lot: code or GTIN; lot; quantity. Commas, semicolons or tabs; the same lot on several lines is added up."
        rows={12}
        maxLength={200_000}
        value={text}
        onValue={setText}
        problems={problemsAt(problems, 'text')}
      />
      <p role="status">{said}</p>
    </ActForm>
  );
}
