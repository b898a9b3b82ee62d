/** Microphone, live ear and analysis as the page uses them, for the tests beside this file. */
import type { Assessment, LiveEvent } from '../../../src/engine/index.ts';
import { createAnalyst, openLiveEar } from '../../../src/io/analysis/index.ts';
import { openMicrophone } from '../../../src/io/microphone/index.ts';
import type { LiveMicrophone } from '../../../src/io/microphone/index.ts';

/** What came of listening for a while. */
export interface Heard {
  readonly events: readonly LiveEvent[];
  /** from the arrival of a note's own sample at the page to the frame in which it could be drawn first, ms */
  readonly drawnMs: readonly { readonly id: number; readonly timeSec: number; readonly ms: number }[];
  readonly attempts: readonly {
    readonly assessment: Assessment;
    /** as it was cut from the stream */
    readonly sound: readonly number[];
    /** from the end being told to the assessment, ms */
    readonly verdictMs: number;
  }[];
  readonly troubles: readonly { readonly kind: string; readonly lostSec: number }[];
  /** blocks that did not begin where the one before ended */
  readonly broken: number;
  readonly samples: number;
  readonly seconds: number;
  readonly sampleRateHz: number;
  readonly processing: readonly string[];
}

async function listenFor(seconds: number, loseAfterSec = Infinity): Promise<Heard> {
  const microphone = await openMicrophone();
  const analyst = createAnalyst();
  const ear = openLiveEar(microphone.sampleRateHz);
  const events: LiveEvent[] = [];
  const drawnMs: Heard['drawnMs'][number][] = [];
  const attempts: Promise<Heard['attempts'][number]>[] = [];
  const troubles: Heard['troubles'][number][] = [];
  let next = 0;
  let broken = 0;
  /** the least lag of the sound behind the page's clock: then its samples had just come */
  let clockMs = Infinity;
  microphone.onTrouble((trouble) => troubles.push(trouble));
  microphone.onBlock((channels, firstSample) => {
    if (firstSample !== next) broken += 1;
    next = firstSample + channels[0]!.length;
    clockMs = Math.min(clockMs, performance.now() - (1000 * next) / microphone.sampleRateHz);
    ear.push(channels);
  });
  ear.onEvent((event) => {
    events.push(event);
    if (event.kind === 'started') microphone.keepFrom(event.cutSec);
    if (event.kind === 'ended') attempts.push(analyse(microphone, analyst, event));
    if (event.kind !== 'struck' || event.final) return;
    const { id, timeSec } = event;
    requestAnimationFrame(() =>
      drawnMs.push({ id, timeSec, ms: performance.now() - clockMs - 1000 * timeSec }),
    );
  });
  const started = performance.now();
  if (loseAfterSec < seconds) setTimeout(() => void loseDevice(), 1000 * loseAfterSec);
  await new Promise((resolve) => setTimeout(resolve, 1000 * seconds));
  const samples = next;
  const tookSec = (performance.now() - started) / 1000;
  await ear.stop();
  const processing = microphone.processing();
  const done = await Promise.all(attempts);
  analyst.close();
  microphone.close();
  return {
    events,
    drawnMs,
    attempts: done,
    troubles,
    broken,
    samples,
    seconds: tookSec,
    sampleRateHz: microphone.sampleRateHz,
    processing,
  };
}

async function analyse(
  microphone: LiveMicrophone,
  analyst: ReturnType<typeof createAnalyst>,
  { startSec, endSec }: { readonly startSec: number; readonly endSec: number },
): Promise<Heard['attempts'][number]> {
  const toldMs = performance.now();
  const sound = microphone.take(startSec, endSec);
  microphone.keepFrom(null);
  const assessment = await analyst.analyse(sound, null, {});
  return {
    assessment,
    sound: Array.from(sound.channels[0]!),
    verdictMs: performance.now() - toldMs,
  };
}

let tracks: readonly MediaStreamTrack[] = [];
const { mediaDevices } = navigator;
const getUserMedia = mediaDevices.getUserMedia.bind(mediaDevices);
mediaDevices.getUserMedia = async (constraints) => {
  const stream = await getUserMedia(constraints);
  tracks = stream.getAudioTracks();
  return stream;
};
/** Unplugs the microphone: no browser lets a page do so, but this is what it then does to the track. */
function loseDevice(): void {
  for (const track of tracks) {
    track.stop();
    track.dispatchEvent(new Event('ended'));
  }
}

const listening = {
  listenFor,
  open: () =>
    openMicrophone().then(
      () => 'opened',
      (error: unknown) => (error as { kind?: string }).kind ?? String(error),
    ),
};
declare global {
  interface Window {
    listening: typeof listening;
  }
}
window.listening = listening;
