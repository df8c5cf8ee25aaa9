/** Tables that stand before the wall, why, and what the viewers' role may do with them. */
export const openTables: Readonly<Record<string, { readonly why: string; readonly may: string }>> =
  {
    settings: {
      why: "how the tool is set and the revision of the records: nobody's, and asked before anybody is known",
      may: "select, insert, update, delete",
    },
    flag_levels: {
      why: "from when on anybody's figures are flagged: the same for all",
      may: "select, insert",
    },
    rate_limits: {
      why: "counts of attempts by hashes, written before anybody is known",
      may: "select, insert, update, delete",
    },
    log_lines: {
      why: "each line is chained to the one before, whoever's it is; the keeper owns it, and lines are only added",
      may: "select, insert",
    },
    _prisma_migrations: { why: "the owner's alone", may: "" },
  };
