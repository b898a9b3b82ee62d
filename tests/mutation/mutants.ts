import { readFileSync } from 'node:fs';
import ts from 'typescript';

/** One token of a file changed. */
export interface Mutant {
  readonly file: string;
  readonly line: number;
  readonly was: string;
  readonly becomes: string;
  /** the whole file as it then is */
  readonly text: string;
}

/** What a token may become; the first is the nearest. A token that stands in no table is left alone. */
const OPERATORS: Readonly<Record<string, readonly string[]>> = {
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '&&': ['||'],
  '||': ['&&'],
  '??': ['&&'],
  '+=': ['-='],
  '-=': ['+='],
  '++': ['--'],
  true: ['false'],
  false: ['true'],
};
/** Methods that are taken for one another. */
const METHODS: Readonly<Record<string, string>> = {
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  some: 'every',
  every: 'some',
  findIndex: 'findLastIndex',
  find: 'findLast',
  indexOf: 'lastIndexOf',
  startsWith: 'endsWith',
};

/** All one-token changes of a source file that may change what it does: no types, no imports, no names. */
export function mutantsOf(file: string): readonly Mutant[] {
  const text = readFileSync(file, 'utf8');
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2023, true);
  const mutants: Mutant[] = [];
  const change = (node: ts.Node, becomes: string): void => {
    const [start, end] = [node.getStart(source), node.getEnd()];
    mutants.push({
      file,
      line: source.getLineAndCharacterOfPosition(start).line + 1,
      was: text.slice(start, end),
      becomes,
      text: text.slice(0, start) + becomes + text.slice(end),
    });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node)) return;
    for (const becomes of replacementsOf(node, source)) change(node, becomes);
    ts.forEachChild(node, visit);
  };
  ts.forEachChild(source, visit);
  return mutants;
}

function replacementsOf(node: ts.Node, source: ts.SourceFile): readonly string[] {
  if (ts.isNumericLiteral(node)) return node.text === '0' ? ['1'] : ['0', `(2 * ${node.getText(source)})`];
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node))
    return ts.isPropertyAssignment(node.parent) && node.parent.name === node
      ? []
      : [node.text === '' ? "'mutant'" : "''"];
  if (ts.isPrefixUnaryExpression(node)) {
    const operand = node.operand.getText(source);
    if (node.operator === ts.SyntaxKind.ExclamationToken) return [`(${operand})`];
    if (node.operator === ts.SyntaxKind.MinusToken) return [`(${operand})`];
    return [];
  }
  if (ts.isPropertyAccessExpression(node.parent) && node.parent.name === node) {
    const other = METHODS[node.getText(source)];
    return other === undefined || !ts.isCallExpression(node.parent.parent) ? [] : [other];
  }
  const isToken = ts.isToken(node) && !ts.isIdentifier(node);
  return isToken ? (OPERATORS[node.getText(source)] ?? []) : [];
}

/** So many of them, spread by chance; the same seed gives the same. */
export function sampleOf(all: readonly Mutant[], size: number, seed: number): readonly Mutant[] {
  const left = [...all];
  let state = seed >>> 0;
  // A linear congruential generator (Numerical Recipes' constants, from memory): good enough to deal cards.
  const next = (below: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  return Array.from({ length: Math.min(size, all.length) }, () => left.splice(next(left.length), 1)[0]!);
}
