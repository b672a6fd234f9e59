import { type NextRequest, NextResponse } from 'next/server';
import { PATH_HEADER } from '@/lib/people/path';

/** Tells each page its own address, which it cannot know otherwise. It decides nothing: `enter` does. */
export function proxy(request: NextRequest): NextResponse {
  const headers = new Headers(request.headers);
  headers.set(PATH_HEADER, request.nextUrl.pathname + request.nextUrl.search);
  return NextResponse.next({ request: { headers } });
}

export const config = { matcher: '/((?!_next/|api/|favicon.ico).*)' };
