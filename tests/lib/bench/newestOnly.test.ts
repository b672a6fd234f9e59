import { expect, test } from 'vitest';
import { NewestOnly } from '@/lib/bench/newestOnly';

/** A service that answers when it is told to. */
function slowService() {
  const asked: number[] = [];
  let settle: ((fails: boolean) => void) | null = null;
  const put = (question: number) =>
    new Promise<void>((done, fail) => {
      asked.push(question);
      settle = (fails) => (fails ? fail(new Error('no answer')) : done());
    });
  const answer = async (fails = false) => {
    settle?.(fails);
    await new Promise((done) => setTimeout(done, 0));
  };
  return { asked, put, answer };
}

test('one question is on its way at a time, and of those that came meanwhile the newest is asked', async () => {
  const { asked, put, answer } = slowService();
  const questions = new NewestOnly(put);
  for (const question of [1, 2, 3, 4]) questions.ask(question);
  expect(asked).toEqual([1]);
  await answer();
  expect(asked).toEqual([1, 4]);
  await answer();
  expect(asked).toEqual([1, 4]);
  questions.ask(5);
  expect(asked).toEqual([1, 4, 5]);
});

test('a question that gets no answer keeps none after it from being asked', async () => {
  const { asked, put, answer } = slowService();
  const questions = new NewestOnly(put);
  questions.ask(1);
  questions.ask(2);
  await answer(true);
  expect(asked).toEqual([1, 2]);
  await answer(true);
  questions.ask(3);
  expect(asked).toEqual([1, 2, 3]);
});

test('once stopped, nothing that waited is asked', async () => {
  const { asked, put, answer } = slowService();
  const questions = new NewestOnly(put);
  questions.ask(1);
  questions.ask(2);
  questions.stop();
  await answer();
  expect(asked).toEqual([1]);
});
