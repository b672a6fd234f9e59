import type { PackState } from './pack';

/** What a printed label says of itself, and what is known of its pack now. */
export interface LabelFacts {
  /** The copy scanned; `null` where only the number was typed. */
  copy: number | null;
  /** The newest copy printed; 0 while none was. */
  newestCopy: number;
  state: PackState;
}

export type OldLabel = 'noSuchCopy' | 'oldLabel' | 'packOpened' | 'packUndone';

/** Why a label is refused, or `null` while it is good: only the newest copy of a pack that is closed still. */
export function whyLabelIsOld({ copy, newestCopy, state }: LabelFacts): OldLabel | null {
  if (state === 'opened') return 'packOpened';
  if (state === 'undone') return 'packUndone';
  if (copy === null) return null;
  if (copy < 1 || copy > newestCopy) return 'noSuchCopy';
  return copy < newestCopy ? 'oldLabel' : null;
}

/** What a count sheet was printed from, and how its set is now. */
export interface SheetFacts {
  printed: { versionId: string; at: string };
  now: {
    versionId: string;
    /** When a count was last closed, or a piece put in; `null` while nobody has counted. */
    contentsChangedAt: string | null;
    withdrawn: boolean;
  };
}

export type OldSheet = 'otherVersion' | 'countedSince' | 'withdrawn';

/**
 * Why a count sheet is refused, or `null` while it is good: the set follows the version that is printed on it, and
 * nothing was counted or put in since. That the set went from step to step alone makes no sheet old: the sheet goes with it.
 */
export function whySheetIsOld({ printed, now }: SheetFacts): OldSheet | null {
  if (now.withdrawn) return 'withdrawn';
  if (printed.versionId !== now.versionId) return 'otherVersion';
  const changed = now.contentsChangedAt;
  return changed !== null && Date.parse(changed) > Date.parse(printed.at) ? 'countedSince' : null;
}
