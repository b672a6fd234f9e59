'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ComboField, type ComboOption } from '@/app/_ui/combo-field';
import { FieldGrid, FieldGridRow } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { RadioGroup } from '@/app/_ui/radio-group';
import { SelectField, type SelectOption } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import { SourceFields } from '../../_parts/source-fields';
import { useDrafting } from '../../_parts/use-drafting';
import { draftException } from '../../actions';

/** Drafts a named exception. All problems are shown beside their fields. */
export function ExceptionForm({
  items,
  relations,
  first,
  second,
}: {
  items: ComboOption[];
  relations: SelectOption[];
  first: string | null;
  second: string | null;
}) {
  const router = useRouter();
  const [firstItemId, setFirst] = useState<string | null>(first);
  const [secondItemId, setSecond] = useState<string | null>(second);
  const [relation, setRelation] = useState('');
  const [answer, setAnswer] = useState<'allow' | 'deny' | null>(null);
  const [sentence, setSentence] = useState('');
  const [source, setSource] = useState<unknown>({ kind: 'instructionsForUse' });
  const { problems, pending, send } = useDrafting<'draft'>();

  async function draft() {
    const said = await send('draft', () =>
      draftException({ relation, firstItemId, secondItemId, answer, sentence, source }),
    );
    if (said?.go) router.push(said.go);
  }

  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void draft();
      }}
    >
      {problems.length > 0 ? <ProblemSummary problems={problems} focus /> : null}
      <FieldGrid min="wide">
        <ComboField
          name="firstItemId"
          label="First design"
          options={items}
          value={firstItemId}
          onValue={setFirst}
          problems={problemsAt(problems, 'firstItemId')}
        />
        <ComboField
          name="secondItemId"
          label="Second design"
          options={items}
          value={secondItemId}
          onValue={setSecond}
          problems={problemsAt(problems, 'secondItemId')}
        />
        <SelectField
          name="relation"
          label="Relation"
          options={relations}
          blank="Choose"
          value={relation}
          onValue={setRelation}
          problems={problemsAt(problems, 'relation')}
        />
        <RadioGroup
          name="answer"
          label="Answer"
          choices={[
            { value: 'allow', label: 'Allow: they fit' },
            { value: 'deny', label: 'Deny: they do not fit' },
          ]}
          value={answer}
          onValue={setAnswer}
          problems={problemsAt(problems, 'answer')}
        />
        <FieldGridRow>
          <TextArea
            name="sentence"
            label="Why, as it is shown"
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
        <FieldGridRow>
          <ButtonRow>
            <Button kind="primary" type="submit" pending={pending !== null}>
              Draft the exception
            </Button>
          </ButtonRow>
        </FieldGridRow>
      </FieldGrid>
    </form>
  );
}
