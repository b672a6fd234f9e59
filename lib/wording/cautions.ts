/**
 * The cautions shown on every plan, list and label sheet, on screen and on paper.
 * One place, so that a screen and the sheet printed from it never say different things.
 */

export type CautionId =
  | 'localPolicy'
  | 'notASurgicalPlan'
  | 'genericCatalogue'
  | 'sterility'
  | 'side'
  | 'estimates';

export type Caution = { id: CautionId; sentence: string };

/** In the order they are shown. */
export const cautions: readonly Caution[] = [
  {
    id: 'localPolicy',
    sentence: 'Local policy and the makers’ instructions for use come before anything shown here.',
  },
  {
    id: 'notASurgicalPlan',
    sentence: 'A stock and logistics aid, not a surgical plan: the operating surgeon decides.',
  },
  { id: 'genericCatalogue', sentence: 'The catalogue is generic; replace it with your own.' },
  { id: 'sterility', sentence: 'A person judges sterility when the pack is opened.' },
  { id: 'side', sentence: 'Side is confirmed at time out.' },
  { id: 'estimates', sentence: 'Every estimate states what it assumes.' },
];

/**
 * The further caution that only paper carries.
 *
 * @param version   the version of what is printed, as shown to people, e.g. `3`
 * @param printedAt the moment of printing, already written out for people
 */
export function paperCaution(version: string, printedAt: string): string {
  return `This paper may be out of date: version ${version}, printed ${printedAt}.`;
}
