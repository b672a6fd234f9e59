'use client';

import { useState } from 'react';
import { NumberField } from '@/app/_ui/number-field';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import { type Schema, shapeOf, withoutNull } from './schema';

interface TypedProps {
  name: string;
  label: string;
  hint?: string | undefined;
  problems: readonly string[];
  value: unknown;
  onValue: (value: unknown) => void;
  unit?: string | undefined;
}

/** A number as it is typed. What is not a number is sent as typed, so that the refusal comes from one place. */
export function NumberText({
  value,
  onValue,
  unit,
  nullable,
  ...field
}: TypedProps & { whole: boolean; nullable: boolean }) {
  const [typed, setTyped] = useTyped(value, readNumber, (one) =>
    one === null || one === undefined ? '' : String(one),
  );
  return (
    <NumberField
      {...field}
      {...(unit && { unit })}
      {...(nullable && { placeholder: 'not stated' })}
      value={typed}
      onValue={(text) => {
        setTyped(text);
        onValue(readNumber(text));
      }}
    />
  );
}

function readNumber(text: string): unknown {
  const bare = text.trim().replace(',', '.');
  if (bare === '') return null;
  const number = Number(bare);
  return Number.isFinite(number) ? number : text;
}

/** A list of plain values on one line, with commas between. */
export function WordsText({
  of,
  value,
  onValue,
  nullable,
  hint,
  unit,
  ...field
}: TypedProps & { of: Schema; nullable: boolean }) {
  const numbers = shapeOf(withoutNull(of).schema).kind === 'number';
  const read = (text: string): unknown => {
    if (text.trim() === '') return nullable ? null : [];
    const parts = text.split(/[,;]/).map((part) => part.trim());
    return parts.filter((part) => part !== '').map((part) => (numbers ? readNumber(part) : part));
  };
  const write = (list: unknown) => (Array.isArray(list) ? list.join(', ') : '');
  const [typed, setTyped] = useTyped(value, read, write);
  const commas = `Separate with commas${unit ? `; in ${unit}` : ''}${nullable ? '; empty is not stated' : ''}.`;
  return (
    <TextField
      {...field}
      hint={hint ? `${hint}. ${commas}` : commas}
      value={typed}
      onValue={(text) => {
        setTyped(text);
        onValue(read(text));
      }}
    />
  );
}

/** Where no better field can be made: the value as JSON. */
export function JsonText({ value, onValue, problems, ...field }: TypedProps) {
  const write = (one: unknown) => JSON.stringify(one, null, 2) ?? '';
  const read = (text: string): unknown => {
    try {
      return JSON.parse(text);
    } catch {
      return text;
    }
  };
  const [typed, setTyped] = useTyped(value, read, write);
  return (
    <TextArea
      {...field}
      problems={problems}
      rows={6}
      spellCheck={false}
      value={typed}
      onValue={(text) => {
        setTyped(text);
        onValue(read(text));
      }}
    />
  );
}

/** Text as typed, kept while it still means the value; the value is written anew when it was changed from elsewhere. */
function useTyped(value: unknown, read: (text: string) => unknown, write: (value: unknown) => string) {
  const [typed, setTyped] = useState(() => write(value));
  const stillMeant = JSON.stringify(read(typed) ?? null) === JSON.stringify(value ?? null);
  return [stillMeant ? typed : write(value), setTyped] as const;
}
