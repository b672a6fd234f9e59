import { LEFT_OPEN } from '../kits/chosen';
import type { Short } from '../kits/kit';
import type { LinkVerdict } from '../kits/need';
import { readyWords, stepsWords } from '../wording/kit-parts';
import { faultSentence, isMustHave, shortName, shortSentence, unavailableWords } from '../wording/kit-shorts';
import { listWords } from '../wording/numbers';
import { kitSheetWords as words } from '../wording/paper';
import { type KitSheetNames, type KitSheetOf, kitSheetNames } from './kitSheet';
import type { Notice } from './sheet';

/** Places named for a piece that can't be had; the screen has them all. */
const MOST_ELSEWHERE = 3;

/** What must be known before anything is fetched, what stops first: at the top of every sheet of a case. */
export function kitNotices(given: KitSheetOf): Notice[] {
  const { kit, plan, newerDraft } = given;
  const names = kitSheetNames(given);
  const faults = kit.faults.filter(
    (fault) =>
      fault.kind !== 'noChainInCatalogue' || !kit.shorts.some((short) => short.needId === fault.chainId),
  );
  // where the plan itself asks in vain, that sentence says it all
  const said = new Set(faults.flatMap((fault) => ('step' in fault ? [fault.step] : [])));
  const shorts = kit.shorts.filter(
    (short) => !(short.kind === 'piece' && short.accepts.length === 0 && said.has(short.steps[0] ?? '')),
  );
  const open = (kind: string) => LEFT_OPEN.has(kind);
  const sentence = (fault: (typeof faults)[number]) => faultSentence(fault, kit.needs, names.name);
  return [
    notice(words.planWord, 'stop', faults.filter(({ kind }) => !open(kind)).map(sentence)),
    notice(
      words.shortWord,
      'stop',
      shorts.filter(isMustHave).map((short) => shortLine(short, given, names)),
    ),
    notice(words.waitWord, isLate(given) ? 'stop' : 'note', waitLines(given)),
    notice(words.unknownWord, 'unknown', [
      ...faults.filter(({ kind }) => open(kind)).map(sentence),
      ...kit.notEstablished
        .filter(({ lengthNotStated }) => !lengthNotStated)
        .map(({ steps, answers }) =>
          words.mightServe(stepsWords(steps, kit.needs), sentencesOf(answers, 'missing')),
        ),
    ]),
    notice(words.draftWord, 'note', plan.status === 'draft' ? [words.draft] : []),
    notice(words.draftWord, 'note', newerDraft === null ? [] : [words.newerDraft(newerDraft)]),
    notice(
      words.cautionWord,
      'note',
      kit.withCaution.map(({ steps, answers }) =>
        words.carriesCaution(stepsWords(steps, kit.needs), sentencesOf(answers, 'notMet')),
      ),
    ),
    notice(
      words.backUpWord,
      'note',
      shorts
        .filter((short) => !isMustHave(short))
        .map((short) => shortSentence(short, kit.needs, names.name)),
    ),
  ].filter(({ lines }) => lines.length > 0);
}

const notice = (word: string, shape: Notice['shape'], lines: string[]): Notice => ({
  kind: 'notice',
  word,
  shape,
  lines: [...new Set(lines)],
});

function shortLine(short: Short, { kit }: KitSheetOf, names: KitSheetNames): string {
  const name = shortName(short, kit.needs, names.name);
  const line = words.short(capital(name), shortSentence(short, kit.needs, names.name));
  if (short.elsewhere.length === 0) return line;
  const places = short.elsewhere
    .slice(0, MOST_ELSEWHERE)
    .map(
      (one) =>
        `${names.code(one.itemId)} ${one.in.kind === 'set' ? `in ${one.in.code}` : 'as a pack'}, ${unavailableWords(one.because)}`,
    );
  return `${line} ${words.elsewhere(places.join('; '))}`;
}

/** Sets of the kit that are not in the store yet, and what is short until then. */
function waitLines({ kit }: Pick<KitSheetOf, 'kit'>): string[] {
  return kit.sets.flatMap(({ code, readyAt, configurationName }) =>
    readyAt === null
      ? []
      : [
          `${code} (${configurationName}) is in the sterile store at ${readyWords(readyAt)}${
            isLate({ kit }) ? ', later than the case begins' : ''
          }.`,
        ],
  );
}

const isLate = ({ kit }: Pick<KitSheetOf, 'kit'>): boolean =>
  kit.verdict.kind === 'readyAt' && kit.verdict.late;

/** What the rules said, each sentence once. */
function sentencesOf(answers: readonly LinkVerdict[], answer: 'missing' | 'notMet'): string {
  const found = answers.flatMap(({ verdict }) =>
    verdict.findings
      .filter((finding) => finding.answer === answer && !finding.outranked)
      .map((one) => one.sentence),
  );
  return listWords([...new Set(found)].map((sentence) => sentence.replace(/\.$/, ''))).concat(
    found.length > 0 ? '.' : '',
  );
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
