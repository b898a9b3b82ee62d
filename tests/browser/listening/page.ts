/** Microphone, live ear and analysis as the page uses them, for the tests beside this file. */
import type { Assessment, LiveEvent, Notice } from '../../../src/engine/index.ts';
import { createAnalyst, openLiveListener } from '../../../src/io/analysis/index.ts';
import { openMicrophone } from '../../../src/io/microphone/index.ts';
import type { LiveMicrophone } from '../../../src/io/microphone/index.ts';
import { troubleOf } from '../../../src/io/troubles/index.ts';

/** What came of listening for a while. */
export interface Heard {
  readonly events: readonly LiveEvent[];
  /** notes that were told before they were certain */
  readonly early: readonly number[];
  readonly attempts: readonly {
    readonly assessment: Assessment;
    /** as it was cut from the stream */
    readonly sound: readonly number[];
  }[];
  readonly troubles: readonly { readonly kind: string; readonly lostSec: number }[];
  /** blocks that did not begin where the one before ended */
  readonly broken: number;
  readonly processing: readonly Notice[];
}

/** What ends the listening, whichever comes first; the device's going away ends it too. Seconds are of sound. */
export interface Until {
  readonly attempts: number;
  readonly seconds: number;
  /** the device is unplugged then */
  readonly loseAfterSec: number | null;
}

async function listenUntil(until: Until): Promise<Heard> {
  const microphone = await openMicrophone();
  const analyst = createAnalyst();
  const ear = openLiveListener(microphone.sampleRateHz);
  const events: LiveEvent[] = [];
  const early: number[] = [];
  const attempts: Promise<Heard['attempts'][number]>[] = [];
  const troubles: Heard['troubles'][number][] = [];
  let next = 0;
  let broken = 0;
  let lost = false;
  let over = (): void => undefined;
  const done = new Promise<void>((resolve) => (over = resolve));
  microphone.onTrouble((trouble) => {
    troubles.push(trouble);
    if (trouble.kind === 'gone') over();
  });
  microphone.onBlock((channels, firstSample) => {
    if (firstSample !== next) broken += 1;
    next = firstSample + channels[0]!.length;
    ear.push(channels);
    const heardSec = next / microphone.sampleRateHz;
    if (heardSec >= until.seconds) over();
    if (!lost && until.loseAfterSec !== null && heardSec >= until.loseAfterSec) {
      lost = true;
      loseDevice();
    }
  });
  ear.onEvent((event) => {
    events.push(event);
    if (event.kind === 'started') microphone.keepFrom(event.cutSec);
    if (event.kind === 'ended') {
      attempts.push(analyse(microphone, analyst, event));
      if (attempts.length >= until.attempts) over();
    }
    if (event.kind === 'struck' && !event.final) early.push(event.id);
  });
  await done;
  await ear.stop();
  const processing = microphone.processing();
  const assessed = await Promise.all(attempts);
  analyst.close();
  microphone.close();
  return {
    events,
    early,
    attempts: assessed,
    troubles,
    broken,
    processing,
  };
}

async function analyse(
  microphone: LiveMicrophone,
  analyst: ReturnType<typeof createAnalyst>,
  { startSec, endSec }: { readonly startSec: number; readonly endSec: number },
): Promise<Heard['attempts'][number]> {
  const sound = microphone.take(startSec, endSec);
  microphone.keepFrom(null);
  const assessment = await analyst.analyse(sound, null, {});
  return { assessment, sound: Array.from(sound.channels[0]!) };
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
  listenUntil,
  open: () =>
    openMicrophone().then(
      () => 'opened',
      (error: unknown) => troubleOf(error).trouble,
    ),
};
declare global {
  interface Window {
    listening: typeof listening;
  }
}
window.listening = listening;
