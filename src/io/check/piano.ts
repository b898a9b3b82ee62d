import * as v from 'valibot';
import { FORM, MIDI } from '../../engine/index.ts';
import type { HandPlayed, HandsAlone, PianoProfile } from '../../engine/index.ts';

/** 192 levels, a byte each, in base64 */
const SEEN = /^[A-Za-z0-9+/]{256}$/;

/** What was kept, whatever it is → a piano; null where its shape is not one's. Looks that cannot be read are left out. */
export function readPiano(kept: unknown): PianoProfile | null {
  if (!isRecord(kept) || kept['version'] !== 1 || !isLearnt(kept['tuningCents'])) return null;
  const { tuningCents, keys, settledCents } = kept;
  if (!isRecord(keys)) return null;
  const sound = Object.entries(keys).filter(
    ([midi, key]) =>
      Number(midi) >= 21 &&
      Number(midi) <= 108 &&
      isRecord(key) &&
      isLearnt(key['levelDb']) &&
      [key['cents'], key['logStiffness']].every((figure) => figure === undefined || isLearnt(figure)),
  );
  const alone = isRecord(kept['alone']) ? Object.entries(kept['alone']).filter(isLook) : [];
  return {
    version: 1,
    tuningCents,
    ...(typeof settledCents === 'number' && Number.isFinite(settledCents) && { settledCents }),
    keys: Object.fromEntries(sound) as PianoProfile['keys'],
    ...(alone.length > 0 && { alone: Object.fromEntries(alone) as HandsAlone }),
  };
}

const HAND_PLAYED = v.object({ form: FORM, hand: v.picklist(['left', 'right']), midi: MIDI });

/** What was kept beside a piano → where each hand is known to have played; what cannot be read is left out. */
export function readHandsPlayed(kept: unknown): readonly HandPlayed[] {
  const all = isRecord(kept) ? kept['handsPlayed'] : undefined;
  return Array.isArray(all) ? all.filter((one: unknown) => v.is(HAND_PLAYED, one)) : [];
}

function isLook([name, looks]: readonly [string, unknown]): boolean {
  return (
    /^\d+(,\d+)*>\d+$/.test(name) &&
    Array.isArray(looks) &&
    looks.length > 0 &&
    looks.every(
      (look: unknown) => isRecord(look) && typeof look['seen'] === 'string' && SEEN.test(look['seen']),
    )
  );
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

function isLearnt(value: unknown): value is PianoProfile['tuningCents'] {
  return (
    isRecord(value) &&
    [value['value'], value['plusMinus'], value['count']].every((figure) => Number.isFinite(figure)) &&
    (value['plusMinus'] as number) > 0
  );
}
