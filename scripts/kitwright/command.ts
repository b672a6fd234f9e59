import type { ParseArgsConfig } from 'node:util';

/** What a command is given. */
export interface Given {
  /** Words after the command that are no options. */
  words: string[];
  options: Record<string, string | boolean | string[] | undefined>;
  env: NodeJS.ProcessEnv;
  now(): Date;
  /** What a person must know to be who they say; asked for where nobody sees it. */
  secret(question: string): Promise<string>;
}

/** What a command found or did. */
export interface Answer {
  /** 0: done, or nothing is wrong; 1: something is wrong. */
  exit: 0 | 1;
  /** For a person. */
  lines: string[];
  /** The same for a program. */
  json: unknown;
}

/** One thing the command line can do. */
export interface Command {
  /** As typed after the command's name. */
  usage: string;
  /** One line of the list of commands. */
  does: string;
  options?: NonNullable<ParseArgsConfig['options']>;
  /** How many words it takes, from and to. */
  words: readonly [number, number];
  run(given: Given): Promise<Answer>;
}

/** Why a command could not be done, in words for people: exit code 2. */
export class CannotDo extends Error {}
