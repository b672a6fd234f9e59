import { asc, desc, eq, ne, sql } from 'drizzle-orm';
import { createFitEngine, type FitEngine } from '@/lib/fit/engine';
import { overFamilies } from '@/lib/fit/exceptions';
import type { FitException, FitRule, FitSettings } from '@/lib/fit/rule';
import { standingOn } from '@/lib/fit/standing';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { Database } from '../client';
import { exceptionFromRow, ruleFromRow } from '../mappers/fitRule';
import { mayRead, type Reading } from '../reader';
import { fitExceptions, fitRules, items, settings } from '../schema';
import { readSetting } from './settings';
import { hospitalToday } from './today';

/** The settings row that rules read their local limits from. */
const FIT_SETTINGS_KEY = 'fit';

/** Every rule in every version, drafts and withdrawn ones too, by relation, code and version (newest first). */
export async function listFitRules(db: Reading): Promise<FitRule[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read
    .select()
    .from(fitRules)
    .orderBy(asc(fitRules.relation), asc(fitRules.code), desc(fitRules.version));
  return rows.map(ruleFromRow);
}

/** Every version of one rule, newest first; empty when there is no such code. */
export async function fitRuleVersions(db: Reading, code: string): Promise<FitRule[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read
    .select()
    .from(fitRules)
    .where(eq(fitRules.code, code))
    .orderBy(desc(fitRules.version));
  return rows.map(ruleFromRow);
}

/** Every named exception, drafts and withdrawn ones too, newest version first. */
export async function listFitExceptions(db: Reading): Promise<FitException[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const rows = await read
    .select()
    .from(fitExceptions)
    .orderBy(asc(fitExceptions.relation), desc(fitExceptions.version));
  return rows.map(exceptionFromRow);
}

/** Local limits that rules refer to; the defaults until the hospital has set its own. */
export async function loadFitSettings(db: Reading): Promise<FitSettings> {
  mayRead(db, 'readHospital');
  const { read } = db;
  return readSetting(read, FIT_SETTINGS_KEY);
}

/** What holds on one day, before it is made into an engine: rules, exceptions and settings. */
export interface FitBasis {
  rules: FitRule[];
  exceptions: FitException[];
  settings: FitSettings;
}

/**
 * The rules, exceptions and settings in force on `today`. An exception that names a screw is given for every
 * screw of its screw family: a length is not another design.
 */
export async function loadFitBasis(db: Reading, today: PlainDate): Promise<FitBasis> {
  mayRead(db, 'readHospital');
  const [rules, exceptions, ofFamily, local] = await Promise.all([
    db.read.select().from(fitRules).where(ne(fitRules.status, 'draft')),
    db.read.select().from(fitExceptions).where(ne(fitExceptions.status, 'draft')),
    familiesNamed(db),
    loadFitSettings(db),
  ]);
  return {
    rules: rules.map(ruleFromRow).filter((rule) => standingOn(rule, today) === 'inForce'),
    exceptions: exceptions
      .map(exceptionFromRow)
      .filter((exception) => standingOn(exception, today) === 'inForce')
      .flatMap((exception) => overFamilies(exception, ofFamily)),
    settings: local,
  };
}

/** For each screw that an exception names: all screws of its family. */
async function familiesNamed({ read }: Reading): Promise<Map<string, string[]>> {
  const rows = await read.all<{ named: string; member: string }>(sql`
    SELECT named.id AS named, member.id AS member FROM ${items} AS named
    JOIN ${items} AS member ON member.kind = 'screw' AND member.screw_family = named.screw_family
    WHERE named.kind = 'screw' AND named.id IN
      (SELECT first_item_id FROM ${fitExceptions} UNION SELECT second_item_id FROM ${fitExceptions})`);
  const families = new Map<string, string[]>();
  for (const { named, member } of rows) families.set(named, [...(families.get(named) ?? []), member]);
  return families;
}

const kept = new WeakMap<Database['read'], { stamp: string; engine: FitEngine }>();

/**
 * The engine of what is in force on `today` (the hospital's own date by the database's clock unless told). It is kept until a rule,
 * an exception, a screw family an exception names, or a setting changes, so asking for it again costs a fraction
 * of a millisecond.
 */
export async function loadFitEngine(db: Reading, today?: PlainDate): Promise<FitEngine> {
  mayRead(db, 'readHospital');
  const stamp = await stampOf(db, today);
  const before = kept.get(db.read);
  if (before?.stamp === stamp.text) return before.engine;
  const engine = createFitEngine(await loadFitBasis(db, stamp.today));
  kept.set(db.read, { stamp: stamp.text, engine });
  return engine;
}

async function stampOf({ read }: Reading, today?: PlainDate): Promise<{ text: string; today: PlainDate }> {
  const life = sql`id || status || version || coalesce(in_force_from, '') || coalesce(in_force_until, '')`;
  const [row] = await read.all<{ stamp: string }>(sql`
    SELECT (SELECT coalesce(group_concat(${life}), '') FROM ${fitRules}) || '|' ||
      (SELECT coalesce(group_concat(${life}), '') FROM ${fitExceptions}) || '|' ||
      (SELECT coalesce(max(value), '') FROM ${settings} WHERE key = ${FIT_SETTINGS_KEY}) || '|' ||
      (SELECT coalesce(sum(revision), 0) FROM ${items} WHERE kind = 'screw' AND EXISTS (SELECT 1 FROM ${fitExceptions}))
      AS stamp`);
  const day = today ?? (await hospitalToday(read));
  return { text: `${day}|${row?.stamp}`, today: day };
}
