import { capabilityWords as words } from '../wording/fhir';
import type { Frame } from './frame';
import { OFFERED_TYPES, parametersOf } from './offered';

/** The day this statement last changed. */
const STATED_ON = '2026-11-26';

/** What this service can do, as R5 has a service say it. Nothing of the hospital is in it: it is read before signing in. */
export const capabilityStatement = ({ base }: Pick<Frame, 'base'>) => ({
  resourceType: 'CapabilityStatement' as const,
  status: 'active',
  date: STATED_ON,
  title: words.title,
  description: words.description,
  kind: 'instance',
  software: { name: 'Kitwright' },
  implementation: { description: words.title, url: base },
  fhirVersion: '5.0.0',
  format: ['json', 'application/fhir+json'],
  rest: [
    {
      mode: 'server',
      documentation: words.paging,
      security: { description: words.security },
      resource: OFFERED_TYPES.map((type) => ({
        type,
        interaction: [{ code: 'read' }, { code: 'search-type' }],
        versioning: 'no-version',
        readHistory: false,
        updateCreate: false,
        conditionalCreate: false,
        conditionalRead: 'not-supported',
        conditionalUpdate: false,
        conditionalPatch: false,
        conditionalDelete: 'not-supported',
        referencePolicy: ['literal', 'logical'],
        searchParam: Object.entries(parametersOf(type)).map(
          ([name, { type: kind, definition, documentation }]) => ({
            name,
            ...(definition !== null && { definition }),
            type: kind,
            documentation,
          }),
        ),
      })),
    },
  ],
});
