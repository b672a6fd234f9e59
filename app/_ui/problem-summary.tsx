'use client';

import { useEffect, useRef } from 'react';
import { type FieldProblem, fieldId } from './field-problem';
import { Glyph } from './glyph';
import styles from './problem-summary.module.css';

/**
 * All problems of a form at once, above it, each linking to its field. Takes focus when problems appear, so a keyboard
 * or screen-reader user lands on them after sending.
 *
 * @param heading defaults to a count; a problem with an empty path is listed without a link
 */
export function ProblemSummary({
  problems,
  heading,
  focus = true,
}: {
  problems: readonly FieldProblem[];
  heading?: string;
  focus?: boolean;
}) {
  const box = useRef<HTMLDivElement>(null);
  const key = problems.map((problem) => `${problem.path}\n${problem.sentence}`).join('\n');

  useEffect(() => {
    if (focus && key !== '') box.current?.focus();
  }, [focus, key]);

  if (problems.length === 0) return null;
  const count = problems.length === 1 ? 'One thing to put right' : `${problems.length} things to put right`;
  return (
    <div ref={box} role="alert" tabIndex={-1} className={styles.summary}>
      <p className={styles.heading}>
        <Glyph tone="stop" /> {heading ?? count}
      </p>
      <ul>
        {problems.map((problem) => (
          <li key={`${problem.path}\n${problem.sentence}`}>
            {problem.path === '' ? (
              problem.sentence
            ) : (
              <a
                href={`#${fieldId(problem.path)}`}
                onClick={(event) => {
                  const field = document.getElementById(fieldId(problem.path));
                  if (!field) return;
                  event.preventDefault();
                  field.focus();
                  field.scrollIntoView({ block: 'center' });
                }}
              >
                {problem.sentence}
              </a>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}
