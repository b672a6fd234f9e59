import { Status } from '@/app/_ui/status';
import type { BuildToday } from '@/lib/plans/buildToday';

/** What can be built today, in a word; while it is being worked out, that. */
export function TodayStatus({ today }: { today: BuildToday | undefined }) {
  return today === undefined ? (
    <span>working it out …</span>
  ) : (
    <Status tone={today.tone}>{today.word}</Status>
  );
}
