'use client';

import styles from './glyph.module.css';
import type { Tone } from './tone';

/**
 * The small geometric shape of a tone, 12 × 12. All are one size and weight, so none shouts by area:
 * a ring closed round a point (good), a half-filled lozenge (attention), a barred square (stop),
 * a broken ring (unknown), a short rule (neutral). Decorative: the word beside it carries the meaning.
 *
 * A client component so that it is sent as one, by its tone: a page is streamed in rows, and a row that ends within a drawing
 * would have it put together in the browser.
 */
export function Glyph({ tone }: { tone: Tone }) {
  return (
    <svg
      className={styles.glyph}
      viewBox="0 0 12 12"
      width="12"
      height="12"
      aria-hidden="true"
      focusable="false"
    >
      {shape(tone)}
    </svg>
  );
}

function shape(tone: Tone) {
  switch (tone) {
    case 'good':
      return (
        <>
          <circle cx="6" cy="6" r="4.75" fill="none" stroke="currentColor" strokeWidth="1.5" />
          <circle cx="6" cy="6" r="2.25" fill="currentColor" />
        </>
      );
    case 'attention':
      return (
        <>
          <path d="M6 .9 11.1 6 6 11.1 .9 6Z" fill="none" stroke="currentColor" strokeWidth="1.5" />
          <path d="M6 .9 11.1 6 6 11.1Z" fill="currentColor" />
        </>
      );
    case 'stop':
      return <path fillRule="evenodd" d="M1 1h10v10H1ZM3 5.1v1.8h6V5.1Z" fill="currentColor" />;
    case 'unknown':
      return (
        <circle
          cx="6"
          cy="6"
          r="4.75"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.5"
          strokeDasharray="3.2 1.77"
        />
      );
    case 'neutral':
      return <path d="M1.5 6h9" fill="none" stroke="currentColor" strokeWidth="1.75" />;
  }
}
