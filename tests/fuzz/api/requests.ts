import fc from 'fast-check';
import { type Act, may, PERMITTED } from '@/lib/people/permissions';
import { type Role, role } from '@/lib/people/role';
import { DOCUMENT, type Operation } from '../../api/contract';
import { spoiltJson } from '../spoilt';
import { ids, type Schema, valuesOf } from './bodies';
import type { Known } from './known';

/** One request with a body, as some person’s program would send it. */
export interface ApiRequest {
  role: Role;
  method: string;
  /** As the document has it, with names in braces. */
  address: string;
  path: string;
  body: unknown;
  headers: Record<string, string>;
}

/** Whoever is signed out or asked for a first code sends nothing further: these would end the trial, not the program. */
const NOT_TRIED = new Set([
  '/api/v1/people/sign-out',
  '/api/v1/people/session',
  '/api/v1/people/account',
  '/api/v1/people/first-run',
]);

const resolve = (ref: string): Schema => {
  const name = ref.split('/').at(-1) ?? '';
  return (DOCUMENT.components.schemas[name] ?? {}) as Schema;
};

/** An operation as the description has it. */
export interface Tried {
  method: string;
  address: string;
  operation: Operation & { 'x-act'?: string };
}

/** Every operation of the description that takes a body. */
export const OPERATIONS: readonly Tried[] = Object.entries(DOCUMENT.paths).flatMap(([address, operations]) =>
  Object.entries(operations).flatMap(([method, operation]) =>
    operation.requestBody && !NOT_TRIED.has(address)
      ? [{ method: method.toUpperCase(), address, operation }]
      : [],
  ),
);

/** What anybody may do is told of as no act. */
const isAct = (act: string | undefined): act is Act => act !== undefined && act in PERMITTED;

/** Those that a token reaches too. */
export const BY_TOKEN: readonly Tried[] = OPERATIONS.filter(({ operation }) =>
  operation.security.some((one) => 'token' in one),
);

const allowed = ({ operation: { 'x-act': act } }: Tried): Role[] => {
  const those = role.options.filter((one) => !isAct(act) || may({ role: one }, act));
  return those.length === 0 ? [...role.options] : those;
};

/** Requests to any operation, as described or spoilt, by somebody who may and at times by somebody who may not. */
export function requests(known: Known, operations: readonly Tried[]): fc.Arbitrary<ApiRequest> {
  return fc.constantFrom(...operations).chain((one) => {
    const schema = (one.operation.requestBody?.content['application/json']?.schema ?? {}) as Schema;
    const sound = valuesOf(schema, known, resolve);
    return fc
      .record({
        role: fc.oneof(
          { weight: 9, arbitrary: fc.constantFrom(...allowed(one)) },
          fc.constantFrom(...role.options),
        ),
        body: fc.oneof({ weight: 2, arbitrary: sound }, spoiltJson(sound, 3)),
        path: filled(one.address, known),
        revision: fc.option(fc.integer({ min: 0, max: 4 }), { freq: 3 }),
        key: fc.option(fc.stringMatching(/^[a-z]{1,2}$/), { freq: 8 }),
      })
      .map(({ role, body, path, revision, key }) => ({
        ...{ role, method: one.method, address: one.address, path, body },
        headers: {
          ...(revision === null ? {} : { 'If-Match': `"${revision}"` }),
          ...(key === null ? {} : { 'Idempotency-Key': key }),
        },
      }));
  });
}

/** An address with ids of things that are there, mostly of the kind its place before the name tells. */
function filled(address: string, known: Known): fc.Arbitrary<string> {
  const parts = address.split('/').map((part, at, all) => {
    if (!part.startsWith('{')) return fc.constant(part);
    return part === '{id}' ? ids(kindOf(all[at - 1] ?? '', known), known) : named(all[at - 1] ?? '');
  });
  return fc.tuple(...parts).map((all) => all.map((part) => encodeURIComponent(part)).join('/'));
}

const NAMES: Record<string, readonly string[]> = {
  exchange: ['people', 'catalogue', 'holes', 'configurations', 'sets', 'deliveries', 'stock'],
  calculations: ['identifier', 'reorder', 'trace'],
  settings: ['stages', 'caution', 'costs', 'restock'],
};
const named = (before: string) => fc.constantFrom(...(NAMES[before] ?? []), 'none');

/** `stock-counts` tells of `stockCount_…`. */
function kindOf(place: string, known: Known): string {
  const singular = place
    .replace(/ies$/, 'y')
    .replace(/s$/, '')
    .replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
  const kinds = [...known.ids.keys()];
  return (
    kinds.find((kind) => kind === singular) ??
    OTHERWISE[place] ??
    kinds.find((kind) => kind.toLowerCase().endsWith(singular.toLowerCase())) ??
    singular
  );
}
const OTHERWISE: Record<string, string> = {
  bench: 'count',
  'kit-checks': 'check',
  items: 'item',
  sessions: 'session',
};
