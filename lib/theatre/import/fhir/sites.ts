import { REGION_WORDS } from '../../../wording/plans';
import { regionWithin, sideWithin, sideWord } from '../names';
import type { Bundle } from './bundle';
import type { Concept, ServiceRequest } from './resources';

interface Site {
  /** Our word for the region, or what is written where it names none of ours. */
  region: string | null;
  side: string | null;
}

/**
 * Qualifiers of side in SNOMED CT, as the value set for the laterality of a body structure lists them:
 * hl7.org/fhir/R5/valueset-bodystructure-laterality.html.
 */
const SIDE_CODES: Record<string, 'left' | 'right' | 'both'> = {
  '7771000': 'left',
  '24028007': 'right',
  '51440002': 'both',
};

/**
 * Region and side of what is asked for: from `bodySite`, by its words and by a coded side beside them, and in R5 from the
 * BodyStructure it refers to. A site code without words says nothing here: no table of ours turns codes into regions.
 */
export function bodySites(bundle: Bundle, request: ServiceRequest): Site[] {
  const coded = (request.bodySite ?? []).map((site) => siteOf([site]));
  const structure = request.bodyStructure && bundle.find('BodyStructure', request.bodyStructure);
  const structured = (structure?.includedStructure ?? []).map(({ structure: what, laterality }) =>
    siteOf([...(what ? [what] : []), ...(laterality ? [laterality] : [])]),
  );
  return merged([...coded, ...structured]);
}

/** A site that says the side alone, and one that says the region alone, are one site. */
function merged(sites: readonly Site[]): Site[] {
  const [first, second] = sites;
  if (sites.length !== 2 || !first || !second) return [...sites];
  const apart =
    (first.region === null && second.side === null) || (first.side === null && second.region === null);
  return apart
    ? [{ region: first.region ?? second.region, side: first.side ?? second.side }]
    : [first, second];
}

function siteOf(concepts: readonly Concept[]): Site {
  const words = concepts.flatMap(({ text, coding }) => [
    ...(text ? [text] : []),
    ...(coding ?? []).flatMap(({ display }) => (display ? [display] : [])),
  ]);
  const codes = concepts.flatMap(({ coding }) => (coding ?? []).flatMap(({ code }) => (code ? [code] : [])));
  const sides = new Set([
    ...codes.flatMap((code) => SIDE_CODES[code] ?? []),
    ...words.flatMap((one) => sideWithin(one) ?? []),
  ]);
  const regions = new Set(words.flatMap((one) => regionWithin(one) ?? []));
  const [side] = sides;
  const [region] = regions;
  const sideAlone = words.every((one) =>
    /^\W*(left|right|bilateral|right and left)\b[^a-z]*(side|\(qualifier value\))?\W*$/i.test(one),
  );
  return {
    region:
      region !== undefined && regions.size === 1
        ? REGION_WORDS[region]
        : sideAlone || words.length === 0
          ? null
          : (words[0] ?? null),
    side: side === undefined ? null : sides.size > 1 ? sideWord('both') : sideWord(side),
  };
}
