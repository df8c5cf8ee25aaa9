import { tryPort } from "@/lib/store/home/free-port";
import { HomeTrouble } from "@/lib/store/home/home-trouble";

/** Where the pages are served. */
export interface ListenPlace {
  host: string;
  port: number;
  /** What a browser on this machine opens. */
  address: string;
}

/**
 * Reads HOST (127.0.0.1) and PORT (3000; 0 takes any free one) and makes sure that nothing listens there.
 * @throws HomeTrouble in one sentence where it cannot be listened there.
 */
export async function listenPlace(env = process.env): Promise<ListenPlace> {
  const host = env.HOST?.trim() || "127.0.0.1";
  const asked = env.PORT?.trim() || "3000";
  const wanted = /^\d{1,5}$/.test(asked) ? Number(asked) : Number.NaN;
  if (!(wanted <= 65_535)) {
    throw new HomeTrouble(
      `PORT is ${asked}, which is no port: choose a number from 1024 to 65535.`,
    );
  }
  const found = await tryPort(host, wanted);
  if (typeof found === "string") throw new HomeTrouble(refusal(found, host, wanted));
  return { host, port: found, address: `http://${reachable(host)}:${found}` };
}

function refusal(code: string, host: string, port: number): string {
  if (code === "EADDRINUSE") {
    return `Port ${port} of ${host} is taken by another program: stop that one or choose another port, as in PORT=${port + 1} npm start.`;
  }
  if (code === "EACCES") {
    return `Port ${port} is not open to this user: choose one from 1024 up with PORT.`;
  }
  return `HOST is ${host}, which is no address of this machine (${code}): leave it away for 127.0.0.1.`;
}

/** A wildcard is listened on, but cannot be opened. */
function reachable(host: string): string {
  if (host === "0.0.0.0" || host === "::") return "localhost";
  return host.includes(":") ? `[${host}]` : host;
}
