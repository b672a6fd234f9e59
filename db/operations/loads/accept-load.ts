import { eq } from 'drizzle-orm';
import type { CaseId, PackId, PlaceId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { acceptanceFindings, isAboutImplants } from '@/lib/loads/acceptance';
import type { ImplantException } from '@/lib/loads/load';
import { type Attestation, attests } from '@/lib/people/attestation';
import { findingSentence, loadWords as words } from '@/lib/wording/loads';
import type { Queries } from '../../client';
import { acceptanceFacts } from '../../queries/loads/acceptanceFacts';
import type { Person } from '../../queries/people';
import { places } from '../../schema';
import {
  atLoad,
  changeLoad,
  type LoadNow,
  type LoadRequest,
  reasonProblems,
  standingInTheWay,
} from './at-load';
import { exceptionProblems } from './implant-exception';
import { storePacks } from './store-packs';

export interface AskedException {
  caseId: CaseId;
  packIds: PackId[];
  reason: string;
  surgeon: Person;
  /** That the surgeon proved who they are and said `iApprove`. */
  attestation: Attestation;
}

interface AcceptLoad extends LoadRequest {
  /** Why it may be accepted with its cautions; blank where there are none. */
  reason: string;
  setsPlaceId: PlaceId | null;
  pouchesPlaceId: PlaceId | null;
  exception: AskedException | null;
  /** That this person proved who they are and said `iAcceptThisLoad`. */
  attestation: Attestation;
}

/**
 * Accepts a load: always a person's act, never the program's. What stops it is said at once; the one thing that may be
 * set aside is that implants wait, for named packs and a named case, by lead and surgeon together.
 */
export async function acceptLoad(
  request: AcceptLoad,
): Promise<Outcome<{ revision: number; stored: number }, LoadNow>> {
  const { person, now, newId, attestation, exception } = request;
  const acting = { act: 'acceptLoad', verb: 'accept it', while: ['awaitingAcceptance'] } as const;
  if (!attests(attestation, person.id, 'iAcceptThisLoad', now))
    return refused('notPermitted', words.proveFirst);
  return atLoad(request, acting, async (write, load) => {
    const facts = await acceptanceFacts(write, load);
    const findings = acceptanceFindings(facts);
    const stops = findings.filter((one) => one.severity === 'stops' && !(exception && isAboutImplants(one)));
    if (stops.length > 0)
      return standingInTheWay(
        stops.map((one) => ({ path: [], code: one.kind, message: findingSentence(one) })),
      );
    const cautioned = findings.some(({ severity }) => severity === 'caution');
    const sound = facts.packs.filter((pack) => pack.unloadedAs === 'sound');
    const problems: Problem[] = [
      ...reasonProblems(request.reason, cautioned ? words.reasonForCautions : null),
      ...(await placeProblems(
        write,
        request.setsPlaceId,
        sound.some(({ kind }) => kind === 'set'),
        'setsPlaceId',
      )),
      ...(await placeProblems(
        write,
        request.pouchesPlaceId,
        sound.some(({ kind }) => kind === 'pouch'),
        'pouchesPlaceId',
      )),
    ];
    let excepted: ImplantException | null = null;
    if (exception !== null) {
      const asked = await exceptionProblems(write, { exception, lead: person, facts, findings, now });
      if (asked.ok) excepted = asked.value;
      else problems.push(...asked.problems);
    }
    if (problems.length > 0) return refusedFor(problems);
    const reason = request.reason.trim() || null;
    const { meaning, method, at } = attestation;
    const changed = await changeLoad(
      write,
      load,
      { state: 'accepted', decidedBy: person.id, decidedAt: now, reason, exception: excepted },
      {
        action: 'accept-load',
        person,
        now,
        detail: {
          reason,
          findings,
          packs: sound.map(({ number }) => number),
          attested: { meaning, method, at },
          ...(excepted === null || exception === null
            ? {}
            : {
                exception: excepted,
                alsoAttested: {
                  personId: exception.surgeon.id,
                  meaning: exception.attestation.meaning,
                  method: exception.attestation.method,
                  at: exception.attestation.at,
                },
              }),
        },
      },
    );
    const waiting = findings.some(isAboutImplants);
    await storePacks(write, { ...request, load, packs: sound, excepted, waiting, now, newId });
    return { ok: true, value: { ...changed, stored: sound.length } };
  });
}

async function placeProblems(
  write: Queries,
  placeId: PlaceId | null,
  needed: boolean,
  path: string,
): Promise<Problem[]> {
  if (!needed) return [];
  if (placeId === null) return [{ path: [path], code: 'needed', message: words.placeNeeded }];
  const [place] = await write.select({ id: places.id }).from(places).where(eq(places.id, placeId));
  return place ? [] : [{ path: [path], code: 'unknown', message: words.noSuchPlace }];
}
