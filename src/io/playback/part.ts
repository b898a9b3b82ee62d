import { retime } from './retime.ts';
import { timeMap, type Attack, type TimeMap } from './timemap.ts';

export interface Sound {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
}

/** What will be heard, and which place of the recording sounds when. */
export interface Part {
  readonly channels: readonly Float32Array<ArrayBuffer>[];
  /** recording ↔ seconds from the start of the part */
  readonly map: TimeMap;
}

/** Rise and fall at the ends of a stretch, so that cutting into a sounding note does not click, seconds. */
const FADE_SEC = 0.005;

/** A stretch of a recording at a speed and with its attacks where they are wanted, faded at its ends; null where it is empty. */
export function cutPart(
  { channels, sampleRateHz }: Sound,
  fromSec: number,
  toSec: number,
  speed: number,
  attacks: readonly Attack[],
): Part | null {
  const from = Math.round(fromSec * sampleRateHz);
  const to = Math.round(toSec * sampleRateHz);
  if (channels.length === 0 || to <= from) return null;
  const moved = attacks.filter((attack) => attack.fromSec > fromSec && attack.lastSec < toSec);
  const { toHeard } = timeMap(moved);
  const startSec = toHeard(fromSec);
  const heardSec = (recordedSec: number): number => (toHeard(recordedSec) - startSec) / speed;
  const part = retime(
    channels.map((channel) => channel.slice(from, to)),
    sampleRateHz,
    {
      attacks: moved.map((attack) => ({
        fromSec: attack.fromSec - fromSec,
        lastSec: attack.lastSec - fromSec,
        toSec: heardSec(attack.fromSec),
      })),
      lengthSec: heardSec(toSec),
      speed,
    },
  );
  const fade = Math.min(Math.round(FADE_SEC * sampleRateHz), Math.floor(part[0]!.length / 2));
  for (const channel of part) {
    for (let i = 0; i < fade; i++) {
      channel[i]! *= i / fade;
      channel[channel.length - 1 - i]! *= i / fade;
    }
  }
  const places = [fromSec, ...moved.map((attack) => attack.fromSec), toSec];
  return {
    channels: part,
    map: timeMap(places.map((place) => ({ fromSec: place, toSec: heardSec(place) }))),
  };
}
