import { mkdtempSync, openAsBlob, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessRecording, listenAndKeep } from '../../../src/engine/index.ts';
import { DecodeError, decodeBlocks, decodeFile } from '../../../src/io/decode/index.ts';
import { handOn } from '../../../src/io/decode/worker.ts';
import type { DecodedAudio } from '../../../src/io/decode/index.ts';
import { encodeWav } from '../../../src/io/encode/index.ts';
import type { SoundFile } from '../../../src/io/encode/index.ts';
import { createTeller, LISTENING_SHARE } from '../../../src/io/sorting/progress.ts';
import { sortAndCut, sortSound } from '../../../src/io/sorting/sort-sound.ts';
import { Tape } from '../../../src/io/sorting/tape.ts';
import { weightMb } from '../../../src/io/sorting/weight.ts';

const ROOT = resolve(import.meta.dirname, '../../..');
const bytesOf = (path: string): ArrayBuffer => Uint8Array.from(readFileSync(resolve(ROOT, path))).buffer;
const soundOf = ({ bytes }: SoundFile): Promise<DecodedAudio> => decodeFile(bytes.buffer, 'attempt.wav');
const FIXTURE = 'audio-fixtures/clean-scale/attempt.wav';

describe('sorting a recording', () => {
  it('comes to what the engine comes to on the whole sound, with each attempt cut out', async () => {
    const bytes = bytesOf(FIXTURE);
    const shares: number[] = [];
    const sorted = await sortAndCut(
      (open) => decodeBlocks(bytes, 'attempt.wav', open()),
      {},
      (share) => shares.push(share),
    );
    const audio = await decodeFile(bytes, 'attempt.wav');
    const { heard, sound } = listenAndKeep(audio);
    const expected = assessRecording(heard, sound);
    expect(sorted.durationSec).toBe(heard.durationSec);
    expect(sorted.attempts.map(({ report }) => report)).toEqual(
      expected.map(({ assessment }) => (assessment.kind === 'report' ? assessment.report : null)),
    );
    const without = await sortSound(
      (open) => decodeBlocks(bytes, 'attempt.wav', open()),
      {},
      () => undefined,
    );
    expect(sorted.attempts).toMatchObject(without.attempts);
    expect(without.attempts[0]).not.toHaveProperty('sound');
    const [attempt] = sorted.attempts;
    const cut = await soundOf(attempt!.sound);
    expect(cut.channels[0]!.length / cut.sampleRateHz).toBeCloseTo(
      Math.min(attempt!.endSec, heard.durationSec) - attempt!.startSec,
      3,
    );
    expect(shares.at(-1)).toBe(1);
  });

  it('begins anew where another decoder is tried', async () => {
    const audio = await decodeFile(bytesOf(FIXTURE), 'attempt.wav');
    const once = await sortAndCut(
      async (open) => (handOn(audio, open()), audio),
      {},
      () => undefined,
    );
    const anew = await sortAndCut(
      async (open) => {
        open()([new Float32Array(5000).fill(0.5)], 8000, 0.1);
        handOn(audio, open());
        return audio;
      },
      {},
      () => undefined,
    );
    expect(anew).toEqual(once);
  });

  it('says why where nobody plays, and lets a file that cannot be read be refused', async () => {
    const silence = encodeWav({ channels: [new Float32Array(96_000)], sampleRateHz: 48_000 });
    const nothing = await sortAndCut(
      (open) => decodeBlocks(silence, 'silence.wav', open()),
      {},
      () => undefined,
    );
    expect(nothing.attempts).toEqual([]);
    expect(nothing.reason).toEqual({ notice: 'silence' });
    const letter = new TextEncoder().encode('Dear teacher').buffer;
    await expect(
      sortAndCut(
        (open) => decodeBlocks(letter, 'letter.mp3', open()),
        {},
        () => undefined,
      ),
    ).rejects.toThrow(DecodeError);
  });
});

describe('sound in blocks', () => {
  it.each([
    'wav-s16-stereo.wav',
    'wav-ima-adpcm-stereo.wav',
    'wav-rf64.wav',
    'aiff-s24.aiff',
    'caf-s16-stereo.caf',
    'flac-s24.flac',
    'mp3-stereo.mp3',
    'opus-mono.ogg',
    'opus-stereo.webm',
    'vorbis-mono.ogg',
  ])('is that of the whole file, but for the encoder’s last few: %s', async (name) => {
    const bytes = bytesOf(`tests/io/decode/samples/${name}`);
    const whole = await decodeFile(bytes, name);
    const blocks: number[] = [];
    const shares: number[] = [];
    const facts = await decodeBlocks(new Blob([bytes]), name, (block, rate, share) => {
      expect(rate).toBe(whole.sampleRateHz);
      blocks.push(...block[0]!);
      shares.push(share);
    });
    expect(facts).toMatchObject({ container: whole.container, remarks: whole.remarks });
    const length = whole.channels[0]!.length;
    expect(whole.channels[0]!.findIndex((value, at) => !Object.is(value, blocks[at]))).toBe(-1);
    expect(blocks.length - length).toBeLessThan(whole.sampleRateHz / 10);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});

describe('a long file', () => {
  /** Tells the longest stretch that was asked for at once. */
  class Watched extends Blob {
    longestBytes = 0;
    override slice(from = 0, to = this.size): Blob {
      this.longestBytes = Math.max(this.longestBytes, Math.min(to, this.size) - from);
      return super.slice(from, to);
    }
  }

  it('of plain samples is read as it is wanted, and never held whole', async () => {
    const channels = [new Float32Array(6_000_000).fill(0.25)];
    const file = new Watched([encodeWav({ channels, sampleRateHz: 48_000 })]);
    let frames = 0;
    await decodeBlocks(file, 'long.wav', ([block]) => (frames += block!.length));
    expect(frames).toBe(6_000_000);
    expect(file.longestBytes).toBeLessThan(file.size / 4);
  });

  it('that is gone while it is read is named for that', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
    const path = join(folder, 'gone.wav');
    writeFileSync(path, Buffer.from(bytesOf(FIXTURE)));
    const file = await openAsBlob(path);
    rmSync(folder, { recursive: true });
    const reading = decodeBlocks(file, 'gone.wav', () => undefined);
    await expect(reading).rejects.toThrow(/gone\.wav: It could not be read/);
  });
});

/** The samples of a WAV of one channel in 16 bits. */
const samplesIn = ({ bytes }: SoundFile): Int16Array => new Int16Array(bytes.buffer, 44);

describe('the tape', () => {
  it('gives back any stretch of the louder channel as a WAV of 16 bits, however it was pushed', () => {
    const samples = Float32Array.from({ length: 150_000 }, (_, at) => 0.9 * Math.sin(at / 7));
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 70_000 }), fc.nat(149_000), fc.nat(149_999), (block, a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const tape = new Tape({ sampleRateHz: 1000, channels: 2 });
        for (let at = 0; at < samples.length; at += block) {
          const part = samples.subarray(at, at + block);
          tape.push([part, part.map((value) => value / 2)]);
        }
        tape.finish();
        const { bytes, mime } = tape.cut(from / 1000, to / 1000);
        expect(mime).toBe('audio/wav');
        const written = encodeWav({ channels: [samples.subarray(from, to)], sampleRateHz: 1000 });
        expect(Buffer.compare(bytes, new Uint8Array(written))).toBe(0);
      }),
      { numRuns: 10 },
    );
  });

  it('has nothing outside the recording, and holds what is too loud at full scale', () => {
    const tape = new Tape({ sampleRateHz: 1000, channels: 1 });
    tape.push([new Float32Array(500).fill(2)]);
    tape.finish();
    expect(samplesIn(tape.cut(-1, 9))).toHaveLength(500);
    expect(samplesIn(tape.cut(0.4, 0.5))[0]).toBe(32_767);
    expect(samplesIn(tape.cut(3, 4))).toHaveLength(0);
  });
});

describe('what a file may hold', () => {
  it.each([
    ['a minute of WAV', 'RIFF', 5_300_000, 5, 35],
    ['two hours of WAV, which is read as it is wanted', 'RIFF', 1_270_000_000, 350, 370],
    ['half an hour of speech in Opus', 'OggS', 3_600_000, 350, 370],
    ['two minutes of AAC', '\0\0\0\x18', 1_900_000, 30, 60],
  ])('%s', (_, begin, size, least, most) => {
    const mb = weightMb(
      Uint8Array.from(begin, (letter) => letter.charCodeAt(0)),
      size,
    );
    expect(mb).toBeGreaterThan(least);
    expect(mb).toBeLessThan(most);
  });
});

it('progress is told by the hundredth, and its end always', () => {
  const told: number[] = [];
  const tell = createTeller((share) => told.push(share));
  for (let at = 0; at <= 1000; at++) tell(at / 1000);
  expect(told.length).toBeLessThanOrEqual(102);
  expect(told).toContain(LISTENING_SHARE);
  expect(told.at(-1)).toBe(1);
});
