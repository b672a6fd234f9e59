import type { Resource } from './datatypes';
import type { Frame } from './frame';

interface Entry {
  fullUrl: string;
  resource: Resource;
  search?: { mode: 'match' };
}

export interface Bundle {
  resourceType: 'Bundle';
  type: 'searchset' | 'collection';
  timestamp: string;
  link?: { relation: 'self' | 'next'; url: string }[];
  entry?: Entry[];
}

/** Where a resource is found. */
export const urlOf = ({ base }: Pick<Frame, 'base'>, { resourceType, id }: Resource): string =>
  `${base}/${resourceType}/${id}`;

/**
 * A page of answers to a search. How many there are in all is not said: counting them all for every page would cost more than
 * finding them, and R5 leaves `total` out for that (hl7.org/fhir/R5/bundle.html).
 */
export const searchset = (
  frame: Frame,
  resources: readonly Resource[],
  links: { self: string; next: string | null },
): Bundle => ({
  resourceType: 'Bundle',
  type: 'searchset',
  timestamp: frame.now,
  link: [
    { relation: 'self', url: links.self },
    ...(links.next === null ? [] : [{ relation: 'next' as const, url: links.next }]),
  ],
  // R5 has no empty lists
  ...(resources.length > 0 && {
    entry: resources.map((resource) => ({
      fullUrl: urlOf(frame, resource),
      resource,
      search: { mode: 'match' as const },
    })),
  }),
});
