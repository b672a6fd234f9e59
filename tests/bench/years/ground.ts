import { rowFromItem } from '@/db/mappers/item';
import { item } from '@/lib/catalogue/item';
import { catalogueEntries } from '@/seed/catalogue/catalogue';
import { DAY, day, iso } from './moments';
import { type Size, YEARS_END } from './size';
import type { Statements } from './statements';

export const CONFIGURATIONS = 60;
/** Lines of a set that hold implants, and pieces each expects. */
export const IMPLANT_LINES = 24;
const EXPECTED = 4;
export const SURGEONS = 20;
export const TECHNICIANS = 40;

export interface Line {
  id: string;
  itemId: string;
}

/** What is there before anything is done. @returns the lines of each configuration, those with implants first */
export function writeGround(insert: Statements, size: Size): Line[][] {
  writeHouse(insert);
  const { implants, others } = writeCatalogue(insert, size);
  const linesOf = writeConfigurations(insert, size, implants, others);
  writeSets(insert, size, linesOf);
  return linesOf;
}

function writeHouse(insert: Statements): void {
  insert.maker.run('maker_years', 'Invented works');
  for (let n = 0; n < TECHNICIANS; n += 1) insert.person.run(`person_t${n}`, `Technician ${n}`, 'technician');
  for (let n = 0; n < SURGEONS; n += 1) insert.person.run(`person_s${n}`, `Surgeon ${n}`, 'surgeon');
  insert.place.run('place_store', 'Store', 1);
  insert.theatre.run('theatre_1', 'Theatre 1');
  insert.steriliser.run('steriliser_1', 'Steriliser 1', '[]');
  insert.steriliser.run('steriliser_2', 'Steriliser 2', '[]');
}

/** @returns the ids of what is implanted, and of all else */
function writeCatalogue(insert: Statements, { items }: Size): { implants: string[]; others: string[] } {
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
  return { implants, others };
}

function writeConfigurations(
  insert: Statements,
  { linesPerSet }: Size,
  implants: readonly string[],
  others: readonly string[],
): Line[][] {
  const linesOf: Line[][] = [];
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
    linesOf.push(lines);
  }
  return linesOf;
}

function writeSets(insert: Statements, { sets, years }: Size, linesOf: readonly Line[][]): void {
  const began = iso(YEARS_END - years * 365 * DAY);
  for (let s = 0; s < sets; s += 1) {
    const c = s % CONFIGURATIONS;
    insert.set.run(`set_y${s}`, `Y${c}-${s}`, `version_y${c}`, iso(YEARS_END - DAY), 'place_store');
    for (const { id, itemId } of linesOf[c] ?? []) {
      insert.content.run(`set_y${s}`, id, EXPECTED);
      insert.opening.run(itemId, EXPECTED, `set_y${s}`, id, began.slice(0, 10), began, began);
    }
  }
}
