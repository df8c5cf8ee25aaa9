/**
 * The origins from which a sign-in is taken: the base address and, where that is this machine, its other names.
 * Without them a browser at 127.0.0.1 is refused when the base address says localhost, and the reverse.
 */
export function loopbackTwins(baseUrl: string): string[] {
  const base = new URL(baseUrl);
  const names = ["127.0.0.1", "localhost", "[::1]"];
  if (!names.includes(base.hostname)) return [base.origin];
  const port = base.port ? `:${base.port}` : "";
  return names.map((name) => `${base.protocol}//${name}${port}`);
}
