import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createAnalyst } from '../../../src/io/analysis/index.ts';
import type { AnalysisReply, AnalysisRequest } from '../../../src/io/analysis/messages.ts';

/** Stands in for the browser's Worker: keeps what it is asked, answers when the test says so. */
class FakeWorker extends EventTarget {
  static all: FakeWorker[] = [];
  readonly asked: AnalysisRequest[] = [];
  ended = false;

  constructor() {
    super();
    FakeWorker.all.push(this);
  }

  postMessage(request: AnalysisRequest): void {
    this.asked.push(structuredClone(request));
  }

  terminate(): void {
    this.ended = true;
  }

  answer(reply: AnalysisReply): void {
    this.dispatchEvent(new MessageEvent('message', { data: reply }));
  }
}

const audio = { channels: [new Float32Array(8)], sampleRateHz: 48_000 };
const heard = {
  notes: [],
  tuning: { cents: 0, a4Hz: 440, sdCents: 1, strays: [] },
  findings: [],
  passages: [],
  durationSec: 1,
  sampleRateHz: 48_000,
  onsetSdMs: 1,
};
const nothing = { kind: 'no-playing', heard, reason: { notice: 'silence' } } as const;

describe('the analyst', () => {
  beforeEach(() => {
    FakeWorker.all = [];
    vi.stubGlobal('Worker', FakeWorker);
  });
  afterEach(() => void vi.unstubAllGlobals());

  it('gives the worker one recording after the other and each its own answer', async () => {
    const analyst = createAnalyst();
    const first = analyst.analyse(audio, null, {});
    const second = analyst.analyse(audio, null, { targetBpm: 80 });
    const [worker] = FakeWorker.all;
    expect(FakeWorker.all).toHaveLength(1);
    expect(worker!.asked).toHaveLength(1);
    worker!.answer({ id: worker!.asked[0]!.id, kind: 'done', assessment: nothing });
    await expect(first).resolves.toEqual(nothing);
    expect(worker!.asked).toHaveLength(2);
    expect(worker!.asked[1]).toMatchObject({ kind: 'attempt', options: { targetBpm: 80 } });
    worker!.answer({ id: worker!.asked[1]!.id, kind: 'failed', trouble: { trouble: 'file-gone' } });
    await expect(second).rejects.toMatchObject({ trouble: { trouble: 'file-gone' } });
  });

  it('tells the progress of the recording at work, and leaves the sound to its owner', async () => {
    const shares: number[] = [];
    const analyst = createAnalyst();
    const done = analyst.analyse(audio, null, {}, (share) => shares.push(share));
    const [worker] = FakeWorker.all;
    worker!.answer({ id: worker!.asked[0]!.id, kind: 'progress', share: 0.5 });
    worker!.answer({ id: 999, kind: 'progress', share: 0.9 });
    worker!.answer({ id: worker!.asked[0]!.id, kind: 'done', assessment: nothing });
    await done;
    expect(shares).toEqual([0.5]);
    expect(audio.channels[0]).toHaveLength(8);
  });

  it('ends the worker when called off, tells so, and starts a new one for the next recording', async () => {
    const analyst = createAnalyst();
    const called = analyst.analyse(audio, null, {});
    const waiting = analyst.analyse(audio, null, {});
    analyst.cancel();
    await expect(called).rejects.toMatchObject({
      trouble: { trouble: 'analysis-called-off' },
      message: expect.stringMatching(/called off/),
    });
    await expect(waiting).rejects.toMatchObject({ trouble: { trouble: 'analysis-called-off' } });
    expect(FakeWorker.all[0]!.ended).toBe(true);
    const next = analyst.analyse(audio, null, {});
    FakeWorker.all[1]!.answer({ id: FakeWorker.all[1]!.asked[0]!.id, kind: 'done', assessment: nothing });
    await expect(next).resolves.toEqual(nothing);
  });

  it('tells when the worker cannot be loaded', async () => {
    const analyst = createAnalyst();
    const failed = analyst.analyse(audio, null, {});
    FakeWorker.all[0]!.dispatchEvent(new Event('error'));
    await expect(failed).rejects.toThrow(/could not be loaded/);
  });
});
