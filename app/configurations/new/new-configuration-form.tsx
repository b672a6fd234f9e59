'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { FieldGrid } from '@/app/_ui/field-grid';
import { type FieldProblem, problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { TextField } from '@/app/_ui/text-field';
import { sendJson } from '@/app/sets/_parts/send-json';

/** Code and name; everything else is drafted in the editor. */
export function NewConfigurationForm() {
  const router = useRouter();
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  const [pending, setPending] = useState(false);

  async function add(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const entry = {
      code: String(form.get('code') ?? '').toUpperCase(),
      name: String(form.get('name') ?? ''),
    };
    setPending(true);
    try {
      const answer = await sendJson<{ id: string }>('/api/v1/configurations', entry);
      if (answer.ok) router.push(`/configurations/${answer.value.id}/edit`);
      else
        setProblems(answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }]);
    } catch {
      setProblems([{ path: '', sentence: 'The server can’t be reached; nothing was saved.' }]);
    } finally {
      setPending(false);
    }
  }

  return (
    <form onSubmit={add} noValidate>
      <ProblemSummary problems={problems} />
      <FieldGrid>
        <TextField
          name="code"
          label="Code"
          hint="begins the codes of its sets, for example SFS"
          width="code"
          problems={problemsAt(problems, 'code')}
          required
        />
        <TextField name="name" label="Name" problems={problemsAt(problems, 'name')} required />
      </FieldGrid>
      <ButtonRow>
        <Button type="submit" kind="primary" pending={pending}>
          Begin the draft
        </Button>
      </ButtonRow>
    </form>
  );
}
