import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { buildExercise } from '../../src/engine/exercise/index.ts';
import { render, SAMPLE_RATE_HZ } from '../support/render.ts';
import type { Rendered, RenderSpec, Truth } from '../support/render.ts';

const ROOT = resolve(import.meta.dirname, '../../node_modules/.cache/evenfall-attempts');
const SUPPORT = resolve(import.meta.dirname, '../support');

const hash = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 20);

/** The renderer's own source names the folder: a changed renderer never answers with old sound. */
const CACHE = resolve(
  ROOT,
  hash(
    readdirSync(SUPPORT, { recursive: true, encoding: 'utf8' })
      .filter((file) => /^(piano|student|home|render|random|fft|biquad)/.test(file) && file.endsWith('.ts'))
      .filter((file) => !file.endsWith('.test.ts'))
      .sort()
      .map((file) => readFileSync(resolve(SUPPORT, file), 'utf8'))
      .join('\n'),
  ),
);

/** `render`, but an attempt rendered once before is read from node_modules/.cache. */
export async function renderCached(spec: RenderSpec): Promise<Rendered> {
  const path = resolve(CACHE, hash(JSON.stringify([spec, buildExercise(spec.exercise).steps])));
  const kept = readIfThere(path);
  if (kept) return kept;
  const rendered = await render(spec);
  if (!existsSync(CACHE)) rmSync(ROOT, { recursive: true, force: true });
  mkdirSync(CACHE, { recursive: true });
  rendered.channels.forEach((channel, index) => writeFileSync(`${path}.${index}.f32`, channel));
  // The description comes last and is moved into place: no reader meets half an attempt.
  const aside = `${path}.${process.pid}`;
  writeFileSync(aside, JSON.stringify({ channels: rendered.channels.length, truth: rendered.truth }));
  renameSync(aside, `${path}.json`);
  return rendered;
}

function readIfThere(path: string): Rendered | null {
  try {
    const { channels, truth } = JSON.parse(readFileSync(`${path}.json`, 'utf8')) as {
      channels: number;
      truth: Truth;
    };
    const read = (index: number): Float32Array => {
      const bytes = readFileSync(`${path}.${index}.f32`);
      return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
    };
    return {
      channels: Array.from({ length: channels }, (_, index) => read(index)),
      sampleRateHz: SAMPLE_RATE_HZ,
      truth,
    };
  } catch {
    return null;
  }
}
