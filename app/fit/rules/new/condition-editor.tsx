'use client';

import { Button } from '@/app/_ui/button';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { SelectField } from '@/app/_ui/select-field';
import type { Condition, Term } from '@/lib/fit/rule';
import styles from './condition-editor.module.css';
import { TermEditor, unitOfTerm, ValuesEditor } from './term-editor';
import type { Vocabulary } from './vocabulary';

type Kind = 'all' | 'any' | 'not' | 'equal' | 'below' | 'atMost' | 'oneOf' | 'lists' | 'takesPart';

const KINDS: { value: Kind; label: string }[] = [
  { value: 'equal', label: 'equals' },
  { value: 'below', label: 'is below' },
  { value: 'atMost', label: 'is at most' },
  { value: 'oneOf', label: 'is one of' },
  { value: 'lists', label: 'a list includes' },
  { value: 'takesPart', label: 'is part of the question' },
  { value: 'all', label: 'all of these hold' },
  { value: 'any', label: 'any of these holds' },
  { value: 'not', label: 'this does not hold' },
];

const kindOf = (condition: Condition): Kind => Object.keys(condition)[0] as Kind;

/** One condition, and those within it, without any writing of code. `path` names its fields and finds its problems. */
export function ConditionEditor({
  vocabulary,
  value,
  onChange,
  path,
  problems,
  label,
  onRemove,
}: {
  vocabulary: Vocabulary;
  value: Condition;
  onChange: (next: Condition) => void;
  path: string;
  problems: readonly FieldProblem[];
  label: string;
  onRemove?: () => void;
}) {
  const kind = kindOf(value);
  const own = [...problemsAt(problems, path), ...problemsAt(problems, `${path}.${kind}`)];
  const child = { vocabulary, problems };
  return (
    <fieldset className={styles.node}>
      <legend className={styles.legend}>{label}</legend>
      <div className={styles.head}>
        <SelectField
          name={path}
          label="What has to hold"
          hideLabel
          options={vocabulary.optional.length > 0 ? KINDS : KINDS.filter((one) => one.value !== 'takesPart')}
          value={kind}
          onValue={(next) => onChange(changed(value, next as Kind, vocabulary))}
          problems={own}
          width="medium"
        />
        {onRemove ? (
          <Button kind="quiet" size="small" onClick={onRemove}>
            Remove {label.toLocaleLowerCase('en-GB')}
          </Button>
        ) : null}
      </div>
      <Inside value={value} onChange={onChange} path={path} label={label} {...child} />
    </fieldset>
  );
}

function Inside({
  vocabulary,
  value,
  onChange,
  path,
  problems,
  label,
}: {
  vocabulary: Vocabulary;
  value: Condition;
  onChange: (next: Condition) => void;
  path: string;
  problems: readonly FieldProblem[];
  label: string;
}) {
  if ('all' in value || 'any' in value) {
    const key = 'all' in value ? 'all' : 'any';
    const parts = 'all' in value ? value.all : value.any;
    const set = (next: Condition[]) => onChange(key === 'all' ? { all: next } : { any: next });
    return (
      <div className={styles.parts}>
        {parts.length === 0 ? (
          <p className={styles.empty}>
            {key === 'all' ? 'Nothing: it always holds.' : 'Nothing: it never holds.'}
          </p>
        ) : null}
        {parts.map((part, index) => (
          <ConditionEditor
            // biome-ignore lint/suspicious/noArrayIndexKey: parts have no name but their place
            key={index}
            vocabulary={vocabulary}
            problems={problems}
            value={part}
            path={`${path}.${key}.${index}`}
            label={`${label} ${index + 1}`}
            onChange={(next) => set(parts.map((one, at) => (at === index ? next : one)))}
            onRemove={() => set(parts.filter((_, at) => at !== index))}
          />
        ))}
        <Button size="small" onClick={() => set([...parts, firstComparison(vocabulary)])}>
          Add a condition
        </Button>
      </div>
    );
  }
  if ('not' in value) {
    return (
      <div className={styles.parts}>
        <ConditionEditor
          vocabulary={vocabulary}
          problems={problems}
          value={value.not}
          path={`${path}.not`}
          label={`${label}, denied`}
          onChange={(not) => onChange({ not })}
        />
      </div>
    );
  }
  if ('takesPart' in value) {
    return (
      <SelectField
        name={`${path}.takesPart`}
        label="Which"
        options={vocabulary.optional}
        value={value.takesPart}
        onValue={(takesPart) => onChange({ takesPart })}
        problems={problemsAt(problems, `${path}.takesPart`)}
      />
    );
  }
  if ('oneOf' in value) {
    const [term, values] = value.oneOf;
    return (
      <div className={styles.pair}>
        <TermEditor
          vocabulary={vocabulary}
          problems={problems}
          value={term}
          path={`${path}.oneOf.0`}
          label="Fact"
          onChange={(next) => onChange({ oneOf: [next, values] })}
          beside={null}
        />
        <ValuesEditor
          vocabulary={vocabulary}
          problems={problems}
          term={term}
          values={values}
          path={`${path}.oneOf.1`}
          onChange={(next) => onChange({ oneOf: [term, next] })}
        />
      </div>
    );
  }
  const key = kindOf(value) as 'equal' | 'below' | 'atMost' | 'lists';
  const [left, right] = (value as Record<string, [Term, Term]>)[key] as [Term, Term];
  const set = (next: [Term, Term]) => onChange({ [key]: next } as Condition);
  const unit = unitOfTerm(vocabulary, left);
  return (
    <div className={styles.pair}>
      <TermEditor
        vocabulary={vocabulary}
        problems={problems}
        value={left}
        path={`${path}.${key}.0`}
        label={key === 'lists' ? 'List' : 'First'}
        onChange={(next) => set([next, right])}
        beside={right}
      />
      <TermEditor
        vocabulary={vocabulary}
        problems={problems}
        value={right}
        path={`${path}.${key}.1`}
        label={key === 'lists' ? 'Includes' : 'Second'}
        onChange={(next) => set([left, next])}
        beside={left}
        unit={unit === 'umList' ? 'um' : unit === 'textList' ? 'text' : unit}
      />
    </div>
  );
}

function firstFact(vocabulary: Vocabulary): Term {
  return { fact: vocabulary.facts[0]?.name ?? '' };
}

/** A comparison to start from: filled in by the person, never guessed. */
export function firstComparison(vocabulary: Vocabulary): Condition {
  return { equal: [firstFact(vocabulary), firstFact(vocabulary)] };
}

/** The same condition as another kind, keeping what it compares where that makes sense. */
function changed(value: Condition, kind: Kind, vocabulary: Vocabulary): Condition {
  const terms = (['equal', 'below', 'atMost', 'lists'] as const).flatMap((key) =>
    key in value ? [(value as Record<string, [Term, Term]>)[key]] : [],
  )[0];
  const [left, right] =
    terms ??
    ('oneOf' in value
      ? [value.oneOf[0], firstFact(vocabulary)]
      : [firstFact(vocabulary), firstFact(vocabulary)]);
  const inner =
    'all' in value ? value.all : 'any' in value ? value.any : 'not' in value ? [value.not] : [value];
  switch (kind) {
    case 'all':
      return { all: inner };
    case 'any':
      return { any: inner };
    case 'not':
      return { not: inner[0] ?? firstComparison(vocabulary) };
    case 'takesPart':
      return { takesPart: vocabulary.optional[0]?.value ?? '' };
    case 'oneOf':
      return { oneOf: [left, []] };
    case 'equal':
      return { equal: [left, right] };
    case 'below':
      return { below: [left, right] };
    case 'atMost':
      return { atMost: [left, right] };
    case 'lists':
      return { lists: [left, right] };
  }
}
