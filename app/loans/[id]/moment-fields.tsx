'use client';

import { problemsAt } from '@/app/_ui/field-problem';
import { TextField } from '@/app/_ui/text-field';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import { plainDate } from '@/lib/quantities/plainDate';
import { instantOf } from '@/lib/theatre/localTime';

export interface Moment {
  date: string;
  time: string;
}

/** The instant of a date and a time on the hospital’s wall; `null` where they are none. */
export function instantOfMoment({ date, time }: Moment): string | null {
  const day = plainDate.safeParse(date.trim());
  return day.success && /^([01]\d|2[0-3]):[0-5]\d$/.test(time.trim())
    ? instantOf(day.data, time.trim())
    : null;
}

/** A date and a time, as the clock on the wall shows them. */
export function MomentFields({
  name,
  label,
  value,
  onValue,
  problems,
}: {
  name: string;
  label: string;
  value: Moment;
  onValue: (value: Moment) => void;
  problems: readonly SentProblem[];
}) {
  return (
    <>
      <TextField
        name={name}
        label={`${label}: date`}
        hint="As 2026-01-31"
        width="code"
        value={value.date}
        onValue={(date) => onValue({ ...value, date })}
        problems={problemsAt(problems, name)}
      />
      <TextField
        name={`${name}-time`}
        label={`${label}: time`}
        hint="24 hours, such as 08:30"
        width="code"
        value={value.time}
        onValue={(time) => onValue({ ...value, time })}
      />
    </>
  );
}
