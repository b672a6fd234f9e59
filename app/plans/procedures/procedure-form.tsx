'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { FieldGrid } from '@/app/_ui/field-grid';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { SelectField } from '@/app/_ui/select-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { TextField } from '@/app/_ui/text-field';
import { showToast } from '@/app/_ui/toast';
import { type SentProblem, sendJson } from '@/app/sets/_parts/send-json';
import { REGION_WORDS } from '@/lib/wording/plans';

interface Known {
  id: string;
  name: string;
  region: string;
  inUse: boolean;
  revision: number;
}

/** Adds a procedure, or renames one and takes it off the list for new cards. */
export function ProcedureForm({ procedure, onDone }: { procedure: Known | null; onDone?: () => void }) {
  const router = useRouter();
  const [name, setName] = useState(procedure?.name ?? '');
  const [region, setRegion] = useState(procedure?.region ?? '');
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);

  async function send(inUse: boolean) {
    if (pending) return;
    setPending(true);
    try {
      const sent =
        procedure === null
          ? await sendJson('/api/v1/plans/procedures', { name, region })
          : await sendJson(
              `/api/v1/plans/procedures/${procedure.id}`,
              { name, region, inUse, baseRevision: procedure.revision },
              'PUT',
            );
      if (!sent.ok) {
        setProblems(sent.problems.length > 0 ? sent.problems : [{ path: '', sentence: sent.sentence }]);
        return;
      }
      setProblems([]);
      if (procedure === null) {
        setName('');
        setRegion('');
      }
      showToast({ tone: 'good', word: 'Saved', text: name.trim() });
      onDone?.();
      router.refresh();
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
    } finally {
      setPending(false);
    }
  }

  function submit(event: FormEvent) {
    event.preventDefault();
    void send(procedure?.inUse ?? true);
  }

  return (
    <form onSubmit={submit} noValidate>
      <ProblemSummary problems={problems} />
      <FieldGrid>
        <TextField
          name="name"
          label="Name"
          value={name}
          onValue={setName}
          problems={problemsAt(problems, 'name')}
          required
        />
        <SelectField
          name="region"
          label="Region"
          blank="Choose"
          options={Object.entries(REGION_WORDS).map(([value, label]) => ({ value, label }))}
          value={region}
          onValue={setRegion}
          problems={problemsAt(problems, 'region')}
          required
        />
      </FieldGrid>
      <ButtonRow>
        <Button type="submit" kind="primary" pending={pending}>
          {procedure === null ? 'Add the procedure' : 'Save'}
        </Button>
        {procedure === null ? null : (
          <>
            <Button pending={pending} onClick={() => send(!procedure.inUse)}>
              {procedure.inUse ? 'Take it off the list for new cards' : 'Put it back on the list'}
            </Button>
            <Button kind="quiet" onClick={onDone}>
              Leave it as it is
            </Button>
          </>
        )}
      </ButtonRow>
    </form>
  );
}
