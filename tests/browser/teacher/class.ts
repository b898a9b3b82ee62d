import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { encodeWav } from '../../../src/io/exchange/index.ts';
import { render, type RenderSpec } from '../../support/render.ts';

/** What an invented class handed in, by the path in the teacher's folder; on the development piano. */
const RECORDINGS: Readonly<Record<string, Omit<RenderSpec, 'piano'>>> = {
  'Mara/2026-11-18 arpeggio.wav': {
    seed: 41,
    exercise: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
    student: { bpm: 72, jitterMs: 16, lateCrossing: { ms: 110, kind: 'thumb-under', direction: 'up' } },
  },
  'Mara/2026-11-25 arpeggio.wav': {
    seed: 42,
    exercise: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
    student: { bpm: 80, jitterMs: 8, lateCrossing: { ms: 110, kind: 'thumb-under', direction: 'up' } },
  },
  'Mara/2026-11-25 chords.wav': {
    seed: 43,
    exercise: { key: 'E major', form: 'progression', hands: 'right', octaves: 1 },
    student: { bpm: 60, chordSpreadMs: 30 },
  },
  // Read so, one of two keys a semitone apart was played, and nothing tells which.
  'Jonas/2026-11-24 scale.wav': {
    seed: 44,
    exercise: { key: 'F major', form: 'scale', hands: 'right', octaves: 2 },
    home: { tuningCents: 20.5, scatterCents: 1 },
  },
  'Jonas/2026-11-24 chords.wav': {
    seed: 45,
    exercise: { key: 'G major', form: 'progression', hands: 'together', octaves: 1 },
    student: { bpm: 60, stopAfter: 0.6 },
  },
  'Jonas/2026-11-24 warming up.wav': {
    seed: 46,
    exercise: { key: 'C major', form: 'scale', hands: 'right', octaves: 1 },
    student: { stopAfter: 0.45, mistakes: { wrong: 2, missed: 1, slips: 0, repeats: 1, restarts: 0 } },
  },
};

/** Writes the recordings of the class into a folder of their own, with a silent one and what else lies in such folders → its path. */
export async function classFolder(): Promise<string> {
  const folder = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'Week 48');
  const put = (path: string, bytes: Uint8Array | string): void => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  };
  const putSound = (path: string, channels: readonly Float32Array[], sampleRateHz: number): void =>
    put(path, new Uint8Array(encodeWav({ channels, sampleRateHz })));
  for (const [path, spec] of Object.entries(RECORDINGS)) {
    const { channels, sampleRateHz } = await render({ piano: 'dev', ...spec });
    putSound(path, channels, sampleRateHz);
  }
  putSound('Lena/from far away.wav', [new Float32Array(44_100 * 4)], 44_100);
  put('Mara/notes.txt', 'Dear teacher');
  put('sheet.pdf', '%PDF-1.7');
  put('Thumbs.db', 'x');
  return folder;
}
