let listed: Promise<ReadonlySet<string>> | null = null;

/** Passwords that many people take, by the list of the package; read as the first of a process is chosen. */
export function commonPasswords(): Promise<ReadonlySet<string>> {
  listed ??= import('@zxcvbn-ts/language-common').then(
    ({ dictionary }) => new Set(dictionary['passwords-common'].map((password) => String(password))),
  );
  return listed;
}
