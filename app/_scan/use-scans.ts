'use client';

import { useEffect, useRef } from 'react';
import type { IdentifierOutput } from '@/lib/calculations/identifier/schema';
import type { ScanId } from '@/lib/identity/ids';
import type { ScanAnswer, ScanContext, ScanHow, ScanMeaning } from '@/lib/scanning/meaning';
import { addHandler } from './handlers';

/** A scan that the service has stored and answered. */
export interface ScanEvent {
  /** Made in this browser; goes into what the screen records (`scan_id`), so that a repeat is known as one. */
  id: ScanId;
  /** When it was scanned. */
  at: string;
  text: string;
  how: ScanHow;
  /** The code as read: elements, faults. */
  reading: IdentifierOutput;
  meaning: ScanMeaning;
  verdict: ScanAnswer['verdict'];
  sentence: string;
  /** The earlier scan of the same thing in this context, where there is one. */
  before: ScanAnswer['before'];
  /** The person was asked "another one, or the same again?" and said: another one. */
  another: boolean;
}

/** A scan as it was just heard: nothing is stored yet and its meaning not known. For a first, hollow sign on the screen. */
export type HeardScan = Pick<ScanEvent, 'id' | 'at' | 'text' | 'how' | 'reading'>;

/** What a screen made of a scan, where that is other than what the service knew: the strip and the sound say it too. */
export interface MadeOfScan {
  verdict: 'understood' | 'already';
  says: string;
}

/** `passed`: not for this screen; the scan then leads to the thing it names, as where no screen listens. */
export type ScanHandler = (scan: ScanEvent) => 'taken' | 'passed' | MadeOfScan;

export interface ScanHandlerOptions {
  /** What the screen is about; give it where the same thing must not count twice. */
  context?: ScanContext;
  /**
   * `understood` (default): only what is to be acted on, once; what was there before, refused or unknown is said in the
   * strip and not handed on. `everything`: the screen looks at `verdict` itself.
   */
  takes?: 'understood' | 'everything';
  onHeard?: (scan: HeardScan) => void;
}

const NO_CONTEXT: ScanContext = { kind: 'none' };

/**
 * Hands this screen every scan while it is shown, from the scanner, the camera or typed; focus does not matter. The
 * handler that came last has them alone. One that answers after its screen was left is not delivered to another.
 */
export function useScans(handler: ScanHandler, options: ScanHandlerOptions = {}): void {
  const { context = NO_CONTEXT, takes = 'understood' } = options;
  const latest = useRef({ handler, onHeard: options.onHeard });
  useEffect(() => {
    latest.current = { handler, onHeard: options.onHeard };
  });
  // a context is told by its words: a new object that says the same must not lose scans on their way
  const told = JSON.stringify(context);
  useEffect(
    () =>
      addHandler({
        context: JSON.parse(told) as ScanContext,
        takes,
        handle: (scan) => latest.current.handler(scan),
        heard: (scan) => latest.current.onHeard?.(scan),
      }),
    [told, takes],
  );
}
