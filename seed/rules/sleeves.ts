import { all, among, atMost, below, is, lists, of, rulesOf, same } from './starter';

/** Sleeve on hole, bone or gliding hole, in a drilling position. */
export const guides = rulesOf('guides', [
  {
    code: 'sleeve-sits-on-this-class',
    requires: lists('end.seatsOn', 'seat.name'),
    sentence: 'The sleeve’s end is made to sit on: {end.seatsOn}; not on {seat.name}.',
  },
  {
    code: 'sleeve-offers-position',
    requires: lists('end.positions', 'drilling.position'),
    sentence: 'The sleeve’s end drills {end.positions}, not {drilling.position}.',
  },
  {
    code: 'sleeve-offset-in-compression-zone',
    when: is('drilling.position', 'offset'),
    requires: among('seat.name', 'compressionSlot', 'twoZone'),
    sentence: 'Offset drilling needs a compression slot or zone, not {seat.name}.',
  },
  {
    code: 'sleeve-threaded-in-threaded-zone',
    when: all(is('end.outerForm', 'threaded'), is('seat.on', 'hole')),
    requires: is('hole.hasThreadedZone', true),
    sentence: 'A threaded sleeve screws into a threaded zone; a {hole.holeClass} has none.',
  },
  {
    code: 'sleeve-locking-family-equal',
    when: all(is('end.outerForm', 'threaded'), is('hole.hasThreadedZone', true)),
    requires: same('end.lockingFamily', 'hole.lockingFamily'),
    sentence:
      'The sleeve is of locking family {end.lockingFamily}, the hole of {hole.lockingFamily}: families are declared, never inferred from diameters.',
  },
  {
    code: 'sleeve-made-for-this-plate',
    when: all(is('sleeve.restrictedToPlates', true), is('seat.on', 'hole')),
    requires: lists('sleeve.onlyForPlates', 'seat.plateCode'),
    sentence:
      'The sleeve is made only for {sleeve.onlyForPlates}, not for {seat.plateCode}, even where diameters agree.',
  },
  {
    code: 'sleeve-insert-enters-gliding-hole',
    when: is('seat.on', 'glidingHole'),
    requires: atMost(of('end.outerUm'), of('glidingHole.diameterUm')),
    sentence: 'The {end.outerUm} insert does not enter the {glidingHole.diameterUm} gliding hole.',
  },
  {
    code: 'sleeve-insert-centred-in-gliding-hole',
    when: is('seat.on', 'glidingHole'),
    requires: atMost(
      { minus: [of('glidingHole.diameterUm'), of('end.outerUm')] },
      { setting: 'sleeveToleranceUm' },
    ),
    sentence:
      'The {end.outerUm} insert is loose in the {glidingHole.diameterUm} gliding hole, so the thread hole would miss its axis.',
  },
]);

/** Bit or wire through sleeve. */
export const passes = rulesOf('passes', [
  {
    code: 'bore-not-too-small',
    requires: atMost(of('tool.diameterUm'), of('end.boreUm')),
    sentence: 'The {end.boreUm} bore is too small for {tool.diameterUm}.',
  },
  {
    code: 'bore-not-too-loose',
    requires: atMost({ minus: [of('end.boreUm'), of('tool.diameterUm')] }, { setting: 'sleeveToleranceUm' }),
    sentence: 'The {end.boreUm} bore is loose for {tool.diameterUm}: more than the sleeve tolerance.',
  },
  {
    code: 'tool-longer-than-sleeve',
    severity: 'caution',
    requires: below(of('sleeve.lengthUm'), of('tool.lengthUm')),
    sentence: 'At {tool.lengthUm} it does not reach beyond the {sleeve.lengthUm} sleeve.',
  },
]);
