import { parseArgs } from 'node:util';
import { databasePath, ROOT } from '../bootstrap/places.mjs';
import { asPlainProblem } from '../bootstrap/plain-problem.mjs';
import { CannotDo, type Command, type Given } from './command';
import { backup } from './commands/backup';
import { backups } from './commands/backups';
import { calculate } from './commands/calculate';
import { demo } from './commands/demo';
import { doctor } from './commands/doctor';
import { exportCommand } from './commands/export';
import { importCommand } from './commands/import';
import { key } from './commands/key';
import { restore } from './commands/restore';
import { token } from './commands/token';
import { user } from './commands/user';
import { verify } from './commands/verify';
import { fileProblem } from './file-problem';

const COMMANDS: Record<string, Command> = {
  doctor,
  backup,
  backups,
  restore,
  verify,
  key,
  user,
  token,
  demo,
  import: importCommand,
  export: exportCommand,
  calculate,
};

interface Out {
  say(line: string): void;
  refuse(line: string): void;
  secret(question: string): Promise<string>;
  now(): Date;
}

/** The command line; answers the exit code. */
export async function kitwright(words: string[], env: NodeJS.ProcessEnv, out: Out): Promise<number> {
  const [name, ...rest] = words;
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
    for (const line of help(rest[0])) out.say(line);
    return name === undefined ? 2 : 0;
  }
  const command = COMMANDS[name];
  const asJson = rest.includes('--json');
  let within = env;
  try {
    if (!command)
      throw new CannotDo(`There is no command “${name}”. Commands: ${Object.keys(COMMANDS).join(', ')}.`);
    if (rest.includes('--help')) {
      for (const line of help(name)) out.say(line);
      return 0;
    }
    const { values, positionals } = understood(name, command, rest);
    if (values.db !== undefined) within = { ...env, KITWRIGHT_DB: String(values.db) };
    const answer = await command.run({
      words: positionals,
      options: values as Given['options'],
      env: within,
      now: out.now,
      secret: out.secret,
    });
    if (asJson) out.say(JSON.stringify(answer.json, null, 2));
    else for (const line of answer.lines) out.say(line);
    return answer.exit;
  } catch (error) {
    const message = inWords(error, within);
    if (asJson) out.say(JSON.stringify({ problem: message }, null, 2));
    out.refuse(message);
    return 2;
  }
}

function understood(name: string, command: Command, rest: string[]) {
  const parsed = (() => {
    try {
      return parseArgs({
        args: rest,
        allowPositionals: true,
        options: { json: { type: 'boolean' }, db: { type: 'string' }, ...command.options },
      });
    } catch (error) {
      const said = error instanceof Error ? (error.message.split(/[.'] To /)[0] ?? '') : String(error);
      throw new CannotDo(`${said}. Usage: kitwright ${name} ${command.usage}`);
    }
  })();
  const [least, most] = command.words;
  if (parsed.positionals.length < least || parsed.positionals.length > most)
    throw new CannotDo(`Usage: kitwright ${name} ${command.usage}`);
  return parsed;
}

function inWords(error: unknown, env: NodeJS.ProcessEnv): string {
  // what we throw for people is in words already
  if (error instanceof Error && /^(CannotDo|NoBackup|CannotOpen|WrongKey)$/.test(error.constructor.name))
    return error.message;
  const ofFile = fileProblem(error);
  if (ofFile !== null) return ofFile;
  const problem = asPlainProblem(error, { folder: ROOT, database: databasePath(env), doing: 'database' });
  return problem.detail ? `${problem.detail}\n\n${problem.message}` : problem.message;
}

function help(name: string | undefined): string[] {
  const command = name === undefined ? undefined : COMMANDS[name];
  if (name !== undefined && command) return [`kitwright ${name} ${command.usage}`, '', command.does];
  const width = Math.max(...Object.keys(COMMANDS).map((one) => one.length));
  return [
    'npm run --silent kitwright -- COMMAND [--json] [--db FILE]',
    '',
    ...Object.entries(COMMANDS).map(([one, { does }]) => `  ${one.padEnd(width)}  ${does}`),
    '',
    '“help COMMAND” says more. Exit code 0: done, or nothing is wrong; 1: something is wrong; 2: it could not be done.',
  ];
}
