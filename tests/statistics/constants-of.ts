import { readFileSync } from "node:fs";
import ts from "typescript";

/** A numeric literal of a source file, where it stands, and the text of it changed by 1 %. */
export type Constant = {
  file: string;
  line: number;
  start: number;
  end: number;
  text: string;
  changed: string;
};

/**
 * Every numeric literal of a TypeScript file that has a meaning when it runs: those in comments,
 * strings and types have none.
 * @param file the name to give it
 * @param path where it lies
 */
export function constantsOf(file: string, path: string): Constant[] {
  const source = ts.createSourceFile(
    file,
    readFileSync(path, "utf8"),
    ts.ScriptTarget.Latest,
    true,
  );
  const found: Constant[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node)) return;
    if (ts.isNumericLiteral(node)) {
      const start = node.getStart(source);
      const { line } = source.getLineAndCharacterOfPosition(start);
      const text = node.getText(source);
      const changed = String(changedByOnePercent(Number(text.replaceAll("_", ""))));
      found.push({ file, line: line + 1, start, end: node.end, text, changed });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function changedByOnePercent(value: number): number {
  return value === 0 ? 0.01 : value * 1.01;
}
