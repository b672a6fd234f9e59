import { Disclosure } from '@/app/_ui/disclosure';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { LoadOnFile } from '@/db/queries/loads/findLoad';
import { type CycleSummary, cycleOutcome } from '@/lib/loads/cycle/summary';
import { bandOf } from '@/lib/loads/programme';
import { CYCLE_OUTCOME_TONES, CYCLE_OUTCOME_WORDS } from '@/lib/wording/loads';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import { bandWords, durationWords } from '@/lib/wording/thermal-dose';
import styles from '../loads.module.css';
import { CycleChart } from './cycle-chart';
import { CycleImport } from './cycle-import';

/** The record of the cycle: its drawing, its figures with how they were worked, and whether the programme was kept. */
export function CycleSection({ load, mayImport, at }: { load: LoadOnFile; mayImport: boolean; at: string }) {
  const { cycle } = load.facts;
  const open = load.state === 'running' || load.state === 'awaitingAcceptance';
  return (
    <Section
      title="Cycle"
      actions={
        mayImport && open ? (
          <CycleImport loadId={load.id} number={load.number} again={cycle !== null} />
        ) : null
      }
    >
      {cycle === null ? (
        <p className={styles.soft}>No record of the cycle is imported.</p>
      ) : (
        <div className={styles.part}>
          <CycleChart readings={load.readings} summary={cycle} />
          <CycleFigures cycle={cycle} />
          <Disclosure summary="How the record was read">
            <ul className={styles.plain}>
              {cycle.understood.map((line) => (
                <li key={line}>{line}</li>
              ))}
              <li>{`Imported by ${load.importedBy ?? 'somebody'}, ${momentWords(cycle.importedAt, at)}${cycle.fileName === null ? '' : `, from “${cycle.fileName}”`}.`}</li>
            </ul>
          </Disclosure>
        </div>
      )}
    </Section>
  );
}

function CycleFigures({ cycle }: { cycle: CycleSummary }) {
  const { dose, missing } = cycle;
  const outcome = cycleOutcome(cycle);
  const holding = dose?.holding ?? null;
  const least = missing.length > 0 ? 'at least; the log has gaps' : undefined;
  return (
    <>
      <p>
        <Status tone={CYCLE_OUTCOME_TONES[outcome]}>{capitalised(CYCLE_OUTCOME_WORDS[outcome])}</Status>{' '}
        {bandWords(bandOf(cycle.programme))}
      </p>
      <FigureRow>
        <Figure
          label="Longest in the band"
          value={holding === null ? null : durationWords(holding.longestSeconds)}
          size="medium"
          note={
            holding?.lowestC === null || holding === null
              ? 'no reading lies in it'
              : `${holding.lowestC} to ${holding.highestC} °C`
          }
        />
        <Figure
          label="F0"
          value={dose === null ? null : dose.f0Minutes.toFixed(1)}
          unit="min"
          size="medium"
          note={least ?? `reference ${dose?.f0ReferenceC ?? ''} °C`}
        />
        <Figure
          label="A0"
          value={dose === null ? null : Math.round(dose.a0Seconds).toLocaleString('en-GB')}
          unit="s"
          size="medium"
          note={least ?? 'reference 80 °C'}
        />
      </FigureRow>
      {missing.length > 0 ? <p className={styles.soft}>{`Not established: ${someOf(missing)}.`}</p> : null}
    </>
  );
}

const MOST_SAID = 4;

function someOf(all: readonly string[]): string {
  const more = all.length - MOST_SAID;
  return more > 0 ? `${all.slice(0, MOST_SAID).join('; ')} and ${more} more` : all.join('; ');
}
