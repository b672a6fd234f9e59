import type { Keystroke } from '@/lib/scanning/decodeKey';
import type { ScanContext } from '@/lib/scanning/meaning';
import type { HeardScan, ScanHandler } from './use-scans';

/** A screen that listens. */
export interface Registered {
  context: ScanContext;
  takes: 'understood' | 'everything';
  handle: ScanHandler;
  heard: (scan: HeardScan) => void;
}

let registered: readonly Registered[] = [];

/** Adds a screen on top; answers how to take it away. */
export function addHandler(handler: Registered): () => void {
  registered = [...registered, handler];
  return () => {
    registered = registered.filter((one) => one !== handler);
  };
}

/** The screen that has the scans: the one that came last. */
export function topHandler(): Registered | null {
  return registered.at(-1) ?? null;
}

/** Where badges go: the sign-in of the shell, or a dialog that asks a person to prove who they are. */
export type BadgeHandler = (code: string) => void;

let badgeHandlers: readonly BadgeHandler[] = [];

/** Adds a taker of badges on top; answers how to take it away. */
export function addBadgeHandler(handler: BadgeHandler): () => void {
  badgeHandlers = [...badgeHandlers, handler];
  return () => {
    badgeHandlers = badgeHandlers.filter((one) => one !== handler);
  };
}

export function topBadgeHandler(): BadgeHandler | null {
  return badgeHandlers.at(-1) ?? null;
}

/** While a scanner is tried out, its scans are no scans: the page that tries it has every key. */
export interface ScannerTrial {
  key: (key: Keystroke) => void;
}

let trial: ScannerTrial | null = null;

export function beginTrial(next: ScannerTrial): () => void {
  trial = next;
  return () => {
    if (trial === next) trial = null;
  };
}

export const presentTrial = (): ScannerTrial | null => trial;
