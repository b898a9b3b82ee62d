import { resolve } from 'node:path';
import ts from 'typescript';

const LIBRARY = resolve(import.meta.dirname, '../../src/library');

/** One name that the package shows. */
export interface Shown {
  readonly name: string;
  readonly isFunction: boolean;
  /** what is written above it, without its tags */
  readonly docs: string;
  /** the code of its `@example`s */
  readonly examples: readonly string[];
}

/** What src/library/index.ts shows, in the order of the file. */
export function surface(): readonly Shown[] {
  const door = resolve(LIBRARY, 'index.ts');
  const { config } = ts.readConfigFile(resolve(LIBRARY, 'tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, LIBRARY);
  const program = ts.createProgram([door], options);
  const checker = program.getTypeChecker();
  const module = checker.getSymbolAtLocation(program.getSourceFile(door)!)!;
  return checker.getExportsOfModule(module).map((shown) => {
    const symbol = shown.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(shown) : shown;
    const examples = symbol.getJsDocTags(checker).filter(({ name }) => name === 'example');
    return {
      name: shown.name,
      isFunction: (symbol.flags & ts.SymbolFlags.Function) !== 0,
      docs: ts.displayPartsToString(symbol.getDocumentationComment(checker)),
      examples: examples.map(({ text }) => ts.displayPartsToString(text)),
    };
  });
}
