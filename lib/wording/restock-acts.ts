import { dateWords } from '../documents/edition';

/** What acts on proposals, orders and terms say when they are refused. */
export const restockActWords = {
  mayNotPropose: (name: string) =>
    `${name} can’t have a restock worked out: the stock keeper or the theatre manager does.`,
  mayNotApprove: (name: string) => `${name} can’t approve a restock: the theatre manager does.`,
  mayNotReceive: (name: string) =>
    `${name} can’t receive orders: the stock keeper or the theatre manager does.`,
  mayNotKeepTerms: (name: string) =>
    `${name} can’t state terms of supply: the stock keeper, the theatre manager or an administrator does.`,
  noSuchProposal: 'There is no such proposal.',
  noSuchOrder: 'There is no such order.',
  noSuchLine: 'There is no such line here.',
  noSuchPlace: 'Choose a place that is in use.',
  noSuchMaker: 'There is no such maker.',
  noSuchItem: 'There is no such item.',
  decided: (number: string) => `${number} was decided on already.`,
  closed: (number: string) => `${number} is closed: nothing more comes of it.`,
  changed: (what: string) => `${what} was changed meanwhile: look at it as it is now.`,
  nothingToOrder: 'Nothing is left to order: turn the proposal down instead, and say why.',
  wholePacks: (packOf: number) => `It comes in packs of ${packOf}: state whole packs.`,
  notCurrent: (name: string, status: string) => `${name} is ${status} since: take it out of the order.`,
  pastUseBy: (name: string, useBy: string) =>
    `${name}: past its use-by (${dateWords(useBy)}). It does not go on the shelf; send it back.`,
  recalled: (name: string) => `${name} is recalled: it does not go on the shelf.`,
  otherForm: (name: string, sterile: boolean) =>
    sterile
      ? `${name} is supplied sterile: what comes unsterile is not what was ordered.`
      : `${name} is supplied unsterile: what comes sterile is not what was ordered.`,
  moreThanOrdered: (name: string, toCome: number, came: number) =>
    `${name}: ${toCome} are still to come, and ${came} are stated.`,
  notOfThisOrder: (name: string) =>
    `${name} is on no open order under that number: look at the orders again.`,
  notOurs: 'What lies here on consignment is on no order of ours.',
  heldNotCounted: 'What is held is not counted to an order: the maker still owes it.',
  whyNotAll: (number: string) => `Not all of ${number} came: say why it is closed.`,
};
