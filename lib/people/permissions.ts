import { type Role, role } from './role';

const EVERYBODY = role.options;
const BENCH = ['technician', 'decontaminationLead'] as const;

/** Who may do what. Asked in every operation and every query, never only on a screen. One act a line; extend it here. */
export const PERMITTED = {
  /** Sets, cases, plans, kits, stock, the catalogue, rules, configurations, loads: what the whole service works with. */
  readHospital: EVERYBODY,
  readLedger: ['decontaminationLead', 'incidentLead', 'theatreManager', 'administrator'],
  /** How the running program stands: disk, backups, clock. */
  readHealth: ['theatreManager', 'incidentLead', 'administrator'],
  readPeople: ['administrator'],
  /** One's own password, PIN and sessions. */
  ownAccount: EVERYBODY,
  /** Addresses of calendars of one's own; an administrator revokes anybody's. */
  keepFeeds: EVERYBODY,
  managePeople: ['administrator'],
  /** Issues the tokens by which other systems use the API, and revokes them. */
  manageTokens: ['administrator'],
  enrolWorkstation: ['administrator'],
  changeSettings: ['decontaminationLead', 'theatreManager', 'administrator'],
  recordScan: EVERYBODY,

  // the turn
  sendToTheatre: [...BENCH, 'scrubPractitioner'],
  receiveSet: [...BENCH, 'scrubPractitioner'],
  washSet: BENCH,
  checkCount: [...BENCH, 'scrubPractitioner'],
  refillSet: BENCH,
  settleAside: [...BENCH, 'stockKeeper'],
  packSet: BENCH,
  printLabel: BENCH,
  /** Class 2: the named substitute travels with the set. */
  sendWithSubstitute: ['decontaminationLead'],
  /** Class 1: for one named case, both of them together. */
  sendShortAsTheatreLead: ['theatreManager'],
  sendShortAsSurgeon: ['surgeon'],
  makeUpLoad: BENCH,
  acceptLoad: ['decontaminationLead'],
  rejectLoad: BENCH,
  /** Implants before the biological result: the decontamination lead accepts, and the operating surgeon stands for it too. */
  askForImplantsEarly: ['surgeon'],
  manageSterilisers: ['decontaminationLead', 'administrator'],
  holdSet: [...BENCH, 'scrubPractitioner', 'stockKeeper', 'theatreManager', 'incidentLead'],
  liftHold: ['decontaminationLead', 'incidentLead'],
  withdrawSet: ['decontaminationLead', 'theatreManager', 'administrator'],
  moveSet: [...BENCH, 'scrubPractitioner', 'stockKeeper'],
  managePlaces: ['decontaminationLead', 'stockKeeper', 'theatreManager', 'administrator'],
  /** Calls something back: holds it at once, or rehearses that. */
  openRecall: ['decontaminationLead', 'stockKeeper', 'theatreManager', 'incidentLead'],
  acknowledgeRecall: EVERYBODY,
  /** What one person handled in a period: for an incident, not for judging anybody. */
  tracePerson: ['decontaminationLead', 'theatreManager', 'incidentLead'],
  /** Two of them together. */
  closeRecall: ['decontaminationLead', 'theatreManager', 'incidentLead'],
  correctRecord: ['decontaminationLead', 'incidentLead', 'administrator'],

  bookCase: ['surgeon', 'scrubPractitioner', 'theatreManager', 'administrator'],
  /** Moves, cancels and puts back cases, and changes the order of a day. */
  keepTheatreList: ['surgeon', 'scrubPractitioner', 'theatreManager', 'administrator'],
  /** When theatres work, and how long before a case its sets must stand there. */
  keepTheatreSessions: ['theatreManager', 'administrator'],
  /** Which set is for which case. */
  promiseSets: ['decontaminationLead', 'scrubPractitioner', 'theatreManager', 'administrator'],
  /** Takes sets for an emergency at once, from whoever they are promised to, and says what has gone already. */
  takeForEmergency: [...BENCH, 'scrubPractitioner', 'surgeon', 'theatreManager'],
  closeEmergencyQuestion: [...BENCH, 'scrubPractitioner', 'surgeon', 'theatreManager'],
  /** How a set stands that went to theatre although its record was against it. */
  settleGoneAgainstRecord: ['decontaminationLead'],
  /** Fetches the kit of a case from the store, and puts back what is not needed. */
  pickKit: [...BENCH, 'scrubPractitioner', 'stockKeeper'],
  /** By another person than any who picked. */
  checkKit: [...BENCH, 'scrubPractitioner', 'stockKeeper'],
  /** The kit leaves the store. */
  issueKit: [...BENCH, 'scrubPractitioner'],
  takeKit: ['scrubPractitioner', ...BENCH],
  /** What of it came back, and as what. */
  returnKit: [...BENCH, 'scrubPractitioner'],
  /** Judges the barrier of what came back unopened: it goes into the sterile store again. */
  judgeBarrier: BENCH,
  countInTheatre: ['scrubPractitioner'],
  /** The other person of a count in theatre. */
  countInTheatreWith: ['scrubPractitioner', 'surgeon', 'theatreManager', ...BENCH],
  /** What was used, piece by piece, and the closing of that record. */
  recordUse: ['scrubPractitioner'],
  /** Says after its closing what is right. */
  correctUse: ['scrubPractitioner', 'theatreManager', 'incidentLead'],
  /** That a case was delayed, and by what. */
  recordDelay: ['scrubPractitioner', 'theatreManager'],
  /** The hospital's own reasons for delay and for waste. */
  keepReasons: ['theatreManager', 'administrator'],
  /** What is done about a question left open by a count in theatre, and, with a second person, its end. */
  workOnQuestion: [...BENCH, 'scrubPractitioner', 'surgeon', 'theatreManager', 'incidentLead'],
  /** Ends a question although not all is accounted for. */
  settleAsNotFound: ['incidentLead', 'theatreManager'],
  /** Asks a lender; what comes of it is the loan keeper's. */
  askForLoan: ['stockKeeper', 'surgeon', 'scrubPractitioner', 'theatreManager', 'decontaminationLead'],
  keepLoans: ['stockKeeper', 'decontaminationLead'],
  keepLenders: ['stockKeeper', 'theatreManager', 'administrator'],
  /** Weighs and counts loans as they come and go, and enters what was used of them. */
  countLoan: [...BENCH, 'stockKeeper', 'scrubPractitioner'],
  /** That a loan goes back decontaminated. */
  declareLoan: BENCH,
  /** Has what to order worked out; approving it is another act. */
  proposeRestock: ['stockKeeper', 'theatreManager'],
  /** Makes orders of a proposal, or turns it down. */
  approveRestock: ['theatreManager'],
  /** How long makers take, how often is ordered, and other terms of supply. */
  keepSupplyTerms: ['stockKeeper', 'theatreManager', 'administrator'],
  /** Whose the stock on consignment is. */
  stateStockOwner: ['stockKeeper', 'theatreManager'],
  /** Makes usage orders for the owners of consigned stock, and marks them as sent. */
  makeUsageOrder: ['stockKeeper', 'theatreManager'],
  approveUsageOrder: ['theatreManager'],
  /** Sets an owner’s list beside our record; where a difference stays unexplained, two of them together. */
  reconcileConsignment: ['stockKeeper', 'theatreManager'],
  /** Puts what came of an order on the shelf, and closes the order. */
  receiveOrder: ['stockKeeper', 'theatreManager'],
  writePlan: ['surgeon', 'scrubPractitioner', 'theatreManager', 'administrator'],
  /** One's own preference cards. Anybody reads them; a card is its surgeon's. */
  keepCards: ['surgeon'],
  /** Takes anybody's card or saved start out of use, and puts it back; its owner does so with their own. */
  retireCards: ['theatreManager'],
  /** What the hospital calls its operations. */
  keepProcedures: ['theatreManager', 'administrator'],
  /** The operating surgeon decides: nobody else confirms a plan. */
  confirmPlan: ['surgeon'],
  /** Rules and exceptions of fit: a second person with the same permission approves. */
  draftFitRule: ['theatreManager', 'administrator', 'decontaminationLead'],
  approveFitRule: ['theatreManager', 'administrator', 'decontaminationLead'],
  setRemarks: ['theatreManager', 'administrator'],
  countSet: ['technician', 'decontaminationLead', 'scrubPractitioner', 'administrator'],
  openSet: ['technician', 'decontaminationLead', 'administrator'],
  /** Enters a physical set that was not here before. */
  addSet: ['decontaminationLead', 'theatreManager', 'administrator'],
  writeConfiguration: ['decontaminationLead', 'theatreManager', 'administrator'],
  /** By another person than the one who drafted it. */
  approveConfiguration: ['decontaminationLead', 'theatreManager', 'administrator'],
  /** Takes deliveries in. */
  receiveStock: ['stockKeeper', ...BENCH],
  moveStock: [...BENCH, 'scrubPractitioner', 'stockKeeper'],
  /** Says that the record of a heap is wrong, or that pieces of it are damaged or past use-by and go into the bin. */
  adjustStock: ['stockKeeper', 'decontaminationLead', 'theatreManager'],
  holdStock: [...BENCH, 'scrubPractitioner', 'stockKeeper', 'theatreManager', 'incidentLead'],
  countStock: [...BENCH, 'scrubPractitioner', 'stockKeeper'],
  /** What becomes of a difference that a count found: by another person than those who counted. */
  decideStockCount: ['stockKeeper', 'decontaminationLead', 'theatreManager'],
  /** Everything in one file. */
  takeOut: ['theatreManager', 'administrator'],
  editCatalogue: ['theatreManager', 'stockKeeper', 'administrator'],
} as const satisfies Record<string, readonly Role[]>;

export type Act = keyof typeof PERMITTED;

/** Who acts: somebody in a role, and where a token acts for them, what it lets them do of that. */
export interface Actor {
  role: Role;
  /** No more than this, when stated. It adds nothing to the role. */
  scope?: readonly Act[];
}

export function may({ role, scope }: Actor, act: Act): boolean {
  return (PERMITTED[act] as readonly Role[]).includes(role) && (scope === undefined || scope.includes(act));
}
