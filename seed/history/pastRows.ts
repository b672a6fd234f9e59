/** A row of the journal of pieces, before it is put in order. */
export interface Row {
  at: number;
  act: string;
  itemId: string;
  quantity: number;
  lot?: string | null;
  useBy?: string | null;
  owner?: string;
  fromStock?: string;
  toStock?: string;
  fromSlot?: { setId: string; lineId: string };
  toSlot?: { setId: string; lineId: string };
  caseId?: string | null;
  pickId?: string | null;
  packId?: string | null;
  reason?: string | null;
  by: string | null;
}
