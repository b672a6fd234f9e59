/** @typedef {{ id: string, level: number, asks: string, how: 'test' | 'proof' | 'notApplicable' | 'notMet', says: string, where: string[] }} Requirement */

const WORDS = { test: 'tested', proof: 'by design', notApplicable: 'not applicable', notMet: '**not met**' };

/**
 * docs/asvs.md, made of docs/asvs.json.
 * @param {{ standard: string, requirements: Requirement[] }} data
 */
export function asvsPage({ standard, requirements }) {
  const count = (/** @type {Requirement['how']} */ how) =>
    requirements.filter((one) => one.how === how).length;
  const cell = (/** @type {string} */ text) => text.replaceAll('|', '\\|');
  const rows = requirements.map(
    ({ id, level, asks, how, says, where }) =>
      `| ${id} | ${level} | ${cell(asks)} | ${WORDS[how]} | ${cell(says)} | ${where.map((one) => `\`${one.split(' | ')[0]}\``).join(', ')} |`,
  );
  return `# How Kitwright stands against a standard

Every requirement of level 1 and 2 of the ${standard}, in words of our own, with what answers it: a test that would fail, a place in the
program or its papers that shows it, why it does not apply, or that it is not met. Of ${requirements.length}: ${count('test')} tested,
${count('proof')} by design, ${count('notApplicable')} not applicable, ${count('notMet')} not met. It was judged by those who wrote the program; nobody else has
looked yet. A test checks that no requirement is missing and that each test and place named is there.

Made of \`docs/asvs.json\` by \`npm run asvs\`.

| id | level | asks | stands | because | where |
| --- | --- | --- | --- | --- | --- |
${rows.join('\n')}
`;
}
