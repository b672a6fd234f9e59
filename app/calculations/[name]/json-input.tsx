'use client';

import { useState } from 'react';
import { TextArea } from '@/app/_ui/text-area';
import { locateJsonProblem } from '@/lib/json/locateJsonProblem';

/** The whole input as JSON; what is not JSON is said with its place, and the last good input stays in force. */
export function JsonInput({ value, onValue }: { value: unknown; onValue: (value: unknown) => void }) {
  const [typed, setTyped] = useState(() => JSON.stringify(value, null, 2));
  const wrong = locateJsonProblem(typed);
  // changed from elsewhere (the example, the form): show that instead
  if (!wrong && JSON.stringify(JSON.parse(typed)) !== JSON.stringify(value))
    setTyped(JSON.stringify(value, null, 2));
  return (
    <TextArea
      name="json"
      label="Input as JSON"
      rows={24}
      spellCheck={false}
      value={typed}
      problems={wrong ? [`Line ${wrong.line}, column ${wrong.column}: ${wrong.reason}.`] : []}
      onValue={(text) => {
        setTyped(text);
        if (!locateJsonProblem(text)) onValue(JSON.parse(text));
      }}
    />
  );
}
