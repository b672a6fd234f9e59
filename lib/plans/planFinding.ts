import type { Finding } from '../fit/finding';
import type { Relation } from '../fit/rule';

/**
 * What a finding asks of the surgeon: a stop bars confirming, the others are shown and bar nothing. A note asks for
 * nothing: it is said once for all the holes it is about, and marks none of them.
 */
export const FINDING_GROUPS = ['stop', 'caution', 'remark', 'notEstablished', 'note'] as const;
export type FindingGroup = (typeof FINDING_GROUPS)[number];

/** Where in a plan a finding belongs, by the plan's own keys; all `null` for the plan as a whole. */
export interface PlanPlace {
  plateKey: string | null;
  holeId: string | null;
  screwKey: string | null;
}

/** Every kind of finding with the facts its sentence needs. The prose is in `lib/wording/planFindings`. */
export type PlanFact =
  | { code: 'nothing-planned' }
  | { code: 'limb-not-stated' }
  | { code: 'limb-differs'; planned: 'left' | 'right'; booked: 'left' | 'right' }
  | { code: 'region-differs'; planned: string; booked: string }
  | { code: 'duplicate-key'; key: string }
  | { code: 'item-unknown'; what: 'plate' | 'wire' | 'washer'; itemId: string }
  | {
      code: 'item-not-current';
      what: 'plate' | 'wire' | 'washer';
      name: string;
      status: 'withdrawn' | 'recalled';
    }
  | { code: 'hole-unknown'; unknownHole: string; plate: string }
  | { code: 'hole-not-decided' }
  | { code: 'zone-beyond-plate'; toUm: number; plateUm: number }
  | { code: 'plate-length-not-stated'; plate: string }
  | { code: 'family-unknown'; screwFamily: string }
  | { code: 'family-not-current'; screwFamily: string; status: 'withdrawn' | 'recalled' }
  | { code: 'family-lengths-not-stated'; screwFamily: string }
  | { code: 'length-not-stated'; screwFamily: string }
  | {
      code: 'length-not-made';
      screwFamily: string;
      wantedUm: number;
      acceptLongerMm: number;
      madeUm: number[];
    }
  | { code: 'length-not-current'; screwFamily: string; wantedUm: number; status: 'withdrawn' | 'recalled' }
  | { code: 'length-only-longer'; screwFamily: string; wantedUm: number; acceptedUm: number[] }
  | { code: 'spread-beyond-range'; screwFamily: string; meanMm: number; madeUm: number[] }
  | { code: 'wire-too-thick'; wire: string; wireUm: number; openingUm: number }
  | { code: 'wire-not-established'; wire: string; missing: ('wire.diameterUm' | 'hole.openingUm')[] }
  | {
      code: 'washer-does-not-fit';
      washer: string;
      screwFamily: string;
      innerUm: number;
      threadUm: number;
      headUm: number;
    }
  | { code: 'washer-not-established'; washer: string; screwFamily: string; missing: string[] }
  /** The fit rules' own word on one pair: the finding carries its sentence, source and missing facts. */
  | { code: 'fit'; relation: Relation; about: string; onlyLengthsUm: number[] | null; finding: Finding }
  /** The rules could not say and gave no reason of their own. */
  | { code: 'fit-not-established'; relation: Relation; about: string; missing: string[] }
  /** An advisory remark from a published range; its sentence and source come with it. */
  | {
      code: 'remark';
      remark: string;
      /** `within` and `figure` are told, `outside` and `note` ask for a look. */
      outcome: 'within' | 'outside' | 'figure' | 'note' | 'notEstablished';
      sentence: string;
      source: string;
    };

export type PlanFinding = PlanFact & {
  group: FindingGroup;
  /** Keys and indexes from the root of the construct. */
  path: (string | number)[];
  at: PlanPlace;
};

/** Plan-wide first, then plates and holes in their natural order (S2 before S10), then free screws. */
export function comparePlanFindings(a: PlanFinding, b: PlanFinding): number {
  return (
    FINDING_GROUPS.indexOf(a.group) - FINDING_GROUPS.indexOf(b.group) ||
    compareNatural(
      a.at.plateKey ?? (a.at.screwKey ? '~' : ''),
      b.at.plateKey ?? (b.at.screwKey ? '~' : ''),
    ) ||
    compareNatural(a.at.holeId ?? '', b.at.holeId ?? '') ||
    compareNatural(a.at.screwKey ?? '', b.at.screwKey ?? '') ||
    compareText(a.code, b.code) ||
    compareText(JSON.stringify(factOf(a)), JSON.stringify(factOf(b)))
  );
}

/** `S2` before `S10`, by letters first and then by number. */
export function compareNatural(a: string, b: string): number {
  const [, lettersA = '', digitsA = ''] = /^(\D*)(\d*)/.exec(a) ?? [];
  const [, lettersB = '', digitsB = ''] = /^(\D*)(\d*)/.exec(b) ?? [];
  return compareText(lettersA, lettersB) || Number(digitsA || 0) - Number(digitsB || 0) || compareText(a, b);
}

const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

function factOf({ path: _path, ...fact }: PlanFinding) {
  return fact;
}
