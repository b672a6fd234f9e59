'use client';

import { useRef } from 'react';
import { Button } from '@/app/_ui/button';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { FieldProblems } from '@/app/_ui/field';
import { type FieldProblem, fieldId, problemsAt } from '@/app/_ui/field-problem';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import { firstValue, labelOf, type Schema, shapeOf, spelled, unitOf, withoutNull } from './schema';
import { JsonText, NumberText, WordsText } from './typed-fields';
import styles from './what-if.module.css';

export interface SchemaFieldProps {
  /** Key in its object, or a row's number; the last part of the path. */
  name: string;
  /** Dotted path from the root of the input; names the field and its problems. */
  path: string;
  schema: Schema;
  value: unknown;
  problems: readonly FieldProblem[];
  onChange: (value: unknown) => void;
  /** Rows after the first leave out what the first already explains. */
  brief?: boolean | undefined;
}

/** A text that may be longer than this has the whole width. */
const LONGEST_SHORT_TEXT = 300;

/** One field of an input, whatever it is: made from its schema alone. */
export function SchemaField(props: SchemaFieldProps) {
  const { schema, nullable } = withoutNull(props.schema);
  const { name, path, value, onChange } = props;
  const shape = shapeOf(schema);
  const label = labelOf(name, schema);
  const field = {
    name: path,
    label,
    hint: props.brief ? undefined : schema.description,
    problems: problemsAt(props.problems, path),
  };
  switch (shape.kind) {
    case 'number':
      return (
        <NumberText
          {...field}
          unit={unitOf(name)}
          whole={shape.whole}
          nullable={nullable}
          value={value}
          onValue={onChange}
        />
      );
    case 'text': {
      const input = (
        <TextField
          {...field}
          value={typeof value === 'string' ? value : ''}
          onValue={(text) => onChange(nullable && text === '' ? null : text)}
        />
      );
      const long = (schema.maxLength ?? 0) > LONGEST_SHORT_TEXT;
      return long ? <div className={styles.long}>{input}</div> : input;
    }
    case 'yesNo':
      return <CheckboxField {...field} checked={value === true} onChecked={onChange} />;
    case 'choice':
      return (
        <SelectField
          {...field}
          {...(nullable && { blank: 'Not stated' })}
          options={shape.options.map((option) => ({ value: String(option), label: optionWord(option) }))}
          value={value === null || value === undefined ? '' : String(value)}
          onValue={(text) => onChange(shape.options.find((option) => String(option) === text) ?? null)}
        />
      );
    case 'words':
      return (
        <WordsText
          {...field}
          of={shape.of}
          nullable={nullable}
          value={value}
          onValue={onChange}
          problems={within(props)}
          unit={unitOf(name)}
        />
      );
    case 'rows':
      return <Rows {...props} schema={schema} of={shape.of} />;
    case 'variants':
    case 'fields':
      return <FieldSet {...props} schema={schema} label={label} nullable={nullable} />;
    case 'json':
      return <JsonText {...field} value={value} onValue={onChange} problems={within(props)} />;
  }
}

/** Fields of an object, side by side where there is room; of a union, with the choice of its form first. */
export function Fields({ schema, path, value, problems, onChange, brief }: Omit<SchemaFieldProps, 'name'>) {
  const shape = shapeOf(schema);
  const object = (value !== null && typeof value === 'object' ? value : {}) as Record<string, unknown>;
  if (shape.kind === 'variants') {
    const chosen = shape.variants.find((variant) => variant.value === object[shape.key]);
    const rest = Object.entries(chosen?.schema.properties ?? {}).filter(([key]) => key !== shape.key);
    return (
      <>
        <SelectField
          name={`${path}.${shape.key}`}
          label={spelled(shape.key)}
          problems={problemsAt(problems, `${path}.${shape.key}`)}
          options={shape.variants.map((variant) => ({ value: variant.value, label: variant.title }))}
          value={chosen?.value ?? ''}
          {...(!chosen && { blank: 'Choose' })}
          onValue={(next) =>
            onChange(firstValue(shape.variants.find((variant) => variant.value === next)?.schema ?? {}))
          }
        />
        <FieldList
          fields={rest}
          path={path}
          object={object}
          problems={problems}
          onChange={onChange}
          brief={brief}
        />
      </>
    );
  }
  const fields = shape.kind === 'fields' ? shape.fields : [];
  return (
    <FieldList
      fields={fields}
      path={path}
      object={object}
      problems={problems}
      onChange={onChange}
      brief={brief}
    />
  );
}

function FieldList({
  fields,
  path,
  object,
  problems,
  onChange,
  brief,
}: {
  fields: readonly [string, Schema][];
  path: string;
  object: Record<string, unknown>;
  problems: readonly FieldProblem[];
  onChange: (value: unknown) => void;
  brief?: boolean | undefined;
}) {
  return fields.map(([key, schema]) => (
    <SchemaField
      key={key}
      name={key}
      path={path === '' ? key : `${path}.${key}`}
      schema={schema}
      value={object[key] === undefined ? schema.default : object[key]}
      problems={problems}
      brief={brief}
      onChange={(next) => onChange({ ...object, [key]: next })}
    />
  ));
}

function FieldSet(props: SchemaFieldProps & { label: string; nullable: boolean }) {
  const { label, nullable, schema, value, path, onChange, problems } = props;
  const stated = value !== null && value !== undefined;
  return (
    <fieldset className={styles.fieldset}>
      <legend>{label}</legend>
      {schema.description && !props.brief ? <p className={styles.hint}>{schema.description}</p> : null}
      {nullable ? (
        <CheckboxField
          name={`${path}.stated`}
          label="Stated"
          checked={stated}
          onChecked={(checked) => onChange(checked ? firstValue(schema) : null)}
          problems={stated ? [] : problemsAt(problems, path)}
        />
      ) : null}
      {stated ? (
        <div className={styles.fields}>
          <Fields
            schema={schema}
            path={path}
            value={value}
            problems={problems}
            onChange={onChange}
            brief={props.brief}
          />
        </div>
      ) : null}
    </fieldset>
  );
}

/** A list of objects: a numbered row each, to add to and take from. */
function Rows({ name, path, schema, of, value, problems, onChange }: SchemaFieldProps & { of: Schema }) {
  const rows = Array.isArray(value) ? value : [];
  const label = labelOf(name, schema);
  const own = problemsAt(problems, path);
  const item = withoutNull(of).schema;
  const add = useRef<HTMLButtonElement>(null);
  return (
    <fieldset className={styles.rows} id={fieldId(path)} tabIndex={-1}>
      <legend>
        {label} <span className={styles.count}>{rows.length}</span>
      </legend>
      {schema.description ? <p className={styles.hint}>{schema.description}</p> : null}
      <FieldProblems id={`${fieldId(path)}-problems`} problems={own} />
      <ol className={styles.rowList}>
        {rows.map((row, at) => (
          // Rows have no identity of their own: their place is what a problem's path names.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above; fields are controlled, so nothing is left behind
          <li key={at} className={styles.row}>
            <fieldset className={styles.fields}>
              <legend className={styles.rowNumber}>{at + 1}</legend>
              <Fields
                schema={item}
                path={`${path}.${at}`}
                value={row}
                problems={problems}
                brief={at > 0}
                onChange={(next) => onChange(rows.with(at, next))}
              />
            </fieldset>
            <div className={styles.rowTools}>
              <Button
                kind="quiet"
                size="small"
                aria-label={`Remove row ${at + 1} of ${label}`}
                onClick={() => {
                  onChange(rows.toSpliced(at, 1));
                  add.current?.focus();
                }}
              >
                Remove
              </Button>
            </div>
          </li>
        ))}
      </ol>
      <Button
        ref={add}
        size="small"
        aria-label={`Add a row to ${label}`}
        onClick={() => onChange([...rows, rows.length > 0 ? structuredClone(rows.at(-1)) : firstValue(item)])}
      >
        Add a row
      </Button>
    </fieldset>
  );
}

/** Problems of this place and of all inside it, for a field that shows several values at once. */
function within({ problems, path }: SchemaFieldProps): string[] {
  return problems
    .filter((problem) => problem.path === path || problem.path.startsWith(`${path}.`))
    .map(({ sentence }) => sentence);
}

function optionWord(option: unknown): string {
  return typeof option === 'string' ? spelled(option) : String(option);
}
