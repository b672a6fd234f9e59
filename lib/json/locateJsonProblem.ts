/** Where a text stops being JSON; line and column are counted from 1. */
export interface JsonProblem {
  line: number;
  column: number;
  reason: string;
}

/**
 * Where a text stops being JSON, or `null` when it is JSON. JSON.parse says it in some cases only, and differently in
 * each version.
 */
export function locateJsonProblem(text: string): JsonProblem | null {
  const scanner = new Scanner(text);
  const reason = scanner.document();
  if (reason === null) return null;
  const before = text.slice(0, scanner.at).split('\n');
  return { line: before.length, column: (before.at(-1) ?? '').length + 1, reason };
}

const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// a run of string characters that need no look of their own: no quote, backslash or control character
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids them, so they must be named here
const PLAIN = /[^"\\\u0000-\u001f]*/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[\da-fA-F]{4})/y;
const WORD = /true|false|null/y;
const DEEPEST = 500;

class Scanner {
  at = 0;

  constructor(private readonly text: string) {}

  /** What is wrong at `at`; `null` for nothing. */
  document(): string | null {
    const problem = this.value(0);
    if (problem) return problem;
    this.skip(SPACE);
    return this.at < this.text.length ? `${this.here()} after the end of the value` : null;
  }

  /** @param pattern sticky */
  private skip(pattern: RegExp): boolean {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0] ?? '';
    this.at += found.length;
    return found !== '';
  }

  private take(character: string): boolean {
    if (this.text[this.at] !== character) return false;
    this.at += 1;
    return true;
  }

  private here(): string {
    const character = this.text[this.at];
    return character === undefined ? 'the text ends' : `unexpected ${JSON.stringify(character)}`;
  }

  private value(depth: number): string | null {
    if (depth > DEEPEST) return `nested deeper than ${DEEPEST} levels`;
    this.skip(SPACE);
    const first = this.text[this.at];
    if (first === '{') return this.list('}', depth, true);
    if (first === '[') return this.list(']', depth, false);
    if (first === '"') return this.string();
    if (this.skip(WORD) || this.skip(NUMBER)) return null;
    return `${this.here()} where a value is needed`;
  }

  private list(end: string, depth: number, named: boolean): string | null {
    this.at += 1;
    this.skip(SPACE);
    if (this.take(end)) return null;
    for (;;) {
      const problem = (named ? this.name() : null) ?? this.value(depth + 1);
      if (problem) return problem;
      this.skip(SPACE);
      if (this.take(end)) return null;
      if (!this.take(',')) return `${this.here()} where "," or "${end}" is needed`;
    }
  }

  private name(): string | null {
    this.skip(SPACE);
    if (this.text[this.at] !== '"') return `${this.here()} where a name in double quotes is needed`;
    const problem = this.string();
    if (problem) return problem;
    this.skip(SPACE);
    return this.take(':') ? null : `${this.here()} where ":" is needed`;
  }

  private string(): string | null {
    this.at += 1;
    for (;;) {
      this.skip(PLAIN);
      if (this.take('"')) return null;
      if (!this.skip(ESCAPE)) return `${this.here()} inside a string`;
    }
  }
}
