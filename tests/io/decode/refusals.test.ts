import { describe, expect, it } from 'vitest';
import { DECODE_DEFAULTS, DecodeError, decodeFile } from '../../../src/io/decode/index.ts';
import { encodeWav } from '../../../src/io/exchange/index.ts';
import { LENGTH_SEC, fit, sample } from './reference.ts';

const bytes = (text: string): ArrayBuffer => Uint8Array.from(text, (letter) => letter.charCodeAt(0)).buffer;

/** An MP4 sample up to the box that says where its sound lies, which is its last. */
function withoutItsEnd(file: string): ArrayBuffer {
  const whole = sample(file);
  const at = Buffer.from(whole).indexOf('moov');
  expect(at).toBeGreaterThan(whole.byteLength / 2);
  return whole.slice(0, at - 4);
}

/** A sample with another name of four letters for its sound. */
function renamed(file: string, from: string, to: string): ArrayBuffer {
  const bytes = Buffer.from(sample(file));
  bytes.write(to, bytes.indexOf(from, bytes.indexOf('stsd')), 'latin1');
  return Uint8Array.from(bytes).buffer;
}

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
      kind: 'damaged',
      message: /AIFF header is missing/,
    },
    {
      name: 'lossless.caf',
      content: sample('caf-alac-stereo.caf'),
      kind: 'unsupported',
      message: /Core Audio file with Apple Lossless sound\. Convert it/,
    },
    {
      name: 'song.wma',
      content: sample('windows-media.wma'),
      kind: 'unsupported',
      message: /Windows Media sound\. Convert it/,
    },
    {
      name: 'voice.amr',
      content: bytes('#!AMR\n'),
      kind: 'unsupported',
      message: /AMR telephone sound\. Convert it/,
    },
    { name: 'old.avi', content: bytes('RIFF\0\0\0\0AVI LIST'), kind: 'unsupported', message: /AVI video/ },
    {
      name: 'song.rmi',
      content: bytes('RIFF\0\0\0\0RMIDdata'),
      kind: 'not-sound',
      message: /MIDI.*no sound/,
    },
    { name: 'all.rar', content: bytes('Rar!\x1a\x07\x01\0'), kind: 'not-sound', message: /pack a zip/ },
    {
      name: 'broken-off.m4a',
      content: withoutItsEnd('aac-mono.m4a'),
      kind: 'damaged',
      message: /cut off on its way.*Send it again/,
    },
    {
      name: 'bought.m4a',
      content: renamed('alac-mono.m4a', 'alac', 'drms'),
      kind: 'unsupported',
      message: /locked.*Record it yourself/,
    },
    {
      name: 'phone.3gp',
      content: renamed('alac-mono.m4a', 'alac', 'samr'),
      kind: 'unsupported',
      message: /AMR sound, which cannot be decoded/,
    },
    {
      name: 'video.webm',
      content: sample('video-without-sound.webm'),
      kind: 'no-sound-track',
      message: /no sound in it/,
    },
    {
      name: 'lossless.m4a',
      content: sample('alac-mono.m4a'),
      kind: 'unsupported',
      message: /Apple Lossless.*Convert it/,
    },
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
      {
        notice: 'partly-read',
        readSec: channels[0]!.length / 48_000,
        wholeSec: expect.closeTo(0.7, 0) as number,
      },
    ]);
  });
});

describe('a long file', () => {
  it('is read up to the limit, and the rest is told of', async () => {
    const audio = { channels: [new Float32Array(60_000)], sampleRateHz: 8_000 };
    const { channels, remarks } = await decodeFile(encodeWav(audio), 'long.wav', { maxFrames: 48_000 });
    expect(channels[0]).toHaveLength(48_000);
    expect(remarks).toEqual([{ notice: 'cut-at', minutes: 0.1 }]);
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

  it('of many channels gives the one that sounds, whichever it is', async () => {
    const { channels, sampleRateHz, remarks } = await decodeFile(
      sample('wav-eight-channels.wav'),
      'studio.wav',
    );
    expect(channels).toHaveLength(1);
    expect(remarks).toEqual([{ notice: 'one-channel-taken', channels: 8 }]);
    const found = fit(channels[0]!, 0, sampleRateHz, 5);
    expect(found.lag).toBe(0);
    expect(Math.abs(found.gainDb)).toBeLessThan(0.5);
    expect(channels[0]!.length / sampleRateHz).toBeCloseTo(LENGTH_SEC, 6);
  });
});
