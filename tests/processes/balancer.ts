import { createServer, type IncomingMessage, request, type ServerResponse } from "node:http";
import { connect, type Socket } from "node:net";

/** Hands requests to several processes in turn, as whatever stands before them would. */
export type Balancer = {
  readonly address: string;
  /** The port of the process that took the last request for this path. */
  tookLast(path: string): number | undefined;
  close(): Promise<void>;
};

/**
 * A process that takes no connection is passed over, for nothing was asked of it yet; one that goes in the middle of an answer
 * is a lost connection for whoever asked.
 */
export async function balancer(port: number, to: readonly number[]): Promise<Balancer> {
  let turn = 0;
  const took = new Map<string, number>();
  const server = createServer(async (asked, answer) => {
    for (let tries = 0; tries < to.length; tries += 1) {
      const place = to[turn++ % to.length] ?? 0;
      const line = await lineTo(place);
      if (!line) continue;
      took.set(new URL(asked.url ?? "/", "http://x").pathname, place);
      return passOn(line, asked, answer);
    }
    answer.destroy();
  });
  await new Promise<void>((resolve) => server.listen(port, "127.0.0.1", resolve));
  return {
    address: `http://127.0.0.1:${port}`,
    tookLast: (path) => took.get(path),
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function lineTo(port: number): Promise<Socket | null> {
  return new Promise((resolve) => {
    const socket = connect(port, "127.0.0.1", () => resolve(socket));
    socket.once("error", () => resolve(null));
  });
}

function passOn(line: Socket, asked: IncomingMessage, answer: ServerResponse): void {
  const { method, url, headers } = asked;
  const lost = () => answer.destroy();
  const far = request(
    {
      method,
      path: url,
      headers: { ...headers, connection: "close" },
      createConnection: () => line,
    },
    (found) => {
      answer.writeHead(found.statusCode ?? 502, found.headers);
      found.on("error", lost).on("aborted", lost).pipe(answer);
    },
  );
  far.on("error", lost);
  asked.on("error", () => far.destroy()).pipe(far);
}
