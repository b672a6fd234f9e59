'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Dialog } from '@/app/_ui/dialog';
import { FieldGrid, FieldGridRow } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { TextField } from '@/app/_ui/text-field';
import type { SteriliserOnFile } from '@/db/queries/loads/loadBoard';
import { PUBLISHED_BANDS } from '@/lib/calculations/thermalDose/published';
import { bandWords } from '@/lib/wording/thermal-dose';
import styles from '../loads/loads.module.css';
import { sendLoad } from '../loads/send-load';

interface ProgrammeText {
  name: string;
  lowC: string;
  highC: string;
  minutes: string;
}

const textOf = ({ programmes }: SteriliserOnFile): ProgrammeText[] =>
  programmes.map(({ name, bandMillicelsius: [low, high], holdSeconds }) => ({
    name,
    lowC: String(low / 1000),
    highC: high === null ? '' : String(high / 1000),
    minutes: String(holdSeconds / 60),
  }));

/** What is typed as a number in thousandths or sixtieths; what is none is sent as it is, so that the refusal comes from one place. */
function scaled(text: string, by: number): unknown {
  const bare = text.trim().replace(',', '.');
  if (bare === '') return null;
  const value = Number(bare);
  return Number.isFinite(value) ? Math.round(value * by) : text;
}

/** Adds a steriliser, or changes one: name, programmes, band and holding time. */
export function SteriliserForm({ steriliser }: { steriliser: SteriliserOnFile | null }) {
  const router = useRouter();
  const begin = () => ({
    name: steriliser?.name ?? '',
    programmes: steriliser === null ? [blank()] : textOf(steriliser),
  });
  const [entry, setEntry] = useState(begin);
  const [problems, setProblems] = useState<{ path: string; sentence: string }[]>([]);
  const [pending, setPending] = useState(false);

  const setProgramme = (at: number, change: Partial<ProgrammeText>) =>
    setEntry((old) => ({
      ...old,
      programmes: old.programmes.map((one, place) => (place === at ? { ...one, ...change } : one)),
    }));

  async function save(close: () => void) {
    setPending(true);
    const sent = await sendLoad(
      steriliser === null ? '/api/v1/sterilisers' : `/api/v1/sterilisers/${steriliser.id}`,
      {
        entry: {
          name: entry.name,
          programmes: entry.programmes.map(({ name, lowC, highC, minutes }) => ({
            name,
            bandMillicelsius: [scaled(lowC, 1000), scaled(highC, 1000)],
            holdSeconds: scaled(minutes, 60),
          })),
        },
      },
    );
    setPending(false);
    if (!sent.ok)
      return setProblems(
        sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentences.join(' ') }],
      );
    router.refresh();
    close();
  }

  return (
    <Dialog
      title={steriliser === null ? 'A steriliser' : `Change ${steriliser.name}`}
      width="wide"
      trigger={{
        label: steriliser === null ? 'Add a steriliser' : 'Change',
        size: 'bench',
        kind: steriliser === null ? 'primary' : 'plain',
      }}
      onOpen={(open) => {
        if (!open) return;
        setEntry(begin());
        setProblems([]);
      }}
    >
      {(close) => (
        <div className={styles.form} data-size="bench">
          {problems.length > 0 ? <ProblemSummary problems={problems} /> : null}
          <TextField
            name="name"
            label="Name"
            value={entry.name}
            onValue={(name) => setEntry((old) => ({ ...old, name }))}
            problems={problemsAt(problems, 'name')}
            maxLength={60}
          />
          {entry.programmes.map((one, at) => {
            const path = `programmes.${at}`;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: programmes have no other name while they are typed
              <FieldGrid key={at} min="narrow">
                <FieldGridRow>
                  <TextField
                    name={`${path}.name`}
                    label={`Programme ${at + 1}`}
                    value={one.name}
                    onValue={(name) => setProgramme(at, { name })}
                    problems={problemsAt(problems, `${path}.name`)}
                    maxLength={60}
                  />
                </FieldGridRow>
                <NumberField
                  name={`${path}.bandMillicelsius.0`}
                  label="Lowest"
                  unit="°C"
                  hint="The lower end of the band."
                  value={one.lowC}
                  onValue={(lowC) => setProgramme(at, { lowC })}
                  problems={problemsAt(problems, `${path}.bandMillicelsius.0`)}
                />
                <NumberField
                  name={`${path}.bandMillicelsius.1`}
                  label="Highest"
                  unit="°C"
                  hint="Blank where none is stated."
                  value={one.highC}
                  onValue={(highC) => setProgramme(at, { highC })}
                  problems={problemsAt(problems, `${path}.bandMillicelsius.1`)}
                />
                <NumberField
                  name={`${path}.holdSeconds`}
                  label="Holding time"
                  unit="min"
                  hint="At least so long."
                  value={one.minutes}
                  onValue={(minutes) => setProgramme(at, { minutes })}
                  problems={problemsAt(problems, `${path}.holdSeconds`)}
                />
                {entry.programmes.length > 1 ? (
                  <Button
                    onClick={() =>
                      setEntry((old) => ({
                        ...old,
                        programmes: old.programmes.filter((_, place) => place !== at),
                      }))
                    }
                  >
                    {`Remove programme ${at + 1}`}
                  </Button>
                ) : null}
              </FieldGrid>
            );
          })}
          <div>
            <p>Published bands, to be held against the maker’s instructions:</p>
            <ul className={styles.plain}>
              {PUBLISHED_BANDS.map((band) => (
                <li key={band.lowC}>
                  {`${bandWords(band)} (${band.source}${band.fromMemory ? ', from memory' : ''})`}
                </li>
              ))}
            </ul>
          </div>
          <ButtonRow>
            <Button
              size="bench"
              onClick={() => setEntry((old) => ({ ...old, programmes: [...old.programmes, blank()] }))}
            >
              Another programme
            </Button>
            <Button kind="primary" size="bench" pending={pending} onClick={() => save(close)}>
              Save
            </Button>
          </ButtonRow>
        </div>
      )}
    </Dialog>
  );
}

const blank = (): ProgrammeText => ({ name: '', lowC: '', highC: '', minutes: '' });
