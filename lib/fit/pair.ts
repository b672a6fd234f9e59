import type { Item } from '../catalogue/item';
import type { Question } from './question';

/** The two designs a question is about, which a named exception can name; `null` where there are not two. */
export function itemPairOf(question: Question): [Item, Item] | null {
  switch (question.relation) {
    case 'seats':
      return question.plate && [question.screw, question.plate];
    case 'guides':
      return question.seat.on === 'hole' && question.seat.plate
        ? [question.by.sleeve, question.seat.plate]
        : null;
    case 'passes':
      return [question.tool, question.by.sleeve];
    case 'pilots':
    case 'glides':
      return [question.bit, question.screw];
    case 'taps':
      return [question.tap, question.screw];
    case 'countersinks':
      return [question.countersink, question.screw];
    case 'measures':
      return [question.gauge, question.screw];
    case 'turns':
      return [question.driver, question.screw];
    case 'joins':
      return [question.shank, question.socket];
    case 'limits':
      return [question.limiter, question.screw];
    case 'wearsWith':
      return [question.first, question.second];
    case 'sides':
      return null;
  }
}
