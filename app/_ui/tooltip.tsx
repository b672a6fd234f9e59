'use client';

import type { ComponentProps, ReactNode } from 'react';
import { Focusable, Tooltip as RacTooltip, TooltipTrigger } from 'react-aria-components';
import styles from './tooltip.module.css';

/**
 * A short remark on hover and focus. The child must be one focusable element (a `Button`, a link). Never the only
 * place where something is said: it does not exist on a touch screen or on paper.
 */
export function Tooltip({
  text,
  children,
}: {
  text: ReactNode;
  children: ComponentProps<typeof Focusable>['children'];
}) {
  return (
    <TooltipTrigger delay={400} closeDelay={80}>
      <Focusable>{children}</Focusable>
      <RacTooltip className={styles.tooltip ?? ''} offset={6}>
        {text}
      </RacTooltip>
    </TooltipTrigger>
  );
}
