'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ProofDialog } from '@/app/_ui/proof-dialog';
import { TextField } from '@/app/_ui/text-field';
import { MEANING_WORDS } from '@/lib/wording/attestations';
import styles from '../loans.module.css';
import { type SeenLoan, useLoanAct } from '../use-loan-act';

/** Our declaration, by somebody of the bench who proves it. */
export function DeclareButton({ loan, says }: { loan: SeenLoan; says: readonly string[] }) {
  const { sendProven } = useLoanAct(loan);
  const [open, setOpen] = useState(false);
  return (
    <>
      <ul className={styles.plain}>
        {says.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <ButtonRow>
        <Button kind="primary" size="bench" aria-haspopup="dialog" onClick={() => setOpen(true)}>
          Declare it
        </Button>
      </ButtonRow>
      <ProofDialog
        title={`Declaration for ${loan.number}`}
        meaning={MEANING_WORDS.iDeclareThisLoan}
        confirm="Declare"
        open={open}
        onOpen={setOpen}
        who="me"
        onProof={(proof) => sendProven({ act: 'declare', proof }, 'declared')}
      />
    </>
  );
}

/** Into whose hands it goes; our person proves that they gave it. */
export function HandOver({ loan }: { loan: SeenLoan }) {
  const { sendProven } = useLoanAct(loan);
  const [collectedBy, setCollectedBy] = useState('');
  const [unnamed, setUnnamed] = useState(false);
  const [open, setOpen] = useState(false);
  function begin() {
    setUnnamed(collectedBy.trim() === '');
    setOpen(collectedBy.trim() !== '');
  }
  return (
    <div className={styles.form}>
      <p>Print the return note, let whoever collects it sign there, and enter their name as they state it.</p>
      <TextField
        name="collectedBy"
        label="Collected by"
        value={collectedBy}
        onValue={setCollectedBy}
        problems={unnamed ? ['Say who takes it.'] : []}
      />
      <ButtonRow>
        <Button kind="primary" size="bench" aria-haspopup="dialog" onClick={begin}>
          Hand it over
        </Button>
      </ButtonRow>
      <ProofDialog
        title={`${loan.number} to ${collectedBy.trim()}`}
        meaning={MEANING_WORDS.iHandThisOver}
        confirm="Hand it over"
        open={open}
        onOpen={setOpen}
        who="me"
        onProof={(proof) => sendProven({ act: 'handOver', collectedBy, proof }, 'it has gone back')}
      />
    </div>
  );
}
