import type { PackBar } from '../bench/packable';
import type { ItemId } from '../identity/ids';
import type { Approver, ShortAsk } from '../sets/short/ask';
import type { Lapse, NotCovered } from '../sets/short/decision';
import type { PackMass } from './mass';

/** Everything that is asked before a set is closed. */
export interface PackFacts {
  /** What counting says: not counted, not checked, disputed, foreign or surplus pieces. */
  bars: readonly PackBar[];
  withdrawn: boolean;
  ask: ShortAsk;
  /** The decision of this turn, with what has ended it and what it leaves open; `null` where there is none. */
  decision: { lapses: readonly Lapse[]; open: readonly NotCovered[] } | null;
  /** The version in force, where the set still follows an older one. */
  newerVersion: number | null;
  mass: PackMass;
  /** The local setting for a set above the highest limit. */
  overMass: 'stops' | 'needsReason';
}

export type GateFinding =
  | { kind: 'counting'; bar: PackBar }
  | { kind: 'withdrawn' }
  | { kind: 'notCounted'; itemIds: ItemId[] }
  | { kind: 'decisionNeeded'; approvers: Approver[] }
  | { kind: 'decisionLapsed'; because: Lapse[] }
  | { kind: 'decisionOpen'; open: NotCovered[] }
  | { kind: 'goesShort'; lines: number; oneCase: boolean }
  | { kind: 'newerVersion'; version: number }
  | { kind: 'massOver'; limitGrams: number; highest: boolean }
  | { kind: 'massNear'; limitGrams: number }
  | { kind: 'massNotEstablished' }
  | { kind: 'scaleDiffers'; grams: number };

export interface PackGate {
  findings: { finding: GateFinding; severity: 'stops' | 'caution' | 'note' }[];
  mayPack: boolean;
  /** What the packer has to state: why it goes short, where nobody else decided that; why it is heavier than allowed. */
  reasons: { short: boolean; mass: boolean };
}

/** May this set be closed now? Every reason against it at once, and what is worth a second look. */
export function packGate(facts: PackFacts): PackGate {
  const findings = [...counting(facts), ...shortage(facts), ...version(facts), ...massOf(facts)];
  const tooHeavy = findings.some(
    ({ finding, severity }) => finding.kind === 'massOver' && finding.highest && severity !== 'stops',
  );
  return {
    findings,
    mayPack: findings.every(({ severity }) => severity !== 'stops'),
    reasons: { short: facts.ask.asks === 'technician', mass: tooHeavy },
  };
}

type Findings = PackGate['findings'];

function counting({ bars, withdrawn, ask }: PackFacts): Findings {
  const uncounted = ask.findings.flatMap((one) => (one.rule === 'notEstablished' ? [one.itemId] : []));
  // counting names it already, unless what was counted was lost to a refit since
  const named = bars.some(({ kind }) => kind === 'notCounted');
  return [
    ...bars.map((bar) => stops({ kind: 'counting', bar })),
    ...(withdrawn ? [stops({ kind: 'withdrawn' })] : []),
    ...(uncounted.length > 0 && !named ? [stops({ kind: 'notCounted', itemIds: uncounted })] : []),
  ];
}

function shortage({ ask, decision }: PackFacts): Findings {
  if (ask.asks === 'nothing' || ask.asks === 'nobody') return [];
  const lines = ask.findings.length;
  const goes: Findings = [
    { finding: { kind: 'goesShort', lines, oneCase: ask.oneCase }, severity: 'caution' },
  ];
  if (ask.asks === 'technician') return goes;
  if (decision === null) return [stops({ kind: 'decisionNeeded', approvers: ask.approvers })];
  if (decision.lapses.length > 0) return [stops({ kind: 'decisionLapsed', because: [...decision.lapses] })];
  if (decision.open.length > 0) return [stops({ kind: 'decisionOpen', open: [...decision.open] })];
  return goes;
}

const version = ({ newerVersion }: PackFacts): Findings =>
  newerVersion === null
    ? []
    : [{ finding: { kind: 'newerVersion', version: newerVersion }, severity: 'caution' }];

function massOf({ mass, overMass }: PackFacts): Findings {
  const found: Findings = [];
  const over = mass.limits.filter(({ state }) => state === 'over').at(-1);
  const near = mass.limits.find(({ state }) => state === 'near');
  const highest = mass.limits.at(-1)?.limitGrams;
  if (over) {
    const isHighest = over.limitGrams === highest;
    found.push({
      finding: { kind: 'massOver', limitGrams: over.limitGrams, highest: isHighest },
      severity: isHighest && overMass === 'stops' ? 'stops' : 'caution',
    });
  }
  if (near) found.push({ finding: { kind: 'massNear', limitGrams: near.limitGrams }, severity: 'note' });
  if (mass.grams === null) found.push({ finding: { kind: 'massNotEstablished' }, severity: 'caution' });
  if (mass.scaleDiffersGrams !== null)
    found.push({ finding: { kind: 'scaleDiffers', grams: mass.scaleDiffersGrams }, severity: 'caution' });
  return found;
}

const stops = (finding: GateFinding): Findings[number] => ({ finding, severity: 'stops' });
