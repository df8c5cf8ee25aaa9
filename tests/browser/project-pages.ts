import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { projectFolder } from "@/lib/store/home/project-folder";

/** Every page of app/ as "app/lead/page.tsx", and every method of every route handler as "POST app/sign-out/route.ts". */
export function pagesAndRoutes(): string[] {
  return filesOfApp().flatMap((file) => {
    if (file.endsWith("/page.tsx")) return [file];
    if (!file.endsWith("/route.ts")) return [];
    return exportsOf(file)
      .filter((name) => /^[A-Z]+$/.test(name))
      .map((method) => `${method} ${file}`);
  });
}

/** Every server action of app/ as "app/lead/acts.ts addNoteAct". */
export function serverActions(): string[] {
  return filesOfApp()
    .filter((file) => readFileSync(join(projectFolder, file), "utf8").startsWith('"use server"'))
    .flatMap((file) => exportsOf(file).map((name) => `${file} ${name}`));
}

function filesOfApp(): string[] {
  return readdirSync(join(projectFolder, "app"), { recursive: true, encoding: "utf8" })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => `app/${file}`)
    .sort();
}

function exportsOf(file: string): string[] {
  const text = readFileSync(join(projectFolder, file), "utf8");
  return [...text.matchAll(/^export (?:async function|function|const) (\w+)/gm)].map(
    ([, name]) => name ?? "",
  );
}
