import { and, eq, gt, isNull } from 'drizzle-orm';
import { hashCode } from '@/db/secrets';
import { type NewId, type TokenId, tokenId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { TOKEN_MARK, tokenRequest } from '@/lib/people/tokens';
import { textProblems } from '@/lib/plans/checkConstruct';
import { tokenWords as words } from '@/lib/wording/tokens';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import { type Person, personFromRow } from '../../queries/people';
import { apiTokens, people } from '../../schema';

interface IssueToken {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  /** 256 random bits as text. */
  newToken: () => string;
  /** The administrator who issues it. */
  person: Person;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

const DAY_MS = 86_400_000;

/**
 * Issues a token by which another system acts as somebody who works here, within some of what their role may do. The
 * secret is answered once and kept nowhere: what is stored is its hash, and the ledger has neither.
 */
export async function issueToken(
  request: IssueToken,
): Promise<Outcome<{ id: TokenId; token: string; expiresAt: string }, never>> {
  const { db, now, newId, newToken, person } = request;
  if (!may(person, 'manageTokens')) return refused('notPermitted', words.mayNot(person.name));
  const parsed = tokenRequest.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { name, days } = parsed.data;
  const scope = [...new Set(parsed.data.scope)].sort();
  const problems: Problem[] = textProblems(name, ['name']);
  return db.tx(async (write) => {
    const [row] = await write
      .select()
      .from(people)
      .where(and(eq(people.id, parsed.data.personId), isNull(people.leftAt)));
    if (!row) problems.push({ path: ['personId'], code: 'no-such-person', message: words.noSuchPerson });
    const acts = row ? personFromRow(row) : null;
    for (const [at, act] of parsed.data.scope.entries())
      if (acts !== null && !may(acts, act))
        problems.push({
          path: ['scope', at],
          code: 'not-of-role',
          message: words.notOfRole(acts.name, act),
        });
    const [same] = await write
      .select({ id: apiTokens.id })
      .from(apiTokens)
      .where(and(eq(apiTokens.name, name), isNull(apiTokens.revokedAt), gt(apiTokens.expiresAt, now)));
    if (same) problems.push({ path: ['name'], code: 'name-taken', message: words.nameTaken(name) });
    if (problems.length > 0 || acts === null) return refusedFor(problems);
    const id = tokenId.parse(newId('token'));
    const token = TOKEN_MARK + newToken();
    const expiresAt = new Date(Date.parse(now) + days * DAY_MS).toISOString();
    await write.insert(apiTokens).values({
      id,
      personId: acts.id,
      name,
      scope,
      tokenHash: hashCode(token),
      issuedBy: person.id,
      issuedAt: now,
      expiresAt,
    });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'issue-token',
      subjectKind: 'token',
      subjectId: id,
      detail: { actsAs: acts.id, name, scope, expiresAt },
    });
    return { ok: true, value: { id, token, expiresAt } };
  });
}
