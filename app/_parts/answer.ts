/** What an action answers to its form. `wrong.form` is what belongs to no single field. */
export type Answer = {
  readonly done?: string;
  /** Shown once, to be copied: a new password. */
  readonly secret?: string;
  readonly wrong?: Readonly<Partial<Record<string, string>>>;
  /** The fields as they were typed, so that a mistake costs no retyping. */
  readonly given?: Readonly<Record<string, string>>;
};

/** An action of a form: a server function. */
export type Act = (before: Answer, form: FormData) => Promise<Answer>;
