import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { surface } from '../library/surface.ts';
import { serveFolder } from './static.ts';
import { sharedBrowser, visit } from './visit.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const README = readFileSync(resolve(ROOT, 'src/library/README.md'), 'utf8');
const VERDICT = /Every note right\..*(late.*C|C.*late)/;

/** The code of the README in one language; there is one piece in each. */
const codeIn = (language: string): string =>
  new RegExp(`\`\`\`${language}\n(.*?)\`\`\``, 's').exec(README)?.[1] ?? '';

/** Runs a program as another developer would, without what vitest put into the environment. */
function run(command: string, args: readonly string[], cwd: string): string {
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^(VITEST|NODE_|npm_)/.test(name)),
  );
  return execFileSync(command, args, { cwd, env, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
}

/** Building and packing may take so long on a busy machine, ms: half a minute on a quiet one. */
const PACKED_MS = 600_000;

/** An empty folder into which the packed package was installed, with an attempt beside it. */
const folder = mkdtempSync(join(tmpdir(), 'evenfall-package-'));
beforeAll(() => {
  const packed = mkdtempSync(join(tmpdir(), 'evenfall-packed-'));
  run('npm', ['pack', '--pack-destination', packed], ROOT);
  const [tarball] = readdirSync(packed);
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
  run('npm', ['install', '--offline', '--no-audit', '--no-fund', join(packed, tarball!)], folder);
  rmSync(packed, { recursive: true });
  copyFileSync(resolve(ROOT, 'audio-fixtures/late-thumb/attempt.wav'), join(folder, 'attempt.wav'));
}, PACKED_MS);
afterAll(() => rmSync(folder, { recursive: true }));

describe('the package, installed into an empty folder', () => {
  it('brings no other package with it', () => {
    expect(readdirSync(join(folder, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual([
      'evenfall',
    ]);
  });

  it('assesses a WAV by the lines of its README, in Node', () => {
    writeFileSync(join(folder, 'attempt.js'), codeIn('js'));
    const said = run('node', ['attempt.js'], folder);
    expect(said).toMatch(VERDICT);
    expect(said).toMatch(/value: 1\d\.\d+, plusMinus: \d/);
  });

  it('… and in a page that nothing has bundled', async () => {
    writeFileSync(
      join(folder, 'index.html'),
      `<!doctype html><link rel="icon" href="data:,">${codeIn('html')}`,
    );
    const server = await serveFolder(folder);
    const { page, errors, close } = await visit(await sharedBrowser(), server.url);
    await page.locator('p', { hasText: /\w/ }).waitFor();
    await expect.poll(() => page.locator('p').innerText()).toMatch(VERDICT);
    expect(errors).toEqual([]);
    await close();
    server.close();
  });

  it('has the command too', () => {
    expect(run('npx', ['--no-install', 'evenfall', '--version'], folder)).toMatch(
      /^evenfall \d+\.\d+\.\d+\n$/,
    );
  });

  const functions = surface().filter(({ isFunction }) => isFunction);

  it.each(['NodeNext', 'Bundler'] as const)(
    'has types for TypeScript under %s, by which every example holds',
    (way) => {
      const examples = functions.flatMap(({ examples: codes }) => codes);
      expect(examples.length).toBeGreaterThan(5);
      const file = join(folder, 'examples.ts');
      const names = functions.map(({ name }) => name).join(', ');
      const bodies = examples.map(
        (code, at) => `export async function example${at}(sound: AudioInput) { {\n${code}\n} }`,
      );
      writeFileSync(file, [`import { ${names}, type AudioInput } from 'evenfall';`, ...bodies].join('\n'));
      const program = ts.createProgram([file], {
        strict: true,
        noEmit: true,
        // TypeScript's own; ours and those that ours import are checked.
        skipDefaultLibCheck: true,
        target: ts.ScriptTarget.ES2023,
        lib: ['lib.es2023.d.ts', 'lib.dom.d.ts'],
        types: [],
        module: way === 'NodeNext' ? ts.ModuleKind.NodeNext : ts.ModuleKind.ESNext,
        moduleResolution: ts.ModuleResolutionKind[way],
      });
      const complaints = ts
        .getPreEmitDiagnostics(program)
        .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'));
      expect(complaints).toEqual([]);
    },
  );
});
