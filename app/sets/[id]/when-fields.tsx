'use client';

import { useState } from 'react';
import { Disclosure } from '@/app/_ui/disclosure';
import { FieldGrid } from '@/app/_ui/field-grid';
import { TextField } from '@/app/_ui/text-field';
import { plainDate } from '@/lib/quantities/plainDate';
import { instantOf } from '@/lib/theatre/localTime';

/** When a step was taken, where that was earlier than now: both moments go on record. */
export function WhenFields({ onWhen }: { onWhen: (at: string | null) => void }) {
  const [date, setDate] = useState('');
  const [time, setTime] = useState('');

  function say(nextDate: string, nextTime: string) {
    setDate(nextDate);
    setTime(nextTime);
    // what can’t be read is sent as it stands and refused: a step never silently counts as done now
    onWhen(
      nextDate === '' && nextTime === '' ? null : (read(nextDate, nextTime) ?? `${nextDate} ${nextTime}`),
    );
  }

  const empty = date === '' && time === '';
  const wrong = !empty && read(date, time) === null;
  return (
    <Disclosure summary="It was done earlier than now">
      <FieldGrid min="narrow">
        <TextField
          name="done-date"
          label="On"
          placeholder="YYYY-MM-DD"
          width="code"
          value={date}
          onValue={(text) => say(text, time)}
        />
        <TextField
          name="done-time"
          label="At"
          placeholder="HH:MM"
          width="code"
          value={time}
          onValue={(text) => say(date, text)}
          problems={wrong ? ['A date as 2026-01-14 and a time as 08:30; a step is refused until it is.'] : []}
        />
      </FieldGrid>
      <p>
        The step is entered now and done then; both are kept. Not in the future, and not before the step
        before it.
      </p>
    </Disclosure>
  );
}

function read(date: string, time: string): string | null {
  const day = plainDate.safeParse(date.trim());
  return day.success && /^([01]\d|2[0-3]):[0-5]\d$/.test(time.trim())
    ? instantOf(day.data, time.trim())
    : null;
}
