export const THEATRES = [
  { id: 'theatre_1', name: 'Theatre 1' },
  { id: 'theatre_2', name: 'Theatre 2' },
  { id: 'theatre_3', name: 'Theatre 3, trauma' },
  { id: 'theatre_4', name: 'Theatre 4, day surgery' },
] as const;

/** Where things lie, with the walk from the pick bench in metres. */
export const PLACES = [
  { id: 'place_store-a', name: 'Sterile store, bay A', metres: 6 },
  { id: 'place_store-b', name: 'Sterile store, bay B', metres: 9 },
  { id: 'place_store-c', name: 'Sterile store, bay C', metres: 14 },
  { id: 'place_pouch-1', name: 'Pouch rack 1', metres: 4 },
  { id: 'place_pouch-2', name: 'Pouch rack 2', metres: 5 },
  { id: 'place_implant-cupboard', name: 'Implant cupboard', metres: 18 },
  { id: 'place_consignment', name: 'Consignment cabinet', metres: 22 },
  { id: 'place_theatre-store', name: 'Trauma theatre store', metres: 65 },
  { id: 'place_loan-bay', name: 'Loan bay', metres: 40 },
  { id: 'place_bench', name: 'Packing bench', metres: 30 },
  { id: 'place_dirty-side', name: 'Wash side', metres: 38 },
  { id: 'place_held-shelf', name: 'Held shelf', metres: 34 },
  { id: 'place_general-stores', name: 'General stores', metres: 120 },
] as const;

export type DemoPlace = (typeof PLACES)[number]['id'];
export type DemoTheatre = (typeof THEATRES)[number]['id'];
