import type { CheckCode } from '../fit/catalogue-check';

/** What each finding of the catalogue check says, and what to do about it. */
export const CHECK_WORDS: Record<CheckCode, { title: string; way: string }> = {
  'screw-without-pilot': {
    title: 'No current bit drills its thread hole',
    way: 'Enter the bit, or check the screw’s core and thread.',
  },
  'screw-without-gliding-bit': {
    title: 'No current bit drills its gliding hole',
    way: 'It cannot be used as a lag screw until a bit of its thread (or shaft) is entered.',
  },
  'screw-without-driver': {
    title: 'No current driver turns it',
    way: 'Enter the driver, or check the drive.',
  },
  'screw-without-gauge': {
    title: 'No current gauge measures for it',
    way: 'Check gauges’ range and screw diameters.',
  },
  'locking-screw-without-limiter': {
    title: 'No current torque limiter of its class',
    way: 'Enter the limiter, or check the torque class.',
  },
  'screw-seats-nowhere': {
    title: 'It seats in no hole of a current plate',
    way: 'It may be for use outside plates; if not, check head, thread and locking family.',
  },
  'hole-takes-no-screw': {
    title: 'Holes that take no current screw',
    way: 'Check opening, seat and locking family of the holes.',
  },
  'hole-without-sleeve': {
    title: 'Holes that no current sleeve sits on',
    way: 'Check the sleeves’ declared seats.',
  },
  'sleeve-seats-nowhere': {
    title: 'It sits on no hole of a current plate',
    way: 'Check its declared seats and locking family.',
  },
  'sleeve-passes-nothing': {
    title: 'No current bit or wire passes it',
    way: 'Check the bore, or enter the bit.',
  },
  'bit-without-sleeve': { title: 'No current sleeve passes it', way: 'Enter the sleeve, or check the bore.' },
  'bit-drills-for-nothing': {
    title: 'It drills for no current screw',
    way: 'Withdraw it, or check its diameter.',
  },
  'driver-turns-nothing': { title: 'It turns no current screw', way: 'Withdraw it, or check its drive.' },
  'shank-joins-nothing': {
    title: 'No current handle or limiter takes its shank',
    way: 'Check the shank, or enter the handle.',
  },
  'limiter-limits-nothing': {
    title: 'No current screw has its torque class',
    way: 'Withdraw it, or check the class.',
  },
  'not-stated': {
    title: 'Not stated, and rules wait for it',
    way: 'Enter the value: until then the answers stay not established.',
  },
  'family-differs': {
    title: 'Screws of one family that are not alike',
    way: 'Correct the entries, or give those that differ a family of their own.',
  },
};
