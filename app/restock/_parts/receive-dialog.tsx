'use client';

import { useState } from 'react';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { Dialog } from '@/app/_ui/dialog';
import { problemsAt } from '@/app/_ui/field-problem';
import { NumberField } from '@/app/_ui/number-field';
import { RadioGroup } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import type { SentProblem } from '@/app/sets/_parts/send-json';
import type { OrderLine } from '@/db/queries/restock/orders';
import { ActForm } from './act-form';
import { LabelField } from './label-field';
import type { SeenOrder } from './order-lines';
import { useRestockAct } from './use-restock-act';

/** What came of one line in one part: how many, of which lot and use-by, and where it is put. Nothing is filled in beforehand. */
export function ReceiveDialog({
  order,
  line,
  places,
  year,
  onClose,
}: {
  order: SeenOrder;
  line: OrderLine;
  places: readonly { id: string; name: string }[];
  year: number;
  onClose: () => void;
}) {
  const { send, pending, problems } = useRestockAct();
  const [own, setOwn] = useState<SentProblem[]>([]);
  const [quantity, setQuantity] = useState('');
  const [lot, setLot] = useState('');
  const [noLot, setNoLot] = useState(false);
  const [useBy, setUseBy] = useState('');
  const [noUseBy, setNoUseBy] = useState(false);
  const [useByReadAgain, setUseByReadAgain] = useState(false);
  const [placeId, setPlaceId] = useState('');
  const [form, setForm] = useState(formOf(line.suppliedSterile));
  const all = own.length > 0 ? own : problems.map(atField);
  const askedAgain = own.length === 0 && problemsAt(all, 'useBy').length > 0;

  async function receive() {
    const missing = lacking({ quantity, lot, noLot, useBy, noUseBy, placeId, form });
    setOwn(missing);
    if (missing.length > 0) return;
    const part = {
      lineId: line.id,
      quantity: Number(quantity),
      lot: noLot ? null : lot.trim(),
      useBy: noUseBy ? null : useBy,
      useByReadAgain,
      form,
    };
    const done = await send<{ toCome: number }>(
      `/api/v1/restock/orders/${order.id}/receive`,
      { baseRevision: order.revision, entry: { placeId, parts: [part] } },
      ({ toCome }) =>
        toCome === 0
          ? `${quantity} put on the shelf: all of ${order.number} came, and it is closed.`
          : `${quantity} put on the shelf; ${toCome} of ${order.number} are still to come.`,
    );
    if (done) onClose();
  }

  return (
    <Dialog title={`Receive ${line.code}`} open onOpen={(open) => !open && onClose()}>
      <p>{`${line.name}. ${line.ordered - line.here} of ${line.ordered} are still to come. Each lot and use-by is a part of its own.`}</p>
      <LabelField
        gtin={line.gtin}
        year={year}
        onRead={(read) => {
          if (read.lot !== null) {
            setLot(read.lot);
            setNoLot(false);
          }
          if (read.useBy !== null) {
            setUseBy(read.useBy);
            setNoUseBy(false);
          }
        }}
      />
      <ActForm confirm="Put on the shelf" pending={pending} problems={all} onSend={receive}>
        <NumberField
          name="quantity"
          label="Pieces that came"
          value={quantity}
          onValue={setQuantity}
          whole
          problems={problemsAt(all, 'quantity')}
        />
        <TextField
          name="lot"
          label="Lot"
          width="code"
          maxLength={60}
          value={lot}
          onValue={setLot}
          disabled={noLot}
          problems={problemsAt(all, 'lot')}
        />
        <CheckboxField name="noLot" label="The pack states no lot" checked={noLot} onChecked={setNoLot} />
        <TextField
          name="useBy"
          label="Use-by"
          hint="year-month-day, as 2029-06-30"
          width="code"
          maxLength={10}
          value={useBy}
          onValue={(next) => {
            setUseBy(next);
            setUseByReadAgain(false);
          }}
          disabled={noUseBy}
          problems={problemsAt(all, 'useBy')}
        />
        <CheckboxField
          name="noUseBy"
          label="The pack states no use-by"
          checked={noUseBy}
          onChecked={setNoUseBy}
        />
        {askedAgain || useByReadAgain ? (
          <CheckboxField
            name="useByReadAgain"
            label="I read it off the pack again"
            checked={useByReadAgain}
            onChecked={setUseByReadAgain}
          />
        ) : null}
        {line.suppliedSterile === null ? (
          <RadioGroup
            name="form"
            label="It came"
            value={form}
            onValue={setForm}
            choices={[
              { value: 'sterilePacked', label: 'sterile, in the maker’s pack' },
              { value: 'unsterile', label: 'unsterile' },
            ]}
            problems={problemsAt(all, 'form')}
          />
        ) : null}
        <SelectField
          name="placeId"
          label="Put at"
          blank="choose a place"
          value={placeId}
          onValue={setPlaceId}
          options={places.map(({ id, name }) => ({ value: id, label: name }))}
          problems={problemsAt(all, 'placeId')}
        />
      </ActForm>
    </Dialog>
  );
}

const formOf = (sterile: boolean | null) => (sterile === null ? '' : sterile ? 'sterilePacked' : 'unsterile');

/** `parts.0.useBy` of the answer is `useBy` of this form. */
const atField = ({ path, sentence }: SentProblem): SentProblem => ({
  path: path.replace(/^(entry\.)?parts\.0\./, ''),
  sentence,
});

function lacking(of: {
  quantity: string;
  lot: string;
  noLot: boolean;
  useBy: string;
  noUseBy: boolean;
  placeId: string;
  form: string;
}): SentProblem[] {
  const found: SentProblem[] = [];
  const lacks = (path: string, sentence: string) => found.push({ path, sentence });
  if (!/^[1-9]\d{0,5}$/.test(of.quantity.trim())) lacks('quantity', 'State how many pieces came.');
  if (!of.noLot && of.lot.trim() === '') lacks('lot', 'State the lot, or that the pack states none.');
  if (!of.noUseBy && !/^\d{4}-\d{2}-\d{2}$/.test(of.useBy))
    lacks('useBy', 'State the use-by as year-month-day, or that the pack states none.');
  if (of.form === '') lacks('form', 'State how it came.');
  if (of.placeId === '') lacks('placeId', 'Choose where it is put.');
  return found;
}
