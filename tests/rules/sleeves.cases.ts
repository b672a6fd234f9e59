import { neverStated, type RuleCase } from './case';
import {
  bit,
  guides,
  hole,
  inGlidingHole,
  insert,
  onHole,
  plate,
  sleeve,
  threadedHole,
  threadedSleeve,
  twoZoneHole,
  wire,
} from './pieces';

const restricted = sleeve({}, { onlyForPlates: ['PLATE-A'] });
const offsetEnd = sleeve({ positions: ['offset'] });

export const sleeveCases: RuleCase[] = [
  { rule: 'sleeve-sits-on-this-class', says: 'met', why: 'declared for slots', ask: guides() },
  {
    rule: 'sleeve-sits-on-this-class',
    says: 'notMet',
    why: 'made for an older slot, not for two-zone holes, though diameters agree',
    ask: guides({ by: sleeve({ seatsOn: ['compressionSlot'] }), seat: onHole(twoZoneHole()) }),
  },
  {
    rule: 'sleeve-sits-on-this-class',
    says: 'notMet',
    why: 'a slot sleeve on bare bone',
    ask: guides({ seat: { on: 'bone' } }),
  },
  {
    rule: 'sleeve-sits-on-this-class',
    says: 'missing',
    why: 'nobody has said',
    ask: guides({ by: sleeve({ seatsOn: null }) }),
    missing: ['end.seatsOn'],
  },

  {
    rule: 'sleeve-offers-position',
    says: 'met',
    why: 'drills neutral',
    ask: guides({ position: 'neutral' }),
  },
  {
    rule: 'sleeve-offers-position',
    says: 'notMet',
    why: 'drills neutral only',
    ask: guides({ position: 'offset' }),
  },
  {
    rule: 'sleeve-offers-position',
    says: 'missing',
    why: 'nobody has said',
    ask: guides({ by: sleeve({ positions: null }), position: 'offset' }),
    missing: ['end.positions'],
  },
  { rule: 'sleeve-offers-position', says: 'silent', why: 'no position is asked for', ask: guides() },

  {
    rule: 'sleeve-offset-in-compression-zone',
    says: 'met',
    why: 'a slot is ramped',
    ask: guides({ by: offsetEnd, position: 'offset' }),
  },
  {
    rule: 'sleeve-offset-in-compression-zone',
    says: 'notMet',
    why: 'a round hole is not',
    ask: guides({ by: offsetEnd, seat: onHole(hole({ holeClass: 'round' })), position: 'offset' }),
  },
  {
    rule: 'sleeve-offset-in-compression-zone',
    says: 'missing',
    why: 'the class is not known',
    ask: guides({ by: offsetEnd, seat: onHole(hole({ holeClass: neverStated })), position: 'offset' }),
  },

  {
    rule: 'sleeve-threaded-in-threaded-zone',
    says: 'met',
    why: 'it screws in',
    ask: guides({ by: threadedSleeve(), seat: onHole(threadedHole()) }),
  },
  {
    rule: 'sleeve-threaded-in-threaded-zone',
    says: 'notMet',
    why: 'a slot has no thread',
    ask: guides({ by: threadedSleeve() }),
  },
  {
    rule: 'sleeve-threaded-in-threaded-zone',
    says: 'missing',
    why: 'the end may be threaded',
    ask: guides({ by: sleeve({ outerForm: null }) }),
    missing: ['end.outerForm'],
  },

  {
    rule: 'sleeve-locking-family-equal',
    says: 'met',
    why: 'both declare Alpha',
    ask: guides({ by: threadedSleeve(), seat: onHole(threadedHole()) }),
  },
  {
    rule: 'sleeve-locking-family-equal',
    says: 'notMet',
    why: 'another family',
    ask: guides({ by: threadedSleeve({ lockingFamily: 'Beta' }), seat: onHole(threadedHole()) }),
  },
  {
    rule: 'sleeve-locking-family-equal',
    says: 'missing',
    why: 'the hole declares none',
    ask: guides({ by: threadedSleeve(), seat: onHole(threadedHole({ lockingFamily: null })) }),
    missing: ['hole.lockingFamily'],
  },

  {
    rule: 'sleeve-made-for-this-plate',
    says: 'met',
    why: 'the plate is named',
    ask: guides({ by: restricted, seat: onHole(hole(), plate({ code: 'PLATE-A' })) }),
  },
  {
    rule: 'sleeve-made-for-this-plate',
    says: 'notMet',
    why: 'another plate',
    ask: guides({ by: restricted, seat: onHole(hole(), plate({ code: 'PLATE-B' })) }),
  },
  {
    rule: 'sleeve-made-for-this-plate',
    says: 'missing',
    why: 'whose hole it is, is not said',
    ask: guides({ by: restricted }),
    missing: ['seat.plateCode'],
  },
  { rule: 'sleeve-made-for-this-plate', says: 'silent', why: 'not restricted', ask: guides() },

  {
    rule: 'sleeve-insert-enters-gliding-hole',
    says: 'met',
    why: '3.5 in 3.5',
    ask: guides({ by: insert(), seat: inGlidingHole(3500) }),
  },
  {
    rule: 'sleeve-insert-enters-gliding-hole',
    says: 'notMet',
    why: '3.5 in 2.7',
    ask: guides({ by: insert(), seat: inGlidingHole(2700) }),
  },
  {
    rule: 'sleeve-insert-enters-gliding-hole',
    says: 'missing',
    why: 'the outside is not stated',
    ask: guides({ by: insert({ outerUm: null }), seat: inGlidingHole(3500) }),
    missing: ['end.outerUm'],
  },

  {
    rule: 'sleeve-insert-centred-in-gliding-hole',
    says: 'met',
    why: 'loose by 0.2, the tolerance',
    ask: guides({ by: insert(), seat: inGlidingHole(3700) }),
  },
  {
    rule: 'sleeve-insert-centred-in-gliding-hole',
    says: 'notMet',
    why: 'loose by 1.0',
    ask: guides({ by: insert(), seat: inGlidingHole(4500) }),
  },
  {
    rule: 'sleeve-insert-centred-in-gliding-hole',
    says: 'missing',
    why: 'the gliding hole is not known',
    ask: guides({ by: insert(), seat: inGlidingHole(null) }),
    missing: ['glidingHole.diameterUm'],
  },

  {
    rule: 'bore-not-too-small',
    says: 'met',
    why: '2.5 through 2.5',
    ask: { relation: 'passes', tool: bit(2500), by: sleeve() },
  },
  {
    rule: 'bore-not-too-small',
    says: 'met',
    why: 'a wire passes too',
    ask: { relation: 'passes', tool: wire(1600), by: sleeve({ boreUm: 1600 }) },
  },
  {
    rule: 'bore-not-too-small',
    says: 'notMet',
    why: '2.8 does not pass 2.5 (worked example B1)',
    ask: { relation: 'passes', tool: bit(2800), by: sleeve() },
  },
  {
    rule: 'bore-not-too-small',
    says: 'missing',
    why: 'the bore is not stated',
    ask: { relation: 'passes', tool: bit(2800), by: sleeve({ boreUm: null }) },
    missing: ['end.boreUm'],
  },

  {
    rule: 'bore-not-too-loose',
    says: 'met',
    why: 'loose by 0.2, the tolerance',
    ask: { relation: 'passes', tool: bit(2300), by: sleeve() },
  },
  {
    rule: 'bore-not-too-loose',
    says: 'notMet',
    why: '2.8 in 3.5 is loose by 0.7 > 0.2 (worked example B1)',
    ask: { relation: 'passes', tool: bit(2800), by: sleeve({ boreUm: 3500 }) },
  },
  {
    rule: 'bore-not-too-loose',
    says: 'missing',
    why: 'the bit is not stated',
    ask: { relation: 'passes', tool: bit(null), by: sleeve() },
    missing: ['tool.diameterUm'],
  },

  {
    rule: 'tool-longer-than-sleeve',
    says: 'met',
    why: '125 beyond 60',
    ask: { relation: 'passes', tool: bit(2500), by: sleeve() },
  },
  {
    rule: 'tool-longer-than-sleeve',
    says: 'notMet',
    why: '50 ends within 60',
    ask: { relation: 'passes', tool: bit(2500, { lengthUm: 50000 }), by: sleeve() },
  },
  {
    rule: 'tool-longer-than-sleeve',
    says: 'missing',
    why: 'the sleeve’s length is not stated',
    ask: { relation: 'passes', tool: bit(2500), by: sleeve({}, { lengthUm: null }) },
    missing: ['sleeve.lengthUm'],
  },
];
