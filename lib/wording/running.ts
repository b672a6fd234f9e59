import type { LightState } from '../running/lights';
import type { StorageFault } from '../running/plainReason';
import type { RecordClash } from '../running/recordClash';
import { listWords } from './numbers';

const figure = (count: number) => count.toLocaleString('en-GB');
const size = (bytes: number) =>
  bytes >= 1e9
    ? `${(bytes / 1e9).toFixed(1)} GB`
    : `${figure(Math.max(bytes > 0 ? 1 : 0, Math.round(bytes / 1e6)))} MB`;
const moment = (at: string) => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;
const hours = (count: number) =>
  count < 48 ? (count === 1 ? '1 hour' : `${count} hours`) : `${Math.floor(count / 24)} days`;

/** How a running program stands, and what to do about it. */
export const runningWords = {
  state: {
    well: 'well',
    look: 'look at this',
    wrong: 'wrong',
    unknown: 'not known',
  } satisfies Record<LightState, string>,
  name: {
    node: 'Node.js',
    environment: 'Environment',
    folder: 'Folder',
    space: 'Space for the database',
    backupSpace: 'Space for backups',
    database: 'Database',
    schema: 'Schema',
    pages: 'Pages',
    references: 'References',
    ledger: 'Ledger',
    heads: 'Heads of the ledger',
    writeLog: 'Write log',
    writing: 'Writing',
    backup: 'Backup',
    clock: 'Clock',
    server: 'Server',
  } as Record<string, string>,
  demoNeedsNone: (madeAt: string | null) =>
    madeAt === null
      ? 'The demo can be put back at any time and needs no backup.'
      : `The newest proven backup was made ${moment(madeAt)}; the demo needs none.`,
  noBackup: 'There is no proven backup.',
  backupAge: (madeAt: string, old: number) =>
    `The newest proven backup was made ${moment(madeAt)}, ${hours(old)} ago.`,
  makeBackup: (isOn: boolean) =>
    isOn
      ? 'See why the nightly backup was not made, and make one now: npm run kitwright -- backup.'
      : 'The nightly backup is off (KITWRIGHT_BACKUP_AT=no): make one now, npm run kitwright -- backup, and see that another program makes them.',
  spaceUnknown: 'The system does not say how much space is free.',
  spaceFree: (bytes: number) => `${size(bytes)} are free.`,
  freeSpace: 'Free some space on that disk; reading goes on meanwhile, and writing resumes by itself.',
  logSize: (bytes: number) => `The write log is ${size(bytes)}.`,
  logLarge:
    'Restart the server: something keeps an old view of the database open, so that the log cannot be folded in.',
  clockNothingYet: 'Nothing was entered yet that the clock could be compared with.',
  clockRight: (now: string) => `It is ${moment(now)}, after everything that was entered.`,
  clockBehind: (entered: string, now: string) =>
    `The clock says ${moment(now)}, but something was entered at ${moment(entered)}: it went back, or was ahead then.`,
  setClock:
    'Set the machine’s clock, best by a time service; entries made meanwhile keep the times they have.',
  schemaRight: 'The database has the schema of this program.',
  schemaOlder: (count: number) =>
    `The database is ${count === 1 ? '1 step' : `${count} steps`} older than this program.`,
  schemaNewer: (names: readonly string[]) =>
    `The database was made by a newer Kitwright: it has ${listWords(names)}.`,
  schemaOther: (names: readonly string[]) =>
    `The database was made with another text of ${listWords(names)} than this folder has.`,
  startOnce: 'Start the server: a backup is made first, and then it is brought up to date.',
  updateProgram: 'Update this folder to the newer program; an older one would not know what it reads.',
  useOtherProgram: 'Use the program that made it.',
  putBackBackup:
    'Stop the server, keep a copy of the file, and put back the newest proven backup: npm run kitwright -- restore FILE.',
  environmentRight: 'Every variable can be used.',
  seeReadme: 'Correct it as the README’s table says, and restart.',
  writes: (ms: number) => `A small write reached the disk in ${ms < 1 ? 'less than 1' : Math.round(ms)} ms.`,
  doesNotWrite: (problem: string) => `Nothing can be written: ${problem}`,
  notSavedTitle: 'Nothing was saved',
  /** To whoever was saving something; what to do about it is on the health page. */
  notSaved: {
    full: 'The disk of the server is full, so nothing was saved. What is here can still be read; saving goes on when there is room again.',
    readOnly:
      'The disk of the server may only be read now, so nothing was saved. What is here can still be read; saving goes on when it can be written again.',
    notWritten:
      'The disk of the server takes no writes (it fails, or may only be read now), so nothing was saved. What is here can still be read; saving goes on when it can be written again.',
    held: 'Another program holds the database, so nothing was saved. Try again in a moment.',
    silent: 'The disk of the server does not answer as it should, so nothing was saved.',
    damaged: 'The database file is damaged, so nothing was saved. Tell whoever looks after Kitwright.',
  } satisfies Record<StorageFault, string>,
  /** To whoever named things by ids of their own making. */
  clash: {
    taken:
      'An id or a name that was sent belongs to something else here already, so nothing was done. Look again, or send a new id.',
    notThere: 'Something that was named is not here, so nothing was done. Look again.',
  } satisfies Record<RecordClash, string>,
  headsBeside:
    'The ledger’s heads are kept on the same disk as the database: who can change one can change the other.',
  headsApart: 'The ledger’s heads are kept on another disk.',
  headsElsewhere: 'Name a file on another disk or machine in KITWRIGHT_HEADS.',
  headsWritten:
    'The server writes the newest one as it starts. Where there were heads before, find out what became of them, and have the ledger audited: npm run kitwright -- verify.',
  headsRemedy: 'See that the file named by KITWRIGHT_HEADS can be written to.',
  nodeRight: (version: string) => `Node.js ${version} will do.`,
  installNode: 'Install a newer Node.js.',
  folderRight: 'Files can be written.',
  folderWrong: (folder: string) => `This user cannot write to ${folder}.`,
  giveWrite: 'Give the user that runs the server write permission there.',
  databaseThere: (path: string, bytes: number, holds: string) => `${path}: ${size(bytes)}, ${holds}.`,
  databaseNone: (path: string) => `There is no database at ${path} yet.`,
  databaseUnreadable: (path: string, said: string) => `${path} cannot be opened: ${said}.`,
  startMakesOne: 'npm start makes one.',
  holdsDemo: 'the demo hospital',
  holdsHospital: 'a hospital’s own data',
  pagesRight: 'The engine finds its pages as they should be.',
  dangling: (count: number) =>
    `${count === 1 ? '1 row points' : `${figure(count)} rows point`} at something that is not there.`,
  referencesRight: 'Everything that is pointed at is there.',
  ledgerRight: (count: number) =>
    count < 2
      ? 'Its newest entry is as it was written; “verify” reads all of them.'
      : `Its newest ${figure(count)} entries follow from one another; “verify” reads all of them.`,
  ledgerChecked: (seq: number) =>
    seq === 0
      ? 'The ledger is being verified.'
      : `Every entry up to ${figure(seq)} follows from the one before it.`,
  headsNotWritten: (said: string) => `The newest head could not be written there: ${said}.`,
  title: 'Health',
  lead: 'What the program rests on, looked at just now. What is not well says what to do.',
  allWell: 'All is well',
  toDo: 'What to do',
  sayMore: 'On the machine itself, “npm run kitwright -- doctor” looks at more.',
  ledgerWrong: 'The newest entries of the ledger are not as they were written.',
  headsMissing: (place: string) => `No head of this ledger was found at ${place} yet.`,
  serverUp: (address: string) => `It answers at ${address}.`,
  serverDown: (address: string) => `None answers at ${address}.`,
  serverUnwell: (address: string, said: string) => `It answers at ${address}, but says: ${said}`,
  startServer: 'npm start serves it; the rest was looked at without it.',
  seeLog: 'Look at what the server printed last.',
};
