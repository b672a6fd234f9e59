import type { CalculationSource } from '@/lib/calculations/calculation';
import { writeGrams } from '@/lib/quantities/mass';
import { countWord, listWords } from './numbers';

/** What a calculation says of itself, on the list, on its page, over the API and beside each figure. */
export interface CalculationWords {
  title: string;
  question: string;
  formula: string[];
  assumptions: string[];
  sources: CalculationSource[];
}

export const calculationWords = {
  completeness: {
    title: 'Completeness',
    question: 'How complete is this set, in pieces and in must-haves, who may send it, and is it too heavy?',
    formula: [
      'Pieces = Σ min(found, expected) ÷ Σ expected',
      'Must-haves = lines of class 1–2 at or above their minimum ÷ all such lines',
      'Mass = Σ found × mass of one + basket and container',
    ],
    assumptions: [
      'Only sound pieces are counted as found.',
      'A surplus on one line never makes up for a shortage on another.',
      'Substitutes are approved one way, for class 2 only; a piece stands in once, and only beyond its own line’s minimum.',
      'Masses are those of the catalogue; a mass that is not stated is reported, never taken as nothing.',
    ],
    sources: [
      { text: '25 lb (11.34 kg) with container: ANSI/AAMI ST77, 4.3.5' },
      { text: '7 kg: perioperative nurses’ crate weight project, New Zealand' },
      { text: '10 kg: European practice', fromMemory: true },
      { text: 'Who may send a short set: local policy' },
    ],
  },
  'length-feasibility': {
    title: 'Length feasibility',
    question: 'Can every hole be filled with a screw length accepted for it, from the pieces at hand?',
    formula: [
      'Largest matching between holes and pieces (augmenting paths)',
      'Where it fails: a smallest group of holes H with pieces accepted by H < |H| (Hall’s theorem)',
    ],
    assumptions: [
      'One piece fills one hole.',
      'Only lengths named as accepted count; no other implant is ever offered.',
    ],
    sources: [
      {
        text: 'P. Hall, On representatives of subsets, J. London Math. Soc. 10 (1935) 26–30',
        fromMemory: true,
      },
    ],
  },
  'length-cover': {
    title: 'Length cover',
    question: 'How likely is it that every screw length the case turns out to need is at hand?',
    formula: [
      'Nearest: p(ℓ) = Φ((ℓ + δ/2 − μ)/σ) − Φ((ℓ − δ/2 − μ)/σ), δ the step between lengths made',
      'Up: p(ℓ) = Φ((ℓ − μ)/σ) − Φ((ℓ − δ − μ)/σ); down: p(ℓ) = Φ((ℓ + δ − μ)/σ) − Φ((ℓ − μ)/σ)',
      'Cover = P(all needs can be served at once by the pieces at hand): the joint figure, not the product of odds per length',
      'With a shared offset: Cover = ∫ φ(z) P(… | every spread moved by z × shared SD) dz',
    ],
    assumptions: [
      'What is measured is normally distributed about the mean stated, independently from hole to hole but for the shared offset.',
      'The shared offset comes on top of each hole’s own spread; single lengths and stated chances are not moved by it.',
      'A length beyond those made counts as not covered.',
      'Pieces are given out to best effect once all needs are known; a longer or shorter piece is used only where the plan accepts it.',
      'An opened screw that is not implanted is replaced by another for the same hole; each opening fails on its own.',
      'Pieces at hand are as last counted.',
    ],
    sources: [
      {
        text: 'Normal distribution function: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.2',
        fromMemory: true,
      },
      {
        text: 'Serving the need that is due first is optimal for such windows: earliest due date rule for unit jobs (J. R. Jackson, 1955)',
        fromMemory: true,
      },
    ],
  },
  'thermal-dose': {
    title: 'Thermal dose',
    question: 'How much heat did this cycle give, and how long did it stay within its band?',
    formula: [
      'A0 = Σ 10^((T − 80) ÷ 10) Δt, in seconds, over temperatures of 65 °C and more',
      'F0 = Σ 10^((T − Tref) ÷ 10) Δt, in minutes, with Tref as stated',
      'Holding = the longest stretch between readings that all lie within the band, its ends included',
    ],
    assumptions: [
      'Between two readings the rate is the mean of both ends (trapezoid), or that of the earlier one (left), as stated.',
      'Nothing is interpolated over a gap: readings further apart than stated, or without a value, leave the sums not established.',
      'Readings whose times do not grow are not put in order: the whole log is not established.',
      'The sensor tells the temperature of the coolest place that was validated; how it was placed is not known here.',
      'It informs the person who accepts the load, and accepts nothing.',
    ],
    sources: [
      { text: 'A0, z = 10 K, above 65 °C: ISO 15883-1, Annex B' },
      {
        text: 'F0 with its reference temperature stated; 134–137 °C for 3 min, 126–129 for 10, 121–124 for 15: EN 285, ISO 17665',
        fromMemory: true,
      },
      {
        text: '132 °C for 4 min: CDC, Guideline for Disinfection and Sterilization in Healthcare Facilities, Table 7',
      },
    ],
  },
  reorder: {
    title: 'Reorder',
    question: 'How much of this item should be ordered now, and why?',
    formula: [
      'Position = on hand (less what passes its use-by before it is asked for) + on order − committed − to refill',
      'Time to cover = lead + review; demand D = what nobody has booked of it',
      'S = smallest s with P(D ≤ s) ≥ service level',
      'Order = S − position, up to whole packs, down to whole packs below what is used before its use-by',
      'Sparse demand = size ÷ interval × (1 − α ÷ 2), each smoothed by α where a demand comes',
    ],
    assumptions: [
      'Cases that are not booked come independently of one another, as often as on record; a use that has ended, or a new surgeon, is not seen.',
      'Poisson; negative binomial where weeks vary more than their mean; compound Poisson where cases take several at once, unless the cases come in clusters beyond chance.',
      'Weeks are independent of one another. A lead time with a spread is met by mean and variance (Var = v + rate² σ²), as negative binomial.',
      'A case whose day of booking nobody knows counts as not booked: rather too much is forecast than too little.',
      'Of one item at a time: nothing stands in for it, and no order waits for another.',
      'Until its use-by, what is asked for is forecast by the same model; first expired goes first.',
      'Fewer than 13 weeks on record, no use at all, or no lead time: not established.',
      'It proposes; a person approves.',
    ],
    sources: [
      {
        text: 'Order-up-to level by periodic review over lead and review time: Silver, Pyke & Thomas, Inventory and Production Management in Supply Chains',
        fromMemory: true,
      },
      {
        text: 'Size and interval apart: J. D. Croston, Oper Res Q 1972;23:289; its bias: Syntetos & Boylan, Int J Forecast 2005;21:303',
        fromMemory: true,
      },
      {
        text: 'Classes by interval 1.32 and CV² 0.49: Syntetos, Boylan & Croston, J Oper Res Soc 2005;56:495',
        fromMemory: true,
      },
      { text: 'Compound Poisson: H. H. Panjer, ASTIN Bulletin 1981;12:22', fromMemory: true },
      {
        text: 'χ² with cells that expect 5 or more: W. G. Cochran, Biometrics 1954;10:417; its tail: Abramowitz & Stegun 26.4.4 and 26.4.5',
        fromMemory: true,
      },
    ],
  },
  'plate-remarks': {
    title: 'Plate remarks',
    question:
      'How do the stated plates compare with published advice on span, screws, cortices and free holes?',
    formula: [
      'Plate span ratio = plate length ÷ length of the fracture zone',
      'Screw density = screws ÷ holes that take screws',
      'Screws and cortices of each main fragment = those whose hole lies on that side of the zone',
    ],
    assumptions: [
      'Every remark is advisory: none blocks a plan, and local policy can switch off each of them.',
      'A bridged fracture is read as comminuted, a compressed one as simple; other principles have no range.',
      'A hole whose centre lies over the fracture zone belongs to neither main fragment.',
      'Lag screws may cross the fracture line; wires are not counted as screws.',
    ],
    sources: [
      { text: 'Gautier & Sommer, Injury 2003;34 Suppl 2:B63', fromMemory: true },
      { text: 'Stoffel et al., Injury 2003;34 Suppl 2:B11', fromMemory: true },
      { text: 'Distance from the fracture line, plain before locking: common practice, no source' },
    ],
  },
} satisfies Record<string, CalculationWords>;

export const duplicateName = (name: string): string =>
  `“${name}” is given twice: give each its own name, or join the two.`;

export const tooManyLengths = (lengths: number, most: number): string =>
  `${lengths} lengths are listed; at most ${most} can be taken at once: leave out families that no hole needs.`;

export const noSuchFamily = (family: string, known: readonly string[]): string =>
  `“${family}” is not among the screws (${listWords(known)}): add it there, or correct the name.`;

/** `14: 2, 16: not counted`. */
export function stockWords(stock: readonly { mm: number; pieces: number | null }[]): string {
  return stock.map(({ mm, pieces }) => `${mm} mm: ${pieces ?? 'not counted'}`).join(', ');
}

/** "A, B and C take only 16 or 18; there are two." and "One more 16 or one more 18." */
export function shortLengths(short: {
  holes: readonly string[];
  lengthsMm: readonly number[];
  pieces: number;
  oneMoreOfMm: readonly number[];
  made: boolean;
}): { sentence: string; fix: string } {
  const { holes, lengthsMm, pieces, oneMoreOfMm, made } = short;
  const take = `${listWords(holes)} ${holes.length === 1 ? 'takes' : 'take'} only ${listWords(lengthsMm, 'or')}`;
  if (!made) {
    return {
      sentence: `${take}, which is not among the lengths made.`,
      fix: 'No piece at hand or made closes this.',
    };
  }
  const there =
    pieces === 1 ? 'there is one' : pieces === 0 ? 'there is none' : `there are ${countWord(pieces)}`;
  const fix = listWords(
    oneMoreOfMm.map((mm) => `one more ${mm}`),
    'or',
  );
  return { sentence: `${take}; ${there}.`, fix: `${fix.charAt(0).toUpperCase()}${fix.slice(1)}.` };
}

export const completenessWords = {
  countOf: (line: string) => `count of ${line}`,
  minimumAboveExpected: (minimum: number, expected: number) =>
    `The minimum (${minimum}) is above what is expected (${expected}): lower it, or expect more.`,
  tooMany: (pieces: number, most: number) =>
    `${pieces} pieces are expected: one set holds at most ${most}; check the quantities.`,
  mass: (mass: { foundGrams: number; exact: boolean }) =>
    mass.exact ? writeGrams(mass.foundGrams) : `at least ${writeGrams(mass.foundGrams)}`,
  maySend: {
    whole: 'Every line is whole.',
    uncounted: (lines: number) => `${lines === 1 ? 'One line is' : `${lines} lines are`} not counted yet.`,
    surplus: (pieces: number) =>
      `${pieces === 1 ? 'One piece is' : `${pieces} pieces are`} over: ${pieces === 1 ? 'its' : 'their'} home must be found first.`,
    classOne: (lines: readonly string[]) =>
      `${listWords(lines)}: class 1 is short. Held; only theatre manager and operating surgeon together, for one named case.`,
    classTwo: (lines: readonly string[]) =>
      `${listWords(lines)}: class 2 is short, and no approved substitute is there. The supervisor decides; the named substitute must travel with the set as a sterile pouch.`,
    carried: (lines: readonly string[]) =>
      `${listWords(lines)}: carried by a substitute or a sterile pouch. The supervisor decides.`,
    short: (lines: number) =>
      `${lines === 1 ? 'One line is' : `${lines} lines are`} short, but no must-have is below its minimum: label and sheet say SHORT.`,
  },
};
