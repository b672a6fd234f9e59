import type { SettingKey, SettingValue } from './local';

/** How one value of a setting is called, entered and shown. Bounds and defaults are those of its schema in `local.ts`. */
interface Named {
  label: string;
  /** What it decides, in a sentence. */
  about: string;
  /** Where its default comes from. */
  source: string;
}
export type SettingField = Named &
  (
    | {
        kind: 'number';
        unit: string;
        /** Stored units in one shown unit. */
        per: number;
        decimals: number;
        /** It may be left not stated. */
        optional?: true;
      }
    | { kind: 'numbers'; unit: string; per: number; decimals: number }
    | { kind: 'flag'; yes: string; no: string }
    | { kind: 'choice'; choices: Record<string, string> }
    | { kind: 'several'; choices: Record<string, string> }
    | { kind: 'dates' }
  );

export interface SettingGroup<K extends SettingKey = SettingKey> {
  title: string;
  about: string;
  fields: { [F in keyof SettingValue<K>]: SettingField };
}

const PRACTICE = 'Common practice, no source';
const OURS = 'Our own choice; the hospital states its own';

const number = (
  label: string,
  unit: string,
  about: string,
  source: string,
  per = 1,
  decimals = 0,
): SettingField => ({
  kind: 'number',
  label,
  unit,
  about,
  source,
  per,
  decimals,
});

const cost = (label: string, unit: string, about: string, per = 100): SettingField => ({
  kind: 'number',
  optional: true,
  label,
  unit,
  about: `${about} Left empty, nothing is worked out from it.`,
  source: 'Only the hospital knows it',
  per,
  decimals: per === 100 ? 2 : 0,
});
const service = (label: string): SettingField =>
  number(
    `Service level: ${label}`,
    '%',
    'Chance that the shelf covers the demand of one time between orders and arrival.',
    OURS,
    10,
    1,
  );

/** Every setting of the program. The compiler asks for an entry for each field of `local.ts`. */
export const SETTING_GROUPS: { [K in SettingKey]: SettingGroup<K> } = {
  sterility: {
    title: 'Sterility',
    about: 'When a sterile pack stops being sterile: on a date, or only by what happens to it.',
    fields: {
      policy: {
        kind: 'choice',
        label: 'Sterility ends',
        choices: { useBy: 'on a use-by date', eventRelated: 'by what happens to the pack' },
        about: 'With a date, every pack gets a use-by. Without one, none is printed and none is tested.',
        source: 'Both are in use; local policy decides',
      },
      useByDays: number(
        'Use-by after acceptance',
        'days',
        'Counted from the day the load was accepted. Used only where sterility ends on a date.',
        PRACTICE,
      ),
    },
  },
  loads: {
    title: 'Loads',
    about: 'What a steriliser load needs before somebody may accept it.',
    fields: {
      implantsAwaitBiological: {
        kind: 'flag',
        label: 'Implants wait for the biological result',
        yes: 'they wait',
        no: 'they do not wait',
        about:
          'A load with implants is accepted only once its biological indicator is read, with the documented emergency exception.',
        source: 'Guidance for implants in many countries; local policy decides',
      },
      requiredIndicators: {
        kind: 'several',
        label: 'Indicators every load must have passed',
        choices: {
          chemical: 'chemical indicator',
          biological: 'biological indicator',
          airRemoval: 'air removal test',
          printedRecord: 'printed record of the cycle',
        },
        about: 'A load that lacks one of them, or in which one failed, is not accepted.',
        source: PRACTICE,
      },
    },
  },
  sets: {
    title: 'Mass of sets',
    about:
      'Limits a packed set is weighed against. A limit warns and is printed; what the highest one asks for is under “Packing”.',
    fields: {
      massLimitsGrams: {
        kind: 'numbers',
        label: 'Mass limits',
        unit: 'kg',
        per: 1000,
        decimals: 2,
        about: 'One to six limits, lightest first. Each is shown wherever a set’s mass is.',
        source: '11.34 kg is 25 lb; 7 kg and 10 kg are common practice, no source',
      },
      warnAtPercent: number('Warn from', '%', 'Share of a limit from which a set counts as near it.', OURS),
    },
  },
  fit: {
    title: 'Fit',
    about: 'Limits that fit rules refer to by name. A change counts at once, wherever a rule is asked.',
    fields: {
      sleeveToleranceUm: number(
        'Sleeve bore wider than the bit, at most',
        'mm',
        'A sleeve whose bore is wider than this lets the bit wander, and does not fit.',
        PRACTICE,
        1000,
        3,
      ),
    },
  },
  kits: {
    title: 'Case kits',
    about: 'What the kit of a case aims at beyond its must-haves.',
    fields: {
      backUps: {
        kind: 'several',
        label: 'A second piece is held of',
        choices: {
          drillBit: 'drill bits',
          tap: 'taps',
          countersink: 'countersinks',
          depthGauge: 'depth gauges',
          driver: 'drivers',
          torqueLimiter: 'torque limiters',
          guideWire: 'guide wires',
        },
        about:
          'Held unopened in theatre where the store has one. A back-up that is short never stops a case.',
        source: PRACTICE,
      },
      targetCover: number(
        'Length cover aimed at',
        '%',
        'Chance that every screw length needed is there at once; the top-up is worked out for it.',
        OURS,
        0.01,
        1,
      ),
      timeLimitMs: number(
        'Time for the smallest kit',
        's',
        'How long the solver may look for a kit of fewer trays before it says how far from the best it may be.',
        OURS,
        1000,
        1,
      ),
      unknownMassGrams: number(
        'A tray of unknown mass counts as',
        'kg',
        'Heavy, so that a tray nobody weighed never looks lighter than one that was.',
        OURS,
        1000,
        2,
      ),
    },
  },
  stages: {
    title: 'Times of a turn',
    about:
      'Used only until enough of the hospital’s own turns are recorded, and said to be an assumption wherever they decide.',
    fields: {
      leadMinutes: number(
        'In theatre before the case begins',
        'minutes',
        'A set is needed this long before its case.',
        PRACTICE,
      ),
      comingBackMinutes: number('Coming back', 'minutes', 'From the end of the case to the washers.', OURS),
      washingMinutes: number('Washing', 'minutes', 'Cleaning, disinfection and drying.', OURS),
      benchMinutes: number('On the bench', 'minutes', 'Inspecting, counting, refilling and packing.', OURS),
      packedMinutes: number('Packed, waiting', 'minutes', 'From packing to the start of a load.', OURS),
      steriliserMinutes: number('In the steriliser', 'minutes', 'One cycle with drying.', OURS),
      acceptanceMinutes: number(
        'Awaiting acceptance',
        'minutes',
        'Cooling, reading the indicators, accepting.',
        OURS,
      ),
      longPercent: number(
        'Nine turns in ten take at most',
        '% of the usual time',
        'By how much a stage may run late before its set counts as at risk; weighs as much as ten turns of a set’s own.',
        OURS,
      ),
    },
  },
  planning: {
    title: 'Planning the theatre list',
    about: 'By which times sets are given to cases, and how far ahead.',
    fields: {
      planBy: {
        kind: 'choice',
        label: 'A set must be ready in time',
        about: 'The times are those of each kind’s own turns, or the usual ones until there are enough.',
        source: OURS,
        choices: { p50: 'half of the time', p90: 'nine times in ten' },
      },
      marginMinutes: number(
        'Margin wanted',
        'minutes',
        'Less than this between ready, nine times in ten, and needed counts as a risk.',
        OURS,
      ),
      horizonDays: number('Planned ahead', 'days', 'Cases later than this are not planned yet.', OURS),
    },
  },
  emergency: {
    title: 'Emergencies',
    about: 'What is assumed until somebody says otherwise.',
    fields: {
      neededInMinutes: number('Needed in', 'minutes', 'How long until the sets must stand in theatre.', OURS),
      caseMinutes: number('A case takes', 'minutes', 'How long the theatre and its sets are taken.', OURS),
    },
  },
  bench: {
    title: 'Bench',
    about: 'How counts are checked and when an entry counts as late.',
    fields: {
      secondCheck: {
        kind: 'choice',
        label: 'A second person checks',
        choices: {
          always: 'every count',
          implantsAndShort: 'counts of implants and of short sets',
          never: 'no count',
        },
        about:
          'Without seeing the first person’s figures. Left and right, and look-alikes, always take two. With “implants and short sets”, being asked to check a set without implants tells the checker that it is short, though not of what.',
        source: OURS,
      },
      lateAfterMinutes: number(
        'An entry is late after',
        'minutes',
        'Recorded this long after it was done, it is flagged in the ledger.',
        OURS,
      ),
    },
  },
  packs: {
    title: 'Packing',
    about: 'What is asked before a set is closed, and the label it gets.',
    fields: {
      overMass: {
        kind: 'choice',
        label: 'Above the highest mass limit',
        choices: { stops: 'it is not packed', needsReason: 'the packer states why' },
        about: 'Lower limits only warn. The limits themselves are under “Mass of sets”.',
        source: OURS,
      },
      scaleToleranceGrams: number(
        'Scale and pieces may differ by',
        'g',
        'Beyond it the packer is told: something may lie in the set that does not belong, or not lie in it.',
        OURS,
      ),
      label: {
        kind: 'choice',
        label: 'Size of labels',
        choices: { '100x50': '100 × 50 mm', '75x50': '75 × 50 mm', '50x25': '50 × 25 mm' },
        about:
          'Of the label printer at the bench, 203 dots to the inch. Another size can be chosen when printing.',
        source: OURS,
      },
    },
  },
  loans: {
    title: 'Loans',
    about:
      'When a loan must be here before it is needed. Each loan keeps the rule it was judged by when it arrived.',
    fields: {
      noticeIn: {
        kind: 'choice',
        label: 'Notice is counted in',
        choices: {
          clockHours: 'hours that pass',
          workingHours: 'working hours',
          workingDays: 'working days',
        },
        about: 'Hours that pass run day and night; working hours and days are those stated below.',
        source: 'Both are in use; local policy decides',
      },
      noticeHours: number(
        'Notice in hours',
        'hours',
        'Counts where notice is in hours that pass or in working hours.',
        PRACTICE,
      ),
      noticeDays: number(
        'Notice in working days',
        'days',
        'Working days before the day it is needed; counts where notice is in working days.',
        PRACTICE,
      ),
      dueBy: {
        kind: 'choice',
        label: 'On that working day it is due',
        choices: { startOfWork: 'by the start of work', endOfWork: 'by the end of work' },
        about: 'By the start of work, so many whole working days are left.',
        source: OURS,
      },
      workDays: {
        kind: 'several',
        label: 'Days that are worked',
        choices: {
          monday: 'Monday',
          tuesday: 'Tuesday',
          wednesday: 'Wednesday',
          thursday: 'Thursday',
          friday: 'Friday',
          saturday: 'Saturday',
          sunday: 'Sunday',
        },
        about: 'By the day of the week; days off among them are stated below.',
        source: OURS,
      },
      holidays: {
        kind: 'dates',
        label: 'Days off',
        about:
          'Public holidays and other dates on which nobody works. Only what is stated here is known: state those of the coming year in good time.',
        source: OURS,
      },
      workFromMinutes: number(
        'Work begins',
        'hours after midnight',
        'On a working day, by the clock on the wall: 8 is 08:00, 8.5 is 08:30.',
        OURS,
        60,
        2,
      ),
      workUntilMinutes: number(
        'Work ends',
        'hours after midnight',
        'On a working day, by the clock on the wall: 18 is 18:00.',
        OURS,
        60,
        2,
      ),
    },
  },
  costs: {
    title: 'Costs and waste',
    about: 'What the reviews of sets and the reports of cost are worked out from.',
    fields: {
      keepPencePerPiece: cost(
        'Keeping one piece in a set',
        '£ a turn',
        'Washing, inspecting, counting and sterilising it once more. Published: at least $0.51 (Stockert & Langerman 2014).',
      ),
      pouchPence: cost('One pouch', '£', 'Packing and sterilising one piece by itself.'),
      fetchMinutes: cost('Fetching a pouch', 'minutes', 'How long the case waits for one from the store.', 1),
      theatrePencePerMinute: cost('A minute of waiting in theatre', '£', 'Of people and room together.'),
      trayPence: cost(
        'One turn of a set',
        '£',
        'From coming back to the sterile store, its pieces together.',
      ),
      wasteShareOf: {
        kind: 'choice',
        label: 'The share of waste is of',
        choices: { opened: 'what was opened: implanted and wasted', total: 'the whole cost of the case' },
        about: 'Said beside every share.',
        source: 'Local policy decides',
      },
      runOutPerThousand: number(
        'A line may run out in',
        '% of cases',
        'By this the review of a set looks for the smallest quantity.',
        OURS,
        10,
        1,
      ),
    },
  },
  restock: {
    title: 'Restock',
    about:
      'How surely the shelf covers what nobody has booked yet, and what a proposal is worked out from. How long a maker takes is stated under Restock, with the maker.',
    fields: {
      reviewDays: number(
        'Days between orders',
        'days',
        'Used where the maker or item states none of its own.',
        PRACTICE,
      ),
      class1PerMille: service('Must-have class 1'),
      class2PerMille: service('Must-have class 2'),
      class3PerMille: service('Must-have class 3'),
      class4PerMille: service('Must-have class 4'),
      noClassPerMille: service('Pieces in no set'),
      sureOfUsePercent: number(
        'Used before its use-by, as surely as',
        '%',
        'A piece is ordered only if it is asked for before its use-by with this chance.',
        OURS,
      ),
      recordWeeks: number('Record looked at', 'weeks', 'Uses longer ago are not counted.', OURS),
      alphaPercent: number(
        'Weight of the latest demand',
        '%',
        'Of sparse demand, how far its size and interval follow the latest.',
        'Croston’s method with 0.1 is common practice, no source',
      ),
      parWeeks: number(
        'Plain par level',
        'weeks of use',
        'What the past is replayed against for comparison. Orders do not follow it.',
        PRACTICE,
      ),
    },
  },
  stock: {
    title: 'Shelves and counts',
    about:
      'When a use-by counts as soon, which heaps are counted how often, and when another person counts again.',
    fields: {
      soonDays: number(
        'Use-by counts as soon from',
        'days',
        'Before the use-by. What is soon past is used or swapped first.',
        OURS,
      ),
      countClassBy: {
        kind: 'choice',
        label: 'What is counted how often goes by',
        choices: { valueOfUse: 'the value of what is used', mustHaveClass: 'must-have class' },
        about:
          'By value: the items that make up the first 80 % of what was used in twelve months are class A, up to 95 % class B, the rest C. By must-have class: 1 is A, 2 is B, the rest C.',
        source: PRACTICE,
      },
      countDaysA: number(
        'Class A is counted every',
        'days',
        'Counted from the last time it was counted.',
        PRACTICE,
      ),
      countDaysB: number(
        'Class B is counted every',
        'days',
        'Counted from the last time it was counted.',
        PRACTICE,
      ),
      countDaysC: number(
        'Class C is counted every',
        'days',
        'Counted from the last time it was counted.',
        PRACTICE,
      ),
      tolerancePieces: number(
        'A difference is counted again above',
        'pieces',
        'Or above the share below, whichever is larger. With 0 of both, every difference is counted again.',
        OURS,
      ),
      tolerancePercent: number(
        'A difference is counted again above',
        '%',
        'Of what the record had at the moment of counting.',
        OURS,
      ),
    },
  },
  reasons: {
    title: 'Reasons for delay and waste',
    about:
      'The list of reasons is the hospital’s own and is kept on a page of its own, under “Kept elsewhere”.',
    fields: {
      askWaste: {
        kind: 'flag',
        label: 'A reason for what was wasted',
        about:
          'Where it is asked for, a record of use that closes without one says so among its open questions. Nobody is kept from recording what happened.',
        source: OURS,
        yes: 'asked for',
        no: 'may be given',
      },
    },
  },
  calendars: {
    title: 'Calendar feeds',
    about:
      'What a calendar says that is read under a secret address, without signing in. It never says more of a case than its reference, theatre, region and side.',
    fields: {
      nameSurgeon: {
        kind: 'flag',
        label: 'The surgeon of a case',
        yes: 'is named',
        no: 'is not named',
        about: 'In the calendar of the theatre list. A change shows when a reader asks again.',
        source: OURS,
      },
    },
  },
  signIn: {
    title: 'Sign-in',
    about: 'How long a person stays signed in. A change counts for sessions begun after it.',
    fields: {
      idleMinutes: number('Signed out after idling', 'minutes', 'Without any act at the screen.', OURS),
      absoluteHours: number('Signed out in any case after', 'hours', 'Whatever was done meanwhile.', OURS),
    },
  },
};

export const SETTING_KEYS = Object.keys(SETTING_GROUPS) as SettingKey[];

/** The fields of one setting as pairs, in their order. */
export function fieldsOf(key: SettingKey): [string, SettingField][] {
  return Object.entries(SETTING_GROUPS[key].fields as Record<string, SettingField>);
}
