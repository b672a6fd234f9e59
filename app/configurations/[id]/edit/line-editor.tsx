'use client';

import { Button } from '@/app/_ui/button';
import { ComboField } from '@/app/_ui/combo-field';
import { Disclosure } from '@/app/_ui/disclosure';
import { problemsAt } from '@/app/_ui/field-problem';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import type { ItemId } from '@/lib/identity/ids';
import type { MustHaveClass } from '@/lib/sets/configuration';
import type { LineText } from '@/lib/sets/versionDraft';
import { MUST_HAVE_WORDS } from '@/lib/wording/configurations';
import styles from '../../_parts/configurations.module.css';
import type { EditorItem, EditorProblem } from './editor-types';

export const CLASS_OPTIONS = ([1, 2, 3, 4] as const).map((one) => ({
  value: String(one),
  label: `${one} ${MUST_HAVE_WORDS[one]}`,
}));

const NUMBERS = [
  ['row', 'Row'],
  ['slot', 'Slot'],
  ['expected', 'Expected'],
  ['minimum', 'Minimum'],
] as const;

/** One line outside the racks: where it lies, how many, how much it matters, what may stand in. */
export function LineEditor({
  line,
  index,
  byId,
  options,
  problems,
  onChange,
  onRemove,
}: {
  line: LineText;
  index: number;
  byId: ReadonlyMap<ItemId, EditorItem>;
  options: readonly { value: string; label: string; note: string }[];
  problems: readonly EditorProblem[];
  onChange: (fields: Partial<LineText>) => void;
  onRemove: () => void;
}) {
  const item = byId.get(line.itemId);
  const name = item?.name ?? line.itemId;
  const at = (field: string) => problemsAt(problems, `lines.${index}.${field}`);
  const aboutSubstitutes = problems.filter(({ path }) => path.startsWith(`lines.${index}.substitutes`));
  return (
    <li className={styles.line}>
      <span className={styles.what}>
        <strong>{name}</strong>
        <span className={styles.under}>
          {item
            ? `${item.code}${item.status === 'current' ? '' : `, ${item.status}`}`
            : 'not in the catalogue'}
        </span>
        {[...at('itemId'), ...at('rackItemId'), ...at('layer'), ...at('id')].map((sentence) => (
          <span key={sentence} id={`field-lines-${index}-itemId`} className={styles.under}>
            {sentence}
          </span>
        ))}
      </span>
      {NUMBERS.map(([field, label]) => (
        <TextField
          key={field}
          name={`lines.${index}.${field}`}
          label={label}
          value={line[field]}
          onValue={(value) => onChange({ [field]: value })}
          problems={at(field)}
        />
      ))}
      <div className={styles.class}>
        <SelectField
          name={`lines.${index}.mustHaveClass`}
          label="Class"
          options={CLASS_OPTIONS}
          value={String(line.mustHaveClass)}
          onValue={(value) => onChange({ mustHaveClass: Number(value) as MustHaveClass })}
          problems={at('mustHaveClass')}
        />
      </div>
      <Button kind="quiet" aria-label={`Remove ${name}`} onClick={onRemove}>
        Remove
      </Button>
      <div className={styles.substitutes}>
        <Disclosure
          summary={
            line.substitutes.length === 0
              ? 'No substitute'
              : `Substitutes: ${line.substitutes.map((id) => byId.get(id)?.name ?? id).join(', ')}`
          }
          open={aboutSubstitutes.length > 0}
        >
          <ul>
            {line.substitutes.map((id) => (
              <li key={id}>
                {byId.get(id)?.name ?? id}{' '}
                <Button
                  kind="quiet"
                  size="small"
                  aria-label={`Take away the substitute ${byId.get(id)?.name ?? id}`}
                  onClick={() => onChange({ substitutes: line.substitutes.filter((one) => one !== id) })}
                >
                  Take away
                </Button>
              </li>
            ))}
          </ul>
          <ComboField
            name={`lines.${index}.substitutes`}
            label={`May stand in for ${name}`}
            hint="one way: it stands in for this line, not the other way round"
            options={options}
            value={null}
            onValue={(value) => {
              if (value !== null && !line.substitutes.includes(value as ItemId))
                onChange({ substitutes: [...line.substitutes, value as ItemId] });
            }}
            problems={aboutSubstitutes.map(({ sentence }) => sentence)}
          />
        </Disclosure>
      </div>
    </li>
  );
}
