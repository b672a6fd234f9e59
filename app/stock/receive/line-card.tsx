'use client';

import { Button } from '@/app/_ui/button';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { FieldGrid } from '@/app/_ui/field-grid';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { Segmented } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import { Status } from '@/app/_ui/status';
import { TextField } from '@/app/_ui/text-field';
import { type StockHold, stockHold } from '@/lib/stock/hold';
import { LIKENESS_WORDS } from '@/lib/wording/bench';
import { listWords } from '@/lib/wording/numbers';
import { holdChoices } from '@/lib/wording/shelf';
import { receiveWords } from '@/lib/wording/stock-acts';
import { type DraftLine, piecesOfDraft, usualPlace } from './draft';
import styles from './receive.module.css';

const HELD = [{ value: '', label: 'not held' }, ...holdChoices(stockHold.options)];

/** One line of a delivery: what the code said stands there, what it lacks is asked for. */
export function LineCard({
  line,
  at,
  places,
  problems,
  onChange,
  onRemove,
}: {
  line: DraftLine;
  at: number;
  places: { value: string; label: string }[];
  problems: readonly FieldProblem[];
  onChange: (part: Partial<DraftLine>) => void;
  onRemove: () => void;
}) {
  const { item } = line;
  const name = (member: string) => `lines.${at}.${member}`;
  const of = (member: string) => problemsAt(problems, name(member));
  const pieces = piecesOfDraft(line);
  const readAgain = of('useBy').length > 0 && line.useBy !== '';
  return (
    <li className={styles.line} aria-label={item.name}>
      <div className={styles.head}>
        <div>
          <p className={styles.name}>{item.name}</p>
          <p className={styles.soft}>{item.code}</p>
        </div>
        <Button
          kind="quiet"
          size="bench"
          onClick={onRemove}
          aria-label={`Take ${item.name} off the delivery`}
        >
          Take off
        </Button>
      </div>
      {of('itemId').map((sentence) => (
        <p key={sentence} id={`field-lines-${at}-itemId`} tabIndex={-1}>
          <Status tone="stop">Not received</Status> {sentence}
        </p>
      ))}
      <Alike line={line} />
      <FieldGrid min="medium">
        <Segmented<'sterilePacked' | 'unsterile'>
          name={name('form')}
          label="It came"
          required
          choices={[
            { value: 'sterilePacked', label: 'sterile' },
            { value: 'unsterile', label: 'not sterile' },
          ]}
          value={line.form}
          onValue={(form) =>
            onChange({
              form,
              // what is not sterile carries no use-by as a rule
              noUseBy: form === 'unsterile' && line.useBy === '',
              ...(line.placeId === usualPlace(item, line.form) ? { placeId: usualPlace(item, form) } : {}),
            })
          }
          problems={of('form')}
        />
        <div>
          <TextField
            name={name('lot')}
            label="Lot"
            width="code"
            required={!line.noLot}
            disabled={line.noLot}
            maxLength={60}
            value={line.lot}
            onValue={(lot) => onChange({ lot })}
            problems={of('lot')}
          />
          <CheckboxField
            name={name('noLot')}
            label="No lot on the pack"
            checked={line.noLot}
            onChecked={(noLot) => onChange({ noLot })}
          />
        </div>
        <div>
          <TextField
            name={name('useBy')}
            label="Use-by"
            hint="2028-03-31, or 2028-03 for the end of the month"
            width="code"
            required={!line.noUseBy}
            disabled={line.noUseBy}
            maxLength={10}
            value={line.useBy}
            onValue={(useBy) => onChange({ useBy, useByReadAgain: false })}
            problems={of('useBy')}
          />
          <CheckboxField
            name={name('noUseBy')}
            label="No use-by on the pack"
            checked={line.noUseBy}
            onChecked={(noUseBy) => onChange({ noUseBy })}
          />
          {readAgain || line.useByReadAgain ? (
            <CheckboxField
              name={name('useByReadAgain')}
              label="I read it off the pack again"
              checked={line.useByReadAgain}
              onChecked={(useByReadAgain) => onChange({ useByReadAgain })}
            />
          ) : null}
        </div>
        <div>
          <NumberField
            name={name('count')}
            label="How many"
            whole
            stepper
            min={1}
            required
            value={line.count}
            onValue={(count) => onChange({ count })}
            problems={of('count')}
          />
          {item.packMultiple > 1 ? (
            <Segmented<'packs' | 'pieces'>
              name={name('unit')}
              label="Counted in"
              hideLabel
              choices={[
                { value: 'packs', label: `packs of ${item.packMultiple}` },
                { value: 'pieces', label: 'pieces' },
              ]}
              value={line.unit}
              onValue={(unit) => onChange({ unit })}
            />
          ) : null}
          {line.unit === 'packs' && pieces > 0 ? <p className={styles.soft}>{`${pieces} pieces`}</p> : null}
        </div>
        <SelectField
          name={name('placeId')}
          label="Put in"
          required
          blank="Choose a place"
          options={places}
          value={line.placeId}
          onValue={(placeId) => onChange({ placeId })}
          problems={of('placeId')}
        />
        <SelectField
          name={name('held')}
          label="Held, because"
          options={HELD}
          value={line.held}
          onValue={(held) => onChange({ held: held as StockHold | '' })}
          problems={of('held')}
        />
        {(item.onOrder ?? []).length > 0 || line.orderLineId ? (
          <SelectField
            name={name('orderLineId')}
            label="Count it to an order"
            hint={receiveWords.orderHint}
            blank="to none"
            options={(item.onOrder ?? []).map(({ orderLineId, ...order }) => ({
              value: orderLineId,
              label: receiveWords.order(order),
            }))}
            value={line.orderLineId ?? ''}
            onValue={(orderLineId) => onChange({ orderLineId })}
            problems={of('orderLineId')}
          />
        ) : null}
      </FieldGrid>
    </li>
  );
}

/** What it is easily taken for, and above all in the place it is put. */
function Alike({ line: { item, placeId } }: { line: DraftLine }) {
  if (item.alike.length === 0) return null;
  const here = item.alike.filter(({ places }) => places.some(({ id }) => id === placeId));
  if (here.length > 0)
    return (
      <p>
        <Status tone="attention">Keep apart</Status>{' '}
        {`Easily taken for ${listWords(here.map(({ code, because }) => `${code} (${LIKENESS_WORDS[because]})`))}, which ${here.length === 1 ? 'lies' : 'lie'} in the same place.`}
      </p>
    );
  return (
    <p className={styles.soft}>
      {`Easily taken for ${listWords(item.alike.map(({ code, because }) => `${code} (${LIKENESS_WORDS[because]})`))}.`}
    </p>
  );
}
