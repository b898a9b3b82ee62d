import { describe, expect, it } from 'vitest';
import { DECODE_DEFAULTS, DecodeError, decodeFile } from '../../../src/io/decode/index.ts';
import { encodeWav } from '../../../src/io/exchange/index.ts';
import { sample } from './reference.ts';

const bytes = (text: string): ArrayBuffer => Uint8Array.from(text, (letter) => letter.charCodeAt(0)).buffer;

describe('a file that gives no sound is refused with what, where and the way out', () => {
  it.each([
    { name: 'nothing.wav', content: new ArrayBuffer(0), kind: 'empty', message: /empty \(0 bytes\)/ },
    { name: 'noise.wav', content: bytes('la la la '.repeat(500)), kind: 'not-sound', message: /Convert it/ },
    { name: 'byte.mp3', content: bytes('x'), kind: 'not-sound', message: /not a sound file/ },
    {
      name: 'song.mid',
      content: bytes('MThd\0\0\0\x06\0\0\0\x01\0\x60'),
      kind: 'not-sound',
      message: /MIDI.*no sound/,
    },
    { name: 'page.m4a', content: bytes('<!doctype html><title>404'), kind: 'not-sound', message: /web page/ },
    { name: 'all.zip', content: bytes('PK\x03\x04........'), kind: 'not-sound', message: /unpack it/ },
    {
      name: 'old.aif',
      content: bytes('FORM\0\0\0\x20AIFFCOMM'),
      kind: 'unsupported',
      message: /AIFF.*Convert it/,
    },
    {
      name: 'video.webm',
      content: sample('video-without-sound.webm'),
      kind: 'no-sound-track',
      message: /no sound in it/,
    },
    { name: 'lossless.m4a', content: sample('alac-mono.m4a'), kind: 'unsupported', message: /Convert it/ },
    {
      name: 'cut.ogg',
      content: sample('opus-mono.ogg').slice(0, 60),
      kind: 'damaged',
      message: /cut short/,
    },
  ])('$name', async ({ name, content, kind, message }) => {
    const error = await decodeFile(content, name).catch((cause: unknown) => cause);
    expect(error).toBeInstanceOf(DecodeError);
    expect((error as DecodeError).kind).toBe(kind);
    expect((error as DecodeError).message).toMatch(message);
    expect((error as DecodeError).message).toMatch(new RegExp(`^${name}: `));
  });
});

describe('a file is told by its content', () => {
  it.each([
    ['flac-s16-stereo.flac', 'attempt.mp3', 'FLAC'],
    ['mp3-stereo.mp3', 'attempt.wav', 'MP3'],
    ['opus-mono.ogg', 'voice.m4a', 'Ogg'],
    ['wav-s24.wav', 'README', 'WAV'],
  ])('%s called %s', async (file, name, container) => {
    expect((await decodeFile(sample(file), name)).container).toBe(container);
  });

  it('behind an ID3 tag, which players put before anything (ID3v2.4.0 structure, section 3.1)', async () => {
    const tag = [...'ID3'].map((letter) => letter.charCodeAt(0)).concat([4, 0, 0, 0, 0, 1, 2]);
    const flac = new Uint8Array(sample('flac-s16-stereo.flac'));
    const tagged = Uint8Array.from([...tag, ...Array<number>(130).fill(0), ...flac]);
    expect((await decodeFile(tagged.buffer, 'tagged')).container).toBe('FLAC');
  });
});

describe('a file with a part missing', () => {
  it('says how much of a FLAC file could be read', async () => {
    const whole = sample('flac-s24.flac');
    const { channels, remarks } = await decodeFile(whole.slice(0, whole.byteLength / 2), 'cut.flac');
    expect(channels[0]!.length).toBeLessThan(0.35 * 48_000);
    expect(remarks).toEqual([
      expect.stringMatching(/^Part of the file is missing or damaged: 0\.\d s of 0\.\d s/),
    ]);
  });
});

describe('a long file', () => {
  it('is read up to the limit, and the rest is told of', async () => {
    const audio = { channels: [new Float32Array(60_000)], sampleRateHz: 8_000 };
    const { channels, remarks } = await decodeFile(encodeWav(audio), 'long.wav', { maxFrames: 48_000 });
    expect(channels[0]).toHaveLength(48_000);
    expect(remarks).toEqual([
      'It is longer than 0.1 minutes; the rest was left out. Cut it to hear the rest.',
    ]);
  });

  it.each([
    'flac-s16-stereo.flac',
    'vorbis-mono.ogg',
    'opus-mono.ogg',
    'opus-mono.webm',
    'mp3-stereo.mp3',
    'opus-stereo.mp4',
  ])('is left early in every format: %s', async (file) => {
    const { channels, remarks } = await decodeFile(sample(file), file, { maxFrames: 5_000 });
    expect(channels[0]!.length).toBeLessThanOrEqual(5_000);
    expect(channels[0]!.length).toBeGreaterThan(4_500);
    expect(remarks).toHaveLength(1);
  });

  it('fits into memory: half an hour of two channels at 48 kHz is under 700 MB', () => {
    const { maxFrames, maxChannels } = DECODE_DEFAULTS;
    expect(maxFrames / 48_000 / 60).toBe(30);
    expect(maxFrames * maxChannels * Float32Array.BYTES_PER_ELEMENT).toBeLessThan(700e6);
  });

  it('of many channels gives the first two', async () => {
    const audio = {
      channels: [1, 2, 3, 4].map((n) => new Float32Array(100).fill(n / 10)),
      sampleRateHz: 48_000,
    };
    const { channels, remarks } = await decodeFile(encodeWav(audio, { samples: 'float32' }), 'surround.wav');
    expect(channels.map(([first]) => first)).toEqual([0.1, 0.2].map(Math.fround));
    expect(remarks).toEqual(['It has 4 channels; the first 2 were read.']);
  });
});
