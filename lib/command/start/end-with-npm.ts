import { isAlive, parentOf } from "@/lib/store/home/process-mark";

/**
 * Calls `stop` when the shell is gone through which npm started us. npm passes a signal on to that shell
 * alone, which dies of it without a word to us; Ctrl-C in a terminal reaches us directly.
 */
export function endWithNpm(stop: () => void): void {
  if (!process.env.npm_lifecycle_event || process.platform === "win32") return;
  // Between us and the shell stands the program that loads TypeScript.
  const shell = parentOf(process.ppid);
  if (shell <= 1) return;
  const watch = setInterval(() => {
    if (isAlive(shell)) return;
    clearInterval(watch);
    stop();
  }, 500);
  watch.unref();
}
