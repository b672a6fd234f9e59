import type { SheetKind } from '../documents/sheet';
import type { KitRole } from '../kits/kit';
import type { MustHaveClass } from '../sets/configuration';

/** The words that only stand on paper. */

export const SHEET_WORDS: Record<SheetKind, string> = {
  countSheet: 'Count sheet',
  pickList: 'Pick list',
  layUpCard: 'Lay-up card',
};

export const ROLE_WORDS: Record<KitRole, string> = { open: 'open', hold: 'hold unopened' };

/** Short words for the rows of a count sheet; the legend has them in full. */
export const CLASS_SHORT_WORDS: Record<MustHaveClass, string> = {
  1: 'stops the step',
  2: 'stops it unless substituted',
  3: 'back-up',
  4: 'convenience',
};

export const countSheetWords = {
  columns: {
    place: 'Row · slot',
    drawing: 'Drawing',
    item: 'Item',
    mustHaveClass: 'Class',
    expected: 'Expected',
    before: 'Before',
    added: 'Added',
    after: 'After',
    unsound: 'Unsound: what, how many',
  },
  layer: (layer: number, name: string) => `Layer ${layer}: ${name}`,
  layerUnnamed: (layer: number) => `Layer ${layer}`,
  layerNote: (lines: number, pieces: number) =>
    `${lines} ${lines === 1 ? 'line' : 'lines'}, ${pieces} ${pieces === 1 ? 'piece' : 'pieces'} expected`,
  tableCaption: (layer: number) => `Layer ${layer}: what is expected, and what is counted`,
  rackCaption: (name: string) => `${name}: screws by length`,
  minimum: (minimum: number) => `min ${minimum}`,
  parts: (parts: number) => `each of ${parts} parts, every part counted`,
  substitutes: (names: string) => `substitute: ${names}`,
  legendTitle: 'Must-have classes',
  howTo:
    'Count what lies there; write a figure in every cell, 0 included. Count a layer whole. Unsound pieces are put aside, noted, and not counted as found.',
  foreign: 'Pieces that belong to no line of this set',
  foreignNote: 'the set is not complete until each has found its home',
  foreignColumns: { what: 'What it is, and its markings', howMany: 'How many', home: 'Where its home is' },
  rackUnsound: 'Unsound in this rack: which, what, how many',
  mass: 'Mass',
  massExpected: (mass: string) => `As configured, with basket and container: ${mass}.`,
  massAtLeast: (mass: string, unknown: string) =>
    `As configured, with basket and container: at least ${mass}; no mass is stated for ${unknown}.`,
  massLimits: (limits: string) => `Limits here: ${limits}.`,
  massColumns: { weighed: 'Weighed, in kg', scale: 'On which scale', by: 'By' },
  signatures: 'Signatures',
  signed: {
    counted: 'Counted by',
    checked: 'Checked by',
    before: 'Before the case',
    after: 'After the case',
  },
  blind: 'another person, without sight of the first figures',
  shortWord: 'SHORT',
  shortLine: (name: string, place: string, found: number, expected: number, words: string) =>
    `${name} (${place}): ${found} of ${expected} at the last count; ${words}.`,
  notCountedWord: 'NOT COUNTED',
  notCounted: (lines: number) =>
    `${lines} ${lines === 1 ? 'line has' : 'lines have'} no count on file; nothing is known of ${lines === 1 ? 'it' : 'them'}.`,
  foreignLine: (quantity: number, name: string) => `${quantity} × ${name} belongs to no line of this set.`,
  heldWord: 'HELD',
  draftWord: 'DRAFT',
  draftVersion: 'This version of the configuration is a draft: it is not in force.',
};
