import { sendJson } from '@/app/sets/_parts/send-json';
import type { Choices, ImportView } from './import-view';

const NOT_REACHED =
  'The server can’t be reached. Whether it was imported is not certain: try it again, and it says so. Nothing is imported twice.';

/** Tries a list, or imports it as it was tried; what is refused comes back as sentences, all of them. */
export async function sendList(body: {
  file: string;
  choices: Choices;
  digest: string | null;
}): Promise<{ ok: true; value: ImportView } | { ok: false; sentences: string[] }> {
  try {
    const sent = await sendJson<ImportView>('/api/v1/cases/import', body);
    if (sent.ok) return sent;
    const said = sent.problems.map(({ sentence }) => sentence).filter(Boolean);
    return { ok: false, sentences: said.length > 0 ? said : [sent.sentence] };
  } catch {
    return { ok: false, sentences: [NOT_REACHED] };
  }
}
