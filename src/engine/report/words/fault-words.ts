import type { Fault } from './faults.ts';
import type { Scene, Told } from './scene.ts';
import { handWords, practiceAround, say, sayStretch, whereIs } from './scene.ts';
import { inWords, list, sayPlayed, sentenceCase } from './spelling.ts';

/** "F for E", "E missing" */
export function sayFault(scene: Scene, fault: Fault): string {
  const wanted = say(fault.expected);
  if (fault.playedMidi === null) return `${wanted} missing`;
  const played = sayPlayed(scene.exercise.choice.key, fault.playedMidi, fault.expected);
  const off = fault.playedMidi - fault.expected.midi;
  if (Math.abs(off) === 12) return `${wanted} an octave too ${off > 0 ? 'high' : 'low'}`;
  return `${played} for ${wanted}`;
}

/** The same and where. */
export function placed(scene: Scene, fault: Fault): string {
  return `${sayFault(scene, fault)} ${where(scene, fault)}`.trim();
}

/** "going up", and with both hands the hand: "going up (left hand)" */
export function where(scene: Scene, { step, expected }: Fault): string {
  const place = whereIs(scene, step);
  return scene.exercise.choice.hands === 'together' ? `${place} (${expected.hand} hand)` : place;
}

/** Of faults alike in note and kind: how often, of how often the note comes at all: "each time", "both times", "twice", "". */
export function howOften(scene: Scene, alike: readonly Fault[]): string {
  const name = say(alike[0]!.expected);
  const all = scene.alignment.matched.filter((note) => say(note.expected) === name).length;
  if (alike.length === 1) return all === 1 ? '' : whereIs(scene, alike[0]!.step);
  if (alike.length === all) return all === 2 ? 'both times' : 'each time';
  return alike.length === 2 ? 'twice' : `${inWords(alike.length)} times`;
}

/** "G#4" → "G#" */
export function pitchClassName(name: string): string {
  return name.replace(/-?\d+$/, '');
}

/** Faults of the same note, missed by as many semitones. */
export function sameFault(faults: readonly Fault[], like: Fault): readonly Fault[] {
  return faults.filter(
    ({ expected, playedMidi }) =>
      pitchClassName(expected.name) === pitchClassName(like.expected.name) &&
      playedMidi !== null &&
      like.playedMidi !== null &&
      playedMidi - expected.midi === like.playedMidi - like.expected.midi,
  );
}

/** Faults in general: how many, which and where; the next step is round the first of them. */
export function told(scene: Scene, faults: readonly Fault[]): Told {
  const missing = faults.filter((fault) => fault.playedMidi === null).length;
  const wrong = faults.length - missing;
  const kind = missing === 0 ? 'wrong' : wrong === 0 ? 'missing' : 'not right';
  const head = `${sentenceCase(inWords(faults.length))} note${faults.length === 1 ? '' : 's'} ${kind}`;
  const short = (fault: Fault): string =>
    wrong === 0 ? `${say(fault.expected)} ${where(scene, fault)}`.trim() : placed(scene, fault);
  const what = faults.length <= 2 ? list(faults.map(short)) : short(faults[0]!);
  const first = faults[0]!;
  const practice = practiceAround(scene, first.step - 2, first.step + 1, 0.6);
  const stretch = sayStretch(scene, practice.fromStep, practice.toStep);
  const until = first.playedMidi === null ? `${say(first.expected)} sounds every time` : 'it is right';
  return {
    sentence: faults.length <= 2 ? `${head}: ${what}` : `${head}, the first ${what}`,
    half: faults.length === 1 ? placedMissing(scene, first) : sayCount(wrong, missing),
    emphasis: what,
    nextStep: `${handWords(scene.exercise)}, only ${stretch}, at ${practice.tempoBpm}, until ${until}; then the whole.`,
    steps: faults.map((fault) => fault.step),
    practice,
  };
}

/** "two notes are wrong", "one note is missing", "two notes are wrong and one is missing" */
function sayCount(wrong: number, missing: number): string {
  const be = (count: number): string => (count === 1 ? 'is' : 'are');
  const notes = (count: number): string => `${inWords(count)} note${count === 1 ? '' : 's'} ${be(count)}`;
  if (missing === 0) return `${notes(wrong)} wrong`;
  if (wrong === 0) return `${notes(missing)} missing`;
  return `${notes(wrong)} wrong and ${inWords(missing)} ${be(missing)} missing`;
}

function placedMissing(scene: Scene, fault: Fault): string {
  return fault.playedMidi === null
    ? `${say(fault.expected)} is missing ${where(scene, fault)}`.trim()
    : placed(scene, fault);
}
