import { z } from 'zod';

/** `pouch`: one item packed and sterile by itself here; `sterilePacked`: as the maker supplied it; `unsterile`: loose on the shelf. */
export const stockForm = z.enum(['pouch', 'sterilePacked', 'unsterile']);
export type StockForm = z.infer<typeof stockForm>;
export const stockOwner = z.enum(['ours', 'consignment']);
