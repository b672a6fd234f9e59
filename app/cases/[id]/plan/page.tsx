import type { Metadata } from 'next';
import { notFound, redirect } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import { originOfCase } from '@/db/queries/cards/cards';
import { listStarts } from '@/db/queries/cards/starts';
import { findCase, listPlanVersions } from '@/db/queries/cases';
import { loadFitEngine } from '@/db/queries/fitRules';
import { itemNames, loadPlannerCatalogue, remarksSwitchedOff } from '@/db/queries/planner';
import { listPlanStarts, platesGone } from '@/db/queries/plans';
import { may } from '@/lib/people/permissions';
import { emptyConstruct } from '@/lib/plans/edit';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { LIMB_WORDS, REGION_WORDS } from '@/lib/wording/plans';
import { PlannerScreen } from './planner';

export const metadata: Metadata = { title: 'Plan' };
export const dynamic = 'force-dynamic';

export default async function PlanPage({ params }: { params: Promise<{ id: string }> }) {
  const { db, person } = await enter('/cases/[id]/plan');
  const { id } = await params;
  const booked = await findCase(db, id);
  if (!booked) notFound();
  const [newest] = await listPlanVersions(db, id);
  // A confirmed plan is read on the case page; changing it begins a draft there.
  if (newest && newest.status !== 'draft') redirect(`/cases/${booked.id}`);
  const [own, origin] = await Promise.all([listPlanStarts(db, person.id), originOfCase(db, id)]);
  // the card's starts may be another's: the operating surgeon's, for whoever writes the plan with them
  const named = (await listStarts(db)).filter(
    (start) => origin.card?.body.startIds.includes(start.id) && start.retiredAt === null,
  );
  const starts = [
    ...own.map((start) => ({ ...start, own: true })),
    ...named
      .filter(({ id: startId }) => !own.some((one) => one.id === startId))
      .map((start) => ({ ...start, platesGone: platesGone(start.plates), own: false })),
  ];
  const construct = newest?.construct ?? emptyConstruct(booked.region, booked.limb);
  const [catalogue, engine, names, remarksOff] = await Promise.all([
    loadPlannerCatalogue(db, [construct, ...starts.map((start) => start.construct)]),
    loadFitEngine(db),
    itemNames(db),
    remarksSwitchedOff(db),
  ]);
  const mayWrite = may(person, 'writePlan');
  return (
    <Page
      bench
      title={`Plan for ${booked.reference}`}
      mark={
        <span>{`${REGION_WORDS[booked.region]}, ${LIMB_WORDS[booked.limb].toLowerCase()} · version ${newest?.version ?? 1}`}</span>
      }
      lead={`${booked.theatre}, ${dayWords(booked.caseDate)} at ${wallClock(booked.startsAt).time}, ${booked.surgeon}`}
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: booked.reference, href: `/cases/${booked.id}` },
      ]}
    >
      {mayWrite ? null : (
        <p>
          <Status tone="neutral">Reading only</Status> {person.name} can’t write plans: a surgeon, scrub
          practitioner or theatre manager can. One of them signs in at the top of the page.
        </p>
      )}
      <PlannerScreen
        key={`${newest?.id ?? 'none'} ${person.id}`}
        facts={{
          booked: { id: booked.id, reference: booked.reference, limb: booked.limb, region: booked.region },
          plan: {
            id: newest?.id ?? null,
            version: newest?.version ?? 1,
            revision: newest?.revision ?? 0,
            construct,
          },
          ...catalogue,
          fit: { rules: [...engine.rules], exceptions: [...engine.exceptions], settings: engine.settings },
          remarksOff,
          mayWrite,
          mayConfirm: may(person, 'confirmPlan'),
        }}
        starts={starts.map((start) => ({
          id: start.id,
          name: start.name,
          version: start.version,
          own: start.own,
          construct: start.construct,
          gone: start.platesGone.map(({ name, status }) => `${name}: ${status}`),
        }))}
        names={Object.fromEntries(names)}
      />
    </Page>
  );
}
