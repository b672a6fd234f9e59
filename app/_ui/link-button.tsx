import Link from 'next/link';
import type { ReactNode } from 'react';
import type { ButtonKind, ButtonSize } from './button';
import styles from './button.module.css';
import { classNames } from './class-names';

/**
 * A link that looks like a button: for going somewhere, never for changing something.
 *
 * @param download set for files such as PDFs: a plain anchor is used, so the router does not try to render them
 */
export function LinkButton({
  href,
  children,
  kind = 'plain',
  size = 'regular',
  download = false,
  newTab = false,
}: {
  href: string;
  children: ReactNode;
  kind?: ButtonKind;
  size?: ButtonSize;
  download?: boolean;
  newTab?: boolean;
}) {
  const className = classNames(styles.button, styles[kind], styles[size]);
  if (download || newTab) {
    return (
      <a
        href={href}
        className={className}
        download={download || undefined}
        target={newTab ? '_blank' : undefined}
        rel={newTab ? 'noreferrer' : undefined}
      >
        {children}
      </a>
    );
  }
  return (
    <Link href={href} className={className}>
      {children}
    </Link>
  );
}
