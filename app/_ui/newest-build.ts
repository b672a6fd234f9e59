import { useSyncExternalStore } from 'react';

/** Which build answered last; `null`: none has said so yet. */
let newest: string | null = null;
const listeners = new Set<() => void>();

/** Each answer names the build that gave it; those of requests that are made anyway are listened to. */
export function noteBuild(answer: Response): void {
  const build = answer.headers.get('x-kitwright-build');
  if (build === null || build === newest) return;
  newest = build;
  for (const listener of listeners) listener();
}

function subscribe(listener: () => void) {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

export function useNewestBuild(): string | null {
  return useSyncExternalStore(
    subscribe,
    () => newest,
    () => null,
  );
}
