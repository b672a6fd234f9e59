'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { problemsAt } from '@/app/_ui/field-problem';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { type Proof, ProofDialog } from '@/app/_ui/proof-dialog';
import { RadioGroup } from '@/app/_ui/radio-group';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import type { LoadedPack } from '@/db/queries/loads/packsOfLoad';
import { type AcceptanceFinding, isAboutImplants } from '@/lib/loads/acceptance';
import type { LoadState } from '@/lib/loads/load';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import styles from '../loads.module.css';
import { sendLoad } from '../send-load';
import { type ExceptionAsked, ExceptionFields, NO_EXCEPTION } from './exception-fields';

interface Option {
  value: string;
  label: string;
  note?: string;
}

interface DecisionProps {
  load: { id: string; number: string; state: LoadState; revision: number };
  findings: readonly AcceptanceFinding[];
  packs: readonly LoadedPack[];
  places: readonly { id: string; name: string }[];
  cases: readonly Option[];
  mayAccept: boolean;
  mayReject: boolean;
}

/** Accept or reject, each by a person who proves who they are. Nothing here is chosen before they choose it. */
export function Decision(props: DecisionProps) {
  const { load, mayAccept, mayReject } = props;
  if (load.state === 'accepted') return mayReject ? <Reject {...props} /> : null;
  return (
    <>
      {mayAccept ? (
        <Accept {...props} />
      ) : (
        <Section title="Accept">
          <p className={styles.soft}>A decontamination lead accepts loads, by name and with proof.</p>
        </Section>
      )}
      {mayReject ? <Reject {...props} /> : null}
    </>
  );
}

function Accept({ load, findings, packs, places, cases }: DecisionProps) {
  const router = useRouter();
  const [reason, setReason] = useState('');
  const [setsPlace, setSetsPlace] = useState('');
  const [pouchesPlace, setPouchesPlace] = useState('');
  const [exception, setException] = useState<ExceptionAsked>(NO_EXCEPTION);
  const [surgeonProof, setSurgeonProof] = useState<Proof | null>(null);
  const [asking, setAsking] = useState<'surgeon' | 'me' | null>(null);
  const [problems, setProblems] = useState<{ path: string; sentence: string }[]>([]);
  const sound = packs.filter(({ unloadedAs }) => unloadedAs === 'sound');
  const stops = findings.filter(({ severity }) => severity === 'stops');
  const onlyImplants = stops.length > 0 && stops.every(isAboutImplants);
  const cautioned = findings.some(({ severity }) => severity === 'caution');
  const blocked = stops.length > 0 && !onlyImplants;
  const options = places.map(({ id, name }) => ({ value: id, label: name }));

  function begin() {
    const missing = [
      ...(sound.some(({ kind }) => kind === 'set') && setsPlace === ''
        ? [{ path: 'setsPlaceId', sentence: 'Say where the sets go.' }]
        : []),
      ...(sound.some(({ kind }) => kind === 'pouch') && pouchesPlace === ''
        ? [{ path: 'pouchesPlaceId', sentence: 'Say where the pouches go.' }]
        : []),
      ...(cautioned && reason.trim() === ''
        ? [{ path: 'reason', sentence: 'There are cautions: say why the load may be accepted all the same.' }]
        : []),
      ...(onlyImplants && exception.caseId === null
        ? [{ path: 'exception.caseId', sentence: 'Name the case that needs the implants now.' }]
        : []),
      ...(onlyImplants && exception.packIds.length === 0
        ? [{ path: 'exception.packIds', sentence: 'Name the packs that go.' }]
        : []),
      ...(onlyImplants && exception.reason.trim() === ''
        ? [{ path: 'exception.reason', sentence: 'Say why they can’t wait.' }]
        : []),
    ];
    setProblems(missing);
    if (missing.length === 0) setAsking(onlyImplants ? 'surgeon' : 'me');
  }

  async function accept(proof: Proof) {
    const sent = await sendLoad(`/api/v1/loads/${load.id}/accept`, {
      baseRevision: load.revision,
      reason,
      setsPlaceId: setsPlace || null,
      pouchesPlaceId: pouchesPlace || null,
      exception: onlyImplants ? { ...exception, proof: surgeonProof } : null,
      proof,
    });
    if (!sent.ok) {
      // a refused secret stays in the dialog; anything else is said beside its field
      const secret = sent.problems.some(({ path }) => path === 'secret');
      if (!secret) setProblems(sent.problems);
      return sent.sentences.join(' ');
    }
    setSurgeonProof(null);
    router.refresh();
    return undefined;
  }

  return (
    <Section title={onlyImplants ? 'Accept, with an exception for implants' : 'Accept'}>
      {blocked ? (
        <p className={styles.soft}>It can’t be accepted as it stands: see what stops it above.</p>
      ) : (
        <div className={styles.form}>
          {problems.length > 0 ? <ProblemSummary problems={problems} focus /> : null}
          {onlyImplants ? (
            <ExceptionFields
              asked={exception}
              onAsked={setException}
              packs={sound.filter(({ implants }) => implants !== 'no')}
              cases={cases}
              problems={problems}
            />
          ) : null}
          {sound.some(({ kind }) => kind === 'set') ? (
            <SelectField
              name="setsPlaceId"
              label="Where the sets go"
              blank="Choose a place"
              options={options}
              value={setsPlace}
              onValue={setSetsPlace}
              problems={problemsAt(problems, 'setsPlaceId')}
            />
          ) : null}
          {sound.some(({ kind }) => kind === 'pouch') ? (
            <SelectField
              name="pouchesPlaceId"
              label="Where the pouches go"
              blank="Choose a place"
              options={options}
              value={pouchesPlace}
              onValue={setPouchesPlace}
              problems={problemsAt(problems, 'pouchesPlaceId')}
            />
          ) : null}
          <TextArea
            name="reason"
            label={cautioned ? 'Why it may be accepted with its cautions' : 'Remark'}
            hint={cautioned ? undefined : 'Blank where there is none.'}
            value={reason}
            onValue={setReason}
            rows={2}
            maxLength={400}
            problems={problemsAt(problems, 'reason')}
          />
          <ButtonRow>
            <Button kind="primary" size="bench" onClick={begin}>
              {`Accept load ${load.number}`}
            </Button>
          </ButtonRow>
        </div>
      )}
      <ProofDialog
        title="The operating surgeon stands for it"
        meaning={`${MEANING_WORDS.iApprove} that these implants go before the biological result of load ${load.number}`}
        confirm="Go on to the lead"
        open={asking === 'surgeon'}
        onOpen={(open) => setAsking((now) => (open ? 'surgeon' : now === 'surgeon' ? null : now))}
        who="another"
        onProof={async (proof) => {
          setSurgeonProof(proof);
          setAsking('me');
        }}
      />
      <ProofDialog
        title={`Accept load ${load.number}`}
        meaning={MEANING_WORDS.iAcceptThisLoad}
        confirm="Accept the load"
        open={asking === 'me'}
        onOpen={(open) => setAsking((now) => (open ? 'me' : now === 'me' ? null : now))}
        who="me"
        onProof={accept}
      />
    </Section>
  );
}

function Reject({ load }: DecisionProps) {
  const router = useRouter();
  const [reason, setReason] = useState('');
  const [setsGo, setSetsGo] = useState<'onBench' | 'held' | null>(load.state === 'accepted' ? 'held' : null);
  const [asking, setAsking] = useState(false);
  const [problems, setProblems] = useState<{ path: string; sentence: string }[]>([]);

  function begin() {
    const missing = [
      ...(reason.trim() === '' ? [{ path: 'rejectReason', sentence: 'Say why it is rejected.' }] : []),
      ...(setsGo === null ? [{ path: 'setsGo', sentence: 'Say where its sets go.' }] : []),
    ];
    setProblems(missing);
    setAsking(missing.length === 0);
  }

  return (
    <Section
      title={load.state === 'accepted' ? 'Reject it after all' : 'Reject'}
      note="everything since the last accepted load on this steriliser is held with it"
    >
      <div className={styles.form}>
        {problems.length > 0 ? <ProblemSummary problems={problems} focus /> : null}
        <TextArea
          name="rejectReason"
          label="Why"
          value={reason}
          onValue={setReason}
          rows={2}
          maxLength={400}
          problems={problemsAt(problems, 'rejectReason')}
        />
        {load.state === 'accepted' ? null : (
          <RadioGroup
            name="setsGo"
            label="Where its sets go"
            value={setsGo}
            onValue={setSetsGo}
            problems={problemsAt(problems, 'setsGo')}
            choices={[
              {
                value: 'onBench',
                label: 'Back to the bench',
                note: 'to be opened, and packed and sterilised again',
              },
              { value: 'held', label: 'Held', note: 'because the indicator or the cycle failed' },
            ]}
          />
        )}
        <ButtonRow>
          <Button kind="danger" size="bench" onClick={begin}>
            {`Reject load ${load.number}`}
          </Button>
        </ButtonRow>
      </div>
      <ProofDialog
        title={`Reject load ${load.number}`}
        meaning={MEANING_WORDS.iRejectThisLoad}
        confirm="Reject the load"
        open={asking}
        onOpen={setAsking}
        who="me"
        onProof={async (proof) => {
          const body = { baseRevision: load.revision, reason, setsGo, proof };
          const sent = await sendLoad(`/api/v1/loads/${load.id}/reject`, body);
          if (!sent.ok) return sent.sentences.join(' ');
          router.refresh();
          return undefined;
        }}
      />
    </Section>
  );
}
