'use client';

import { useEffect, useRef } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Status } from '@/app/_ui/status';
import type { ItemDraft } from '@/lib/catalogue/form/draft';
import type { ItemKind } from '@/lib/catalogue/item';
import { fieldName } from './field-names';
import styles from './form.module.css';

/** Somebody saved while this form was open: both values of every field that differs, and the choice between them. */
export function ConflictPanel({
  kind,
  mine,
  theirs,
  onMine,
  onTheirs,
}: {
  kind: ItemKind;
  mine: ItemDraft;
  theirs: ItemDraft;
  onMine: () => void;
  onTheirs: () => void;
}) {
  const panel = useRef<HTMLDivElement>(null);
  useEffect(() => panel.current?.focus(), []);
  const names = [...new Set([...Object.keys(mine), ...Object.keys(theirs)])].filter(
    (name) => (mine[name] ?? '').trim() !== (theirs[name] ?? '').trim(),
  );
  return (
    <div ref={panel} role="alert" tabIndex={-1} className={styles.conflict}>
      <p>
        <Status tone="stop">Not saved</Status> Somebody changed this item after you opened it. Nothing of
        yours is lost: choose what is to stand.
      </p>
      <table className={styles.compare}>
        <thead>
          <tr>
            <th scope="col">Field</th>
            <th scope="col">As it stands now</th>
            <th scope="col">What you typed</th>
          </tr>
        </thead>
        <tbody>
          {names.map((name) => (
            <tr key={name}>
              <th scope="row">{fieldName(kind, name, { ...theirs, ...mine })}</th>
              <td>{theirs[name] || 'not stated'}</td>
              <td>{mine[name] || 'not stated'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <ButtonRow>
        <Button onClick={onTheirs}>Take what stands, and go on from there</Button>
        <Button kind="danger" onClick={onMine}>
          Save mine over it
        </Button>
      </ButtonRow>
    </div>
  );
}
