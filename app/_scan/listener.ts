import { flushSync } from 'react-dom';
import { looksLikeBadge } from '@/lib/people/badge';
import type { Keystroke } from '@/lib/scanning/decodeKey';
import {
  type Doing,
  hear,
  interrupted,
  type Listening,
  SILENT,
  silence,
  silenceAfterMs,
} from '@/lib/scanning/keystrokes';
import { scannerHere } from './scanner-setting';
import { isSecret, isTextField, setValue, takesKeysItself, typeInto } from './text-field';

interface Listens {
  /** A scan, and when its last key went down (`performance.now()`). */
  scan: (text: string, at: number) => void;
  /** A piece of a scan: nothing was made of it. */
  cut: () => void;
  /** Every key, for the page that tries a scanner out. */
  key: (key: Keystroke) => void;
}

interface HeldKey {
  target: EventTarget;
  key: Keystroke;
}

/**
 * Listens to the keyboard before anything else on the page does. The first keys of what may be a scan are held for some
 * hundredths of a second: those of a scan then go nowhere, those of a person go where they were meant for. A key that
 * cannot be held (it writes an accent, it is the field’s own) or that a person waits for (in a field of text) goes
 * through, and what it left is taken out again should it have been a scan.
 *
 * Answers how to stop.
 */
export function listenToKeys(listens: Listens): () => void {
  let listening: Listening = SILENT;
  let held: HeldKey[] = [];
  let left: { field: HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement; value: string } | null =
    null;
  let throughKey: string | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let askedAgain = false;
  /** When the last key was told: on a busy computer that is later than when it went down. */
  let toldAt = 0;

  function onKeyDown(event: KeyboardEvent): void {
    if (!event.isTrusted) return;
    const key = keystrokeOf(event);
    toldAt = performance.now();
    listens.key(key);
    const focused = document.activeElement;
    const heard = hear(listening, key, isTextField(focused), scannerHere());
    listening = heard.listening;
    const begins = heard.doings.at(-1)?.kind === 'hold' && listening.burst?.written.length === 1;
    if (begins) {
      left = null;
      throughKey = null;
      if (isTextField(focused) || focused instanceof HTMLSelectElement)
        left = { field: focused, value: focused.value };
    }
    for (const doing of heard.doings) act(doing, event, key);
    wait();
  }

  function act(doing: Doing, event?: KeyboardEvent, key?: Keystroke): void {
    switch (doing.kind) {
      case 'giveBack':
        giveBack();
        break;
      case 'scan':
        if (isSecret(left?.field) && !looksLikeBadge(doing.text)) {
          typedSecret();
          break;
        }
        held = [];
        if (left) setValue(left.field, left.value);
        left = null;
        listens.scan(doing.text, key?.at ?? performance.now());
        break;
      case 'cut':
        if (isSecret(left?.field)) {
          giveBack();
          break;
        }
        held = [];
        listens.cut();
        break;
      case 'hold':
        if (event && key) holdOrLet(event, key);
        break;
      case 'swallow':
        event?.preventDefault();
        event?.stopImmediatePropagation();
        break;
      case 'pass':
        break;
    }
  }

  /** A password given by a key that types, or in a hurry: it is no scan, goes where it was meant for, and is kept nowhere. */
  function typedSecret(): void {
    const field = left?.field;
    left = null;
    giveBack();
    field?.form?.requestSubmit();
  }

  function holdOrLet(event: KeyboardEvent, key: Keystroke): void {
    // an accent waits for its letter in the computer itself: both must reach the field as they are
    const composes = event.key === 'Dead' || event.isComposing || event.key === 'Process';
    const afterAccent = throughKey === 'Dead' && held.length === 0;
    // in a field of text a person sees each letter at once; what a scan wrote there is taken out again at its end
    const isText = isTextField(event.target) && !isSecret(event.target);
    if (composes || afterAccent || isText || takesKeysItself(event.target)) {
      throughKey = event.key;
      return;
    }
    event.preventDefault();
    event.stopImmediatePropagation();
    held.push({ target: event.target ?? document.body, key });
  }

  function giveBack(): void {
    const keys = held;
    held = [];
    for (const { target, key } of keys) {
      const place = target instanceof Node && target.isConnected ? target : document.body;
      const event = new KeyboardEvent('keydown', {
        ...initOf(key),
        bubbles: true,
        cancelable: true,
        composed: true,
      });
      // each key finds the page as the one before it left it, as it does when the browser sends them
      const wanted = flushSync(() => place.dispatchEvent(event));
      const writes = [...key.key].length === 1 && (!key.ctrl || key.alt || key.altGraph);
      const field = isTextField(place) ? place : null;
      if (wanted && writes && field) typeInto(field, key.key);
    }
  }

  /** Looks again once the silence is long enough, but never before keys that went down in time were told. */
  function wait(): void {
    clearTimeout(timer);
    askedAgain = false;
    const due = dueAt();
    if (due !== null) timer = setTimeout(rest, Math.max(0, due + 1 - performance.now()));
  }

  function dueAt(): number | null {
    const after = silenceAfterMs(listening, scannerHere());
    return after === null ? null : Math.max(listening.burst?.lastAt ?? 0, toldAt) + after;
  }

  function rest(): void {
    const due = dueAt();
    if (due === null) return;
    const late = performance.now() - due;
    const pending = (navigator as { scheduling?: { isInputPending?: () => boolean } }).scheduling;
    if (pending?.isInputPending?.() || (late > 25 && !askedAgain)) {
      askedAgain = true;
      timer = setTimeout(rest, 0);
      return;
    }
    askedAgain = false;
    const heard = silence(listening, performance.now(), scannerHere());
    if (heard === null) {
      wait();
      return;
    }
    listening = heard.listening;
    for (const doing of heard.doings) act(doing);
  }

  function onLeave(): void {
    clearTimeout(timer);
    const heard = interrupted(listening);
    listening = heard.listening;
    for (const doing of heard.doings) act(doing);
  }

  window.addEventListener('keydown', onKeyDown, { capture: true });
  window.addEventListener('blur', onLeave);
  return () => {
    clearTimeout(timer);
    giveBack();
    window.removeEventListener('keydown', onKeyDown, { capture: true });
    window.removeEventListener('blur', onLeave);
  };
}

const keystrokeOf = (event: KeyboardEvent): Keystroke => ({
  code: event.code,
  key: event.key,
  shift: event.shiftKey,
  ctrl: event.ctrlKey,
  alt: event.altKey,
  altGraph: event.getModifierState('AltGraph'),
  meta: event.metaKey,
  capsLock: event.getModifierState('CapsLock'),
  repeat: event.repeat,
  at: event.timeStamp,
});

const initOf = ({ code, key, shift, ctrl, alt, altGraph }: Keystroke): KeyboardEventInit => ({
  code,
  key,
  shiftKey: shift,
  ctrlKey: ctrl,
  altKey: alt,
  modifierAltGraph: altGraph,
});
