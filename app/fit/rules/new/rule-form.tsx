'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { Tried } from '@/app/_server/fit/try-fit-rule';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { FieldGrid, FieldGridRow } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import { TextField } from '@/app/_ui/text-field';
import type { Condition, Relation, Severity, Source } from '@/lib/fit/rule';
import { SourceFields } from '../../_parts/source-fields';
import { useDrafting } from '../../_parts/use-drafting';
import { draftRule } from '../../actions';
import { tryRule } from '../../try-rule';
import { ConditionEditor, firstComparison } from './condition-editor';
import styles from './condition-editor.module.css';
import { JsonEditor } from './json-editor';
import { ReadBack } from './read-back';
import type { Vocabulary } from './vocabulary';

export interface RuleStart {
  code: string;
  relation: Relation;
  severity: Severity;
  sentence: string;
  source: Source;
  appliesWhen: Condition;
  requires: Condition;
}

const SEVERITIES = [
  { value: 'stops', label: 'Stops: the pair does not fit' },
  { value: 'caution', label: 'Caution: shown, decides nothing' },
  { value: 'note', label: 'Note: worth knowing' },
];

/** Drafts a rule: by fields, or by pasting its condition as JSON. All problems are shown beside their fields. */
export function RuleForm({
  vocabularies,
  start,
  basedOn,
}: {
  vocabularies: Vocabulary[];
  start: RuleStart | null;
  basedOn: number;
}) {
  const router = useRouter();
  const [code, setCode] = useState(start?.code ?? '');
  const [relation, setRelation] = useState<Relation>(start?.relation ?? 'seats');
  const [severity, setSeverity] = useState<string>(start?.severity ?? 'stops');
  const [sentence, setSentence] = useState(start?.sentence ?? '');
  const [source, setSource] = useState<unknown>(start?.source ?? { kind: 'commonPractice' });
  const vocabulary = vocabularies.find((one) => one.relation === relation) ?? vocabularies[0];
  const [conditions, setConditions] = useState<{ appliesWhen: Condition; requires: Condition }>({
    appliesWhen: start?.appliesWhen ?? { all: [] },
    requires: start?.requires ?? (vocabulary ? firstComparison(vocabulary) : { all: [] }),
  });
  const { problems, pending, send } = useDrafting<'try' | 'draft'>();
  const [tried, setTried] = useState<Tried | null>(null);
  if (!vocabulary) return null;
  const draft = { code, relation, severity, sentence, source, ...conditions };

  async function run(which: 'try' | 'draft') {
    if (which === 'try') {
      const answer = await send('try', () => tryRule(draft));
      setTried(answer?.tried ?? null);
    } else {
      const answer = await send('draft', () => draftRule(draft, basedOn));
      if (answer?.go) router.push(answer.go);
    }
  }

  function chooseRelation(next: string) {
    const chosen = vocabularies.find((one) => one.relation === next);
    if (!chosen) return;
    setRelation(chosen.relation);
    // Facts of another relation mean nothing here.
    setConditions({ appliesWhen: { all: [] }, requires: firstComparison(chosen) });
    setTried(null);
  }

  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void run('draft');
      }}
    >
      {problems.length > 0 ? <ProblemSummary problems={problems} focus /> : null}
      <FieldGrid min="medium">
        <TextField
          name="code"
          label="Code"
          hint="Small letters, digits and hyphens: short, and it stays"
          value={code}
          onValue={setCode}
          readOnly={basedOn > 0}
          problems={problemsAt(problems, 'code')}
          required
        />
        <SelectField
          name="relation"
          label="Relation"
          options={vocabularies.map((one) => ({
            value: one.relation,
            label: one.label,
            disabled: basedOn > 0 && one.relation !== relation,
          }))}
          value={relation}
          onValue={chooseRelation}
          problems={problemsAt(problems, 'relation')}
        />
        <SelectField
          name="severity"
          label="When it does not hold"
          options={SEVERITIES}
          value={severity}
          onValue={setSeverity}
          problems={problemsAt(problems, 'severity')}
        />
        <FieldGridRow>
          <TextArea
            name="sentence"
            label="What it says then"
            hint="One sentence people can act on. A fact in curly brackets, {screw.threadUm}, is replaced by its value."
            value={sentence}
            onValue={setSentence}
            rows={2}
            maxLength={300}
            problems={problemsAt(problems, 'sentence')}
          />
        </FieldGridRow>
        <FieldGridRow>
          <SourceFields value={source} onChange={setSource} problems={problems} />
        </FieldGridRow>
      </FieldGrid>
      <Section title="Only where" note="which questions it is about">
        <ConditionEditor
          vocabulary={vocabulary}
          value={conditions.appliesWhen}
          onChange={(appliesWhen) => setConditions({ ...conditions, appliesWhen })}
          path="appliesWhen"
          problems={problems}
          label="Only where"
        />
      </Section>
      <Section title="Requires" note="what has to hold">
        <ConditionEditor
          vocabulary={vocabulary}
          value={conditions.requires}
          onChange={(requires) => setConditions({ ...conditions, requires })}
          path="requires"
          problems={problems}
          label="Requires"
        />
      </Section>
      <JsonEditor conditions={conditions} onConditions={setConditions} />
      <ReadBack tried={tried} />
      <ButtonRow>
        <Button onClick={() => run('try')} pending={pending === 'try'}>
          Read it back and try it
        </Button>
        <Button kind="primary" type="submit" pending={pending === 'draft'}>
          Draft the rule
        </Button>
      </ButtonRow>
    </form>
  );
}
