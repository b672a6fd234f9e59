import type { ReactNode } from 'react';
import { classNames } from './class-names';
import { Glyph } from './glyph';
import styles from './status.module.css';
import type { Tone } from './tone';

/**
 * How something stands: a word, a shape and a colour together.
 *
 * @param tone     which of the five
 * @param children the word or short phrase; always there
 * @param look     `tag` (default, tinted), `plain` (no tint: in running text and dense tables) or `strong` (filled: one per screen)
 */
export function Status({
  tone,
  children,
  look = 'tag',
}: {
  tone: Tone;
  children: ReactNode;
  look?: 'tag' | 'plain' | 'strong';
}) {
  return (
    <span className={classNames(styles.status, styles[tone], styles[look])}>
      <Glyph tone={tone} />
      <span>{children}</span>
    </span>
  );
}
