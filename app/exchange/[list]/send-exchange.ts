import { sendJson } from '@/app/sets/_parts/send-json';
import type { Choices, ExchangeView } from './exchange-view';

const NOT_REACHED =
  'The server can’t be reached. Whether it was brought in is not certain: try the file again, and it says so.';

/** Tries a list, or brings it in as it was tried; what is refused comes back as sentences, all of them. */
export async function sendExchange(
  list: string,
  body: { file: string; choices: Choices; seen: ExchangeView['seen'] | null },
): Promise<{ ok: true; value: ExchangeView } | { ok: false; sentences: string[] }> {
  try {
    const sent = await sendJson<ExchangeView>(`/api/v1/exchange/${list}`, body);
    if (sent.ok) return sent;
    const said = sent.problems.map(({ sentence }) => sentence).filter(Boolean);
    return { ok: false, sentences: said.length > 0 ? said : [sent.sentence] };
  } catch {
    return { ok: false, sentences: [NOT_REACHED] };
  }
}
