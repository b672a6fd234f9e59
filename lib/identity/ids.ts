import { z } from 'zod';

/**
 * Ids say what they name: a prefix, then letters and digits. They are parsed once, at the edge,
 * and carry a brand from there on, so that a set's id cannot be handed where a case's is due.
 */
function idOf<P extends string>(prefix: P) {
  return z
    .string()
    .regex(new RegExp(`^${prefix}_[0-9a-z-]{1,60}$`), `an id that begins with ${prefix}_`)
    .brand<P>();
}

export const itemId = idOf('item');
export const makerId = idOf('maker');
export const ruleId = idOf('rule');
export const exceptionId = idOf('exception');
export const configurationId = idOf('configuration');
export const configurationVersionId = idOf('version');
export const lineId = idOf('line');
export const setId = idOf('set');
export const stockId = idOf('stock');
export const placeId = idOf('place');
export const caseId = idOf('case');
export const planId = idOf('plan');
export const startId = idOf('start');
export const countId = idOf('count');
export const personId = idOf('person');
export const theatreId = idOf('theatre');
export const workstationId = idOf('workstation');
export const sessionId = idOf('session');
export const turnId = idOf('turn');
export const packId = idOf('pack');
export const printId = idOf('print');
export const steriliserId = idOf('steriliser');
export const loadId = idOf('load');
export const indicatorId = idOf('indicator');
export const entryId = idOf('entry');
export const asideId = idOf('aside');
export const refillId = idOf('refill');
export const decisionId = idOf('decision');
export const noticeId = idOf('notice');
export const scanId = idOf('scan');
export const trialId = idOf('trial');
export const requestId = idOf('request');
export const promiseId = idOf('promise');
export const theatreSessionId = idOf('theatreSession');
export const openQuestionId = idOf('openQuestion');
export const pickId = idOf('pick');
export const checkId = idOf('check');
export const returnId = idOf('return');
export const theatreCountId = idOf('theatreCount');
export const questionId = idOf('question');
export const lenderId = idOf('lender');
export const loanId = idOf('loan');
export const loanLineId = idOf('loanLine');
export const loanCountId = idOf('loanCount');
export const loanQuestionId = idOf('loanQuestion');
export const loanClaimId = idOf('loanClaim');
export const feedId = idOf('feed');
export const procedureId = idOf('procedure');
export const cardId = idOf('card');
export const restockId = idOf('restock');
export const restockLineId = idOf('restockLine');
export const orderId = idOf('order');
export const orderLineId = idOf('orderLine');
export const deliveryId = idOf('delivery');
export const deliveryLineId = idOf('deliveryLine');
export const stockCountId = idOf('stockCount');
export const stockCountLineId = idOf('stockCountLine');
export const recallId = idOf('recall');
export const usageOrderId = idOf('usageOrder');
export const usageLineId = idOf('usageLine');
export const reconciliationId = idOf('reconciliation');
export const reconciliationLineId = idOf('reconciliationLine');
export const reasonId = idOf('reason');
export const importId = idOf('import');
export const tokenId = idOf('token');

export type ItemId = z.infer<typeof itemId>;
export type MakerId = z.infer<typeof makerId>;
export type RuleId = z.infer<typeof ruleId>;
export type ExceptionId = z.infer<typeof exceptionId>;
export type ConfigurationId = z.infer<typeof configurationId>;
export type ConfigurationVersionId = z.infer<typeof configurationVersionId>;
export type LineId = z.infer<typeof lineId>;
export type SetId = z.infer<typeof setId>;
export type StockId = z.infer<typeof stockId>;
export type PlaceId = z.infer<typeof placeId>;
export type CaseId = z.infer<typeof caseId>;
export type PlanId = z.infer<typeof planId>;
export type StartId = z.infer<typeof startId>;
export type CountId = z.infer<typeof countId>;
export type PersonId = z.infer<typeof personId>;
export type TheatreId = z.infer<typeof theatreId>;
export type WorkstationId = z.infer<typeof workstationId>;
export type SessionId = z.infer<typeof sessionId>;
export type TurnId = z.infer<typeof turnId>;
export type PackId = z.infer<typeof packId>;
export type PrintId = z.infer<typeof printId>;
export type SteriliserId = z.infer<typeof steriliserId>;
export type LoadId = z.infer<typeof loadId>;
export type IndicatorId = z.infer<typeof indicatorId>;
export type EntryId = z.infer<typeof entryId>;
export type AsideId = z.infer<typeof asideId>;
export type RefillId = z.infer<typeof refillId>;
export type DecisionId = z.infer<typeof decisionId>;
export type NoticeId = z.infer<typeof noticeId>;
export type ScanId = z.infer<typeof scanId>;
export type TrialId = z.infer<typeof trialId>;
export type RequestId = z.infer<typeof requestId>;
export type PromiseId = z.infer<typeof promiseId>;
export type TheatreSessionId = z.infer<typeof theatreSessionId>;
export type PickId = z.infer<typeof pickId>;
export type CheckId = z.infer<typeof checkId>;
export type TheatreCountId = z.infer<typeof theatreCountId>;
export type QuestionId = z.infer<typeof questionId>;
export type LenderId = z.infer<typeof lenderId>;
export type LoanId = z.infer<typeof loanId>;
export type LoanLineId = z.infer<typeof loanLineId>;
export type LoanCountId = z.infer<typeof loanCountId>;
export type LoanQuestionId = z.infer<typeof loanQuestionId>;
export type LoanClaimId = z.infer<typeof loanClaimId>;
export type FeedId = z.infer<typeof feedId>;
export type ProcedureId = z.infer<typeof procedureId>;
export type CardId = z.infer<typeof cardId>;
export type RestockId = z.infer<typeof restockId>;
export type RestockLineId = z.infer<typeof restockLineId>;
export type OrderId = z.infer<typeof orderId>;
export type OrderLineId = z.infer<typeof orderLineId>;
export type DeliveryId = z.infer<typeof deliveryId>;
export type StockCountId = z.infer<typeof stockCountId>;
export type StockCountLineId = z.infer<typeof stockCountLineId>;
export type TokenId = z.infer<typeof tokenId>;
export type ImportId = z.infer<typeof importId>;
export type RecallId = z.infer<typeof recallId>;
export type ReconciliationId = z.infer<typeof reconciliationId>;
export type UsageOrderId = z.infer<typeof usageOrderId>;
export type ReasonId = z.infer<typeof reasonId>;

/** Where new ids come from: handed in, so that the core stays free of randomness. */
export type NewId = <P extends string>(prefix: P) => `${P}_${string}`;
