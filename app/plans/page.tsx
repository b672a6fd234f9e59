import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { type CardOnFile, listCards } from '@/db/queries/cards/cards';
import { listStarts, type StartOnFile, startFigures } from '@/db/queries/cards/starts';
import { remarksSwitchedOff } from '@/db/queries/planner';
import { may } from '@/lib/people/permissions';
import type { StartUseFigures } from '@/lib/plans/startUse';
import { listWords } from '@/lib/wording/numbers';
import { REGION_WORDS } from '@/lib/wording/plans';
import type { CardLine } from './cards-table';
import { PlanLists } from './plan-lists';
import { RemarkSwitches } from './remark-switches';
import type { StartLine } from './starts-table';

export const metadata: Metadata = { title: 'Starts and preference cards' };
export const dynamic = 'force-dynamic';

/** What surgeons keep to begin plans from, and what they want for a procedure. */
export default async function PlansPage() {
  const { db, person } = await enter('/plans');
  const [cards, starts, figures, off] = await Promise.all([
    listCards(db),
    listStarts(db),
    startFigures(db, null),
    remarksSwitchedOff(db),
  ]);
  return (
    <Page
      title="Starts and preference cards"
      lead="A saved start is a construct to begin plans from; a plan begun from one is a copy. A preference card says what a surgeon wants for a procedure. Each is its owner’s to change, and anybody’s to read."
      breadcrumb={[{ label: 'Cases', href: '/cases' }]}
      actions={<LinkButton href="/plans/procedures">Procedures</LinkButton>}
    >
      <PlanLists
        cards={cards.map((card) => cardLine(card, starts))}
        starts={starts.map((start) => startLine(start, figures.get(start.id)))}
        mayMakeCard={may(person, 'keepCards')}
      />
      <Section title="Plan remarks" note="a local setting">
        <RemarkSwitches off={off} maySet={may(person, 'setRemarks')} />
      </Section>
    </Page>
  );
}

function cardLine(card: CardOnFile, starts: readonly StartOnFile[]): CardLine {
  return {
    id: card.id,
    surgeon: card.surgeon.name,
    procedure: card.procedure.name,
    region: REGION_WORDS[card.procedure.region],
    version: card.version,
    retired: card.retiredAt !== null,
    used: card.used,
    extras: card.body.extras.length,
    starts: card.body.startIds.flatMap((id) => {
      const start = starts.find((one) => one.id === id);
      return start ? [{ id, name: start.name }] : [];
    }),
  };
}

function startLine(start: StartOnFile, figures: StartUseFigures | undefined): StartLine {
  return {
    id: start.id,
    name: start.name,
    owner: start.owner.name,
    region: REGION_WORDS[start.construct.region],
    plates: listWords(start.plates.map(({ name }) => name)),
    gone: start.plates.some(({ status }) => status !== 'current'),
    version: start.version,
    retired: start.retiredAt !== null,
    used: figures?.used ?? 0,
    changed: figures && figures.confirmed > 0 ? `${figures.changed} of ${figures.confirmed}` : 'no plan yet',
  };
}
