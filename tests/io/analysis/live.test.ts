import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Trouble } from '../../../src/io/troubles/index.ts';
import { openLiveListener } from '../../../src/io/analysis/index.ts';
import type { FromLiveListener, ToLiveListener } from '../../../src/io/analysis/messages.ts';

/** Stands in for the browser's Worker: keeps what it is told, answers when the test says so. */
class FakeWorker extends EventTarget {
  static last: FakeWorker;
  readonly told: ToLiveListener[] = [];
  ended = false;

  constructor() {
    super();
    FakeWorker.last = this;
  }

  postMessage(message: ToLiveListener): void {
    this.told.push(structuredClone(message));
  }

  terminate(): void {
    this.ended = true;
  }

  answer(reply: FromLiveListener): void {
    this.dispatchEvent(new MessageEvent('message', { data: reply }));
  }
}

describe('the live ear beside the page', () => {
  beforeEach(() => void vi.stubGlobal('Worker', FakeWorker));
  afterEach(() => void vi.unstubAllGlobals());

  it('is opened with the rate and what is known, gets each block as a copy, and tells its events in order', () => {
    const ear = openLiveListener(48_000, { silenceSec: 3 });
    const seen: string[] = [];
    ear.onEvent((event) => seen.push(event.kind));
    const block = [Float32Array.of(1, 2)];
    ear.push(block);
    block[0]!.fill(9);
    ear.mute({ fromSec: 1, toSec: 2, kind: 'voice' });
    expect(FakeWorker.last.told).toEqual([
      { kind: 'open', sampleRateHz: 48_000, options: { silenceSec: 3 } },
      { kind: 'block', channels: [Float32Array.of(1, 2)] },
      { kind: 'own-sound', sound: { fromSec: 1, toSec: 2, kind: 'voice' } },
    ]);
    FakeWorker.last.answer({
      kind: 'events',
      events: [
        { kind: 'withdrawn', id: 1 },
        { kind: 'started', timeSec: 2, cutSec: 1 },
      ],
    });
    expect(seen).toEqual(['withdrawn', 'started']);
  });

  it('is heard out before it ends', async () => {
    const ear = openLiveListener(48_000);
    const stopped = ear.stop();
    expect(FakeWorker.last.told.at(-1)).toEqual({ kind: 'end' });
    expect(FakeWorker.last.ended).toBe(false);
    FakeWorker.last.answer({ kind: 'ended' });
    await stopped;
    expect(FakeWorker.last.ended).toBe(true);
  });

  it('tells once when it fails, and stop does not wait for it', async () => {
    const ear = openLiveListener(48_000);
    const failures: Trouble[] = [];
    ear.onFailure((trouble) => failures.push(trouble));
    const stopped = ear.stop();
    FakeWorker.last.answer({ kind: 'failed', trouble: { trouble: 'unforeseen', detail: 'no' } });
    FakeWorker.last.dispatchEvent(new Event('error'));
    await stopped;
    expect(failures).toEqual([{ trouble: 'unforeseen', detail: 'no' }]);
    expect(FakeWorker.last.ended).toBe(true);
  });
});
