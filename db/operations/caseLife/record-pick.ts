import { eq } from 'drizzle-orm';
import { sentPick } from '@/lib/caseLife/act';
import { mayDo } from '@/lib/caseLife/life';
import { lineKey } from '@/lib/caseLife/list';
import type { CaseId, NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { pickWords as words } from '@/lib/wording/case-life';
import { sendWords } from '@/lib/wording/turns';
import type { Database, Queries } from '../../client';
import { type KitOnRecord, kitOnRecord, stands } from '../../queries/caseLife/standing';
import { type OnRecord, thingOnRecord } from '../../queries/caseLife/thing';
import type { Person } from '../../queries/people';
import { casePicks, people } from '../../schema';
import type { RoundTimes } from '../theatre/promises';
import { planProblem } from './at-kit';
import { pickPack, pickSet, type RecordedPick } from './pick-thing';
import { putBack } from './put-back';

interface RecordPick {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  round: RoundTimes;
  /** Of the session it was done in, not of whoever is at the screen when it arrives. */
  person: Person;
  sessionId: string | null;
  caseId: CaseId;
  /** As sent from outside; parsed here. */
  pick: unknown;
}

/**
 * Makes one pick durable, or one putting back. Sent again it is answered as it was the first time, whatever became of the
 * kit since. What may not go to the case is refused with every reason at once, and nothing is recorded of it.
 */
export async function recordPick(request: RecordPick): Promise<Outcome<RecordedPick, never>> {
  const { db, person, caseId } = request;
  const parsed = sentPick.safeParse(request.pick);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const sent = parsed.data;
  return db.tx(async (write) => {
    if (sent.kind === 'putBack') return putBack(write, { ...request, sent });
    const [before] = await write.select().from(casePicks).where(eq(casePicks.id, sent.id));
    if (before) {
      const same = before.caseId === caseId && before.pickedBy === person.id && before.doneAt === sent.doneAt;
      return same
        ? { ok: true, value: { id: sent.id, enteredAt: before.enteredAt } }
        : refused('conflict', words.idTaken);
    }
    if (!may(person, 'pickKit')) return refused('notPermitted', words.mayNot(person.name, 'pick kits'));
    const kit = await kitOnRecord(write, caseId);
    if (!kit) return refused('notFound', words.noSuchCase);
    const late = mayDo(kit.stage, 'fetch');
    if (!late && !mayDo(kit.stage, 'pick'))
      return refused('frozen', words.notNow(kit.booked.reference, kit.stage));
    if (late && !may(person, 'issueKit'))
      return refused('notPermitted', words.mayNot(person.name, 'issue what theatre asks for'));
    const changed = late ? null : await planProblem(write, kit);
    if (changed) return refused('frozen', changed);
    if (!late && Date.parse(kit.booked.endsAt) < Date.parse(request.now))
      return refused('frozen', sendWords.caseOver(kit.booked.reference));
    const thing = await thingOnRecord(write, sent.thing, new Set(kit.list.map(lineKey)));
    if (thing.kind === 'unknown') return unknownThing(thing);
    const taken = await takenAlready(write, kit, thing, request.now);
    if (taken) return refused('frozen', taken);
    return thing.kind === 'set'
      ? pickSet(write, { ...request, kit, sent, thing, late })
      : pickPack(write, { ...request, kit, sent, thing, late });
  });
}

function unknownThing(thing: Extract<OnRecord, { kind: 'unknown' }>): Outcome<never, never> {
  switch (thing.why) {
    case 'noSuchThing':
      return refused('notFound', words.noSuchThing);
    case 'notSterile':
      return refused('frozen', words.packNotSterile(thing.name));
    case 'lotUnknown':
      return refused('frozen', words.lotUnknown(thing.name, thing.lot));
    case 'lotNotSaid':
      return refused('frozen', words.lotNotSaid(thing.name));
  }
}

/** The set or labelled pouch lies with this very kit: two people reached for it, or one scanned it twice. */
async function takenAlready(
  write: Queries,
  { picks }: KitOnRecord,
  thing: Extract<OnRecord, { kind: 'set' | 'pack' }>,
  now: string,
): Promise<string | null> {
  const own = picks.find(
    (pick) =>
      stands(pick) &&
      (thing.kind === 'set'
        ? pick.setId === thing.set.id
        : thing.pouch !== null && pick.packId === thing.pouch.id),
  );
  if (!own) return null;
  const [by] = await write.select({ name: people.name }).from(people).where(eq(people.id, own.pickedBy));
  const called = thing.kind === 'set' ? thing.set.code : thing.item.name;
  return words.pickedAlready(called, by?.name ?? '', own.doneAt, now);
}
