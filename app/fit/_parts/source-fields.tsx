'use client';

import { FieldGrid } from '@/app/_ui/field-grid';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';

const KINDS = [
  { value: 'standard', label: 'A standard' },
  { value: 'instructionsForUse', label: 'The maker’s instructions for use' },
  { value: 'localPolicy', label: 'Local policy' },
  { value: 'commonPractice', label: 'Common practice, no source' },
];

const FIELDS: Record<string, { name: string; label: string; hint?: string; optional?: boolean }[]> = {
  standard: [
    { name: 'number', label: 'Number', hint: 'e.g. ISO 5835' },
    { name: 'clause', label: 'Clause', optional: true },
  ],
  instructionsForUse: [
    { name: 'maker', label: 'Maker' },
    { name: 'document', label: 'Document' },
  ],
  localPolicy: [
    { name: 'owner', label: 'Owner' },
    { name: 'date', label: 'Date', hint: 'YYYY-MM-DD' },
  ],
};

/** Where a rule or an exception comes from. */
export function SourceFields({
  value,
  onChange,
  problems,
}: {
  value: unknown;
  onChange: (next: unknown) => void;
  problems: readonly FieldProblem[];
}) {
  const source = value as Record<string, string | null>;
  const kind = String(source.kind ?? 'commonPractice');
  return (
    <FieldGrid min="medium">
      <SelectField
        name="source"
        label="Source"
        options={KINDS}
        value={kind}
        onValue={(next) =>
          onChange(next === 'standard' ? { kind: next, number: '', clause: null } : { kind: next })
        }
        problems={[...problemsAt(problems, 'source'), ...problemsAt(problems, 'source.kind')]}
      />
      {(FIELDS[kind] ?? []).map(({ name, label, hint, optional }) => (
        <TextField
          key={`${kind}.${name}`}
          name={`source.${name}`}
          label={label}
          hint={hint}
          value={source[name] ?? ''}
          onValue={(text) => onChange({ ...source, [name]: optional && text === '' ? null : text })}
          problems={problemsAt(problems, `source.${name}`)}
        />
      ))}
    </FieldGrid>
  );
}
