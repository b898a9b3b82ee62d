import {
  Accidental,
  Annotation,
  Articulation,
  AnnotationHorizontalJustify,
  AnnotationVerticalJustify,
  Beam,
  ClefNote,
  Dot,
  Formatter,
  ModifierPosition,
  StaveNote,
  StaveTie,
  Tuplet,
  Voice,
  type Stave,
} from 'vexflow/core';
import type { StaffPart } from './bars.ts';
import type { StaffSign } from './meant.ts';

/** One hand's bar with what is drawn of it. */
export interface DrawnPart {
  readonly part: StaffPart;
  readonly stave: Stave;
  readonly notes: readonly StaveNote[];
}

/** An event → its note with fingers: above for the right hand, below for the left. */
export function makeNote(event: StaffPart['events'][number], part: StaffPart): StaveNote {
  const note = new StaveNote({
    keys: [...event.keys],
    duration: event.rest === true ? `${event.duration}r` : event.duration,
    dots: event.dots,
    clef: event.clef,
    autoStem: true,
  });
  note.setLedgerLineStyle({ strokeStyle: 'currentColor', lineWidth: 1.4 });
  if (event.dots > 0) Dot.buildAndAttach([note], { all: true });
  for (const sign of event.signs) addSign(note, sign, part.hand === 'right');
  const above = part.hand === 'right';
  const order = above ? event.fingers : [...event.fingers].reverse();
  for (const finger of order) {
    const number = new Annotation(String(finger))
      .setFont('system-ui, "DejaVu Sans", sans-serif', 11)
      .setJustification(AnnotationHorizontalJustify.CENTER)
      .setVerticalJustification(above ? AnnotationVerticalJustify.TOP : AnnotationVerticalJustify.BOTTOM);
    note.addModifier(number, 0);
  }
  return note;
}

/** Dots and dashes stand at the head, away from the stem; the others with the fingers. */
function addSign(note: StaveNote, sign: StaffSign, above: boolean): void {
  const atHead = sign === 'staccato' || sign === 'tenuto';
  const over = atHead ? note.getStemDirection() < 0 : above;
  if (sign === 'breath') {
    const comma = new Annotation(',')
      .setFont('serif', 22, 'bold')
      .setJustification(AnnotationHorizontalJustify.RIGHT)
      .setVerticalJustification(above ? AnnotationVerticalJustify.TOP : AnnotationVerticalJustify.BOTTOM);
    note.addModifier(comma, 0);
    return;
  }
  const code = { staccato: 'a.', tenuto: 'a-', accent: 'a>', fermata: over ? 'a@a' : 'a@u' }[sign];
  const { ABOVE, BELOW } = ModifierPosition;
  note.addModifier(new Articulation(code).setPosition(over ? ABOVE : BELOW), 0);
}

/** Formats the parts of one bar together and draws them with their beams. */
export function drawNotes(parts: readonly DrawnPart[], keySignature: string): void {
  const voices = parts.map(({ part, notes, stave }) =>
    new Voice({ numBeats: 4, beatValue: 4 })
      .setMode(Voice.Mode.SOFT)
      .addTickables(withClefs(part, notes))
      .setStave(stave),
  );
  for (const voice of voices) Accidental.applyAccidentals([voice], keySignature);
  const beams = parts
    .flatMap(({ part, notes }) => beamGroups(part).map((group) => group.map((at) => notes[at]!)))
    .filter((group) => group.length > 1)
    .map((group) => new Beam(group, true));
  const triplets = parts.flatMap(({ part, notes }) =>
    tripletsOf(part).map(
      (group) =>
        new Tuplet(
          group.map((at) => notes[at]!),
          { numNotes: 3, notesOccupied: 2 },
        ),
    ),
  );
  const { stave } = parts[0]!;
  const roomPx = stave.getNoteEndX() - stave.getNoteStartX() - 14;
  const formatter = new Formatter();
  for (const voice of voices) formatter.joinVoices([voice]);
  formatter.format(voices, roomPx);
  voices.forEach((voice, row) => voice.draw(parts[row]!.stave.checkContext(), parts[row]!.stave));
  for (const one of [...beams, ...triplets]) one.setContext(stave.checkContext()).draw();
}

/** Clefs that change within a bar stand before their notes and take no time. */
function withClefs(part: StaffPart, notes: readonly StaveNote[]): (StaveNote | ClefNote)[] {
  return notes.flatMap((note, at) => {
    const { clef } = part.events[at]!;
    const changed = at > 0 && part.events[at - 1]!.clef !== clef;
    return changed ? [new ClefNote(clef, 'small'), note] : [note];
  });
}

/** Indices of eighths or sixteenths that share a beat; two beats are joined where two notes go to a beat, as is usual. */
function beamGroups(part: StaffPart): readonly (readonly number[])[] {
  if (part.events.some(({ beam }) => beam !== undefined)) return runsOf(part, ({ beam }) => beam);
  const groups = new Map<number, number[]>();
  const perBeat = part.events.filter((event) => event.beat < 1 - 1e-6).length;
  const join = perBeat === 2 && part.events.every(({ duration }) => duration !== '16') ? 2 : 1;
  part.events.forEach((event, at) => {
    if (!['8', '16', '32'].includes(event.duration)) return;
    const group = Math.floor((event.beat + 1e-6) / join);
    groups.set(group, [...(groups.get(group) ?? []), at]);
  });
  return [...groups.values()];
}

const tripletsOf = (part: StaffPart): readonly (readonly number[])[] =>
  runsOf(part, ({ triplet }) => triplet);

/** Indices of neighbours that have the same number. */
function runsOf(
  { events }: StaffPart,
  numberOf: (event: StaffPart['events'][number]) => number | undefined,
): readonly (readonly number[])[] {
  const runs: number[][] = [];
  events.forEach((event, at) => {
    const number = numberOf(event);
    if (number === undefined) return;
    const before = events[at - 1];
    if (before !== undefined && numberOf(before) === number) runs.at(-1)!.push(at);
    else runs.push([at]);
  });
  return runs;
}

/** One hand's bars of a system → its ties; one that goes on in the next system ends open. */
export function drawTies(bars: readonly DrawnPart[]): void {
  const all = bars.flatMap(({ part, notes, stave }) =>
    part.events.map((event, at) => ({ event, note: notes[at]!, stave })),
  );
  all.forEach(({ event, note, stave }, at) => {
    if (event.tie !== 'on' && event.tie !== 'through') return;
    const next = all[at + 1]?.note ?? null;
    const indexes = event.keys.map((_, index) => index);
    new StaveTie({ firstNote: note, lastNote: next, firstIndexes: indexes, lastIndexes: indexes })
      .setContext(stave.checkContext())
      .draw();
  });
}
