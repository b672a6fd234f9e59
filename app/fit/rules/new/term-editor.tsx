'use client';

import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import type { Term } from '@/lib/fit/rule';
import type { FactUnit } from '@/lib/fit/subjects';
import { micronsFromMm, writeMm } from '@/lib/quantities/length';
import styles from './condition-editor.module.css';
import type { Vocabulary } from './vocabulary';

const SETTINGS = [{ value: 'setting:sleeveToleranceUm', label: 'The sleeve tolerance' }];
const OTHER = [
  { value: 'value', label: 'A value I write' },
  { value: 'minus', label: 'One less another' },
  { value: 'plus', label: 'One plus another' },
];

/** The unit of what a term gives, where it can be told. */
export function unitOfTerm(vocabulary: Vocabulary, term: Term): FactUnit | null {
  if ('fact' in term) return vocabulary.facts.find(({ name }) => name === term.fact)?.unit ?? null;
  if ('setting' in term) return 'um';
  if ('plus' in term) return unitOfTerm(vocabulary, term.plus[0]) ?? unitOfTerm(vocabulary, term.plus[1]);
  if ('minus' in term) return unitOfTerm(vocabulary, term.minus[0]) ?? unitOfTerm(vocabulary, term.minus[1]);
  return null;
}

const choicesOf = (vocabulary: Vocabulary, term: Term | null) =>
  term && 'fact' in term ? (vocabulary.facts.find(({ name }) => name === term.fact)?.choices ?? null) : null;

/** One side of a comparison: a fact, a value, a local setting, or a sum or difference of two. */
export function TermEditor({
  vocabulary,
  problems,
  value,
  path,
  label,
  onChange,
  beside,
  unit,
}: {
  vocabulary: Vocabulary;
  problems: readonly FieldProblem[];
  value: Term;
  path: string;
  label: string;
  onChange: (next: Term) => void;
  /** What it is compared with: a value is entered in that one's unit, or chosen from its choices. */
  beside: Term | null;
  unit?: FactUnit | null;
}) {
  const groups = [...new Set(vocabulary.facts.map(({ participant }) => participant))].map((group) => ({
    group,
    options: vocabulary.facts
      .filter((fact) => fact.participant === group)
      .map(({ name, label: text }) => ({ value: `fact:${name}`, label: text })),
  }));
  const picked =
    'fact' in value
      ? `fact:${value.fact}`
      : 'setting' in value
        ? `setting:${value.setting}`
        : (Object.keys(value)[0] ?? '');
  const own = [path, `${path}.fact`, `${path}.setting`].flatMap((at) => problemsAt(problems, at));
  const measured = unit ?? (beside ? unitOfTerm(vocabulary, beside) : null);
  return (
    <div className={styles.term}>
      <SelectField
        name={path}
        label={label}
        options={[
          ...groups,
          { group: 'Local settings', options: SETTINGS },
          { group: 'Other', options: OTHER },
        ]}
        value={picked}
        onValue={(next) => onChange(termFrom(next, value, vocabulary))}
        problems={own}
      />
      {'value' in value ? (
        <ValueEditor
          value={value.value}
          unit={measured}
          choices={choicesOf(vocabulary, beside)}
          path={`${path}.value`}
          onChange={(next) => onChange({ value: next })}
        />
      ) : null}
      {'plus' in value || 'minus' in value ? (
        <Parts vocabulary={vocabulary} problems={problems} value={value} path={path} onChange={onChange} />
      ) : null}
    </div>
  );
}

function Parts({
  vocabulary,
  problems,
  value,
  path,
  onChange,
}: {
  vocabulary: Vocabulary;
  problems: readonly FieldProblem[];
  value: Extract<Term, { plus: unknown } | { minus: unknown }>;
  path: string;
  onChange: (next: Term) => void;
}) {
  const key = 'plus' in value ? 'plus' : 'minus';
  const [left, right] = 'plus' in value ? value.plus : value.minus;
  const set = (next: [Term, Term]) => onChange(key === 'plus' ? { plus: next } : { minus: next });
  return (
    <div className={styles.parts}>
      <TermEditor
        vocabulary={vocabulary}
        problems={problems}
        value={left}
        path={`${path}.${key}.0`}
        label="One"
        onChange={(next) => set([next, right])}
        beside={right}
      />
      <TermEditor
        vocabulary={vocabulary}
        problems={problems}
        value={right}
        path={`${path}.${key}.1`}
        label={key === 'plus' ? 'plus' : 'less'}
        onChange={(next) => set([left, next])}
        beside={left}
      />
    </div>
  );
}

function termFrom(picked: string, before: Term, vocabulary: Vocabulary): Term {
  if (picked.startsWith('fact:')) return { fact: picked.slice('fact:'.length) };
  if (picked.startsWith('setting:')) return { setting: picked.slice('setting:'.length) };
  const first: Term = 'fact' in before ? before : { fact: vocabulary.facts[0]?.name ?? '' };
  if (picked === 'plus') return { plus: [first, first] };
  if (picked === 'minus') return { minus: [first, first] };
  return { value: '' };
}

function ValueEditor({
  value,
  unit,
  choices,
  path,
  onChange,
}: {
  value: string | number | boolean;
  unit: FactUnit | null;
  choices: { value: string; label: string }[] | null;
  path: string;
  onChange: (next: string | number | boolean) => void;
}) {
  if (unit === 'flag') {
    return (
      <SelectField
        name={path}
        label="Yes or no"
        options={[
          { value: 'true', label: 'Yes' },
          { value: 'false', label: 'No' },
        ]}
        blank="Choose"
        value={typeof value === 'boolean' ? String(value) : ''}
        onValue={(next) => onChange(next === '' ? '' : next === 'true')}
      />
    );
  }
  if (choices) {
    return (
      <SelectField
        name={path}
        label="Value"
        options={choices}
        blank="Choose"
        value={String(value)}
        onValue={onChange}
      />
    );
  }
  return (
    <TextField
      key={unit}
      name={path}
      label="Value"
      hint={hintOf(unit)}
      width="medium"
      defaultValue={written(value, unit)}
      onValue={(text) => onChange(readValue(text, unit))}
    />
  );
}

const hintOf = (unit: FactUnit | null) =>
  unit === 'um'
    ? 'in millimetres, e.g. 0.2'
    : unit === 'degrees'
      ? 'in degrees'
      : unit === 'newtonMillimetres'
        ? 'in newton metres, e.g. 1.5'
        : undefined;

const thousandths = (unit: FactUnit | null) => unit === 'um' || unit === 'newtonMillimetres';

function written(value: string | number | boolean, unit: FactUnit | null): string {
  return typeof value === 'number' && thousandths(unit) ? writeMm(value) : String(value);
}

/** What cannot be read stays text, so that it is refused with a reason and never silently becomes a number. */
function readValue(text: string, unit: FactUnit | null): string | number {
  if (unit === null || unit === 'text') return text;
  try {
    return thousandths(unit) ? micronsFromMm(text) : /^-?\d+$/.test(text.trim()) ? Number(text) : text;
  } catch {
    return text;
  }
}

/** The values of "is one of": ticked where they are listed, else written with commas. */
export function ValuesEditor({
  vocabulary,
  problems,
  term,
  values,
  path,
  onChange,
}: {
  vocabulary: Vocabulary;
  problems: readonly FieldProblem[];
  term: Term;
  values: (string | number)[];
  path: string;
  onChange: (next: (string | number)[]) => void;
}) {
  const choices = choicesOf(vocabulary, term);
  const unit = unitOfTerm(vocabulary, term);
  const own = problems
    .filter((problem) => problem.path === path || problem.path.startsWith(`${path}.`))
    .map(({ sentence }) => sentence);
  if (!choices) {
    return (
      <TextField
        key={unit}
        name={path}
        label="Values, with commas between"
        hint={hintOf(unit)}
        defaultValue={values.map((value) => written(value, unit)).join(', ')}
        onValue={(text) =>
          onChange(
            text
              .split(',')
              .map((one) => one.trim())
              .filter(Boolean)
              .map((one) => readValue(one, unit)),
          )
        }
        problems={own}
      />
    );
  }
  return (
    <fieldset className={styles.ticks}>
      <legend>Values</legend>
      {choices.map((choice) => (
        <label key={choice.value}>
          <input
            type="checkbox"
            checked={values.includes(choice.value)}
            onChange={(event) =>
              onChange(
                event.target.checked
                  ? [...values, choice.value]
                  : values.filter((one) => one !== choice.value),
              )
            }
          />
          {choice.label}
        </label>
      ))}
      {own.map((sentence) => (
        <p key={sentence} className={styles.problem}>
          {sentence}
        </p>
      ))}
    </fieldset>
  );
}
