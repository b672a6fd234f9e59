import type Sqlite from 'better-sqlite3';
import { packNumberOf } from '@/lib/packs/packNumber';
import { Chance } from '@/seed/history/chance';
import { ChainWriting } from './chainWriting';
import { CONFIGURATIONS, SURGEONS, TECHNICIANS, writeGround } from './ground';
import { DAY, day, iso, MINUTE } from './moments';
import { type Size, YEARS_END } from './size';
import { type Statements, statements } from './statements';
import { UsesWriting } from './usesWriting';

const PACKS_PER_LOAD = 8;
/** Steps of a turn, each so many minutes after it began; the last when its case begins. */
const STEPS = [
  ['comingBack', 0],
  ['washing', 40],
  ['onBench', 140],
  ['packed', 200],
  ['inSteriliser', 240],
  ['awaitingAcceptance', 300],
  ['inSterileStore', 330],
] as const;

/** Writes the years, row by row, onto a ground of its own. */
export class Writing {
  private readonly insert: Statements;
  private readonly chain: ChainWriting;
  private readonly uses: UsesWriting;
  private packs = 0;
  private loads = 0;

  constructor(
    db: Sqlite.Database,
    private readonly size: Size,
  ) {
    this.insert = statements(db);
    this.chain = new ChainWriting(this.insert);
    this.uses = new UsesWriting(this.insert, new Chance(952_010), writeGround(this.insert, size));
  }

  /** Case after case: its sets come back from the case before, go round, and are used. */
  years(say: (line: string) => void): void {
    const { years, casesPerYear, setsPerCase, sets } = this.size;
    const cases = years * casesPerYear;
    const began = YEARS_END - years * 365 * DAY;
    const gap = (YEARS_END - began - 2 * DAY) / cases;
    let turn = 0;
    for (let n = 0; n < cases; n += 1) {
      const startsAt = began + DAY + Math.floor(n * gap);
      const caseId = `case_y${n}`;
      this.writeCase(n, caseId, startsAt);
      const until = Math.floor((n + 1) * setsPerCase);
      for (let first = true; turn < until; turn += 1, first = false)
        this.writeTurn(turn % sets, Math.floor(turn / sets) + 1, caseId, startsAt, first);
      if (n % 10_000 === 9_999) say(`${n + 1} cases, ${turn} turns, ${this.chain.entries} ledger entries`);
    }
  }

  private writeCase(n: number, caseId: string, startsAt: number): void {
    const surgeon = `person_s${n % SURGEONS}`;
    const endsAt = startsAt + 90 * MINUTE;
    this.insert.case.run(
      caseId,
      `LM-${String(n % 100).padStart(2, '0')}-${n.toString(36).toUpperCase().padStart(4, '0')}`,
      'theatre_1',
      day(startsAt),
      iso(startsAt),
      iso(endsAt),
      surgeon,
    );
  }

  private writeTurn(set: number, number: number, caseId: string, startsAt: number, isFirst: boolean): void {
    const { insert } = this;
    const setId = `set_y${set}`;
    const turnId = `turn_y${set}-${number}`;
    const packId = `pack_y${this.packs}`;
    const began = startsAt - 20 * 60 * MINUTE;
    const technician = `person_t${(set + number) % TECHNICIANS}`;
    if (this.packs % PACKS_PER_LOAD === 0) this.writeLoad(began + 240 * MINUTE, technician);
    const loadId = `load_y${this.loads}`;
    insert.turn.run(turnId, setId, number, iso(began));
    let from: string | null = number === 1 ? null : 'inTheatre';
    for (const [step, minutes] of [...STEPS, ['inTheatre', 20 * 60 - 20] as const]) {
      const at = iso(began + minutes * MINUTE);
      insert.step.run(setId, turnId, from, step, technician, at, at);
      this.chain.enter(step, setId, technician, at, { turnId, from, to: step });
      from = step;
    }
    insert.pack.run(
      packId,
      packNumberOf(this.packs + 1),
      setId,
      turnId,
      `version_y${set % CONFIGURATIONS}`,
      technician,
      iso(began + 200 * MINUTE),
      loadId,
      day(startsAt + 180 * DAY),
    );
    insert.loadPack.run(
      loadId,
      packId,
      technician,
      iso(began + 235 * MINUTE),
      technician,
      iso(began + 310 * MINUTE),
    );
    const pickId = `pick_y${this.packs}`;
    insert.pick.run(
      pickId,
      caseId,
      setId,
      packId,
      technician,
      iso(startsAt - 30 * MINUTE),
      iso(startsAt - 30 * MINUTE),
      technician,
      iso(startsAt - 25 * MINUTE),
    );
    insert.return.run(
      `return_y${this.packs}`,
      pickId,
      technician,
      iso(startsAt + 100 * MINUTE),
      iso(startsAt + 100 * MINUTE),
    );
    this.packs += 1;
    if (isFirst) this.uses.use(set, setId, caseId, packId, startsAt, technician);
  }

  private writeLoad(at: number, by: string): void {
    this.loads += 1;
    const steriliser = (this.loads % 2) + 1;
    this.insert.load.run(
      `load_y${this.loads}`,
      `L${steriliser}-${String(this.loads).padStart(6, '0')}`,
      `steriliser_${steriliser}`,
      by,
      iso(at - 15 * MINUTE),
      by,
      iso(at),
      by,
      iso(at + 58 * MINUTE),
      by,
      iso(at + 80 * MINUTE),
    );
  }
}
