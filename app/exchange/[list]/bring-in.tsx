'use client';

import { useRouter } from 'next/navigation';
import { type ChangeEvent, type ReactNode, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Disclosure } from '@/app/_ui/disclosure';
import { Section } from '@/app/_ui/section';
import { fileAsBase64 } from '@/app/cases/import/file-as-base64';
import { ProblemTable } from '@/app/cases/import/problem-table';
import { EXCHANGE_LIMITS } from '@/lib/exchange/limits';
import type { ListKind } from '@/lib/exchange/list';
import { exchangeWords, fileWords } from '@/lib/wording/exchange';
import { ChoiceFields } from './choice-fields';
import { ColumnFields } from './column-fields';
import styles from './exchange.module.css';
import type { Choices, ExchangeView } from './exchange-view';
import { LineTable } from './line-table';
import { Questions } from './questions';
import { sendExchange } from './send-exchange';
import { canBringIn, Verdict } from './verdict';

const NOTHING_CHOSEN: Choices = {
  sheet: null,
  encoding: null,
  columns: {},
  dateOrder: null,
  decimal: null,
  repaired: [],
  kept: [],
  empty: 'keep',
  newMakers: [],
  more: null,
  fewer: null,
  note: '',
};

/** Takes a list: first says what would become of everything in it, and brings it in only when told so. */
export function BringIn({ list, children }: { list: ListKind; children: ReactNode }) {
  const router = useRouter();
  const [file, setFile] = useState<string | null>(null);
  const [choices, setChoices] = useState(NOTHING_CHOSEN);
  const [view, setView] = useState<ExchangeView | null>(null);
  const [wrong, setWrong] = useState<string[]>([]);
  const [pending, setPending] = useState(false);

  async function ask(what: string, how: Choices, seen: ExchangeView['seen'] | null) {
    setPending(true);
    const sent = await sendExchange(list, { file: what, choices: how, seen });
    setPending(false);
    setWrong(sent.ok ? [] : sent.sentences);
    // what could not be read or was not brought in is not shown as if it still held
    setView(sent.ok ? sent.value : null);
    if (sent.ok && sent.value.done !== null) router.refresh();
  }

  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const chosen = event.target.files?.[0];
    if (!chosen) return;
    setView(null);
    setFile(null);
    setChoices(NOTHING_CHOSEN);
    if (chosen.size > EXCHANGE_LIMITS.bytes)
      return setWrong([fileWords({ code: 'too-large', bytes: chosen.size })]);
    const taken = await fileAsBase64(chosen);
    setFile(taken);
    await ask(taken, NOTHING_CHOSEN, null);
  }

  async function change(part: Partial<Choices>) {
    const next = { ...choices, ...part };
    setChoices(next);
    if (file !== null) await ask(file, next, null);
  }

  const asked = view === null || view.done !== null ? null : { view, choices, pending, onChange: change };
  return (
    <div className={styles.flow}>
      <Section title="The file" note={exchangeWords.limits}>
        <div className={styles.part}>
          <label className={styles.fileChoice}>
            <span>{file === null ? 'Choose the file' : 'Choose the file, or another'}</span>
            <input
              type="file"
              accept=".csv,.txt,.tsv,.xlsx,text/csv"
              // the same file may be chosen again once it was put right
              onClick={(event) => {
                event.currentTarget.value = '';
              }}
              onChange={choose}
              disabled={pending}
            />
          </label>
          <Disclosure summary="The columns, and what they say">{children}</Disclosure>
          {wrong.length > 0 ? (
            <div role="alert" className={styles.wrong}>
              <p>
                <strong>Nothing was brought in.</strong>
              </p>
              <ul>
                {wrong.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
              {file === null ? null : (
                <ButtonRow>
                  <Button pending={pending} onClick={() => ask(file, choices, null)}>
                    Try it again
                  </Button>
                </ButtonRow>
              )}
            </div>
          ) : null}
        </div>
      </Section>
      {view === null ? null : (
        <>
          <Verdict view={view}>
            {canBringIn(view) && file !== null ? (
              <ButtonRow>
                <Button kind="primary" pending={pending} onClick={() => ask(file, choices, view.seen)}>
                  {`Bring in ${view.counts.new + view.counts.changed}`}
                </Button>
              </ButtonRow>
            ) : null}
          </Verdict>
          {asked === null ? null : (
            <>
              <ChoiceFields {...asked} />
              <ColumnFields {...asked} />
              <Questions {...asked} />
            </>
          )}
          {view.problems.length > 0 ? <ProblemTable lines={view.problems} /> : null}
          {view.lines.length > 0 ? (
            <LineTable lines={view.lines} more={view.moreLines} done={view.done !== null} />
          ) : null}
        </>
      )}
    </div>
  );
}
