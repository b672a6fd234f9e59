import kitStyles from '@/app/_kit/kit.module.css';
import { enter } from '@/app/_server/enter';
import { Glyph } from '@/app/_ui/glyph';
import { LinkButton } from '@/app/_ui/link-button';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { type KitScreen, kitScreen } from '@/db/queries/caseLife/kitScreen';
import { standingOfUse } from '@/db/queries/usage/standing';
import type { LifeStage } from '@/lib/caseLife/life';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import { STAGE_TONES, STAGE_WORDS } from '@/lib/wording/case-life';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import { KitAct } from './kit-act';
import { UseMark } from './use/use-mark';

const WAY: readonly {
  word: string;
  act: KitScreen['steps'][number]['act'] | null;
  at: readonly LifeStage[];
}[] = [
  { word: 'Picked', act: 'picked', at: ['notBegun', 'picking'] },
  { word: 'Checked by a second person', act: 'checked', at: ['picked'] },
  { word: 'Issued', act: 'issued', at: ['checked'] },
  { word: 'Taken over in theatre', act: 'taken', at: ['issued'] },
  { word: 'Back', act: null, at: ['inTheatre'] },
];

/** The life of a case's kit: where it is, who did what, and the one next thing. */
export async function KitStrip({ caseId, over, now }: { caseId: string; over: boolean; now: string }) {
  const { db, person } = await enter('/cases/[id]');
  const kit = await kitScreen(db, caseId, now);
  if (!kit || kit.stage === 'cancelled') return null;
  const out = kit.stage === 'issued' || kit.stage === 'inTheatre' || kit.stage === 'back';
  const used = out ? await standingOfUse(db, caseId) : null;
  if (kit.stage === 'notBegun' && (over || kit.confirmedVersion === null)) return null;
  return (
    <Section
      title="Its kit"
      note={kit.pickedNote === null ? undefined : `it goes without something: “${kit.pickedNote}”`}
    >
      <p>
        <Status tone={STAGE_TONES[kit.stage]}>{capitalised(STAGE_WORDS[kit.stage])}</Status>
        {kit.toPutBack.length > 0 && kit.stage !== 'toPutBack' ? (
          <>
            {' '}
            <Status tone="attention">{`${kit.toPutBack.length} no longer needed`}</Status>
          </>
        ) : null}
        {changed(kit) ? (
          <>
            {' '}
            <Status tone="stop">the plan changed since the list was made</Status>
          </>
        ) : null}
      </p>
      {kit.stage === 'toPutBack' ? null : (
        <ol className={kitStyles.life} aria-label="The way of the kit">
          {WAY.map(({ word, act, at }) => {
            const step = kit.steps.find((one) => one.act === act);
            const done = step !== undefined || (act === null && kit.stage === 'back');
            const state = done ? 'done' : at.includes(kit.stage) ? 'now' : 'toCome';
            return (
              <li key={word} className={kitStyles.lifeStep} data-state={state}>
                <Glyph tone={done ? 'good' : state === 'now' ? 'attention' : 'neutral'} />
                <span>{word}</span>
                <span>
                  {step
                    ? `${momentWords(step.at, now)}, ${step.by}`
                    : state === 'now'
                      ? 'next'
                      : done
                        ? ''
                        : 'to come'}
                </span>
              </li>
            );
          })}
        </ol>
      )}
      {used === null ? null : (
        <p>
          {'What was used: '}
          <UseMark standing={used} />
        </p>
      )}
      <div className={kitStyles.acts} data-size="bench">
        <NextAct caseId={caseId} kit={kit} role={person.role} />
      </div>
    </Section>
  );
}

const changed = ({ stage, planVersion, confirmedVersion }: KitScreen): boolean =>
  (stage === 'picking' || stage === 'picked' || stage === 'checked') && planVersion !== confirmedVersion;

/** The table’s own next thing: what is used is entered while the kit is in theatre. */
const mayUseNow = ({ stage }: KitScreen, role: Role): boolean =>
  stage === 'inTheatre' && may({ role }, 'recordUse');

/** What this person does next with it; where the next thing is another's, that is said. */
function NextAct({ caseId, kit, role }: { caseId: string; kit: KitScreen; role: Role }) {
  const pick = (label: string) => (
    <LinkButton href={`/cases/${caseId}/pick`} kind="primary" size="bench">
      {label}
    </LinkButton>
  );
  switch (kit.stage) {
    case 'notBegun':
    case 'picking':
      return may({ role }, 'pickKit') ? (
        pick(kit.stage === 'notBegun' ? 'Pick the kit' : 'Go on picking')
      ) : (
        <LinkButton href={`/cases/${caseId}/pick`}>See the picking</LinkButton>
      );
    case 'toPutBack':
      return pick('Put it back');
    case 'picked':
      return kit.hidden ? (
        <LinkButton href={`/cases/${caseId}/check`} kind="primary" size="bench">
          Check the kit
        </LinkButton>
      ) : (
        <>
          <p>Another person than those who picked checks it.</p>
          <LinkButton href={`/cases/${caseId}/check`}>The check</LinkButton>
          <LinkButton href={`/cases/${caseId}/pick`}>What was picked</LinkButton>
        </>
      );
    case 'checked':
      return (
        <>
          {may({ role }, 'issueKit') ? (
            <KitAct caseId={caseId} revision={kit.revision} act="issue" />
          ) : (
            <p>Sterile services or theatre issue it.</p>
          )}
          <LinkButton href={`/cases/${caseId}/pick`}>What was picked</LinkButton>
        </>
      );
    case 'issued':
    case 'inTheatre':
    case 'back':
      return (
        <>
          {kit.stage === 'issued' && may({ role }, 'takeKit') ? (
            <KitAct caseId={caseId} revision={kit.revision} act="take" />
          ) : null}
          <LinkButton
            href={`/cases/${caseId}/use`}
            size="bench"
            kind={mayUseNow(kit, role) ? 'primary' : 'plain'}
          >
            What was used
          </LinkButton>
          <LinkButton href={`/cases/${caseId}/counts`} size="bench">
            Counts in theatre
          </LinkButton>
          {kit.stage === 'back' ? null : (
            <LinkButton href={`/cases/${caseId}/pick`} size="bench">
              Fetch more for it
            </LinkButton>
          )}
          <LinkButton href={`/cases/${caseId}/back`} size="bench">
            {kit.stage === 'back' ? 'What came back' : 'Enter what comes back'}
          </LinkButton>
        </>
      );
    default:
      return null;
  }
}
