import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as schema from '@/db/schema';
import { ACT_EFFECT, ACTS_WITHOUT_COST, BOOKKEEPING_ACTS } from '@/lib/ledger/effect';
import { actWords, LEDGER_ACTS } from '@/lib/wording/ledger-acts';

/** What fit rules and exceptions have in common is written once, with the kind's name in the act's. */
const KEPT = ['fit-rule', 'fit-exception'];
/** Acts of earlier programs, which ledgers still hold. */
const EARLIER = ['record-count', 'delete-plan-start'];
const NAME = /^[a-z]+(-[a-z]+)+$/;

function sources(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(folder, name), 'utf8'));
}

/** Every literal that stands where an act is named: `action: '…'`, a choice between two, or one with a kind in it. */
function actsIn(text: string): string[] {
  const named = [...text.matchAll(/\baction(?::|\s*=)\s*/g)].map(({ index, 0: { length } }) => {
    const rest = text.slice(index + length, index + length + 300);
    // up to the comma, semicolon or bracket that ends the expression, outside of quotes
    return /^(?:'[^']*'|`[^`]*`|[^'`,;}])*/.exec(rest)?.[0] ?? '';
  });
  // handed to what operations on one kind of thing share: `atPerson(request, 'issue-badge', …)`
  const handed = [...text.matchAll(/\bat[A-Z]\w*\([^'()]*'([^']+)'/g)].map(([, name]) => `'${name}'`);
  return [...named, ...handed].flatMap((said) => {
    const literals = [...said.matchAll(/'([^']+)'/g)].map(([, name]) => name ?? '');
    const patterns = [...said.matchAll(/`([^`]+)`/g)].flatMap(([, name]) =>
      KEPT.map((kept) => (name ?? '').replace(/\$\{kept\}/, kept)),
    );
    return [...literals, ...patterns].filter((name) => NAME.test(name));
  });
}

describe('the acts of the ledger', () => {
  const written = new Set([
    ...sources('db/operations').flatMap(actsIn),
    ...sources('seed').flatMap(actsIn),
    // named by constants of `lib/ledger`
    'correct-record',
    'seal-earlier-entries',
  ]);
  const worded = LEDGER_ACTS.map(({ action }) => action);

  it('are found in the operations', () => {
    expect(written.size).toBeGreaterThan(60);
    expect(written).toContain('withdraw-fit-exception');
    expect(written).toContain('bring-back-steriliser');
  });

  it('all have words', () => {
    expect([...written].filter((action) => !worded.includes(action as never)).sort()).toEqual([]);
  });

  it('have no words for an act that nothing writes', () => {
    // some are handed to what several operations share, so the name is looked for wherever it stands
    const text = sources('db/operations').join('\n');
    const unwritten = worded.filter((action) => !written.has(action) && !text.includes(`'${action}'`));
    expect(unwritten).toEqual(EARLIER);
  });

  it('of a later program are shown by their own name', () => {
    expect(actWords('sweep-the-floor')).toBe('Sweep the floor');
  });
});

/** What a kit, a set's standing and the work queue are worked out from. */
const RESTED_ON = [
  'cases',
  'configurationLines',
  'configurationVersions',
  'configurations',
  'counts',
  'fitExceptions',
  'fitRules',
  'items',
  'makers',
  'packs',
  'places',
  'plans',
  'setContents',
  'setForeignPieces',
  'setPromises',
  'sets',
  'settings',
  'shortDecisions',
  'stock',
  'turnSteps',
  'turns',
];

const TABLES = Object.keys(schema);

describe('what an act can change', () => {
  const files = readdirSync('db/operations', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => ({ name, text: readFileSync(join('db/operations', name), 'utf8') }));
  /** Files that name the act, and what they share within its folder. */
  const written = (action: string) => files.filter(({ text }) => text.includes(`'${action}'`));
  const changedIn = (text: string) =>
    [...text.matchAll(/\.(?:insert|update|delete)\((\w+)\)/g)].map(([, table]) => table ?? '');

  it('is said of every act', () => {
    expect(Object.keys(ACT_EFFECT).sort()).toEqual(LEDGER_ACTS.map(({ action }) => action).sort());
  });

  it('is a kit where an operation writes to what kits rest on', () => {
    expect(BOOKKEEPING_ACTS).toContain('record-scan');
    expect(BOOKKEEPING_ACTS).not.toContain('move-set');
    const wrong = BOOKKEEPING_ACTS.flatMap((action) =>
      written(action).flatMap(({ name, text }) => [
        ...changedIn(text).flatMap((table) =>
          RESTED_ON.includes(table) ? [`${action}: ${name} writes ${table}`] : [],
        ),
        ...(text.includes('takeStep(') ? [`${action}: ${name} takes a step`] : []),
      ]),
    );
    expect(wrong).toEqual([]);
  });

  it('is no cost where an operation moves no piece and writes nothing that costs of cases rest on', () => {
    const costRestsOn = [
      'caseOrigins',
      'cases',
      'configurationVersions',
      'emergencySets',
      'items',
      'moveReasons',
      'movesTakenBack',
      'pieceMoves',
      'preferenceCards',
      'procedures',
      'settings',
      'stock',
    ];
    for (const table of costRestsOn) expect(TABLES).toContain(table);
    const textOf = new Map(files.map(({ name, text }) => [name, text]));
    /** The file and all of the operations that it calls upon. */
    const reached = (name: string, seen = new Set<string>()): Set<string> => {
      if (seen.has(name) || !textOf.has(name)) return seen;
      seen.add(name);
      for (const [, from = ''] of textOf.get(name)?.matchAll(/from '(\.[^']+)'/g) ?? [])
        reached(`${join(name, '..', from)}.ts`, seen);
      return seen;
    };
    // what notes a set as sent stands beside what notes it as back: it is looked for where it is called
    const moves = (name: string, text: string) =>
      /recordMoves\(|noteSent\(/.test(text) ||
      (!name.endsWith('note-set.ts') && /issuedAt:|goneAt:/.test(text));
    const reachOf = (action: string) =>
      written(action).flatMap((file) =>
        [...reached(file.name)].map((name) => ({ name, text: textOf.get(name) ?? '' })),
      );
    const costs = (action: string) =>
      reachOf(action).flatMap(({ name, text }) => [
        ...changedIn(text).flatMap((table) =>
          costRestsOn.includes(table) ? [`${action}: ${name} writes ${table}`] : [],
        ),
        ...(moves(name, text) && !name.endsWith('note-set.ts') ? [`${action}: ${name} moves or issues`] : []),
      ]);
    expect(ACTS_WITHOUT_COST.flatMap(costs)).toEqual([]);
    expect(ACTS_WITHOUT_COST.filter((action) => written(action).length === 0)).toEqual([]);
    // the look finds what it looks for
    for (const action of ['record-use', 'issue-kit', 'send-to-theatre', 'accept-load', 'correct-use'])
      expect(costs(action)).not.toEqual([]);
  });

  it('is looked for where the acts are written', () => {
    const found = BOOKKEEPING_ACTS.filter((action) => written(action).length > 0);
    expect(BOOKKEEPING_ACTS.filter((action) => !found.includes(action))).toEqual([
      'delete-plan-start',
      'seal-earlier-entries',
    ]);
    expect(written('refit-set').flatMap(({ text }) => changedIn(text))).toContain('sets');
    for (const table of RESTED_ON) expect(TABLES).toContain(table);
  });
});
