'use client';

import { useState } from 'react';
import { ComboField } from '@/app/_ui/combo-field';
import { Dialog } from '@/app/_ui/dialog';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { SelectField } from '@/app/_ui/select-field';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import type { SupplyTerms } from '@/lib/restock/terms';
import { ActForm } from './act-form';
import { useRestockAct } from './use-restock-act';

/** Terms as they were seen. */
export interface TermsOf extends SupplyTerms {
  of: { kind: 'maker' | 'item'; id: string; name: string };
  revision: number;
}

const FIELDS = [
  { name: 'leadDays', label: 'Lead', unit: 'days', hint: 'from order to shelf' },
  { name: 'leadSdDays', label: 'Spread of the lead', unit: 'days', hint: 'two in three come within it' },
  { name: 'reviewDays', label: 'Days between orders', unit: 'days', hint: 'empty: as set' },
  { name: 'servicePercent', label: 'Service level', unit: '%', hint: 'empty: by must-have class' },
  { name: 'shelfLifeDays', label: 'Good for, as it comes', unit: 'days', hint: 'empty: not known' },
] as const satisfies readonly {
  name: Exclude<keyof SupplyTerms, 'consigned'>;
  label: string;
  unit: string;
  hint: string;
}[];

type Texts = Record<(typeof FIELDS)[number]['name'], string>;

const keptTextOf = (consigned: boolean | null | undefined) =>
  consigned == null ? '' : consigned ? 'consignment' : 'ours';

const textsOf = (terms: TermsOf | null): Texts =>
  Object.fromEntries(
    FIELDS.map(({ name }) => [name, terms?.[name] == null ? '' : String(terms[name])]),
  ) as Texts;

/** States the terms of a maker, or of one item, whole: what is left empty falls back. */
export function TermsDialog({
  terms,
  items,
  onClose,
}: {
  /** `null`: of an item still to be chosen. */
  terms: TermsOf | null;
  items: { value: string; label: string; note: string }[];
  onClose: () => void;
}) {
  const { send, pending, problems } = useRestockAct();
  const [texts, setTexts] = useState(textsOf(terms));
  const [kept, setKept] = useState(keptTextOf(terms?.consigned));
  const [item, setItem] = useState<string | null>(null);
  const [own, setOwn] = useState<SentProblem[]>([]);
  const all =
    own.length > 0
      ? own
      : problems.map(({ path, sentence }) => ({ path: path.replace(/^terms\./, ''), sentence }));

  async function save() {
    const found: SentProblem[] = FIELDS.flatMap(({ name, unit }) =>
      texts[name].trim() === '' || /^\d{1,4}(\.\d)?$/.test(texts[name].trim())
        ? []
        : [
            {
              path: name,
              sentence: `State a number of ${unit === '%' ? 'percent' : unit}, or leave it empty.`,
            },
          ],
    );
    if (terms === null && item === null) found.push({ path: 'item', sentence: 'Choose the item.' });
    setOwn(found);
    if (found.length > 0) return;
    const of = terms ? { kind: terms.of.kind, id: terms.of.id } : { kind: 'item', id: item };
    const done = await send(
      '/api/v1/restock/terms',
      {
        of,
        baseRevision: terms?.revision ?? 0,
        terms: {
          ...Object.fromEntries(
            FIELDS.map(({ name }) => [name, texts[name].trim() === '' ? null : Number(texts[name])]),
          ),
          consigned: kept === '' ? null : kept === 'consignment',
        },
      },
      () => 'The terms are stated; the next proposal goes by them.',
    );
    if (done) onClose();
  }

  return (
    <Dialog
      title={terms ? `Terms of ${terms.of.name}` : 'Terms of one item'}
      open
      onOpen={(open) => !open && onClose()}
    >
      <ActForm confirm="State these terms" pending={pending} problems={all} onSend={save}>
        {terms === null ? (
          <ComboField
            name="item"
            label="Item"
            options={items}
            value={item}
            onValue={setItem}
            placeholder="code or name"
            problems={problemsAt(all, 'item')}
          />
        ) : null}
        <FieldGrid min="narrow">
          {FIELDS.map(({ name, label, unit, hint }) => (
            <NumberField
              key={name}
              name={name}
              label={label}
              unit={unit}
              hint={hint}
              value={texts[name]}
              onValue={(text) => setTexts((before) => ({ ...before, [name]: text }))}
              problems={problemsAt(all, name)}
            />
          ))}
          <SelectField
            name="consigned"
            label="Kept"
            hint="on consignment: replaced by its owner on a usage order, never bought"
            blank={terms?.of.kind === 'maker' ? 'not stated: bought' : 'as the maker'}
            options={[
              { value: 'ours', label: 'bought, ours' },
              { value: 'consignment', label: 'on consignment' },
            ]}
            value={kept}
            onValue={setKept}
            problems={problemsAt(all, 'consigned')}
          />
        </FieldGrid>
      </ActForm>
    </Dialog>
  );
}
