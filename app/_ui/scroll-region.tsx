'use client';

import { type ReactNode, useEffect, useRef, useState } from 'react';
import { classNames } from './class-names';
import styles from './scroll-region.module.css';

const LEAST_WORTH_PX = 48;

/**
 * Holds what may be wider (or taller) than its place: drawings, grids, fit tables. It takes keyboard focus only while
 * there is something to scroll to, so it is never an empty tab stop.
 *
 * @param startAt how far it is scrolled to the side at first, in pixels: where what matters begins
 * @param tall also limits the height and scrolls within, so that sticky heads stick to the region
 */
export function ScrollRegion({
  label,
  startAt = 0,
  tall = false,
  className,
  children,
}: {
  label: string;
  startAt?: number;
  tall?: boolean;
  className?: string | undefined;
  children: ReactNode;
}) {
  const region = useRef<HTMLElement>(null);
  const [overflowing, setOverflowing] = useState(false);

  useEffect(() => {
    const node = region.current;
    if (!node) return;
    const measure = () =>
      setOverflowing(node.scrollWidth > node.clientWidth + 1 || node.scrollHeight > node.clientHeight + 1);
    const observer = new ResizeObserver(measure);
    observer.observe(node);
    for (const child of node.children) observer.observe(child);
    measure();
    return () => observer.disconnect();
  }, []);

  useEffect(() => {
    const node = region.current;
    // where nearly all of it fits, a small step to the side would only cut off its beginning
    if (node && node.scrollWidth - node.clientWidth > LEAST_WORTH_PX) node.scrollLeft = startAt;
  }, [startAt]);

  return (
    <section
      ref={region}
      aria-label={label}
      // A region that scrolls must be reachable by keyboard (WCAG 2.1.1).
      tabIndex={overflowing ? 0 : undefined}
      className={classNames(styles.region, tall && styles.tall, className)}
    >
      {children}
    </section>
  );
}
