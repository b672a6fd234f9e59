import type { ExceptionId, RuleId } from '../identity/ids';
import type { Severity, Source } from './rule';

/** A fact the rule looked at, as it was: `null` is not stated. */
export interface FactSeen {
  fact: string;
  value: string | number | boolean | null;
}

/** One rule's (or exception's) word on one question. */
export interface Finding {
  from:
    | { kind: 'rule'; id: RuleId; code: string }
    | { kind: 'exception'; id: ExceptionId }
    | { kind: 'noRule' };
  /** `met` and `notMet` of the rule itself; `missing` when a fact it needs is not stated. */
  answer: 'met' | 'notMet' | 'missing';
  severity: Severity;
  /** For people, with the values filled in. */
  sentence: string;
  source: Source | null;
  seen: FactSeen[];
  /** Facts that are not stated, `participant.fact`, when `answer` is `missing`. */
  missing: string[];
  /** True when a named exception outranked it: shown, but no longer decisive. */
  outranked: boolean;
}
