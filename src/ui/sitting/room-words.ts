import type { PianoProfile, RoomCheck, RoomFinding } from '../../engine/index.ts';
import { ASKED, type RoomStep } from './state/room.svelte.ts';
import { signed, shown, withUnit } from '../kit/figures.ts';
import { strings } from '../language/index.ts';

/** What the room check asks for or has found: one thing in large type, and lines below it. */
export interface RoomWords {
  readonly title: string;
  readonly lines: readonly string[];
}

export function roomWords(step: RoomStep): RoomWords {
  const t = strings().stand;
  switch (step.kind) {
    case 'off':
    case 'opening':
      return { title: t.opening, lines: [] };
    case 'silence':
      return { title: t.still, lines: [t.stillFor(step.leftSec)] };
    case 'note':
      return { title: t.notes[step.asked], lines: [t.noteOf(ASKED.indexOf(step.asked) + 1, ASKED.length)] };
    case 'working':
      return { title: t.working, lines: [] };
    case 'done':
      return found(step.check);
  }
}

function found({ silence, findings, notes, piano }: RoomCheck): RoomWords {
  const t = strings().stand;
  const about = piano === null ? [] : [`${pianoWords(piano)} ${t.remembered}`];
  if (findings.length > 0) return { title: t.better, lines: [...findings.map(findingWords), ...about] };
  if (silence.noiseDb === null) return { title: t.good, lines: [t.noRoom, ...about] };
  const aboveDb = notes.flatMap(({ aboveNoiseDb }) => aboveNoiseDb ?? []);
  const above = aboveDb.length === 0 ? '' : ` ${t.above(withUnit(shown(Math.min(...aboveDb)), 'dB'))}`;
  return { title: t.good, lines: [t.nothingInTheWay + above, ...about] };
}

/** What is wrong with the place, and what to change. */
function findingWords(finding: RoomFinding): string {
  const t = strings().stand.room;
  switch (finding.kind) {
    case 'no-notes':
      return t.noNotes(finding.heard);
    case 'noise':
    case 'far':
      return t[finding.kind](withUnit(signed(finding.aboveDb).replace('+', ''), 'dB'));
    case 'hum':
      return t.hum(withUnit(shown(finding.mainsHz), 'Hz'));
    case 'clipping':
    case 'soft':
      return t[finding.kind];
  }
}

/** What is known of a piano, in one sentence. */
export function pianoWords({ tuningCents }: PianoProfile): string {
  const t = strings().stand;
  const cents = Math.round(tuningCents.value);
  const pitch = withUnit(shown(440 * 2 ** (tuningCents.value / 1200), 1), 'Hz');
  return Math.abs(cents) < 2 ? t.stands(pitch) : t.standsOff(pitch, withUnit(signed(cents), t.cents));
}
