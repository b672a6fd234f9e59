'use client';

import { CheckboxField } from '@/app/_ui/checkbox-field';
import { ComboField } from '@/app/_ui/combo-field';
import { problemsAt } from '@/app/_ui/field-problem';
import { TextArea } from '@/app/_ui/text-area';
import type { LoadedPack } from '@/db/queries/loads/packsOfLoad';
import styles from '../loads.module.css';

export interface ExceptionAsked {
  caseId: string | null;
  packIds: readonly string[];
  reason: string;
}

export const NO_EXCEPTION: ExceptionAsked = { caseId: null, packIds: [], reason: '' };

/** Which implants go before the biological result, for which case, and why. The others are held until it is known. */
export function ExceptionFields({
  asked,
  onAsked,
  packs,
  cases,
  problems,
}: {
  asked: ExceptionAsked;
  onAsked: (asked: ExceptionAsked) => void;
  packs: readonly LoadedPack[];
  cases: readonly { value: string; label: string; note?: string }[];
  problems: readonly { path: string; sentence: string }[];
}) {
  const wrong = problemsAt(problems, 'exception.packIds');
  return (
    <>
      <p>
        The biological result is not known. In an emergency the lead and the operating surgeon together may
        let named packs go for one case; the result is read all the same, and what else waits is held.
      </p>
      <ComboField
        name="exception.caseId"
        label="For which case"
        options={[...cases]}
        value={asked.caseId}
        onValue={(caseId) => onAsked({ ...asked, caseId })}
        problems={problemsAt(problems, 'exception.caseId')}
      />
      <fieldset className={styles.packChoice} id="field-exception-packIds" tabIndex={-1}>
        <legend>Packs that go</legend>
        {packs.map(({ id, name, number }) => (
          <CheckboxField
            key={id}
            name={`exception.pack.${id}`}
            label={`${name}, ${number}`}
            checked={asked.packIds.includes(id)}
            onChecked={(on) =>
              onAsked({
                ...asked,
                packIds: on ? [...asked.packIds, id] : asked.packIds.filter((one) => one !== id),
              })
            }
          />
        ))}
        {wrong.map((sentence) => (
          <p key={sentence} className={styles.wrong}>
            {sentence}
          </p>
        ))}
      </fieldset>
      <TextArea
        name="exception.reason"
        label="Why they can’t wait"
        hint="No patient’s name, number or date of birth."
        value={asked.reason}
        onValue={(reason) => onAsked({ ...asked, reason })}
        rows={2}
        maxLength={400}
        problems={problemsAt(problems, 'exception.reason')}
      />
    </>
  );
}
