'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { Disclosure } from '@/app/_ui/disclosure';
import { TextArea } from '@/app/_ui/text-area';
import { parseCondition } from '@/lib/fit/parse-condition';
import type { Condition } from '@/lib/fit/rule';
import type { Problem } from '@/lib/identity/result';
import styles from './condition-editor.module.css';

type Conditions = { appliesWhen: Condition; requires: Condition };

/** The conditions as JSON: to copy, or to paste and take over. What cannot be read is refused with every reason. */
export function JsonEditor({
  conditions,
  onConditions,
}: {
  conditions: Conditions;
  onConditions: (next: Conditions) => void;
}) {
  const [text, setText] = useState<string | null>(null);
  const [problems, setProblems] = useState<string[]>([]);
  const shown = text ?? JSON.stringify(conditions, null, 2);

  function take() {
    const read = readConditions(shown);
    if ('problems' in read) {
      setProblems(read.problems);
      return;
    }
    setProblems([]);
    setText(null);
    onConditions(read);
  }

  return (
    <Disclosure summary="The conditions as JSON, to copy or paste">
      <div className={styles.parts}>
        <TextArea
          name="json"
          label="Conditions"
          rows={12}
          value={shown}
          onValue={setText}
          problems={problems}
          maxLength={20_000}
        />
        <Button size="small" onClick={take}>
          Take over what is pasted
        </Button>
      </div>
    </Disclosure>
  );
}

function readConditions(text: string): Conditions | { problems: string[] } {
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch (error) {
    return {
      problems: [`This is not JSON: ${error instanceof Error ? error.message : 'it cannot be read'}`],
    };
  }
  if (raw === null || typeof raw !== 'object' || !('requires' in raw)) {
    return { problems: ['An object with “requires”, and “appliesWhen” where it is not always, is needed.'] };
  }
  const found: Problem[] = [];
  const { appliesWhen = { all: [] }, requires } = raw as Record<string, unknown>;
  const read = {
    appliesWhen: parseCondition(appliesWhen, ['appliesWhen'], found),
    requires: parseCondition(requires, ['requires'], found),
  };
  return found.length > 0
    ? { problems: found.map(({ path, message }) => `${path.join('.')}: ${message}`) }
    : read;
}
