import { AsyncLocalStorage } from 'node:async_hooks';

/** What a request brings, and the cookies it is answered with, where the framework is not there to tell. */
export interface RequestAsked {
  headers: Headers;
  cookies: Map<string, string>;
  given: Map<string, string>;
}

/** Stands in for `next/headers` in tests: handlers run as within the framework while they are called inside of `run`. */
export const requestAsked = new AsyncLocalStorage<RequestAsked>();

function present(): RequestAsked {
  const asked = requestAsked.getStore();
  if (!asked) throw new Error('no request is being answered');
  return asked;
}

export async function headers(): Promise<Headers> {
  return present().headers;
}

export async function cookies() {
  const asked = present();
  return {
    get(name: string) {
      const value = asked.cookies.get(name);
      return value === undefined ? undefined : { name, value };
    },
    set(name: string, value: string) {
      asked.given.set(name, value);
    },
  };
}
