import { createServer } from "node:net";

/** A port of this host that nothing listens on now; the system chooses it. */
export async function freePort(host = "127.0.0.1"): Promise<number> {
  const port = await tryPort(host, 0);
  if (typeof port === "string") throw new Error(`no free port on ${host}: ${port}`);
  return port;
}

/** Listens for a moment: the port where that went well, else the system's error code. */
export function tryPort(host: string, port: number): Promise<number | string> {
  return new Promise((resolve) => {
    const server = createServer();
    server.once("error", (error: NodeJS.ErrnoException) => resolve(error.code ?? error.message));
    server.listen({ host, port, exclusive: true }, () => {
      const address = server.address();
      const found = address && typeof address === "object" ? address.port : port;
      server.close(() => resolve(found));
    });
  });
}
