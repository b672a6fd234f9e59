import { sql } from 'drizzle-orm';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Database, Queries } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { beginWash } from '@/db/operations/turns/begin-wash';
import { bringBackSet } from '@/db/operations/turns/bring-back-set';
import { endWash } from '@/db/operations/turns/end-wash';
import { holdSet } from '@/db/operations/turns/hold-set';
import { liftHold } from '@/db/operations/turns/lift-hold';
import { moveSet } from '@/db/operations/turns/move-set';
import { openSet } from '@/db/operations/turns/open-set';
import { receiveSet } from '@/db/operations/turns/receive-set';
import { reprocessSet } from '@/db/operations/turns/reprocess-set';
import { sendToTheatre } from '@/db/operations/turns/send-to-theatre';
import { takeStep } from '@/db/operations/turns/take-step';
import { withdrawSet } from '@/db/operations/turns/withdraw-set';
import { packs, sets, settings, shortDecisions } from '@/db/schema';
import { type SetId, setId } from '@/lib/identity/ids';
import { role } from '@/lib/people/role';
import { heldBecause, turnStep } from '@/lib/sets/setState';
import { unbalanced } from '../pieces/balance';
import { forbiddenStatesOf } from './forbiddenStates';
import {
  CASE_IDS,
  countedIds,
  PEOPLE,
  PLACE_IDS,
  proofOf,
  SET_IDS,
  START,
  SURGEON_STANDS,
  smallHospital,
  USE_BY_OF_PACKS,
} from './smallHospital';
import { closeOn } from './standIns';
import { type Act, after, allowed, type ModelSet, ONWARD } from './walkModel';

/** More of them: `WALKS=400 npm test -- --only database walk`. */
const SEQUENCES = Number(process.env.WALKS ?? 20);
const ACTS = 16;

const act: fc.Arbitrary<Act> = fc.oneof(
  fc.constantFrom<Act>(
    ...(
      [
        'receive',
        'beginWash',
        'washedClean',
        'washedDirty',
        'open',
        'reprocess',
        'withdraw',
        'bringBack',
      ] as const
    ).map((kind) => ({ kind })),
    ...(['startLoad', 'endLoad', 'acceptLoad'] as const).map((kind) => ({ kind })),
  ),
  fc.record({ kind: fc.constant('hold' as const), because: fc.constantFrom(...heldBecause.options) }),
  fc.record({
    kind: fc.constant('lift' as const),
    to: fc.constantFrom(...turnStep.options),
    proof: fc.constantFrom('own' as const, 'own' as const, 'another’s' as const, 'old' as const),
  }),
  fc.record({
    kind: fc.constant('send' as const),
    case: fc.constantFrom('today' as const, 'later' as const, 'over' as const),
  }),
  fc.record({
    kind: fc.constant('move' as const),
    place: fc.constantFrom('bench' as const, 'store' as const, 'outOfUse' as const),
  }),
  fc.record({ kind: fc.constant('pack' as const), short: fc.boolean() }),
);

const command = fc.record({
  set: fc.nat({ max: 1 }),
  // half of what is tried takes a set on, by somebody who may; the rest is anything by anybody
  act: fc.oneof({ weight: 5, arbitrary: fc.constant<'onward'>('onward') }, { weight: 4, arbitrary: act }),
  role: fc.constantFrom(...role.options),
  revision: fc.oneof({ weight: 8, arbitrary: fc.constant(0) }, fc.constantFrom(-1, 1, 5)),
  when: fc.oneof(
    { weight: 8, arbitrary: fc.constant('now' as const) },
    fc.constantFrom('earlier' as const, 'future' as const, 'before' as const),
  ),
  /** Besides: a step straight past the operations, as a fault of the program would take it. */
  stray: fc.option(fc.constantFrom(...turnStep.options), { freq: 6 }),
});
type Command = typeof command extends fc.Arbitrary<infer T> ? T : never;

/** One hospital walked through, and the model beside it. */
class Walk {
  private newId = countedIds();
  private minutes = 0;
  private model: ModelSet[] = SET_IDS.map(() => ({
    step: 'inTheatre',
    heldFrom: null,
    reasons: [],
    pack: null,
    withdrawn: false,
  }));
  private revisions = SET_IDS.map(() => 1);
  done = 0;

  constructor(
    private readonly db: Database,
    private readonly useBy: string | null,
  ) {}

  private at = (more = 0) => new Date(Date.parse(START) + (this.minutes + more) * 60_000).toISOString();

  async take(command: Command): Promise<void> {
    this.minutes += 2;
    const at = command.set;
    const id = SET_IDS[at] as SetId;
    const before = this.model[at] as ModelSet;
    const onward = command.act === 'onward';
    const wanted: Act = command.act === 'onward' ? (ONWARD[before.step] as Act) : command.act;
    const who = onward ? 'decontaminationLead' : command.role;
    const { stray } = command;
    if (stray) await this.stray(id, stray);
    const untouched = await this.state();
    const when = onward ? 'now' : command.when;
    const off = onward ? 0 : command.revision;
    const timed = !['withdraw', 'bringBack', 'pack', 'startLoad', 'endLoad', 'acceptLoad'].includes(
      wanted.kind,
    );
    const standIn = ['pack', 'startLoad', 'endLoad', 'acceptLoad'].includes(wanted.kind);
    const ok = await this.perform(wanted, id, who, (this.revisions[at] ?? 0) + off, when);
    const should =
      allowed(wanted, before, who) &&
      (standIn || off === 0) &&
      (!timed || when === 'now' || when === 'earlier');
    const changed = (await this.state()) !== untouched;
    // an act sent again answers as it did, and a move to where it lies already is none: neither writes anything
    if (ok && !changed) {
      expect(off === -1 || wanted.kind === 'move', JSON.stringify(command)).toBe(true);
    } else expect(ok, `${JSON.stringify(command)} at ${JSON.stringify(before)}`).toBe(should);
    if (!ok)
      expect(changed, `refused, and yet something was written: ${JSON.stringify(command)}`).toBe(false);
    if (ok && changed) {
      this.model[at] = after(wanted, before, this.useBy);
      this.done += 1;
    }
    await this.check();
  }

  /** Everything that an act could change, in short. */
  private async state(): Promise<string> {
    const [row] = this.db.read.all(sql`SELECT
      (SELECT json_group_array(json_array(id, step, step_since, held_because, held_from, pack_id, use_by, case_id, place_id,
        withdrawn_at, turn_id, revision)) FROM sets) s,
      (SELECT json_group_array(json_array(id, state, load_id, use_by, revision)) FROM packs) p,
      (SELECT max(seq) FROM ledger) l, (SELECT max(seq) FROM turn_steps) t, (SELECT count(*) FROM notices) n,
      (SELECT count(*) FROM turns) u`);
    return JSON.stringify(row);
  }

  private async check(): Promise<void> {
    expect(await forbiddenStatesOf(this.db)).toEqual([]);
    const rows = await this.db.read.select().from(sets);
    for (const [at, id] of SET_IDS.entries()) {
      const row = rows.find((one) => one.id === setId.parse(id));
      expect(row?.step).toBe(this.model[at]?.step);
      expect(row?.revision, 'a revision never falls').toBeGreaterThanOrEqual(this.revisions[at] ?? 0);
      this.revisions[at] = row?.revision ?? 0;
    }
  }

  /** Takes a step with nothing prepared for it. Where it is let through, it must have been right. */
  private async stray(id: SetId, to: (typeof turnStep.options)[number]): Promise<void> {
    const untouched = await this.state();
    const { technician } = PEOPLE;
    await this.db
      .tx(async (write) => {
        const set = (await write.select().from(sets)).find((row) => row.id === id);
        if (!set) throw new Error('no such set');
        const taken = await takeStep(write, {
          set,
          to,
          action: 'stray',
          person: technician,
          now: this.at(),
          newId: this.newId,
        });
        // what got past the guards would still be wrong for the sets' packs: put back, but it must not look forbidden
        const wrong = taken.ok ? await forbiddenStatesOf({ read: write }) : [];
        throw new Error(taken.ok ? `stray ${wrong.join()}` : 'refused');
      })
      .catch((error: Error) => {
        // none of these may be reached past the operations: the database itself says no
        expect(error.message).not.toMatch(/sterile without|open, and yet|held without|sent short to/);
      });
    expect(await this.state()).toBe(untouched);
  }

  private async perform(
    wanted: Act,
    id: SetId,
    who: keyof typeof PEOPLE,
    baseRevision: number,
    when: Command['when'],
  ): Promise<boolean> {
    const [now, newId, person] = [this.at(), this.newId, PEOPLE[who]];
    const doneAt = { now: null, earlier: this.at(-1), future: this.at(30), before: '2026-01-01T00:00:00Z' }[
      when
    ];
    const asked = { db: this.db, now, newId, person, setId: id, baseRevision, doneAt };
    const { doneAt: _, ...untimed } = asked;
    const reason = 'tried in a walk';
    switch (wanted.kind) {
      case 'receive':
        return (await receiveSet(asked)).ok;
      case 'beginWash':
        return (await beginWash(asked)).ok;
      case 'washedClean':
        return (await endWash({ ...asked, seen: 'clean' })).ok;
      case 'washedDirty':
        return (await endWash({ ...asked, seen: 'dirty' })).ok;
      case 'open':
        return (await openSet(asked)).ok;
      case 'reprocess':
        return (await reprocessSet({ ...asked, reason })).ok;
      case 'withdraw':
        return (await withdrawSet({ ...untimed, reason })).ok;
      case 'bringBack':
        return (await bringBackSet({ ...untimed, reason })).ok;
      case 'hold':
        return (await holdSet({ ...asked, because: wanted.because, note: reason })).ok;
      case 'send':
        return (await sendToTheatre({ ...asked, caseId: CASE_IDS[wanted.case] })).ok;
      case 'move':
        return (await moveSet({ ...asked, placeId: PLACE_IDS[wanted.place] })).ok;
      case 'lift': {
        const attestation = {
          own: proofOf(person, now),
          'another’s': proofOf(PEOPLE.administrator, now),
          old: proofOf(person, '2026-01-14T07:00:00.000Z'),
        }[wanted.proof];
        return (await liftHold({ ...asked, to: wanted.to, reason, attestation })).ok;
      }
      case 'pack':
        return this.db.tx(async (write) => {
          const forCase = wanted.short ? CASE_IDS.today : null;
          const packed = await closeOn(write, { of: id, how: 'pack', now, newId, forCase });
          if (packed && wanted.short) await this.decide(write, id);
          return packed;
        });
      case 'startLoad':
      case 'endLoad':
      case 'acceptLoad':
        return this.db.tx((write) =>
          closeOn(write, { of: id, how: wanted.kind, now, newId, useBy: this.useBy }),
        );
    }
  }

  private async decide(write: Queries, id: SetId): Promise<void> {
    const set = (await write.select().from(sets)).find((row) => row.id === id);
    const decisionId = this.newId('decision');
    await write.insert(shortDecisions).values({
      id: decisionId,
      setId: id,
      turnId: set?.turnId ?? '',
      kind: 'oneCase',
      lines: [],
      substitutes: [],
      reason: 'no other set',
      caseId: CASE_IDS.today,
      approvals: [SURGEON_STANDS],
      decidedAt: this.at(),
    });
    const pack = (await write.select().from(packs)).find((row) => row.id === set?.packId);
    await write.run(sql`UPDATE packs SET decision_id = ${decisionId} WHERE id = ${pack?.id}`);
  }
}

it('no sequence of steps, legal or not, by anybody, reaches a state the rules forbid', {
  timeout: 600_000,
}, async () => {
  let done = 0;
  const reached = new Set<string>();
  await fc.assert(
    fc.asyncProperty(
      fc.array(command, { minLength: ACTS, maxLength: ACTS }),
      fc.boolean(),
      async (commands, eventRelated) => {
        const db = await smallHospital();
        if (eventRelated)
          await db.tx((write) =>
            write.insert(settings).values({ key: 'sterility', value: { policy: 'eventRelated' } }),
          );
        const walk = new Walk(db, eventRelated ? null : USE_BY_OF_PACKS);
        for (const one of commands) await walk.take(one);
        expect(await findLedgerBreak(db.read), 'the chain of the ledger').toBeNull();
        expect(await unbalanced(db), 'the journal of pieces').toEqual([]);
        done += walk.done;
        for (const { step } of db.read.all(sql`SELECT DISTINCT step FROM turn_steps`) as { step: string }[])
          reached.add(step);
      },
    ),
    { numRuns: SEQUENCES, seed: 20260114 },
  );
  // the walks got about: every step but one that only a decision leads to, and thousands of acts were done
  expect([...reached].sort()).toEqual(
    turnStep.options.filter((step) => step !== 'shortAwaitingDecision').sort(),
  );
  expect(done).toBeGreaterThan(SEQUENCES * 5);
});
