import { and, eq, gt, inArray, isNull, lt, ne } from 'drizzle-orm';
import type { Hit, Taking } from '@/lib/emergency/replan';
import type { NewId } from '@/lib/identity/ids';
import { refused } from '@/lib/identity/refusal';
import { emergencyWords as words } from '@/lib/wording/emergency';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { cases, emergencies, emergencySets, setPromises, sets } from '../../schema';
import { keepPromise, type RoundTimes, rivalFor, timesFor } from '../theatre/promises';
import { tellPerson } from '../turns/tell-person';
import { stop } from './stop';

interface GiveWay {
  taking: Pick<Taking, 'caseId' | 'reference' | 'fromAt' | 'sets'>;
  hits: readonly Hit[];
  person: Person;
  now: string;
  newId: NewId;
  round: RoundTimes;
}

/** Ends every promise that stands in the way of what is taken. What is taken for another emergency stays with that one. */
export async function endPromises(write: Queries, { taking, hits, now }: GiveWay): Promise<void> {
  const lost = new Set(hits.flatMap(({ caseId, loses }) => loses.map(({ setId }) => `${caseId} ${setId}`)));
  const ids = [...new Set([...hits.map(({ caseId }) => caseId), taking.caseId])];
  const theirs = await write.select().from(setPromises).where(inArray(setPromises.caseId, ids));
  const ended = theirs.filter(
    ({ caseId, setId }) => caseId === taking.caseId || lost.has(`${caseId} ${setId}`),
  );
  for (const { setId, untilAt } of taking.sets) {
    const other = await otherEmergency(write, setId, taking.caseId, now);
    if (other) stop(refused('frozen', words.takenFor(other.code, other.reference)));
    const rivals = await write
      .select({ promise: setPromises, endsAt: cases.endsAt })
      .from(setPromises)
      .innerJoin(cases, eq(cases.id, setPromises.caseId))
      .where(
        and(
          eq(setPromises.setId, setId),
          ne(setPromises.caseId, taking.caseId),
          lt(setPromises.fromAt, untilAt),
          gt(setPromises.untilAt, taking.fromAt),
        ),
      );
    for (const { promise, endsAt } of rivals) {
      if (ended.some(({ id }) => id === promise.id)) continue;
      // a case that is over: its set is back sooner than was thought
      if (endsAt <= taking.fromAt)
        await write.update(setPromises).set({ untilAt: taking.fromAt }).where(eq(setPromises.id, promise.id));
      else ended.push(promise);
    }
  }
  const endedIds = ended.map(({ id }) => id);
  if (endedIds.length > 0) await write.delete(setPromises).where(inArray(setPromises.id, endedIds));
}

/** An emergency still to come that the set is taken for and has not gone to. */
async function otherEmergency(write: Queries, setId: string, ownCase: string, now: string) {
  const [other] = await write
    .select({ code: sets.code, reference: cases.reference })
    .from(emergencySets)
    .innerJoin(emergencies, eq(emergencies.caseId, emergencySets.caseId))
    .innerJoin(cases, eq(cases.id, emergencySets.caseId))
    .innerJoin(sets, eq(sets.id, emergencySets.setId))
    .innerJoin(
      setPromises,
      and(eq(setPromises.caseId, emergencySets.caseId), eq(setPromises.setId, emergencySets.setId)),
    )
    .where(
      and(
        eq(emergencySets.setId, setId),
        ne(emergencySets.caseId, ownCase),
        isNull(emergencySets.goneAt),
        isNull(cases.cancelledAt),
        gt(cases.endsAt, now),
      ),
    )
    .limit(1);
  return other;
}

/** Gives those who lost a set what the new plan has for them, on record, and tells their surgeons. */
export async function giveInstead(write: Queries, request: GiveWay): Promise<void> {
  const { taking, hits, person, now, newId, round } = request;
  for (const hit of hits) {
    const [booked] = await write.select().from(cases).where(eq(cases.id, hit.caseId));
    if (!booked || booked.cancelledAt !== null) stop(refused('conflict', words.changedMeanwhile));
    const gets = hit.tentative || hit.instead.kind !== 'sets' ? [] : hit.instead.sets;
    for (const { setId } of gets) {
      const times = await timesFor(write, booked, setId, round);
      if (await rivalFor(write, setId, times, booked.id)) stop(refused('conflict', words.changedMeanwhile));
      const [kept] = await write
        .select({ id: setPromises.id })
        .from(setPromises)
        .where(and(eq(setPromises.setId, setId), eq(setPromises.caseId, booked.id)));
      if (kept) continue;
      const chosenBy = 'planning' as const;
      await keepPromise(write, {
        setId,
        caseId: booked.id,
        times,
        chosenBy,
        personId: person.id,
        now,
        newId,
      });
    }
    const lost = hit.loses.map(({ code }) => code);
    const instead = hit.instead.kind === 'sets' ? hit.instead.sets.map(({ code }) => code) : [];
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'give-way-to-emergency',
      subjectKind: 'case',
      subjectId: booked.id,
      detail: { forCase: taking.reference, loses: lost, gets: instead, instead: hit.instead.kind },
    });
    if (booked.surgeonId === person.id) continue;
    await tellPerson(write, {
      personId: booked.surgeonId,
      kind: 'setTakenForEmergency',
      detail: {
        caseReference: booked.reference,
        sets: lost,
        instead,
        left: hit.instead.kind,
        couldStartAt: hit.instead.kind === 'none' ? hit.instead.couldStartAt : null,
        forCase: taking.reference,
        by: person.name,
      },
      href: `/cases/${booked.id}`,
      now,
      newId,
    });
  }
}
