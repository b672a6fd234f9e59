import type { SetLine } from './set-lines';

/** As many rows as one page of the list holds. */
export const SETS_A_PAGE = 100;

/** What of the address the list is served by. */
export const SET_NAMES = ['q', 'standing', 'step', 'configuration', 'sets-sort', 'sets-page'] as const;

/** What each column is sorted by, here and on the server. */
export const SET_VALUES = {
  code: (line: SetLine) => line.code,
  configuration: (line: SetLine) => line.configuration,
  stops: (line: SetLine) => line.rank,
  step: (line: SetLine) => line.stepWords,
  pieces: (line: SetLine) => line.pieces.share,
  musts: (line: SetLine) => line.mustHaves.share,
  buildable: (line: SetLine) => line.buildable.map(({ word }) => word).join(' '),
  mass: (line: SetLine) => line.mass.grams,
  promised: (line: SetLine) => line.promisedTo.map(({ reference }) => reference).join(' ') || '–',
};
