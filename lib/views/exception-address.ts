/** Where an exception is entered, asked about and answered. */
export function exceptionAddress(of: {
  readonly practice: string;
  readonly sessionId: string;
  readonly criterion: string;
  /** Empty: the visit. */
  readonly canal: string;
}): string {
  const path = [of.practice, of.sessionId, of.criterion].map(encodeURIComponent).join("/");
  return `/exceptions/${path}${of.canal ? `?${new URLSearchParams({ canal: of.canal })}` : ""}`;
}
