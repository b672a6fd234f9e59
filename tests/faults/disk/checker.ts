/** An answer as it came: status, media type and body. `null`: none came. */
export interface Said {
  what: string;
  status: number | null;
  type: string;
  text: string;
}

/** What was seen while a disk would not take writes, and after it would again. */
export interface Trouble {
  name: string;
  /** What a refusal must say, and with which status. */
  status: number;
  words: RegExp;
  /** Writes that were refused. */
  refused: readonly Said[];
  reads: readonly Said[];
  ready: Said;
  health: Said;
  /** Milliseconds from the end of the trouble to the first write that was taken; `null`: none was. */
  resumedAfterMs: number | null;
}

const isProblem = ({ type, text }: Said): boolean => {
  if (!type.startsWith('application/problem+json')) return false;
  try {
    return typeof JSON.parse(text).detail === 'string';
  } catch {
    return false;
  }
};

const shown = ({ what, status, text }: Said) => `${what} was answered ${status}: ${text.slice(0, 120)}`;

/** Where a refusal is not in plain words, reading does not go on, health does not say it, or writing does not resume. */
export function troubleFaults(trouble: Trouble): string[] {
  const { name, status, words, refused, reads, ready, health, resumedAfterMs } = trouble;
  const faults: string[] = [];
  if (refused.length === 0) faults.push('nothing was refused: the trouble was none');
  for (const one of refused) {
    if (one.status !== status || !isProblem(one) || !words.test(one.text))
      faults.push(`a refusal is not in words: ${shown(one)}`);
  }
  if (reads.length === 0) faults.push('nothing was read');
  for (const one of reads) if (one.status !== 200) faults.push(`reading does not go on: ${shown(one)}`);
  if (ready.status !== 503 || !/"writing":"wrong"/.test(ready.text))
    faults.push(`ready does not say it: ${shown(ready)}`);
  if (health.status !== 200 || !words.test(health.text))
    faults.push(`the health page does not say it: ${health.status}`);
  if (resumedAfterMs === null) faults.push('writing did not resume by itself');
  return faults.map((fault) => `${name}: ${fault}`);
}
