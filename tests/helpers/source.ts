import { readFileSync, readdirSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import ts from 'typescript';

const root = resolve(import.meta.dirname, '../..');
const passedBy = new Set(['node_modules', '.next', 'generated', 'data', 'sabotage']);

/** A file of the project: its path from the root, with slashes, and its text. */
export type Source = { path: string; text: string };

/** Every file under these folders whose name ends so, in order; what is made by tools is left out. */
export function sources(folders: readonly string[], ending: RegExp): Source[] {
  return folders
    .flatMap((folder) => filesUnder(join(root, folder)))
    .flatMap((file) => {
      const path = relative(root, file).replaceAll('\\', '/');
      return ending.test(path) ? [{ path, text: readFileSync(file, 'utf8') }] : [];
    });
}

function filesUnder(folder: string): string[] {
  const entries = readdirSync(folder, { withFileTypes: true });
  return entries
    .filter((entry) => !passedBy.has(entry.name))
    .sort((one, other) => (one.name < other.name ? -1 : 1))
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory() ? filesUnder(path) : [path];
    });
}

/** Exported names of a file that have no docblock. Types made from a schema need none of their own. */
export function exportsWithoutDocblock({ path, text }: Source): string[] {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
  const documented = new Set<string>();
  const bare: string[] = [];
  for (const statement of file.statements) {
    if (!isExported(statement) || isInferred(statement)) continue;
    const names = namesOf(statement);
    // Overloads share the docblock of the first.
    if (hasDocblock(statement)) names.forEach((name) => documented.add(name));
    else bare.push(...names.filter((name) => !documented.has(name)));
  }
  return bare;
}

function isExported(statement: ts.Statement): boolean {
  return (
    ts.canHaveModifiers(statement) &&
    (ts.getModifiers(statement) ?? []).some((one) => one.kind === ts.SyntaxKind.ExportKeyword)
  );
}

function isInferred(statement: ts.Statement): boolean {
  return (
    ts.isTypeAliasDeclaration(statement) &&
    /^z\.(infer|input|output)</.test(statement.type.getText())
  );
}

function hasDocblock(statement: ts.Statement): boolean {
  return ts.getJSDocCommentsAndTags(statement).length > 0;
}

function namesOf(statement: ts.Statement): string[] {
  if (ts.isVariableStatement(statement)) {
    return statement.declarationList.declarations.map((one) => one.name.getText());
  }
  const name = 'name' in statement ? statement.name : undefined;
  return [
    name !== undefined && ts.isIdentifier(name as ts.Node) ? (name as ts.Identifier).text : '?',
  ];
}

/** True when the file says, before anything else, that it never reaches a browser. */
export function headsWithServerOnly({ text }: Source): boolean {
  return /^import 'server-only';\n/.test(text);
}

/** Fields of a Prisma schema that are instants or days without saying which. */
export function bareDateTimes({ text }: Source): string[] {
  return text
    .split('\n')
    .filter((line) => /^\s+\w+\s+DateTime\b/.test(line))
    .filter((line) => !/@db\.(Timestamptz\(3\)|Date)(\s|$)/.test(line))
    .map((line) => line.trim().split(/\s+/)[0] ?? '');
}
