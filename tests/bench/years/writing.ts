import { createHash } from 'node:crypto';
import type Sqlite from 'better-sqlite3';
import { rowFromItem } from '@/db/mappers/item';
import { item } from '@/lib/catalogue/item';
import { hashInput, LEDGER_START } from '@/lib/ledger/chain';
import { packNumberOf } from '@/lib/packs/packNumber';
import { catalogueEntries } from '@/seed/catalogue/catalogue';
import { Chance } from '@/seed/history/chance';
import { type Size, YEARS_END } from './size';
import { statements } from './statements';

const CONFIGURATIONS = 60;
/** Lines of a set that hold implants, and pieces each expects. */
const IMPLANT_LINES = 24;
const EXPECTED = 4;
const PIECES_PER_CASE = 6;
const PACKS_PER_LOAD = 8;
const SURGEONS = 20;
const TECHNICIANS = 40;
const MINUTE = 60_000;
const DAY = 86_400_000;
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

const iso = (ms: number) => new Date(ms).toISOString();
const day = (ms: number) => iso(ms).slice(0, 10);

interface Line {
  id: string;
  itemId: string;
}

/** Writes the years, row by row. */
export class Writing {
  private readonly chance = new Chance(952_010);
  private readonly insert: ReturnType<typeof statements>;
  private readonly linesOf: Line[][] = [];
  private readonly lots = new Map<string, { lot: string; heap: string; left: number; made: number }>();
  private hash = LEDGER_START;
  private seq = 0;
  private packs = 0;
  private loads = 0;

  constructor(
    db: Sqlite.Database,
    private readonly size: Size,
  ) {
    this.insert = statements(db);
  }

  /** What is there before anything is done. */
  ground(): void {
    const { items, sets, linesPerSet, years } = this.size;
    const began = iso(YEARS_END - years * 365 * DAY);
    const { insert } = this;
    insert.maker.run('maker_years', 'Invented works');
    for (let n = 0; n < TECHNICIANS; n += 1)
      insert.person.run(`person_t${n}`, `Technician ${n}`, 'technician');
    for (let n = 0; n < SURGEONS; n += 1) insert.person.run(`person_s${n}`, `Surgeon ${n}`, 'surgeon');
    insert.place.run('place_store', 'Store', 1);
    insert.theatre.run('theatre_1', 'Theatre 1');
    insert.steriliser.run('steriliser_1', 'Steriliser 1', '[]');
    insert.steriliser.run('steriliser_2', 'Steriliser 2', '[]');
    const entries = catalogueEntries();
    const implants: string[] = [];
    const others: string[] = [];
    for (let n = 0; n < items; n += 1) {
      const entry = entries[n % entries.length];
      if (!entry) throw new Error('the catalogue has entries');
      const round = Math.floor(n / entries.length);
      const id = `${entry.id}-r${round}`;
      const row = rowFromItem(
        item.parse({ ...entry, id, code: `${entry.code}-R${round}`, makerId: 'maker_years', gtin: null }),
        1,
        'Invented works',
      );
      insert.item(row);
      (entry.kind === 'screw' || entry.kind === 'plate' ? implants : others).push(id);
    }
    for (let c = 0; c < CONFIGURATIONS; c += 1) {
      insert.configuration.run(`configuration_y${c}`, `Y${c}`, `Configuration ${c}`);
      insert.version.run(
        `version_y${c}`,
        `configuration_y${c}`,
        1,
        'inForce',
        '[{"name":"Layer 1"}]',
        '[]',
        day(YEARS_END - 4_000 * DAY),
        1,
      );
      const lines: Line[] = [];
      for (let l = 0; l < linesPerSet; l += 1) {
        const from = l < IMPLANT_LINES ? implants : others;
        const itemId = from[(c * 37 + l * 11) % from.length] ?? '';
        const id = `line_y${c}-${l}`;
        lines.push({ id, itemId });
        insert.line.run(
          id,
          `version_y${c}`,
          itemId,
          1,
          Math.floor(l / 10) + 1,
          (l % 10) + 1,
          EXPECTED,
          1,
          1 + (l % 4),
          '[]',
        );
      }
      this.linesOf.push(lines);
    }
    for (let s = 0; s < sets; s += 1) {
      const c = s % CONFIGURATIONS;
      insert.set.run(`set_y${s}`, `Y${c}-${s}`, `version_y${c}`, iso(YEARS_END - DAY), 'place_store');
      for (const { id, itemId } of this.linesOf[c] ?? []) {
        insert.content.run(`set_y${s}`, id, EXPECTED);
        insert.opening.run(itemId, EXPECTED, `set_y${s}`, id, began.slice(0, 10), began, began);
      }
    }
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
      if (n % 10_000 === 9_999) say(`${n + 1} cases, ${turn} turns, ${this.seq} ledger entries`);
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
      this.enter(step, setId, technician, at, { turnId, from, to: step });
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
    if (isFirst) this.use(set, setId, caseId, packId, startsAt, technician);
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

  /** Six pieces leave slots of the set, and as many come from lots of the shelf the same day. */
  private use(
    set: number,
    setId: string,
    caseId: string,
    packId: string,
    startsAt: number,
    by: string,
  ): void {
    const lines = this.linesOf[set % CONFIGURATIONS] ?? [];
    for (let piece = 0; piece < PIECES_PER_CASE; piece += 1) {
      const line = lines[this.chance.whole(0, IMPLANT_LINES - 1)];
      if (!line) continue;
      const act = this.chance.is(0.07) ? 'wasted' : 'implanted';
      const at = iso(startsAt + (20 + piece) * MINUTE);
      this.insert.move.run(
        act,
        line.itemId,
        null,
        null,
        1,
        null,
        setId,
        line.id,
        null,
        null,
        null,
        caseId,
        packId,
        1_200,
        by,
        at.slice(0, 10),
        at,
        at,
      );
      const lot = this.lotOf(line.itemId, startsAt);
      const back = iso(startsAt + (360 + piece) * MINUTE);
      this.insert.move.run(
        'refilled',
        line.itemId,
        lot.lot,
        null,
        1,
        lot.heap,
        null,
        null,
        null,
        setId,
        line.id,
        null,
        null,
        1_200,
        by,
        back.slice(0, 10),
        back,
        back,
      );
      lot.left -= 1;
    }
  }

  private lotOf(itemId: string, at: number) {
    const known = this.lots.get(itemId);
    if (known && known.left > 0) return known;
    const made = (known?.made ?? 0) + 1;
    const stem = itemId.slice('item_'.length);
    const lot = { lot: `${stem}-${made}`.toUpperCase(), heap: `stock_y-${stem}-${made}`, left: 20, made };
    this.lots.set(itemId, lot);
    this.insert.heap.run(lot.heap, itemId, lot.lot);
    const came = iso(at - 7 * DAY);
    this.insert.move.run(
      'received',
      itemId,
      lot.lot,
      null,
      20,
      null,
      null,
      null,
      lot.heap,
      null,
      null,
      null,
      null,
      1_200,
      'person_t0',
      came.slice(0, 10),
      came,
      came,
    );
    return lot;
  }

  private enter(action: string, subjectId: string, personId: string, at: string, detail: object): void {
    this.seq += 1;
    const detailText = JSON.stringify(detail);
    const row = {
      seq: this.seq,
      form: 2,
      doneAt: at,
      enteredAt: at,
      personId,
      action: ACTION[action] ?? 'move-set',
      subjectKind: 'set',
      subjectId,
      detailText,
      previousHash: this.hash,
    };
    const input = hashInput(row);
    if (input === null) throw new Error('form 2 has its input');
    this.hash = createHash('sha256').update(input, 'utf8').digest('hex');
    this.insert.ledger.run(
      row.seq,
      2,
      at,
      at,
      personId,
      row.action,
      'set',
      subjectId,
      detailText,
      row.previousHash,
      this.hash,
    );
  }
}

/** The act a step is recorded by. */
const ACTION: Record<string, string> = {
  comingBack: 'receive-set',
  washing: 'begin-wash',
  onBench: 'end-wash',
  packed: 'pack-set',
  inSteriliser: 'start-load',
  awaitingAcceptance: 'end-load',
  inSterileStore: 'accept-load',
  inTheatre: 'send-to-theatre',
};
