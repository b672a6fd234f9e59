import type { NextRequest } from 'next/server';
import { database } from '@/app/_server/database';
import { searchCatalogue } from '@/db/queries/catalogueSearch';
import { searchFrom } from '@/lib/catalogue/search';

/** The rows a search leaves, for the list as it is typed in. What makes no sense in the address is left out of it. */
export async function GET(request: NextRequest): Promise<Response> {
  const rows = await searchCatalogue(database(), searchFrom(request.nextUrl.searchParams));
  return Response.json({ rows }, { headers: { 'Cache-Control': 'no-store' } });
}
