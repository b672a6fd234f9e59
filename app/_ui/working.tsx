import Link from 'next/link';
import styles from './working.module.css';

export type WorkingInput = { label: string; value: string | number; unit?: string };

/**
 * What a figure rests on. `calculation` is the name in the registry; `input` is the JSON that repeats the figure on the
 * what-if page and over the API.
 */
export type WorkingView = {
  calculation: string;
  inputs: readonly WorkingInput[];
  formula?: string;
  steps?: readonly string[];
  assumptions?: readonly string[];
  sources?: readonly string[];
  input?: unknown;
  /** The set or case whose figure it is: opens the what-if page on an input too long for an address. */
  subject?: string;
};

// Longer than this and browsers or proxies may cut the address; the what-if page then finds the input by its subject.
const longestInputInAddress = 6000;

/** The what-if page of a calculation, opened with this input: in the address where it fits, or else by whose it is. */
export function workingHref(calculation: string, input?: unknown, subject?: string): string {
  const page = `/calculations/${encodeURIComponent(calculation)}`;
  if (input === undefined) return page;
  const text = encodeURIComponent(JSON.stringify(input));
  if (text.length <= longestInputInAddress) return `${page}?input=${text}`;
  return subject ? `${page}?of=${encodeURIComponent(subject)}` : page;
}

/** "Show the working": a closed disclosure with inputs, formula, assumptions, sources and the way to vary them. */
export function Working({
  working,
  label = 'Show the working',
  open = false,
}: {
  working: WorkingView;
  label?: string;
  open?: boolean;
}) {
  const { inputs, formula, steps = [], assumptions = [], sources = [] } = working;
  return (
    <details className={styles.working} open={open}>
      <summary>{label}</summary>
      <div className={styles.body}>
        {inputs.length > 0 ? (
          <dl className={styles.inputs}>
            {inputs.map((input) => (
              <div key={input.label}>
                <dt>{input.label}</dt>
                <dd>
                  {input.value}
                  {input.unit ? <span className={styles.unit}> {input.unit}</span> : null}
                </dd>
              </div>
            ))}
          </dl>
        ) : null}
        {formula ? <p className={styles.formula}>{formula}</p> : null}
        {steps.length > 0 ? (
          <ol className={styles.lines}>
            {steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        ) : null}
        <Lines heading="Assumes" lines={assumptions} />
        <Lines heading="Source" lines={sources} />
        <p data-print="no">
          <Link
            className={styles.link}
            href={workingHref(working.calculation, working.input, working.subject)}
          >
            Vary this in “{working.calculation}”
          </Link>
        </p>
      </div>
    </details>
  );
}

function Lines({ heading, lines }: { heading: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <div>
      <p className={styles.heading}>{heading}</p>
      <ul className={styles.lines}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
