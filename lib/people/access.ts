import type { Act } from './permissions';

/** What it takes to reach an address: an act of `permissions.ts`, or nothing at all. */
export type Reach = Act | 'anybody';

/**
 * Every screen of the program and the act it takes to see it. A test compares this with the build's own list: a screen
 * that is not declared here fails it, and so does a declaration without a screen.
 */
export const SCREENS = {
  '/': 'readHospital',
  '/calculations': 'readHospital',
  '/calculations/[name]': 'readHospital',
  '/cases': 'readHospital',
  '/cases/[id]': 'readHospital',
  '/cases/[id]/kit': 'readHospital',
  '/cases/[id]/plan': 'readHospital',
  '/cases/new': 'readHospital',
  '/catalogue': 'readHospital',
  '/catalogue/[id]': 'readHospital',
  '/catalogue/[id]/edit': 'readHospital',
  '/catalogue/new': 'readHospital',
  '/configurations': 'readHospital',
  '/configurations/[id]': 'readHospital',
  '/configurations/[id]/compare': 'readHospital',
  '/configurations/[id]/edit': 'readHospital',
  '/configurations/new': 'readHospital',
  '/fit': 'readHospital',
  '/fit/check': 'readHospital',
  '/fit/exceptions/[id]': 'readHospital',
  '/fit/exceptions/new': 'readHospital',
  '/fit/pair': 'readHospital',
  '/fit/rules/[code]': 'readHospital',
  '/fit/rules/new': 'readHospital',
  '/fit/table': 'readHospital',
  '/plans': 'readHospital',
  '/sets': 'readHospital',
  '/sets/[id]': 'readHospital',
  '/sets/[id]/count': 'readHospital',
  '/stock': 'readHospital',
} as const satisfies Record<string, Reach>;
export type Screen = keyof typeof SCREENS;

/** Every other address, by method. What it writes is asked for again in the operation. */
export const ENDPOINTS = {
  'POST /api/sets/[id]/open': 'openSet',
} as const satisfies Record<string, Reach>;
export type Endpoint = keyof typeof ENDPOINTS;
