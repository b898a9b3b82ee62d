// kernel.as → compiled.ts, in this folder or the one named: `node src/engine/listen/network/kernel/build.mjs [FOLDER]`.
// It fetches AssemblyScript (Apache-2.0) into a temporary folder; the product does not depend on it.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const COMPILER = 'assemblyscript@0.28.20';
const OPTIONS = [
  '-Ospeed',
  '--noAssert',
  '--runtime',
  'stub',
  '--enable',
  'simd',
  '--disable',
  'bulk-memory',
];

const place = resolve(process.argv[2] ?? import.meta.dirname);
const folder = mkdtempSync(join(tmpdir(), 'kernel-'));
try {
  copyFileSync(join(place, 'kernel.as'), join(folder, 'kernel.ts'));
  const command = [
    'exec',
    '--yes',
    `--package=${COMPILER}`,
    '--',
    'asc',
    'kernel.ts',
    '-o',
    'kernel.wasm',
    ...OPTIONS,
  ];
  execFileSync('npm', command, { cwd: folder, stdio: 'inherit' });
  const base64 = readFileSync(join(folder, 'kernel.wasm')).toString('base64');
  const hash = createHash('sha256')
    .update(readFileSync(join(place, 'kernel.as')))
    .digest('hex');
  const lines = [
    '// Written by build.mjs from the kernel.as with the SHA-256',
    `// ${hash}; do not edit.`,
    '',
    '/** The compiled kernel (WebAssembly with 128-bit SIMD) in base64. */',
    'export const KERNEL_BASE64 =',
    `  '${base64}';`,
    '',
  ];
  writeFileSync(join(place, 'compiled.ts'), lines.join('\n'));
} finally {
  rmSync(folder, { recursive: true });
}
