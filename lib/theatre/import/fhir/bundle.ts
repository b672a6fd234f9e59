import { z } from 'zod';
import { type JsonProblem, locateJsonProblem } from '../../../json/locateJsonProblem';
import { kindOf, type ReadResource, type Reference, readResource } from './resources';

export type BundleRead =
  | { ok: true; bundle: Bundle }
  | { ok: false; why: 'notJson'; at: JsonProblem }
  | { ok: false; why: 'notABundle' };

/** A resource with its place among the entries, from 1. */
export interface Entry<R extends ReadResource = ReadResource> {
  number: number;
  resource: R;
}

type OfKind<K extends ReadResource['resourceType']> = Extract<ReadResource, { resourceType: K }>;

/** A bundle as far as it is read: its resources by the elements that are looked at, and how references lead to them. */
export interface Bundle {
  entries: readonly Entry[];
  /** Entries of kinds that are not looked into, by kind. */
  ignored: ReadonlyMap<string, number>;
  /** The resource a reference leads to, if it is of that kind and here. */
  find<K extends ReadResource['resourceType']>(kind: K, reference: Reference): OfKind<K> | null;
}

const envelope = z.object({
  resourceType: z.literal('Bundle'),
  entry: z
    .array(z.object({ fullUrl: z.string().max(2_000).optional().catch(undefined), resource: z.unknown() }))
    .optional(),
});

/** Reads a FHIR bundle (hl7.org/fhir/R4/bundle.html, hl7.org/fhir/R5/bundle.html). */
export function readBundle(text: string): BundleRead {
  const wrong = locateJsonProblem(text);
  if (wrong) return { ok: false, why: 'notJson', at: wrong };
  const parsed = envelope.safeParse(JSON.parse(text));
  if (!parsed.success) return { ok: false, why: 'notABundle' };
  const entries: Entry[] = [];
  const ignored = new Map<string, number>();
  const byAddress = new Map<string, ReadResource>();
  for (const [at, { fullUrl, resource }] of (parsed.data.entry ?? []).entries()) {
    const read = readResource(resource);
    if (read === null) {
      const kind = kindOf(resource) ?? 'without a kind';
      ignored.set(kind, (ignored.get(kind) ?? 0) + 1);
      continue;
    }
    entries.push({ number: at + 1, resource: read });
    if (fullUrl !== undefined) byAddress.set(fullUrl, read);
    if (read.id !== undefined) byAddress.set(`${read.resourceType}/${read.id}`, read);
  }
  return {
    ok: true,
    bundle: {
      entries,
      ignored,
      find: (kind, { reference }) => {
        if (reference === undefined) return null;
        const plain = reference.replace(/\/_history\/[^/]+$/, '');
        const found = byAddress.get(plain) ?? byAddress.get(plain.split('/').slice(-2).join('/'));
        return found?.resourceType === kind ? (found as OfKind<typeof kind>) : null;
      },
    },
  };
}

/** The kind of thing a reference leads to, by itself; `null` where it does not say. */
export function kindOfReference({ reference, type }: Reference): string | null {
  if (type !== undefined) return type.split('/').at(-1) ?? null;
  return /(?:^|\/)([A-Z][A-Za-z]+)\/[^/]+(?:\/_history\/[^/]+)?$/.exec(reference ?? '')?.[1] ?? null;
}
