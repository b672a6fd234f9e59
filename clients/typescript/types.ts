// Made from the description of the API by `npm run api:document`; a test compares the two.

export type Problem = {
  type: string;
  title: string;
  status: number;
  detail: string;
  errors?: ({
    path: ((string) | (number))[];
    pointer: string;
    code: string;
    message: string;
  })[];
  because?: "notFound" | "notPermitted" | "frozen" | "conflict" | "invalid";
  current?: unknown;
};

export type AcceptanceFinding = ({
  severity: "note" | "stops" | "caution";
  kind: "notEnded";
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "cycleKept" | "cycleNotKept" | "noCycleRecord";
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "cycleNotEstablished";
  missing: (string)[];
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "indicatorPassed" | "indicatorNotUsed" | "indicatorPending" | "indicatorFailed";
  indicator: "chemical" | "biological" | "airRemoval" | "printedRecord";
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "indicatorPastUseBy";
  indicator: "chemical" | "biological" | "airRemoval" | "printedRecord";
  lot: (null) | (string);
  useBy: string;
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "indicatorLotNotStated" | "indicatorUseByNotStated";
  indicator: "chemical" | "biological" | "airRemoval" | "printedRecord";
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "noPacks";
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "notLookedAt";
  packs: (string)[];
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "unfit";
  as: "wet" | "torn" | "unsealed";
  packs: (string)[];
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "noneSound";
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "allSound";
  count: number;
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "implantsAwaitBiological";
  packs: (string)[];
}) | ({
  severity: "note" | "stops" | "caution";
  kind: "implantsNotEstablished";
  packs: (string)[];
});

export type AcceptedPiece = {
  itemId: string;
  lengthUm: (null) | (number);
  longerUm: number;
  answers: (LinkVerdict)[];
};

export type AccountOnScreen = {
  code: string;
  name: string;
  itemId: string;
  lot: (null) | (string);
  received: number;
  onShelf: number;
  withCases: number;
  intoSlots: number;
  implanted: number;
  wasted: number;
  notFound: number;
  sentBack: number;
};

export type Act = {
  at: string;
  by: string;
};

export type ActingAnswer = {
  person: {
    id: string;
    name: string;
    role: string;
  };
  sessionId: string;
  ticket: string;
};

export type AsidePiece = {
  id: string;
  item: {
    id: string;
    code: string;
    name: string;
    kind: "plate" | "screw" | "washer" | "drillBit" | "drillSleeve" | "tap" | "countersink" | "depthGauge" | "driver" | "handle" | "torqueLimiter" | "guideWire" | "reductionForceps" | "plateBender" | "holder" | "rack" | "basket" | "container" | "generalInstrument" | "consumable";
    singleUse: boolean;
  };
  quantity: number;
  condition: "blunt" | "sound" | "bent" | "corroded" | "stained" | "markingGone" | "boreWorn";
  route: ("repair" | "discard") | (null);
  set: (null) | ({
    id: string;
    code: string;
  });
  foundBy: string;
  foundAt: string;
  settled: (null) | ({
    by: string;
    at: string;
    outcome: "repaired" | "discarded" | "notRepairable";
  });
};

export type Backtest = {
  days: number;
  reorder: Replayed;
  par: Replayed;
  notEstablished: number;
};

export type BacktestOnScreen = {
  from: (null) | (string);
  days: number;
  warmUpDays: number;
  settings: {
    reviewDays: number;
    class1PerMille: number;
    class2PerMille: number;
    class3PerMille: number;
    class4PerMille: number;
    noClassPerMille: number;
    sureOfUsePercent: number;
    recordWeeks: number;
    alphaPercent: number;
    parWeeks: number;
  };
  items: (BacktestedItem)[];
  withoutLead: number;
};

export type BacktestedItem = {
  itemId: string;
  code: string;
  name: string;
  kind: string;
  mustHaveClass: (null) | (number);
  service: number;
  unitPence: (null) | (number);
  par: number;
  result: Backtest;
};

export type Barred = ({
  kind: "held";
  reason: string;
}) | ({
  kind: "pastUseBy";
  useBy: string;
}) | ({
  kind: "shortForOneCase";
  reference: (null) | (string);
}) | ({
  kind: "onOtherKit";
  reference: string;
}) | ({
  kind: "letOutForOneCase";
  reference: string;
}) | ({
  kind: "awaitsDecision";
}) | ({
  kind: "takenForEmergency";
  reference: string;
});

export type BegunCount = {
  countId: string;
  purpose: "check" | "count" | "settle";
};

export type BenchCountRecorded = {
  id: string;
  set: {
    id: string;
    code: string;
  };
  purpose: "check" | "count" | "settle";
  person: {
    id: string;
    name: string;
  };
  beganAt: string;
  closedAt: (null) | (string);
  abandonedAt: (null) | (string);
};

export type BenchEntry = {
  id: string;
  act: ({
    kind: "found";
    lineId: string;
    pieces: number;
  }) | ({
    kind: "oneMore";
    lineId: string;
    serial: (null) | (string);
  }) | ({
    kind: "fault";
    lineId: string;
    pieces: number;
    condition: "blunt" | "bent" | "corroded" | "stained" | "markingGone" | "boreWorn";
    route: "repair" | "discard";
  }) | ({
    kind: "refill";
    lineId: string;
    pieces: number;
    from: ({
      kind: "stock";
      stockId: string;
      form: "pouch" | "sterilePacked" | "unsterile";
      lot: (null) | (string);
      useBy: (null) | (string);
    }) | ({
      kind: "other";
      where: string;
    });
  }) | ({
    kind: "foreign";
    itemId: string;
    pieces: number;
    note: (null) | (string);
  }) | ({
    kind: "surplusHome";
    lineId: string;
    pieces: number;
    home: ({
      kind: "set";
      setId: string;
    }) | ({
      kind: "elsewhere";
      where: string;
    });
  }) | ({
    kind: "foreignHome";
    itemId: string;
    pieces: number;
    home: ({
      kind: "set";
      setId: string;
    }) | ({
      kind: "elsewhere";
      where: string;
    });
  }) | ({
    kind: "looked";
    layer: number;
  }) | ({
    kind: "undo";
    entryId: string;
  }) | ({
    kind: "note";
    text: string;
  });
  doneAt: string;
  secondPersonId?: (null) | (string);
};

export type Blocked = ({
  kind: "piece";
  needId: string;
  what: "plate" | "screw" | "washer" | "wire";
  steps: (string)[];
  accepts: (string)[];
}) | ({
  kind: "chain";
  needId: string;
  chain: "drilling" | "lagDrilling" | "tapping" | "countersinking" | "measuring" | "driving" | "wiring";
  steps: (string)[];
  wouldClose: ((string)[])[];
});

export type BookedCase = {
  id: string;
  reference: string;
};

export type Bounds = {
  lo: number;
  hi: number;
};

export type BuildToday = {
  tone: "unknown" | "good" | "attention" | "stop";
  word: string;
  reasons: (string)[];
  sets: (string)[];
};

export type CalculationDescription = {
  name: string;
  title: string;
  question: string;
  href: string;
  formula: (string)[];
  assumptions: (string)[];
  sources: ({
    text: string;
    fromMemory: boolean;
  })[];
  example: unknown;
  input: { [name: string]: unknown };
  output: { [name: string]: unknown };
};

export type CalculationJson = {
  calculation: string;
  assumptions: (string)[];
};

export type Candidate = {
  itemId: (null) | (string);
  endIndex: (null) | (number);
  answers: (LinkVerdict)[];
  established: boolean;
};

export type CardOfCase = {
  id: string;
  surgeon: string;
  procedure: string;
  version: number;
  newest: number;
  body: {
    startIds: (string)[];
    extras: ({
      itemId: string;
      quantity: number;
      note: (null) | (string);
    })[];
    note: (null) | (string);
  };
};

export type CardOnFile = {
  id: string;
  surgeon: {
    id: string;
    name: string;
  };
  procedure: {
    id: string;
    name: string;
    region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
    inUse: boolean;
  };
  version: number;
  savedAt: string;
  body: {
    startIds: (string)[];
    extras: ({
      itemId: string;
      quantity: number;
      note: (null) | (string);
    })[];
    note: (null) | (string);
  };
  retiredAt: (null) | (string);
  used: number;
};

export type CardVersion = {
  version: number;
  body: {
    startIds: (string)[];
    extras: ({
      itemId: string;
      quantity: number;
      note: (null) | (string);
    })[];
    note: (null) | (string);
  };
  savedBy: string;
  savedAt: string;
};

export type CaseChoice = {
  id: string;
  reference: string;
  startsAt: string;
  surgeonId: string;
  surgeon: string;
  promised: boolean;
};

export type CaseCounts = {
  total: number;
  confirmed: number;
  possible: number;
  excluded: number;
};

export type CaseKit = {
  verdict: KitVerdict;
  buildable: "yes" | "no" | "notEstablished" | "onlyWith";
  needs: Needs;
  sets: (ChosenSet)[];
  packs: (ChosenPack)[];
  steps: (StepKit)[];
  chains: (ChosenChain)[];
  shorts: (Short)[];
  faults: (PlanFault)[];
  notEstablished: (NotEstablished)[];
  withCaution: ({
    needId: string;
    steps: (string)[];
    answers: (LinkVerdict)[];
  })[];
  unavailable: (UnavailableSet)[];
  singlePoints: (SinglePoint)[];
  margins: (StepMargin)[];
  ties: (Tie)[];
  keepingPromises: (null) | (Tie);
  whyNotFewer: (WithoutOne)[];
  proof: ({
    kind: "optimal";
    by: "search" | "programme";
    furtherAims: "proven" | "bestFound";
  }) | ({
    kind: "gap";
    trays: number;
    lowerBoundTrays: number;
    gap: number;
  });
  lengthCover: (null) | (LengthCoverFigure);
  order: (OrderEntry)[];
  pickList: (PickLine)[];
};

export type CaseLine = {
  facts: DayCaseFacts;
  standing: (null) | ({
    kind: "notPlanned";
  }) | ({
    kind: "shortOf";
    missing: (MissingPieces)[];
    outOfReach: (string)[];
  }) | ({
    kind: "ready" | "readyWith";
    sets: (GivenSet)[];
    pouches: (string)[];
  }) | ({
    kind: "waiting";
    until: string;
    sets: (GivenSet)[];
    pouches: (string)[];
  }) | ({
    kind: "noSetFree";
    slipMinutes: (null) | (number);
    obstacles: ({
      set: string;
      kind: "inUse" | "readyUnknown" | "notReady" | "neededNext" | "noPouch" | "onlyThis";
      byCase: (null) | (string);
      atMs: (null) | (number);
      pouch: (null) | (string);
      missesMinutes: (null) | (number);
    })[];
  });
  bucket: "over" | "ready" | "short" | "notPlanned" | "notKnown" | "waiting" | "notConfirmed" | "begun";
  confirmed: boolean;
  needByAt: (null) | (string);
  sets: (LineSet)[];
  pouches: (string)[];
  marginMinutes: (null) | (number);
};

export type CaseOrder = {
  orderId: string;
  number: string;
  toCome: number;
  expectedOn: (null) | (string);
};

export type CaseOrigin = {
  card: (null) | (CardOfCase);
  start: (null) | ({
    id: string;
    version: number;
  });
};

export type CasePiece = {
  itemId: string;
  code: string;
  name: string;
  outcome: "notFound" | "other" | "implanted" | "wasted" | "setAside" | "shelf";
  quantity: number;
  setId: (null) | (string);
  lots: ({
    lo: number;
    hi: number;
    lot: string;
  })[];
  unknown: number;
  contradicted: boolean;
};

export type CaseStanding = ({
  kind: "notPlanned";
}) | ({
  kind: "shortOf";
  missing: (MissingPieces)[];
  outOfReach: (string)[];
}) | ({
  kind: "ready" | "readyWith";
  sets: (GivenSet)[];
  pouches: (string)[];
}) | ({
  kind: "waiting";
  until: string;
  sets: (GivenSet)[];
  pouches: (string)[];
}) | ({
  kind: "noSetFree";
  slipMinutes: (null) | (number);
  obstacles: ({
    set: string;
    kind: "inUse" | "readyUnknown" | "notReady" | "neededNext" | "noPouch" | "onlyThis";
    byCase: (null) | (string);
    atMs: (null) | (number);
    pouch: (null) | (string);
    missesMinutes: (null) | (number);
  })[];
});

export type CaseStanding2 = {
  caseId: string;
  reference: string;
  startsAt: string;
  outcome: "yes" | "no" | "notEstablished" | "onlyWith";
  steps: number;
  stepsPossible: number;
  stopped: (StoppedPurpose)[];
  shortItems: (string)[];
  blocked: (Blocked)[];
  onlyWith: ({
    itemId: string;
    pieces: number;
  })[];
  notEvenWhole: (string)[];
};

export type CaseToServe = {
  id: string;
  reference: string;
  revision: number;
  theatreId: string;
  startsAt: string;
  endsAt: string;
  leadMinutes: number;
  urgency: "booked" | "soon" | "today" | "now";
  ways: (null) | (WaysToServe);
  confirmed: boolean;
};

export type CaseTrace = {
  case: NamedCase;
  pieces: (CasePiece)[];
  sets: ({
    id: string;
    code: string;
    step: string;
    packNumber: (null) | (string);
    loadId: (null) | (string);
    loadNumber: (null) | (string);
  })[];
  names: { [name: string]: NamedSet };
  hidden: (NamedSet)[];
};

export type CasesSeen = {
  rows: (TracedCase)[];
  counts: CaseCounts;
};

export type CatalogueRow = {
  id: string;
  code: string;
  name: string;
  nickname: (null) | (string);
  kind: string;
  maker: string;
  side: (null) | (string);
  material: (null) | (string);
  suppliedSterile: (boolean) | (null);
  diameterUm: (null) | (number);
  lengthUm: (null) | (number);
  massGrams: (null) | (number);
  unitCostPence: (null) | (number);
  gtin: (null) | (string);
  status: string;
  revision: number;
  missing: number;
};

export type ChainNeed = {
  id: string;
  kind: "drilling" | "lagDrilling" | "tapping" | "countersinking" | "measuring" | "driving" | "wiring";
  importance: "mustHave" | "backUp";
  steps: (string)[];
  forItemId: string;
  slots: (Slot)[];
  links: (SlotLink)[];
};

export type ChangeLine = {
  key: string;
  caseId: (null) | (string);
  about: string;
  where: string;
  word: string;
  sentence: string;
  by: string;
};

export type ChangedCase = {
  id: string;
  reference: string;
  startsAt: string;
  cancelled: boolean;
  changes: ({
    seq: number;
    at: string;
    by: string;
    change: ListChange;
  })[];
};

export type ChangedDay = {
  look: (null) | ({
    view: "morning" | "dayBefore" | "theatreList";
    shownAt: string;
  });
  lines: (ChangeLine)[];
  mark: {
    view: "morning" | "dayBefore" | "theatreList";
    day: string;
    shownAt: string;
    ledgerSeq: number;
    seen: ({
      id: string;
      reference: string;
      theatreId: string;
      theatre: string;
      startsAt: string;
      endsAt: string;
      cancelled: boolean;
      planVersion: (null) | (number);
      confirmed: boolean;
      promised: ({
        id: string;
        code: string;
      })[];
      standing: (null) | ({
        kind: "ready" | "notPlanned" | "shortOf" | "readyWith" | "waiting" | "noSetFree";
        until: (null) | (string);
        sets: ({
          id: string;
          code: string;
        })[];
      });
    })[];
  };
};

export type CheckEntry = {
  id: string;
  act: ({
    kind: "seen";
    thing: ({
      kind: "set";
      setId: string;
      packId: (null) | (string);
    }) | ({
      kind: "pouch";
      packId: string;
    }) | ({
      kind: "stock";
      stockId: string;
    }) | ({
      kind: "item";
      itemId: string;
      lot: (null) | (string);
      useBy: (null) | (string);
    });
    quantity: number;
  }) | ({
    kind: "undo";
    entryId: string;
  });
  doneAt: string;
};

export type CheckScreen = {
  stage: "notBegun" | "picking" | "picked" | "checked" | "issued" | "inTheatre" | "back" | "toPutBack" | "cancelled";
  ownKit: boolean;
  open: (null) | ({
    id: string;
    entries: (CheckEntry)[];
    seen: ({
      entryId: string;
      name: string;
      quantity: number;
      at: string;
    })[];
  });
  last: (null) | ({
    by: string;
    at: string;
    differences: ({
      key: string;
      picked: number;
      seen: number;
      name: string;
    })[];
  });
};

export type Choices = {
  sheet: (null) | (string);
  columns: {
    surgeon?: (null) | (number);
    date?: (null) | (number);
    side?: (null) | (number);
    region?: (null) | (number);
    theatre?: (null) | (number);
    minutes?: (null) | (number);
    start?: (null) | (number);
    urgency?: (null) | (number);
    end?: (null) | (number);
    caseReference?: (null) | (number);
    rowId?: (null) | (number);
  };
  dateOrder: ("dayFirst" | "monthFirst") | (null);
  repeatedHour: ("second" | "first") | (null);
  urgencyWhereNone: ("booked" | "soon" | "today" | "now") | (null);
};

export type ChosenChain = {
  chainId: string;
  links: (ChosenLink)[];
};

export type ChosenConstruct = {
  from: ("unknown") | (string);
  construct: (null) | ({
    region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
    limb: ("left" | "right") | (null);
    bone: "normal" | "poor" | "notStated";
    plates: ({
      key: string;
      plateItemId: string;
      zone: (null) | ({
        fromUm: number;
        toUm: number;
      });
      principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
      fills: { [name: string]: ({
        purpose: "empty";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "neutral";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "offset";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "lag";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "locked";
      }) | ({
        purpose: "temporaryWire";
        wireItemId: string;
      }) };
    })[];
    freeScrews: ({
      washerItemId: (null) | (string);
      screwFamily: string;
      cortices: 1 | 2;
      length: ({
        kind: "exact";
        mm: number;
      }) | ({
        kind: "spread";
        meanMm: number;
        sdMm: number;
        sourceNote: (null) | (string);
      }) | ({
        kind: "notStated";
      });
      acceptLongerMm: number;
      key: string;
    })[];
    sharedLengthSdMm: (null) | (number);
    note: (null) | (string);
  });
  label: string;
  surgeonId: (null) | (string);
  platesGone: (string)[];
};

export type ChosenLink = {
  slot: "tap" | "countersink" | "driver" | "handle" | "torqueLimiter" | "pilotBit" | "sleeve" | "glidingBit" | "glidingSleeve" | "insertSleeve" | "gauge" | "glidingHandle" | "wireDriver";
  itemId: string;
  endIndex: (null) | (number);
  from: ({
    kind: "set";
    setId: string;
  }) | ({
    kind: "pack";
    stockId: string;
  });
  answers: (LinkVerdict)[];
};

export type ChosenPack = {
  stockId: string;
  itemId: string;
  form: "pouch" | "sterilePacked";
  role: "open" | "hold";
  quantity: number;
  lot: (null) | (string);
  useBy: (null) | (string);
  owner: "ours" | "consignment";
  place: (null) | (KitPlace);
  meets: (string)[];
};

export type ChosenSet = {
  setId: string;
  code: string;
  configurationName: string;
  role: "open" | "hold";
  place: (null) | (KitPlace);
  useBy: (null) | (string);
  massGrams: (null) | (number);
  readyAt: (null) | (string);
  promisedTo: (string)[];
  meets: (string)[];
  onlyItMeets: (string)[];
  alike: ({
    setId: string;
    code: string;
  })[];
};

export type ClosedCheck = {
  checkId: string;
  differences: (KitDifference)[];
};

export type ClosedCount = {
  countId: string;
  entries: number;
  digest: string;
  revision: number;
  disputed: number;
};

export type ClosedTheatreCount = {
  countId: string;
  questions: number;
};

export type ClosedUse = {
  closedAt: string;
  questions: number;
};

export type ColumnChoice = {
  surgeon: (null) | (number);
  date: (null) | (number);
  side: (null) | (number);
  region: (null) | (number);
  theatre: (null) | (number);
  minutes: (null) | (number);
  start: (null) | (number);
  urgency: (null) | (number);
  end: (null) | (number);
  caseReference: (null) | (number);
  rowId: (null) | (number);
};

export type ColumnView = {
  key: string;
  heading: string;
  says: string;
  number: (null) | (number);
  by: "person" | "name" | "likely" | "remembered";
};

export type ComboOption = {
  value: string;
  label: string;
  note?: string;
};

export type Condition = ({
  all: (Condition)[];
}) | ({
  any: (Condition)[];
}) | ({
  not: Condition;
}) | ({
  equal: [Term, Term];
}) | ({
  below: [Term, Term];
}) | ({
  atMost: [Term, Term];
}) | ({
  oneOf: [Term, ((string) | (number))[]];
}) | ({
  lists: [Term, Term];
}) | ({
  takesPart: string;
});

export type ConfigurationOnFile = {
  id: string;
  code: string;
  name: string;
  withdrawnAt: (null) | (string);
  requests: (ConfigurationRequest)[];
  versions: (VersionOnFile)[];
  sets: ({
    id: string;
    code: string;
    versionId: string;
  })[];
};

export type ConfigurationRequest = {
  id: string;
  kind: "withdraw" | "bringBack";
  because: string;
  askedBy: (null) | ({
    id: string;
    name: string;
  });
  askedAt: string;
  decidedBy: (null) | ({
    id: string;
    name: string;
  });
  decidedAt: (null) | (string);
  decision: ("agreed" | "turnedDown") | (null);
};

export type ConfigurationRow = {
  id: string;
  code: string;
  name: string;
  inForce: (null) | ({
    version: number;
    lines: number;
    pieces: number;
  });
  draft: (null) | ({
    version: number;
  });
  approved: (null) | ({
    version: number;
    from: string;
  });
  withdrawnAt: (null) | (string);
  sets: number;
};

export type ConfigurationVersion = ({
  status: "draft";
  id: string;
  configurationId: string;
  version: number;
  layers: ({
    layer: number;
    name: string;
  })[];
  lines: ({
    id: string;
    itemId: string;
    layer: number;
    row: number;
    slot: number;
    rackItemId: (null) | (string);
    expected: number;
    minimum: number;
    mustHaveClass: 4 | 3 | 1 | 2;
    substitutes: (string)[];
  })[];
  promises: ({
    name: string;
    construct: {
      region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
      limb: ("left" | "right") | (null);
      bone: "normal" | "poor" | "notStated";
      plates: ({
        key: string;
        plateItemId: string;
        zone: (null) | ({
          fromUm: number;
          toUm: number;
        });
        principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
        fills: { [name: string]: ({
          purpose: "empty";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "neutral";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "offset";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "lag";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "locked";
        }) | ({
          purpose: "temporaryWire";
          wireItemId: string;
        }) };
      })[];
      freeScrews: ({
        washerItemId: (null) | (string);
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        key: string;
      })[];
      sharedLengthSdMm: (null) | (number);
      note: (null) | (string);
    };
  })[];
  basketItemId: (null) | (string);
  containerItemId: (null) | (string);
}) | ({
  status: "superseded" | "inForce" | "approved";
  id: string;
  configurationId: string;
  version: number;
  layers: ({
    layer: number;
    name: string;
  })[];
  lines: ({
    id: string;
    itemId: string;
    layer: number;
    row: number;
    slot: number;
    rackItemId: (null) | (string);
    expected: number;
    minimum: number;
    mustHaveClass: 4 | 3 | 1 | 2;
    substitutes: (string)[];
  })[];
  promises: ({
    name: string;
    construct: {
      region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
      limb: ("left" | "right") | (null);
      bone: "normal" | "poor" | "notStated";
      plates: ({
        key: string;
        plateItemId: string;
        zone: (null) | ({
          fromUm: number;
          toUm: number;
        });
        principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
        fills: { [name: string]: ({
          purpose: "empty";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "neutral";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "offset";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "lag";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "locked";
        }) | ({
          purpose: "temporaryWire";
          wireItemId: string;
        }) };
      })[];
      freeScrews: ({
        washerItemId: (null) | (string);
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        key: string;
      })[];
      sharedLengthSdMm: (null) | (number);
      note: (null) | (string);
    };
  })[];
  basketItemId: (null) | (string);
  containerItemId: (null) | (string);
});

export type Contradiction = {
  wentOut: number;
  cameIn: number;
  lots: ((null) | (string))[];
  untilMs: (null) | (number);
};

export type Correction = {
  seq: number;
  at: string;
  by: (null) | (string);
  corrects: number;
  target: ({
    kind: "time";
  }) | ({
    kind: "value";
    pointer: string;
  }) | ({
    kind: "remark";
  });
  old: (boolean) | (null) | (string) | (number);
  new: (boolean) | (null) | (string) | (number);
  reason: string;
} & { [name: string]: unknown };

export type CountLine = {
  setId: string;
  lineId: string;
  name: string;
  code: string;
  layer: number;
  place: string;
  implant: boolean;
};

export type CountLineShown = {
  id: string;
  itemId: string;
  code: string;
  name: string;
  form: "pouch" | "sterilePacked" | "unsterile";
  lot: (null) | (string);
  useBy: (null) | (string);
  owner: "ours" | "consignment";
  held: (null) | (string);
  added: boolean;
  own: (null) | (number);
  result: (null) | ({
    first: (null) | (number);
    second: (null) | (number);
    expected: (null) | (number);
    difference: (null) | (number);
    decision: ("left" | "accepted") | (null);
    decidedBy: (null) | (string);
    because: (null) | (string);
  });
};

export type CountOnFile = {
  id: string;
  countedBy: string;
  countedAt: string;
  lines: ({
    lineId: string;
    expected: number;
    found: number;
    unsound: number;
    condition: "blunt" | "sound" | "bent" | "corroded" | "stained" | "markingGone" | "boreWorn";
  })[];
};

export type CountOnList = {
  id: string;
  place: string;
  countClass: string;
  stage: "done" | "counting" | "toRecount" | "recounting" | "toDecide" | "abandoned";
  begunBy: string;
  begunAt: string;
  mine: boolean;
  heaps: number;
};

export type CountScreen = {
  id: string;
  placeId: string;
  place: string;
  countClass: string;
  stage: "done" | "counting" | "toRecount" | "recounting" | "toDecide" | "abandoned";
  part: "waits" | "counts" | "countsAgain" | "mayCountAgain" | "sees";
  begunBy: string;
  begunAt: string;
  closedAt: (null) | (string);
  recountBy: (null) | (string);
  revision: number;
  tolerance: {
    pieces: number;
    percent: number;
  };
  counted: number;
  of: number;
  lines: (CountLineShown)[];
};

export type CountedStanding = {
  group: string;
  tone: "unknown" | "good" | "attention" | "stop";
  word: string;
  sentence: string;
};

export type CycleImported = {
  revision: number;
  summary: {
    programme: {
      name: string;
      bandMillicelsius: [number, (null) | (number)];
      holdSeconds: number;
    };
    readings: number;
    loggedFromSecond: number;
    loggedToSecond: number;
    rule: "left" | "trapezoid";
    longestGapSeconds: number;
    missing: (string)[];
    dose: (null) | ({
      a0Seconds: number;
      f0Minutes: number;
      f0ReferenceC: number;
      loggedSeconds: number;
      lowestC: number;
      highestC: number;
      holding: (null) | ({
        outcome: "notEstablished" | "held" | "notHeld";
        longestSeconds: number;
        requiredSeconds: number;
        fromSecond: (null) | (number);
        toSecond: (null) | (number);
        lowestC: (null) | (number);
        highestC: (null) | (number);
      });
    });
    importedBy: string;
    importedAt: string;
    fileName: (null) | (string);
    understood: (string)[];
  };
  readings: (CycleReading)[];
};

export type CycleReading = {
  second: number;
  millicelsius: number;
  millibar: (null) | (number);
};

export type DayCase = {
  promised: (PromisedSet)[];
  plan: {
    confirmedVersion: (null) | (number);
    draftVersion: (null) | (number);
  };
  id: string;
  reference: string;
  theatreId: string;
  theatre: string;
  caseDate: string;
  startsAt: string;
  endsAt: string;
  region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
  limb: "left" | "right";
  surgeonId: string;
  surgeon: string;
  urgency: "booked" | "soon" | "today" | "now";
  revision: number;
  cancelled: (null) | ({
    at: string;
    because: string;
  });
};

export type DayCaseFacts = {
  id: string;
  reference: string;
  theatreId: string;
  theatre: string;
  startsAt: string;
  endsAt: string;
  caseDate: string;
  surgeon: string;
  cancelled: (null) | ({ [name: string]: unknown });
  plan: {
    confirmedVersion: (null) | (number);
    draftVersion: (null) | (number);
  };
  promised: ({
    setId: string;
    code: string;
    inUse: boolean;
    outOfService: boolean;
  })[];
};

export type DayReport = {
  day: string;
  now: string;
  counts: {
    over: number;
    ready: number;
    short: number;
    notPlanned: number;
    notKnown: number;
    waiting: number;
    notConfirmed: number;
    begun: number;
  };
  lines: (CaseLine)[];
  steps: (FirstStep)[];
  onTheWay: (WantedSet)[];
  lacking: (LackingSet)[];
  turned: (TurnedBetween)[];
  ask: (null) | (ToAskFor);
};

export type DaySetFacts = {
  id: string;
  code: string;
  configuration: string;
  step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
  since: string;
  heldBecause: (null) | (string);
  useBy: (null) | (string);
  act: ("liftHold" | "count" | "pack" | "load" | "receive" | "beginWash" | "endWash" | "decideShort" | "unload" | "accept") | (null);
  load: (null) | ({
    id: string;
    number: string;
  });
  count: (null) | ({
    by: string;
    beganAt: string;
  });
  stops: (Stop)[];
  screws: { [name: string]: {
    found: (null) | (number);
    minimum: number;
  } };
  mustHaveShort: boolean;
};

export type DeliveryOnFile = {
  id: string;
  supplier: string;
  reference: string;
  arrivedOn: string;
  by: string;
  receivedAt: string;
  lines: ({
    id: string;
    itemId: string;
    name: string;
    lot: (null) | (string);
    useBy: (null) | (string);
    pieces: number;
    place: string;
    heldBecause: (null) | (string);
  })[];
};

export type DescribedDocument = {
  openapi: string;
  paths: { [name: string]: unknown };
};

export type DestinationBounds = {
  case: (null) | (string);
  outcome: "notFound" | "other" | "implanted" | "wasted" | "setAside" | "shelf";
  pieces: number;
  lastAtMs: number;
  standing: "confirmed" | "possible" | "excluded";
  why: (Why)[];
  isBeside: boolean;
  lo: number;
  hi: number;
};

export type Discrepancy = {
  lineId: string;
  stage: "out" | "in";
  kind: "notFound" | "damaged";
  quantity: number;
};

export type DoubtedPack = {
  packId: string;
  number: string;
  name: string;
  setId: (null) | (string);
  kind: "set" | "pouch";
  loadId: string;
  fateThen: "notEstablished" | "here" | "used" | "heldAlready" | "openedHere";
  fateNow: "notEstablished" | "here" | "used" | "heldAlready" | "openedHere";
  heldNow: boolean;
  mayBeLifted: boolean;
  cases: ({
    id: string;
    reference: string;
    date: string;
  })[];
};

export type DraftPlan = {
  status: "draft";
  id: string;
  caseId: string;
  version: number;
  construct: {
    region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
    limb: ("left" | "right") | (null);
    bone: "normal" | "poor" | "notStated";
    plates: ({
      key: string;
      plateItemId: string;
      zone: (null) | ({
        fromUm: number;
        toUm: number;
      });
      principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
      fills: { [name: string]: ({
        purpose: "empty";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "neutral";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "offset";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "lag";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "locked";
      }) | ({
        purpose: "temporaryWire";
        wireItemId: string;
      }) };
    })[];
    freeScrews: ({
      washerItemId: (null) | (string);
      screwFamily: string;
      cortices: 1 | 2;
      length: ({
        kind: "exact";
        mm: number;
      }) | ({
        kind: "spread";
        meanMm: number;
        sdMm: number;
        sourceNote: (null) | (string);
      }) | ({
        kind: "notStated";
      });
      acceptLongerMm: number;
      key: string;
    })[];
    sharedLengthSdMm: (null) | (number);
    note: (null) | (string);
  };
  writtenBy: string;
  writtenAt: string;
  revision: number;
};

export type Elsewhere = {
  itemId: string;
  in: ({
    kind: "set";
    setId: string;
    code: string;
  }) | ({
    kind: "pack";
    stockId: string;
  });
  because: Unavailable;
};

export type EmergencyAsked = {
  case: (null) | (string);
  region: ("clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot") | (null);
  side: ("left" | "right") | (null);
  plan: ("unknown") | (null) | (string);
  by: (null) | (string);
  theatre: (null) | (string);
  surgeon: (null) | (string);
  gone: (null) | (string);
  take: (string)[];
};

export type EmergencyOnRecord = {
  caseId: string;
  neededAt: string;
  happenedAt: string;
  recordedAt: string;
  recordedBy: string;
  sets: (EmergencySet)[];
  packs: ({
    itemId: string;
    quantity: number;
  })[];
  hits: (Hit)[];
  questions: (EmergencyQuestion)[];
};

export type EmergencyOption = {
  sets: (SetInReach)[];
  packs: ({
    stockId: string;
    quantity: number;
  })[];
  time: "unknown" | "now" | "inTime" | "perhaps" | "late";
  readyMinutes: (null) | (TimeSpread);
  takesFrom: (string)[];
  asWished: boolean;
};

export type EmergencyQuestion = {
  id: string;
  kind: "count" | "plan" | "againstRecord";
  setCode: (null) | (string);
  openedAt: string;
  closed: (null) | ({
    at: string;
    by: string;
  });
};

export type EmergencySet = {
  setId: string;
  code: string;
  step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
  heldBecause: (null) | (string);
  takenAt: string;
  gone: (null) | ({
    at: string;
    recordedAt: string;
    by: string;
  });
  against: (string)[];
};

export type ExchangeView = {
  seen: {
    digest: string;
    marks: (string)[];
  };
  understood: string;
  sheets: (string)[];
  sheet: (null) | (string);
  isText: boolean;
  fileColumns: (FileColumn2)[];
  columns: (ColumnView)[];
  undecided: (string)[];
  open: {
    dateOrder: boolean;
    decimal: boolean;
    empty: boolean;
    more: boolean;
    fewer: boolean;
  };
  newMakers: (string)[];
  questions: (QuestionView)[];
  problems: (ProblemView)[];
  moreProblems: number;
  lines: (LineView)[];
  moreLines: number;
  counts: {
    new: number;
    changed: number;
    unchanged: number;
    leftOut: number;
  };
  notes: (string)[];
  before: (null) | (string);
  done: (null) | ({
    importId: string;
    added: number;
    changed: number;
  });
};

export type FactSeen = {
  fact: string;
  value: (boolean) | (null) | (string) | (number);
};

export type FailedLoad = {
  id: string;
  number: string;
  steriliser: string;
  decidedAt: string;
  decidedBy: string;
  reason: string;
  of: "other" | "biological";
  since: (null) | ({
    id: string;
    number: string;
  });
  until: (null) | ({
    id: string;
    number: string;
  });
  loads: ({
    id: string;
    number: string;
    state: "awaitingAcceptance" | "makingUp" | "running" | "accepted" | "rejected" | "undone";
    startedAt: string;
  })[];
  packs: (DoubtedPack)[];
};

export type FeedOnFile = {
  id: string;
  owner: {
    id: string;
    name: string;
  };
  kind: "loans" | "theatre" | "sterileServices";
  theatre: (null) | (string);
  name: string;
  madeAt: string;
  lastReadAt: (null) | (string);
};

export type FhirJson = {
  resourceType: string;
};

export type FigureTable = {
  name: string;
  caption: string;
  columns: ({
    header: string;
    kind: "number" | "text" | "share" | "pence";
  })[];
  rows: (((null) | (string) | (number))[])[];
};

export type FileColumn = {
  number: number;
  heading: (null) | (string);
  aboutThePatient: boolean;
};

export type FileColumn2 = {
  number: number;
  heading: (null) | (string);
  aboutThePatient: boolean;
};

export type Finding = {
  from: ({
    kind: "rule";
    id: string;
    code: string;
  }) | ({
    kind: "exception";
    id: string;
  }) | ({
    kind: "noRule";
  });
  answer: "met" | "notMet" | "missing";
  severity: "note" | "stops" | "caution";
  sentence: string;
  source: (null) | ({
    kind: "standard";
    number: string;
    clause: (null) | (string);
  }) | ({
    kind: "instructionsForUse";
    maker: string;
    document: string;
  }) | ({
    kind: "localPolicy";
    owner: string;
    date: string;
  }) | ({
    kind: "commonPractice";
  });
  seen: (FactSeen)[];
  missing: (string)[];
  outranked: boolean;
};

export type FirstStep = ({
  needByAt: (null) | (string);
  cases: ({
    caseId: string;
    reference: string;
  })[];
  kind: "promiseNotKept";
  set: {
    id: string;
    code: string;
  };
  why: ({
    kind: "held";
    set: DaySetFacts;
  }) | ({
    kind: "outOfService";
  }) | ({
    kind: "pastUseBy";
    useBy: string;
  }) | ({
    kind: "others";
    to: (string)[];
    because: "notReady" | "notSuitable" | "betterPlan";
  });
}) | ({
  needByAt: (null) | (string);
  cases: ({
    caseId: string;
    reference: string;
  })[];
  kind: "shortStops";
  set: DaySetFacts;
  stop: Stop;
}) | ({
  needByAt: (null) | (string);
  cases: ({
    caseId: string;
    reference: string;
  })[];
  kind: "decideShort";
  set: DaySetFacts;
}) | ({
  needByAt: (null) | (string);
  cases: ({
    caseId: string;
    reference: string;
  })[];
  kind: "acceptLoad";
  load: {
    id: string;
    number: string;
  };
  sets: (DaySetFacts)[];
}) | ({
  needByAt: (null) | (string);
  cases: ({
    caseId: string;
    reference: string;
  })[];
  kind: "closeCount";
  set: DaySetFacts;
}) | ({
  needByAt: (null) | (string);
  cases: ({
    caseId: string;
    reference: string;
  })[];
  kind: "hurry";
  set: DaySetFacts;
  act: "liftHold" | "count" | "pack" | "load" | "receive" | "beginWash" | "endWash" | "decideShort" | "unload" | "accept";
  wanted: WantedSet;
}) | ({
  needByAt: (null) | (string);
  cases: ({
    caseId: string;
    reference: string;
  })[];
  kind: "hurryBetween";
  turned: TurnedBetween;
}) | ({
  needByAt: (null) | (string);
  cases: ({
    caseId: string;
    reference: string;
  })[];
  kind: "shortOf" | "noSetFree";
  line: CaseLine;
}) | ({
  needByAt: (null) | (string);
  cases: ({
    caseId: string;
    reference: string;
  })[];
  kind: "confirmPlan" | "plan";
});

export type Found = ({
  kind: "lot";
  itemId: string;
  name: string;
  lot: string;
  receivedAt: string;
}) | ({
  kind: "item";
  itemId: string;
  code: string;
  name: string;
}) | ({
  kind: "set";
  setId: string;
  code: string;
}) | ({
  kind: "load";
  loadId: string;
  number: string;
}) | ({
  kind: "case";
  caseId: string;
  reference: string;
});

export type FrozenPlan = {
  status: "confirmed" | "superseded";
  confirmedBy: string;
  confirmedAt: string;
  id: string;
  caseId: string;
  version: number;
  construct: {
    region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
    limb: ("left" | "right") | (null);
    bone: "normal" | "poor" | "notStated";
    plates: ({
      key: string;
      plateItemId: string;
      zone: (null) | ({
        fromUm: number;
        toUm: number;
      });
      principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
      fills: { [name: string]: ({
        purpose: "empty";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "neutral";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "offset";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "lag";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "locked";
      }) | ({
        purpose: "temporaryWire";
        wireItemId: string;
      }) };
    })[];
    freeScrews: ({
      washerItemId: (null) | (string);
      screwFamily: string;
      cortices: 1 | 2;
      length: ({
        kind: "exact";
        mm: number;
      }) | ({
        kind: "spread";
        meanMm: number;
        sdMm: number;
        sourceNote: (null) | (string);
      }) | ({
        kind: "notStated";
      });
      acceptLongerMm: number;
      key: string;
    })[];
    sharedLengthSdMm: (null) | (number);
    note: (null) | (string);
  };
  writtenBy: string;
  writtenAt: string;
  revision: number;
};

export type GapOnScreen = ({
  caseId: string;
  reference: string;
  startsAt: string;
  caseDate: string;
  steps: (string)[];
  kind: "piece";
  what: "plate" | "screw" | "washer" | "wire";
  accepts: (string)[];
  pieces: number;
  takenEarlier: boolean;
  coming: (CaseOrder)[];
}) | ({
  caseId: string;
  reference: string;
  startsAt: string;
  caseDate: string;
  steps: (string)[];
  kind: "chain";
  chain: "drilling" | "lagDrilling" | "tapping" | "countersinking" | "measuring" | "driving" | "wiring";
  lacking: ("tap" | "countersink" | "driver" | "handle" | "torqueLimiter" | "pilotBit" | "sleeve" | "glidingBit" | "glidingSleeve" | "insertSleeve" | "gauge" | "glidingHandle" | "wireDriver")[];
  coming: (CaseOrder)[];
});

export type GivenSet = {
  code: string;
  there: boolean;
  readyAt: string;
  afterCase: (null) | (string);
  tight: boolean;
};

export type HeldLine = {
  found: (null) | (number);
  unsound: number;
  condition: "blunt" | "sound" | "bent" | "corroded" | "stained" | "markingGone" | "boreWorn";
  id: string;
  itemId: string;
  layer: number;
  row: number;
  slot: number;
  rackItemId: (null) | (string);
  expected: number;
  minimum: number;
  mustHaveClass: 4 | 3 | 1 | 2;
  substitutes: (string)[];
};

export type HeldReason = {
  because: "wrapWetTornOrUnsealed" | "wrongLabel" | "disputedCount" | "recall" | "dirtyAfterWash" | "indicatorOrCycleFailed" | "loadUnknown" | "loanWithoutDeclaration" | "mustHaveDamaged";
  note: (null) | (string);
  at: string;
  personId: (null) | (string);
  by: (null) | (string);
};

export type HeldSet = {
  id: string;
  code: string;
  configuration: string;
  since: string;
  heldFrom: ("inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore") | (null);
  place: (null) | (string);
  withdrawn: boolean;
  reasons: (HeldReason)[];
  after: ("inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore")[];
};

export type Hit = {
  caseId: string;
  reference: string;
  startsAt: string;
  tentative: boolean;
  loses: ({
    setId: string;
    code: string;
  })[];
  instead: ({
    kind: "sets";
    sets: ({
      setId: string;
      code: string;
      there: boolean;
      readyAt: string;
    })[];
    pouches: (string)[];
  }) | ({
    kind: "none";
    couldStartAt: (null) | (string);
  }) | ({
    kind: "notPlanned";
  });
};

export type ImportInList = {
  id: string;
  list: "configurations" | "deliveries" | "sets" | "stock" | "people" | "holes" | "catalogue";
  at: string;
  by: string;
  added: number;
  changed: number;
  unchanged: number;
  takenBack: (null) | ({
    at: string;
    by: string;
    left: ({
      name: string;
      because: string;
    })[];
  });
};

export type ImportLine = {
  row: number;
  kind: "new" | "moved" | "unchanged";
  reference: (null) | (string);
  caseId: (null) | (string);
  startsAt: string;
  when: string;
  before: (null) | (string);
  theatre: string;
  what: string;
  surgeon: string;
  urgency: string;
  remarks: (string)[];
};

export type IndicatorOnFile = {
  id: string;
  position: (null) | (string);
  readBy: (null) | (string);
  readAt: (null) | (string);
  kind: "chemical" | "biological" | "airRemoval" | "printedRecord";
  lot: (null) | (string);
  useBy: (null) | (string);
  result: "pending" | "passed" | "failed";
};

export type IssuedThing = {
  pickId: string;
  name: string;
  setId: (null) | (string);
  stockId: (null) | (string);
  itemId: (null) | (string);
  packId: (null) | (string);
  lot: (null) | (string);
  quantity: number;
  stillOut: number;
  held: boolean;
  atTable: (null) | (PackAtTable);
  returns: ({
    outcome: "notFound" | "returnedUnopened" | "cameBack" | "opened" | "damaged";
    quantity: number;
    note: (null) | (string);
    by: string;
    at: string;
  })[];
};

export type ItemTableRow = {
  pieces: (null) | (number);
  free: (null) | (number);
  heaps: number;
  next: (null) | ({
    lot: (null) | (string);
    useBy: (null) | (string);
    state: "good" | "soon" | "none" | "past";
    place: string;
  });
  past: number;
  soon: number;
  held: number;
  none: number;
  consignment: number;
  itemId: string;
  code: string;
  name: string;
  maker: string;
  status: "current" | "withdrawn" | "recalled";
  text: string;
};

export type ItemUse = {
  itemId: string;
  configurations: ({
    id: string;
    code: string;
    name: string;
    status: string;
    expected: number;
    as: "line" | "substitute";
  })[];
  sets: ({
    id: string;
    code: string;
    step: string;
    place: (null) | (string);
    found: (null) | (number);
    expected: number;
  })[];
  stock: ({
    id: string;
    form: string;
    lot: (null) | (string);
    useBy: (null) | (string);
    quantity: (null) | (number);
    owner: string;
    place: string;
    heldBecause: (null) | (string);
  })[];
  plans: ({
    id: string;
    caseId: string;
    reference: string;
    status: string;
    caseDate: string;
  })[];
};

export type JsonLines = {
  jsonLines: true;
};

export type KitCheckRecorded = {
  id: string;
  case: {
    id: string;
    reference: string;
  };
  person: {
    id: string;
    name: string;
  };
  beganAt: string;
  closedAt: (null) | (string);
  abandonedAt: (null) | (string);
};

export type KitDifference = {
  key: string;
  picked: number;
  seen: number;
};

export type KitLine = {
  key: string;
  kind: "set" | "pack";
  name: string;
  detail: string;
  role: "open" | "hold";
  wanted: number;
  picked: (PickedThing)[];
  pickedPieces: number;
  place: (null) | ({
    name: string;
    metres: number;
  });
  useBy: (null) | (string);
  readyAt: (null) | (string);
  problems: (string)[];
  alike: ({
    setId: string;
    code: string;
    place: (null) | (string);
  })[];
};

export type KitPlace = {
  id: string;
  name: string;
  metres: number;
};

export type KitScreen = {
  stage: "notBegun" | "picking" | "picked" | "checked" | "issued" | "inTheatre" | "back" | "toPutBack" | "cancelled";
  revision: number;
  planVersion: (null) | (number);
  confirmedVersion: (null) | (number);
  listMadeAt: (null) | (string);
  listMadeBy: (null) | (string);
  pickedNote: (null) | (string);
  hidden: boolean;
  lines: (KitLine)[];
  toPutBack: (PickedThing)[];
  fetchedLater: (PickedThing)[];
  steps: ({
    act: "picked" | "checked" | "issued" | "taken";
    by: string;
    at: string;
  })[];
};

export type KitSummary = {
  open: (string)[];
  hold: (string)[];
  packs: number;
  shorts: ({
    name: string;
    steps: string;
    sentence: string;
  })[];
  lengthCover: (null) | (number);
  tone: "unknown" | "good" | "attention" | "stop";
  word: string;
  sentence: string;
};

export type KitVerdict = ({
  kind: "ready";
}) | ({
  kind: "readyAt";
  at: string;
  late: boolean;
  setCodes: (string)[];
  shortUntilThen: (string)[];
}) | ({
  kind: "short";
}) | ({
  kind: "notEstablished";
}) | ({
  kind: "planStopped";
});

export type LabelledPack = {
  number: string;
  code: string;
  name: string;
  version: (null) | (number);
  lot: (null) | (string);
  barrier: "container" | "pouch" | "wrap";
  packedBy: string;
  packedAt: string;
  massGrams: (null) | (number);
  state: "opened" | "awaitingAcceptance" | "closed" | "sterile" | "undone" | "inLoad";
  useBy: (null) | (string);
  short: (null) | ({
    lines: ({
      lineId: string;
      itemId: string;
      mustHaveClass: 4 | 3 | 1 | 2;
      short: number;
      belowMinimum: number;
    })[];
    stops: (({
      stopped: ({
        purpose: "plate" | "neutral" | "offset" | "lag" | "locked" | "temporaryWire";
        stopped: number;
        of: number;
      })[];
      shortItems: (string)[];
      kind: "case";
      caseId: string;
      reference: string;
      startsAt: string;
    }) | ({
      stopped: ({
        purpose: "plate" | "neutral" | "offset" | "lag" | "locked" | "temporaryWire";
        stopped: number;
        of: number;
      })[];
      shortItems: (string)[];
      kind: "construct";
      name: string;
    }))[];
    substitutes: ({
      lineId: string;
      itemId: string;
      from: ({
        kind: "pouch";
        stockId: string;
      }) | ({
        kind: "inSet";
        lineId: string;
      });
    })[];
    forCase: (null) | ({
      id: string;
      reference: string;
    });
  });
  openQuestions?: number;
};

export type LackingSet = {
  set: DaySetFacts;
  counting: (string)[];
  askingForKind: (string)[];
};

export type LastScan = {
  id: string;
  text: string;
  how: "scanner" | "camera" | "typed";
  by: string;
  verdict: "unknown" | "refused" | "ask" | "understood" | "already";
  meaning: ({
    kind: "set";
    setId: string;
    code: string;
  }) | ({
    kind: "pack";
    packId: string;
    number: string;
    copy: (null) | (number);
    setId: (null) | (string);
    code: string;
    itemId: (null) | (string);
    lot: (null) | (string);
    useBy: (null) | (string);
    loadId: (null) | (string);
    state: "opened" | "awaitingAcceptance" | "closed" | "sterile" | "undone" | "inLoad";
    short: boolean;
  }) | ({
    kind: "item";
    itemId: string;
    code: string;
    name: string;
    gtin: (null) | (string);
    lot: (null) | (string);
    serial: (null) | (string);
    useBy: (null) | (string);
    quantity: (null) | (number);
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "load";
    loadId: string;
    number: string;
    state: "awaitingAcceptance" | "makingUp" | "running" | "accepted" | "rejected" | "undone";
  }) | ({
    kind: "place";
    placeId: string;
    name: string;
  }) | ({
    kind: "stock";
    stockId: string;
    itemId: string;
    code: string;
    lot: (null) | (string);
    useBy: (null) | (string);
    placeId: string;
  }) | ({
    kind: "sheet";
    number: string;
    setId: string;
    code: string;
    versionId: string;
    setRevision: number;
  }) | ({
    kind: "case";
    caseId: string;
    reference: string;
  }) | ({
    kind: "refused";
    because: "oldLabel" | "noSuchCopy" | "packOpened" | "packUndone" | "oldSheet" | "faulty" | "ambiguous" | "severalThings" | "patient";
    setId: (null) | (string);
    packId: (null) | (string);
    candidates: (string)[];
    faults: (string)[];
  }) | ({
    kind: "unknown";
    text: string;
    gtin: (null) | (string);
  });
  sentence: string;
  reply: ("another" | "same") | (null);
  doneAt: string;
  enteredAt: string;
  late: boolean;
};

export type LedgerRecord = {
  seq: number;
  doneAt: string;
  enteredAt: string;
  person: (null) | ({
    id: string;
    name: string;
  });
  action: string;
  subject: Subject;
  detail: { [name: string]: unknown };
  detailText: string;
  hash: string;
  corrections: (Correction)[];
  hidden: boolean;
  corrects: (null) | ({
    seq: number;
    action: string;
    doneAt: string;
  });
};

export type LenderFigures = {
  punctuality: {
    n: number;
    onTime: number;
    medianLateMinutes: (null) | (number);
    worstLateMinutes: (null) | (number);
    notEstablished: number;
    overdue: number;
  };
  unused: {
    n: number;
    unused: number;
  };
};

export type LenderOnFile = {
  id: string;
  name: string;
  contact: (null) | (string);
  phone: (null) | (string);
  email: (null) | (string);
  address: (null) | (string);
  note: (null) | (string);
  inUse: boolean;
  revision: number;
  loans: ({
    id: string;
    number: string;
    state: string;
    askedFor: string;
    askedAt: string;
  })[];
  figures: LenderFigures;
};

export type LengthCoverFigure = {
  input: unknown;
  cover: (null) | (number);
  target: number;
  method: string;
  assumptions: (string)[];
  topUp: (null) | (({
    itemId: (null) | (string);
    family: string;
    lengthUm: number;
    quantity: number;
    inStoreAs: ({
      stockId: string;
      quantity: number;
    })[];
  })[]);
  limitedBy: ({
    family: string;
    lengthUm: number;
  })[];
};

export type Light = {
  name: string;
  state: "unknown" | "well" | "look" | "wrong";
  says: string;
  remedy: (null) | (string);
};

export type LineSet = {
  setId: (null) | (string);
  code: string;
  promised: boolean;
  readyAt: (null) | (string);
  there: boolean;
  afterCase: (null) | (string);
  marginMinutes: (null) | (number);
  tight: boolean;
};

export type LineView = {
  id: string;
  row: number;
  kind: "new" | "unchanged" | "changed";
  name: string;
  changes: (string)[];
  remarks: (string)[];
};

export type LinkVerdict = {
  itemIds: (string)[];
  holeId: (null) | (string);
  verdict: Verdict;
};

export type ListChange = ({
  kind: "booked";
  startsAt: string;
}) | ({
  kind: "moved";
  from: {
    theatreId: string;
    startsAt: string;
    endsAt: string;
  };
  to: {
    theatreId: string;
    startsAt: string;
    endsAt: string;
  };
  lostSets: (string)[];
}) | ({
  kind: "urgency";
  from: "booked" | "soon" | "today" | "now";
  to: "booked" | "soon" | "today" | "now";
}) | ({
  kind: "cancelled";
  because: string;
}) | ({
  kind: "putBack";
}) | ({
  kind: "promised";
  setCode: string;
}) | ({
  kind: "freed";
  setCode: string;
}) | ({
  kind: "planned";
  given: (string)[];
  taken: (string)[];
}) | ({
  kind: "planConfirmed";
  version: number;
}) | ({
  kind: "other";
  action: "book-case" | "cancel-case" | "change-urgency" | "confirm-plan" | "free-set" | "move-case" | "plan-sets" | "promise-set" | "put-case-back";
});

export type ListChanges = {
  own: boolean;
  since: (null) | (string);
  upTo: number;
  cases: (ChangedCase)[];
  count: number;
  more: boolean;
  names: {
    theatres: ({
      id: string;
      name: string;
    })[];
    sets: ({
      id: string;
      name: string;
    })[];
  };
};

export type ListFollowed = {
  madeAt: string;
  madeBy: (null) | (string);
};

export type ListedCase = {
  plan: {
    confirmedVersion: (null) | (number);
    draftVersion: (null) | (number);
  };
  id: string;
  reference: string;
  theatreId: string;
  theatre: string;
  caseDate: string;
  startsAt: string;
  endsAt: string;
  region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
  limb: "left" | "right";
  surgeonId: string;
  surgeon: string;
  urgency: "booked" | "soon" | "today" | "now";
  revision: number;
  cancelled: (null) | ({
    at: string;
    because: string;
  });
};

export type ListedException = {
  exception: {
    version: number;
    status: "withdrawn" | "draft" | "inForce";
    draftedBy: (null) | (string);
    approvedBy: (null) | (string);
    inForceFrom: (null) | (string);
    inForceUntil: (null) | (string);
    withdrawalAskedBy: (null) | (string);
    withdrawnBy: (null) | (string);
    id: string;
    relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
    firstItemId: string;
    secondItemId: string;
    answer: "allow" | "deny";
    sentence: string;
    source: ({
      kind: "standard";
      number: string;
      clause: (null) | (string);
    }) | ({
      kind: "instructionsForUse";
      maker: string;
      document: string;
    }) | ({
      kind: "localPolicy";
      owner: string;
      date: string;
    }) | ({
      kind: "commonPractice";
    });
  };
  first: {
    code: string;
    name: string;
  };
  second: {
    code: string;
    name: string;
  };
};

export type ListedSession = {
  id: string;
  theatreId: string;
  date: string;
  startsAt: string;
  endsAt: string;
  surgeon: (null) | ({
    id: string;
    name: string;
  });
  revision: number;
};

export type ListedTheatre = {
  id: string;
  name: string;
  leadMinutes: (null) | (number);
  sessions: (ListedSession)[];
};

export type LoadFacts = {
  packs: (LoadedPack)[];
  indicators: (IndicatorOnFile)[];
  cycle: (null) | ({
    programme: {
      name: string;
      bandMillicelsius: [number, (null) | (number)];
      holdSeconds: number;
    };
    readings: number;
    loggedFromSecond: number;
    loggedToSecond: number;
    rule: "left" | "trapezoid";
    longestGapSeconds: number;
    missing: (string)[];
    dose: (null) | ({
      a0Seconds: number;
      f0Minutes: number;
      f0ReferenceC: number;
      loggedSeconds: number;
      lowestC: number;
      highestC: number;
      holding: (null) | ({
        outcome: "notEstablished" | "held" | "notHeld";
        longestSeconds: number;
        requiredSeconds: number;
        fromSecond: (null) | (number);
        toSecond: (null) | (number);
        lowestC: (null) | (number);
        highestC: (null) | (number);
      });
    });
    importedBy: string;
    importedAt: string;
    fileName: (null) | (string);
    understood: (string)[];
  });
  state: "awaitingAcceptance" | "makingUp" | "running" | "accepted" | "rejected" | "undone";
  requiredIndicators: ("chemical" | "biological" | "airRemoval" | "printedRecord")[];
  implantsAwaitBiological: boolean;
  ranOn: (null) | (string);
};

export type LoadOnFile = {
  id: string;
  number: string;
  revision: number;
  state: "awaitingAcceptance" | "makingUp" | "running" | "accepted" | "rejected" | "undone";
  steriliser: {
    id: string;
    name: string;
  };
  programmeName: string;
  programme: (null) | ({
    name: string;
    bandMillicelsius: [number, (null) | (number)];
    holdSeconds: number;
  });
  cycleNumber: (null) | (string);
  madeUp: Act;
  started: (null) | (Act);
  ended: (null) | (Act);
  decided: (null) | (Act);
  reason: (null) | (string);
  exception: (null) | ({
    caseId: string;
    caseReference: string;
    packIds: (string)[];
    reason: string;
    lead: {
      id: string;
      name: string;
    };
    surgeon: {
      id: string;
      name: string;
    };
    at: string;
  });
  facts: LoadFacts;
  findings: (AcceptanceFinding)[];
  readings: (CycleReading)[];
  importedBy: (null) | (string);
};

export type LoadRecorded = {
  id: string;
  number: string;
  state: "awaitingAcceptance" | "makingUp" | "running" | "accepted" | "rejected" | "undone";
  steriliser: {
    id: string;
    name: string;
  };
  programme: string;
  cycleNumber: (null) | (string);
  madeUpAt: string;
  startedAt: (null) | (string);
  endedAt: (null) | (string);
  decidedAt: (null) | (string);
  revision: number;
};

export type LoadedPack = {
  id: string;
  number: string;
  kind: "set" | "pouch";
  setId: (null) | (string);
  turnId: (null) | (string);
  itemId: (null) | (string);
  lot: (null) | (string);
  name: string;
  barrier: string;
  grams: (null) | (number);
  state: "opened" | "awaitingAcceptance" | "closed" | "sterile" | "undone" | "inLoad";
  short: boolean;
  forCaseId: (null) | (string);
  stockId: (null) | (string);
  putInAt: string;
  unloadedAs: ("sound" | "wet" | "torn" | "unsealed") | (null);
  unloadedAt: (null) | (string);
  unloadedBy: (null) | (string);
  implants: "yes" | "no" | "notEstablished";
};

export type LoanClaim = {
  id: string;
  line: string;
  stage: "out" | "in";
  kind: "notFound" | "damaged";
  quantity: number;
  lastThere: {
    step: "list" | "arrivalCount" | "benchCount";
    at: (null) | (string);
  };
  words: string;
  openedBy: string;
  openedAt: string;
  state: "withdrawn" | "open" | "agreed" | "disputed";
  saidBy: (null) | (string);
  saidWords: (null) | (string);
};

export type LoanLine = {
  id: string;
  tray: number;
  itemId: (null) | (string);
  code: (null) | (string);
  gtin: (null) | (string);
  name: string;
  quantity: number;
  implant: (boolean) | (null);
  mustHaveClass: (null) | (number);
  used: number;
  cameIn: (null) | (Pieces);
  goesOut: (null) | (Pieces);
  lackedOnArrival: (null) | (number);
  damagedOnArrival: (null) | (number);
  lackingOnReturn: (null) | (number);
  damagedHere: (null) | (number);
};

export type LoanNext = ({
  do: "recordAnswer" | "callOff" | "bringList" | "recordArrival" | "lookAtPapers" | "weigh" | "tag";
}) | ({
  do: "countIn" | "checkIn" | "settleIn" | "takeIn" | "sendBack";
}) | ({
  do: "ask";
  question: "acceptLate" | "useWithout";
}) | ({
  do: "awaitAnswer";
  question: "acceptLate" | "useWithout";
}) | ({
  do: "getPapers" | "ordinaryTurn" | "beginReturn";
}) | ({
  do: "decontaminate";
  tray: number;
}) | ({
  do: "countOut" | "checkOut" | "settleOut" | "weighOut" | "declare" | "handOver";
}) | ({
  do: "claim" | "settleClaims" | "nothing";
});

export type LoanOnBoard = {
  id: string;
  number: string;
  state: "refused" | "confirmed" | "asked" | "calledOff" | "here" | "inService" | "goingBack" | "goneBack";
  next: LoanNext;
  lender: string;
  askedFor: string;
  caseReference: (null) | (string);
  neededAt: (null) | (string);
  dueAt: (null) | (string);
  arrivedAt: (null) | (string);
  overdue: boolean;
  lateMinutes: (null) | (number);
  late: boolean;
  backBy: (null) | (string);
  held: (string)[];
};

export type LoanQuestion = {
  id: string;
  kind: "acceptLate" | "useWithout";
  askedOf: {
    id: string;
    name: string;
  };
  askedBy: string;
  askedAt: string;
  words: string;
  answer: ("yes" | "no") | (null);
  answerWords: (null) | (string);
  answeredAt: (null) | (string);
};

export type LoanTray = {
  tray: number;
  tag: (null) | (string);
  gramsIn: (null) | (number);
  gramsOut: (null) | (number);
  touched: boolean;
  set: (null) | ({
    id: string;
    code: string;
    step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
    heldBecause: (null) | (string);
    withdrawn: boolean;
  });
};

export type LookAlikeOnShelf = {
  itemId: string;
  code: string;
  name: string;
  because: "otherSide" | "nextLength" | "nextDiameter" | "codeReadsAlike";
  places: ({
    id: string;
    name: string;
  })[];
};

export type LostPromise = {
  caseId: string;
  reference: string;
  setId: string;
  setCode: string;
};

export type LotAtRisk = {
  stockId: string;
  itemId: string;
  item: string;
  lot: (null) | (string);
  place: string;
  useBy: string;
  units: number;
  pastUseBy: boolean;
  expectedLost: number;
  likelyLost: number;
  worthPence: (null) | (number);
  sentence: string;
  neverUsed: boolean;
};

export type LotBalance = {
  received: number;
  implanted: Bounds;
  wasted: Bounds;
  held: Bounds;
  returned: Bounds;
  unaccounted: Bounds;
  notFound: Bounds;
  setAside: Bounds;
  lotLost: Bounds;
};

export type LotNotStated = {
  itemId: string;
  code: string;
  name: string;
  maker: string;
  lot: (null) | (string);
  onShelf: number;
  deliveredBy: (string)[];
};

export type LotSeen = {
  trace: {
    lot: string;
    heaps: ({
      stockId: string;
      quantity: number;
    })[];
    firstHereAt: (null) | (string);
    inDoubt: (string)[];
    slots: ({
      setId: string;
      bounds: (null) | (SlotBounds);
    })[];
    balance: (null) | (LotBalance);
  };
  cases: CasesSeen;
  toHold: {
    sets: number;
    heaps: number;
  };
  sets: { [name: string]: NamedSet };
  item: {
    id: string;
    code: string;
    name: string;
  };
  heaps: { [name: string]: NamedHeap };
  unknownLots: (NamedSet)[];
};

export type LotTableRow = {
  id: string;
  pieces: (null) | (number);
  free: (null) | (number);
  turn: (null) | (number);
  turnWords: string;
  form: string;
  lot: (null) | (string);
  useBy: (null) | (string);
  state: "good" | "soon" | "none" | "past";
  owner: string;
  place: string;
  held: (null) | (string);
  itemId: string;
  code: string;
  name: string;
  maker: string;
  status: "current" | "withdrawn" | "recalled";
  text: string;
};

export type LowScrew = {
  itemId: string;
  planned: number;
  inSets: (null) | (number);
  minimum: number;
  sterile: number;
  unsterile: number;
  references: (string)[];
};

export type LyingThere = {
  setsThere: number;
  stockThere: number;
  sets: ({
    id: string;
    code: string;
    configuration: string;
    step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
    heldBecause: (null) | (string);
    since: string;
  })[];
  stock: ({
    id: string;
    itemId: string;
    item: string;
    form: string;
    lot: (null) | (string);
    useBy: (null) | (string);
    quantity: (null) | (number);
    heldBecause: (null) | (string);
    pouches: (string)[];
  })[];
};

export type MissingPieces = ({
  kind: "pieces";
  pieces: number;
  anyOf: (string)[];
  asked: (null) | (string);
}) | ({
  kind: "chain";
  anyOf: (({
    itemId: string;
    pieces: number;
  })[])[];
  slots: ("tap" | "countersink" | "driver" | "handle" | "torqueLimiter" | "pilotBit" | "sleeve" | "glidingBit" | "glidingSleeve" | "insertSleeve" | "gauge" | "glidingHandle" | "wireDriver")[];
});

export type MissingValue = {
  path: ((string) | (number))[];
  what: string;
};

export type NamedCase = {
  id: string;
  reference: string;
  date: string;
  surgeon: (null) | (string);
};

export type NamedHeap = {
  id: string;
  place: string;
  useBy: (null) | (string);
  owner: string;
  heldBecause: (null) | (string);
};

export type NamedSet = {
  id: string;
  code: string;
  step: string;
};

export type NearMiss = {
  slot: "tap" | "countersink" | "driver" | "handle" | "torqueLimiter" | "pilotBit" | "sleeve" | "glidingBit" | "glidingSleeve" | "insertSleeve" | "gauge" | "glidingHandle" | "wireDriver";
  itemId: string;
  from: ({
    kind: "set";
    setId: string;
  }) | ({
    kind: "pack";
    stockId: string;
  });
  answers: (LinkVerdict)[];
};

export type Needs = {
  steps: (Step)[];
  pieces: (PieceNeed)[];
  chains: (ChainNeed)[];
  faults: (PlanFault)[];
};

export type NotEstablished = {
  needId: string;
  steps: (string)[];
  answers: (LinkVerdict)[];
  lengthNotStated: boolean;
};

export type NoticeOnFile = {
  id: string;
  content: ({
    kind: "shortageFixed";
    detail: {
      setCode: string;
      itemName: string;
      quantity: number;
      by: string;
    };
  }) | ({
    kind: "shortDecisionAsked";
    detail: {
      setCode: string;
      oneCase: boolean;
      by: string;
    };
  }) | ({
    kind: "promisedSetHeld";
    detail: {
      setCode: string;
      because: "wrapWetTornOrUnsealed" | "wrongLabel" | "disputedCount" | "recall" | "dirtyAfterWash" | "indicatorOrCycleFailed" | "loadUnknown" | "loanWithoutDeclaration" | "mustHaveDamaged";
      caseReference: string;
      by: string;
    };
  }) | ({
    kind: "promisedSetWithdrawn";
    detail: {
      setCode: string;
      because: string;
      caseReference: string;
      by: string;
    };
  }) | ({
    kind: "holdLifted";
    detail: {
      setCode: string;
      to: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
      reason: string;
      by: string;
    };
  }) | ({
    kind: "asideSettled";
    detail: {
      itemName: string;
      quantity: number;
      condition: "blunt" | "sound" | "bent" | "corroded" | "stained" | "markingGone" | "boreWorn";
      outcome: "repaired" | "discarded" | "notRepairable";
      by: string;
    };
  }) | ({
    kind: "caseMoved";
    detail: {
      caseReference: string;
      from: string;
      to: string;
      lostSets: (string)[];
      by: string;
    };
  }) | ({
    kind: "caseUrgencyChanged";
    detail: {
      caseReference: string;
      from: "booked" | "soon" | "today" | "now";
      to: "booked" | "soon" | "today" | "now";
      by: string;
    };
  }) | ({
    kind: "caseCancelled";
    detail: {
      caseReference: string;
      because: string;
      by: string;
    };
  }) | ({
    kind: "setTakenForEmergency";
    detail: {
      caseReference: string;
      sets: (string)[];
      instead: (string)[];
      left: "sets" | "none" | "notPlanned";
      couldStartAt: (null) | (string);
      forCase: string;
      by: string;
    };
  }) | ({
    kind: "emergencyTook";
    detail: {
      forCase: string;
      sets: (string)[];
      hits: number;
      by: string;
    };
  }) | ({
    kind: "goneAgainstRecord";
    detail: {
      setCode: string;
      forCase: string;
      goneAt: string;
      by: string;
    };
  }) | ({
    kind: "kitToPutBack";
    detail: {
      caseReference: string;
      things: number;
      by: string;
    };
  }) | ({
    kind: "loanNews";
    detail: {
      number: string;
      lender: string;
      caseReference: (null) | (string);
      news: "refused" | "confirmed" | "asked" | "calledOff" | "goingBack" | "arrived" | "arrivedLate" | "papersMissing" | "takenLate" | "notTakenLate" | "usedWithout" | "notUsedWithout" | "unpacked";
      words: (null) | (string);
      by: string;
    };
  }) | ({
    kind: "loanQuestionAsked";
    detail: {
      number: string;
      question: "acceptLate" | "useWithout";
      words: string;
      by: string;
    };
  }) | ({
    kind: "loanQuestionAnswered";
    detail: {
      number: string;
      question: "acceptLate" | "useWithout";
      answer: "yes" | "no";
      words: string;
      by: string;
    };
  }) | ({
    kind: "caseSetsChanged";
    detail: {
      caseReference: string;
      given: (string)[];
      taken: (string)[];
      by: string;
    };
  }) | ({
    kind: "turnWanted";
    detail: {
      setCode: string;
      wantedBy: string;
      caseReference: string;
      by: string;
    };
  }) | ({
    kind: "recallOpened";
    detail: {
      number: string;
      what: string;
      rehearsal: boolean;
      tasks: ("lookAtCases" | "takeOffShelf" | "keepSetsHeld" | "know")[];
      by: string;
    };
  });
  href: (null) | (string);
  toldAt: string;
  seenAt: (null) | (string);
};

export type NoticeTerms = {
  zone: string;
  rule: ({
    kind: "clockHours";
    hours: number;
  }) | ({
    kind: "workingHours";
    hours: number;
  }) | ({
    kind: "workingDays";
    days: number;
    dueBy: "startOfWork" | "endOfWork";
  });
  hours: (null) | ({
    week: {
      monday: ({
        from: string;
        to: string;
      })[];
      tuesday: ({
        from: string;
        to: string;
      })[];
      wednesday: ({
        from: string;
        to: string;
      })[];
      thursday: ({
        from: string;
        to: string;
      })[];
      friday: ({
        from: string;
        to: string;
      })[];
      saturday: ({
        from: string;
        to: string;
      })[];
      sunday: ({
        from: string;
        to: string;
      })[];
    };
    holidays: (string)[];
  });
};

export type OpenDecision = {
  setId: string;
  code: string;
  configuration: string;
  names: { [name: string]: string };
  step: string;
  since: string;
  ask: ShortAsk;
  decision: (null) | ({
    kind: "backUps" | "withSubstitute" | "oneCase";
    reference: (null) | (string);
    reason: string;
    lapses: ("ended" | "caseOver" | "caseGone" | "anotherSurgeon")[];
  });
};

export type OpenEmergency = {
  caseId: string;
  reference: string;
  startsAt: string;
  recordedAt: string;
  open: ({
    kind: "count" | "plan" | "againstRecord";
    setCode: (null) | (string);
  })[];
};

export type OpenTheatreCount = {
  id: string;
  moment: "first" | "final";
  personId: string;
  by: string;
  beganAt: string;
  entries: (TheatreEntry)[];
  sets: ({
    id: string;
    code: string;
    lines: (CountLine)[];
    countedFirst: boolean;
  })[];
  addedBefore: ({
    key: string;
    name: string;
  })[];
  packs: ({
    itemId: string;
    name: string;
  })[];
};

export type OpenUseQuestion = {
  text: string;
  question: UseQuestion;
};

export type Order = {
  id: string;
  number: string;
  revision: number;
  state: "open" | "closed";
  maker: string;
  restock: string;
  proposedBy: string;
  orderedBy: string;
  orderedAt: string;
  expectedOn: (null) | (string);
  closedBy: (null) | (string);
  closedAt: (null) | (string);
  closedBecause: (null) | (string);
  lines: (OrderLine)[];
  parts: (OrderPart)[];
};

export type OrderEntry = {
  phase: "plate" | "temporaryWires" | "plainScrews" | "offsetScrews" | "lagScrews" | "lockingScrews";
  steps: (string)[];
  items: ({
    slot: "plate" | "screw" | "washer" | "wire" | "tap" | "countersink" | "driver" | "handle" | "torqueLimiter" | "pilotBit" | "sleeve" | "glidingBit" | "glidingSleeve" | "insertSleeve" | "gauge" | "glidingHandle" | "wireDriver";
    itemId: string;
    quantity: number;
    from: ({
      kind: "set";
      setId: string;
    }) | ({
      kind: "pack";
      stockId: string;
    });
  })[];
};

export type OrderLine = {
  id: string;
  itemId: string;
  code: string;
  gtin: (null) | (string);
  name: string;
  suppliedSterile: (boolean) | (null);
  ordered: number;
  packOf: number;
  unitPence: (null) | (number);
  here: number;
  sentence: string;
  changedBecause: (null) | (string);
};

export type OrderPart = {
  id: string;
  lineId: string;
  code: string;
  name: string;
  quantity: number;
  lot: (null) | (string);
  useBy: (null) | (string);
  place: string;
  by: string;
  doneAt: string;
};

export type OrderRow = {
  id: string;
  number: string;
  maker: string;
  state: "open" | "closed";
  orderedBy: string;
  orderedAt: string;
  expectedOn: (null) | (string);
  lines: number;
  ordered: number;
  here: number;
  pence: (null) | (number);
  closedBecause: (null) | (string);
};

export type Ordered = {
  orders: ({
    id: string;
    number: string;
    makerId: string;
    lines: number;
  })[];
};

export type OwnOpenCount = {
  id: string;
  setId: string;
  purpose: "check" | "count" | "settle";
  beganAt: string;
  entries: (BenchEntry)[];
};

export type OwnSession = {
  id: string;
  workstation: (null) | (string);
  method: string;
  beganAt: string;
  seenAt: string;
};

export type OwnerOnList = {
  id: string;
  name: string;
  inUse: boolean;
  onShelf: number;
  withCases: number;
  lines: number;
  pieces: number;
  uncertain: number;
  open: (null) | ({
    id: string;
    number: string;
    state: string;
  });
  lastSentAt: (null) | (string);
};

export type OwnerOnScreen = {
  id: string;
  name: string;
  inUse: boolean;
  waiting: (WaitingLine)[];
  uncertain: ({
    set: string;
    code: string;
    name: string;
    reference: (null) | (string);
    outcome: "notFound" | "implanted" | "openedNotImplanted" | "droppedOrDamaged" | "pastUseBy" | "setAside" | "foundAgain";
    pieces: number;
    lo: number;
    hi: number;
  })[];
  accounts: (AccountOnScreen)[];
  inSlots: ({
    code: string;
    name: string;
    lo: number;
    hi: number;
  })[];
};

export type PackAndLoad = {
  number: string;
  load: (null) | (string);
};

export type PackAtTable = {
  left: number;
  toJudge: number;
  said: ({
    outcome: "notFound" | "implanted" | "openedNotImplanted" | "returnedUnopened" | "droppedOrDamaged";
    lostAt: ("atOpening" | "during" | "atCount" | "comingBack") | (null);
    quantity: number;
  })[];
};

export type PackRecorded = {
  id: string;
  number: string;
  kind: "set" | "pouch";
  state: "opened" | "awaitingAcceptance" | "closed" | "sterile" | "undone" | "inLoad";
  setId: (null) | (string);
  itemId: (null) | (string);
  lot: (null) | (string);
  useBy: (null) | (string);
  loadId: (null) | (string);
  stockId: (null) | (string);
  packedBy: string;
  packedAt: string;
  revision: number;
};

export type PairVerdict = {
  number: number;
  holes: ({
    id: string;
    segment: "shaft" | "head";
    holeClass: "round" | "compressionSlot" | "threaded" | "polyaxialThreaded" | "twoZone" | "elongatedSlot" | "wireHole";
    alongUm: number;
    acrossUm: number;
    tiltAlongDegrees: number;
    tiltAcrossDegrees: number;
    openingUm: (null) | (number);
    seatUm: (null) | (number);
    plainSeat: ("spherical" | "conical") | (null);
    slotUm: (null) | (number);
    lockingFamily: (null) | (string);
    lockingConeDegrees: (null) | (number);
  })[];
  end: (null) | (number);
  relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
  outcome: "notEstablished" | "fits" | "doesNotFit";
  findings: (Finding)[];
};

export type PeriodRow = {
  id: string;
  name: string;
  at: string;
  what: string;
  packs: number;
  caseIds: (string)[];
};

export type PeriodTrace = {
  of: "person" | "steriliser";
  name: string;
  rows: (PeriodRow)[];
  cases: { [name: string]: NamedCase };
  more: boolean;
};

export type PersonOnFile = {
  leftAt: (null) | (string);
  hasPin: boolean;
  hasBadge: boolean;
  mustChangePassword: boolean;
  lastSeenAt: (null) | (string);
  id: string;
  name: string;
  role: "technician" | "decontaminationLead" | "surgeon" | "scrubPractitioner" | "stockKeeper" | "theatreManager" | "incidentLead" | "administrator";
  scope?: ("readLedger" | "readHealth" | "readPeople" | "managePeople" | "manageTokens" | "enrolWorkstation" | "changeSettings" | "sendToTheatre" | "receiveSet" | "checkCount" | "settleAside" | "sendWithSubstitute" | "sendShortAsTheatreLead" | "sendShortAsSurgeon" | "acceptLoad" | "askForImplantsEarly" | "manageSterilisers" | "holdSet" | "liftHold" | "withdrawSet" | "moveSet" | "managePlaces" | "openRecall" | "tracePerson" | "closeRecall" | "correctRecord" | "bookCase" | "keepTheatreList" | "keepTheatreSessions" | "promiseSets" | "takeForEmergency" | "closeEmergencyQuestion" | "settleGoneAgainstRecord" | "pickKit" | "checkKit" | "issueKit" | "takeKit" | "returnKit" | "countInTheatre" | "countInTheatreWith" | "recordUse" | "correctUse" | "recordDelay" | "keepReasons" | "workOnQuestion" | "settleAsNotFound" | "askForLoan" | "keepLoans" | "keepLenders" | "countLoan" | "proposeRestock" | "approveRestock" | "keepSupplyTerms" | "stateStockOwner" | "makeUsageOrder" | "approveUsageOrder" | "reconcileConsignment" | "receiveOrder" | "writePlan" | "keepCards" | "retireCards" | "keepProcedures" | "confirmPlan" | "draftFitRule" | "approveFitRule" | "setRemarks" | "countSet" | "openSet" | "addSet" | "writeConfiguration" | "approveConfiguration" | "receiveStock" | "moveStock" | "adjustStock" | "holdStock" | "countStock" | "decideStockCount" | "takeOut" | "editCatalogue" | "readHospital" | "ownAccount" | "keepFeeds" | "recordScan" | "washSet" | "refillSet" | "packSet" | "printLabel" | "makeUpLoad" | "rejectLoad" | "acknowledgeRecall" | "judgeBarrier" | "declareLoan")[];
};

export type PickLine = {
  phase: "plate" | "temporaryWires" | "plainScrews" | "offsetScrews" | "lagScrews" | "lockingScrews";
  slot: "plate" | "screw" | "washer" | "wire" | "tap" | "countersink" | "driver" | "handle" | "torqueLimiter" | "pilotBit" | "sleeve" | "glidingBit" | "glidingSleeve" | "insertSleeve" | "gauge" | "glidingHandle" | "wireDriver";
  itemId: string;
  quantity: number;
  steps: (string)[];
  from: ({
    kind: "set";
    setId: string;
  }) | ({
    kind: "pack";
    stockId: string;
  });
  role: "open" | "hold";
  backUpIn: (({
    kind: "set";
    setId: string;
  }) | ({
    kind: "pack";
    stockId: string;
  }))[];
};

export type PickedThing = {
  pickId: string;
  name: string;
  quantity: number;
  by: string;
  at: string;
  place: (null) | (string);
  out: boolean;
  problems: (string)[];
};

export type PieceNeed = {
  id: string;
  step: string;
  what: "plate" | "screw" | "washer" | "wire";
  accepts: (AcceptedPiece)[];
  notEstablished: (AcceptedPiece)[];
  refused: (AcceptedPiece)[];
  length: (null) | ({
    kind: "exact";
    askedUm: number;
    acceptLongerUm: number;
  }) | ({
    kind: "spread";
    meanUm: number;
    sdUm: number;
    rounding: "up" | "nearest";
    expectedUm: (null) | (number);
    acceptLongerUm: number;
  }) | ({
    kind: "notStated";
  });
};

export type Pieces = {
  sound: number;
  damaged: number;
};

export type PlaceOnFile = {
  id: string;
  name: string;
  metres: number;
  withdrawnAt: (null) | (string);
  revision: number;
  sets: number;
  stockLines: number;
};

export type PlaceToCount = {
  id: string;
  name: string;
  heaps: number;
  due: {
    A: number;
    B: number;
    C: number;
  };
  beingCounted: number;
};

export type PlanChange = {
  gained: (string)[];
  changed: (string)[];
  without: (string)[];
};

export type PlanFault = ({
  kind: "unknownPlate";
  step: string;
  itemId: string;
}) | ({
  kind: "plateNotCurrent";
  step: string;
  itemId: string;
  status: "withdrawn" | "recalled";
}) | ({
  kind: "unknownHole";
  step: string;
}) | ({
  kind: "unknownFamily";
  step: string;
  family: string;
}) | ({
  kind: "unknownItem";
  step: string;
  itemId: string;
}) | ({
  kind: "itemNotCurrent";
  step: string;
  itemId: string;
  status: "withdrawn" | "recalled";
}) | ({
  kind: "lengthNotMade";
  step: string;
  family: string;
  askedUm: number;
  madeUm: (number)[];
}) | ({
  kind: "lengthNotStated";
  step: string;
}) | ({
  kind: "factNotStated";
  step: string;
  itemId: string;
  facts: (string)[];
}) | ({
  kind: "holesNotDecided";
  step: string;
  holeIds: (string)[];
}) | ({
  kind: "noChainInCatalogue";
  chainId: string;
  chain: "drilling" | "lagDrilling" | "tapping" | "countersinking" | "measuring" | "driving" | "wiring";
  steps: (string)[];
}) | ({
  kind: "refused";
  step: string;
  itemId: string;
  answers: (LinkVerdict)[];
}) | ({
  kind: "doesNotPass";
  step: string;
  itemId: string;
});

export type PlanKept = {
  given: ({
    caseId: string;
    setId: string;
  })[];
  taken: ({
    caseId: string;
    setId: string;
  })[];
};

export type PlanSource = {
  key: string;
  label: string;
  construct: {
    region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
    limb: ("left" | "right") | (null);
    bone: "normal" | "poor" | "notStated";
    plates: ({
      key: string;
      plateItemId: string;
      zone: (null) | ({
        fromUm: number;
        toUm: number;
      });
      principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
      fills: { [name: string]: ({
        purpose: "empty";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "neutral";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "offset";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "lag";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "locked";
      }) | ({
        purpose: "temporaryWire";
        wireItemId: string;
      }) };
    })[];
    freeScrews: ({
      washerItemId: (null) | (string);
      screwFamily: string;
      cortices: 1 | 2;
      length: ({
        kind: "exact";
        mm: number;
      }) | ({
        kind: "spread";
        meanMm: number;
        sdMm: number;
        sourceNote: (null) | (string);
      }) | ({
        kind: "notStated";
      });
      acceptLongerMm: number;
      key: string;
    })[];
    sharedLengthSdMm: (null) | (number);
    note: (null) | (string);
  };
};

export type PlannedAnew = {
  change: (null) | (PlanChange);
  sentence: string;
};

export type ProblemLine = {
  id: string;
  row: (null) | (number);
  column: (null) | (string);
  value: (null) | (string);
  withheld: boolean;
  sentence: string;
};

export type ProblemView = {
  id: string;
  row: (null) | (number);
  column: (null) | (string);
  value: (null) | (string);
  withheld: false;
  sentence: string;
};

export type ProcedureOnFile = {
  id: string;
  name: string;
  region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
  inUse: boolean;
  revision: number;
  cards: number;
};

export type PromiseStanding = {
  name: string;
  outcome: "yes" | "no" | "notEstablished" | "onlyWith";
  steps: number;
  stepsPossible: number;
  stopped: (StoppedPurpose)[];
  shortItems: (string)[];
  blocked: (Blocked)[];
  onlyWith: ({
    itemId: string;
    pieces: number;
  })[];
  notEvenWhole: (string)[];
};

export type PromisedSet = {
  setId: string;
  code: string;
  fromAt: string;
  untilAt: string;
  chosenBy: "person" | "planning";
  step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
  heldBecause: (null) | (string);
  outOfService: boolean;
  inUse: boolean;
};

export type Proposal = {
  id: string;
  number: string;
  state: "superseded" | "approved" | "turnedDown" | "proposed";
  proposedBy: string;
  proposedAt: string;
  lookedAt: number;
  enough: number;
  withoutUse: number;
  decidedBy: (null) | (string);
  decidedAt: (null) | (string);
  because: (null) | (string);
  revision: number;
  lines: (ProposalLine)[];
  orders: ({
    id: string;
    number: string;
    maker: string;
  })[];
};

export type ProposalLine = {
  id: string;
  itemId: string;
  code: string;
  name: string;
  kind: string;
  makerId: string;
  maker: string;
  mustHaveClass: (null) | (number);
  proposed: number;
  packOf: number;
  unitPence: (null) | (number);
  onHand: number;
  onOrder: number;
  committed: number;
  toRefill: number;
  sentence: string;
  answer: (null) | ({
    order: number;
    packs: number;
    orderUpTo: number;
    position: number;
    onHand: number;
    passing: number;
    lacking: number;
    useByLimit: (null) | (number);
    coverDays: number;
    expected: number;
    variance: number;
    unbookedShare: (null) | (number);
    serviceWithout: number;
    serviceWith: number;
    model: "poisson" | "negativeBinomial" | "compoundPoisson";
    why: "varianceWithinMean" | "varianceAboveMean" | "severalPerCase" | "clustered" | "stated";
    demandClass: (null) | ({
      class: "smooth" | "erratic" | "intermittent" | "lumpy";
      interval: number;
      cv2: number;
    });
    perWeek: {
      mean: number;
      variance: number;
      by: "mean" | "stated" | "sizeInterval";
    };
    fits: ({
      kind: "poisson" | "negativeBinomial" | "compoundPoisson";
      aic: number;
      test: (null) | ({
        chiSquare: number;
        degrees: number;
        p: number;
      });
    })[];
    sentence: string;
  });
  working: (WorkingStep)[];
  missing: (string)[];
  approved: (null) | (number);
  changedBecause: (null) | (string);
};

export type QuestionView = {
  key: string;
  heading: string;
  damage: string;
  why: string;
  canRepair: boolean;
  canKeep: boolean;
  cells: ({
    row: number;
    value: string;
    repaired: (null) | (string);
  })[];
  more: number;
};

export type ReachSeen = {
  cases: (SeenCase)[];
  sets: ({
    setId: string;
    pieces: (null) | (number);
  })[];
  heaps: ({
    stockId: string;
    pieces: number;
  })[];
  unknownLots: (string)[];
  contradictions: ({
    setId: string;
    sentence: string;
  })[];
};

export type Reached = {
  of: ({
    kind: "lot";
    itemId: string;
    lot: string;
  }) | ({
    kind: "item";
    itemId: string;
  }) | ({
    kind: "set";
    setId: string;
  }) | ({
    kind: "load";
    loadId: string;
  });
  what: string;
  href: string;
  reach: ReachSeen;
  cases: CasesSeen;
  sets: { [name: string]: NamedSet };
};

export type ReachedCaseRow = {
  id: string;
  reference: string;
  date: string;
  surgeon: (null) | (string);
  lo: (null) | (number);
  hi: (null) | (number);
  standing: "confirmed" | "possible" | "excluded";
  reasons: (string)[];
};

export type Reason = {
  id: string;
  kind: "delay" | "waste";
  code: string;
  words: string;
  inUse: boolean;
};

export type RecallInList = {
  id: string;
  number: string;
  what: string;
  reason: string;
  isRehearsal: boolean;
  openedAt: string;
  openedBy: string;
  closedAt: (null) | (string);
  confirmed: number;
  possible: number;
  acknowledged: number;
  asked: number;
};

export type RecallOnFile = {
  id: string;
  number: string;
  revision: number;
  of: ({
    kind: "lot";
    itemId: string;
    lot: string;
  }) | ({
    kind: "item";
    itemId: string;
  }) | ({
    kind: "set";
    setId: string;
  }) | ({
    kind: "load";
    loadId: string;
  });
  what: string;
  href: string;
  reason: string;
  noticeReference: (null) | (string);
  isRehearsal: boolean;
  opened: {
    at: string;
    by: string;
  };
  closed: (null) | ({
    at: string;
    by: string;
    with: string;
    because: string;
  });
  found: ReachSeen;
  reach: ReachSeen;
  cases: CasesSeen;
  holds: ({
    setId: (null) | (string);
    stockId: (null) | (string);
    name: string;
    pieces: (null) | (number);
    heldStill: boolean;
  })[];
  sets: { [name: string]: NamedSet };
  tasks: ({
    personId: string;
    name: string;
    task: "lookAtCases" | "takeOffShelf" | "keepSetsHeld" | "know";
    acknowledgedAt: (null) | (string);
    note: (null) | (string);
  })[];
  isBlind: boolean;
  balance: (null) | (LotBalance);
};

export type RecallOpened = {
  id: string;
  number: string;
  heldSets: number;
  heldHeaps: number;
};

export type Received = {
  id: string;
  lines: number;
  pieces: number;
};

export type Received2 = {
  revision: number;
  toCome: number;
};

export type ReceivedItem = {
  itemId: string;
  code: string;
  name: string;
  status: "current" | "withdrawn" | "recalled";
  packMultiple: number;
  suppliedSterile: (boolean) | (null);
  places: ({
    id: string;
    name: string;
    form: "pouch" | "sterilePacked" | "unsterile";
  })[];
  alike: (LookAlikeOnShelf)[];
  onOrder: ({
    orderLineId: string;
    number: string;
    toCome: number;
    expectedOn: (null) | (string);
  })[];
};

export type Reckoned = {
  key: string;
  setId: (null) | (string);
  lineId: (null) | (string);
  itemId: (null) | (string);
  name: string;
  expected: (null) | (number);
  counted: (null) | (number);
};

export type ReconciledOnRecord = {
  id: string;
  itemId: string;
  code: string;
  name: string;
  lot: (null) | (string);
  listed: (null) | (number);
  onShelf: number;
  withCases: number;
  inSlots: number;
  difference: number;
  explained: ({
    kind: "usedNotTold" | "orderNotSent" | "orderSentLater" | "sentBackLater" | "receivedLater";
    pieces: number;
  })[];
  unexplained: number;
  because: (null) | (string);
  becauseBy: (null) | (string);
};

export type ReconciliationOnList = {
  id: string;
  number: string;
  how: "count" | "list";
  listedOn: string;
  enteredBy: string;
  enteredAt: string;
  closedAt: (null) | (string);
  lots: number;
  unexplained: number;
};

export type ReconciliationOnRecord = {
  id: string;
  number: string;
  revision: number;
  lenderId: string;
  owner: string;
  how: "count" | "list";
  listedOn: string;
  enteredBy: string;
  enteredAt: string;
  closedBy: (null) | (string);
  closedWith: (null) | (string);
  closedAt: (null) | (string);
  lines: (ReconciledOnRecord)[];
};

export type RecordOfUse = {
  caseDate: string;
  closed: (null) | ({
    by: string;
    at: string;
    questions: (UseQuestion)[];
    entries: number;
    digest: string;
  });
  entries: (ShownEntry)[];
  plan: (null) | ({
    version: number;
    construct: {
      region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
      limb: ("left" | "right") | (null);
      bone: "normal" | "poor" | "notStated";
      plates: ({
        key: string;
        plateItemId: string;
        zone: (null) | ({
          fromUm: number;
          toUm: number;
        });
        principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
        fills: { [name: string]: ({
          purpose: "empty";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "neutral";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "offset";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "lag";
        }) | ({
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          purpose: "locked";
        }) | ({
          purpose: "temporaryWire";
          wireItemId: string;
        }) };
      })[];
      freeScrews: ({
        washerItemId: (null) | (string);
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        key: string;
      })[];
      sharedLengthSdMm: (null) | (number);
      note: (null) | (string);
    };
  });
  plates: ({
    kind: "plate";
    shape: "straightNarrow" | "straightBroad" | "oneThirdTubular" | "tRightAngled" | "tOblique" | "lShaped" | "cloverleaf" | "reconstruction" | "buttress" | "anatomic";
    takesThreadsUm: (number)[];
    lengthUm: (null) | (number);
    widthUm: (null) | (number);
    headWidthUm: (null) | (number);
    thicknessUm: (null) | (number);
    lookAlikeOf: (null) | (string);
    holes: ({
      id: string;
      segment: "shaft" | "head";
      holeClass: "round" | "compressionSlot" | "threaded" | "polyaxialThreaded" | "twoZone" | "elongatedSlot" | "wireHole";
      alongUm: number;
      acrossUm: number;
      tiltAlongDegrees: number;
      tiltAcrossDegrees: number;
      openingUm: (null) | (number);
      seatUm: (null) | (number);
      plainSeat: ("spherical" | "conical") | (null);
      slotUm: (null) | (number);
      lockingFamily: (null) | (string);
      lockingConeDegrees: (null) | (number);
    })[];
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  })[];
  sets: ({
    id: string;
    code: string;
    pickId: string;
    issuedAt: string;
    packId: (null) | (string);
    useBy: (null) | (string);
    held: boolean;
    unopened: boolean;
    pack: (null) | (PackAndLoad);
  })[];
  slots: (TableSlot)[];
  packs: (TablePack)[];
  countQuestions: ({
    id: string;
    setId: (null) | (string);
    lineId: (null) | (string);
    thing: string;
  })[];
  items: (TableItem)[];
  reasons: (Reason)[];
  asksReason: boolean;
  hidden: (TableSet)[];
  aboutSets: ({
    id: string;
    code: string;
  })[];
};

export type RecordedEntry = {
  id: string;
  seq: number;
  enteredAt: string;
};

export type Refill = {
  key: string;
  setId: string;
  set: string;
  step: string;
  layer: number;
  row: number;
  slot: number;
  itemId: string;
  code: string;
  name: string;
  mustHaveClass: number;
  found: number;
  expected: number;
  onShelf: (null) | (number);
  first: (null) | ({
    lot: (null) | (string);
    useBy: (null) | (string);
    place: string;
  });
};

export type RepairRow = {
  itemId: string;
  code: string;
  name: string;
  condition: (null) | (string);
  putAside: number;
  repaired: number;
  discarded: number;
  unitPence: (null) | (number);
};

export type Replayed = {
  asked: number;
  served: number;
  cases: number;
  casesServed: number;
  times: number;
  timesServed: number;
  meanStock: number;
  pastUseBy: number;
  orders: number;
  ordered: number;
  begunWith: number;
  received: number;
  left: number;
  weeks: (number)[];
};

export type Replied = {
  id: string;
  reply: "another" | "same";
};

export type RestockRecorded = {
  number: string;
  id: string;
  decidedAt: (null) | (string);
  revision: number;
  state: "superseded" | "approved" | "turnedDown" | "proposed";
  proposedBy: string;
  proposedAt: string;
  lookedAt: number;
  enough: number;
  withoutUse: number;
};

export type ReviewedLine = {
  item: (null) | ({
    kind: "plate";
    shape: "straightNarrow" | "straightBroad" | "oneThirdTubular" | "tRightAngled" | "tOblique" | "lShaped" | "cloverleaf" | "reconstruction" | "buttress" | "anatomic";
    takesThreadsUm: (number)[];
    lengthUm: (null) | (number);
    widthUm: (null) | (number);
    headWidthUm: (null) | (number);
    thicknessUm: (null) | (number);
    lookAlikeOf: (null) | (string);
    holes: ({
      id: string;
      segment: "shaft" | "head";
      holeClass: "round" | "compressionSlot" | "threaded" | "polyaxialThreaded" | "twoZone" | "elongatedSlot" | "wireHole";
      alongUm: number;
      acrossUm: number;
      tiltAlongDegrees: number;
      tiltAcrossDegrees: number;
      openingUm: (null) | (number);
      seatUm: (null) | (number);
      plainSeat: ("spherical" | "conical") | (null);
      slotUm: (null) | (number);
      lockingFamily: (null) | (string);
      lockingConeDegrees: (null) | (number);
    })[];
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "screw";
    screwKind: "cortical" | "cancellousFull" | "cancellousPartial" | "locking" | "cannulated";
    screwFamily: string;
    threadForm: ("other" | "locking" | "HA" | "HB" | "HC" | "HD") | (null);
    threadUm: (null) | (number);
    coreUm: (null) | (number);
    shaftUm: (null) | (number);
    threadLengthUm: (null) | (number);
    pitchUm: (null) | (number);
    head: ("threaded" | "spherical" | "conicalPlain") | (null);
    headUm: (null) | (number);
    lockingFamily: (null) | (string);
    drive: (null) | ({
      form: "hexagonSocket";
      acrossFlatsUm: number;
    }) | ({
      form: "hexalobular";
      number: number;
    }) | ({
      form: "crossSlot";
      sizeUm: number;
    }) | ({
      form: "singleSlot";
      sizeUm: number;
    }) | ({
      form: "square";
      sizeUm: number;
    });
    tip: ("blunt" | "selfTapping" | "selfDrillingSelfTapping") | (null);
    cannulationUm: (null) | (number);
    torqueNmm: (null) | (number);
    countersinkStated: (boolean) | (null);
    lengthUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "washer";
    innerUm: (null) | (number);
    outerUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "drillBit";
    diameterUm: (null) | (number);
    lengthUm: (null) | (number);
    coupling: (null) | ({
      form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
      sizeUm: number;
    });
    cannulationUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "drillSleeve";
    form: "threaded" | "dualPosition" | "doubleEnded" | "insert" | "tissueProtection";
    ends: ({
      boreUm: (null) | (number);
      outerUm: (null) | (number);
      outerForm: ("threaded" | "spherical" | "cylindrical" | "pronged") | (null);
      seatsOn: (null) | (("round" | "compressionSlot" | "threaded" | "polyaxialThreaded" | "twoZone" | "elongatedSlot" | "wireHole" | "bone" | "glidingHole")[]);
      positions: (null) | (("neutral" | "offset" | "centred")[]);
      lockingFamily: (null) | (string);
    })[];
    onlyForPlates: (null) | ((string)[]);
    lengthUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "tap";
    threadForm: ("other" | "locking" | "HA" | "HB" | "HC" | "HD") | (null);
    threadUm: (null) | (number);
    lengthUm: (null) | (number);
    coupling: (null) | ({
      form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
      sizeUm: number;
    });
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "countersink";
    headUm: (null) | (number);
    pinUm: (null) | (number);
    coupling: (null) | ({
      form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
      sizeUm: number;
    });
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "depthGauge";
    fromUm: (null) | (number);
    toUm: (null) | (number);
    hookUm: (null) | (number);
    forThreadsUm: (null) | ((number)[]);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "driver";
    drive: (null) | ({
      form: "hexagonSocket";
      acrossFlatsUm: number;
    }) | ({
      form: "hexalobular";
      number: number;
    }) | ({
      form: "crossSlot";
      sizeUm: number;
    }) | ({
      form: "singleSlot";
      sizeUm: number;
    }) | ({
      form: "square";
      sizeUm: number;
    });
    holdsScrew: (boolean) | (null);
    lengthUm: (null) | (number);
    coupling: (null) | ({
      form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
      sizeUm: number;
    });
    fixedHandle: boolean;
    cannulationUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "handle";
    form: "straight" | "tShaped" | "ratchet" | "power";
    takes: (null) | (({
      form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
      sizeUm: number;
    })[]);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "torqueLimiter";
    torqueNmm: (null) | (number);
    takes: (null) | (({
      form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
      sizeUm: number;
    })[]);
    coupling: (null) | ({
      form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
      sizeUm: number;
    });
    fixedHandle: boolean;
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "guideWire";
    diameterUm: (null) | (number);
    lengthUm: (null) | (number);
    threadedTip: (boolean) | (null);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "reductionForceps";
    jaw: ("pointed" | "serrated" | "toothed" | "ballTipped") | (null);
    lengthUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "plateBender";
    form: ("bendingPress" | "bendingIron" | "bendingPliers") | (null);
    takesThicknessUm: (null) | (number);
    takesWidthUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "holder";
    holds: ("plate" | "screw" | "wire" | "bone") | (null);
    lengthUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    lengthUm: (null) | (number);
    widthUm: (null) | (number);
    heightUm: (null) | (number);
    kind: "rack";
    rows: number;
    columns: number;
    forThreadUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    lengthUm: (null) | (number);
    widthUm: (null) | (number);
    heightUm: (null) | (number);
    kind: "basket";
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    lengthUm: (null) | (number);
    widthUm: (null) | (number);
    heightUm: (null) | (number);
    kind: "container";
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "generalInstrument";
    purpose: (null) | (string);
    lengthUm: (null) | (number);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  }) | ({
    kind: "consumable";
    purpose: (null) | (string);
    id: string;
    code: string;
    name: string;
    nickname: (null) | (string);
    makerId: string;
    side: ("left" | "right" | "either") | (null);
    material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
    suppliedSterile: (boolean) | (null);
    use: "singleUse" | "reprocessable";
    reprocessingLimit: (null) | (number);
    massGrams: (null) | (number);
    unitCostPence: (null) | (number);
    packMultiple: number;
    gtin: (null) | (string);
    partsPerPiece: number;
    status: "current" | "withdrawn" | "recalled";
  });
  review: (null) | ({
    line: string;
    uses: number;
    useRate: number;
    upperBound: number;
    keepPence: (null) | (number);
    fetched: {
      penceAtEstimate: (null) | (number);
      penceAtBound: (null) | (number);
      verdict: ("pouch" | "keep" | "notShown") | (null);
    };
    inRoom: {
      penceAtEstimate: (null) | (number);
      penceAtBound: (null) | (number);
      verdict: ("pouch" | "keep" | "notShown") | (null);
    };
    verdict: ("pouch" | "keep" | "notShown" | "protected" | "keepIfFetched") | (null);
    sentence: string;
    runsOut: {
      cases: number;
      seen: number;
      upperBound: number;
      fitted: (null) | (number);
    };
    model: (null) | ({
      kind: "poisson" | "negativeBinomial";
      mean: number;
      variance: number;
    });
    smallestQuantity: {
      seen: (null) | (number);
      fitted: (null) | (number);
      atBound: (null) | (number);
    };
    comparison: {
      stands: "below" | "within" | "above";
      lowest: number;
      highest: number;
      sentence: string;
      source: string;
    };
  });
  input: (null) | ({
    cases: number;
    keepPencePerPiece: (null) | (number);
    pouchPence: (null) | (number);
    fetchMinutes: (null) | (number);
    theatrePencePerMinute: (null) | (number);
    risk: number;
    confidence: number;
    lines: ({
      line: string;
      quantity: number;
      mustHaveClass: (4 | 3 | 1 | 2) | (null);
      pouchInRoom: (boolean) | (null);
      usedIn: (null) | (({
        pieces: number;
        cases: number;
      })[]);
    })[];
  });
  line: {
    id: string;
    itemId: string;
    layer: number;
    row: number;
    slot: number;
    rackItemId: (null) | (string);
    expected: number;
    minimum: number;
    mustHaveClass: 4 | 3 | 1 | 2;
    substitutes: (string)[];
  };
  evidence: "planned" | "recorded" | "none";
  cases: number;
  usedIn: (null) | (({
    pieces: number;
    cases: number;
  })[]);
};

export type RiskLine = {
  case: CaseToServe;
  standing: CaseStanding;
  level: "stops" | "fine" | "notSure";
  needBy: string;
  time: ({
    kind: "there";
  }) | ({
    kind: "coming";
    readyAt: string;
    marginMinutes: number;
    tight: boolean;
  }) | ({
    kind: "misses";
    slipMinutes: number;
  }) | ({
    kind: "unknown";
  });
  notPromised: (string)[];
  givenUp: ({
    set: string;
    because: "readyUnknown" | "notReady" | "notSuitable" | "betterPlan";
  })[];
};

export type Search = {
  found: (Found)[];
  unknownLot: (null) | (string);
};

export type SeenCase = {
  lo: (null) | (number);
  hi: (null) | (number);
  standing: "confirmed" | "possible" | "excluded";
  caseId: string;
  reasons: (string)[];
};

export type ServedSets = {
  kinds: ({
    code: string;
    name: string;
  })[];
  rows: (SetLine)[];
  found: number;
  total: number;
};

export type SetCompleteness = {
  setId: string;
  pieces: {
    found: number;
    expected: number;
    percent: number;
    surplus: number;
  };
  mustHaves: {
    met: number;
    of: number;
    lines: ({
      line: string;
      item: string;
      mustHaveClass: number;
      state: "notMet" | "notCounted" | "metBySubstitute" | "metByPouch";
      found: (null) | (number);
      minimum: number;
      standIns: (string)[];
    })[];
  };
  uncounted: number;
  unsound: number;
  shortLines: {
    "1": number;
    "2": number;
    "3": number;
    "4": number;
  };
  stopped: {
    "1": number;
    "2": number;
  };
};

export type SetEvent = ({
  at: string;
  enteredAt: (null) | (string);
  by: (null) | (string);
  kind: "step";
  step: StepOnFile;
}) | ({
  at: string;
  enteredAt: (null) | (string);
  by: (null) | (string);
  kind: "count";
}) | ({
  at: string;
  enteredAt: (null) | (string);
  by: (null) | (string);
  kind: "pack";
  number: string;
  barrier: string;
  short: boolean;
  load: (null) | ({
    id: string;
    number: string;
    state: string;
  });
}) | ({
  at: string;
  enteredAt: (null) | (string);
  by: (null) | (string);
  kind: "decision";
  how: string;
  reason: string;
}) | ({
  at: string;
  enteredAt: (null) | (string);
  by: (null) | (string);
  kind: "aside";
  item: string;
  quantity: number;
  condition: string;
}) | ({
  at: string;
  enteredAt: (null) | (string);
  by: (null) | (string);
  kind: "refillAsked" | "refillFixed";
  item: string;
  quantity: number;
}) | ({
  at: string;
  enteredAt: (null) | (string);
  by: (null) | (string);
  kind: "entry";
  action: string;
  detail: { [name: string]: unknown };
});

export type SetInReach = {
  id: string;
  code: string;
  readyMinutes: (null) | (TimeSpread);
  promisedTo: (string)[];
  barred: boolean;
};

export type SetLine = {
  id: string;
  code: string;
  configurationCode: string;
  configuration: string;
  loan: boolean;
  rank: number;
  standing: {
    word: string;
    tone: "unknown" | "neutral" | "good" | "attention" | "stop";
  };
  stops: ({
    about: string;
    href: (null) | (string);
    words: string;
  })[];
  remarks: (string)[];
  step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
  stepWords: string;
  since: string;
  sinceAt: string;
  place: (null) | (string);
  ready: (null) | (string);
  pieces: {
    found: number;
    expected: number;
    percent: string;
    share: number;
    uncounted: number;
  };
  mustHaves: {
    met: number;
    of: number;
    share: number;
  };
  buildable: ({
    word: string;
    tone: "unknown" | "neutral" | "good" | "attention" | "stop";
    what: string;
  })[];
  mass: {
    grams: number;
    words: string;
    exact: boolean;
    limit: (null) | ({
      word: string;
      tone: "unknown" | "neutral" | "good" | "attention" | "stop";
    });
  };
  promisedTo: ({
    href: string;
    reference: string;
    when: string;
  })[];
  newer: (null) | (number);
};

export type SetListed = {
  completeness: (null) | (SetCompleteness);
  place: (null) | ({
    id: string;
    name: string;
  });
  code: string;
  id: string;
  useBy: (null) | (string);
  readyAt: (null) | (string);
  owner: "ours" | "loan";
  version: {
    id: string;
    version: number;
    status: "draft" | "superseded" | "inForce" | "approved";
  };
  step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
  revision: number;
  configuration: {
    id: string;
    code: string;
    name: string;
  };
  promisedTo: ({
    caseId: string;
    reference: string;
    startsAt: string;
  })[];
  heldBecause: (null) | (string);
  ownerNote: (null) | (string);
  stepSince: string;
  outOfService: boolean;
};

export type SetPacked = {
  id: string;
  number: string;
  revision: number;
};

export type SetStanding = {
  input: {
    lines: ({
      line: string;
      item: string;
      mustHaveClass: 4 | 3 | 1 | 2;
      expected: number;
      minimum: number;
      found: (null) | (number);
      massGrams: (null) | (number);
      substitutes: (string)[];
    })[];
    pouches: ({
      item: string;
      pieces: number;
    })[];
    containerGrams: (null) | (number);
    massLimitsGrams: (number)[];
    warnAtPercent: number;
  };
  answer: ({
    outcome: "answered";
    answer: {
      pieces: {
        found: number;
        expected: number;
        percent: number;
        surplus: number;
      };
      mustHaves: {
        met: number;
        of: number;
        lines: ({
          line: string;
          item: string;
          mustHaveClass: number;
          state: "notMet" | "notCounted" | "metBySubstitute" | "metByPouch";
          found: (null) | (number);
          minimum: number;
          standIns: (string)[];
        })[];
      };
      mass: {
        foundGrams: number;
        exact: boolean;
        unknownLines: (string)[];
        containerKnown: boolean;
        limits: ({
          limitGrams: number;
          percent: number;
          state: "over" | "notEstablished" | "under" | "near";
        })[];
        heaviestBreachGrams: (null) | (number);
      };
      shortLines: ({
        line: string;
        item: string;
        short: number;
        mustHaveClass: number;
      })[];
      surplusLines: ({
        line: string;
        item: string;
        surplus: number;
      })[];
      maySend: {
        who: "anyTechnician" | "technicianShort" | "supervisor" | "theatreLeadAndSurgeon" | "nobodyYet";
        because: string;
      };
    };
    working: (WorkingStep)[];
  }) | ({
    outcome: "notEstablished";
    missing: (MissingValue)[];
    known: (null) | ({
      pieces: {
        found: number;
        expected: number;
        percent: number;
        surplus: number;
      };
      mustHaves: {
        met: number;
        of: number;
        lines: ({
          line: string;
          item: string;
          mustHaveClass: number;
          state: "notMet" | "notCounted" | "metBySubstitute" | "metByPouch";
          found: (null) | (number);
          minimum: number;
          standIns: (string)[];
        })[];
      };
      mass: {
        foundGrams: number;
        exact: boolean;
        unknownLines: (string)[];
        containerKnown: boolean;
        limits: ({
          limitGrams: number;
          percent: number;
          state: "over" | "notEstablished" | "under" | "near";
        })[];
        heaviestBreachGrams: (null) | (number);
      };
      shortLines: ({
        line: string;
        item: string;
        short: number;
        mustHaveClass: number;
      })[];
      surplusLines: ({
        line: string;
        item: string;
        surplus: number;
      })[];
      maySend: {
        who: "anyTechnician" | "technicianShort" | "supervisor" | "theatreLeadAndSurgeon" | "nobodyYet";
        because: string;
      };
    });
    working: (WorkingStep)[];
  });
  figures: {
    pieces: {
      found: number;
      expected: number;
      percent: number;
      surplus: number;
    };
    mustHaves: {
      met: number;
      of: number;
      lines: ({
        line: string;
        item: string;
        mustHaveClass: number;
        state: "notMet" | "notCounted" | "metBySubstitute" | "metByPouch";
        found: (null) | (number);
        minimum: number;
        standIns: (string)[];
      })[];
    };
    mass: {
      foundGrams: number;
      exact: boolean;
      unknownLines: (string)[];
      containerKnown: boolean;
      limits: ({
        limitGrams: number;
        percent: number;
        state: "over" | "notEstablished" | "under" | "near";
      })[];
      heaviestBreachGrams: (null) | (number);
    };
    shortLines: ({
      line: string;
      item: string;
      short: number;
      mustHaveClass: number;
    })[];
    surplusLines: ({
      line: string;
      item: string;
      surplus: number;
    })[];
    maySend: {
      who: "anyTechnician" | "technicianShort" | "supervisor" | "theatreLeadAndSurgeon" | "nobodyYet";
      because: string;
    };
  };
  uncounted: number;
  unsound: number;
  foreign: number;
  promises: (PromiseStanding)[];
  cases: (CaseStanding2)[];
  stops: (Stop)[];
};

export type SetTurn = {
  turn: (null) | ({
    number: number;
    beganAt: string;
    steps: (StepOnFile)[];
  });
  heldFrom: ("inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore") | (null);
  reasons: (HeldReason)[];
  after: ("inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore")[];
  withdrawn: (null) | ({
    at: string;
    because: string;
  });
  pack: (null) | ({
    id: string;
    number: string;
    state: string;
    short: boolean;
    packedAt: string;
    useBy: (null) | (string);
  });
  load: (null) | ({
    id: string;
    number: string;
    state: string;
  });
  forCase: (null) | ({
    id: string;
    reference: string;
  });
  refills: (null) | (({
    id: string;
    item: string;
    quantity: number;
    foundBy: string;
    openedAt: string;
  })[]);
};

export type SetUse = {
  setId: string;
  code: string;
  cases: number;
  lastOn: (null) | (string);
  unused: number;
};

export type SetWithItem = {
  setId: string;
  code: string;
  step: string;
  place: (null) | (string);
  metres: (null) | (number);
  over: number;
};

export type SettingChange = {
  seq: number;
  doneAt: string;
  person: (null) | (string);
  because: string;
  before: { [name: string]: unknown };
  after: { [name: string]: unknown };
};

export type SettingOnFile = {
  key: "bench" | "emergency" | "loads" | "loans" | "packs" | "restock" | "sets" | "stock" | "planning" | "costs" | "reasons" | "sterility" | "fit" | "kits" | "stages" | "calendars" | "signIn";
  value: { [name: string]: unknown };
  defaults: { [name: string]: unknown };
  revision: number;
  changedBy: (null) | (string);
  changedAt: (null) | (string);
};

export type ShelfLoss = {
  shelf: ShelfOfItem;
  input: {
    perMonth: (null) | (number);
    varianceToMean: number;
    lots: ({
      lot: string;
      units: number;
      months: (null) | (number);
      unitPence: (null) | (number);
    })[];
    casesAtMonths: (number)[];
  };
  loss: {
    lots: ({
      lot: string;
      units: number;
      months: number;
      pastUseBy: boolean;
      expectedLost: number;
      likelyLost: number;
      chanceAnyLost: number;
      pointForecastLost: number;
      expectedLostPence: (null) | (number);
      sentence: string;
    })[];
    expectedLost: number;
    pointForecastLost: number;
    expectedLostPence: (null) | (number);
    offered: ({
      month: number;
      lots: (string)[];
    })[];
  };
  neverUsed: boolean;
};

export type ShelfLot = {
  stockId: string;
  itemId: string;
  form: "pouch" | "sterilePacked" | "unsterile";
  lot: (null) | (string);
  useBy: (null) | (string);
  quantity: number;
  owner: string;
  place: string;
  metres: number;
};

export type ShelfLotRow = {
  id: string;
  revision: number;
  itemId: string;
  code: string;
  name: string;
  maker: string;
  status: "current" | "withdrawn" | "recalled";
  form: "pouch" | "sterilePacked" | "unsterile";
  lot: (null) | (string);
  useBy: (null) | (string);
  owner: "ours" | "consignment";
  lender: (null) | (string);
  placeId: string;
  place: string;
  heldBecause: (null) | (string);
  pieces: (null) | ({
    all: number;
    free: number;
    onKits: number;
    travelling: number;
  });
  turn: (null) | (number);
  because: ("held" | "pastUseBy" | "notCurrent" | "noneFree") | (null);
  labels: (string)[];
};

export type ShelfMove = {
  seq: number;
  act: "repaired" | "discarded" | "notFound" | "found" | "issued" | "implanted" | "cameBack" | "wasted" | "setAside" | "moved" | "sentBack" | "opening" | "received" | "shelved" | "refilled" | "carried" | "takenOut" | "explained";
  sign: 0 | 1 | -1;
  quantity: number;
  lot: (null) | (string);
  from: (null) | (string);
  to: (null) | (string);
  caseId: (null) | (string);
  reference: (null) | (string);
  reason: (null) | (string);
  delivery: (null) | (string);
  by: (null) | (string);
  at: string;
};

export type ShelfOfItem = {
  itemId: string;
  code: string;
  name: string;
  unitPence: (null) | (number);
  lots: ({
    stockId: string;
    lot: (null) | (string);
    useBy: string;
    units: number;
    place: string;
  })[];
  months: (number)[];
};

export type ShelfWasteRow = {
  code: string;
  pieces: number;
  pence: number;
  unknown: number;
};

export type Short = ({
  kind: "piece";
  needId: string;
  steps: (string)[];
  accepts: (string)[];
  hall: (null) | ({
    steps: (string)[];
    accepts: (string)[];
    pieces: number;
  });
  elsewhere: (Elsewhere)[];
}) | ({
  kind: "chain";
  needId: string;
  importance: "mustHave" | "backUp";
  steps: (string)[];
  wouldClose: ((string)[])[];
  emptySlots: ("tap" | "countersink" | "driver" | "handle" | "torqueLimiter" | "pilotBit" | "sleeve" | "glidingBit" | "glidingSleeve" | "insertSleeve" | "gauge" | "glidingHandle" | "wireDriver")[];
  nearMisses: (NearMiss)[];
  elsewhere: (Elsewhere)[];
});

export type ShortAsk = {
  asks: "technician" | "nothing" | "approvers" | "nobody";
  approvers: ("technician" | "decontaminationLead" | "theatreLead" | "operatingSurgeon")[];
  oneCase: boolean;
  findings: (ShortFinding)[];
};

export type ShortCase = {
  caseId: string;
  reference: string;
  on: string;
  ranOut: ({
    itemId: string;
    used: number;
    held: number;
  })[];
  unmet: (string)[];
};

export type ShortChoice = {
  pieces: number;
  at: (null) | ({
    place: string;
    lot: (null) | (string);
    useBy: (null) | (string);
  });
  lineId: string;
  itemId: string;
  from: ({
    kind: "pouch";
    stockId: string;
  }) | ({
    kind: "inSet";
    lineId: string;
  });
};

export type ShortFinding = ({
  rule: "notEstablished";
  lineId: string;
  itemId: string;
  mustHaveClass: 4 | 3 | 1 | 2;
}) | ({
  rule: "homeless";
  kind: "surplus";
  lineId: string;
  itemId: string;
  pieces: number;
}) | ({
  rule: "homeless";
  kind: "foreign";
  itemId: string;
  pieces: number;
}) | ({
  rule: "classOne";
  damaged: boolean;
  lineId: string;
  itemId: string;
  mustHaveClass: 4 | 3 | 1 | 2;
  found: number;
  expected: number;
  minimum: number;
}) | ({
  rule: "classTwo";
  substitutes: (string)[];
  missing: number;
  standIns: ({
    lineId: string;
    itemId: string;
    from: ({
      kind: "pouch";
      stockId: string;
    }) | ({
      kind: "inSet";
      lineId: string;
    });
  })[];
  lineId: string;
  itemId: string;
  mustHaveClass: 4 | 3 | 1 | 2;
  found: number;
  expected: number;
  minimum: number;
}) | ({
  rule: "backUp";
  lineId: string;
  itemId: string;
  mustHaveClass: 4 | 3 | 1 | 2;
  found: number;
  expected: number;
  minimum: number;
});

export type ShortForCase = {
  setId: string;
  code: string;
  lines: ({
    lineId: string;
    itemId: string;
    mustHaveClass: 4 | 3 | 1 | 2;
    short: number;
    belowMinimum: number;
  })[];
  stops: (({
    stopped: ({
      purpose: "plate" | "neutral" | "offset" | "lag" | "locked" | "temporaryWire";
      stopped: number;
      of: number;
    })[];
    shortItems: (string)[];
    kind: "case";
    caseId: string;
    reference: string;
    startsAt: string;
  }) | ({
    stopped: ({
      purpose: "plate" | "neutral" | "offset" | "lag" | "locked" | "temporaryWire";
      stopped: number;
      of: number;
    })[];
    shortItems: (string)[];
    kind: "construct";
    name: string;
  }))[];
  until: (null) | (string);
  kind: "backUps" | "withSubstitute" | "oneCase";
  lapses: ("ended" | "caseOver" | "caseGone" | "anotherSurgeon")[];
};

export type ShortLine = {
  itemId: string;
  short: number;
  mustHaveClass: 4 | 3 | 1 | 2;
  matters: ({
    kind: "stops";
    steps: (string)[];
  }) | ({
    kind: "no";
  }) | ({
    kind: "notEstablished";
  }) | ({
    kind: "notKnown";
  });
};

export type ShortScreen = {
  ask: ShortAsk;
  lines: (HeldLine)[];
  choices: ({
    lineId: string;
    itemId: string;
    missing: number;
    from: (ShortChoice)[];
  })[];
  spares: (SpareAtHand)[];
  decision: (null) | ({
    decision: {
      id: string;
      setId: string;
      turnId: string;
      kind: "backUps" | "withSubstitute" | "oneCase";
      lines: ({
        lineId: string;
        itemId: string;
        mustHaveClass: 4 | 3 | 1 | 2;
        short: number;
        belowMinimum: number;
      })[];
      substitutes: ({
        lineId: string;
        itemId: string;
        from: ({
          kind: "pouch";
          stockId: string;
        }) | ({
          kind: "inSet";
          lineId: string;
        });
      })[];
      reason: string;
      caseId: (null) | (string);
      approvals: ({
        as: "technician" | "decontaminationLead" | "theatreLead" | "operatingSurgeon";
        personId: string;
        name: string;
        method: "password" | "pin" | "badgeAndPin";
        at: string;
      })[];
      decidedAt: string;
      lapsesAt: (null) | (string);
      lapsedAt: (null) | (string);
    };
    reference: (null) | (string);
    lapses: ("ended" | "caseOver" | "caseGone" | "anotherSurgeon")[];
    open: (({
      kind: "moreIsShort";
      itemId: string;
    }) | ({
      kind: "standIns";
    }) | ({
      kind: "approverLacking";
      approver: "technician" | "decontaminationLead" | "theatreLead" | "operatingSurgeon";
    }))[];
  });
  cases: (CaseChoice)[];
};

export type ShownEntry = {
  id: string;
  act: ({
    kind: "piece";
    source: ({
      kind: "slot";
      setId: string;
      lineId: string;
    }) | ({
      kind: "pack";
      pickId: string;
      returnId: (null) | (string);
    });
    itemId: string;
    quantity: number;
    outcome: "notFound" | "implanted" | "openedNotImplanted" | "returnedUnopened" | "droppedOrDamaged";
    lostAt: ("atOpening" | "during" | "atCount" | "comingBack") | (null);
    place: (null) | ({
      kind: "plate";
      plate: string;
    }) | ({
      kind: "hole";
      plate: string;
      hole: string;
    }) | ({
      kind: "free";
      screw: string;
    });
    lot: ({
      kind: "read";
      lot: string;
      useBy: (null) | (string);
    }) | ({
      kind: "asIssued";
    }) | ({
      kind: "setAndLoad";
    });
    despite: ("recalled" | "held" | "pastUseBy")[];
    note: (null) | (string);
    because: (null) | (string);
  }) | ({
    kind: "reason";
    entryId: string;
    reasonId: (null) | (string);
    because: (null) | (string);
  }) | ({
    kind: "delay";
    minutes: (null) | (number);
    reasonId: (null) | (string);
    step: ("during" | "atCount" | "beforeStart" | "layingUp" | "afterwards") | (null);
    about: (null) | ({
      kind: "set";
      setId: string;
    }) | ({
      kind: "item";
      itemId: string;
    });
    note: (null) | (string);
    because: (null) | (string);
  }) | ({
    kind: "takenBack";
    entryId: string;
    because: (null) | (string);
  });
  doneAt: string;
  enteredAt: string;
  by: string;
  pack: (null) | (PackAndLoad);
};

export type SinglePoint = {
  itemId: string;
  from: ({
    kind: "set";
    setId: string;
  }) | ({
    kind: "pack";
    stockId: string;
  });
  steps: (string)[];
  needIds: (string)[];
  otherIn: (({
    kind: "set";
    setId: string;
  }) | ({
    kind: "pack";
    stockId: string;
  }))[];
};

export type Slot = {
  name: "tap" | "countersink" | "driver" | "handle" | "torqueLimiter" | "pilotBit" | "sleeve" | "glidingBit" | "glidingSleeve" | "insertSleeve" | "gauge" | "glidingHandle" | "wireDriver";
  candidates: (Candidate)[];
  pieces: number;
};

export type SlotBounds = {
  arrived: {
    ofLot: number;
    mayBe: number;
  };
  destinations: (DestinationBounds)[];
  cases: Bounds;
  outcomes: {
    notFound: Bounds;
    other: Bounds;
    implanted: Bounds;
    wasted: Bounds;
    setAside: Bounds;
    shelf: Bounds;
  };
  now: {
    lo: number;
    hi: number;
    pieces: number;
    toHold: number;
  };
  unrecorded: {
    lo: number;
    hi: number;
    pieces: number;
  };
  contradiction: (null) | (Contradiction);
};

export type SlotLife = {
  setId: string;
  setCode: string;
  itemId: string;
  name: string;
  pieces: number;
  thing: {
    thing: string;
    pieces: number;
    limitUses: (null) | (number);
    limitCycles: (null) | (number);
    uses: (null) | (number);
    cycles: (null) | (number);
    mostCycles: (null) | (number);
    booked: ({
      case: string;
      uses: number;
      cycles: number;
    })[];
  };
  life: {
    thing: string;
    state: "notEstablished" | "within" | "replaceAfter" | "mayBeDue" | "replaceNow";
    mayAfter: (null) | (number);
    mustAfter: (null) | (number);
    afterCase: (null) | (string);
    by: ("cycles" | "uses") | (null);
    usesLeft: (null) | (number);
    cyclesLeft: (null) | (number);
    sentence: string;
  };
};

export type SlotLink = {
  first: number;
  second: number;
  pairs: ({
    first: number;
    second: number;
    answer: (null) | (LinkVerdict);
    established: boolean;
  })[];
};

export type SpareAtHand = {
  itemId: string;
  quantity: (null) | (number);
  form: "pouch" | "sterilePacked" | "unsterile";
  place: string;
  metres: number;
  lot: (null) | (string);
  useBy: (null) | (string);
};

export type Standing = {
  tone: "unknown" | "good" | "attention" | "stop";
  word: string;
  sentence: string;
};

export type StartOnFile = {
  id: string;
  owner: {
    id: string;
    name: string;
  };
  name: string;
  version: number;
  savedAt: string;
  construct: {
    region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
    limb: ("left" | "right") | (null);
    bone: "normal" | "poor" | "notStated";
    plates: ({
      key: string;
      plateItemId: string;
      zone: (null) | ({
        fromUm: number;
        toUm: number;
      });
      principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
      fills: { [name: string]: ({
        purpose: "empty";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "neutral";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "offset";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "lag";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "locked";
      }) | ({
        purpose: "temporaryWire";
        wireItemId: string;
      }) };
    })[];
    freeScrews: ({
      washerItemId: (null) | (string);
      screwFamily: string;
      cortices: 1 | 2;
      length: ({
        kind: "exact";
        mm: number;
      }) | ({
        kind: "spread";
        meanMm: number;
        sdMm: number;
        sourceNote: (null) | (string);
      }) | ({
        kind: "notStated";
      });
      acceptLongerMm: number;
      key: string;
    })[];
    sharedLengthSdMm: (null) | (number);
    note: (null) | (string);
  };
  retiredAt: (null) | (string);
  plates: ({
    name: string;
    status: "unknown" | "current" | "withdrawn" | "recalled";
  })[];
};

export type StartVersion = {
  version: number;
  construct: {
    region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
    limb: ("left" | "right") | (null);
    bone: "normal" | "poor" | "notStated";
    plates: ({
      key: string;
      plateItemId: string;
      zone: (null) | ({
        fromUm: number;
        toUm: number;
      });
      principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
      fills: { [name: string]: ({
        purpose: "empty";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "neutral";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "offset";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "lag";
      }) | ({
        screwFamily: string;
        cortices: 1 | 2;
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (null) | (string);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        purpose: "locked";
      }) | ({
        purpose: "temporaryWire";
        wireItemId: string;
      }) };
    })[];
    freeScrews: ({
      washerItemId: (null) | (string);
      screwFamily: string;
      cortices: 1 | 2;
      length: ({
        kind: "exact";
        mm: number;
      }) | ({
        kind: "spread";
        meanMm: number;
        sdMm: number;
        sourceNote: (null) | (string);
      }) | ({
        kind: "notStated";
      });
      acceptLongerMm: number;
      key: string;
    })[];
    sharedLengthSdMm: (null) | (number);
    note: (null) | (string);
  };
  savedBy: string;
  savedAt: string;
};

export type Step = {
  key: string;
  kind: "plate" | "hole" | "freeScrew";
  plateKey: (null) | (string);
  holeId: (null) | (string);
  purpose: "plate" | "neutral" | "offset" | "lag" | "locked" | "temporaryWire";
  screwFamily: (null) | (string);
};

export type StepKit = {
  step: string;
  pieces: ({
    needId: string;
    itemId: string;
    lengthUm: (null) | (number);
    longerUm: number;
    from: ({
      kind: "set";
      setId: string;
    }) | ({
      kind: "pack";
      stockId: string;
    });
    answers: (LinkVerdict)[];
  })[];
  chainIds: (string)[];
  state: "short" | "notEstablished" | "met";
};

export type StepMargin = {
  step: string;
  spare: number;
};

export type StepOnFile = {
  seq: number;
  from: ("inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore") | (null);
  step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
  because: (null) | (string);
  note: (null) | (string);
  by: (null) | (string);
  doneAt: string;
  enteredAt: string;
};

export type SteriliserOnFile = {
  id: string;
  name: string;
  programmes: ({
    name: string;
    bandMillicelsius: [number, (null) | (number)];
    holdSeconds: number;
  })[];
  withdrawnAt: (null) | (string);
};

export type Stop = ({
  stopped: (StoppedPurpose)[];
  shortItems: (string)[];
  kind: "case";
  caseId: string;
  reference: string;
  startsAt: string;
}) | ({
  stopped: (StoppedPurpose)[];
  shortItems: (string)[];
  kind: "construct";
  name: string;
});

export type StoppedPurpose = {
  purpose: "plate" | "neutral" | "offset" | "lag" | "locked" | "temporaryWire";
  stopped: number;
  of: number;
};

export type StoredPack = {
  id: string;
  itemId: string;
  form: "pouch" | "sterilePacked";
  quantity: number;
  lot: (null) | (string);
  useBy: (null) | (string);
  owner: "ours" | "consignment";
  place: (null) | ({
    id: string;
    name: string;
    metres: number;
  });
  heldBecause: (null) | (string);
  letOutFor?: {
    reference: string;
  };
};

export type Subject = {
  kind: string;
  id: string;
  label: (null) | (string);
  caseId?: string;
};

export type TableItem = {
  code: string;
  name: string;
  status: string;
  gtin: (null) | (string);
  itemId: string;
  kind: string;
  screwFamily: (null) | (string);
  lengthUm: (null) | (number);
};

export type TablePack = {
  stockId: string;
  packId: (null) | (string);
  lot: (null) | (string);
  useBy: (null) | (string);
  held: boolean;
  owner: "ours" | "consignment";
  kind: "pack";
  pickId: string;
  itemId: string;
  reusable: boolean;
  quantity: number;
  returns: ({
    id: string;
    outcome: "notFound" | "returnedUnopened" | "cameBack" | "opened" | "damaged";
    quantity: number;
  })[];
};

export type TableSet = {
  id: string;
  code: string;
  pickId: string;
  issuedAt: string;
  packId: (null) | (string);
  useBy: (null) | (string);
  held: boolean;
  unopened: boolean;
};

export type TableSlot = {
  layer: number;
  row: number;
  slot: number;
  kind: "slot";
  setId: string;
  lineId: string;
  itemId: string;
  reusable: boolean;
  recorded: (null) | (number);
  counted: (null) | (number);
};

export type TakenBackList = {
  takenBack: number;
  left: ({
    name: string;
    because: string;
  })[];
};

export type TakenForEmergency = {
  caseId: string;
  reference: string;
};

export type Taking = {
  caseId: string;
  reference: string;
  theatreId: string;
  startsAt: string;
  endsAt: string;
  fromAt: string;
  sets: ({
    setId: string;
    untilAt: string;
  })[];
  packs: ({
    stockId: string;
    quantity: number;
  })[];
};

export type Term = ({
  fact: string;
}) | ({
  value: (boolean) | (string) | (number);
}) | ({
  setting: string;
}) | ({
  plus: [Term, Term];
}) | ({
  minus: [Term, Term];
});

export type TermsOnScreen = {
  of: {
    kind: "item" | "maker";
    id: string;
    name: string;
  };
  revision: number;
  changedBy: (null) | (string);
  changedAt: (null) | (string);
  leadDays: (null) | (number);
  leadSdDays: (null) | (number);
  reviewDays: (null) | (number);
  servicePercent: (null) | (number);
  shelfLifeDays: (null) | (number);
  consigned: (boolean) | (null);
};

export type TheatreCountRecorded = {
  id: string;
  case: {
    id: string;
    reference: string;
  };
  moment: "first" | "final";
  by: string;
  with: (null) | (string);
  beganAt: string;
  closedAt: (null) | (string);
  abandonedAt: (null) | (string);
};

export type TheatreDay = {
  theatres: (ListedTheatre)[];
  cases: (DayCase)[];
};

export type TheatreEntry = {
  id: string;
  act: ({
    kind: "counted";
    thing: ({
      kind: "line";
      setId: string;
      lineId: string;
    }) | ({
      kind: "added";
      key: string;
    });
    pieces: number;
  }) | ({
    kind: "implanted";
    thing: ({
      kind: "line";
      setId: string;
      lineId: string;
    }) | ({
      kind: "added";
      key: string;
    });
    pieces: number;
  }) | ({
    kind: "discarded";
    thing: ({
      kind: "line";
      setId: string;
      lineId: string;
    }) | ({
      kind: "added";
      key: string;
    });
    pieces: number;
  }) | ({
    kind: "added";
    key: string;
    itemId: (null) | (string);
    name: string;
    pieces: number;
  }) | ({
    kind: "notOpened";
    setId: string;
    so: boolean;
  });
  doneAt: string;
};

export type TheatreForEmergency = {
  id: string;
  name: string;
  leadMinutes: number;
  freeFrom: string;
};

export type TheatreLead = {
  id: string;
  name: string;
  leadMinutes: (null) | (number);
  revision: number;
  changed: (null) | ({
    at: string;
    by: string;
    because: string;
  });
};

export type TheatreQuestion = {
  id: string;
  caseId: string;
  reference: string;
  set: (null) | ({
    id: string;
    code: string;
  });
  thing: string;
  expected: number;
  counted: number;
  openedAt: string;
  unaccounted: number;
  acts: ({
    id: string;
    kind: "discarded" | "found" | "xRayAsked" | "stillOpen" | "countedAgain";
    pieces: (null) | (number);
    note: (null) | (string);
    by: string;
    at: string;
  })[];
  settled: (null) | ({
    as: "notFound" | "accountedFor";
    by: string;
    with: string;
    at: string;
    because: string;
  });
};

export type Thumb = {
  width: number;
  height: number;
  paths: ({
    line: ("notStated" | "zone" | "outline" | "fine" | "hidden" | "centre" | "thread" | "accent" | "dimension") | (null);
    fill: ("void" | "material" | "zone" | "accent" | "ink") | (null);
    d: string;
  })[];
};

export type Tie = {
  setCodes: (string)[];
  packs: ({
    itemId: string;
    quantity: number;
  })[];
  chosenFor: ("useBy" | "statedLength" | "promises" | "mass" | "distance") | (null);
};

export type TimeSpread = {
  p50: number;
  p90: number;
};

export type ToAskFor = {
  notPlanned: (CaseLine)[];
  notConfirmed: ({
    line: CaseLine;
    newerDraft: boolean;
  })[];
  setsPastUseBy: ({
    id: string;
    code: string;
    useBy: string;
    references: (string)[];
  })[];
  packsPastUseBy: ({
    itemId: string;
    form: "pouch" | "sterilePacked" | "unsterile";
    quantity: number;
    lot: (null) | (string);
    useBy: string;
    place: string;
    heldBecause: (null) | (string);
    references: (string)[];
  })[];
  lowScrews: (LowScrew)[];
};

export type Topic = {
  title: string;
  href: string;
  count: number;
  tone: "unknown" | "neutral" | "good" | "attention" | "stop";
  none: string;
  lines: ({
    key: string;
    what: string;
    detail: string;
    href: string;
  })[];
};

export type TracedCase = {
  id: string;
  reference: string;
  date: string;
  surgeon: (null) | (string);
  standing: "confirmed" | "possible" | "excluded";
  lo: (null) | (number);
  hi: (null) | (number);
  reasons: (string)[];
};

export type Tried = {
  requires: string;
  appliesWhen: string;
  effect: string;
  counts: (string)[];
  groups: (string)[];
};

export type TurnHistory = {
  id: string;
  number: number;
  beganAt: string;
  events: (SetEvent)[];
};

export type TurnedBetween = {
  setId: (null) | (string);
  code: string;
  first: string;
  second: string;
  secondCaseId: string;
  firstEndsAt: string;
  backAt: (null) | (string);
  needByAt: (null) | (string);
  marginMinutes: (null) | (number);
  tight: boolean;
};

export type Unavailable = ({
  kind: "notInStore";
  step: string;
  readyAt: (null) | (string);
}) | ({
  kind: "held";
  reason: string;
}) | ({
  kind: "pastUseBy";
  useBy: string;
}) | ({
  kind: "shortForOneCase";
  reference: (null) | (string);
}) | ({
  kind: "onOtherKit";
  reference: string;
}) | ({
  kind: "letOutForOneCase";
  reference: string;
});

export type UnavailableSet = {
  setId: string;
  code: string;
  configurationName: string;
  because: Unavailable;
  wouldMeet: (string)[];
};

export type UsageOrderLineOnRecord = {
  id: string;
  lineNo: number;
  way: "takenBack" | "used";
  moveSeq: number;
  itemId: string;
  code: string;
  gtin: (null) | (string);
  name: string;
  lot: (null) | (string);
  useBy: (null) | (string);
  pieces: number;
  outcome: "notFound" | "implanted" | "openedNotImplanted" | "droppedOrDamaged" | "pastUseBy" | "foundAgain";
  caseId: (null) | (string);
  reference: (null) | (string);
  doneOn: string;
  knownBy: "heap" | "lotRead" | "othersTooFew";
  replace: (boolean) | (null);
};

export type UsageOrderOnList = {
  id: string;
  number: string;
  owner: string;
  lenderId: string;
  state: "withdrawn" | "approved" | "made" | "sent";
  madeAt: string;
  madeBy: string;
  sentAt: (null) | (string);
  lines: number;
  pieces: number;
  toReplace: number;
};

export type UsageOrderOnRecord = {
  id: string;
  number: string;
  revision: number;
  state: "withdrawn" | "approved" | "made" | "sent";
  lenderId: string;
  owner: string;
  address: (null) | (string);
  madeBy: string;
  madeAt: string;
  approvedBy: (null) | (string);
  approvedAt: (null) | (string);
  sentBy: (null) | (string);
  sentAt: (null) | (string);
  sentHow: (null) | (string);
  withdrawnBy: (null) | (string);
  withdrawnAt: (null) | (string);
  withdrawnBecause: (null) | (string);
  settledBy: (null) | (string);
  settledAt: (null) | (string);
  settledBecause: (null) | (string);
  lines: (UsageOrderLineOnRecord)[];
  uncertain: ({
    set: string;
    code: string;
    name: string;
    reference: (null) | (string);
    outcome: "notFound" | "implanted" | "openedNotImplanted" | "droppedOrDamaged" | "pastUseBy" | "setAside" | "foundAgain";
    pieces: number;
    lo: number;
    hi: number;
  })[];
};

export type UseQuestion = ({
  kind: "stillOut";
  key: string;
  pieces: number;
}) | ({
  kind: "openedUnsaid";
  key: string;
  pieces: number;
}) | ({
  kind: "beyond";
  key: string;
  pieces: number;
}) | ({
  kind: "countDiffers";
  key: string;
  back: number;
  counted: number;
}) | ({
  kind: "notFound";
  key: string;
  pieces: number;
}) | ({
  kind: "notCounted";
  key: string;
  setId: string;
}) | ({
  kind: "severalHere";
  key: string;
}) | ({
  kind: "noReason";
  key: string;
  pieces: number;
}) | ({
  kind: "countQuestion";
  key: string;
  questionId: string;
});

export type UseRecorded = {
  caseId: string;
  reference: string;
  caseDate: string;
  beganAt: string;
  closedAt: (null) | (string);
};

export type Verdict = {
  relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
  outcome: "notEstablished" | "fits" | "doesNotFit";
  findings: (Finding)[];
};

export type VersionOnFile = {
  content: ConfigurationVersion;
  note: (null) | (string);
  draftedBy: (null) | ({
    id: string;
    name: string;
  });
  approvedBy: (null) | ({
    id: string;
    name: string;
  });
  inForceFrom: (null) | (string);
  approvedAt: (null) | (string);
  revision: number;
};

export type WaitingLine = {
  code: string;
  name: string;
  reference: (null) | (string);
  way: "takenBack" | "used";
  moveSeq: number;
  itemId: string;
  lot: (null) | (string);
  useBy: (null) | (string);
  pieces: number;
  outcome: "notFound" | "implanted" | "openedNotImplanted" | "droppedOrDamaged" | "pastUseBy" | "foundAgain";
  caseId: (null) | (string);
  doneOn: string;
  knownBy: "heap" | "lotRead" | "othersTooFew";
};

export type WaitingPack = {
  id: string;
  number: string;
  name: string;
  kind: "set" | "pouch";
  packedAt: string;
};

export type WantedSet = {
  set: DaySetFacts;
  expected: (null) | ({
    p50At: string;
    p90At: string;
  });
  by: ({
    caseId: string;
    reference: string;
    needByAt: (null) | (string);
    promised: boolean;
  })[];
  needByAt: (null) | (string);
  marginMinutes: (null) | (number);
};

export type WayOut = {
  key: string;
  title: string;
  does: (string)[];
  costs: (string)[];
  confirm: (null) | (string);
  requests: ({
    label: string;
    href: string;
  })[];
};

export type WayTaken = {
  done: string;
  planned: (null) | (PlannedAnew);
};

export type WayToServe = {
  parts: ((string)[])[];
  packs: ({
    stockId: string;
    quantity: number;
  })[];
  asWished: boolean;
};

export type WaysToServe = {
  outcome: "short" | "canBeMet" | "nothingNeeded";
  ways: (WayToServe)[];
  all: boolean;
  missing: (MissingPieces)[];
  outOfReach: (string)[];
};

export type Why = ({
  kind: "read";
  pieces: number;
}) | ({
  kind: "otherRead";
  pieces: number;
}) | ({
  kind: "leftBefore";
  pieces: number;
}) | ({
  kind: "othersTooFew";
  pieces: number;
  others: number;
}) | ({
  kind: "noneLeft";
}) | ({
  kind: "noMoreOfIt";
  most: number;
  unread: number;
}) | ({
  kind: "mixed";
  unread: number;
}) | ({
  kind: "contradicted";
  unread: number;
});

export type WithoutOne = {
  setId: string;
  code: string;
  missing: ({
    needId: string;
    steps: (string)[];
    role: "backUp" | "need" | "withoutCaution";
  })[];
};

export type WorkLine = {
  set: {
    id: string;
    code: string;
    revision: number;
  };
  configuration: string;
  where: string;
  held: boolean;
  since: string;
  act: "liftHold" | "count" | "pack" | "load" | "receive" | "beginWash" | "endWash" | "decideShort" | "unload" | "accept";
  mayAct: boolean;
  href: (null) | (string);
  late: (null) | (string);
  wanted: (null) | ({
    words: string;
    href: string;
  });
  need: (null) | ({
    words: string;
    href: string;
    when: string;
  });
  begin: string;
  takes: string;
  working: (string)[];
  standing: (null) | ({
    word: string;
    tone: "unknown" | "neutral" | "good" | "attention" | "stop";
  });
  stops: (string)[];
};

export type WorkingStep = {
  label: string;
  expression: string;
  value: string;
};

export type WorkstationOnFile = {
  enrolledBy: string;
  enrolledAt: string;
  withdrawnAt: (null) | (string);
  id: string;
  name: string;
};

/** Every operation by its method and address. */
export interface Operations {

  /** Records what became of pieces put aside. */
  'POST /api/v1/aside/{id}/settle': {
    path: { id: string };
    body: {
      outcome: "repaired" | "discarded" | "notRepairable";
      placeId?: (string) | (null);
    };
    answer: {
      outcome: "repaired" | "discarded" | "notRepairable";
    };
  };

  /** Pieces put aside, the longest ago first: those that nobody has settled, unless the settled ones are asked for. */
  'GET /api/v1/aside': {
    query: { settled?: "yes" | "no"; limit?: number; cursor?: string };
    answer: {
      items: (AsidePiece)[];
      next: (null) | (string);
    };
  };

  /** Gives up an open count; its entries stay on record and count for nothing. */
  'POST /api/v1/bench/{id}/abandon': {
    path: { id: string };
    answer: {
      countId: string;
    };
  };

  /** Closes a count: nothing of it may be pending, and whoever closes it proves who they are. */
  'POST /api/v1/bench/{id}/close': {
    path: { id: string };
    body: {
      entryIds: (string)[];
      meaning: "iCounted" | "iChecked";
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
      second?: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: ClosedCount;
  };

  /** Makes entries durable, in order, and answers for each: the answer to one sent before is what it was then. */
  'POST /api/v1/bench/{id}/entries': {
    path: { id: string };
    body: {
      entries: ({
        entry: {
          id: string;
          act: ({
            kind: "found";
            lineId: string;
            pieces: number;
          }) | ({
            kind: "oneMore";
            lineId: string;
            serial: (string) | (null);
          }) | ({
            kind: "fault";
            lineId: string;
            pieces: number;
            condition: "bent" | "blunt" | "corroded" | "stained" | "markingGone" | "boreWorn";
            route: "repair" | "discard";
          }) | ({
            kind: "refill";
            lineId: string;
            pieces: number;
            from: ({
              kind: "stock";
              stockId: string;
              form: "pouch" | "sterilePacked" | "unsterile";
              lot: (string) | (null);
              useBy: (string) | (null);
            }) | ({
              kind: "other";
              where: string;
            });
          }) | ({
            kind: "foreign";
            itemId: string;
            pieces: number;
            note: (string) | (null);
          }) | ({
            kind: "surplusHome";
            lineId: string;
            pieces: number;
            home: ({
              kind: "set";
              setId: string;
            }) | ({
              kind: "elsewhere";
              where: string;
            });
          }) | ({
            kind: "foreignHome";
            itemId: string;
            pieces: number;
            home: ({
              kind: "set";
              setId: string;
            }) | ({
              kind: "elsewhere";
              where: string;
            });
          }) | ({
            kind: "looked";
            layer: number;
          }) | ({
            kind: "undo";
            entryId: string;
          }) | ({
            kind: "note";
            text: string;
          });
          doneAt: string;
          scanId?: (string) | (null);
        };
        session: {
          id: string;
          ticket: string;
        };
      })[];
    };
    answer: {
      delivered: (({
        id: string;
        ok: true;
        enteredAt: string;
      }) | ({
        id: string;
        ok: false;
        because: string;
        sentence: string;
      }))[];
    };
  };

  /** Other sets a piece may belong to, those that lack it first. */
  'GET /api/v1/bench/{id}/homes': {
    path: { id: string };
    query: { item: string };
    answer: {
      homes: (SetWithItem)[];
    };
  };

  /** Puts pieces into a line: off the shelf and into the count in one write. */
  'POST /api/v1/bench/{id}/refill': {
    path: { id: string };
    body: {
      entry: {
        id: string;
        act: ({
          kind: "found";
          lineId: string;
          pieces: number;
        }) | ({
          kind: "oneMore";
          lineId: string;
          serial: (string) | (null);
        }) | ({
          kind: "fault";
          lineId: string;
          pieces: number;
          condition: "bent" | "blunt" | "corroded" | "stained" | "markingGone" | "boreWorn";
          route: "repair" | "discard";
        }) | ({
          kind: "refill";
          lineId: string;
          pieces: number;
          from: ({
            kind: "stock";
            stockId: string;
            form: "pouch" | "sterilePacked" | "unsterile";
            lot: (string) | (null);
            useBy: (string) | (null);
          }) | ({
            kind: "other";
            where: string;
          });
        }) | ({
          kind: "foreign";
          itemId: string;
          pieces: number;
          note: (string) | (null);
        }) | ({
          kind: "surplusHome";
          lineId: string;
          pieces: number;
          home: ({
            kind: "set";
            setId: string;
          }) | ({
            kind: "elsewhere";
            where: string;
          });
        }) | ({
          kind: "foreignHome";
          itemId: string;
          pieces: number;
          home: ({
            kind: "set";
            setId: string;
          }) | ({
            kind: "elsewhere";
            where: string;
          });
        }) | ({
          kind: "looked";
          layer: number;
        }) | ({
          kind: "undo";
          entryId: string;
        }) | ({
          kind: "note";
          text: string;
        });
        doneAt: string;
        scanId?: (string) | (null);
      };
      second?: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: RecordedEntry;
  };

  /** One count at the bench; what was entered is told to whoever counts, while they do. */
  'GET /api/v1/bench/{id}': {
    path: { id: string };
    answer: {
      entries: (null) | ((BenchEntry)[]);
      id: string;
      set: {
        id: string;
        code: string;
      };
      purpose: "check" | "count" | "settle";
      person: {
        id: string;
        name: string;
      };
      beganAt: string;
      closedAt: (null) | (string);
      abandonedAt: (null) | (string);
    };
  };

  /** Lots from which a line may be refilled today, the first use-by first. */
  'GET /api/v1/bench/{id}/shelf': {
    path: { id: string };
    query: { line: string };
    answer: {
      lots: (ShelfLot)[];
    };
  };

  /** What would stop if the set held what was entered so far, and where the nearest spare of each short line is. */
  'POST /api/v1/bench/{id}/shortage': {
    path: { id: string };
    body: {
      found: { [name: string]: number };
      foreign: number;
    };
    answer: {
      stops: ({
        about: string;
        words: string;
      })[];
      maySend: {
        who: string;
        because: string;
        tone: "unknown" | "good" | "attention" | "stop";
      };
      spares: ({
        lineId: string;
        name: string;
        shelf: (string)[];
        sets: (string)[];
      })[];
    };
  };

  /** Counts at the bench, the last begun first: of which set, by whom and when; never what was found. */
  'GET /api/v1/bench': {
    query: { set?: string; limit?: number; cursor?: string };
    answer: {
      items: (BenchCountRecorded)[];
      next: (null) | (string);
    };
  };

  /** Begins a count of a set, or takes up the one this person has open. */
  'POST /api/v1/bench': {
    body: {
      countId: string;
      setId: string;
      purpose: "count" | "check" | "settle";
    };
    answer: BegunCount;
  };

  /** One calculation, described. */
  'GET /api/v1/calculations/{name}': {
    path: { name: string };
    answer: CalculationDescription;
  };

  /** Runs one calculation on the JSON sent; what is wrong comes back as an RFC 9457 problem, every fault with its path. */
  'POST /api/v1/calculations/{name}': {
    path: { name: string };
    answer: CalculationJson;
  };

  /** All calculations, each with its input and output as JSON Schema. */
  'GET /api/v1/calculations': {
    answer: {
      calculations: (CalculationDescription)[];
    };
  };

  /** Takes a case off the list, with the reason. */
  'POST /api/v1/cases/{id}/cancel': {
    path: { id: string };
    body: {
      baseRevision?: number;
      because: string;
    };
    answer: {
      revision: number;
      freed: (string)[];
      planned: (null) | (PlannedAnew);
    };
  };

  /** Takes the promise of a set to a case back. */
  'POST /api/v1/cases/{id}/free': {
    path: { id: string };
    body: {
      baseRevision?: number;
      setId: string;
    };
    answer: {
      setCode: string;
      planned: (null) | (PlannedAnew);
    };
  };

  /** POST a construct, get how its kit would stand in this case now: the answer the planner shows while it is edited. */
  'POST /api/v1/cases/{id}/kit-preview': {
    path: { id: string };
    body: {
      region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
      limb: ("left" | "right") | (null);
      bone: "normal" | "poor" | "notStated";
      plates: ({
        key: string;
        plateItemId: string;
        zone: ({
          fromUm: number;
          toUm: number;
        }) | (null);
        principle: ("compression" | "bridging" | "combined" | "buttress" | "neutralisation") | (null);
        fills: { [name: string]: ({
          purpose: "empty";
        }) | ({
          purpose: "neutral";
          screwFamily: string;
          cortices: (1) | (2);
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (string) | (null);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
        }) | ({
          purpose: "offset";
          screwFamily: string;
          cortices: (1) | (2);
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (string) | (null);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
        }) | ({
          purpose: "lag";
          screwFamily: string;
          cortices: (1) | (2);
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (string) | (null);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
        }) | ({
          purpose: "locked";
          screwFamily: string;
          cortices: (1) | (2);
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (string) | (null);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
        }) | ({
          purpose: "temporaryWire";
          wireItemId: string;
        }) };
      })[];
      freeScrews: ({
        key: string;
        screwFamily: string;
        cortices: (1) | (2);
        length: ({
          kind: "exact";
          mm: number;
        }) | ({
          kind: "spread";
          meanMm: number;
          sdMm: number;
          sourceNote: (string) | (null);
        }) | ({
          kind: "notStated";
        });
        acceptLongerMm: number;
        washerItemId: (string) | (null);
      })[];
      sharedLengthSdMm: (number) | (null);
      note: (string) | (null);
    };
    answer: KitSummary;
  };

  /** The input with which `fewest-trays`, `buildable` or `length-cover` repeats a figure of this case's kit from outside. */
  'GET /api/v1/cases/{id}/kit-working/{name}': {
    path: { id: string; name: string };
    answer: { [name: string]: unknown };
  };

  /** The second person’s check of a kit, as far as whoever asks may see it. */
  'GET /api/v1/cases/{id}/kit/check': {
    path: { id: string };
    answer: CheckScreen;
  };

  /** Begins the second person's check of a picked kit, or takes up the one they have open. */
  'POST /api/v1/cases/{id}/kit/check': {
    path: { id: string };
    body: {
      checkId: string;
    };
    answer: {
      checkId: string;
    };
  };

  /** Says that the kit is picked. */
  'POST /api/v1/cases/{id}/kit/finish': {
    path: { id: string };
    body: {
      baseRevision?: number;
      note: (string) | (null);
    };
    answer: {
      revision: number;
    };
  };

  /** The whole kit leaves the store, or nothing of it does. */
  'POST /api/v1/cases/{id}/kit/issue': {
    path: { id: string };
    body: {
      baseRevision?: number;
    };
    answer: {
      revision: number;
    };
  };

  /** What is to be fetched for a case, what of it is fetched, and by whom it was picked, checked, issued and taken. */
  'GET /api/v1/cases/{id}/kit/list': {
    path: { id: string };
    answer: KitScreen;
  };

  /** Works out what there is to fetch for the confirmed plan, and keeps it as the list everybody picks by. */
  'POST /api/v1/cases/{id}/kit/list': {
    path: { id: string };
    body: {
      baseRevision?: number;
    };
    answer: {
      revision: number;
    };
  };

  /** Makes picks and what is put back durable, in order. */
  'POST /api/v1/cases/{id}/kit/picks': {
    path: { id: string };
    body: {
      entries: ({
        entry: ({
          kind: "pick";
          id: string;
          thing: ({
            kind: "set";
            setId: string;
            packId: (string) | (null);
          }) | ({
            kind: "pouch";
            packId: string;
          }) | ({
            kind: "stock";
            stockId: string;
          }) | ({
            kind: "item";
            itemId: string;
            lot: (string) | (null);
            useBy: (string) | (null);
          });
          quantity: number;
          how: "scan" | "touch";
          scanId?: (string) | (null);
          doneAt: string;
        }) | ({
          kind: "putBack";
          id: string;
          pickId: string;
          doneAt: string;
        });
        session: {
          id: string;
          ticket: string;
        };
      })[];
    };
    answer: {
      delivered: (({
        id: string;
        ok: true;
        enteredAt: string;
      }) | ({
        id: string;
        ok: false;
        because: string;
        sentence: string;
      }))[];
    };
  };

  /** What is out for a case and has to be accounted for. */
  'GET /api/v1/cases/{id}/kit/returns': {
    path: { id: string };
    answer: {
      stage: "notBegun" | "picking" | "picked" | "checked" | "issued" | "inTheatre" | "back" | "toPutBack" | "cancelled";
      things: (IssuedThing)[];
    };
  };

  /** What became of something that was issued; what comes back unopened takes a proof of whoever looked at its barrier. */
  'POST /api/v1/cases/{id}/kit/returns': {
    path: { id: string };
    body: {
      returned: {
        id: string;
        pickId: string;
        outcome: "cameBack" | "returnedUnopened" | "opened" | "damaged" | "notFound";
        quantity: number;
        note: (string) | (null);
      };
      proof?: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: {
      id: string;
      stillOut: number;
    };
  };

  /** The kit for a case from what is in store now: sets, packs, what is short, and why. */
  'GET /api/v1/cases/{id}/kit': {
    path: { id: string };
    answer: ({
      kind: "noPlan";
      caseId: string;
      planVersion?: never;
      newerDraft?: never;
      kit?: never;
      list?: never;
    }) | ({
      kind: "kit";
      caseId: string;
      planVersion: number;
      newerDraft: (null) | (number);
      kit: CaseKit;
      list: (null) | (ListFollowed);
    });
  };

  /** The kit has arrived in theatre and is taken over there. */
  'POST /api/v1/cases/{id}/kit/take': {
    path: { id: string };
    body: {
      baseRevision?: number;
    };
    answer: {
      revision: number;
    };
  };

  /** Moves a case to another time or theatre. */
  'POST /api/v1/cases/{id}/move': {
    path: { id: string };
    body: {
      baseRevision?: number;
      date: string;
      time: string;
      which?: "first" | "second";
      minutes: number;
      theatreId: string;
    };
    answer: {
      revision: number;
      lost: (LostPromise)[];
      planned: (null) | (PlannedAnew);
    };
  };

  /** Every version of the plan of a case, the newest first. */
  'GET /api/v1/cases/{id}/plans': {
    path: { id: string };
    query: { limit?: number; cursor?: string };
    answer: {
      items: ((DraftPlan) | (FrozenPlan))[];
      next: (null) | (string);
    };
  };

  /** Promises a set to a case. */
  'POST /api/v1/cases/{id}/promise': {
    path: { id: string };
    body: {
      baseRevision?: number;
      setId: string;
    };
    answer: {
      setCode: string;
      planned: (null) | (PlannedAnew);
    };
  };

  /** Puts a cancelled case back on the list. */
  'POST /api/v1/cases/{id}/put-back': {
    path: { id: string };
    body: {
      baseRevision?: number;
    };
    answer: {
      revision: number;
      planned: (null) | (PlannedAnew);
    };
  };

  /** How a case stands now, in a word and a sentence. */
  'GET /api/v1/cases/{id}/readiness': {
    path: { id: string };
    answer: {
      readiness: (null) | (Standing);
    };
  };

  /** One case: when and where it is, the versions of its plan, the sets promised to it, and its loans. */
  'GET /api/v1/cases/{id}': {
    path: { id: string };
    answer: {
      isEmergency: boolean;
      origin: CaseOrigin;
      plans: ({
        id: string;
        version: number;
        status: "draft" | "confirmed" | "superseded";
      })[];
      promised: (PromisedSet)[];
      loans: (LoanOnBoard)[];
      short: (ShortForCase)[];
      id: string;
      reference: string;
      theatreId: string;
      theatre: string;
      caseDate: string;
      startsAt: string;
      endsAt: string;
      region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
      limb: "left" | "right";
      surgeonId: string;
      surgeon: string;
      urgency: "booked" | "soon" | "today" | "now";
      revision: number;
      cancelled: (null) | ({
        at: string;
        because: string;
      });
    };
  };

  /** The counts in theatre of a case, and what did not come out; an open count is told to whoever counts it. */
  'GET /api/v1/cases/{id}/theatre-counts': {
    path: { id: string };
    answer: {
      openBy: (null) | (string);
      open: (null) | (OpenTheatreCount);
      inTheatre: ({
        id: string;
        code: string;
      })[];
      closed: ({
        id: string;
        moment: "first" | "final";
        by: string;
        with: string;
        at: string;
        figures: (Reckoned)[];
        notOpened: (string)[];
      })[];
      questions: (TheatreQuestion)[];
    };
  };

  /** Begins a count in theatre, or takes up the one this person has open. */
  'POST /api/v1/cases/{id}/theatre-counts': {
    path: { id: string };
    body: {
      countId: string;
      moment: "first" | "final";
    };
    answer: {
      countId: string;
    };
  };

  /** What a case had, piece by piece: of which lots it can have been, from which set, pack and load. */
  'GET /api/v1/cases/{id}/trace': {
    path: { id: string };
    answer: CaseTrace;
  };

  /** Makes a case more or less urgent. */
  'POST /api/v1/cases/{id}/urgency': {
    path: { id: string };
    body: {
      baseRevision?: number;
      urgency: "booked" | "soon" | "today" | "now";
    };
    answer: {
      revision: number;
      planned: (null) | (PlannedAnew);
    };
  };

  /** Closes the record of use of a case: whoever recorded it proves who they are. */
  'POST /api/v1/cases/{id}/use/close': {
    path: { id: string };
    body: {
      entryIds: (string)[];
      questions: (string)[];
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: ClosedUse;
  };

  /** Makes entries of the record of use of a case durable, in order. */
  'POST /api/v1/cases/{id}/use/entries': {
    path: { id: string };
    body: {
      entries: ({
        entry: {
          id: string;
          act: ({
            kind: "piece";
            source: ({
              kind: "slot";
              setId: string;
              lineId: string;
            }) | ({
              kind: "pack";
              pickId: string;
              returnId: (string) | (null);
            });
            itemId: string;
            quantity: number;
            outcome: "implanted" | "openedNotImplanted" | "returnedUnopened" | "droppedOrDamaged" | "notFound";
            lostAt: ("atOpening" | "during" | "atCount" | "comingBack") | (null);
            place: (({
              kind: "plate";
              plate: string;
            }) | ({
              kind: "hole";
              plate: string;
              hole: string;
            }) | ({
              kind: "free";
              screw: string;
            })) | (null);
            lot: ({
              kind: "read";
              lot: string;
              useBy: (string) | (null);
            }) | ({
              kind: "asIssued";
            }) | ({
              kind: "setAndLoad";
            });
            despite: ("pastUseBy" | "held" | "recalled")[];
            note: (string) | (null);
            because: (string) | (null);
          }) | ({
            kind: "reason";
            entryId: string;
            reasonId: (string) | (null);
            because: (string) | (null);
          }) | ({
            kind: "delay";
            minutes: (number) | (null);
            reasonId: (string) | (null);
            step: ("beforeStart" | "layingUp" | "during" | "atCount" | "afterwards") | (null);
            about: (({
              kind: "set";
              setId: string;
            }) | ({
              kind: "item";
              itemId: string;
            })) | (null);
            note: (string) | (null);
            because: (string) | (null);
          }) | ({
            kind: "takenBack";
            entryId: string;
            because: (string) | (null);
          });
          scanId: (string) | (null);
          doneAt: string;
        };
        session: {
          id: string;
          ticket: string;
        };
      })[];
    };
    answer: {
      delivered: (({
        id: string;
        ok: true;
        enteredAt: string;
      }) | ({
        id: string;
        ok: false;
        because: string;
        sentence: string;
      }))[];
    };
  };

  /** What the record of use of a case leaves open now: whoever closes it sends the texts along as seen. */
  'GET /api/v1/cases/{id}/use/questions': {
    path: { id: string };
    query: { limit?: number; cursor?: string };
    answer: {
      items: (OpenUseQuestion)[];
      next: (null) | (string);
    };
  };

  /** The record of what was used in a case; nothing of a set that whoever asks counts blind. */
  'GET /api/v1/cases/{id}/use': {
    path: { id: string };
    answer: RecordOfUse;
  };

  /** What can be done for a case at risk, the cheapest first; worked out for this one case, now. */
  'GET /api/v1/cases/{id}/ways-out': {
    path: { id: string };
    answer: {
      revision: number;
      waysOut: (WayOut)[];
    };
  };

  /** Takes one of the ways out of a case at risk, as it was seen. */
  'POST /api/v1/cases/{id}/ways-out': {
    path: { id: string };
    body: {
      baseRevision?: number;
      key: string;
    };
    answer: WayTaken;
  };

  /** Theatres and surgeons that a booking chooses from. */
  'GET /api/v1/cases/choices': {
    answer: {
      theatres: ({
        id: string;
        name: string;
        leadMinutes: (null) | (number);
        revision: number;
      })[];
      surgeons: ({
        id: string;
        name: string;
      })[];
    };
  };

  /** Tries a theatre list, or imports it as it was tried. */
  'POST /api/v1/cases/import': {
    body: {
      file: string;
      choices: {
        sheet: (string) | (null);
        columns: { [name: string]: (number) | (null) };
        dateOrder: ("dayFirst" | "monthFirst") | (null);
        repeatedHour: ("first" | "second") | (null);
        urgencyWhereNone: ("booked" | "soon" | "today" | "now") | (null);
      };
      digest: (string) | (null);
    };
    answer: {
      planned: (null) | (string);
      columns: (FileColumn)[];
      open: {
        dateOrder: boolean;
        repeatedHour: boolean;
        urgency: boolean;
      };
      lines: (ImportLine)[];
      choices: Choices;
      sheet: (null) | (string);
      digest: string;
      understood: (string)[];
      sheets: (string)[];
      chosen: (null) | (ColumnChoice);
      links: number;
      problems: (ProblemLine)[];
      notNamed: (string)[];
      lost: (string)[];
      importedBefore: (null) | (string);
      done: (null) | ({
        booked: number;
        moved: number;
        linked: number;
      });
    };
  };

  /** The theatre list from one day up to another, in the order of day and time. */
  'GET /api/v1/cases': {
    query: { from?: string; before?: string; cancelled?: "yes"; limit?: number; cursor?: string };
    answer: {
      items: (ListedCase)[];
      next: (null) | (string);
    };
  };

  /** Books a case; a saved start it is booked from gives it the first draft of its plan. */
  'POST /api/v1/cases': {
    body: {
      theatreId: (string) | ("");
      date: string;
      time: string;
      which?: "first" | "second";
      minutes: number;
      region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
      limb: "left" | "right";
      surgeonId: (string) | ("");
      urgency: "booked" | "soon" | "today" | "now";
      startId: (string) | (null);
      cardId?: (string) | (null);
    };
    answer: BookedCase;
  };

  /** One item: what is known of its design, and where it is listed, lies and is planned. */
  'GET /api/v1/catalogue/items/{id}': {
    path: { id: string };
    answer: {
      use: ItemUse;
      item: ({
        kind: "plate";
        shape: "straightNarrow" | "straightBroad" | "oneThirdTubular" | "tRightAngled" | "tOblique" | "lShaped" | "cloverleaf" | "reconstruction" | "buttress" | "anatomic";
        takesThreadsUm: (number)[];
        lengthUm: (null) | (number);
        widthUm: (null) | (number);
        headWidthUm: (null) | (number);
        thicknessUm: (null) | (number);
        lookAlikeOf: (null) | (string);
        holes: ({
          id: string;
          segment: "shaft" | "head";
          holeClass: "round" | "compressionSlot" | "threaded" | "polyaxialThreaded" | "twoZone" | "elongatedSlot" | "wireHole";
          alongUm: number;
          acrossUm: number;
          tiltAlongDegrees: number;
          tiltAcrossDegrees: number;
          openingUm: (null) | (number);
          seatUm: (null) | (number);
          plainSeat: ("spherical" | "conical") | (null);
          slotUm: (null) | (number);
          lockingFamily: (null) | (string);
          lockingConeDegrees: (null) | (number);
        })[];
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "screw";
        screwKind: "cortical" | "cancellousFull" | "cancellousPartial" | "locking" | "cannulated";
        screwFamily: string;
        threadForm: ("other" | "locking" | "HA" | "HB" | "HC" | "HD") | (null);
        threadUm: (null) | (number);
        coreUm: (null) | (number);
        shaftUm: (null) | (number);
        threadLengthUm: (null) | (number);
        pitchUm: (null) | (number);
        head: ("threaded" | "spherical" | "conicalPlain") | (null);
        headUm: (null) | (number);
        lockingFamily: (null) | (string);
        drive: (null) | ({
          form: "hexagonSocket";
          acrossFlatsUm: number;
        }) | ({
          form: "hexalobular";
          number: number;
        }) | ({
          form: "crossSlot";
          sizeUm: number;
        }) | ({
          form: "singleSlot";
          sizeUm: number;
        }) | ({
          form: "square";
          sizeUm: number;
        });
        tip: ("blunt" | "selfTapping" | "selfDrillingSelfTapping") | (null);
        cannulationUm: (null) | (number);
        torqueNmm: (null) | (number);
        countersinkStated: (boolean) | (null);
        lengthUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "washer";
        innerUm: (null) | (number);
        outerUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "drillBit";
        diameterUm: (null) | (number);
        lengthUm: (null) | (number);
        coupling: (null) | ({
          form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
          sizeUm: number;
        });
        cannulationUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "drillSleeve";
        form: "threaded" | "dualPosition" | "doubleEnded" | "insert" | "tissueProtection";
        ends: ({
          boreUm: (null) | (number);
          outerUm: (null) | (number);
          outerForm: ("threaded" | "spherical" | "cylindrical" | "pronged") | (null);
          seatsOn: (null) | (("round" | "compressionSlot" | "threaded" | "polyaxialThreaded" | "twoZone" | "elongatedSlot" | "wireHole" | "bone" | "glidingHole")[]);
          positions: (null) | (("neutral" | "offset" | "centred")[]);
          lockingFamily: (null) | (string);
        })[];
        onlyForPlates: (null) | ((string)[]);
        lengthUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "tap";
        threadForm: ("other" | "locking" | "HA" | "HB" | "HC" | "HD") | (null);
        threadUm: (null) | (number);
        lengthUm: (null) | (number);
        coupling: (null) | ({
          form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
          sizeUm: number;
        });
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "countersink";
        headUm: (null) | (number);
        pinUm: (null) | (number);
        coupling: (null) | ({
          form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
          sizeUm: number;
        });
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "depthGauge";
        fromUm: (null) | (number);
        toUm: (null) | (number);
        hookUm: (null) | (number);
        forThreadsUm: (null) | ((number)[]);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "driver";
        drive: (null) | ({
          form: "hexagonSocket";
          acrossFlatsUm: number;
        }) | ({
          form: "hexalobular";
          number: number;
        }) | ({
          form: "crossSlot";
          sizeUm: number;
        }) | ({
          form: "singleSlot";
          sizeUm: number;
        }) | ({
          form: "square";
          sizeUm: number;
        });
        holdsScrew: (boolean) | (null);
        lengthUm: (null) | (number);
        coupling: (null) | ({
          form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
          sizeUm: number;
        });
        fixedHandle: boolean;
        cannulationUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "handle";
        form: "straight" | "tShaped" | "ratchet" | "power";
        takes: (null) | (({
          form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
          sizeUm: number;
        })[]);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "torqueLimiter";
        torqueNmm: (null) | (number);
        takes: (null) | (({
          form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
          sizeUm: number;
        })[]);
        coupling: (null) | ({
          form: "hexShank" | "flattedShank" | "grooveShank" | "roundShank" | "wire";
          sizeUm: number;
        });
        fixedHandle: boolean;
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "guideWire";
        diameterUm: (null) | (number);
        lengthUm: (null) | (number);
        threadedTip: (boolean) | (null);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "reductionForceps";
        jaw: ("pointed" | "serrated" | "toothed" | "ballTipped") | (null);
        lengthUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "plateBender";
        form: ("bendingPress" | "bendingIron" | "bendingPliers") | (null);
        takesThicknessUm: (null) | (number);
        takesWidthUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "holder";
        holds: ("plate" | "screw" | "wire" | "bone") | (null);
        lengthUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        lengthUm: (null) | (number);
        widthUm: (null) | (number);
        heightUm: (null) | (number);
        kind: "rack";
        rows: number;
        columns: number;
        forThreadUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        lengthUm: (null) | (number);
        widthUm: (null) | (number);
        heightUm: (null) | (number);
        kind: "basket";
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        lengthUm: (null) | (number);
        widthUm: (null) | (number);
        heightUm: (null) | (number);
        kind: "container";
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "generalInstrument";
        purpose: (null) | (string);
        lengthUm: (null) | (number);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      }) | ({
        kind: "consumable";
        purpose: (null) | (string);
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      });
      revision: number;
      maker: string;
    };
  };

  /** Saves an item's form over the revision it was filled from. */
  'PUT /api/v1/catalogue/items/{id}': {
    path: { id: string };
    body: {
      revision?: number;
      draft: { [name: string]: string };
    };
    answer: {
      id: string;
      revision: number;
    };
  };

  /** Withdraws an item for a reason. */
  'POST /api/v1/catalogue/items/{id}/withdraw': {
    path: { id: string };
    answer: {
      id: string;
      revision: number;
    };
  };

  /** Items of the catalogue, all of them or those that a search leaves. */
  'GET /api/v1/catalogue/items': {
    query: { q?: string; kind?: "plate" | "screw" | "washer" | "drillBit" | "drillSleeve" | "tap" | "countersink" | "depthGauge" | "driver" | "handle" | "torqueLimiter" | "guideWire" | "reductionForceps" | "plateBender" | "holder" | "rack" | "basket" | "container" | "generalInstrument" | "consumable"; maker?: string; status?: "current" | "withdrawn" | "recalled"; missing?: "yes"; limit?: number; cursor?: string };
    answer: {
      items: (CatalogueRow)[];
      next: (null) | (string);
    };
  };

  /** Adds an item from a form. */
  'POST /api/v1/catalogue/items': {
    body: {
      id: string;
      kind: "plate" | "screw" | "washer" | "drillBit" | "drillSleeve" | "tap" | "countersink" | "depthGauge" | "driver" | "handle" | "torqueLimiter" | "guideWire" | "reductionForceps" | "plateBender" | "holder" | "rack" | "basket" | "container" | "generalInstrument" | "consumable";
      draft: { [name: string]: string };
    };
    answer: {
      id: string;
      revision: number;
    };
  };

  /** Every maker there are items of. */
  'GET /api/v1/catalogue/makers': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: ({
        id: string;
        name: string;
      })[];
      next: (null) | (string);
    };
  };

  /** One page of what a search leaves, for the list as it is typed in. */
  'GET /api/v1/catalogue/search': {
    query: { q?: string; "list-sort"?: string; "list-page"?: string };
    answer: {
      rows: (CatalogueRow)[];
      found: number;
    };
  };

  /** Small drawings of the items named in `ids`, by id; unknown ids are left out. */
  'GET /api/v1/catalogue/thumbs': {
    query: { ids: string };
    answer: {
      thumbs: { [name: string]: Thumb };
    };
  };

  /** Tries a change against the whole catalogue and all plans, and keeps what it shows. */
  'POST /api/v1/changes/trials': {
    body: ({
      kind: "fit-rule" | "fit-exception";
      id: string;
      change: "putInForce" | "withdraw";
    }) | ({
      kind: "configuration-version";
      id: string;
      change: "putInForce";
    });
    answer: string;
  };

  /** Takes back the approval of a version whose day has not come. */
  'POST /api/v1/configurations/{id}/approval-back': {
    path: { id: string };
    body: {
      versionId: string;
      baseRevision?: number;
    };
    answer: {
      revision: number;
    };
  };

  /** Begins the next version as a copy of the one in force. */
  'POST /api/v1/configurations/{id}/draft': {
    path: { id: string };
    answer: {
      versionId: string;
      version: number;
    };
  };

  /** Saves the whole draft over the revision it was read at. */
  'PUT /api/v1/configurations/{id}/draft': {
    path: { id: string };
    body: {
      versionId: string;
      baseRevision?: number;
      entry: {
        layers: ({
          layer: number;
          name: string;
        })[];
        lines: ({
          id: string;
          itemId: string;
          layer: number;
          row: number;
          slot: number;
          rackItemId: (string) | (null);
          expected: number;
          minimum: number;
          mustHaveClass: (1) | (2) | (3) | (4);
          substitutes: (string)[];
        })[];
        promises: ({
          name: string;
          construct: {
            region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
            limb: ("left" | "right") | (null);
            bone: "normal" | "poor" | "notStated";
            plates: ({
              key: string;
              plateItemId: string;
              zone: ({
                fromUm: number;
                toUm: number;
              }) | (null);
              principle: ("compression" | "bridging" | "combined" | "buttress" | "neutralisation") | (null);
              fills: { [name: string]: ({
                purpose: "empty";
              }) | ({
                purpose: "neutral";
                screwFamily: string;
                cortices: (1) | (2);
                length: ({
                  kind: "exact";
                  mm: number;
                }) | ({
                  kind: "spread";
                  meanMm: number;
                  sdMm: number;
                  sourceNote: (string) | (null);
                }) | ({
                  kind: "notStated";
                });
                acceptLongerMm: number;
              }) | ({
                purpose: "offset";
                screwFamily: string;
                cortices: (1) | (2);
                length: ({
                  kind: "exact";
                  mm: number;
                }) | ({
                  kind: "spread";
                  meanMm: number;
                  sdMm: number;
                  sourceNote: (string) | (null);
                }) | ({
                  kind: "notStated";
                });
                acceptLongerMm: number;
              }) | ({
                purpose: "lag";
                screwFamily: string;
                cortices: (1) | (2);
                length: ({
                  kind: "exact";
                  mm: number;
                }) | ({
                  kind: "spread";
                  meanMm: number;
                  sdMm: number;
                  sourceNote: (string) | (null);
                }) | ({
                  kind: "notStated";
                });
                acceptLongerMm: number;
              }) | ({
                purpose: "locked";
                screwFamily: string;
                cortices: (1) | (2);
                length: ({
                  kind: "exact";
                  mm: number;
                }) | ({
                  kind: "spread";
                  meanMm: number;
                  sdMm: number;
                  sourceNote: (string) | (null);
                }) | ({
                  kind: "notStated";
                });
                acceptLongerMm: number;
              }) | ({
                purpose: "temporaryWire";
                wireItemId: string;
              }) };
            })[];
            freeScrews: ({
              key: string;
              screwFamily: string;
              cortices: (1) | (2);
              length: ({
                kind: "exact";
                mm: number;
              }) | ({
                kind: "spread";
                meanMm: number;
                sdMm: number;
                sourceNote: (string) | (null);
              }) | ({
                kind: "notStated";
              });
              acceptLongerMm: number;
              washerItemId: (string) | (null);
            })[];
            sharedLengthSdMm: (number) | (null);
            note: (string) | (null);
          };
        })[];
        basketItemId: (string) | (null);
        containerItemId: (string) | (null);
        note: (string) | (null);
      };
    };
    answer: {
      revision: number;
    };
  };

  /** Takes the draft away. */
  'DELETE /api/v1/configurations/{id}/draft': {
    path: { id: string };
    body: {
      versionId: string;
      baseRevision?: number;
    };
    answer: {
      version: number;
    };
  };

  /** Approves a draft, in force at once or from a day to come: by another person, who saw its trial and proves who they are. */
  'POST /api/v1/configurations/{id}/in-force': {
    path: { id: string };
    body: {
      versionId: string;
      baseRevision?: number;
      from: string;
      trialId: string;
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: {
      version: number;
      from: string;
    };
  };

  /** Makes a draft of what the review of a configuration proposes. */
  'POST /api/v1/configurations/{id}/proposal': {
    path: { id: string };
    body: {
      versionId: string;
      lines: ({
        lineId: string;
        expected: number;
      })[];
      because: string;
    };
    answer: {
      versionId: string;
      version: number;
    };
  };

  /** The review of a configuration: what of it was used, never used and short in past cases. */
  'GET /api/v1/configurations/{id}/review': {
    path: { id: string };
    query: { months?: "3" | "12" | "24" | "60" };
    answer: {
      costs: {
        keepPencePerPiece: (null) | (number);
        pouchPence: (null) | (number);
        fetchMinutes: (null) | (number);
        theatrePencePerMinute: (null) | (number);
        trayPence: (null) | (number);
        wasteShareOf: "opened" | "total";
        runOutPerThousand: number;
      };
      lines: (ReviewedLine)[];
      casesNeeded: (null) | (number);
      shareUsed: (null) | ({
        share: number;
        comparison: {
          stands: "below" | "within" | "above";
          lowest: number;
          highest: number;
          sentence: string;
          source: string;
        };
      });
      removed: ({
        itemId: string;
        version: number;
        since: string;
        name: string;
        asked: (null) | ({
          cases: number;
          asked: ({
            caseId: string;
            reference: string;
            on: string;
          })[];
        });
      })[];
      sets: (SetUse)[];
      alike: ({
        shared: number;
        merged: number;
        share: number;
        onlyFirst: number;
        onlySecond: number;
        id: string;
        code: string;
        name: string;
      })[];
      short: {
        inForce: (ShortCase)[];
        draft: (null) | ({
          all: (ShortCase)[];
          new: (ShortCase)[];
        });
      };
      names: { [name: string]: string };
      period: {
        from: string;
        until: string;
      };
      cases: number;
      version: number;
      draftVersion: (null) | (number);
    };
  };

  /** One configuration with every version of it, line by line, and the sets that follow it. */
  'GET /api/v1/configurations/{id}': {
    path: { id: string };
    answer: ConfigurationOnFile;
  };

  /** A configuration goes out of use, or comes back: asked by one person, agreed or turned down by another. */
  'POST /api/v1/configurations/{id}/use': {
    path: { id: string };
    body: ({
      step: "ask";
      kind: "withdraw" | "bringBack";
      because: string;
    }) | ({
      step: "agree";
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    }) | ({
      step: "turnDown";
    });
    answer: {
      withdrawnAt: (null) | (string);
    } | {
      id: string;
    };
  };

  /** Every configuration, with what of it is in force, drafted or approved. */
  'GET /api/v1/configurations': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (ConfigurationRow)[];
      next: (null) | (string);
    };
  };

  /** Adds a configuration with an empty first draft. */
  'POST /api/v1/configurations': {
    body: {
      code: string;
      name: string;
    };
    answer: {
      id: string;
    };
  };

  /** Lots on consignment of which nobody has stated the owner. */
  'GET /api/v1/consignment/not-stated': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (LotNotStated)[];
      next: (null) | (string);
    };
  };

  /** One usage order with its lines. */
  'GET /api/v1/consignment/orders/{id}': {
    path: { id: string };
    answer: UsageOrderOnRecord;
  };

  /** One act on a usage order; approving it is the theatre manager's, which the operation asks. */
  'POST /api/v1/consignment/orders/{id}': {
    path: { id: string };
    body: {
      baseRevision?: number;
      act: ({
        kind: "choose";
        choices: ({
          lineId: string;
          replace: boolean;
        })[];
      }) | ({
        kind: "approve";
      }) | ({
        kind: "sent";
        how: string;
      }) | ({
        kind: "withdraw";
        because: string;
      }) | ({
        kind: "settle";
        because: string;
      });
    };
    answer: {
      revision: number;
    };
  };

  /** Usage orders, the newest first. */
  'GET /api/v1/consignment/orders': {
    query: { owner?: string; limit?: number; cursor?: string };
    answer: {
      items: (UsageOrderOnList)[];
      next: (null) | (string);
    };
  };

  /** Makes a usage order of what waits for one. */
  'POST /api/v1/consignment/orders': {
    body: {
      id: string;
      lenderId: string;
      lines: number;
    };
    answer: {
      id: string;
      number: string;
    };
  };

  /** One owner: what of theirs lies here, lot by lot, and what waits to be told to them. */
  'GET /api/v1/consignment/owners/{id}': {
    path: { id: string };
    answer: OwnerOnScreen;
  };

  /** Whose stock lies here, and what of it was used. */
  'GET /api/v1/consignment/owners': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (OwnerOnList)[];
      next: (null) | (string);
    };
  };

  /** States whose the consigned pieces of a lot are. */
  'POST /api/v1/consignment/owners': {
    body: {
      itemId: string;
      lot: (string) | (null);
      before: (string) | (null);
      lenderId: string;
      because: string;
    };
    answer: {
      heaps: number;
    };
  };

  /** One reconciliation, lot by lot, with what nothing explains. */
  'GET /api/v1/consignment/reconciliations/{id}': {
    path: { id: string };
    answer: ReconciliationOnRecord;
  };

  /** Writes why a difference is there, or closes the reconciliation. */
  'POST /api/v1/consignment/reconciliations/{id}': {
    path: { id: string };
    body: {
      baseRevision?: number;
      act: ({
        kind: "explain";
        lineId: string;
        because: string;
      }) | ({
        kind: "close";
        proof: {
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        };
        second: ({
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        }) | (null);
      });
    };
    answer: {
      revision: number;
    };
  };

  /** What an owner says lies here beside our record, each time it was held against it, the newest first. */
  'GET /api/v1/consignment/reconciliations': {
    query: { owner: string; limit?: number; cursor?: string };
    answer: {
      items: (ReconciliationOnList)[];
      next: (null) | (string);
    };
  };

  /** Takes an owner's list, or a count, whole or not at all. */
  'POST /api/v1/consignment/reconciliations': {
    body: {
      id: string;
      lenderId: string;
      how: "list" | "count";
      listedOn: string;
      text: string;
    };
    answer: {
      id: string;
      number: string;
    };
  };

  /** One delivery with its lines. */
  'GET /api/v1/deliveries/{id}': {
    path: { id: string };
    answer: DeliveryOnFile;
  };

  /** What is asked of an item as it is received: its pack, where it lies, and what is easily taken for it. */
  'GET /api/v1/deliveries/items/{id}': {
    path: { id: string };
    answer: ReceivedItem;
  };

  /** Deliveries with their lines, the newest first. */
  'GET /api/v1/deliveries': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (DeliveryOnFile)[];
      next: (null) | (string);
    };
  };

  /** Receives a delivery, whole or not at all; the operation parses it, so that every fault comes from one place. */
  'POST /api/v1/deliveries': {
    body: {
      id: string;
      supplier: string;
      reference: string;
      arrivedOn: string;
      lines: ({
        id: string;
        itemId: string;
        form: "sterilePacked" | "unsterile";
        lot: (string) | (null);
        useBy: (string) | (null);
        count: number;
        unit: "packs" | "pieces";
        placeId: string;
        owner: "ours" | "consignment";
        lenderId?: (string) | (null);
        held: ("wrapWetTornOrUnsealed" | "wrongLabel" | "disputedCount" | "recall" | "pastUseBy" | "goesBack") | (null);
        useByReadAgain: boolean;
        scanId: (string) | (null);
        orderLineId?: (string) | (null);
      })[];
    };
    answer: Received;
  };

  /** Closes what an emergency left open. */
  'POST /api/v1/emergency/{id}/close': {
    path: { id: string };
    body: {
      questionId: string;
    };
    answer: {
      closedAt: string;
    };
  };

  /** Records that a set taken for an emergency has gone to theatre, and when. */
  'POST /api/v1/emergency/{id}/gone': {
    path: { id: string };
    body: {
      setId: string;
      goneAt: string;
    };
    answer: {
      against: (string)[];
    };
  };

  /** What was taken for an emergency, whom it hit, and what is left open. */
  'GET /api/v1/emergency/{id}': {
    path: { id: string };
    answer: EmergencyOnRecord;
  };

  /** What serves an emergency: ways to build the construct with what each takes from others, sets as they stand, single packs. */
  'GET /api/v1/emergency/answer': {
    query: { case?: string; region?: string; side?: string; plan?: string; by?: string; theatre?: string; surgeon?: string; gone?: string; take?: string };
    answer: {
      sets: ({
        configurationId: string;
        configurationName: string;
        step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
        heldBecause: (null) | (string);
        readyAt: (null) | (string);
        useBy: (null) | (string);
        place: (null) | ({
          id: string;
          name: string;
          metres: number;
        });
        massGrams: (null) | (number);
        because: (null) | ({
          kind: "held";
          reason: string;
        }) | ({
          kind: "pastUseBy";
          useBy: string;
        }) | ({
          kind: "shortForOneCase";
          reference: (null) | (string);
        }) | ({
          kind: "onOtherKit";
          reference: string;
        }) | ({
          kind: "letOutForOneCase";
          reference: string;
        }) | ({
          kind: "awaitsDecision";
        }) | ({
          kind: "takenForEmergency";
          reference: string;
        });
        short: (null) | ((ShortLine)[]);
        builds: ("yes" | "no" | "notEstablished") | (null);
        lacks: (Blocked)[];
        id: string;
        code: string;
        readyMinutes: (null) | (TimeSpread);
        promisedTo: (string)[];
        barred: boolean;
      })[];
      region: ("clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot") | (null);
      limb: ("left" | "right") | (null);
      chosen: (null) | (ChosenConstruct);
      neededAt: string;
      caseMinutes: number;
      outcome: "short" | "canBeMet" | "nothingNeeded" | "notKnown";
      options: (EmergencyOption)[];
      packs: (StoredPack)[];
      caseId: (null) | (string);
    };
  };

  /** Emergencies with something left open. */
  'GET /api/v1/emergency': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (OpenEmergency)[];
      next: (null) | (string);
    };
  };

  /** Takes sets for an emergency; what it takes from others is planned anew in the same act. */
  'POST /api/v1/emergency': {
    body: {
      asked: { [name: string]: string };
      shown: string;
    };
    answer: TakenForEmergency;
  };

  /** What taking sets for an emergency does to others; `shown` goes along when they are taken, so that nothing else is done. */
  'GET /api/v1/emergency/taking': {
    query: { case?: string; region?: string; side?: string; plan?: string; by?: string; theatre?: string; surgeon?: string; gone?: string; take?: string };
    answer: {
      barred: ({
        setId: string;
        code: string;
        because: Barred;
      })[];
      asked: EmergencyAsked;
      taking: Taking;
      hits: (Hit)[];
      shown: string;
      theatres: (TheatreForEmergency)[];
      surgeons: ({
        id: string;
        name: string;
      })[];
      surgeonId: (null) | (string);
      unknown: (string)[];
    };
  };

  /** Tries a list, or brings it in as it was tried. */
  'POST /api/v1/exchange/{list}': {
    path: { list: string };
    body: {
      file: string;
      choices: {
        sheet: (string) | (null);
        encoding: ("utf-8" | "utf-16le" | "utf-16be" | "windows-1252") | (null);
        columns: { [name: string]: (number) | (null) };
        dateOrder: ("dayFirst" | "monthFirst") | (null);
        decimal: ("point" | "comma") | (null);
        repaired: (string)[];
        kept: (string)[];
        empty: "keep" | "clear";
        newMakers: (string)[];
        more: ("found" | "enteredTooFew") | (null);
        fewer: ("notFound" | "enteredTooMany") | (null);
        note: string;
      };
      seen: ({
        digest: string;
        marks: (string)[];
      }) | (null);
    };
    answer: ExchangeView;
  };

  /** Revokes a calendar address for good. */
  'POST /api/v1/feeds/{id}/revoke': {
    path: { id: string };
    answer: null;
  };

  /** Your calendar addresses, and to an administrator those of everybody; never what opens them. */
  'GET /api/v1/feeds': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (FeedOnFile)[];
      next: (null) | (string);
    };
  };

  /** Makes a calendar address; the answer is the one time its secret is told. */
  'POST /api/v1/feeds': {
    body: {
      kind: "theatre" | "sterileServices" | "loans";
      theatreId: (string) | (null);
      name: string;
    };
    answer: {
      id: string;
      token: string;
    };
  };

  /** One resource by its id. */
  'GET /api/v1/fhir/{type}/{id}': {
    path: { type: string; id: string };
    answer: FhirJson;
  };

  /** A search among the resources of one type, in pages. */
  'GET /api/v1/fhir/{type}': {
    path: { type: string };
    query: { _count?: number };
    answer: FhirJson;
  };

  /** Everything as a file: a Bundle of all types, or of those in `_type`; with `as=ndjson` the resources of one type, one a line. */
  'GET /api/v1/fhir/export': {
    query: { _type?: string; as?: "collection" | "ndjson" };
    answer: FhirJson;
  };

  /** What the service can do. */
  'GET /api/v1/fhir/metadata': {
    answer: FhirJson;
  };

  /** Approves, discards or keeps an exception from the fit rules, asks for its withdrawal, or agrees to that. */
  'POST /api/v1/fit/exceptions/{id}/acts': {
    path: { id: string };
    body: {
      asked: ({
        step: "approve";
        from: string;
        proof: {
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        };
        trialId: string;
      }) | ({
        step: "askWithdrawal";
        because: string;
      }) | ({
        step: "withdraw";
        until: string;
        proof: {
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        };
        trialId: string;
      }) | ({
        step: "keep";
      }) | ({
        step: "discard";
      });
    };
    answer: {
      id: string;
      step: "discard" | "withdraw" | "keep" | "approve" | "askWithdrawal";
    };
  };

  /** One exception from fit rules. */
  'GET /api/v1/fit/exceptions/{id}': {
    path: { id: string };
    answer: ListedException;
  };

  /** Exceptions from fit rules: two items that may or may not go together, whatever the rules say. */
  'GET /api/v1/fit/exceptions': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (ListedException)[];
      next: (null) | (string);
    };
  };

  /** Drafts an exception from the fit rules for two items; it is in force only once a second person approves it. */
  'POST /api/v1/fit/exceptions': {
    body: {
      draft: {
        relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
        firstItemId: string;
        secondItemId: string;
        answer: "allow" | "deny";
        sentence: string;
        source: ({
          kind: "standard";
          number: string;
          clause: (string) | (null);
        }) | ({
          kind: "instructionsForUse";
          maker: string;
          document: string;
        }) | ({
          kind: "localPolicy";
          owner: string;
          date: string;
        }) | ({
          kind: "commonPractice";
        });
      };
    };
    answer: {
      version: number;
      status: "withdrawn" | "draft" | "inForce";
      draftedBy: (null) | (string);
      approvedBy: (null) | (string);
      inForceFrom: (null) | (string);
      inForceUntil: (null) | (string);
      withdrawalAskedBy: (null) | (string);
      withdrawnBy: (null) | (string);
      id: string;
      relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
      firstItemId: string;
      secondItemId: string;
      answer: "allow" | "deny";
      sentence: string;
      source: ({
        kind: "standard";
        number: string;
        clause: (null) | (string);
      }) | ({
        kind: "instructionsForUse";
        maker: string;
        document: string;
      }) | ({
        kind: "localPolicy";
        owner: string;
        date: string;
      }) | ({
        kind: "commonPractice";
      });
    };
  };

  /** Every relation that could hold between two things, with its answer and every rule that governed it; none of such a pair is a 404. */
  'GET /api/v1/fit/pairs': {
    query: { a: string; b: string; hole?: string; use?: string; position?: string; limit?: number; cursor?: string };
    answer: {
      items: (PairVerdict)[];
      next: (null) | (string);
    };
  };

  /** Tries a fit rule that is not even drafted against the whole catalogue; nothing is kept. */
  'POST /api/v1/fit/rule-tries': {
    body: {
      draft: {
        code: string;
        relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
        severity: "stops" | "caution" | "note";
        sentence: string;
        source: ({
          kind: "standard";
          number: string;
          clause: (string) | (null);
        }) | ({
          kind: "instructionsForUse";
          maker: string;
          document: string;
        }) | ({
          kind: "localPolicy";
          owner: string;
          date: string;
        }) | ({
          kind: "commonPractice";
        });
        appliesWhen?: unknown;
        requires: unknown;
      };
    };
    answer: Tried;
  };

  /** Approves, discards or keeps a version of a fit rule, asks for its withdrawal, or agrees to that. */
  'POST /api/v1/fit/rules/{code}/acts': {
    path: { code: string };
    body: {
      id: string;
      asked: ({
        step: "approve";
        from: string;
        proof: {
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        };
        trialId: string;
      }) | ({
        step: "askWithdrawal";
        because: string;
      }) | ({
        step: "withdraw";
        until: string;
        proof: {
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        };
        trialId: string;
      }) | ({
        step: "keep";
      }) | ({
        step: "discard";
      });
    };
    answer: {
      id: string;
      step: "discard" | "withdraw" | "keep" | "approve" | "askWithdrawal";
    };
  };

  /** Every version of one fit rule, the newest first. */
  'GET /api/v1/fit/rules/{code}': {
    path: { code: string };
    query: { limit?: number; cursor?: string };
    answer: {
      items: ({
        version: number;
        status: "withdrawn" | "draft" | "inForce";
        draftedBy: (null) | (string);
        approvedBy: (null) | (string);
        inForceFrom: (null) | (string);
        inForceUntil: (null) | (string);
        withdrawalAskedBy: (null) | (string);
        withdrawnBy: (null) | (string);
        id: string;
        code: string;
        relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
        appliesWhen: Condition;
        requires: Condition;
        severity: "note" | "stops" | "caution";
        sentence: string;
        source: ({
          kind: "standard";
          number: string;
          clause: (null) | (string);
        }) | ({
          kind: "instructionsForUse";
          maker: string;
          document: string;
        }) | ({
          kind: "localPolicy";
          owner: string;
          date: string;
        }) | ({
          kind: "commonPractice";
        });
      })[];
      next: (null) | (string);
    };
  };

  /** Fit rules: the newest version of each. */
  'GET /api/v1/fit/rules': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: ({
        version: number;
        status: "withdrawn" | "draft" | "inForce";
        draftedBy: (null) | (string);
        approvedBy: (null) | (string);
        inForceFrom: (null) | (string);
        inForceUntil: (null) | (string);
        withdrawalAskedBy: (null) | (string);
        withdrawnBy: (null) | (string);
        id: string;
        code: string;
        relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
        appliesWhen: Condition;
        requires: Condition;
        severity: "note" | "stops" | "caution";
        sentence: string;
        source: ({
          kind: "standard";
          number: string;
          clause: (null) | (string);
        }) | ({
          kind: "instructionsForUse";
          maker: string;
          document: string;
        }) | ({
          kind: "localPolicy";
          owner: string;
          date: string;
        }) | ({
          kind: "commonPractice";
        });
      })[];
      next: (null) | (string);
    };
  };

  /** Drafts a new fit rule, or the next version of one; it is in force only once a second person approves it. */
  'POST /api/v1/fit/rules': {
    body: {
      draft: {
        code: string;
        relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
        severity: "stops" | "caution" | "note";
        sentence: string;
        source: ({
          kind: "standard";
          number: string;
          clause: (string) | (null);
        }) | ({
          kind: "instructionsForUse";
          maker: string;
          document: string;
        }) | ({
          kind: "localPolicy";
          owner: string;
          date: string;
        }) | ({
          kind: "commonPractice";
        });
        appliesWhen?: unknown;
        requires: unknown;
      };
      basedOn: number;
    };
    answer: {
      version: number;
      status: "withdrawn" | "draft" | "inForce";
      draftedBy: (null) | (string);
      approvedBy: (null) | (string);
      inForceFrom: (null) | (string);
      inForceUntil: (null) | (string);
      withdrawalAskedBy: (null) | (string);
      withdrawnBy: (null) | (string);
      id: string;
      code: string;
      relation: "seats" | "guides" | "passes" | "pilots" | "glides" | "taps" | "countersinks" | "measures" | "turns" | "joins" | "limits" | "wearsWith" | "sides";
      appliesWhen: Condition;
      requires: Condition;
      severity: "note" | "stops" | "caution";
      sentence: string;
      source: ({
        kind: "standard";
        number: string;
        clause: (null) | (string);
      }) | ({
        kind: "instructionsForUse";
        maker: string;
        document: string;
      }) | ({
        kind: "localPolicy";
        owner: string;
        date: string;
      }) | ({
        kind: "commonPractice";
      });
    };
  };

  /** How the running program stands: disk, backups, ledger and clock. */
  'GET /api/v1/health': {
    answer: {
      lights: (Light)[];
    };
  };

  /** Sets that are held, with every reason. */
  'GET /api/v1/holds': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (HeldSet)[];
      next: (null) | (string);
    };
  };

  /** One list that came in. */
  'GET /api/v1/imports/{id}': {
    path: { id: string };
    answer: ImportInList;
  };

  /** Takes a list back that came in, as far as it still is as it came. */
  'POST /api/v1/imports/{id}/take-back': {
    path: { id: string };
    answer: TakenBackList;
  };

  /** Lists that came in, the newest first. */
  'GET /api/v1/imports': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (ImportInList)[];
      next: (null) | (string);
    };
  };

  /** Closes a check: whoever made it proves who they are, and learns where it differs from what was picked. */
  'POST /api/v1/kit-checks/{id}/close': {
    path: { id: string };
    body: {
      entryIds: (string)[];
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: ClosedCheck;
  };

  /** Makes entries of a check durable, in order. */
  'POST /api/v1/kit-checks/{id}/entries': {
    path: { id: string };
    body: {
      entries: ({
        entry: {
          id: string;
          act: ({
            kind: "seen";
            thing: ({
              kind: "set";
              setId: string;
              packId: (string) | (null);
            }) | ({
              kind: "pouch";
              packId: string;
            }) | ({
              kind: "stock";
              stockId: string;
            }) | ({
              kind: "item";
              itemId: string;
              lot: (string) | (null);
              useBy: (string) | (null);
            });
            quantity: number;
          }) | ({
            kind: "undo";
            entryId: string;
          });
          doneAt: string;
          scanId?: (string) | (null);
        };
        session: {
          id: string;
          ticket: string;
        };
      })[];
    };
    answer: {
      delivered: (({
        id: string;
        ok: true;
        enteredAt: string;
      }) | ({
        id: string;
        ok: false;
        because: string;
        sentence: string;
      }))[];
    };
  };

  /** One check of a kit: of which case, by whom and when. */
  'GET /api/v1/kit-checks/{id}': {
    path: { id: string };
    answer: KitCheckRecorded;
  };

  /** Checks of kits by a second person, the last begun first; what was found is told with the case. */
  'GET /api/v1/kit-checks': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (KitCheckRecorded)[];
      next: (null) | (string);
    };
  };

  /** One entry of the ledger, by its number. */
  'GET /api/v1/ledger/{seq}': {
    path: { seq: string };
    answer: LedgerRecord;
  };

  /** Corrects what an entry of the ledger says, by an entry of its own; the person proves who they are. */
  'POST /api/v1/ledger/corrections': {
    body: {
      seq: number;
      target: ({
        kind: "time";
      }) | ({
        kind: "value";
        pointer: string;
      }) | ({
        kind: "remark";
      });
      old: (string) | (number) | (boolean) | (null);
      new: (string) | (number) | (boolean) | (null);
      reason: string;
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: {
      seq: number;
    };
  };

  /** Entries of the ledger, the newest first; what an entry holds to nobody who counts blind what it is of. */
  'GET /api/v1/ledger': {
    query: { thing?: string; person?: string; act?: string; from?: string; until?: string; limit?: number; cursor?: string };
    answer: {
      items: (LedgerRecord)[];
      next: (null) | (string);
    };
  };

  /** One lender, with how they kept their word. */
  'GET /api/v1/lenders/{id}': {
    path: { id: string };
    answer: LenderOnFile;
  };

  /** Changes a lender, takes it out of use, or brings it back. */
  'PUT /api/v1/lenders/{id}': {
    path: { id: string };
    body: {
      baseRevision?: number;
      inUse: boolean;
      entry: {
        name: string;
        contact?: (string) | (null);
        phone?: (string) | (null);
        email?: (string) | (null);
        address?: (string) | (null);
        note?: (string) | (null);
      };
    };
    answer: {
      id: string;
      revision: number;
    };
  };

  /** Lenders, with how they kept their word. */
  'GET /api/v1/lenders': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (LenderOnFile)[];
      next: (null) | (string);
    };
  };

  /** Adds a lender; the operation parses it, so that every fault comes from one place. */
  'POST /api/v1/lenders': {
    body: {
      name: string;
      contact?: (string) | (null);
      phone?: (string) | (null);
      email?: (string) | (null);
      address?: (string) | (null);
      note?: (string) | (null);
    };
    answer: {
      id: string;
      revision: number;
    };
  };

  /** Accepts a load: by a person who proved who they are, and where implants go early by the surgeon too. */
  'POST /api/v1/loads/{id}/accept': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
      reason: string;
      setsPlaceId: (string) | (null);
      pouchesPlaceId: (string) | (null);
      exception: ({
        caseId: string;
        packIds: (string)[];
        reason: string;
        proof: {
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        };
      }) | (null);
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: {
      revision: number;
      stored: number;
    };
  };

  /** Imports the record of a cycle, or says what it would be. */
  'POST /api/v1/loads/{id}/cycle': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
      text: string;
      fileName: (string) | (null);
      dryRun: boolean;
    };
    answer: CycleImported;
  };

  /** Ends the run of a load. */
  'POST /api/v1/loads/{id}/end': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
    };
    answer: {
      revision: number;
    };
  };

  /** Gives up a load that was never started. */
  'POST /api/v1/loads/{id}/give-up': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
    };
    answer: {
      revision: number;
    };
  };

  /** Records an indicator that went with a load. */
  'POST /api/v1/loads/{id}/indicators': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
      entry: {
        kind: "chemical" | "biological" | "airRemoval" | "printedRecord";
        lot: (string) | (null);
        useBy: (string) | (null);
        position: (string) | (null);
        result: "pending" | "passed" | "failed";
      };
    };
    answer: {
      revision: number;
      id: string;
    };
  };

  /** Puts a pack into a load, or takes it out. */
  'POST /api/v1/loads/{id}/packs': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
      packId: string;
      take: "in" | "out";
      copy: (number) | (null);
    };
    answer: {
      revision: number;
    };
  };

  /** Rejects a load, and holds everything since the last accepted one. */
  'POST /api/v1/loads/{id}/reject': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
      reason: string;
      setsGo: "onBench" | "held";
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: {
      revision: number;
      held: number;
      planned: (null) | (PlannedAnew);
    };
  };

  /** Records the result of an indicator. */
  'POST /api/v1/loads/{id}/results': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
      indicatorId: string;
      result: "passed" | "failed";
    };
    answer: {
      revision: number;
      held: number;
    };
  };

  /** One load: its packs, its cycle, what was looked at, and what was decided. */
  'GET /api/v1/loads/{id}': {
    path: { id: string };
    answer: LoadOnFile;
  };

  /** Starts a load. */
  'POST /api/v1/loads/{id}/start': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
      cycleNumber: string;
    };
    answer: {
      revision: number;
    };
  };

  /** What a failed load puts in doubt, and where each pack of it is. */
  'GET /api/v1/loads/{id}/touched': {
    path: { id: string };
    answer: FailedLoad;
  };

  /** Records how a pack was found when it came out. */
  'POST /api/v1/loads/{id}/unload': {
    path: { id: string };
    body: {
      baseRevision?: (number) | (null);
      packId: string;
      as: "sound" | "wet" | "torn" | "unsealed";
    };
    answer: {
      revision: number;
    };
  };

  /** Lifts the hold of a pouch whose load was in doubt. */
  'POST /api/v1/loads/pouch-holds': {
    body: {
      packId: string;
      reason: string;
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: {
      stockId: string;
    };
  };

  /** Loads of the sterilisers, the last made up first. */
  'GET /api/v1/loads': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (LoadRecorded)[];
      next: (null) | (string);
    };
  };

  /** Begins a load for a steriliser and a programme. */
  'POST /api/v1/loads': {
    body: {
      steriliserId: string;
      programme: string;
    };
    answer: {
      id: string;
      number: string;
    };
  };

  /** Packs that are closed and in no load yet. */
  'GET /api/v1/loads/waiting': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (WaitingPack)[];
      next: (null) | (string);
    };
  };

  /** One loan: its papers, trays and lines, its counts, and what has to be done next. */
  'GET /api/v1/loans/{id}': {
    path: { id: string };
    answer: {
      loan: {
        number: string;
        placeId: (null) | (string);
        id: string;
        caseId: (null) | (string);
        revision: number;
        configurationId: (null) | (string);
        lenderId: string;
        fromDate: (null) | (string);
        untilDate: (null) | (string);
        askedFor: string;
        askedBy: string;
        askedAt: string;
        answeredBy: (null) | (string);
        answeredAt: (null) | (string);
        expectedAt: (null) | (string);
        backBy: (null) | (string);
        dueAt: (null) | (string);
        arrivedAt: (null) | (string);
        broughtBy: (null) | (string);
        traysArrived: (null) | (number);
        declaration: (null) | (string);
        instructions: (null) | (string);
        papersBy: (null) | (string);
        papersAt: (null) | (string);
        unpackedAt: (null) | (string);
        collectedBy: (null) | (string);
        collectedAt: (null) | (string);
        endedBecause: (null) | (string);
        state: "refused" | "confirmed" | "asked" | "calledOff" | "here" | "inService" | "goingBack" | "goneBack";
      };
      next: LoanNext;
      lender: {
        id: string;
        name: string;
        note: (null) | (string);
        revision: number;
        contact: (null) | (string);
        phone: (null) | (string);
        email: (null) | (string);
        address: (null) | (string);
        withdrawnAt: (null) | (string);
      };
      booked: (null) | ({
        id: string;
        reference: string;
        startsAt: string;
        surgeonId: string;
        surgeon: string;
      });
      configuration: (null) | ({
        id: string;
        code: string;
        name: string;
      });
      place: (null) | (string);
      names: {
        askedBy: string;
        papersBy: (null) | (string);
      };
      due: {
        at: (null) | (string);
        terms: NoticeTerms;
        neededAt: (null) | (string);
      };
      lateMinutes: (null) | (number);
      late: boolean;
      lines: (LoanLine)[];
      trays: (LoanTray)[];
      counting: {
        out: {
          next: "check" | "count" | "settle" | "done";
          disputed: (string)[];
          firstBy: (null) | (string);
          counts: ({
            purpose: string;
            by: string;
            at: string;
          })[];
        };
        in: {
          next: "check" | "count" | "settle" | "done";
          disputed: (string)[];
          firstBy: (null) | (string);
          counts: ({
            purpose: string;
            by: string;
            at: string;
          })[];
        };
      };
      uses: ({
        lineId: string;
        caseId: string;
        outcome: string;
        quantity: number;
      })[];
      used: boolean;
      questions: (LoanQuestion)[];
      claims: (LoanClaim)[];
      unclaimed: (Discrepancy)[];
      declared: (null) | ({
        trays: ({
          tray: number;
          how: "decontaminated" | "asItCame";
        })[];
        by: string;
        name: string;
        at: string;
        method: string;
      });
      handed: (null) | ({
        by: string;
        name: string;
        at: string;
        method: string;
      });
      story: ({
        state: "refused" | "confirmed" | "asked" | "calledOff" | "here" | "inService" | "goingBack" | "goneBack";
        note: (null) | (string);
        by: string;
        at: string;
      })[];
      massLimitsGrams: (number)[];
      revision: number;
    };
  };

  /** One act on one loan. */
  'POST /api/v1/loans/{id}': {
    path: { id: string };
    body: {
      baseRevision?: number;
      asked: ({
        act: "answer";
        entry: ({
          answer: "yes";
          saidBy: string;
          expectedAt: (string) | (null);
          backBy: (string) | (null);
        }) | ({
          answer: "no";
          saidBy: string;
          because: string;
        });
      }) | ({
        act: "arrive";
        entry: {
          arrivedAt: string;
          broughtBy: string;
          trays: number;
          placeId: (string) | (null);
        };
      }) | ({
        act: "papers";
        entry: {
          declaration: "present" | "missing";
          instructions: "present" | "missing";
        };
      }) | ({
        act: "weigh";
        entry: {
          stage: "in" | "out";
          grams: ({
            tray: number;
            grams: number;
          })[];
        };
      }) | ({
        act: "count";
        entry: {
          stage: "in" | "out";
          figures: ({
            lineId: string;
            sound: number;
            damaged: number;
          })[];
        };
      }) | ({
        act: "ask";
        entry: {
          kind: "acceptLate" | "useWithout";
          askedOf: string;
          words: string;
        };
      }) | ({
        act: "use";
        entry: {
          caseId: string;
          uses: ({
            lineId: string;
            outcome: "implanted" | "openedNotImplanted";
            quantity: number;
          })[];
        };
      }) | ({
        act: "claim";
        entry: {
          lineId: string;
          stage: "in" | "out";
          kind: "notFound" | "damaged";
          words: string;
        };
      }) | ({
        act: "tag" | "takeIn";
      }) | ({
        act: "callOff" | "beginReturn";
        because: string;
      }) | ({
        act: "list";
        source: ({
          kind: "csv";
          text: string;
          fileName: string;
        }) | ({
          kind: "asAsked";
        });
        dryRun: boolean;
      }) | ({
        act: "decide";
        questionId: string;
        answer: "yes" | "no";
        words: string;
      }) | ({
        act: "settle";
        claimId: string;
        entry: {
          state: "agreed" | "disputed" | "withdrawn";
          saidBy: string;
          words: string;
        };
      }) | ({
        act: "declare";
        proof: {
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        };
      }) | ({
        act: "handOver";
        collectedBy: string;
        proof: {
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        };
      });
    };
    answer: {
      revision: number;
    };
  };

  /** Loans, the newest first, each with what has to be done next. */
  'GET /api/v1/loans': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (LoanOnBoard)[];
      next: (null) | (string);
    };
  };

  /** Asks a lender for a loan; the operation parses it, so that every fault comes from one place. */
  'POST /api/v1/loans': {
    body: {
      lenderId: string;
      caseId: (string) | (null);
      fromDate: (string) | (null);
      untilDate: (string) | (null);
      askedFor: string;
      configurationId: (string) | (null);
    };
    answer: {
      id: string;
      number: string;
    };
  };

  /** The kinds of notice you are not told of. */
  'GET /api/v1/notices/kinds': {
    answer: {
      off: ("shortageFixed" | "shortDecisionAsked" | "promisedSetHeld" | "promisedSetWithdrawn" | "holdLifted" | "asideSettled" | "caseMoved" | "caseUrgencyChanged" | "caseCancelled" | "setTakenForEmergency" | "emergencyTook" | "goneAgainstRecord" | "kitToPutBack" | "loanNews" | "loanQuestionAsked" | "loanQuestionAnswered" | "caseSetsChanged" | "turnWanted" | "recallOpened")[];
    };
  };

  /** Which kinds of notice one does not want. */
  'PUT /api/v1/notices/kinds': {
    body: {
      off: ("shortageFixed" | "shortDecisionAsked" | "promisedSetHeld" | "promisedSetWithdrawn" | "holdLifted" | "asideSettled" | "caseMoved" | "caseUrgencyChanged" | "caseCancelled" | "setTakenForEmergency" | "emergencyTook" | "goneAgainstRecord" | "kitToPutBack" | "loanNews" | "loanQuestionAsked" | "loanQuestionAnswered" | "caseSetsChanged" | "turnWanted" | "recallOpened")[];
    };
    answer: {
      off: ("shortageFixed" | "shortDecisionAsked" | "promisedSetHeld" | "promisedSetWithdrawn" | "holdLifted" | "asideSettled" | "caseMoved" | "caseUrgencyChanged" | "caseCancelled" | "setTakenForEmergency" | "emergencyTook" | "goneAgainstRecord" | "kitToPutBack" | "loanNews" | "loanQuestionAsked" | "loanQuestionAnswered" | "caseSetsChanged" | "turnWanted" | "recallOpened")[];
    };
  };

  /** Up to where one has looked at what changed on the list. */
  'POST /api/v1/notices/list-seen': {
    body: {
      upTo: number;
    };
    answer: {
      seq: number;
    };
  };

  /** What you were told, the newest first. */
  'GET /api/v1/notices': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (NoticeOnFile)[];
      next: (null) | (string);
    };
  };

  /** Marks a person's own notices as seen. */
  'POST /api/v1/notices/seen': {
    body: {
      noticeIds: (string)[];
    };
    answer: {
      seen: number;
    };
  };

  /** This description, as OpenAPI 3.1 has it. */
  'GET /api/v1/openapi.json': {
    answer: DescribedDocument;
  };

  /** Prints the label of a pack again: the next copy, with its reason. */
  'POST /api/v1/packs/{id}/labels': {
    path: { id: string };
    body: {
      id: string;
      because: string;
    };
    answer: {
      id: string;
      copy: number;
    };
  };

  /** One pack: what is in it, its label, its load, and what was decided on it. */
  'GET /api/v1/packs/{id}': {
    path: { id: string };
    answer: {
      id: string;
      revision: number;
      kind: "set" | "pouch";
      labelled: LabelledPack;
      contents: (null) | (({
        lineId: string;
        itemId: string;
        mustHaveClass: 4 | 3 | 1 | 2;
        expected: number;
        found: number;
      })[]);
      workedGrams: (null) | (number);
      weighedGrams: (null) | (number);
      set: (null) | ({
        id: string;
        code: string;
        packId: (null) | (string);
        revision: number;
      });
      item: (null) | ({
        id: string;
        code: string;
        name: string;
      });
      load: (null) | ({
        id: string;
        number: string;
        state: string;
      });
      decision: (null) | ({
        id: string;
        setId: string;
        turnId: string;
        kind: "backUps" | "withSubstitute" | "oneCase";
        lines: ({
          lineId: string;
          itemId: string;
          mustHaveClass: 4 | 3 | 1 | 2;
          short: number;
          belowMinimum: number;
        })[];
        substitutes: ({
          lineId: string;
          itemId: string;
          from: ({
            kind: "pouch";
            stockId: string;
          }) | ({
            kind: "inSet";
            lineId: string;
          });
        })[];
        reason: string;
        caseId: (null) | (string);
        approvals: ({
          as: "technician" | "decontaminationLead" | "theatreLead" | "operatingSurgeon";
          personId: string;
          name: string;
          method: "password" | "pin" | "badgeAndPin";
          at: string;
        })[];
        decidedAt: string;
        lapsesAt: (null) | (string);
        lapsedAt: (null) | (string);
      });
      copies: ({
        copy: number;
        because: (null) | (string);
        by: string;
        at: string;
      })[];
    };
  };

  /** Opens a pouch again that is in no load yet. */
  'POST /api/v1/packs/{id}/undo': {
    path: { id: string };
    body: {
      baseRevision?: number;
      reason: string;
    };
    answer: {
      revision: number;
    };
  };

  /** Sterile packs of sets and of single items, the last closed first. */
  'GET /api/v1/packs': {
    query: { set?: string; limit?: number; cursor?: string };
    answer: {
      items: (PackRecorded)[];
      next: (null) | (string);
    };
  };

  /** Closes one item in a pouch by itself. */
  'POST /api/v1/packs': {
    body: {
      id: string;
      itemId: string;
      lot: (string) | (null);
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: {
      id: string;
      number: string;
    };
  };

  /** One person with the ways in they have; never a secret. */
  'GET /api/v1/people/{id}': {
    path: { id: string };
    answer: {
      waits: ({
        place: (null) | (string);
        until: string;
      })[];
      leftAt: (null) | (string);
      hasPin: boolean;
      hasBadge: boolean;
      mustChangePassword: boolean;
      lastSeenAt: (null) | (string);
      id: string;
      name: string;
      role: "technician" | "decontaminationLead" | "surgeon" | "scrubPractitioner" | "stockKeeper" | "theatreManager" | "incidentLead" | "administrator";
      scope?: ("readLedger" | "readHealth" | "readPeople" | "managePeople" | "manageTokens" | "enrolWorkstation" | "changeSettings" | "sendToTheatre" | "receiveSet" | "checkCount" | "settleAside" | "sendWithSubstitute" | "sendShortAsTheatreLead" | "sendShortAsSurgeon" | "acceptLoad" | "askForImplantsEarly" | "manageSterilisers" | "holdSet" | "liftHold" | "withdrawSet" | "moveSet" | "managePlaces" | "openRecall" | "tracePerson" | "closeRecall" | "correctRecord" | "bookCase" | "keepTheatreList" | "keepTheatreSessions" | "promiseSets" | "takeForEmergency" | "closeEmergencyQuestion" | "settleGoneAgainstRecord" | "pickKit" | "checkKit" | "issueKit" | "takeKit" | "returnKit" | "countInTheatre" | "countInTheatreWith" | "recordUse" | "correctUse" | "recordDelay" | "keepReasons" | "workOnQuestion" | "settleAsNotFound" | "askForLoan" | "keepLoans" | "keepLenders" | "countLoan" | "proposeRestock" | "approveRestock" | "keepSupplyTerms" | "stateStockOwner" | "makeUsageOrder" | "approveUsageOrder" | "reconcileConsignment" | "receiveOrder" | "writePlan" | "keepCards" | "retireCards" | "keepProcedures" | "confirmPlan" | "draftFitRule" | "approveFitRule" | "setRemarks" | "countSet" | "openSet" | "addSet" | "writeConfiguration" | "approveConfiguration" | "receiveStock" | "moveStock" | "adjustStock" | "holdStock" | "countStock" | "decideStockCount" | "takeOut" | "editCatalogue" | "readHospital" | "ownAccount" | "keepFeeds" | "recordScan" | "washSet" | "refillSet" | "packSet" | "printLabel" | "makeUpLoad" | "rejectLoad" | "acknowledgeRecall" | "judgeBarrier" | "declareLoan")[];
    };
  };

  /** What an administrator does about one person. */
  'POST /api/v1/people/{id}': {
    path: { id: string };
    body: ({
      act: "role";
      role: "technician" | "decontaminationLead" | "surgeon" | "scrubPractitioner" | "stockKeeper" | "theatreManager" | "incidentLead" | "administrator";
    }) | ({
      act: "leave" | "return" | "password" | "badge" | "withdrawBadge" | "unlock";
    });
    answer: (null) | ({
      firstPassword: string;
    }) | ({
      code: string;
    });
  };

  /** Where you are signed in, the latest first. */
  'GET /api/v1/people/account': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (OwnSession)[];
      next: (null) | (string);
    };
  };

  /** What a person does about their own secrets and sessions. */
  'POST /api/v1/people/account': {
    body: ({
      act: "password";
      present: string;
      next: string;
    }) | ({
      act: "pin";
      password: string;
      pin: string;
    }) | ({
      act: "endSession";
      sessionId: string;
    });
    answer: null;
  };

  /** A badge and its PIN at an enrolled workstation: that person acts here from now on, whoever did before. */
  'POST /api/v1/people/badge': {
    body: {
      badge: string;
      pin: string;
    };
    answer: ActingAnswer;
  };

  /** Names the first administrator, with the code the server printed as it started. */
  'POST /api/v1/people/first-run': {
    body: {
      code: string;
      name: string;
      password: string;
    };
    answer: ActingAnswer;
  };

  /** Everybody who works or worked here, with the ways in they have; never a secret. */
  'GET /api/v1/people/on-file': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (PersonOnFile)[];
      next: (null) | (string);
    };
  };

  /** Who works here, by name: for choosing the second person of an act. */
  'GET /api/v1/people': {
    answer: {
      people: ({
        id: string;
        name: string;
        role: string;
      })[];
    };
  };

  /** Adds somebody; their first password goes out once, with this answer. */
  'POST /api/v1/people': {
    body: {
      name: string;
      role: "technician" | "decontaminationLead" | "surgeon" | "scrubPractitioner" | "stockKeeper" | "theatreManager" | "incidentLead" | "administrator";
    };
    answer: {
      firstPassword: string;
      id: string;
    };
  };

  /** Whether this browser's session is still good; asking is being heard of. */
  'GET /api/v1/people/session': {
    answer: {
      sessionId: (null) | (string);
    };
  };

  /** Signs a person in by name and password; the session this browser had ends. */
  'POST /api/v1/people/sign-in': {
    body: {
      name: string;
      password: string;
    };
    answer: ActingAnswer;
  };

  /** Ends this browser's session. */
  'POST /api/v1/people/sign-out': {
    answer: null;
  };

  /** Withdraws a workstation, wherever it stands. */
  'POST /api/v1/people/workstations/{id}': {
    path: { id: string };
    answer: null;
  };

  /** Every workstation that was ever enrolled. */
  'GET /api/v1/people/workstations': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (WorkstationOnFile)[];
      next: (null) | (string);
    };
  };

  /** Makes the browser that asks a workstation. */
  'POST /api/v1/people/workstations': {
    body: {
      name: string;
    };
    answer: {
      id: string;
    };
  };

  /** Puts one set or pouch in this place, as scanned: where a thing lies is what was seen last, so no revision is asked for. */
  'POST /api/v1/places/{id}/arrivals': {
    path: { id: string };
    body: ({
      setId: string;
    }) | ({
      packId: string;
    });
    answer: ({
      number: string;
      moved: boolean;
    }) | ({
      revision: number;
    });
  };

  /** One place, how much lies in it, and the first of that; how much of a heap to nobody who counts it now. */
  'GET /api/v1/places/{id}': {
    path: { id: string };
    query: { most?: number };
    answer: {
      lying: LyingThere;
      id: string;
      name: string;
      metres: number;
      withdrawnAt: (null) | (string);
      revision: number;
      sets: number;
      stockLines: number;
    };
  };

  /** Renames a place, takes it out of use, or brings it back. */
  'PUT /api/v1/places/{id}': {
    path: { id: string };
    body: {
      baseRevision?: number;
      name: string;
      metres: number;
      inUse: boolean;
    };
    answer: {
      revision: number;
    };
  };

  /** Every place, with how much lies there. */
  'GET /api/v1/places': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (PlaceOnFile)[];
      next: (null) | (string);
    };
  };

  /** Adds a place; the operation parses it, so that every fault comes from one place. */
  'POST /api/v1/places': {
    body: {
      name: string;
      metres: number;
    };
    answer: {
      id: string;
    };
  };

  /** Confirms the draft as the surgeon saw it. */
  'POST /api/v1/plans/{id}/confirm': {
    path: { id: string };
    body: {
      revision?: number;
    };
    answer: ({
      status: "draft";
      id: string;
      caseId: string;
      version: number;
      construct: {
        region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
        limb: ("left" | "right") | (null);
        bone: "normal" | "poor" | "notStated";
        plates: ({
          key: string;
          plateItemId: string;
          zone: (null) | ({
            fromUm: number;
            toUm: number;
          });
          principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
          fills: { [name: string]: ({
            purpose: "empty";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "neutral";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "offset";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "lag";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "locked";
          }) | ({
            purpose: "temporaryWire";
            wireItemId: string;
          }) };
        })[];
        freeScrews: ({
          washerItemId: (null) | (string);
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          key: string;
        })[];
        sharedLengthSdMm: (null) | (number);
        note: (null) | (string);
      };
      writtenBy: string;
      writtenAt: string;
      revision: number;
      planned: (null) | (PlannedAnew);
    }) | ({
      status: "confirmed" | "superseded";
      confirmedBy: string;
      confirmedAt: string;
      id: string;
      caseId: string;
      version: number;
      construct: {
        region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
        limb: ("left" | "right") | (null);
        bone: "normal" | "poor" | "notStated";
        plates: ({
          key: string;
          plateItemId: string;
          zone: (null) | ({
            fromUm: number;
            toUm: number;
          });
          principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
          fills: { [name: string]: ({
            purpose: "empty";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "neutral";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "offset";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "lag";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "locked";
          }) | ({
            purpose: "temporaryWire";
            wireItemId: string;
          }) };
        })[];
        freeScrews: ({
          washerItemId: (null) | (string);
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          key: string;
        })[];
        sharedLengthSdMm: (null) | (number);
        note: (null) | (string);
      };
      writtenBy: string;
      writtenAt: string;
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** One version of the plan of a case. */
  'GET /api/v1/plans/{id}': {
    path: { id: string };
    answer: (DraftPlan) | (FrozenPlan);
  };

  /** Saves a draft over the revision it was begun from. */
  'PUT /api/v1/plans/{id}': {
    path: { id: string };
    body: {
      revision?: number;
      construct: {
        region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
        limb: ("left" | "right") | (null);
        bone: "normal" | "poor" | "notStated";
        plates: ({
          key: string;
          plateItemId: string;
          zone: ({
            fromUm: number;
            toUm: number;
          }) | (null);
          principle: ("compression" | "bridging" | "combined" | "buttress" | "neutralisation") | (null);
          fills: { [name: string]: ({
            purpose: "empty";
          }) | ({
            purpose: "neutral";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "offset";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "lag";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "locked";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "temporaryWire";
            wireItemId: string;
          }) };
        })[];
        freeScrews: ({
          key: string;
          screwFamily: string;
          cortices: (1) | (2);
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (string) | (null);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          washerItemId: (string) | (null);
        })[];
        sharedLengthSdMm: (number) | (null);
        note: (string) | (null);
      };
      notPatientData?: boolean;
      startId?: string;
    };
    answer: {
      revision: number;
    };
  };

  /** Throws a draft away. */
  'DELETE /api/v1/plans/{id}': {
    path: { id: string };
    body: {
      revision?: number;
    };
    answer: null;
  };

  /** Takes a preference card out of use, or brings it back. */
  'POST /api/v1/plans/cards/{id}/retire': {
    path: { id: string };
    body: {
      retire: boolean;
    };
    answer: null;
  };

  /** One preference card with every version of it. */
  'GET /api/v1/plans/cards/{id}': {
    path: { id: string };
    answer: {
      versions: (CardVersion)[];
      id: string;
      surgeon: {
        id: string;
        name: string;
      };
      procedure: {
        id: string;
        name: string;
        region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
        inUse: boolean;
      };
      version: number;
      savedAt: string;
      body: {
        startIds: (string)[];
        extras: ({
          itemId: string;
          quantity: number;
          note: (null) | (string);
        })[];
        note: (null) | (string);
      };
      retiredAt: (null) | (string);
      used: number;
    };
  };

  /** Saves a change of one's own preference card as its next version. */
  'POST /api/v1/plans/cards/{id}/versions': {
    path: { id: string };
    body: {
      baseVersion?: number;
      card: {
        startIds: (string)[];
        extras: ({
          itemId: string;
          quantity: number;
          note: (string) | (null);
        })[];
        note: (string) | (null);
      };
    };
    answer: {
      version: number;
    };
  };

  /** Every preference card, retired ones too. */
  'GET /api/v1/plans/cards': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (CardOnFile)[];
      next: (null) | (string);
    };
  };

  /** Makes a surgeon's own preference card; the operation parses what it says. */
  'POST /api/v1/plans/cards': {
    body: {
      procedureId: string;
      card: {
        startIds: (string)[];
        extras: ({
          itemId: string;
          quantity: number;
          note: (string) | (null);
        })[];
        note: (string) | (null);
      };
    };
    answer: {
      id: string;
    };
  };

  /** Every current plate with its holes, by name: what the planner's picker shows. */
  'GET /api/v1/plans/plates': {
    answer: {
      plates: ({
        kind: "plate";
        shape: "straightNarrow" | "straightBroad" | "oneThirdTubular" | "tRightAngled" | "tOblique" | "lShaped" | "cloverleaf" | "reconstruction" | "buttress" | "anatomic";
        takesThreadsUm: (number)[];
        lengthUm: (null) | (number);
        widthUm: (null) | (number);
        headWidthUm: (null) | (number);
        thicknessUm: (null) | (number);
        lookAlikeOf: (null) | (string);
        holes: ({
          id: string;
          segment: "shaft" | "head";
          holeClass: "round" | "compressionSlot" | "threaded" | "polyaxialThreaded" | "twoZone" | "elongatedSlot" | "wireHole";
          alongUm: number;
          acrossUm: number;
          tiltAlongDegrees: number;
          tiltAcrossDegrees: number;
          openingUm: (null) | (number);
          seatUm: (null) | (number);
          plainSeat: ("spherical" | "conical") | (null);
          slotUm: (null) | (number);
          lockingFamily: (null) | (string);
          lockingConeDegrees: (null) | (number);
        })[];
        id: string;
        code: string;
        name: string;
        nickname: (null) | (string);
        makerId: string;
        side: ("left" | "right" | "either") | (null);
        material: ("iso5832-1" | "iso5832-2" | "iso5832-3" | "iso5832-9" | "iso5832-11" | "iso5832-12" | "iso7153-1" | "polymer" | "other") | (null);
        suppliedSterile: (boolean) | (null);
        use: "singleUse" | "reprocessable";
        reprocessingLimit: (null) | (number);
        massGrams: (null) | (number);
        unitCostPence: (null) | (number);
        packMultiple: number;
        gtin: (null) | (string);
        partsPerPiece: number;
        status: "current" | "withdrawn" | "recalled";
      })[];
    };
  };

  /** One procedure. */
  'GET /api/v1/plans/procedures/{id}': {
    path: { id: string };
    answer: ProcedureOnFile;
  };

  /** Renames a procedure, takes it off the list, or puts it back. */
  'PUT /api/v1/plans/procedures/{id}': {
    path: { id: string };
    body: {
      name: string;
      region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
      inUse: boolean;
      baseRevision?: number;
    };
    answer: {
      revision: number;
    };
  };

  /** Every procedure that cards are written for. */
  'GET /api/v1/plans/procedures': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (ProcedureOnFile)[];
      next: (null) | (string);
    };
  };

  /** Puts a procedure on the hospital's list; the operation parses it. */
  'POST /api/v1/plans/procedures': {
    body: {
      name: string;
      region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
    };
    answer: {
      id: string;
    };
  };

  /** Sets which advisory remarks local policy has switched off. */
  'PUT /api/v1/plans/remarks': {
    body: {
      off: ("span-ratio" | "screw-density" | "fragment-screws" | "fragment-cortices" | "free-holes-over-zone" | "poor-bone-one-cortex" | "near-fracture-line" | "plain-before-locking")[];
    };
    answer: null;
  };

  /** The newest version of a case's plan as it stands, so that an open planner can see what others saved. */
  'GET /api/v1/plans': {
    query: { case: string };
    answer: {
      plan: (null) | (DraftPlan) | (FrozenPlan);
      writer: (null) | (string);
    };
  };

  /** Begins the first version of a case's plan. */
  'POST /api/v1/plans': {
    body: {
      caseId: string;
      construct: {
        region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
        limb: ("left" | "right") | (null);
        bone: "normal" | "poor" | "notStated";
        plates: ({
          key: string;
          plateItemId: string;
          zone: ({
            fromUm: number;
            toUm: number;
          }) | (null);
          principle: ("compression" | "bridging" | "combined" | "buttress" | "neutralisation") | (null);
          fills: { [name: string]: ({
            purpose: "empty";
          }) | ({
            purpose: "neutral";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "offset";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "lag";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "locked";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "temporaryWire";
            wireItemId: string;
          }) };
        })[];
        freeScrews: ({
          key: string;
          screwFamily: string;
          cortices: (1) | (2);
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (string) | (null);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          washerItemId: (string) | (null);
        })[];
        sharedLengthSdMm: (number) | (null);
        note: (string) | (null);
      };
      notPatientData?: boolean;
      startId?: string;
    };
    answer: (DraftPlan) | (FrozenPlan);
  };

  /** Where a construct can be copied from: your saved starts, then the confirmed plans of cases. */
  'GET /api/v1/plans/sources': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (PlanSource)[];
      next: (null) | (string);
    };
  };

  /** Takes a saved start out of use, or brings it back. */
  'POST /api/v1/plans/starts/{id}/retire': {
    path: { id: string };
    body: {
      retire: boolean;
    };
    answer: null;
  };

  /** One saved start with every version of it. */
  'GET /api/v1/plans/starts/{id}': {
    path: { id: string };
    answer: {
      versions: (StartVersion)[];
      id: string;
      owner: {
        id: string;
        name: string;
      };
      name: string;
      version: number;
      savedAt: string;
      construct: {
        region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
        limb: ("left" | "right") | (null);
        bone: "normal" | "poor" | "notStated";
        plates: ({
          key: string;
          plateItemId: string;
          zone: (null) | ({
            fromUm: number;
            toUm: number;
          });
          principle: ("buttress" | "compression" | "bridging" | "combined" | "neutralisation") | (null);
          fills: { [name: string]: ({
            purpose: "empty";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "neutral";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "offset";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "lag";
          }) | ({
            screwFamily: string;
            cortices: 1 | 2;
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (null) | (string);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
            purpose: "locked";
          }) | ({
            purpose: "temporaryWire";
            wireItemId: string;
          }) };
        })[];
        freeScrews: ({
          washerItemId: (null) | (string);
          screwFamily: string;
          cortices: 1 | 2;
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (null) | (string);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          key: string;
        })[];
        sharedLengthSdMm: (null) | (number);
        note: (null) | (string);
      };
      retiredAt: (null) | (string);
      plates: ({
        name: string;
        status: "unknown" | "current" | "withdrawn" | "recalled";
      })[];
    };
  };

  /** Gives one's own start another name. */
  'PATCH /api/v1/plans/starts/{id}': {
    path: { id: string };
    body: {
      name: string;
    };
    answer: null;
  };

  /** What the sets in store can build of a saved start today. */
  'GET /api/v1/plans/starts/{id}/today': {
    path: { id: string };
    answer: {
      today?: BuildToday;
    };
  };

  /** Saves a change of one's own start as its next version. */
  'POST /api/v1/plans/starts/{id}/versions': {
    path: { id: string };
    body: {
      baseVersion?: number;
      construct: {
        region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
        limb: ("left" | "right") | (null);
        bone: "normal" | "poor" | "notStated";
        plates: ({
          key: string;
          plateItemId: string;
          zone: ({
            fromUm: number;
            toUm: number;
          }) | (null);
          principle: ("compression" | "bridging" | "combined" | "buttress" | "neutralisation") | (null);
          fills: { [name: string]: ({
            purpose: "empty";
          }) | ({
            purpose: "neutral";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "offset";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "lag";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "locked";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "temporaryWire";
            wireItemId: string;
          }) };
        })[];
        freeScrews: ({
          key: string;
          screwFamily: string;
          cortices: (1) | (2);
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (string) | (null);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          washerItemId: (string) | (null);
        })[];
        sharedLengthSdMm: (number) | (null);
        note: (string) | (null);
      };
    };
    answer: {
      version: number;
    };
  };

  /** Every saved start, retired ones too. */
  'GET /api/v1/plans/starts': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (StartOnFile)[];
      next: (null) | (string);
    };
  };

  /** Keeps a construct as the acting person's own starting point. */
  'POST /api/v1/plans/starts': {
    body: {
      name: string;
      construct: {
        region: "clavicle" | "proximalHumerus" | "humerusShaft" | "distalHumerus" | "olecranon" | "forearmShaft" | "distalRadius" | "hand" | "pelvis" | "proximalFemur" | "femurShaft" | "distalFemur" | "patella" | "proximalTibia" | "tibiaShaft" | "distalTibia" | "ankle" | "foot";
        limb: ("left" | "right") | (null);
        bone: "normal" | "poor" | "notStated";
        plates: ({
          key: string;
          plateItemId: string;
          zone: ({
            fromUm: number;
            toUm: number;
          }) | (null);
          principle: ("compression" | "bridging" | "combined" | "buttress" | "neutralisation") | (null);
          fills: { [name: string]: ({
            purpose: "empty";
          }) | ({
            purpose: "neutral";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "offset";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "lag";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "locked";
            screwFamily: string;
            cortices: (1) | (2);
            length: ({
              kind: "exact";
              mm: number;
            }) | ({
              kind: "spread";
              meanMm: number;
              sdMm: number;
              sourceNote: (string) | (null);
            }) | ({
              kind: "notStated";
            });
            acceptLongerMm: number;
          }) | ({
            purpose: "temporaryWire";
            wireItemId: string;
          }) };
        })[];
        freeScrews: ({
          key: string;
          screwFamily: string;
          cortices: (1) | (2);
          length: ({
            kind: "exact";
            mm: number;
          }) | ({
            kind: "spread";
            meanMm: number;
            sdMm: number;
            sourceNote: (string) | (null);
          }) | ({
            kind: "notStated";
          });
          acceptLongerMm: number;
          washerItemId: (string) | (null);
        })[];
        sharedLengthSdMm: (number) | (null);
        note: (string) | (null);
      };
    };
    answer: {
      id: string;
    };
  };

  /** Begins the next version of a confirmed plan, as a copy. */
  'POST /api/v1/plans/versions': {
    body: {
      caseId: string;
    };
    answer: (DraftPlan) | (FrozenPlan);
  };

  /** The person of this session says that they know of a recall and did what they were asked. */
  'POST /api/v1/recalls/{id}/acknowledge': {
    path: { id: string };
    body: {
      note: string;
    };
    answer: {
      acknowledged: number;
    };
  };

  /** Closes a recall, for which two people stand. */
  'POST /api/v1/recalls/{id}/close': {
    path: { id: string };
    body: {
      baseRevision?: number;
      because: string;
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
      second: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: {
      revision: number;
    };
  };

  /** One recall: what it reaches, what is held for it, and who was asked. */
  'GET /api/v1/recalls/{id}': {
    path: { id: string };
    answer: RecallOnFile;
  };

  /** Recalls, open and closed, the newest first. */
  'GET /api/v1/recalls': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (RecallInList)[];
      next: (null) | (string);
    };
  };

  /** Calls something back, or rehearses that. */
  'POST /api/v1/recalls': {
    body: {
      recallId: string;
      of: ({
        kind: "lot";
        itemId: string;
        lot: string;
      }) | ({
        kind: "item";
        itemId: string;
      }) | ({
        kind: "set";
        setId: string;
      }) | ({
        kind: "load";
        loadId: string;
      });
      reason: string;
      noticeReference: string;
      isRehearsal: boolean;
      holdUnknown: boolean;
    };
    answer: RecallOpened;
  };

  /** Cases that cannot go as they stand, or may not, as the plan has them now. */
  'GET /api/v1/reports/at-risk': {
    answer: {
      at: string;
      cases: (RiskLine)[];
    };
  };

  /** What the things of past cases cost and how much was opened for nothing, as tables; no figure names a person. */
  'GET /api/v1/reports/costs': {
    query: { months?: "3" | "12" | "24" | "60" };
    answer: {
      period: {
        from: string;
        until: string;
      };
      cases: number;
      notRecorded: number;
      hidden: number;
      tables: (FigureTable)[];
    };
  };

  /** The report of the day before an operating day, with what changed since you marked it as seen. */
  'GET /api/v1/reports/day-before': {
    query: { day?: string };
    answer: {
      today: string;
      report: DayReport;
      changed: ChangedDay;
    };
  };

  /** Keeps that its sender has seen a day as it was shown to them. */
  'POST /api/v1/reports/looks': {
    body: {
      view: "morning" | "dayBefore" | "theatreList";
      day: string;
      shownAt: string;
      ledgerSeq: number;
      seen: ({
        id: string;
        reference: string;
        theatreId: string;
        theatre: string;
        startsAt: string;
        endsAt: string;
        cancelled: boolean;
        planVersion: (number) | (null);
        confirmed: boolean;
        promised: ({
          id: string;
          code: string;
        })[];
        standing: ({
          kind: "notPlanned" | "shortOf" | "ready" | "readyWith" | "waiting" | "noSetFree";
          until: (string) | (null);
          sets: ({
            id: string;
            code: string;
          })[];
        }) | (null);
      })[];
    };
    answer: {
      shownAt: string;
    };
  };

  /** What past its use-by, not found and repaired cost, and how long pieces last, as tables and figure by figure. */
  'GET /api/v1/reports/loss': {
    query: { months?: "3" | "12" | "24" | "60" };
    answer: {
      losses: (ShelfLoss)[];
      lots: (LotAtRisk)[];
      waste: (ShelfWasteRow)[];
      missing: ({
        set: (null) | (string);
        configurationId: (null) | (string);
        step: (null) | (string);
        pieces: number;
        pence: number;
        unknown: number;
      })[];
      repairs: (RepairRow)[];
      lives: (SlotLife)[];
      tables: {
        notFound: FigureTable;
        shelf: FigureTable;
        repairs: FigureTable;
        shelfWaste: FigureTable;
        life: FigureTable;
      };
    };
  };

  /** The morning report of a day as things stand now, with what changed since you marked it as seen. */
  'GET /api/v1/reports/morning': {
    query: { day?: string };
    answer: {
      today: string;
      report: DayReport;
      changed: ChangedDay;
    };
  };

  /** All a theatre manager sees to at the beginning of a day. */
  'GET /api/v1/reports/this-morning': {
    answer: {
      topics: (Topic)[];
    };
  };

  /** Approves a proposal and makes one order of it for each maker. */
  'POST /api/v1/restock/{id}/approve': {
    path: { id: string };
    body: {
      baseRevision?: number;
      entry: {
        changes: ({
          lineId: string;
          pieces: number;
          because: string;
        })[];
      };
    };
    answer: Ordered;
  };

  /** One proposal of what to order, line by line, with how each was worked out. */
  'GET /api/v1/restock/{id}': {
    path: { id: string };
    answer: Proposal;
  };

  /** Turns a proposal down, with the reason. */
  'POST /api/v1/restock/{id}/turn-down': {
    path: { id: string };
    body: {
      baseRevision?: number;
      entry: {
        because: string;
      };
    };
    answer: {
      revision: number;
    };
  };

  /** What the present settings of restock would have done over the record, beside a plain par level. */
  'GET /api/v1/restock/backtest': {
    answer: BacktestOnScreen;
  };

  /** What confirmed plans need that neither sets nor the shelf have. */
  'GET /api/v1/restock/gaps': {
    query: { days?: "7" | "14" | "28" };
    answer: {
      cases: number;
      gaps: (GapOnScreen)[];
    };
  };

  /** Closes an order of which nothing more is expected. */
  'POST /api/v1/restock/orders/{id}/close': {
    path: { id: string };
    body: {
      baseRevision?: number;
      entry: {
        because: (string) | (null);
      };
    };
    answer: {
      revision: number;
    };
  };

  /** Puts what came of an order on the shelf. */
  'POST /api/v1/restock/orders/{id}/receive': {
    path: { id: string };
    body: {
      baseRevision?: number;
      entry: {
        placeId: string;
        parts: ({
          lineId: string;
          quantity: number;
          lot: (string) | (null);
          useBy: (string) | (null);
          useByReadAgain?: boolean;
          form: "sterilePacked" | "unsterile";
        })[];
      };
    };
    answer: Received2;
  };

  /** One order to a maker with its lines. */
  'GET /api/v1/restock/orders/{id}': {
    path: { id: string };
    answer: Order;
  };

  /** Orders to makers, the newest first. */
  'GET /api/v1/restock/orders': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (OrderRow)[];
      next: (null) | (string);
    };
  };

  /** Slots of sets that the shelf could fill now. */
  'GET /api/v1/restock/refills': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (Refill)[];
      next: (null) | (string);
    };
  };

  /** Proposals of what to order, the newest first. */
  'GET /api/v1/restock': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (RestockRecorded)[];
      next: (null) | (string);
    };
  };

  /** Has what to order worked out from how things stand. */
  'POST /api/v1/restock': {
    answer: {
      id: string;
      number: string;
    };
  };

  /** What is agreed with each maker, or holds for one item. */
  'GET /api/v1/restock/terms': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (TermsOnScreen)[];
      next: (null) | (string);
    };
  };

  /** States the terms of a maker or an item; the operation parses them, so that every fault comes from one place. */
  'POST /api/v1/restock/terms': {
    body: {
      of: ({
        kind: "maker";
        id: string;
      }) | ({
        kind: "item";
        id: string;
      });
      baseRevision?: number;
      terms: {
        leadDays: (number) | (null);
        leadSdDays: (number) | (null);
        reviewDays: (number) | (null);
        servicePercent: (number) | (null);
        shelfLifeDays: (number) | (null);
        consigned?: (boolean) | (null);
      };
    };
    answer: {
      revision: number;
    };
  };

  /** Keeps what a person said when asked: another one, or the same again. */
  'POST /api/v1/scans/{id}/reply': {
    path: { id: string };
    body: {
      reply: "another" | "same";
    };
    answer: Replied;
  };

  /** Your last scans, and what each was taken for. */
  'GET /api/v1/scans': {
    answer: {
      scans: (LastScan)[];
    };
  };

  /** Stores scans, each for the person who made it, and answers what each means. */
  'POST /api/v1/scans': {
    body: {
      scans: ({
        id: string;
        text: string;
        how: "scanner" | "camera" | "typed";
        doneAt: string;
        context: ({
          kind: "none";
        }) | ({
          kind: "bench";
          countId: string;
        }) | ({
          kind: "load";
          loadId: string;
        }) | ({
          kind: "set";
          setId: string;
        }) | ({
          kind: "kit";
          caseId: string;
        }) | ({
          kind: "kitBack";
          caseId: string;
        }) | ({
          kind: "kitCheck";
          checkId: string;
        }) | ({
          kind: "use";
          caseId: string;
        });
        separators: "mayBeLost" | "sent";
        session: ({
          id: string;
          ticket: string;
        }) | (null);
      })[];
    };
    answer: {
      answers: (({
        id?: string;
        ok: boolean;
        answer: {
          id: string;
          verdict: "unknown" | "refused" | "ask" | "understood" | "already";
          meaning: ({
            kind: "set";
            setId: string;
            code: string;
          }) | ({
            kind: "pack";
            packId: string;
            number: string;
            copy: (null) | (number);
            setId: (null) | (string);
            code: string;
            itemId: (null) | (string);
            lot: (null) | (string);
            useBy: (null) | (string);
            loadId: (null) | (string);
            state: "opened" | "awaitingAcceptance" | "closed" | "sterile" | "undone" | "inLoad";
            short: boolean;
          }) | ({
            kind: "item";
            itemId: string;
            code: string;
            name: string;
            gtin: (null) | (string);
            lot: (null) | (string);
            serial: (null) | (string);
            useBy: (null) | (string);
            quantity: (null) | (number);
            status: "current" | "withdrawn" | "recalled";
          }) | ({
            kind: "load";
            loadId: string;
            number: string;
            state: "awaitingAcceptance" | "makingUp" | "running" | "accepted" | "rejected" | "undone";
          }) | ({
            kind: "place";
            placeId: string;
            name: string;
          }) | ({
            kind: "stock";
            stockId: string;
            itemId: string;
            code: string;
            lot: (null) | (string);
            useBy: (null) | (string);
            placeId: string;
          }) | ({
            kind: "sheet";
            number: string;
            setId: string;
            code: string;
            versionId: string;
            setRevision: number;
          }) | ({
            kind: "case";
            caseId: string;
            reference: string;
          }) | ({
            kind: "refused";
            because: "oldLabel" | "noSuchCopy" | "packOpened" | "packUndone" | "oldSheet" | "faulty" | "ambiguous" | "severalThings" | "patient";
            setId: (null) | (string);
            packId: (null) | (string);
            candidates: (string)[];
            faults: (string)[];
          }) | ({
            kind: "unknown";
            text: string;
            gtin: (null) | (string);
          });
          says: (null) | (string);
          sentence: string;
          before: (null) | ({
            scanId: string;
            at: string;
            by: string;
          });
          doneAt: string;
          enteredAt: string;
          late: boolean;
        };
        because?: never;
        says?: never;
      }) | ({
        id?: string;
        ok: boolean;
        because: "notFound" | "notPermitted" | "frozen" | "conflict" | "invalid";
        says: string;
        answer?: never;
      }))[];
    };
  };

  /** Sets a short set aside until it is decided. */
  'POST /api/v1/sets/{id}/ask-decision': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** Puts a set into washing. */
  'POST /api/v1/sets/{id}/begin-wash': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** Brings a set back into service. */
  'POST /api/v1/sets/{id}/bring-back': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
      reason: string;
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** How far a set is counted, and your own open count of it with what you entered. */
  'GET /api/v1/sets/{id}/count': {
    path: { id: string };
    answer: {
      setId: string;
      code: string;
      step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
      lines: number;
      counted: number;
      checked: number;
      checkNeeded: boolean;
      countedBy: ({
        personId: string;
        name: string;
      })[];
      own: (null) | (OwnOpenCount);
    };
  };

  /** What counts of a set found, the newest first; nothing to whoever counts it blind. */
  'GET /api/v1/sets/{id}/counts': {
    path: { id: string };
    query: { limit?: number; cursor?: string };
    answer: {
      items: (CountOnFile)[];
      next: (null) | (string);
    };
  };

  /** Takes a set out of washing: to the bench, or held because it was seen to be dirty. */
  'POST /api/v1/sets/{id}/end-wash': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
      seen: "clean" | "dirty";
      note?: (string) | (null);
    };
    answer: {
      revision: number;
      planned: (null) | (PlannedAnew);
    };
  };

  /** What happened to a set, turn by turn, the newest first. */
  'GET /api/v1/sets/{id}/history': {
    path: { id: string };
    query: { limit?: number; cursor?: string };
    answer: {
      items: (TurnHistory)[];
      next: (null) | (string);
    };
  };

  /** Holds a set, with the reason. */
  'POST /api/v1/sets/{id}/hold': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
      because: "dirtyAfterWash" | "wrapWetTornOrUnsealed" | "indicatorOrCycleFailed" | "loadUnknown" | "recall" | "wrongLabel" | "disputedCount" | "loanWithoutDeclaration" | "mustHaveDamaged";
      note: string;
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** Lifts the hold of a set: the person proves again who they are, and says so. */
  'POST /api/v1/sets/{id}/lift-hold': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
      to: "inTheatre" | "comingBack" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore" | "held";
      reason: string;
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** Records that a set lies in another place. */
  'POST /api/v1/sets/{id}/move': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
      placeId: string;
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** Opens a sealed set on the bench; it stops being sterile. */
  'POST /api/v1/sets/{id}/open': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** Closes a set: the packer proves who they are and says "I packed it". */
  'POST /api/v1/sets/{id}/pack': {
    path: { id: string };
    body: {
      id: string;
      baseRevision?: number;
      barrier: "wrap" | "container";
      weighedGrams: (number) | (null);
      shortReason: (string) | (null);
      massReason: (string) | (null);
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: SetPacked;
  };

  /** Takes a set back from theatre. */
  'POST /api/v1/sets/{id}/receive': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** Makes an open set follow the version in force. */
  'POST /api/v1/sets/{id}/refit': {
    path: { id: string };
    body: {
      baseRevision?: number;
    };
    answer: {
      revision: number;
      version: number;
    };
  };

  /** Sends a packed or sterile set round again. */
  'POST /api/v1/sets/{id}/reprocess': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
      reason: string;
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** Takes a set that waits for a decision back to the bench. */
  'POST /api/v1/sets/{id}/return-to-bench': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** One set: its slots and what lies in them, how it stands, its turn, and what is open about it. */
  'GET /api/v1/sets/{id}': {
    path: { id: string };
    answer: {
      standing: SetStanding;
      newer: (null) | (number);
      turn: (null) | (SetTurn);
      aside: (AsidePiece)[];
      questions: (TheatreQuestion)[];
      loan: (null) | ({
        id: string;
        number: string;
      });
      id: string;
      code: string;
      owner: "ours" | "loan";
      ownerNote: (null) | (string);
      step: "inTheatre" | "comingBack" | "held" | "washing" | "onBench" | "shortAwaitingDecision" | "packed" | "inSteriliser" | "awaitingAcceptance" | "inSterileStore";
      stepSince: string;
      heldBecause: (null) | (string);
      outOfService: boolean;
      readyAt: (null) | (string);
      useBy: (null) | (string);
      place: (null) | ({
        id: string;
        name: string;
      });
      revision: number;
      configuration: {
        id: string;
        code: string;
        name: string;
      };
      version: {
        id: string;
        version: number;
        status: "draft" | "superseded" | "inForce" | "approved";
      };
      lines: (HeldLine)[];
      foreign: ({
        itemId: string;
        quantity: number;
        note: (null) | (string);
      })[];
      promisedTo: ({
        caseId: string;
        reference: string;
        startsAt: string;
      })[];
    };
  };

  /** Sends a set to theatre for one case. */
  'POST /api/v1/sets/{id}/send': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
      caseId: string;
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** Lets a short set go: by everyone the table asks for, together. */
  'POST /api/v1/sets/{id}/short-decision': {
    path: { id: string };
    body: {
      id: string;
      baseRevision?: number;
      reason: string;
      caseId: (string) | (null);
      substitutes: ({
        lineId: string;
        itemId: string;
        from: ({
          kind: "pouch";
          stockId: string;
        }) | ({
          kind: "inSet";
          lineId: string;
        });
      })[];
      proofs: ({
        as: "decontaminationLead" | "theatreLead" | "operatingSurgeon";
        proof: {
          who?: ("me") | ({
            badge: string;
          }) | ({
            personId: string;
          });
          secret: string;
        };
      })[];
    };
    answer: {
      id: string;
      revision: number;
    };
  };

  /** What a set lacks, what could stand in, and what was decided on it; nothing to whoever counts it blind. */
  'GET /api/v1/sets/{id}/short': {
    path: { id: string };
    answer: {
      blind: boolean;
      short: (null) | (ShortScreen);
    };
  };

  /** Takes a set out of service. */
  'POST /api/v1/sets/{id}/withdraw': {
    path: { id: string };
    body: {
      baseRevision?: number;
      doneAt?: (string) | (null);
      reason: string;
    };
    answer: ({
      revision: number;
    }) | ({
      revision: number;
      planned: (null) | (PlannedAnew);
    });
  };

  /** One page of the whole-hospital view, as its address asks for it. */
  'GET /api/v1/sets/list': {
    query: { q?: string; step?: string; configuration?: string; standing?: string; "sets-sort"?: string; "sets-page"?: string };
    answer: ServedSets;
  };

  /** Every set: where it is in its turn, how complete it is, and to which cases it is promised. */
  'GET /api/v1/sets': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (SetListed)[];
      next: (null) | (string);
    };
  };

  /** One local setting with every change of it. */
  'GET /api/v1/settings/{key}': {
    path: { key: string };
    answer: {
      history: (SettingChange)[];
      key: "bench" | "emergency" | "loads" | "loans" | "packs" | "restock" | "sets" | "stock" | "planning" | "costs" | "reasons" | "sterility" | "fit" | "kits" | "stages" | "calendars" | "signIn";
      value: { [name: string]: unknown };
      defaults: { [name: string]: unknown };
      revision: number;
      changedBy: (null) | (string);
      changedAt: (null) | (string);
    };
  };

  /** Changes one local setting, whole. */
  'PUT /api/v1/settings/{key}': {
    path: { key: string };
    body: {
      baseRevision?: number;
      entry: { [name: string]: (string) | (boolean) | ((string)[]) };
      because: string;
    };
    answer: {
      revision: number;
    };
  };

  /** One of the hospital’s own reasons. */
  'GET /api/v1/settings/reason-codes/{id}': {
    path: { id: string };
    answer: {
      id: string;
      kind: "delay" | "waste";
      code: string;
      words: string;
      inUse: boolean;
      revision: number;
    };
  };

  /** Retires a reason of the hospital's own list, or puts it back. */
  'PUT /api/v1/settings/reason-codes/{id}': {
    path: { id: string };
    body: {
      inUse: boolean;
      baseRevision?: number;
    };
    answer: {
      revision: number;
    };
  };

  /** The hospital’s own reasons, retired ones too. */
  'GET /api/v1/settings/reason-codes': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: ({
        id: string;
        kind: "delay" | "waste";
        code: string;
        words: string;
        inUse: boolean;
        revision: number;
      })[];
      next: (null) | (string);
    };
  };

  /** Puts a reason on the hospital's own list; the operation parses it. */
  'POST /api/v1/settings/reason-codes': {
    body: {
      kind: "delay" | "waste";
      code: string;
      words: string;
    };
    answer: {
      id: string;
    };
  };

  /** Puts the reasons of one kind into another order. */
  'PUT /api/v1/settings/reason-codes': {
    body: { [name: string]: unknown };
    answer: {
      ids: (string)[];
    };
  };

  /** Every local setting, with its value and what it is where nobody has set it. */
  'GET /api/v1/settings': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (SettingOnFile)[];
      next: (null) | (string);
    };
  };

  /** One steriliser with its programmes. */
  'GET /api/v1/sterilisers/{id}': {
    path: { id: string };
    answer: SteriliserOnFile;
  };

  /** Changes a steriliser's name or programmes. */
  'POST /api/v1/sterilisers/{id}': {
    path: { id: string };
    body: {
      entry: {
        name: string;
        programmes: ({
          name: string;
          bandMillicelsius: [number, (number) | (null)];
          holdSeconds: number;
        })[];
      };
    };
    answer: {
      id: string;
    };
  };

  /** Takes a steriliser out of service, or back into it. */
  'POST /api/v1/sterilisers/{id}/withdraw': {
    path: { id: string };
    body: {
      out: boolean;
      reason: string;
    };
    answer: {
      out: boolean;
    };
  };

  /** Every steriliser with its programmes. */
  'GET /api/v1/sterilisers': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (SteriliserOnFile)[];
      next: (null) | (string);
    };
  };

  /** Adds a steriliser with its programmes. */
  'POST /api/v1/sterilisers': {
    body: {
      entry: {
        name: string;
        programmes: ({
          name: string;
          bandMillicelsius: [number, (number) | (null)];
          holdSeconds: number;
        })[];
      };
    };
    answer: {
      id: string;
    };
  };

  /** What is done with a count of the shelves besides counting. */
  'POST /api/v1/stock-counts/{id}/acts': {
    path: { id: string };
    body: ({
      kind: "close";
      baseRevision?: number;
    }) | ({
      kind: "countAgain";
      baseRevision?: number;
    }) | ({
      kind: "abandon";
      baseRevision?: number;
    }) | ({
      kind: "decide";
      lineId: string;
      decision: "accepted" | "left";
      because: string;
    });
    answer: ({
      recount: number;
      differences: number;
    }) | ({
      revision: number;
    }) | ({
      difference: number;
    });
  };

  /** Makes figures of a count of the shelves durable, in order. */
  'POST /api/v1/stock-counts/{id}/figures': {
    path: { id: string };
    body: {
      entries: ({
        entry: ({
          kind: "line";
          id: string;
          lineId: string;
          pieces: number;
          doneAt: string;
        }) | ({
          kind: "added";
          id: string;
          lineId: string;
          itemId: string;
          form: "pouch" | "sterilePacked" | "unsterile";
          lot: (string) | (null);
          useBy: (string) | (null);
          owner: "ours" | "consignment";
          pieces: number;
          doneAt: string;
        });
        session: {
          id: string;
          ticket: string;
        };
      })[];
    };
    answer: {
      delivered: (({
        id: string;
        ok: true;
        enteredAt: string;
      }) | ({
        id: string;
        ok: false;
        because: string;
        sentence: string;
      }))[];
    };
  };

  /** One count of the shelf, as far as whoever asks may see it: a counter sees no figure of the record. */
  'GET /api/v1/stock-counts/{id}': {
    path: { id: string };
    answer: CountScreen;
  };

  /** Places, with how many of their heaps are due to be counted. */
  'GET /api/v1/stock-counts/due': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (PlaceToCount)[];
      next: (null) | (string);
    };
  };

  /** Counts of the shelves, the newest first: where, by whom and how far; never how much was found. */
  'GET /api/v1/stock-counts': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (CountOnList)[];
      next: (null) | (string);
    };
  };

  /** Begins a blind count of what is due at a place. */
  'POST /api/v1/stock-counts': {
    body: {
      countId: string;
      placeId: string;
      countClass: "A" | "B" | "C" | "all";
    };
    answer: {
      id: string;
    };
  };

  /** One heap of the shelf; how many to nobody who counts it now. */
  'GET /api/v1/stock/{id}': {
    path: { id: string };
    answer: ShelfLotRow;
  };

  /** One act on one heap of the shelf. */
  'POST /api/v1/stock/{id}': {
    path: { id: string };
    body: ({
      kind: "move";
      baseRevision?: number;
      pieces: number;
      placeId: string;
    }) | ({
      kind: "adjust";
      baseRevision?: number;
      pieces: number;
      reason: "found" | "notFound" | "damaged" | "opened" | "pastUseBy" | "sentBack" | "enteredTooFew" | "enteredTooMany";
      note: string;
      reasonId: (string) | (null);
    }) | ({
      kind: "hold";
      baseRevision?: number;
      pieces: number;
      because: "wrapWetTornOrUnsealed" | "wrongLabel" | "disputedCount" | "recall" | "pastUseBy" | "goesBack";
      note: string;
    }) | ({
      kind: "letGo";
      baseRevision?: number;
      reason: string;
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    });
    answer: ({
      stockId: string;
    }) | ({
      quantity: number;
    }) | ({
      revision: number;
    });
  };

  /** One page of the shelves, as its address asks for it. */
  'GET /api/v1/stock/list': {
    query: { q?: string; view?: "lots"; show?: string };
    answer: ({
      view: "items";
      rows: (ItemTableRow)[];
      found: number;
      total: number;
    }) | ({
      view: "lots";
      rows: (LotTableRow)[];
      found: number;
      total: number;
    });
  };

  /** Moves of an item onto, off and between the shelves, the newest first; those of heaps you count now are left out. */
  'GET /api/v1/stock/moves': {
    query: { item: string; limit?: number; cursor?: string };
    answer: {
      items: (ShelfMove)[];
      next: (null) | (string);
    };
  };

  /** Heaps of the shelves, each with its turn in the order of taking; how many to nobody who counts it now. */
  'GET /api/v1/stock': {
    query: { item?: string; limit?: number; cursor?: string };
    answer: {
      items: (ShelfLotRow)[];
      next: (null) | (string);
    };
  };

  /** Gives up an open count in theatre; its entries stay on record and count for nothing. */
  'POST /api/v1/theatre-counts/{id}/abandon': {
    path: { id: string };
    answer: {
      countId: string;
    };
  };

  /** Closes a count in theatre: both people prove who they are. */
  'POST /api/v1/theatre-counts/{id}/close': {
    path: { id: string };
    body: {
      entryIds: (string)[];
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
      second: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: ClosedTheatreCount;
  };

  /** Makes figures of a count in theatre durable, in order. */
  'POST /api/v1/theatre-counts/{id}/entries': {
    path: { id: string };
    body: {
      entries: ({
        entry: {
          id: string;
          act: ({
            kind: "counted";
            thing: ({
              kind: "line";
              setId: string;
              lineId: string;
            }) | ({
              kind: "added";
              key: string;
            });
            pieces: number;
          }) | ({
            kind: "implanted";
            thing: ({
              kind: "line";
              setId: string;
              lineId: string;
            }) | ({
              kind: "added";
              key: string;
            });
            pieces: number;
          }) | ({
            kind: "discarded";
            thing: ({
              kind: "line";
              setId: string;
              lineId: string;
            }) | ({
              kind: "added";
              key: string;
            });
            pieces: number;
          }) | ({
            kind: "added";
            key: string;
            itemId: (string) | (null);
            name: string;
            pieces: number;
          }) | ({
            kind: "notOpened";
            setId: string;
            so: boolean;
          });
          doneAt: string;
        };
        session: {
          id: string;
          ticket: string;
        };
      })[];
    };
    answer: {
      delivered: (({
        id: string;
        ok: true;
        enteredAt: string;
      }) | ({
        id: string;
        ok: false;
        because: string;
        sentence: string;
      }))[];
    };
  };

  /** One count in theatre: of which case, by which two and when. */
  'GET /api/v1/theatre-counts/{id}': {
    path: { id: string };
    answer: TheatreCountRecorded;
  };

  /** Counts in theatre, the last begun first; their figures are told with the case. */
  'GET /api/v1/theatre-counts': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (TheatreCountRecorded)[];
      next: (null) | (string);
    };
  };

  /** Every case a set could be sent to as a choice: its reference, and beside it when it begins. */
  'GET /api/v1/theatre-list/cases': {
    answer: {
      cases: (ComboOption)[];
    };
  };

  /** What changed on the list since you last marked it as seen. */
  'GET /api/v1/theatre-list/changes': {
    answer: ListChanges;
  };

  /** The theatre list of one day, theatre by theatre, with the sets promised to each case. */
  'GET /api/v1/theatre-list/days/{date}': {
    path: { date: string };
    answer: TheatreDay;
  };

  /** Puts the cases of one theatre and day in another order. */
  'POST /api/v1/theatre-list/order': {
    body: {
      theatreId: string;
      date: string;
      order: ({
        caseId: string;
        revision: number;
      })[];
    };
    answer: {
      moved: number;
      lost: (LostPromise)[];
      planned: (null) | (PlannedAnew);
    };
  };

  /** Gives sets to the cases of the horizon; what people chose stays, and what need not move stays. */
  'POST /api/v1/theatre-list/plan': {
    answer: PlanKept;
  };

  /** Keeps a plan as it was looked at; refused where promises changed since. */
  'POST /api/v1/theatre-list/proposals/keep': {
    body: {
      id: string;
    };
    answer: PlanKept;
  };

  /** Works out who would get which set over the horizon, and writes nothing. */
  'POST /api/v1/theatre-list/proposals': {
    answer: string;
  };

  /** Takes a session out, or it and those like it in later weeks. */
  'POST /api/v1/theatre-list/sessions/{id}/remove': {
    path: { id: string };
    body: {
      baseRevision?: number;
      andLater: boolean;
    };
    answer: {
      removed: number;
    };
  };

  /** Changes when one session is, or whose it is. */
  'POST /api/v1/theatre-list/sessions/{id}': {
    path: { id: string };
    body: {
      baseRevision?: number;
      date: string;
      from: string;
      until: string;
      surgeonId: (string) | (null);
    };
    answer: {
      revision: number;
    };
  };

  /** Sessions of the theatres from one day up to another. */
  'GET /api/v1/theatre-list/sessions': {
    query: { from?: string; before?: string; limit?: number; cursor?: string };
    answer: {
      items: (ListedSession)[];
      next: (null) | (string);
    };
  };

  /** Enters when a theatre works, on one day or week after week. */
  'POST /api/v1/theatre-list/sessions': {
    body: {
      theatreId: string;
      date: string;
      from: string;
      until: string;
      surgeonId: (string) | (null);
      weeks: number;
    };
    answer: {
      ids: (string)[];
    };
  };

  /** Every set in service as a choice: its code, and its kind beside it. */
  'GET /api/v1/theatre-list/sets': {
    answer: {
      sets: ({
        value: string;
        label: string;
        note: string;
      })[];
    };
  };

  /** How each case of the horizon stands by the plan, in a word and a sentence, by case id. */
  'GET /api/v1/theatre-list/standings': {
    answer: {
      at: string;
      standings: { [name: string]: CountedStanding };
    };
  };

  /** Changes how long before a case its sets must stand in this theatre. */
  'POST /api/v1/theatre-list/theatres/{id}/lead': {
    path: { id: string };
    body: {
      baseRevision?: number;
      leadMinutes: (number) | (null);
      because: string;
    };
    answer: {
      revision: number;
      planned: (null) | (PlannedAnew);
    };
  };

  /** One theatre with the minutes its sets have to be there before a case. */
  'GET /api/v1/theatre-list/theatres/{id}': {
    path: { id: string };
    answer: TheatreLead;
  };

  /** Every theatre with the minutes its sets have to be there before a case. */
  'GET /api/v1/theatre-list/theatres': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (TheatreLead)[];
      next: (null) | (string);
    };
  };

  /** Seven days of the theatre list: its cases and the sessions they lie in. */
  'GET /api/v1/theatre-list/week': {
    query: { from?: string };
    answer: {
      from: string;
      before: string;
      cases: (ListedCase)[];
      sessions: (ListedSession)[];
    };
  };

  /** Records what was done about an open question; it stays open. */
  'POST /api/v1/theatre-questions/{id}/acts': {
    path: { id: string };
    body: {
      act: ({
        kind: "found";
        id: string;
        pieces: number;
        note: string;
      }) | ({
        kind: "xRayAsked";
        id: string;
        note: (string) | (null);
      }) | ({
        kind: "discarded";
        id: string;
        pieces: number;
        note: string;
      }) | ({
        kind: "stillOpen";
        id: string;
        note: string;
      });
    };
    answer: {
      id: string;
      unaccounted: number;
    };
  };

  /** One figure that did not come out, with what was done about it. */
  'GET /api/v1/theatre-questions/{id}': {
    path: { id: string };
    answer: TheatreQuestion;
  };

  /** Settles an open question, for which two people stand. */
  'POST /api/v1/theatre-questions/{id}/settle': {
    path: { id: string };
    body: {
      as: "accountedFor" | "notFound";
      because: string;
      proof: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
      second: {
        who?: ("me") | ({
          badge: string;
        }) | ({
          personId: string;
        });
        secret: string;
      };
    };
    answer: {
      as: "notFound" | "accountedFor";
    };
  };

  /** Figures of counts in theatre that did not come out, with what was done about each, the last opened first. */
  'GET /api/v1/theatre-questions': {
    query: { open?: "yes"; limit?: number; cursor?: string };
    answer: {
      items: (TheatreQuestion)[];
      next: (null) | (string);
    };
  };

  /** Revokes a token for good. */
  'POST /api/v1/tokens/{id}/revoke': {
    path: { id: string };
    answer: null;
  };

  /** One token: what it may do and when it was last used; never its secret. */
  'GET /api/v1/tokens/{id}': {
    path: { id: string };
    answer: {
      state: "open" | "expired" | "revoked" | "leftBehind";
      id: string;
      name: string;
      person: {
        id: string;
        name: string;
        role: "technician" | "decontaminationLead" | "surgeon" | "scrubPractitioner" | "stockKeeper" | "theatreManager" | "incidentLead" | "administrator";
        scope: ("readLedger" | "readHealth" | "readPeople" | "managePeople" | "manageTokens" | "enrolWorkstation" | "changeSettings" | "sendToTheatre" | "receiveSet" | "checkCount" | "settleAside" | "sendWithSubstitute" | "sendShortAsTheatreLead" | "sendShortAsSurgeon" | "acceptLoad" | "askForImplantsEarly" | "manageSterilisers" | "holdSet" | "liftHold" | "withdrawSet" | "moveSet" | "managePlaces" | "openRecall" | "tracePerson" | "closeRecall" | "correctRecord" | "bookCase" | "keepTheatreList" | "keepTheatreSessions" | "promiseSets" | "takeForEmergency" | "closeEmergencyQuestion" | "settleGoneAgainstRecord" | "pickKit" | "checkKit" | "issueKit" | "takeKit" | "returnKit" | "countInTheatre" | "countInTheatreWith" | "recordUse" | "correctUse" | "recordDelay" | "keepReasons" | "workOnQuestion" | "settleAsNotFound" | "askForLoan" | "keepLoans" | "keepLenders" | "countLoan" | "proposeRestock" | "approveRestock" | "keepSupplyTerms" | "stateStockOwner" | "makeUsageOrder" | "approveUsageOrder" | "reconcileConsignment" | "receiveOrder" | "writePlan" | "keepCards" | "retireCards" | "keepProcedures" | "confirmPlan" | "draftFitRule" | "approveFitRule" | "setRemarks" | "countSet" | "openSet" | "addSet" | "writeConfiguration" | "approveConfiguration" | "receiveStock" | "moveStock" | "adjustStock" | "holdStock" | "countStock" | "decideStockCount" | "takeOut" | "editCatalogue" | "readHospital" | "ownAccount" | "keepFeeds" | "recordScan" | "washSet" | "refillSet" | "packSet" | "printLabel" | "makeUpLoad" | "rejectLoad" | "acknowledgeRecall" | "judgeBarrier" | "declareLoan")[];
      };
      personLeft: boolean;
      issuedAt: string;
      expiresAt: string;
      lastUsedAt: (null) | (string);
      revokedAt: (null) | (string);
    };
  };

  /** Every token ever issued, the newest first, with what it may do and when it was last used. */
  'GET /api/v1/tokens': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: ({
        state: "open" | "expired" | "revoked" | "leftBehind";
        id: string;
        name: string;
        person: {
          id: string;
          name: string;
          role: "technician" | "decontaminationLead" | "surgeon" | "scrubPractitioner" | "stockKeeper" | "theatreManager" | "incidentLead" | "administrator";
          scope: ("readLedger" | "readHealth" | "readPeople" | "managePeople" | "manageTokens" | "enrolWorkstation" | "changeSettings" | "sendToTheatre" | "receiveSet" | "checkCount" | "settleAside" | "sendWithSubstitute" | "sendShortAsTheatreLead" | "sendShortAsSurgeon" | "acceptLoad" | "askForImplantsEarly" | "manageSterilisers" | "holdSet" | "liftHold" | "withdrawSet" | "moveSet" | "managePlaces" | "openRecall" | "tracePerson" | "closeRecall" | "correctRecord" | "bookCase" | "keepTheatreList" | "keepTheatreSessions" | "promiseSets" | "takeForEmergency" | "closeEmergencyQuestion" | "settleGoneAgainstRecord" | "pickKit" | "checkKit" | "issueKit" | "takeKit" | "returnKit" | "countInTheatre" | "countInTheatreWith" | "recordUse" | "correctUse" | "recordDelay" | "keepReasons" | "workOnQuestion" | "settleAsNotFound" | "askForLoan" | "keepLoans" | "keepLenders" | "countLoan" | "proposeRestock" | "approveRestock" | "keepSupplyTerms" | "stateStockOwner" | "makeUsageOrder" | "approveUsageOrder" | "reconcileConsignment" | "receiveOrder" | "writePlan" | "keepCards" | "retireCards" | "keepProcedures" | "confirmPlan" | "draftFitRule" | "approveFitRule" | "setRemarks" | "countSet" | "openSet" | "addSet" | "writeConfiguration" | "approveConfiguration" | "receiveStock" | "moveStock" | "adjustStock" | "holdStock" | "countStock" | "decideStockCount" | "takeOut" | "editCatalogue" | "readHospital" | "ownAccount" | "keepFeeds" | "recordScan" | "washSet" | "refillSet" | "packSet" | "printLabel" | "makeUpLoad" | "rejectLoad" | "acknowledgeRecall" | "judgeBarrier" | "declareLoan")[];
        };
        personLeft: boolean;
        issuedAt: string;
        expiresAt: string;
        lastUsedAt: (null) | (string);
        revokedAt: (null) | (string);
      })[];
      next: (null) | (string);
    };
  };

  /** Issues a token; the answer is the one time its secret is told. */
  'POST /api/v1/tokens': {
    body: {
      personId: string;
      name: string;
      scope: ("readHospital" | "readLedger" | "readHealth" | "readPeople" | "changeSettings" | "recordScan" | "sendToTheatre" | "receiveSet" | "washSet" | "refillSet" | "settleAside" | "packSet" | "printLabel" | "makeUpLoad" | "manageSterilisers" | "holdSet" | "withdrawSet" | "moveSet" | "managePlaces" | "openRecall" | "acknowledgeRecall" | "tracePerson" | "bookCase" | "keepTheatreList" | "keepTheatreSessions" | "promiseSets" | "takeForEmergency" | "pickKit" | "issueKit" | "takeKit" | "returnKit" | "recordUse" | "correctUse" | "recordDelay" | "keepReasons" | "workOnQuestion" | "askForLoan" | "keepLoans" | "keepLenders" | "countLoan" | "declareLoan" | "proposeRestock" | "keepSupplyTerms" | "stateStockOwner" | "makeUsageOrder" | "reconcileConsignment" | "receiveOrder" | "writePlan" | "keepCards" | "retireCards" | "keepProcedures" | "draftFitRule" | "setRemarks" | "countSet" | "openSet" | "addSet" | "writeConfiguration" | "receiveStock" | "moveStock" | "adjustStock" | "holdStock" | "countStock" | "takeOut" | "editCatalogue")[];
      days: number;
    };
    answer: {
      id: string;
      token: string;
      expiresAt: string;
    };
  };

  /** One page of the cases of a lot, an item, a set, a load or a recall, as its address asks for it; none where that never was here. */
  'GET /api/v1/trace/cases': {
    query: { item?: string; lot?: string; set?: string; load?: string; recall?: string; "cases-sort"?: string; "cases-page"?: string };
    answer: {
      rows: (ReachedCaseRow)[];
      found: number;
      total: number;
    };
  };

  /** A lot forward: from its receipt to shelves, slots and cases, with its balance. */
  'GET /api/v1/trace/lots': {
    query: { item: string; lot: string };
    answer: LotSeen;
  };

  /** What a person handled in a period, and the cases it went to. */
  'GET /api/v1/trace/people/{id}': {
    path: { id: string };
    query: { from: string; until: string };
    answer: PeriodTrace;
  };

  /** What an item, a set or a load may have reached. */
  'GET /api/v1/trace/reach': {
    query: { of: "item" | "set" | "load"; id: string };
    answer: Reached;
  };

  /** What a scanned or typed text names that can be traced. */
  'GET /api/v1/trace/search': {
    query: { q: string };
    answer: Search;
  };

  /** What a steriliser ran in a period, and the cases it went to. */
  'GET /api/v1/trace/sterilisers/{id}': {
    path: { id: string };
    query: { from: string; until: string };
    answer: PeriodTrace;
  };

  /** Cases with a record of what was used; what it says is told with the case. */
  'GET /api/v1/use-records': {
    query: { limit?: number; cursor?: string };
    answer: {
      items: (UseRecorded)[];
      next: (null) | (string);
    };
  };

  /** What is to be done in sterile services, the most urgent first. */
  'GET /api/v1/work': {
    answer: {
      leadMinutes: number;
      lines: (WorkLine)[];
    };
  };

  /** Sets that wait for somebody’s decision because they are short. */
  'GET /api/v1/work/short': {
    answer: {
      decisions: (OpenDecision)[];
    };
  };

}
