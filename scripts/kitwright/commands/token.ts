import { type Database, readAs } from '@/db/client';
import { issueToken } from '@/db/operations/api/issue-token';
import { revokeToken } from '@/db/operations/api/revoke-token';
import { listTokens, type TokenOnFile } from '@/db/queries/api/tokens';
import { claimedByName } from '@/db/queries/credentials';
import { newToken } from '@/db/secrets';
import { may } from '@/lib/people/permissions';
import { EVERY_TOKEN, tokenState } from '@/lib/people/tokens';
import { TOKEN_STATE_WORDS, tokenWords } from '@/lib/wording/tokens';
import { answerOf, newId, provenPerson } from '../administrator';
import { type Answer, CannotDo, type Command, type Given } from '../command';
import { openAtHand } from '../open';
import { placesOf } from '../places';

const USAGE =
  'list | issue SYSTEM --for PERSON [--scope ACT,ACT] [--days 90] | revoke SYSTEM-OR-ID, each with --as ADMINISTRATOR';

/** Tokens of the API, as an administrator who proves who they are: as on the screen, and in the ledger as there. */
export const token: Command = {
  usage: USAGE,
  does: 'lists, issues and revokes tokens of the API, as a named administrator',
  words: [1, 2],
  options: {
    as: { type: 'string' },
    for: { type: 'string' },
    scope: { type: 'string' },
    days: { type: 'string' },
  },
  async run(given) {
    const { database } = placesOf(given.env);
    const [act = ''] = given.words;
    const wants = act === 'list' ? 1 : act === 'issue' || act === 'revoke' ? 2 : 0;
    if (given.words.length !== wants) throw new CannotDo(`Usage: kitwright token ${USAGE}`);
    const store = openAtHand(database);
    try {
      const person = await provenPerson(store, given);
      if (!may(person, 'manageTokens')) throw new CannotDo(tokenWords.mayNot(person.name));
      const at = { ...given, db: readAs(store, person), person };
      if (act === 'list') return await list(at);
      return act === 'issue' ? await issue(at) : await revoke(at);
    } finally {
      store.close();
    }
  },
};

type AtToken = Given & { db: Database; person: Awaited<ReturnType<typeof provenPerson>> };

async function list({ db, now }: AtToken): Promise<Answer> {
  const at = now().toISOString();
  const tokens = (await listTokens(db)).map((one) => ({ ...one, state: tokenState(one, at) }));
  return {
    exit: 0,
    lines:
      tokens.length === 0
        ? ['No token was ever issued.']
        : tokens.flatMap((one) => [
            `${one.name} (${one.id}): ${TOKEN_STATE_WORDS[one.state].toLowerCase()}, acts as ${one.person.name}`,
            `  reads${beside(one)}; until ${one.expiresAt}; ${one.lastUsedAt === null ? 'never used' : `last used ${one.lastUsedAt}`}`,
          ]),
    json: tokens,
  };
}

function beside({ person }: TokenOnFile): string {
  const acts = person.scope.filter((act) => act !== EVERY_TOKEN);
  return acts.length === 0 ? ' alone' : `, ${acts.join(', ')}`;
}

async function issue({ db, person, now, options, words: [, name = ''] }: AtToken): Promise<Answer> {
  if (typeof options.for !== 'string')
    throw new CannotDo('Say whom it acts for: --for NAME, somebody who works here.');
  const whom = await claimedByName(db, options.for);
  if (!whom.person) throw new CannotDo(`Nobody of the name “${options.for}” works here.`);
  const scope = typeof options.scope === 'string' ? options.scope.split(',').filter((act) => act !== '') : [];
  const days = options.days === undefined ? 90 : Number(options.days);
  const entry = { personId: whom.person.id, name, scope, days };
  const made = answerOf(await issueToken({ db, now: now().toISOString(), newId, newToken, person, entry }));
  return {
    exit: 0,
    lines: [
      `${name} may use the API as ${whom.person.name} until ${made.expiresAt}.`,
      `The token, told only here: ${made.token}`,
    ],
    json: made,
  };
}

async function revoke({ db, person, now, words: [, which = ''] }: AtToken): Promise<Answer> {
  const at = now().toISOString();
  const found = (await listTokens(db)).filter(
    (one) => one.id === which || (one.name === which && tokenState(one, at) === 'open'),
  );
  const [one] = found;
  if (!one) throw new CannotDo(`There is no open token called “${which}”.`);
  answerOf(await revokeToken({ db, now: at, person, tokenId: one.id }));
  return {
    exit: 0,
    lines: [`The token for ${one.name} opens nothing now.`],
    json: { id: one.id, name: one.name },
  };
}
