import 'server-only';
import { writtenByToken } from '@/db/byToken';
import { readAs } from '@/db/client';
import { noteTokenUse } from '@/db/operations/api/note-token-use';
import { tokenOfSecret } from '@/db/queries/api/tokens';
import { lastUseIsOld, tokenState } from '@/lib/people/tokens';
import { tokenWords } from '@/lib/wording/tokens';
import { now } from './clock';
import { database } from './database';
import type { Access } from './session';

/**
 * What stands after `Authorization: Bearer`, be it a secret or not: whoever names a token is not let in in another way. Another
 * scheme is for whatever stands in front of the server.
 */
export function bearerOf(headers: Headers): string | null {
  const named = /^bearer(?:\s+(.*))?$/i.exec(headers.get('authorization')?.trim() ?? '');
  return named === null ? null : (named[1] ?? '');
}

/** Who a token acts for and within what, or why it opens nothing. What is written through it says so in the ledger. */
export async function accessOfToken(secret: string): Promise<Access | string> {
  const db = database();
  const found = await tokenOfSecret(db, secret);
  if (!found) return tokenWords.unknown;
  const at = now();
  const state = tokenState(found, at);
  if (state !== 'open') return tokenWords.state(state);
  const { id, name, person } = found;
  if (lastUseIsOld(found.lastUsedAt, at)) await noteTokenUse({ db, tokenId: id, usedAt: at });
  return {
    db: writtenByToken(readAs(db, person), { id, name }),
    person,
    session: { id: null, workstationId: null },
    token: { id, name },
  };
}
