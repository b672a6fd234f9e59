import type { Tried } from '@/app/_server/fit/try-fit-rule';
import { Section } from '@/app/_ui/section';
import styles from './condition-editor.module.css';

/** The rule in plain words, and what it would change in the catalogue. */
export function ReadBack({ tried }: { tried: Tried | null }) {
  return (
    <div aria-live="polite">
      {tried ? (
        <Section title="Read back" look="sheet">
          <div className={styles.readBack}>
            <p>
              <strong>Requires:</strong> {tried.requires}
            </p>
            <p>
              <strong>Only where:</strong> {tried.appliesWhen}
            </p>
            <p>{tried.effect}</p>
            {tried.counts.length > 0 ? (
              <ul>
                {tried.counts.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            ) : null}
            {tried.groups.length > 0 ? (
              <ul>
                {tried.groups.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            ) : null}
          </div>
        </Section>
      ) : null}
    </div>
  );
}
