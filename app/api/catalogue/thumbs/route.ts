import type { NextRequest } from 'next/server';
import { database } from '@/app/_server/database';
import { findItems } from '@/db/queries/catalogueItem';
import { condense, type Thumb } from '@/lib/documents/drawing/condense';
import { drawItem } from '@/lib/documents/drawing/item';

/** More than a page of the list never asks at once. */
const MOST = 120;

/** Small drawings of the items named in `ids`, by id; unknown ids are left out. */
export async function GET(request: NextRequest): Promise<Response> {
  const ids = (request.nextUrl.searchParams.get('ids') ?? '').split(',').filter(Boolean).slice(0, MOST);
  const items = await findItems(database(), ids);
  const thumbs: Record<string, Thumb> = {};
  for (const item of items) {
    thumbs[item.id] = condense(
      item.kind === 'screw' ? drawItem(item) : drawItem(item, { dimensions: false }),
    );
  }
  return Response.json({ thumbs }, { headers: { 'Cache-Control': 'no-store' } });
}
