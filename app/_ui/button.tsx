'use client';

import type { ButtonHTMLAttributes, Ref } from 'react';
import styles from './button.module.css';
import { classNames } from './class-names';

export type ButtonKind = 'primary' | 'plain' | 'quiet' | 'danger';
export type ButtonSize = 'small' | 'regular' | 'bench';

export type ButtonProps = ButtonHTMLAttributes<HTMLButtonElement> & {
  kind?: ButtonKind;
  size?: ButtonSize;
  /** Work is under way: shown as busy, pressing does nothing, focus stays. */
  pending?: boolean;
  ref?: Ref<HTMLButtonElement>;
};

/**
 * A button. `primary` once per screen or dialog, `plain` for the rest, `quiet` inside rows, `danger` for what cannot be
 * taken back. `size="bench"` is 48 px for gloves. `type` is `button` unless stated.
 */
export function Button({
  kind = 'plain',
  size = 'regular',
  pending = false,
  className,
  type = 'button',
  onClick,
  ...rest
}: ButtonProps) {
  return (
    <button
      {...rest}
      // A pending button keeps focus, so it is marked busy instead of being disabled; the press itself is swallowed.
      aria-disabled={pending || undefined}
      aria-busy={pending || undefined}
      type={type}
      className={classNames(styles.button, styles[kind], styles[size], className)}
      onClick={pending ? (event) => event.preventDefault() : onClick}
    />
  );
}
