import { resolve } from "node:path";

/** The folder of the project: where package.json, prisma/ and node_modules/ are. */
export const projectFolder = resolve(import.meta.dirname ?? process.cwd(), "../../..");
