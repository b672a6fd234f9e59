'use client';

import { useRouter } from 'next/navigation';
import { type ChangeEvent, type ReactNode, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Disclosure } from '@/app/_ui/disclosure';
import { LinkButton } from '@/app/_ui/link-button';
import { Section } from '@/app/_ui/section';
import { IMPORT_LIMITS } from '@/lib/theatre/import/table';
import { wallClock } from '@/lib/theatre/localTime';
import { fileFaultWords } from '@/lib/wording/list-import';
import { ChoiceFields } from './choice-fields';
import { fileAsBase64 } from './file-as-base64';
import styles from './import.module.css';
import type { Choices, ImportView } from './import-view';
import { LineTable } from './line-table';
import { ProblemTable } from './problem-table';
import { sendList } from './send-list';
import { Verdict } from './verdict';

const NOTHING_CHOSEN: Choices = {
  sheet: null,
  columns: {},
  dateOrder: null,
  repeatedHour: null,
  urgencyWhereNone: null,
};

interface Chosen {
  name: string;
  file: string;
}

/** Takes a theatre list: first says what would become of every row, and imports it only when told so. */
export function ListImport({ limits, children }: { limits: string; children: ReactNode }) {
  const router = useRouter();
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [choices, setChoices] = useState(NOTHING_CHOSEN);
  const [view, setView] = useState<ImportView | null>(null);
  const [wrong, setWrong] = useState<string[]>([]);
  const [pending, setPending] = useState(false);

  async function ask(what: Chosen, how: Choices, digest: string | null) {
    setPending(true);
    const sent = await sendList({ file: what.file, choices: how, digest });
    setPending(false);
    setWrong(sent.ok ? [] : sent.sentences);
    // what could not be read or was not imported is not shown as if it still held
    setView(sent.ok ? sent.value : null);
    if (sent.ok && sent.value.done !== null) router.refresh();
  }

  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0];
    if (!file) return;
    setView(null);
    setChosen(null);
    setChoices(NOTHING_CHOSEN);
    if (file.size > IMPORT_LIMITS.bytes)
      return setWrong([fileFaultWords({ code: 'too-large', bytes: file.size })]);
    const taken = { name: file.name, file: await fileAsBase64(file) };
    setChosen(taken);
    await ask(taken, NOTHING_CHOSEN, null);
  }

  async function change(part: Partial<Choices>) {
    const next = { ...choices, ...part };
    setChoices(next);
    if (chosen) await ask(chosen, next, null);
  }

  const tried = view !== null && view.done === null;
  return (
    <div className={styles.flow}>
      <Section title="The file" note={limits}>
        <div className={styles.part}>
          <p>
            A CSV, an XLSX workbook or a FHIR bundle (R4 or R5, JSON). Send no patient’s data: such columns
            are not read, but they are better left out. Nothing of the file itself is kept.
          </p>
          <label className={styles.fileChoice}>
            <span>{chosen === null ? 'Choose the file' : 'Choose the file, or another'}</span>
            <input
              type="file"
              accept=".csv,.txt,.tsv,.xlsx,.json,text/csv,application/json,application/fhir+json"
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
                <strong>Nothing was imported.</strong>
              </p>
              <ul>
                {wrong.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
              {chosen === null ? null : (
                <ButtonRow>
                  <Button pending={pending} onClick={() => ask(chosen, choices, null)}>
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
            <ButtonRow>
              {tried && chosen !== null && canImport(view) ? (
                <Button kind="primary" pending={pending} onClick={() => ask(chosen, choices, view.digest)}>
                  {importWords(view)}
                </Button>
              ) : null}
              {view.done === null ? null : <LinkButton href={listOf(view)}>To the theatre list</LinkButton>}
            </ButtonRow>
          </Verdict>
          {tried ? <ChoiceFields view={view} pending={pending} onChange={change} /> : null}
          {view.problems.length > 0 ? <ProblemTable lines={view.problems} /> : null}
          {view.lines.length > 0 ? <LineTable lines={view.lines} done={view.done !== null} /> : null}
        </>
      )}
    </div>
  );
}

const changing = ({ lines }: ImportView) => lines.filter(({ kind }) => kind !== 'unchanged').length;

/** The day of the first case of the file; without one, today. */
function listOf({ lines }: ImportView): string {
  const first = lines.map(({ startsAt }) => startsAt).sort()[0];
  return first === undefined ? '/theatre-list' : `/theatre-list?date=${wallClock(first).date}`;
}

/** Nothing is in the way, and there is something to do. */
const canImport = (view: ImportView) =>
  view.problems.length === 0 && view.importedBefore === null && (changing(view) > 0 || view.links > 0);

function importWords(view: ImportView): string {
  const count = changing(view);
  return count === 0 ? 'Import the row ids' : `Import ${count} ${count === 1 ? 'case' : 'cases'}`;
}
