'use client';

import { useCallback, useMemo, useState } from 'react';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import type { ItemDraft } from '@/lib/catalogue/form/draft';
import { formPath } from '@/lib/catalogue/form/fields';

/** The item form's texts and what is wrong with them. */
export interface FormApi {
  draft: ItemDraft;
  set: (name: string, text: string) => void;
  /** Several texts at once. */
  setAll: (texts: ItemDraft) => void;
  replace: (change: (draft: ItemDraft) => ItemDraft) => void;
  problems: readonly FieldProblem[];
  problemsAt: (name: string) => string[];
  /** As the server names them: paths in the item. */
  setProblems: (problems: readonly { path: (string | number)[]; message: string }[]) => void;
}

/** Keeps a form; a problem goes away when its field is changed, because nobody knows any more whether it holds. */
export function useItemForm(first: ItemDraft): FormApi {
  const [draft, setDraft] = useState(first);
  const [problems, keepProblems] = useState<readonly FieldProblem[]>([]);

  const setAll = useCallback((texts: ItemDraft) => {
    setDraft((before) => ({ ...before, ...texts }));
    keepProblems((before) =>
      before.some(({ path }) => path in texts) ? before.filter(({ path }) => !(path in texts)) : before,
    );
  }, []);
  const set = useCallback((name: string, text: string) => setAll({ [name]: text }), [setAll]);
  const setProblems = useCallback(
    (found: readonly { path: (string | number)[]; message: string }[]) =>
      keepProblems(found.map(({ path, message }) => ({ path: formPath(path), sentence: message }))),
    [],
  );
  return useMemo(
    () => ({
      draft,
      set,
      setAll,
      replace: setDraft,
      problems,
      problemsAt: (name: string) => problemsAt(problems, name),
      setProblems,
    }),
    [draft, set, setAll, problems, setProblems],
  );
}
