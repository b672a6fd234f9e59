import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { newId, now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { ButtonRow } from '@/app/_ui/button-row';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { isBlind } from '@/db/queries/bench/blind';
import { loadBeforePacking } from '@/db/queries/packs/beforePacking';
import { loadSetStanding } from '@/db/queries/setStandings';
import { findSet } from '@/db/queries/sets';
import { packGate } from '@/lib/packs/gate';
import type { PackMass } from '@/lib/packs/mass';
import { may } from '@/lib/people/permissions';
import { writeGrams } from '@/lib/quantities/mass';
import { listWords } from '@/lib/wording/numbers';
import { gateRule, gateSentence } from '@/lib/wording/packs';
import { TURN_STEP_WORDS } from '@/lib/wording/sets';
import { askWords } from '@/lib/wording/short';
import { GateList } from '../../_parts/gate-list';
import { PackForm } from './pack-form';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/sets/[id]/pack');
  const set = await findSet(db, (await params).id);
  return { title: set ? `Pack ${set.code}` : 'No such set' };
}

/** Everything that is asked before a set is closed, on one screen. */
export default async function PackPage({ params }: Props) {
  const { db, person } = await enter('/sets/[id]/pack');
  const { id } = await params;
  const at = now();
  const [before, found, blind] = await Promise.all([
    loadBeforePacking(db, id, at),
    loadSetStanding(db, id, at),
    isBlind(db.read, person.id, id),
  ]);
  if (!before || !found) notFound();
  const { set, standing } = found;
  const breadcrumb = [
    { label: 'Sets', href: '/sets' },
    { label: set.code, href: `/sets/${set.id}` },
  ];
  const open = set.step === 'onBench' || set.step === 'shortAwaitingDecision';
  if (!open || blind)
    return (
      <Page bench title={`Pack ${set.code}`} lead={set.configuration.name} breadcrumb={breadcrumb}>
        <EmptyState
          title={blind ? 'You have a count of this set open' : 'This set can’t be packed now'}
          action={
            <LinkButton href={blind ? `/sets/${set.id}/count` : `/sets/${set.id}`} kind="primary">
              {blind ? 'Go on counting' : `Back to ${set.code}`}
            </LinkButton>
          }
        >
          {blind
            ? 'Until it is closed you see nothing of what others found.'
            : `It is ${TURN_STEP_WORDS[set.step]}. A set is packed on the bench, once it is counted.`}
        </EmptyState>
      </Page>
    );
  const gate = packGate(before.facts);
  const ask = askWords(before.facts.ask);
  const { mass } = before.facts;
  const pieces = standing.figures.pieces;
  return (
    <Page
      bench
      title={`Pack ${set.code}`}
      mark={
        <Status tone={gate.mayPack ? (gate.reasons.short ? 'attention' : 'good') : 'stop'}>
          {gate.mayPack ? 'May be packed' : 'Not yet'}
        </Status>
      }
      lead={set.configuration.name}
      breadcrumb={breadcrumb}
      actions={
        before.facts.ask.asks === 'nothing' ? undefined : (
          <LinkButton href={`/sets/${set.id}/short`}>What is short</LinkButton>
        )
      }
    >
      <Section title="Before it is closed" note={ask.who}>
        <GateList
          label="What keeps it open, and what to look at twice"
          empty="Counted whole, nothing short, nothing that does not belong."
          lines={gate.findings.map(({ finding, severity }) => ({
            severity,
            sentence: gateSentence(finding, before.nameOf),
            rule: gateRule(finding),
          }))}
        />
        {before.facts.bars.some(({ kind }) => kind !== 'notOnBench') ? (
          <ButtonRow>
            <LinkButton href={`/sets/${set.id}/count`} kind="primary">
              Go to the count
            </LinkButton>
          </ButtonRow>
        ) : null}
      </Section>
      <FigureRow>
        <Figure label="Pieces" value={String(pieces.found)} unit={`of ${pieces.expected}`} />
        <Figure
          label="Mass"
          value={mass.exact ? writeGrams(mass.workedGrams) : null}
          note={massNote(mass)}
          working={{
            calculation: 'completeness',
            inputs: [
              { label: 'Lines', value: String(before.massInput.lines.length) },
              {
                label: 'Basket and container',
                value:
                  before.massInput.containerGrams === null
                    ? 'not stated'
                    : writeGrams(before.massInput.containerGrams),
              },
              {
                label: 'Limits',
                value: listWords(mass.limits.map(({ limitGrams }) => writeGrams(limitGrams))),
              },
            ],
            formula: 'Mass = Σ found × mass of one + basket and container',
            steps: mass.limits.map(
              ({ limitGrams, state }) => `${writeGrams(limitGrams)}: ${LIMIT_WORDS[state]}`,
            ),
            input: before.massInput,
            subject: set.id,
            assumptions: ['A mass that is not stated is never taken as nothing.'],
          }}
        />
      </FigureRow>
      {may(person, 'packSet') ? (
        gate.mayPack ? (
          <PackForm
            packId={newId('pack')}
            set={{ id: set.id, code: set.code, revision: set.revision }}
            shortReason={gate.reasons.short}
            highestLimitGrams={mass.limits.at(-1)?.limitGrams ?? null}
            workedGrams={mass.exact ? mass.workedGrams : null}
          />
        ) : null
      ) : (
        <p>{`${person.name} can’t pack sets.`}</p>
      )}
    </Page>
  );
}

const LIMIT_WORDS = {
  under: 'kept',
  near: 'near',
  over: 'exceeded',
  notEstablished: 'not established',
} as const;

function massNote(mass: PackMass): string {
  const states = mass.limits
    .filter(({ state }) => state !== 'under')
    .map(({ limitGrams, state }) => `${writeGrams(limitGrams)} ${LIMIT_WORDS[state]}`);
  const unknown = mass.exact
    ? []
    : [
        `at least ${writeGrams(mass.workedGrams)}; no mass is stated for ${[
          ...(mass.unknownLines.length > 0
            ? [`${mass.unknownLines.length} ${mass.unknownLines.length === 1 ? 'line' : 'lines'}`]
            : []),
          ...(mass.containerKnown ? [] : ['basket or container']),
        ].join(' and ')}`,
      ];
  const said = [...unknown, ...states];
  return said.length === 0 ? 'below every limit, from its pieces' : said.join('; ');
}
