import type { ItemId } from '../identity/ids';
import { never } from '../identity/result';
import type { GateFinding } from '../packs/gate';
import type { Barrier, PackState } from '../packs/pack';
import { writeGrams } from '../quantities/mass';
import { packBarSentence } from './bench';
import { listWords } from './numbers';
import { itemsWords } from './sets';
import { APPROVER_WORDS, LAPSE_WORDS, notCoveredWords } from './short';

export const BARRIER_WORDS: Record<Barrier, string> = {
  wrap: 'wrap',
  container: 'container',
  pouch: 'pouch',
};

export const PACK_STATE_WORDS: Record<PackState, string> = {
  closed: 'closed, not sterile',
  inLoad: 'in a load, not sterile yet',
  awaitingAcceptance: 'its load awaits acceptance, not sterile yet',
  sterile: 'sterile: its load is accepted',
  opened: 'opened',
  undone: 'opened again before it was sterile',
};

export const packWords = {
  notPermitted: (name: string, what: string) => `${name} can’t ${what}.`,
  noSuchSet: 'There is no such set.',
  noSuchPack: 'There is no such pack.',
  noSuchItem: 'There is no such item in the catalogue.',
  notCurrent: (name: string, status: string) => `${name} is ${status}: it is not packed any more.`,
  singleUse: (name: string) =>
    `${name} is for single use and supplied sterile: it is never packed and sterilised again here.`,
  notProven: 'Prove again that “I packed it”: the last proof was another’s, or too long ago.',
  shortReason: 'Say why it goes short.',
  massReason: 'Say why it is packed above the mass limit.',
  barrierOfSet: 'A set goes into a wrap or a container; a pouch holds one item.',
  openAlready: (number: string) => `${number} is open already: it has no label any more.`,
  reprintReason: 'Say why another label is printed: the one before is refused from then on.',
  reasonLong: 'The reason is longer than 400 characters.',
  inLoadAlready: (number: string) =>
    `${number} is in a load already: take it out there first, or see what becomes of the load.`,
  notAPouch: (number: string) => `${number} is a set: open the set on the bench.`,
};

/** Why it may not be packed, or what to look at twice. */
export function gateSentence(finding: GateFinding, name: (id: ItemId) => string): string {
  switch (finding.kind) {
    case 'counting':
      return packBarSentence(finding.bar);
    case 'withdrawn':
      return 'It is out of service.';
    case 'notCounted':
      return `Not counted: ${itemsWords(finding.itemIds, name)}. What nobody has counted never goes.`;
    case 'decisionNeeded':
      return `A must-have is short, and nobody has decided that it goes: ${listWords(finding.approvers.map((one) => APPROVER_WORDS[one].toLowerCase()))} ${finding.approvers.length === 1 ? 'has' : 'have'} to.`;
    case 'decisionLapsed':
      return `The decision that it may go short has lapsed. ${finding.because.map((one) => LAPSE_WORDS[one]).join(' ')}`;
    case 'decisionOpen':
      return `The decision does not cover it as it is now. ${finding.open.map((one) => notCoveredWords(one, name)).join(' ')}`;
    case 'goesShort':
      return `It goes SHORT: ${finding.lines === 1 ? 'one line is' : `${finding.lines} lines are`} below what is expected${finding.oneCase ? ', for one case only' : ''}. Label and sheet say so.`;
    case 'newerVersion':
      return `Version ${finding.version} of its configuration is in force, and it still follows an older one.`;
    case 'massOver':
      return `Its mass is above the limit of ${writeGrams(finding.limitGrams)}.${finding.highest ? ' It is the highest limit here.' : ''}`;
    case 'massNear':
      return `Its mass is near the limit of ${writeGrams(finding.limitGrams)}.`;
    case 'massNotEstablished':
      return 'The mass is not established: some pieces have no stated mass. Weigh it.';
    case 'scaleDiffers':
      return finding.grams < 0
        ? `The scale shows ${writeGrams(-finding.grams)} less than its pieces weigh: is everything in it?`
        : `The scale shows ${writeGrams(finding.grams)} more than its pieces weigh: does something lie in it that does not belong?`;
    default:
      return never(finding);
  }
}

/** Which rule a finding of the gate comes from. */
export function gateRule(finding: GateFinding): string {
  switch (finding.kind) {
    case 'counting':
    case 'notCounted':
      return 'A set is packed when it is counted whole, checked as local policy asks, and holds nothing that does not belong.';
    case 'withdrawn':
      return 'A set out of service is not packed.';
    case 'decisionNeeded':
    case 'decisionLapsed':
    case 'decisionOpen':
    case 'goesShort':
      return 'When a set may go, local policy.';
    case 'newerVersion':
      return 'A set follows the version in force when it is refitted.';
    case 'massOver':
    case 'massNear':
    case 'massNotEstablished':
      return 'Mass limits, a local setting (25 lb with container: ANSI/AAMI ST77).';
    case 'scaleDiffers':
      return 'How far scale and pieces may differ, a local setting.';
    default:
      return never(finding);
  }
}
