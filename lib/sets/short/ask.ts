import type { ItemId, LineId } from '../../identity/ids';
import type { MustHaveClass } from '../configuration';
import type { HeldLine } from '../holdings';
import { findStandIns, type Pouch, type StandIn } from './standIns';

/**
 * Who must stand for sending a set as it is: the table "when a set may go". `nobody`: it never goes like this, whoever
 * asks. Several people may be needed at once.
 */
export type Approver = 'technician' | 'decontaminationLead' | 'theatreLead' | 'operatingSurgeon';

/** The row of the table a finding comes from. */
export type ShortRule = 'notEstablished' | 'homeless' | 'classOne' | 'classTwo' | 'backUp';

interface OfLine {
  lineId: LineId;
  itemId: ItemId;
  mustHaveClass: MustHaveClass;
  found: number;
  expected: number;
  minimum: number;
}

/** One thing about what was counted, with the row of the table it falls under. */
export type ShortFinding =
  | { rule: 'notEstablished'; lineId: LineId; itemId: ItemId; mustHaveClass: MustHaveClass }
  | { rule: 'homeless'; kind: 'surplus'; lineId: LineId; itemId: ItemId; pieces: number }
  | { rule: 'homeless'; kind: 'foreign'; itemId: ItemId; pieces: number }
  /** `damaged`: pieces put aside as unsound would have met the minimum. */
  | ({ rule: 'classOne'; damaged: boolean } & OfLine)
  /** `standIns`: what may stand in for each missing piece, one that fits them all at once; fewer than missing: not enough. */
  | ({ rule: 'classTwo'; substitutes: ItemId[]; missing: number; standIns: StandIn[] } & OfLine)
  | ({ rule: 'backUp' } & OfLine);

/** What was counted in a set, and what could travel with it. */
export interface ShortFacts {
  lines: readonly HeldLine[];
  foreign: readonly { itemId: ItemId; quantity: number }[];
  /** Sterile pouches that are in date, not held, and promised to no other set. */
  pouches: readonly Pouch[];
}

export interface ShortAsk {
  /** Nothing short; a technician alone; others, named in `approvers`; or nobody. */
  asks: 'nothing' | 'technician' | 'approvers' | 'nobody';
  approvers: Approver[];
  /** It goes for one named case only. */
  oneCase: boolean;
  /** All of them, the gravest first; none hides another. */
  findings: ShortFinding[];
}

/** The gravest first. */
const ORDER: readonly ShortRule[] = ['notEstablished', 'homeless', 'classOne', 'classTwo', 'backUp'];

/**
 * What the table asks for before a set may go. A line of class 1 or 2 that is short but not below its minimum is a
 * back-up's matter: the step does not stop for it.
 */
export function shortAsk({ lines, foreign, pouches }: ShortFacts): ShortAsk {
  const standIns = findStandIns(lines, pouches);
  const findings = [
    ...lines.flatMap((line) => ofLine(line, standIns.get(line.id) ?? [])),
    ...foreign.map(({ itemId, quantity }): ShortFinding => {
      return { rule: 'homeless', kind: 'foreign', itemId, pieces: quantity };
    }),
  ].sort((a, b) => ORDER.indexOf(a.rule) - ORDER.indexOf(b.rule));
  const has = (rule: ShortRule) => findings.some((finding) => finding.rule === rule);
  const oneCase = has('classOne');
  if (has('notEstablished') || has('homeless')) return { asks: 'nobody', approvers: [], oneCase, findings };
  const approvers: Approver[] = [
    ...(has('classTwo') ? (['decontaminationLead'] as const) : []),
    ...(oneCase ? (['theatreLead', 'operatingSurgeon'] as const) : []),
  ];
  if (approvers.length > 0) return { asks: 'approvers', approvers, oneCase, findings };
  if (has('backUp')) return { asks: 'technician', approvers: ['technician'], oneCase, findings };
  return { asks: 'nothing', approvers: [], oneCase, findings };
}

function ofLine(line: HeldLine, standIns: StandIn[]): ShortFinding[] {
  const { id: lineId, itemId, mustHaveClass, found, expected, minimum, unsound } = line;
  if (found === null) return [{ rule: 'notEstablished', lineId, itemId, mustHaveClass }];
  if (found > expected)
    return [{ rule: 'homeless', kind: 'surplus', lineId, itemId, pieces: found - expected }];
  if (found === expected) return [];
  const of = { lineId, itemId, mustHaveClass, found, expected, minimum };
  if (mustHaveClass > 2 || found >= minimum) return [{ rule: 'backUp', ...of }];
  if (mustHaveClass === 1) return [{ rule: 'classOne', damaged: found + unsound >= minimum, ...of }];
  return [
    { rule: 'classTwo', substitutes: [...line.substitutes], missing: minimum - found, standIns, ...of },
  ];
}

/** Every line that holds less than it should, as it is kept with a decision and a pack. */
export interface ShortLine {
  lineId: LineId;
  itemId: ItemId;
  mustHaveClass: MustHaveClass;
  /** Pieces below what is expected. */
  short: number;
  /** Pieces below the minimum of a must-have; 0 where the step does not stop. */
  belowMinimum: number;
}

export function shortLinesOf(findings: readonly ShortFinding[]): ShortLine[] {
  return findings.flatMap((finding) => {
    if (finding.rule === 'notEstablished' || finding.rule === 'homeless') return [];
    const { lineId, itemId, mustHaveClass, found, expected, minimum } = finding;
    const belowMinimum = finding.rule === 'backUp' ? 0 : minimum - found;
    return [{ lineId, itemId, mustHaveClass, short: expected - found, belowMinimum }];
  });
}
