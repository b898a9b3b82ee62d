/** One note to be sounded. */
export interface Tone {
  readonly timeSec: number;
  /** how long the key is held */
  readonly holdSec: number;
  readonly midi: number;
  /** louder (+) or softer than a middling blow, dB */
  readonly louderDb?: number;
}

/** Highest partial sounded, and how many at most: the ear asks for no more of a reference. */
const HIGHEST_HZ = 9000;
const MOST_PARTIALS = 14;
/** The hammer strikes at an eighth of the string: partials that rest there are missing (common practice, no source). */
const STRIKE_PLACE = 1 / 8;
/** Each partial is so much weaker than the one below it, as a power of its number; by ear. */
const FALL = 1.3;
const ATTACK_SEC = 0.004;
/** The damper: to a thousandth in some five of these (dampers take 50–300 ms; engine/listen/README.md). */
const DAMPER_SEC = 0.03;
const RELEASE_SEC = 0.2;

/** How long a string rings by itself, to 1/e of its first sound; bass strings longer. By ear. */
const ringSec = (midi: number): number => 2.2 * 2 ** (-(midi - 48) / 24);

/** f(m) = 440 · 2^((m−69)/12) Hz (ISO 16; MIDI note 69). */
const fundamentalHz = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);

/** Stiffness along the keyboard (Rigaud, David & Daudet 2013; coefficients from memory). */
const stiffness = (midi: number): number => Math.exp(0.0926 * midi - 13.64) + Math.exp(-0.0847 * midi - 5.82);

/** Adds a struck string's tone to `into`: decaying partials of a stiff string, damped when the key is let go. */
export function addTone(into: Float32Array, tone: Tone, sampleRateHz: number): void {
  const from = Math.round(tone.timeSec * sampleRateHz);
  const length = Math.min(Math.ceil((tone.holdSec + RELEASE_SEC) * sampleRateHz), into.length - from);
  const wave = partialsOf(tone.midi, length, sampleRateHz);
  const gain = 10 ** ((tone.louderDb ?? 0) / 20);
  const attack = Math.round(ATTACK_SEC * sampleRateHz);
  const held = Math.round(tone.holdSec * sampleRateHz);
  for (let i = 0; i < length; i++) {
    const rise = i < attack ? 0.5 - 0.5 * Math.cos((Math.PI * i) / attack) : 1;
    const damped = i < held ? 1 : Math.exp(-(i - held) / (DAMPER_SEC * sampleRateHz));
    into[from + i]! += gain * wave[i]! * rise * damped;
  }
}

function partialsOf(midi: number, length: number, sampleRateHz: number): Float32Array {
  const wave = new Float32Array(length);
  const f0 = fundamentalHz(midi);
  const b = stiffness(midi);
  // The string is tuned by what is heard first, so the first partial lies on the note.
  const tuned = Math.sqrt(1 + b);
  let power = 0;
  for (let n = 1; n <= MOST_PARTIALS; n++) {
    const freqHz = (n * f0 * Math.sqrt(1 + b * n * n)) / tuned;
    if (freqHz > Math.min(HIGHEST_HZ, 0.45 * sampleRateHz)) break;
    const level = Math.abs(Math.sin(n * Math.PI * STRIKE_PLACE)) / n ** FALL;
    power += level * level;
    addPartial(wave, freqHz, level, ringSec(midi) / (1 + 0.35 * (n - 1)), sampleRateHz);
  }
  const scale = 1 / Math.sqrt(power);
  for (let i = 0; i < length; i++) wave[i]! *= scale;
  return wave;
}

/** A decaying sine by recurrence: each sample from the two before it. */
function addPartial(
  wave: Float32Array,
  freqHz: number,
  level: number,
  decaySec: number,
  rateHz: number,
): void {
  const decay = Math.exp(-1 / (decaySec * rateHz));
  const angle = (2 * Math.PI * freqHz) / rateHz;
  const turn = 2 * decay * Math.cos(angle);
  const fall = decay * decay;
  let before = 0;
  let now = level * decay * Math.sin(angle);
  for (let i = 1; i < wave.length; i++) {
    wave[i]! += now;
    const next = turn * now - fall * before;
    before = now;
    now = next;
  }
}
