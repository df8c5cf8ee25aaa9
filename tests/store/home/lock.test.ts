import { spawn } from "node:child_process";
import { once } from "node:events";
import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { afterEach, beforeEach, expect, test } from "vitest";
import { holdHome, refuseHeldHome } from "@/lib/store/home/hold-home";
import { withLock } from "@/lib/store/home/lock";
import { processMark } from "@/lib/store/home/process-mark";
import { temporaryFolder } from "./temporary-home";

// Properties by the project's own rules: one holder at a time.

let place: Awaited<ReturnType<typeof temporaryFolder>>;
beforeEach(async () => {
  place = await temporaryFolder();
});
afterEach(() => place.remove());

test("work under one lock never overlaps", async () => {
  let inside = 0;
  let most = 0;
  const work = async () => {
    inside += 1;
    most = Math.max(most, inside);
    await sleep(5);
    inside -= 1;
  };
  const file = join(place.folder, "a.lock");
  await Promise.all(Array.from({ length: 12 }, () => withLock(file, work)));
  expect(most).toBe(1);
});

test("a dead holder's lock is taken over, by one of many at a time", async () => {
  const file = join(place.folder, "a.lock");
  await writeFile(file, `${await markOfTheDead()}\n`);
  let inside = 0;
  let most = 0;
  await Promise.all(
    Array.from({ length: 6 }, () =>
      withLock(file, async () => {
        inside += 1;
        most = Math.max(most, inside);
        await sleep(5);
        inside -= 1;
      }),
    ),
  );
  expect(most).toBe(1);
});

test("a second start on a held home is told whose it is, and not once the holder has let go or died", async () => {
  const held = await holdHome(place.folder, "http://127.0.0.1:3000");
  const sentence = new RegExp(
    `already in use by another start \\(process ${process.pid}, http://127.0.0.1:3000\\)`,
  );
  await expect(holdHome(place.folder, "http://127.0.0.1:3001")).rejects.toThrow(sentence);
  await expect(refuseHeldHome(place.folder)).rejects.toThrow(sentence);
  await held.release();
  await expect(refuseHeldHome(place.folder)).resolves.toBeUndefined();

  await writeFile(join(place.folder, "start.lock"), `${await markOfTheDead()}\nhttp://nowhere`);
  const next = await holdHome(place.folder, "http://127.0.0.1:3002");
  await next.release();
});

test("several share a home whose database is elsewhere, each at its own port, and whoever needs it alone is told", async () => {
  const one = await holdHome(place.folder, "http://127.0.0.1:3000", 3000);
  const two = await holdHome(place.folder, "http://127.0.0.1:3001", 3001);
  await expect(holdHome(place.folder, "http://127.0.0.1:3001", 3001)).rejects.toThrow(
    /already in use/,
  );
  await one.release();
  await expect(refuseHeldHome(place.folder)).rejects.toThrow(/http:\/\/127.0.0.1:3001/);
  await two.release();
  await expect(refuseHeldHome(place.folder)).resolves.toBeUndefined();
});

test("a reused process number is not the process it was", () => {
  const [pid] = (processMark(process.pid) ?? "").split(" ");
  expect(pid).toBe(String(process.pid));
  expect(processMark(process.pid)).not.toBe(`${pid} 1`);
});

async function markOfTheDead(): Promise<string> {
  const child = spawn(process.execPath, ["-e", "setInterval(() => {}, 1000)"]);
  const mark = processMark(child.pid ?? 0) ?? "";
  child.kill("SIGKILL");
  await once(child, "exit");
  return mark;
}
