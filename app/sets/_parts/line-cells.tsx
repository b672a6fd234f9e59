import Link from 'next/link';
import { ThumbDrawing } from '@/app/_ui/drawing/ThumbDrawing';
import type { Item } from '@/lib/catalogue/item';
import { condense } from '@/lib/documents/drawing/condense';
import { drawItem } from '@/lib/documents/drawing/item';
import styles from './parts.module.css';

/** The item of a line: its drawing from its dimensions, its name and code. */
export function ItemCell({ item, fallback }: { item: Item | undefined; fallback: string }) {
  if (!item) return <span>{fallback}</span>;
  return (
    <span className={styles.item}>
      <span className={styles.thumb}>
        <ThumbDrawing thumb={thumbOf(item)} />
      </span>
      <span>
        <Link href={`/catalogue/${item.id}`}>{item.name}</Link>
        <span className={styles.under}>
          {item.code}
          {item.status === 'current' ? '' : `, ${item.status}`}
        </span>
      </span>
    </span>
  );
}

/** A drawing small enough for a row; a screw keeps its ends where its middle is left out. */
export function thumbOf(item: Item) {
  return condense(item.kind === 'screw' ? drawItem(item) : drawItem(item, { dimensions: false }));
}
