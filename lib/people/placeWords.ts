import { ROLE_WORDS } from './role';

/**
 * Words that whoever knows the hospital tries first, besides the names that are kept: the program, the trade, the house and
 * what people put beside them. `docs/running.md` tells them.
 */
export const TRADE_WORDS: readonly string[] =
  `kitwright sterile services service department decontamination sterilisation steriliser autoclave washer theatre theatres
  operating surgery surgical surgeon surgeons trauma orthopaedic orthopaedics instrument instruments implant implants
  tray trays kit kits set sets plate plates screw screws bench store stores stock ward unit room block main floor north
  south east west hospital hospitals infirmary clinic royal general university trust foundation health healthcare nhs ssd
  cssd hssu tssu staff nurse nurses team password login account system the of and for at in my our`.split(
    /\s+/,
  );

/** Every word by which the place is known, and each name written as one and by its first letters, in lower case. */
export function wordsOfPlace(names: readonly string[]): string[] {
  const named = names.flatMap((name) => {
    const words = name
      .normalize('NFC')
      .toLocaleLowerCase('en-GB')
      .split(/[^\p{L}]+/u)
      .filter((word) => word !== '');
    const initials = words.map((word) => word.slice(0, 1)).join('');
    return [...words, words.join(''), ...(initials.length > 2 ? [initials] : [])];
  });
  const roles = Object.values(ROLE_WORDS).flatMap((words) => words.toLowerCase().split(' '));
  return [...TRADE_WORDS, ...roles, ...named];
}
