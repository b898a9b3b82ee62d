import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import type { Estimate, Report } from '../../../src/engine/index.ts';
import { decodeFile } from '../../../src/io/decode/index.ts';
import { fixturePath } from '../sounds.ts';
import { sharedBrowser, visit, type Visit } from '../visit.ts';

let browser: Browser;
let there: Visit;
beforeAll(async () => {
  browser = await sharedBrowser();
  there = await visit(browser, `${inject('workshopUrl')}tests/browser/review/door.html`);
  await there.page.waitForFunction(() => 'door' in window, undefined, { timeout: 60_000 });
});

/** A fixture → its file after it was packed by the browser, and what is heard before and after. */
async function packed(name: string) {
  const wav = readFileSync(fixturePath(name)).toString('base64');
  return there.page.evaluate<{
    mime: string;
    base64: string;
    wavBytes: number;
    before: Report;
    after: Report;
    encodeMs: number;
  }>(`(async () => {
    const { assess, decodeFile, encodeSound } = window.door;
    const bytes = Uint8Array.from(atob('${wav}'), (letter) => letter.charCodeAt(0));
    const sound = await decodeFile(bytes.buffer, 'before.wav');
    const startMs = performance.now();
    const file = await encodeSound(sound);
    const encodeMs = performance.now() - startMs;
    const again = await decodeFile(file.bytes.slice().buffer, 'after.webm');
    const reportOf = (heard) => { const told = assess(heard, null); return told.kind === 'report' ? told.report : told; };
    return {
      mime: file.mime,
      base64: btoa(Array.from(file.bytes, (byte) => String.fromCharCode(byte)).join('')),
      wavBytes: bytes.length,
      before: reportOf(sound),
      after: reportOf(again),
      encodeMs,
    };
  })()`);
}

describe('sound that travels in a review', () => {
  it.each(['clean-scale', 'late-thumb', 'progression', 'missed-and-repeated'])(
    'is heard afterwards as it was before: %s',
    async (name) => {
      const { mime, base64, wavBytes, before, after, encodeMs } = await packed(name);
      expect(mime).toBe('audio/webm');
      const bytes = Buffer.from(base64, 'base64');
      // Notes of one chord are struck in one instant: which comes first is chance.
      const inOrder = ({ notes }: Report) =>
        notes.toSorted((a, b) => (a.step ?? -1) - (b.step ?? -1) || a.midi - b.midi);
      const told = (report: Report) => ({
        notes: inOrder(report).map(({ midi, verdict, step }) => [midi, verdict, step]),
        missed: report.missed.map(({ midi, step }) => [midi, step]),
        unsure: report.unsure.map(({ midi, step }) => [midi, step]),
      });
      const evenness = [before, after].map((report) => report.measures.evennessPercent as Estimate);
      const movedMs = inOrder(before).map((note, at) => 1000 * (inOrder(after)[at]!.timeSec - note.timeSec));
      const middle = movedMs.toSorted((a, b) => a - b)[Math.floor(movedMs.length / 2)]!;
      const apartMs = Math.max(...movedMs.map((moved) => Math.abs(moved - middle)));
      console.info(
        `${name}: ${(wavBytes / 1024).toFixed(0)} KB → ${(bytes.length / 1024).toFixed(0)} KB in ${encodeMs.toFixed(0)} ms; ` +
          `evenness ${evenness[0]!.value.toFixed(2)} → ${evenness[1]!.value.toFixed(2)} % (± ${evenness[0]!.plusMinus?.toFixed(2)}); ` +
          `all onsets ${middle.toFixed(2)} ms, one against another at most ${apartMs.toFixed(2)} ms`,
      );
      expect(told(after)).toEqual(told(before));
      expect(Math.abs(evenness[1]!.value - evenness[0]!.value)).toBeLessThanOrEqual(evenness[0]!.plusMinus!);
      expect(Math.abs(middle)).toBeLessThan(2);
      expect(bytes.length).toBeLessThan(wavBytes / 5);
      // And it is read by the command as well.
      const { container, remarks } = await decodeFile(Uint8Array.from(bytes).buffer, 'sound.webm');
      expect({ container, remarks }).toEqual({ container: 'WebM', remarks: [] });
    },
  );

  it('goes into a review and comes out of it as it was', async () => {
    const same = await there.page.evaluate<boolean>(`(async () => {
      const { encodeSound, readReview, writeReview, madeUp } = window.door;
      const sound = await encodeSound({
        channels: [Float32Array.from({ length: 44100 }, (_, i) => 0.2 * Math.sin(i / 20))],
        sampleRateHz: 44100,
      }, 32000);
      const review = madeUp();
      const [first, second] = review.attempts;
      const [remark, ...rest] = first.remarks;
      const given = { ...review, attempts: [{ ...first, sound, remarks: [{ ...remark, voice: sound }, ...rest] }, second] };
      const [read] = (await readReview(await writeReview(given))).attempts;
      const alike = (file) => file.mime === sound.mime && file.bytes.join() === sound.bytes.join();
      return sound.mime === 'audio/webm' && alike(read.sound) && alike(read.remarks[0].voice);
    })()`);
    expect(same).toBe(true);
  });

  it('is a WAV where the browser has no encoder', async () => {
    const { mime, seconds } = await there.page.evaluate<{ mime: string; seconds: number }>(`(async () => {
      const { decodeFile, encodeSound } = window.door;
      const kept = window.AudioEncoder;
      delete window.AudioEncoder;
      try {
        const sound = { channels: [new Float32Array(8000), new Float32Array(8000).fill(0.1)], sampleRateHz: 8000 };
        const file = await encodeSound(sound);
        const { channels, sampleRateHz } = await decodeFile(file.bytes.slice().buffer, 'x.wav');
        return { mime: file.mime, seconds: channels[0].length / sampleRateHz };
      } finally { window.AudioEncoder = kept; }
    })()`);
    expect({ mime, seconds }).toEqual({ mime: 'audio/wav', seconds: 1 });
  });
});
