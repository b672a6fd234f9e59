import type { PlateRemark, RemarkName } from '@/lib/calculations/plateRemarks/schema';
import { listWords } from './numbers';

const name: Record<RemarkName, string> = {
  'span-ratio': 'Plate span ratio',
  'screw-density': 'Screw density',
  'fragment-screws': 'Screws in the main fragment',
  'fragment-cortices': 'Cortices in the main fragment',
  'free-holes-over-zone': 'Free holes over the fracture zone',
  'poor-bone-one-cortex': 'One cortex in poor bone',
  'near-fracture-line': 'Near the fracture line',
  'plain-before-locking': 'Plain before locking',
};

const expression: Record<RemarkName, string> = {
  'span-ratio': 'plate length ÷ length of the fracture zone',
  'screw-density': 'screws ÷ holes that take screws',
  'fragment-screws': 'screws whose hole lies on that side of the zone',
  'fragment-cortices': 'Σ cortices of those screws',
  'free-holes-over-zone': 'holes left empty over the zone',
  'poor-bone-one-cortex': 'one-cortex self-drilling screws, bone stated as poor',
  'near-fracture-line': 'distance to the nearer end of the zone < thread diameter',
  'plain-before-locking': 'plain and locking screws in the same main fragment',
};

const fragment = { shaftEnd: 'towards the shaft end', farEnd: 'towards the far end' };

/** What the remarks on a plate say. Advisory in tone throughout: a figure, a range, a source; never what to do instead. */
export const plateRemarkWords = {
  name,
  expression,
  fragment,
  zoneBackwards: 'The fracture zone ends before it begins: exchange the two.',
  offThePlate: (hole: string, lengthMm: number) =>
    `${hole} lies beyond the plate, which is ${lengthMm} mm long: correct the hole or the length.`,
  range({ sense, from, to }: NonNullable<PlateRemark['range']>): string {
    const ends = from === to ? String(from) : `${from} to ${to}`;
    return sense === 'atLeast' ? `at least ${ends}` : sense === 'atMost' ? `at most ${ends}` : ends;
  },
  missing: {
    zone: 'the fracture zone',
    zoneWidth: 'the extent of the fracture zone (it is marked as a line)',
    plateLength: 'the plate’s length',
    holes: 'the plate’s holes',
    fills: (holes: readonly string[]) => `what goes in ${listWords(holes)}`,
    cortices: (holes: readonly string[]) => `cortices of ${listWords(holes)}`,
    tipOrCortices: (holes: readonly string[]) => `tip or cortices of ${listWords(holes)}`,
    thread: (holes: readonly string[]) => `thread of the screw in ${listWords(holes)}`,
  },
  figureSentence(row: Omit<PlateRemark, 'sentence'>): string {
    const subject = row.fragment ? `${name[row.remark]} ${fragment[row.fragment]}` : name[row.remark];
    if (row.outcome === 'notEstablished') return `${subject}: not established.`;
    const figure = `${subject}: ${Math.round((row.figure ?? 0) * 100) / 100}`;
    if (!row.range) return `${figure}. No published range for the principle stated.`;
    return `${figure}, ${row.outcome === 'within' ? 'within' : 'outside'} the published range (${plateRemarkWords.range(row.range)}).`;
  },
  note(remark: RemarkName, holes: readonly string[]): string {
    switch (remark) {
      case 'poor-bone-one-cortex':
        return `${listWords(holes)}: self-drilling through one cortex, and the bone is stated as poor.`;
      case 'near-fracture-line':
        return `${listWords(holes)}: nearer to an end of the fracture zone than one screw diameter.`;
      default:
        return `${name[remark]}: ${listWords(holes)}.`;
    }
  },
  order: (plain: readonly string[], locking: readonly string[], part: keyof typeof fragment | null) =>
    `${part ? `In the main fragment ${fragment[part]}: p` : 'P'}lain screws (${listWords(plain)}) are set and tightened before locking ones (${listWords(locking)}).`,
  notEstablished: (remark: RemarkName) => `${name[remark]}: not established.`,
};
