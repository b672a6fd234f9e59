import type { Problem } from '../identity/result';

/** Codes of HL7's issue types that are said here (hl7.org/fhir/R5/valueset-issue-type.html). */
const ISSUE_CODES = [
  'invalid',
  'value',
  'not-supported',
  'not-found',
  'too-long',
  'login',
  'forbidden',
] as const;
type IssueCode = (typeof ISSUE_CODES)[number];

export interface OperationOutcome {
  resourceType: 'OperationOutcome';
  issue: { severity: 'error'; code: IssueCode; details: { text: string }; diagnostics?: string }[];
}

/** What the door says, in HL7's words. */
const OF_THE_DOOR: Readonly<Record<string, IssueCode>> = {
  'not-signed-in': 'login',
  'not-permitted': 'forbidden',
};

/** Problems as R5 tells them, every one with where it is. */
export const operationOutcome = (problems: readonly Problem[]): OperationOutcome => ({
  resourceType: 'OperationOutcome',
  issue: problems.map(({ code, path, message }) => ({
    severity: 'error',
    code: issueCode(code),
    details: { text: message },
    ...(path.length > 0 && { diagnostics: path.join('.') }),
  })),
});

function issueCode(code: string): IssueCode {
  return OF_THE_DOOR[code] ?? ISSUE_CODES.find((one) => one === code) ?? 'invalid';
}
