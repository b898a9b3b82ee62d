import { resolve } from 'node:path';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';

/**
 * Compiles a source as if it lay in src/engine, under that folder's own tsconfig, and returns the compiler's complaints.
 * The source is never written.
 */
function complaintsInEngine(text: string): readonly string[] {
  const folder = resolve(import.meta.dirname, '../../src/engine');
  const { config } = ts.readConfigFile(resolve(folder, 'tsconfig.json'), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, folder);
  const probe = resolve(folder, 'probe.ts');
  const host = ts.createCompilerHost(options);
  const { getSourceFile } = host;
  host.getSourceFile = (name, ...rest) =>
    name === probe ? ts.createSourceFile(name, text, ts.ScriptTarget.ES2023) : getSourceFile(name, ...rest);
  const program = ts.createProgram([probe], options, host);
  return ts
    .getPreEmitDiagnostics(program)
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'));
}

const OUTSIDE_WORLD = [
  ...['window', 'document', 'navigator', 'AudioContext', 'Worker', 'fetch', 'postMessage', 'indexedDB'],
  ...['process', 'Buffer', 'require', 'console', 'setTimeout', 'performance', 'crypto'],
];

describe('the engine cannot see the world outside', () => {
  let complaints: readonly string[];
  beforeAll(() => {
    complaints = complaintsInEngine(`export const seen = [${OUTSIDE_WORLD.join(', ')}];`);
  });

  it.each(OUTSIDE_WORLD)('%s does not compile in src/engine', (name) => {
    expect(complaints).toContainEqual(expect.stringContaining(`Cannot find name '${name}'`));
  });

  it('while the language itself does', () => {
    expect(complaintsInEngine('export const even = new Float32Array(8).toSorted().at(0);')).toEqual([]);
  });
});
