import type { ReactNode } from 'react';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import styles from './import.module.css';
import type { ImportView, LineKind } from './import-view';

/** What importing would do in all, or has done, and how the file was understood. */
export function Verdict({ view, children }: { view: ImportView; children: ReactNode }) {
  const { tone, word, sentence } = verdictOf(view);
  return (
    <Section title={view.done === null ? 'What would happen' : 'What was done'}>
      <div className={styles.part}>
        <div className={styles.verdict} role="status">
          <Status tone={tone} look="strong">
            {word}
          </Status>
          <span>{sentence}</span>
        </div>
        {view.planned === null ? null : <p>{`Planned anew: ${view.planned}`}</p>}
        {children}
        <ul className={styles.soft}>
          {view.understood.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        {view.lost.length > 0 ? (
          <div>
            <p>
              <Status tone="attention">Promised sets that do not move along</Status>
            </p>
            <ul>
              {view.lost.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </div>
        ) : null}
        {view.notNamed.length > 0 ? (
          <p>
            Not named by the file, on its theatres and days: {view.notNamed.join('; ')}. They stay as they
            are: an import cancels nothing.
          </p>
        ) : null}
      </div>
    </Section>
  );
}

function verdictOf(view: ImportView): { tone: Tone; word: string; sentence: string } {
  const { done, problems, importedBefore, lines, links } = view;
  if (done !== null && done.booked + done.moved + done.linked > 0)
    return { tone: 'good', word: 'Imported', sentence: `${done.booked} booked, ${done.moved} moved.` };
  if (importedBefore !== null)
    return {
      tone: 'neutral',
      word: 'Imported already',
      sentence: `This very file was imported ${importedBefore}. Nothing is done a second time.`,
    };
  if (problems.length > 0)
    return {
      tone: 'stop',
      word: problems.length === 1 ? 'One problem' : `${problems.length} problems`,
      sentence: 'Nothing is imported in part: put them right in the file or by the choices below.',
    };
  const count = (kind: LineKind) => lines.filter((line) => line.kind === kind).length;
  if (count('new') + count('moved') + links === 0)
    return {
      tone: 'neutral',
      word: 'Nothing to do',
      sentence: 'The list here says the same already.',
    };
  return {
    tone: 'attention',
    word: 'Tried, not imported yet',
    sentence: `${count('new')} new, ${count('moved')} moved, ${count('unchanged')} as they are.`,
  };
}
