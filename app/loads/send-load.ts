import { sendJson } from '@/app/sets/_parts/send-json';

export type LoadSent<T> =
  | { ok: true; value: T }
  /** `reached`: the server answered; where it did not, nothing is known of what was asked. */
  | { ok: false; reached: boolean; sentences: string[]; problems: { path: string; sentence: string }[] };

const NOT_REACHED = 'The server can’t be reached. Nothing is certain to be saved: try again.';

/** Sends a write about a load; what is refused comes back as sentences, all of them. */
export async function sendLoad<T = { revision: number }>(
  address: string,
  body: unknown,
): Promise<LoadSent<T>> {
  try {
    const sent = await sendJson<T>(address, body);
    if (sent.ok) return sent;
    const said = sent.problems.map(({ sentence }) => sentence).filter(Boolean);
    return {
      ok: false,
      reached: true,
      sentences: said.length > 0 ? said : [sent.sentence],
      problems: sent.problems,
    };
  } catch {
    return { ok: false, reached: false, sentences: [NOT_REACHED], problems: [] };
  }
}
