import type { AudioFacts, HumFacts } from './audio/index.ts';
import type { AudioFinding, PlayedNote } from './types.ts';

/** Everything from which findings are made. */
export interface SoundFacts {
  readonly audio: AudioFacts;
  readonly hum: HumFacts | null;
  /** level of the quietest twentieth and of the loudest tenth of the recording, dB */
  readonly quietDb: number;
  readonly loudDb: number;
  /** places at which a tone glided as voices do */
  readonly glides: number;
  readonly notes: readonly PlayedNote[];
}

/** Bounds at which something is worth saying. Common practice, no source, unless said. */
export const FINDING_BOUNDS = {
  /** full-scale peak below which nothing was recorded */
  silencePeak: 1e-4,
  shortSec: 1,
  /** peaks below this lose soft notes in a phone's own noise */
  quietPeakDb: -36,
  /** share of samples at the rail from which an attack is bent */
  clippedShare: 2e-5,
  clippedRuns: 3,
  /** playing must stand so far above the quietest moments: the standard set of our bench goes down to 25 dB */
  noiseDb: 18,
  /** hum this far below the loud moments no longer matters */
  humBelowDb: 45,
  deadChannelDb: -30,
  cancelDb: -6,
  glides: 3,
} as const;

/** What was measured of the sound → what its owner should know, the gravest first, each one plain sentence. */
export function describeSound(facts: SoundFacts): AudioFinding[] {
  const { audio, hum, notes } = facts;
  const bounds = FINDING_BOUNDS;
  const findings: AudioFinding[] = [];
  const say = (kind: AudioFinding['kind'], detail: string): void => void findings.push({ kind, detail });
  const peakDb = 20 * Math.log10(Math.max(audio.rail.peak, 1e-9));
  const silent = audio.rail.peak < bounds.silencePeak;

  if (audio.durationSec < bounds.shortSec)
    say(
      'too-short',
      `The recording lasts ${audio.durationSec.toFixed(2)} s; record from before the first note to after the last.`,
    );
  if (silent)
    say('silence', 'The recording is silent; check that the right microphone is chosen and not muted.');
  if (audio.badSamples > 0)
    say(
      'processing',
      `${audio.badSamples} samples were no numbers and were taken as silence; decode or record it again.`,
    );
  if (!silent && peakDb < bounds.quietPeakDb)
    say(
      'too-quiet',
      `The loudest moment reaches only ${peakDb.toFixed(0)} dB of full scale; put the microphone nearer or turn its level up.`,
    );
  if (audio.rail.clippedRuns >= bounds.clippedRuns && audio.rail.clippedShare > bounds.clippedShare)
    say(
      'clipping',
      `The sound was cut off ${audio.rail.clippedRuns} times because it was too loud for the microphone; put it further away or turn its level down.`,
    );
  if (audio.channels.channels > 1 && audio.channels.weakestDb < bounds.deadChannelDb && !silent)
    say('channels', `One of the ${audio.channels.channels} channels carries no sound; the other was used.`);
  if (audio.channels.channels > 1 && audio.channels.sumDb < bounds.cancelDb && !silent)
    say(
      'channels',
      `The channels cancel each other (their mean loses ${(-audio.channels.sumDb).toFixed(0)} dB); the stronger one was used alone.`,
    );
  const overDb = facts.loudDb - facts.quietDb;
  if (!silent && notes.length > 0 && overDb < bounds.noiseDb)
    say(
      'noise',
      `The playing stands only ${overDb.toFixed(0)} dB above the noise of the room; close the window or put the microphone nearer.`,
    );
  if (hum !== null && !silent && hum.levelDb > facts.loudDb - bounds.humBelowDb)
    say(
      'hum',
      `Mains hum at ${hum.mainsHz} Hz lies ${(facts.loudDb - hum.levelDb).toFixed(0)} dB below the playing; move the device away from chargers and cables.`,
    );
  if (facts.glides >= bounds.glides)
    say('speech', `A voice seems to sound at ${facts.glides} places; notes under it may be missed.`);
  if (!silent && notes.length === 0 && audio.durationSec >= bounds.shortSec)
    say(
      'not-a-piano',
      'There is sound, but nothing in it behaves like a struck piano string; check that the piano was recorded.',
    );
  return findings;
}
