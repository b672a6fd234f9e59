'use client';

import { useEffect, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Dialog } from '@/app/_ui/dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { TextField } from '@/app/_ui/text-field';
import type { Home } from '@/lib/bench/act';
import { textProblems } from '@/lib/plans/checkConstruct';
import type { TurnStep } from '@/lib/sets/setState';
import { TURN_STEP_WORDS } from '@/lib/wording/sets';
import styles from './bench.module.css';

interface PossibleHome {
  setId: string;
  code: string;
  step: TurnStep;
  place: string | null;
  over: number;
}

/** Where a piece belongs that lies in the wrong place: another set that lacks it, or elsewhere in words. */
export function HomeDialog({
  countId,
  itemId,
  name,
  most,
  open,
  onOpen,
  onHome,
}: {
  countId: string;
  itemId: string;
  name: string;
  /** Pieces that can be taken. */
  most: number;
  open: boolean;
  onOpen: (open: boolean) => void;
  onHome: (pieces: number, home: Home) => void;
}) {
  return (
    <Dialog title={`Take home: ${name}`} open={open} onOpen={onOpen}>
      {(close) => (
        <HomeForm
          {...{ countId, itemId, most }}
          onHome={(pieces, home) => {
            onHome(pieces, home);
            close();
          }}
        />
      )}
    </Dialog>
  );
}

const ELSEWHERE = 'elsewhere';

function HomeForm({
  countId,
  itemId,
  most,
  onHome,
}: {
  countId: string;
  itemId: string;
  most: number;
  onHome: (pieces: number, home: Home) => void;
}) {
  const [homes, setHomes] = useState<PossibleHome[] | null>(null);
  const [chosen, setChosen] = useState<string | null>(null);
  const [where, setWhere] = useState('');
  const [pieces, setPieces] = useState(String(most));
  const [wrong, setWrong] = useState<Record<string, string[]>>({});

  useEffect(() => {
    const stop = new AbortController();
    fetch(`/api/v1/bench/${countId}/homes?item=${itemId}`, { signal: stop.signal })
      .then((answer) => answer.json() as Promise<{ homes: PossibleHome[] }>)
      .then(({ homes: found }) => setHomes(found))
      .catch(() => setHomes([]));
    return () => stop.abort();
  }, [countId, itemId]);

  function send(): void {
    const count = Number(pieces);
    const text = textProblems(where, ['where']).map(({ message }) => message);
    const found: Record<string, string[]> = {};
    if (!/^\d{1,3}$/.test(pieces) || count < 1 || count > most) found.pieces = [`From 1 to ${most}.`];
    if (chosen === null) found.home = ['Choose where it belongs.'];
    if (chosen === ELSEWHERE && where.trim() === '') found.where = ['Say where.'];
    else if (text.length > 0) found.where = text;
    setWrong(found);
    if (Object.keys(found).length > 0 || chosen === null) return;
    onHome(
      count,
      chosen === ELSEWHERE
        ? { kind: 'elsewhere', where: where.trim() }
        : { kind: 'set', setId: chosen as never },
    );
  }

  return (
    <div className={styles.form} data-size="bench">
      {/* nothing is offered before all of it is there: what moves under a finger is pressed by mistake */}
      {homes === null ? (
        <p role="status">Looking for sets that hold it…</p>
      ) : (
        <RadioGroup
          name="home"
          label="Its home"
          problems={wrong.home}
          value={chosen}
          onValue={setChosen}
          choices={[
            ...homes.map(({ setId, code, over, step, place }) => ({
              value: setId,
              label: over < 0 ? `${code} lacks ${-over}` : `${code} holds this item`,
              note: [TURN_STEP_WORDS[step], place].filter(Boolean).join(', '),
            })),
            { value: ELSEWHERE, label: 'Elsewhere' },
          ]}
        />
      )}
      {chosen === ELSEWHERE ? (
        <TextField
          name="where"
          label="Where"
          maxLength={120}
          value={where}
          onValue={setWhere}
          problems={wrong.where}
        />
      ) : null}
      <TextField
        name="home-pieces"
        label="Pieces"
        width="number"
        value={pieces}
        onValue={setPieces}
        problems={wrong.pieces}
      />
      <ButtonRow>
        <Button kind="primary" size="bench" onClick={send}>
          They are on their way home
        </Button>
      </ButtonRow>
    </div>
  );
}
