'use client';

import { Segmented } from '@/app/_ui/radio-group';
import { Status } from '@/app/_ui/status';
import { plainDate } from '@/lib/quantities/plainDate';
import { timesShown, type Which } from '@/lib/theatre/localTime';
import { theatreListWords as words } from '@/lib/wording/theatre-list';

interface HardTimeProps {
  name: string;
  /** As typed. */
  date: string;
  time: string;
  which: Which;
  onWhich: (which: Which) => void;
}

/** On the two days when the clocks change: says that a time does not exist, or asks which of the two is meant. */
export function HardTime({ name, date, time, which, onWhich }: HardTimeProps) {
  const day = plainDate.safeParse(date.trim());
  if (!day.success || !/^([01]\d|2[0-3]):[0-5]\d$/.test(time)) return null;
  const shown = timesShown(day.data, time);
  if (shown === 'once') return null;
  if (shown === 'never')
    return (
      <p role="status">
        <Status tone="stop">No such time</Status> {words.skippedTime(time)}
      </p>
    );
  return (
    <Segmented
      name={name}
      label={`Which ${time}`}
      hint={words.repeatedTime(time)}
      choices={[
        { value: 'first', label: 'First' },
        { value: 'second', label: 'Second' },
      ]}
      value={which}
      onValue={onWhich}
    />
  );
}
