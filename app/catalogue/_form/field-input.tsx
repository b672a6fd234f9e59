'use client';

import { CheckboxField } from '@/app/_ui/checkbox-field';
import { NumberField } from '@/app/_ui/number-field';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import { formName, type ItemField } from '@/lib/catalogue/form/fields';
import { COUPLING_FORM_WORDS, DRIVE_FORM_WORDS, sentenceCase } from '@/lib/wording/catalogue';
import type { FormApi } from './form-state';

/** `{ a: 'word' }` as the options of a select. */
export function optionsOf(words: Readonly<Record<string, string>>) {
  return Object.entries(words).map(([value, label]) => ({ value, label: sentenceCase(label) }));
}

/** One field of the item form, whatever it holds; holes and ends have editors of their own. */
export function FieldInput({
  field,
  form,
  makers,
}: {
  field: ItemField;
  form: FormApi;
  makers: readonly { id: string; name: string }[];
}) {
  const name = formName(field.key);
  const common = {
    name,
    label: field.label,
    required: field.required ?? false,
    problems: form.problemsAt(name),
    value: form.draft[name] ?? '',
    onValue: (text: string) => form.set(name, text),
    ...(field.hint ? { hint: field.hint } : {}),
  };
  switch (field.entry) {
    case 'mm':
      return <NumberField {...common} unit="mm" step={0.1} />;
    case 'whole':
      return <NumberField {...common} whole {...(field.unit ? { unit: field.unit } : {})} />;
    case 'pounds':
      return <NumberField {...common} unit="£" step={1} />;
    case 'choice': {
      const options =
        field.key === 'makerId'
          ? makers.map(({ id, name: label }) => ({ value: id, label }))
          : optionsOf(field.words);
      return <SelectField {...common} options={options} blank={field.required ? 'Choose' : 'Not stated'} />;
    }
    case 'yesNo':
      return (
        <SelectField
          {...common}
          blank="Not stated"
          options={[
            { value: 'yes', label: 'Yes' },
            { value: 'no', label: 'No' },
          ]}
        />
      );
    case 'flag':
      return (
        <CheckboxField
          name={name}
          label={field.label}
          problems={form.problemsAt(name)}
          checked={form.draft[name] === 'yes'}
          onChecked={(checked) => form.set(name, checked ? 'yes' : 'no')}
        />
      );
    case 'drive':
      return <DriveInput form={form} />;
    case 'coupling':
      return <CouplingInput form={form} at={field.key} label={field.label} />;
    case 'couplings':
      return <CouplingList form={form} at={field.key} label={field.label} />;
    case 'ends':
    case 'holes':
      return null;
    default:
      return <TextField {...common} />;
  }
}

function DriveInput({ form }: { form: FormApi }) {
  const lobed = form.draft['drive.form'] === 'hexalobular';
  return (
    <>
      <SelectField
        name="drive.form"
        label="Drive"
        blank="Not stated"
        options={optionsOf(DRIVE_FORM_WORDS)}
        value={form.draft['drive.form'] ?? ''}
        onValue={(text) => form.set('drive.form', text)}
        problems={form.problemsAt('drive.form')}
      />
      <NumberField
        name="drive.size"
        label={lobed ? 'Drive number' : 'Drive size'}
        whole={lobed}
        {...(lobed ? {} : { unit: 'mm' })}
        step={lobed ? 1 : 0.5}
        value={form.draft['drive.size'] ?? ''}
        onValue={(text) => form.set('drive.size', text)}
        problems={form.problemsAt('drive.size')}
      />
    </>
  );
}

function CouplingInput({ form, at, label }: { form: FormApi; at: string; label: string }) {
  return (
    <>
      <SelectField
        name={`${at}.form`}
        label={label}
        blank="Not stated, or none"
        options={optionsOf(COUPLING_FORM_WORDS)}
        value={form.draft[`${at}.form`] ?? ''}
        onValue={(text) => form.set(`${at}.form`, text)}
        problems={form.problemsAt(`${at}.form`)}
      />
      <NumberField
        name={`${at}.sizeMm`}
        label={`${label}: size`}
        unit="mm"
        step={0.5}
        value={form.draft[`${at}.sizeMm`] ?? ''}
        onValue={(text) => form.set(`${at}.sizeMm`, text)}
        problems={form.problemsAt(`${at}.sizeMm`)}
      />
    </>
  );
}

/** A few shanks, one more than are filled. */
function CouplingList({ form, at, label }: { form: FormApi; at: string; label: string }) {
  const filled = Number(form.draft[`${at}.count`] ?? '0');
  const shown = Math.min(8, filled + 1);
  return Array.from({ length: shown }, (_, index) => (
    <CouplingInput
      // biome-ignore lint/suspicious/noArrayIndexKey: a shank is known by its place in the form
      key={index}
      at={`${at}.${index}`}
      label={`${label} (${index + 1})`}
      form={{
        ...form,
        set: (name, text) => {
          form.set(name, text);
          if (text !== '' && index >= filled) form.set(`${at}.count`, String(index + 1));
        },
      }}
    />
  ));
}
