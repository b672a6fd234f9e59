import ts from 'typescript';
import { type JsonSchema, schemasOfTypes } from './schema-of-type';

/** What the type of one handler says: its sentence, and what it answers when all is well, by status. */
export interface Described {
  says: string;
  answers: { status: number; schema: JsonSchema }[];
}

/** The handlers of routes by file and method, as their types describe them, with the named schemas they speak of. */
export interface RouteTypes {
  of(file: string, method: string): Described;
  named: Map<string, JsonSchema>;
  /** Where an answer's type does not say what it is. */
  unstated: Set<string>;
}

/** Reads the types of route files with the compiler: a few seconds. */
export function typesOfRoutes(root: string, files: readonly string[]): RouteTypes {
  const config = ts.getParsedCommandLineOfConfigFile(
    `${root}/tsconfig.json`,
    {},
    { ...ts.sys, onUnRecoverableConfigFileDiagnostic: fail },
  );
  if (!config) throw new Error('tsconfig.json can’t be read');
  const program = ts.createProgram([...files, `${root}/next-env.d.ts`], { ...config.options, noEmit: true });
  const checker = program.getTypeChecker();
  const schemas = schemasOfTypes(checker);

  function handler(file: string, method: string): ts.Symbol {
    const source = program.getSourceFile(file);
    const module = source && checker.getSymbolAtLocation(source);
    const symbol = module && checker.getExportsOfModule(module).find(({ name }) => name === method);
    if (!symbol) throw new Error(`${file} has no ${method}`);
    return symbol;
  }

  return {
    named: schemas.named,
    unstated: schemas.unstated,
    of(file, method) {
      const symbol = handler(file, method);
      const says = ts.displayPartsToString(symbol.getDocumentationComment(checker)).trim();
      const [call] = checker.getTypeOfSymbol(symbol).getCallSignatures();
      if (!call) throw new Error(`${file} ${method} is no handler`);
      const given = checker.getAwaitedType(call.getReturnType());
      if (!given) throw new Error(`${file} ${method} answers nothing`);
      const parts = given.isUnion() ? given.types : [given];
      const byStatus = new Map<number, JsonSchema[]>();
      for (const part of parts) {
        const carried = carriedBy(part);
        if (!carried)
          throw new Error(`${file} ${method}: ${checker.typeToString(part)} does not say what it carries`);
        if (carried.value.flags & ts.TypeFlags.Never) continue;
        const statuses = carried.status.isUnion() ? carried.status.types : [carried.status];
        for (const status of statuses) {
          if (!status.isNumberLiteral()) throw new Error(`${file} ${method}: its status is not stated`);
          byStatus.set(status.value, [...(byStatus.get(status.value) ?? []), schemas.of(carried.value)]);
        }
      }
      const answers = [...byStatus].map(([status, all]) => {
        const different = [...new Map(all.map((one) => [JSON.stringify(one), one])).values()];
        const [only] = different;
        return { status, schema: different.length === 1 && only ? only : { anyOf: different } };
      });
      return { says, answers };
    },
  };

  /** The member of `Answer` that names what it carries and under which status. */
  function carriedBy(type: ts.Type): { value: ts.Type; status: ts.Type } | null {
    const mark = checker.getPropertiesOfType(type).find(({ name }) => name.startsWith('__@carries'));
    if (!mark) return null;
    const its = checker.getTypeOfSymbol(mark);
    const member = (name: string) => {
      const property = checker.getPropertyOfType(its, name);
      if (!property) throw new Error(`an answer has no ${name}`);
      return checker.getTypeOfSymbol(property);
    };
    return { value: member('value'), status: member('status') };
  }
}

function fail(diagnostic: ts.Diagnostic): never {
  throw new Error(ts.flattenDiagnosticMessageText(diagnostic.messageText, '\n'));
}
