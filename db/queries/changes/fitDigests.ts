import { ne } from 'drizzle-orm';
import type { FitException, FitRule, FitSettings } from '@/lib/fit/rule';
import { standingOn } from '@/lib/fit/standing';
import type { PlainDate } from '@/lib/quantities/plainDate';
import type { Queries } from '../../client';
import { exceptionFromRow, ruleFromRow } from '../../mappers/fitRule';
import { fitExceptions, fitRules } from '../../schema';
import { readSetting } from '../settings';
import { digestOf } from './digest';

/** What a rule or exception says, without who stands for it: another draft is another digest. */
export function contentDigestOf(subject: FitRule | FitException): string {
  const { relation, sentence, source, version } = subject;
  return 'code' in subject
    ? digestOf([
        subject.code,
        relation,
        subject.appliesWhen,
        subject.requires,
        subject.severity,
        sentence,
        source,
        version,
      ])
    : digestOf([relation, subject.firstItemId, subject.secondItemId, subject.answer, sentence, source]);
}

/** All rules, exceptions and settings in force on a day: what a trial was made against. */
export async function fitBasisDigest(read: Queries, today: PlainDate): Promise<string> {
  const [rules, exceptions, settings] = await Promise.all([
    read.select().from(fitRules).where(ne(fitRules.status, 'draft')),
    read.select().from(fitExceptions).where(ne(fitExceptions.status, 'draft')),
    readSetting(read, 'fit'),
  ]);
  const inForce = [...rules.map(ruleFromRow), ...exceptions.map(exceptionFromRow)].filter(
    (one) => standingOn(one, today) === 'inForce',
  );
  const limits: FitSettings = settings;
  return digestOf([inForce.map(({ id }) => id).sort(), limits.sleeveToleranceUm]);
}
