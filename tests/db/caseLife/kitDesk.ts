import { eq } from 'drizzle-orm';
import type { Database } from '@/db/client';
import { beginCheck } from '@/db/operations/caseLife/begin-check';
import { closeCheck } from '@/db/operations/caseLife/close-check';
import { finishPicking } from '@/db/operations/caseLife/finish-picking';
import { issueKit } from '@/db/operations/caseLife/issue-kit';
import { makeList } from '@/db/operations/caseLife/make-list';
import { recordCheckEntry } from '@/db/operations/caseLife/record-check-entry';
import { recordPick } from '@/db/operations/caseLife/record-pick';
import { returnThing } from '@/db/operations/caseLife/return-thing';
import { takeKit } from '@/db/operations/caseLife/take-kit';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { type KitOnRecord, kitOnRecord } from '@/db/queries/caseLife/standing';
import { workOutList } from '@/db/queries/caseLife/workOutList';
import type { Person } from '@/db/queries/people';
import { people, sets, stock } from '@/db/schema';
import type { ReturnOutcome } from '@/lib/caseLife/account';
import type { ThingAtHand } from '@/lib/caseLife/act';
import { type CaseId, caseId, checkId, type NewId, personId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { Attestation, Meaning } from '@/lib/people/attestation';
import { role } from '@/lib/people/role';
import { DEMO_NOW } from '../../setup/database';

/** The sentences of a refusal; an empty list where it was done. */
export const saidOf = (outcome: Outcome<unknown, never>): string[] =>
  outcome.ok ? [] : outcome.refusal.problems.map(({ message }) => message);
export const codesOf = (outcome: Outcome<unknown, never>): string[] =>
  outcome.ok ? [] : outcome.refusal.problems.map(({ code }) => code);

export const setThing = (code: string): ThingAtHand =>
  ({ kind: 'set', setId: `set_${code.toLowerCase()}`, packId: null }) as ThingAtHand;
export const stockThing = (id: string): ThingAtHand => ({ kind: 'stock', stockId: id }) as ThingAtHand;

/** One case of the demo and the people round it; each act a minute after the one before. */
export class KitDesk {
  private minutes = 0;
  private made = 0;
  readonly caseId: CaseId;
  readonly round: RoundTimes = { leadMinutes: 60, roundMinutes: () => 300 };
  readonly newId: NewId = (prefix) => {
    this.made += 1;
    return `${prefix}_test-${this.made}`;
  };

  constructor(
    readonly db: Database,
    reference: string,
  ) {
    this.caseId = caseId.parse(`case_${reference.toLowerCase()}`);
  }

  now(): string {
    this.minutes += 1;
    return new Date(DEMO_NOW.getTime() + this.minutes * 60_000).toISOString();
  }

  async person(name: string): Promise<Person> {
    const [row] = await this.db.read
      .select()
      .from(people)
      .where(eq(people.id, `person_${name}`));
    if (!row) throw new Error(`nobody is called ${name}`);
    return { id: personId.parse(row.id), name: row.name, role: role.parse(row.role) };
  }

  proof(person: Person, meaning: Meaning, at: string): Attestation {
    return { personId: person.id, meaning, method: 'pin', at };
  }

  async kit(): Promise<KitOnRecord> {
    const kit = await kitOnRecord(this.db.read, this.caseId);
    if (!kit) throw new Error('there is no such case');
    return kit;
  }

  private async step(name: string) {
    const [person, kit] = [await this.person(name), await this.kit()];
    const { db, newId } = this;
    return { db, newId, person, now: this.now(), caseId: this.caseId, baseRevision: kit.life?.revision ?? 0 };
  }

  async makeList(name = 'wren-adeyemi') {
    const worked = await workOutList(this.db, this.caseId, { solver: null });
    if (!worked) throw new Error('no plan is confirmed');
    return makeList({ ...(await this.step(name)), ...worked });
  }

  async pick(thing: ThingAtHand, { name = 'wren-adeyemi', quantity = 1, id = this.newId('pick') } = {}) {
    const at = this.now();
    return this.send(name, { kind: 'pick', id, thing, quantity, how: 'touch', doneAt: at }, at);
  }

  async putBack(pickId: string, { name = 'wren-adeyemi', id = this.newId('entry') } = {}) {
    const at = this.now();
    return this.send(name, { kind: 'putBack', id, pickId, doneAt: at }, at);
  }

  async send(name: string, pick: unknown, at = this.now()) {
    const { db, newId, round, caseId: id } = this;
    const person = await this.person(name);
    return recordPick({ db, newId, round, person, sessionId: null, caseId: id, now: at, pick });
  }

  async finish(note: string | null = null, name = 'wren-adeyemi') {
    return finishPicking({ ...(await this.step(name)), note });
  }

  async check(things: readonly { thing: ThingAtHand; quantity?: number }[], name = 'tomas-birkett') {
    const person = await this.person(name);
    const begun = await beginCheck({
      db: this.db,
      now: this.now(),
      person,
      workstationId: null,
      caseId: this.caseId,
      checkId: checkId.parse(this.newId('check')),
    });
    if (!begun.ok) return begun;
    const id = checkId.parse(begun.value.checkId);
    const entryIds: string[] = [];
    for (const { thing, quantity = 1 } of things) {
      const entry = { id: this.newId('entry'), act: { kind: 'seen', thing, quantity }, doneAt: this.now() };
      entryIds.push(entry.id);
      const done = await recordCheckEntry({
        db: this.db,
        now: this.now(),
        person,
        sessionId: null,
        checkId: id,
        entry,
      });
      if (!done.ok) return done;
    }
    const at = this.now();
    const attestation = this.proof(person, 'iChecked', at);
    return closeCheck({ db: this.db, now: at, person, checkId: id, entryIds, attestation });
  }

  async issue(name = 'wren-adeyemi') {
    return issueKit(await this.step(name));
  }

  async take(name = 'ruth-okonjo') {
    return takeKit(await this.step(name));
  }

  async returned(
    pickId: string,
    outcome: ReturnOutcome,
    {
      quantity = 1,
      note = null as string | null,
      name = 'wren-adeyemi',
      id = this.newId('return'),
      proven = true,
    } = {},
  ) {
    const [person, at] = [await this.person(name), this.now()];
    return returnThing({
      db: this.db,
      now: at,
      newId: this.newId,
      person,
      caseId: this.caseId,
      returned: { id, pickId, outcome, quantity, note },
      attestation: proven ? this.proof(person, 'iLookedAtTheBarrier', at) : null,
    });
  }

  async set(code: string) {
    const [row] = await this.db.read.select().from(sets).where(eq(sets.code, code));
    if (!row) throw new Error(`there is no ${code}`);
    return row;
  }

  async heap(id: string) {
    const [row] = await this.db.read.select().from(stock).where(eq(stock.id, id));
    if (!row) throw new Error(`there is no ${id}`);
    return row;
  }
}
