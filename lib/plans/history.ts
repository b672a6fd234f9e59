import { applyEdit, type PlanEdit } from './edit';
import type { Construct } from './plan';

/** The construct as it stands, with what can be undone and redone. */
export interface PlanHistory {
  present: Construct;
  past: Construct[];
  future: Construct[];
  /** The last edit's kind and place, so that dragging a handle is one step to undo and not fifty. */
  lastEdit: string | null;
}

const DEEPEST = 200;

export function beginHistory(present: Construct): PlanHistory {
  return { present, past: [], future: [], lastEdit: null };
}

/** Applies an edit. Edits of the same `gesture` in a row are undone together. */
export function edited(history: PlanHistory, edit: PlanEdit, gesture: string | null = null): PlanHistory {
  const present = applyEdit(history.present, edit);
  if (present === history.present) return history;
  if (gesture !== null && gesture === history.lastEdit) return { ...history, present, future: [] };
  return { present, past: [...history.past, history.present].slice(-DEEPEST), future: [], lastEdit: gesture };
}

export function undone(history: PlanHistory): PlanHistory {
  const previous = history.past.at(-1);
  if (!previous) return history;
  return {
    present: previous,
    past: history.past.slice(0, -1),
    future: [history.present, ...history.future],
    lastEdit: null,
  };
}

export function redone(history: PlanHistory): PlanHistory {
  const [next, ...future] = history.future;
  if (!next) return history;
  return { present: next, past: [...history.past, history.present], future, lastEdit: null };
}
