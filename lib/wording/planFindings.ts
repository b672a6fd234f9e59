import type { Relation } from '../fit/rule';
import { never } from '../identity/result';
import type { FindingGroup, PlanFact, PlanPlace } from '../plans/planFinding';
import { writeMm } from '../quantities/length';
import { listWords } from './numbers';
import { LIMB_WORDS, plainMm, REGION_WORDS } from './plans';

/** The sentences of plan findings: each names the thing, what is wrong, and the way out. */

export const GROUP_WORDS: Record<FindingGroup, string> = {
  stop: 'Stop',
  caution: 'Caution',
  remark: 'Remark',
  notEstablished: 'Not established',
  note: 'Note',
};

export const GROUP_MEANINGS: Record<FindingGroup, string> = {
  stop: 'bars confirming until it is settled',
  caution: 'shown, and bars nothing',
  remark: 'advisory, from a published range; bars nothing',
  notEstablished: 'nobody can say yet; never counted as a fit, and no kit is called ready on it',
  note: 'worth knowing, asks for nothing',
};

const WHAT_WORDS = { plate: 'plate', wire: 'wire', washer: 'washer' } as const;

const RELATION_WORDS: Record<Relation, string> = {
  seats: 'whether the screw seats in the hole',
  guides: 'whether the sleeve seats there',
  passes: 'whether it passes the sleeve',
  pilots: 'whether the bit suits the thread hole',
  glides: 'whether the bit suits the gliding hole',
  taps: 'whether the tap suits the screw',
  countersinks: 'whether the countersink suits the head',
  measures: 'whether the gauge suits the screw',
  turns: 'whether the driver suits the screw',
  joins: 'whether the shank joins the handle',
  limits: 'whether the torque limiter suits the screw',
  wearsWith: 'whether the metals may touch',
  sides: 'whether the plate is for this side',
};

/** Where a finding belongs: `P1, hole S3`, `free screw L1`, `the plan`. */
export function placeWords({ plateKey, holeId, screwKey }: PlanPlace): string {
  if (screwKey !== null) return `free screw ${screwKey}`;
  if (plateKey === null) return 'the plan';
  return holeId === null ? `plate ${plateKey}` : `plate ${plateKey}, hole ${holeId}`;
}

/** The sentence shown for a finding. */
export function planFindingSentence(fact: PlanFact): string {
  switch (fact.code) {
    case 'nothing-planned':
      return 'Nothing is planned yet: add a plate or a free screw.';
    case 'limb-not-stated':
      return 'The plan does not state a side.';
    case 'limb-differs':
      return `The plan says ${LIMB_WORDS[fact.planned].toLowerCase()} and the case is booked ${LIMB_WORDS[fact.booked].toLowerCase()}.`;
    case 'region-differs':
      return `The plan is for the ${regionWord(fact.planned)}, and the case is booked for the ${regionWord(fact.booked)}.`;
    case 'duplicate-key':
      return `Two parts of the plan are both called ${fact.key}: remove one of them.`;
    case 'item-unknown':
      return `No ${WHAT_WORDS[fact.what]} in the catalogue has the id ${fact.itemId}: choose another.`;
    case 'item-not-current':
      return `${fact.name} is ${fact.status}: choose another ${WHAT_WORDS[fact.what]}.`;
    case 'hole-unknown':
      return `${fact.plate} has no hole ${fact.unknownHole}: clear it from the plan.`;
    case 'hole-not-decided':
      return 'Not decided yet: say what goes in, or that it is left empty.';
    case 'zone-beyond-plate':
      return `The fracture zone ends at ${writeMm(fact.toUm)} mm, past the end of the plate at ${writeMm(fact.plateUm)} mm.`;
    case 'plate-length-not-stated':
      return `The length of ${fact.plate} is not stated, so the zone can't be placed on it.`;
    case 'family-unknown':
      return `The catalogue has no screw family “${fact.screwFamily}”: choose another.`;
    case 'family-not-current':
      return `Every screw of “${fact.screwFamily}” is ${fact.status}: choose another family.`;
    case 'family-lengths-not-stated':
      return `The lengths of “${fact.screwFamily}” are not stated in the catalogue.`;
    case 'length-not-stated':
      return 'The length is not stated: give a number, or a mean and spread.';
    case 'length-not-made':
      return `${writeMm(fact.wantedUm)} mm is not made in “${fact.screwFamily}”${longerWords(fact.acceptLongerMm)}; made: ${mmList(fact.madeUm)}.`;
    case 'length-not-current':
      return `${writeMm(fact.wantedUm)} mm of “${fact.screwFamily}” is ${fact.status}: state another length.`;
    case 'length-only-longer':
      return `${writeMm(fact.wantedUm)} mm is not made in “${fact.screwFamily}”; of what is accepted there is ${mmList(fact.acceptedUm)}.`;
    case 'spread-beyond-range':
      return `The mean of ${plainMm(fact.meanMm)} mm lies outside what “${fact.screwFamily}” is made in: ${mmList(fact.madeUm)}.`;
    case 'wire-not-established':
      return `Whether ${fact.wire} goes through the hole is not established: ${listWords(
        fact.missing.map((one) =>
          one === 'wire.diameterUm' ? 'the wire’s diameter' : 'the narrowest opening of the hole',
        ),
      )} ${fact.missing.length === 1 ? 'is' : 'are'} not stated.`;
    case 'wire-too-thick':
      return `${fact.wire} is ${writeMm(fact.wireUm)} mm thick and the hole opens ${writeMm(fact.openingUm)} mm.`;
    case 'washer-does-not-fit':
      return `${fact.washer} opens ${writeMm(fact.innerUm)} mm: it must let the ${writeMm(fact.threadUm)} mm thread of “${fact.screwFamily}” through and hold its ${writeMm(fact.headUm)} mm head.`;
    case 'washer-not-established':
      return `Whether ${fact.washer} suits “${fact.screwFamily}” is not established: ${missingWords(fact.missing)}.`;
    case 'fit':
      return fitSentence(fact);
    case 'fit-not-established':
      return `The rules can't say ${RELATION_WORDS[fact.relation]}${fact.missing.length > 0 ? `: ${missingWords(fact.missing)}` : ''}.`;
    case 'remark':
      return fact.sentence;
    default:
      return never(fact);
  }
}

function fitSentence({ about, onlyLengthsUm, finding }: Extract<PlanFact, { code: 'fit' }>): string {
  const lengths = onlyLengthsUm && onlyLengthsUm.length > 0 ? ` (in ${mmList(onlyLengthsUm)})` : '';
  return `${about}${lengths}: ${finding.sentence}`;
}

/** Facts the catalogue does not state, in words: `screw.coreUm` → `screw core`. */
export function missingWords(missing: readonly string[]): string {
  const words = missing.map((fact) =>
    fact
      .replace(/(Um|Nmm|Degrees|Grams)$/, '')
      .replace('.', ' ')
      .replace(/([a-z])([A-Z])/g, '$1 $2')
      .toLowerCase(),
  );
  return `not stated: ${words.join(', ')}`;
}

function longerWords(acceptLongerMm: number): string {
  return acceptLongerMm > 0 ? `, nor up to ${acceptLongerMm} mm longer` : '';
}

function mmList(lengthsUm: readonly number[]): string {
  const shown = lengthsUm.map(writeMm);
  if (shown.length > 12) return `${shown[0]} to ${shown.at(-1)} mm in ${shown.length} lengths`;
  return `${shown.join(', ')} mm`;
}

function regionWord(region: string): string {
  return (REGION_WORDS[region as keyof typeof REGION_WORDS] ?? region).toLowerCase();
}
