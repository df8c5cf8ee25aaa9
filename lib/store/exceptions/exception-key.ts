/** What an exception is about: a criterion, at a visit (canal empty) or in one of its canals. */
export type ExceptionKey = {
  readonly practice: string;
  readonly sessionId: string;
  /** Empty: the visit. */
  readonly canal: string;
  readonly criterion: string;
};
