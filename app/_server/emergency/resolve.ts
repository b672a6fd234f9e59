import 'server-only';
import type { Database } from '@/db/client';
import { type BookedCaseRow, findCase, listPlanVersions } from '@/db/queries/cases';
import { constructFrom } from '@/db/queries/emergency/constructs';
import { readSetting } from '@/db/queries/settings';
import type { ConstructSource, EmergencyAsked } from '@/lib/emergency/asked';
import type { PersonId } from '@/lib/identity/ids';
import type { Construct } from '@/lib/plans/plan';

/** The construct to go by, or that it is not known yet. */
export interface ChosenConstruct {
  from: ConstructSource;
  construct: Construct | null;
  label: string;
  surgeonId: PersonId | null;
  /** Plates of it that are no longer current. */
  platesGone: string[];
}

/** The questions with what the hospital has on file filled in. */
export interface ResolvedEmergency {
  now: string;
  /** The case it is for, where that is on the list already. */
  listed: BookedCaseRow | null;
  region: Construct['region'] | null;
  limb: 'left' | 'right' | null;
  chosen: ChosenConstruct | null;
  neededAt: string;
  /** How long a case is taken to last. */
  caseMinutes: number;
}

const MINUTE_MS = 60_000;

/** The next whole minute. */
const wholeMinute = (ms: number) => new Date(Math.ceil(ms / MINUTE_MS) * MINUTE_MS).toISOString();

const CONSTRUCT_NOT_KNOWN = 'Plan not known yet';

/** Fills in what the address says: a case that is listed brings its site, side, plan and time with it. */
export async function resolveEmergency(
  db: Database,
  asked: EmergencyAsked,
  now: string,
): Promise<ResolvedEmergency> {
  const [listed, assumed] = await Promise.all([
    asked.case === null ? null : findCase(db, asked.case),
    readSetting(db.read, 'emergency'),
  ]);
  const region = listed?.region ?? asked.region;
  const limb = listed?.limb ?? asked.side;
  const needed = listed?.startsAt ?? asked.gone ?? asked.by;
  return {
    now,
    listed,
    region,
    limb,
    neededAt: needed ?? wholeMinute(Date.parse(now) + assumed.neededInMinutes * MINUTE_MS),
    caseMinutes: assumed.caseMinutes,
    chosen: limb === null ? null : await chosenConstruct(db, asked, listed, limb),
  };
}

async function chosenConstruct(
  db: Database,
  asked: EmergencyAsked,
  listed: BookedCaseRow | null,
  limb: 'left' | 'right',
): Promise<ChosenConstruct | null> {
  const own = listed ? await listPlanVersions(db, listed.id) : [];
  const plan = own.find(({ status }) => status === 'confirmed') ?? own[0];
  if (listed && plan)
    return {
      from: plan.id,
      construct: plan.construct,
      label: `Plan of ${listed.reference}, version ${plan.version}${plan.status === 'draft' ? ', in draft' : ''}`,
      surgeonId: listed.surgeonId,
      platesGone: [],
    };
  if (asked.plan === null) return null;
  if (asked.plan === 'unknown')
    return {
      from: 'unknown',
      construct: null,
      label: CONSTRUCT_NOT_KNOWN,
      surgeonId: listed?.surgeonId ?? null,
      platesGone: [],
    };
  const found = await constructFrom(db, asked.plan, limb);
  if (!found) return null;
  const { from, kind, name, surgeon, surgeonId, construct, platesGone } = found;
  const label = kind === 'start' ? `${name} (${surgeon})` : `Plan of ${name} (${surgeon})`;
  return { from, construct, label, surgeonId: listed?.surgeonId ?? surgeonId, platesGone };
}
