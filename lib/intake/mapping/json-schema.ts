import { z } from "zod";
import { mappingSchema } from "./mapping";

/** The published JSON Schema (draft 2020-12) of a mapping, so that one can be written without this tool. */
export function mappingJsonSchema(): Record<string, unknown> {
  return {
    ...z.toJSONSchema(mappingSchema, { io: "input", target: "draft-2020-12" }),
    title: "Mapping of files of another system",
  };
}
