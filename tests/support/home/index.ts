import { filtered } from '../biquad.ts';
import { convolver } from '../fft.ts';
import type { Random } from '../random.ts';
import type { HomeKnobs } from './knobs.ts';
import { levelControlled, phoneSections } from './microphone.ts';
import { noiseOf } from './noise.ts';
import { roomResponse } from './room.ts';

/** One microphone at its place in the home. */
export interface Microphone {
  /** sound of the piano → what arrives here through room and microphone, before noise and level control */
  hear(dry: Float64Array): Float64Array;
  /** the same with the home's noises so far below the playing, and level control */
  record(dry: Float64Array, playingSec: { readonly from: number; readonly to: number }): Float64Array;
}

/** `random` places the microphone: another source is another place in the room, with its own noise. */
export function placeMicrophone(home: HomeKnobs, sampleRateHz: number, random: Random): Microphone {
  const response = home.room ? roomResponse(home.room, sampleRateHz, random.fork('room')) : null;
  const sections = home.phone ? phoneSections(sampleRateHz) : [];
  /** the room as far as it lasts within a sound of so many samples */
  const rooms = new Map<number, (dry: Float64Array) => Float64Array>();
  const inRoom = (dry: Float64Array): Float64Array => {
    if (response === null) return dry;
    const { length } = response.subarray(0, dry.length);
    const room = rooms.get(length) ?? convolver(response.subarray(0, length));
    rooms.set(length, room);
    return room(dry);
  };
  return {
    hear: (dry) => filtered(inRoom(dry), sections),
    record: (dry, { from, to }) => {
      const wet = inRoom(dry);
      const mixed = wet.slice();
      const playingPower = meanPower(wet.subarray(from * sampleRateHz, to * sampleRateHz));
      for (const { kind, belowDb } of home.noises) {
        const noise = noiseOf(kind, mixed.length, sampleRateHz, random.fork(kind), home.metronomeBpm);
        const scale = Math.sqrt((playingPower * 10 ** (-belowDb / 10)) / meanPower(noise));
        for (let index = 0; index < mixed.length; index++)
          mixed[index] = mixed[index]! + scale * noise[index]!;
      }
      const heard = filtered(mixed, sections);
      return home.levelControl ? levelControlled(heard, sampleRateHz) : heard;
    },
  };
}

function meanPower(signal: Float64Array): number {
  return signal.reduce((sum, value) => sum + value * value, 0) / Math.max(signal.length, 1) + 1e-20;
}
