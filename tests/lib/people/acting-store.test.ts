import { afterEach, expect, test } from 'vitest';
import { type Acting, actingNow, endActing, setActing } from '@/app/_ui/acting-store';

const session = (sessionId: string): Acting => ({
  person: { id: 'person_wren-adeyemi', name: 'Wren Adeyemi', role: 'technician' },
  sessionId,
  ticket: `ticket of ${sessionId}`,
});

afterEach(() => setActing(null));

test('a page that was drawn before its session ended, and comes in only then, brings the session not back', () => {
  setActing(session('first'));
  endActing(session('first'));
  expect(actingNow()).toBeNull();
  setActing(session('first'));
  expect(actingNow()).toBeNull();
  setActing(session('second'));
  expect(actingNow()?.sessionId).toBe('second');
});

test('the end of an earlier session is not the end of the present one', () => {
  setActing(session('third'));
  setActing(session('fourth'));
  endActing(session('third'));
  expect(actingNow()?.sessionId).toBe('fourth');
});

test('a page locked while the server could not be asked is opened again by the same session', () => {
  setActing(session('fifth'));
  setActing(null);
  setActing(session('fifth'));
  expect(actingNow()?.sessionId).toBe('fifth');
});
