import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, posix, relative, resolve } from 'node:path';
import ts from 'typescript';

/** One import as it stands in a source: of another of our files, or of a package (npm's or Node's own). */
export type Import =
  | { readonly kind: 'file'; readonly importer: string; readonly target: string }
  | { readonly kind: 'package'; readonly importer: string; readonly name: string };

/** A folder → its sources, as paths from it with `/`, in the alphabet's order. */
export function sourcesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => /\.(ts|js|mjs|svelte)$/.test(file))
    .sort();
}

/**
 * The text of a source → the names that it imports: static, type-only, re-exported, dynamic, `import('…').Type`, and files
 * reached by `new URL('…', import.meta.url)`, as workers are. Of a Svelte component, the names of its scripts. (TypeScript's
 * quick scanner, preProcessFile, overlooks `export * as name from`; so the whole tree is walked.)
 */
export function namesImportedBy(file: string, text: string): readonly string[] {
  const script = file.endsWith('.svelte')
    ? [...text.matchAll(/<script[^>]*>(.*?)<\/script>/gs)].map((match) => match[1]).join('\n')
    : text;
  const names: string[] = [];
  const visit = (node: ts.Node): void => {
    const name = nameIn(node);
    if (name !== undefined && ts.isStringLiteralLike(name)) names.push(name.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('source.ts', script, ts.ScriptTarget.Latest));
  return names;
}

/** A node of the syntax tree → the node that holds the imported name, where it imports. */
function nameIn(node: ts.Node): ts.Node | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return node.moduleSpecifier;
  if (ts.isExternalModuleReference(node)) return node.expression;
  if (ts.isImportTypeNode(node))
    return ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined;
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
    return node.arguments[0];
  if (ts.isNewExpression(node) && isUrlBesideThisFile(node)) return node.arguments?.[0];
  return undefined;
}

/** `new URL(…, import.meta.url)` */
function isUrlBesideThisFile(node: ts.NewExpression): boolean {
  const base = node.arguments?.[1];
  return (
    ts.isIdentifier(node.expression) &&
    node.expression.text === 'URL' &&
    base !== undefined &&
    ts.isPropertyAccessExpression(base) &&
    ts.isMetaProperty(base.expression)
  );
}

/** A folder and a source in it → the source's imports; files as paths from the folder, without Vite's `?…`. */
export function importsOf(folder: string, importer: string): readonly Import[] {
  return namesImportedBy(importer, readFileSync(resolve(folder, importer), 'utf8')).map((name) => {
    if (!/^\.{1,2}\//.test(name)) return { kind: 'package', importer, name: packageOf(name) };
    const target = relative(folder, resolve(folder, dirname(importer), name.replace(/\?.*$/, '')));
    return { kind: 'file', importer, target: target.replaceAll('\\', '/') };
  });
}

/** `@scope/name/inside` → `@scope/name`; `node:fs/promises` → `node:fs`; `svelte/elements` → `svelte`. */
function packageOf(name: string): string {
  return name
    .split('/')
    .slice(0, name.startsWith('@') ? 2 : 1)
    .join('/');
}

/** True if the path, from the folder, is a file: `./room` and `./file` without its ending are not. */
export function isFile(folder: string, path: string): boolean {
  return statSync(posix.join(folder, path), { throwIfNoEntry: false })?.isFile() ?? false;
}
