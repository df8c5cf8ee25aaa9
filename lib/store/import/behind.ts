/**
 * Work of one connection, in its order, behind whoever makes it ready: reading goes on while the database takes in what was read. What
 * waits is bounded. Once a piece fails none of the later ones is begun.
 */
export class Behind {
  readonly #jobs: Promise<void>[] = [];
  #last = Promise.resolve();
  #waiting = 0;
  #ended: { readonly why: unknown } | undefined;

  /** Waits where too much is waiting already. @param bytes what the work keeps in memory until it is done */
  async add(bytes: number, work: () => Promise<void>): Promise<void> {
    this.#waiting += bytes;
    this.#last = this.#last.then(async () => {
      if (this.#ended) throw this.#ended.why;
      await work();
      this.#waiting -= bytes;
    });
    // What goes wrong is thrown where it is waited for, and to whoever brings more.
    this.#last.catch((why) => {
      this.#ended ??= { why };
    });
    this.#jobs.push(this.#last);
    while (this.#waiting > most && this.#jobs.length > 0) await this.#jobs.shift();
    if (this.#ended) throw this.#ended.why;
  }

  /** Is so much waiting in memory that more had better wait elsewhere. */
  get isFull(): boolean {
    return this.#waiting > most / 2;
  }

  /** All of it is done. */
  async done(): Promise<void> {
    this.#jobs.length = 0;
    await this.#last;
  }

  /** Begins nothing more, and waits until nothing runs. */
  async end(why: unknown): Promise<void> {
    this.#ended ??= { why };
    await this.#last.catch(() => undefined);
  }
}

const most = 24 * 2 ** 20;
