import { answerRead, answerSearch, everyPage } from '@/app/_server/fhir/answers';
import type { Database } from '@/db/client';
import type { Bundle } from '@/lib/fhir/bundle';
import type { Resource } from '@/lib/fhir/datatypes';
import { OFFERED_TYPES, type OfferedType } from '@/lib/fhir/offered';
import type { OperationOutcome } from '@/lib/fhir/operationOutcome';
import { DEMO_NOW } from '../../setup/database';

export const FRAME = {
  base: 'https://kitwright.example/api/v1/fhir',
  hospital: 'Larkmoor Infirmary',
  now: DEMO_NOW.toISOString(),
};

// biome-ignore lint/suspicious/noExplicitAny: a test looks into JSON
export type Json = any;

/** Everything of a type, as a client that follows the pages has it. */
export async function allOf(db: Database, type: OfferedType): Promise<Json[]> {
  const all: Resource[] = [];
  for await (const resources of everyPage(db, FRAME, type)) all.push(...resources);
  // as it is sent
  return JSON.parse(JSON.stringify(all));
}

/** Everything there is, by type. */
export async function everything(db: Database): Promise<Record<OfferedType, Json[]>> {
  const found = {} as Record<OfferedType, Json[]>;
  for (const type of OFFERED_TYPES) found[type] = await allOf(db, type);
  return found;
}

export async function search(db: Database, type: string, query: Record<string, string> | string = '') {
  const { status, body } = await answerSearch(db, FRAME, { type, params: new URLSearchParams(query) });
  return { status, bundle: body as Bundle, outcome: body as OperationOutcome };
}

/** Ids found by a search, on its first page. */
export async function idsFound(db: Database, type: string, query: Record<string, string> | string) {
  const { status, bundle, outcome } = await search(db, type, query);
  if (status !== 200) throw new Error(JSON.stringify(outcome.issue));
  return (bundle.entry ?? []).map(({ resource }) => resource.id ?? '');
}

export async function read(db: Database, type: string, id: string): Promise<{ status: number; body: Json }> {
  return answerRead(db, FRAME, { type, id });
}
