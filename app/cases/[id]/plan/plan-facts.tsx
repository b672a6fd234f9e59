'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { NumberField } from '@/app/_ui/number-field';
import { Segmented } from '@/app/_ui/radio-group';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import type { Construct } from '@/lib/plans/plan';
import { construct as schema } from '@/lib/plans/plan';
import { patientDataWarnings } from '@/lib/theatre/patientDataWarning';
import { patientDataSentence } from '@/lib/wording/cases';
import { BONE_WORDS, plainMm, REGION_WORDS } from '@/lib/wording/plans';
import styles from './planner.module.css';
import type { Planner } from './use-planner';

/** What is stated about the plan as a whole. */
export function PlanFacts({ planner }: { planner: Planner }) {
  const { construct, edit } = planner;
  return (
    <fieldset className={styles.planFacts} disabled={planner.readOnly}>
      <legend className={styles.hiddenLegend}>About the whole plan</legend>
      <SelectField
        name="region"
        label="Region"
        options={Object.entries(REGION_WORDS).map(([value, label]) => ({ value, label }))}
        value={construct.region}
        onValue={(region) => edit({ do: 'setRegion', region: region as Construct['region'] })}
      />
      <Segmented
        name="bone"
        label="Bone"
        choices={Object.entries(BONE_WORDS).map(([value, label]) => ({
          value: value as Construct['bone'],
          label,
        }))}
        value={construct.bone}
        onValue={(bone) => edit({ do: 'setBone', bone })}
      />
      <SharedSpread
        sdMm={construct.sharedLengthSdMm}
        onSpread={(sdMm) => edit({ do: 'setSharedSpread', sdMm }, 'shared')}
      />
      <Note note={construct.note} onNote={(note) => edit({ do: 'setNote', note }, 'note')} />
    </fieldset>
  );
}

function SharedSpread({ sdMm, onSpread }: { sdMm: number | null; onSpread: (sdMm: number | null) => void }) {
  const stated = sdMm === null ? '' : plainMm(sdMm);
  const [typed, setTyped] = useState({ text: stated, stated });
  if (typed.stated !== stated) setTyped({ text: stated, stated });
  const read = readSpread(typed.text);
  return (
    <NumberField
      name="shared-spread"
      label="Spread shared by all lengths"
      hint="One bone, one error: if one length is off, all are. Empty for none."
      unit="mm"
      step={0.5}
      min={0}
      value={typed.text}
      problems={read === undefined ? ['More than 0 and at most 10 mm, or empty.'] : []}
      onValue={(text) => {
        const next = readSpread(text);
        setTyped({ text, stated: next === undefined ? typed.stated : next === null ? '' : plainMm(next) });
        if (next !== undefined) onSpread(next);
      }}
    />
  );
}

/** `undefined` for what is no spread. */
function readSpread(text: string): number | null | undefined {
  if (text.trim() === '') return null;
  const parsed = schema.shape.sharedLengthSdMm.safeParse(Number(text.replace(',', '.')));
  return parsed.success ? parsed.data : undefined;
}

/**
 * The note. What is too long, or looks like a patient's data, stays in the field and out of the plan until it is put
 * right or the writer says that it isn't about a patient.
 */
function Note({ note, onNote }: { note: string | null; onNote: (note: string | null) => void }) {
  const stated = note ?? '';
  const [typed, setTyped] = useState({ text: stated, stated });
  const [declared, setDeclared] = useState<string | null>(null);
  if (typed.stated !== stated) setTyped({ text: stated, stated });
  const tooLong =
    typed.text.length > 500 ? [`${typed.text.length} characters: at most 500, so it is not saved.`] : [];
  const warnings =
    declared === typed.text
      ? []
      : patientDataWarnings(typed.text.slice(0, 2000)).map(({ kind, excerpt }) =>
          patientDataSentence(kind, excerpt),
        );
  const kept = (text: string) => (text.trim() === '' ? null : text);

  function type(text: string) {
    const good = text.length <= 500 && patientDataWarnings(text).length === 0;
    setTyped({ text, stated: good ? (kept(text) ?? '') : typed.stated });
    if (good) onNote(kept(text));
  }
  function declare() {
    setDeclared(typed.text);
    setTyped({ text: typed.text, stated: typed.text });
    onNote(kept(typed.text));
  }
  return (
    <div className={styles.note}>
      <TextArea
        name="note"
        label="Note for whoever prepares the kit"
        hint="Nothing about the patient."
        rows={2}
        value={typed.text}
        onValue={type}
        problems={[...tooLong, ...(typed.stated === typed.text ? [] : warnings)]}
      />
      {warnings.length > 0 && typed.stated !== typed.text && tooLong.length === 0 ? (
        <Button size="small" onClick={declare}>
          It is not about a patient: keep it
        </Button>
      ) : null}
    </div>
  );
}
