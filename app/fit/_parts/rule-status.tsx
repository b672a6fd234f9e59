import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import type { FitException, FitRule, Severity } from '@/lib/fit/rule';
import { type Standing, standingOn } from '@/lib/fit/standing';
import type { PlainDate } from '@/lib/quantities/plainDate';

const SEVERITY: Record<Severity, { tone: Tone; word: string }> = {
  stops: { tone: 'stop', word: 'Stops' },
  caution: { tone: 'attention', word: 'Caution' },
  note: { tone: 'neutral', word: 'Note' },
};

/** How much a broken rule matters. */
export function SeverityMark({ severity }: { severity: Severity }) {
  return (
    <Status tone={SEVERITY[severity].tone} look="plain">
      {SEVERITY[severity].word}
    </Status>
  );
}

const STANDING: Record<Standing, { tone: Tone; word: (rule: Lived) => string }> = {
  draft: { tone: 'attention', word: () => 'Draft, waits for a second person' },
  toCome: { tone: 'neutral', word: (rule) => `Approved, from ${rule.inForceFrom}` },
  inForce: {
    tone: 'good',
    word: (rule) => (rule.inForceUntil ? `In force until ${rule.inForceUntil}` : 'In force'),
  },
  ended: { tone: 'neutral', word: (rule) => (rule.withdrawnBy ? 'Withdrawn' : 'Replaced') },
};
type Lived = Pick<
  FitRule | FitException,
  'status' | 'inForceFrom' | 'inForceUntil' | 'withdrawnBy' | 'withdrawalAskedBy'
>;

/** Where a rule or exception is in its life. */
export function StandingMark({ rule, today }: { rule: Lived; today: PlainDate }) {
  const standing = standingOn(rule, today);
  if (standing === 'inForce' && rule.withdrawalAskedBy && !rule.withdrawnBy) {
    return <Status tone="attention">In force, withdrawal asked for</Status>;
  }
  return <Status tone={STANDING[standing].tone}>{STANDING[standing].word(rule)}</Status>;
}
