import type { AudioFacts } from './audio/index.ts';
import type { HumFacts } from './hum.ts';
import { tellNotice } from '../notices/index.ts';
import type { SoundNotice } from '../notices/index.ts';
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

/** What kind of finding a notice is. */
const KIND_OF: Readonly<Record<SoundNotice['notice'], AudioFinding['kind']>> = {
  'too-short': 'too-short',
  silence: 'silence',
  'bad-samples': 'processing',
  'too-quiet': 'too-quiet',
  clipping: 'clipping',
  'dead-channel': 'channels',
  'channels-cancel': 'channels',
  noise: 'noise',
  hum: 'hum',
  speech: 'speech',
  'not-a-piano': 'not-a-piano',
};

/** A notice about the sound → the finding, its sentence in plain English for readers of the JSON. */
export function findingOf(notice: SoundNotice): AudioFinding {
  return { kind: KIND_OF[notice.notice], detail: tellNotice(notice), notice };
}

/** What was measured of the sound → what its owner should know, the gravest first. */
export function describeSound(facts: SoundFacts): AudioFinding[] {
  const { audio, hum, notes } = facts;
  const { channels, rail } = audio;
  const bounds = FINDING_BOUNDS;
  const findings: AudioFinding[] = [];
  const say = (notice: SoundNotice): void => void findings.push(findingOf(notice));
  const peakDb = 20 * Math.log10(Math.max(rail.peak, 1e-9));
  const silent = rail.peak < bounds.silencePeak;

  if (audio.durationSec < bounds.shortSec) say({ notice: 'too-short', lastsSec: audio.durationSec });
  if (silent) say({ notice: 'silence' });
  if (audio.badSamples > 0) say({ notice: 'bad-samples', samples: audio.badSamples });
  if (!silent && peakDb < bounds.quietPeakDb) say({ notice: 'too-quiet', peakDb });
  if (rail.clippedRuns >= bounds.clippedRuns && rail.clippedShare > bounds.clippedShare)
    say({ notice: 'clipping', times: rail.clippedRuns });
  if (channels.channels > 1 && channels.weakestDb < bounds.deadChannelDb && !silent)
    say({ notice: 'dead-channel', channels: channels.channels });
  if (channels.channels > 1 && channels.sumDb < bounds.cancelDb && !silent)
    say({ notice: 'channels-cancel', lostDb: -channels.sumDb });
  const aboveDb = facts.loudDb - facts.quietDb;
  if (!silent && notes.length > 0 && aboveDb < bounds.noiseDb) say({ notice: 'noise', aboveDb });
  if (hum !== null && !silent && hum.levelDb > facts.loudDb - bounds.humBelowDb)
    say({ notice: 'hum', mainsHz: hum.mainsHz, belowDb: facts.loudDb - hum.levelDb });
  if (facts.glides >= bounds.glides) say({ notice: 'speech', places: facts.glides });
  if (!silent && notes.length === 0 && audio.durationSec >= bounds.shortSec) say({ notice: 'not-a-piano' });
  return findings;
}
