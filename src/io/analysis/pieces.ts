import { assessHeard, createListener } from '../../engine/index.ts';
import type {
  AssessOptions,
  Assessment,
  AudioInput,
  ExerciseChoice,
  Heard,
  KeptSound,
  ListenOptions,
} from '../../engine/index.ts';

/** Sound listened to between two reports of progress, seconds. */
const PIECE_SEC = 2;

/** Share of the work that is done when all sound has been pushed; what follows takes the rest. */
const LISTENING_SHARE = 0.95;

/**
 * A recording → what was heard in it, as `listenAndKeep` has it, but piece by piece: progress (0..1) is told on the way, and
 * other work, such as a signal to stop, gets its turn between the pieces.
 */
export async function listenInPieces(
  audio: AudioInput,
  onProgress: (share: number) => void,
  options: Partial<ListenOptions> = {},
): Promise<{ readonly heard: Heard; readonly sound: KeptSound }> {
  const { channels, sampleRateHz } = audio;
  const frames = channels[0]?.length ?? 0;
  const listener = createListener({ sampleRateHz, channels: channels.length }, options);
  const step = Math.max(1, Math.round(PIECE_SEC * sampleRateHz));
  for (let from = 0; from < frames; from += step) {
    listener.push(channels.map((channel) => channel.subarray(from, from + step)));
    onProgress((LISTENING_SHARE * Math.min(from + step, frames)) / frames);
    await nextTurn();
  }
  const heard = listener.finish();
  return { heard, sound: listener.sound() };
}

/** The engine's whole path, as `assess` has it, piece by piece. */
export async function analyseInPieces(
  audio: AudioInput,
  choice: ExerciseChoice | null,
  options: Partial<AssessOptions>,
  onProgress: (share: number) => void,
): Promise<Assessment> {
  const { heard, sound } = await listenInPieces(audio, onProgress, options);
  const assessment = assessHeard(heard, choice, options, sound);
  onProgress(1);
  return assessment;
}

/** Lets events in: a resolved promise alone would not, and a timer waits for 1 ms in Node, in browsers for 4 (HTML standard, timers). */
function nextTurn(): Promise<void> {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
