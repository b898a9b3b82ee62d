import bravuraUrl from '@vexflow-fonts/bravura/bravura.woff2?url';
import { Barline, Renderer, Stave, StaveConnector, VexFlow } from 'vexflow/core';
import { headWidthPx, timeWidthPx, type Bar } from './bars.ts';
import { fieldsOf, type StaffField } from './fields.ts';
import { drawMeant, markOctaves, markStretch } from './marks.ts';
import { meantShapes, type Meant } from './meant.ts';
import { drawNotes, drawTies, makeNote, type DrawnPart } from './notes.ts';
import type { StaffPlace } from './pencil.ts';

/** One line of music. */
export interface StaffSystem {
  readonly bars: readonly Bar[];
  readonly keySignature: string;
  readonly signatureCount: number;
  readonly widthPx: number;
  /** drawn at this size; 1 = staff lines 10 px apart */
  readonly scale: number;
  readonly lastOfAll: boolean;
  /** steps to practise: the others are drawn pale, and a line runs under these */
  readonly stretch: { readonly fromStep: number; readonly toStep: number } | null;
  /** how the stretch, or all, is meant */
  readonly meant: Meant | null;
  /** room to be left for marks above the right hand and below the left, px at scale 1 */
  readonly marksPx: number;
}

/** What was drawn, to draw over it. */
export interface DrawnSystem {
  readonly places: readonly StaffPlace[];
  /** of a passage: its bars, to be written in */
  readonly fields: readonly StaffField[];
  /** of the drawing, px at scale 1 */
  readonly viewBox: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Room above the first staff while drawing, before it is cropped; and from staff to staff of a grand staff. */
const TOP_PX = 80;
const GRAND_GAP_PX = 124;
/** How far a clef reaches beyond its staff. */
const CLEF_REACH_PX = 16;

let font: Promise<void> | null = null;

/** The music font comes from our own files; VexFlow would fetch it from elsewhere. */
export function loadMusicFont(): Promise<void> {
  font ??= new FontFace('Bravura', `url(${bravuraUrl})`).load().then((face) => {
    document.fonts.add(face);
    VexFlow.setFonts('Bravura');
  });
  return font;
}

/** Draws one system into an empty element. Call after loadMusicFont. Takes some 5–15 ms: one a task. */
export function drawSystem(host: HTMLDivElement, system: StaffSystem): DrawnSystem {
  const { scale, bars } = system;
  const widthPx = system.widthPx / scale - 2;
  const grand = (bars[0]?.parts.length ?? 1) > 1;
  const renderer = new Renderer(host, Renderer.Backends.SVG);
  renderer.resize(system.widthPx, 400);
  const context = renderer.getContext();
  context.scale(scale, scale);
  context.setFillStyle('currentColor');
  context.setStrokeStyle('currentColor');

  const head = headWidthPx(system.signatureCount) + (grand ? 14 : 0);
  const leftPx = grand ? 16 : 0;
  const timesPx = bars.reduce((sum, bar) => sum + timeWidthPx(bar), 0);
  const barPx = (widthPx - leftPx - head - timesPx) / bars.length;
  let xPx = leftPx;
  const drawn: DrawnPart[][] = [];
  for (const [place, bar] of bars.entries()) {
    const ownPx = (place === 0 ? barPx + head : barPx) + timeWidthPx(bar);
    const parts = bar.parts.map((part, row) => {
      const stave = new Stave(xPx, TOP_PX + row * GRAND_GAP_PX, ownPx);
      const before = bars[place - 1]?.parts[row];
      if (place === 0) stave.addClef(part.clef).addKeySignature(system.keySignature);
      else if (before && before.events.at(-1)?.clef !== part.clef) stave.addClef(part.clef, 'small');
      if (bar.time !== undefined) stave.addTimeSignature(bar.time);
      if (bar.last) stave.setEndBarType(Barline.type.END);
      stave.setContext(context).setStyle({ fillStyle: 'currentColor', strokeStyle: 'currentColor' });
      return { part, stave, notes: part.events.map((event) => makeNote(event, part)) };
    });
    alignStarts(parts);
    for (const { stave } of parts) stave.draw();
    if (grand) connect(parts, place === 0, bar.last);
    drawNotes(parts, system.keySignature);
    drawn.push(parts);
    xPx += ownPx;
  }
  for (const row of (bars[0]?.parts ?? []).keys()) drawTies(drawn.map((parts) => parts[row]!));
  const marksPx = (bars[0]?.parts ?? []).map((_, row) =>
    markOctaves(
      drawn.map((parts) => parts[row]!),
      context,
    ),
  );
  const ink = extent(drawn.flat());
  const shapes = system.meant === null ? null : meantShapes(placesOf(drawn.flat()), system.meant);
  if (shapes !== null) drawMeant(host, shapes);
  const topPx = Math.min(ink.topPx, shapes?.topY ?? Infinity);
  const bottomPx = Math.max(ink.bottomPx, shapes?.bottomY ?? -Infinity);
  if (system.stretch !== null) markStretch(host, drawn, system.stretch, bottomPx + 8);
  const above = Math.min(topPx, ...marksPx) - 6 - system.marksPx;
  const below = bottomPx + (system.stretch === null ? 6 : 16) + system.marksPx;
  const fields = drawn.flatMap((parts, at) => fieldsOf(bars[at]!, parts));
  return { places: placesOf(drawn.flat()), fields, ...crop(host, system, above, below) };
}

/** Half a note's head, px. */
const HALF_HEAD_PX = 6;

function placesOf(parts: readonly DrawnPart[]): readonly StaffPlace[] {
  return parts.flatMap(({ part, notes }) =>
    notes.flatMap((note, at): StaffPlace[] => {
      const { step, rest, tie } = part.events[at]!;
      // Where nothing is struck there is nothing to mark.
      if (rest === true || tie === 'from' || tie === 'through') return [];
      const box = note.getBoundingBox();
      return [
        {
          step,
          hand: part.hand,
          x: note.getAbsoluteX() + HALF_HEAD_PX,
          headsY: [...note.getYs()].sort((a, b) => b - a),
          topY: box.getY(),
          bottomY: box.getY() + box.getH(),
        },
      ];
    }),
  );
}

/** Where the ink begins and ends, px at scale 1. */
function extent(parts: readonly DrawnPart[]): { readonly topPx: number; readonly bottomPx: number } {
  const boxes = parts.flatMap(({ notes }) => notes.map((note) => note.getBoundingBox()));
  const staves = parts.map(({ stave }) => stave);
  return {
    topPx: Math.min(
      ...boxes.map((box) => box.getY()),
      ...staves.map((stave) => stave.getYForLine(0) - CLEF_REACH_PX),
    ),
    bottomPx: Math.max(
      ...boxes.map((box) => box.getY() + box.getH()),
      ...staves.map((stave) => stave.getYForLine(4) + CLEF_REACH_PX),
    ),
  };
}

/** Leaves only the ink: VexFlow cannot say beforehand how high a system will be. */
function crop(
  host: HTMLDivElement,
  { scale, widthPx }: StaffSystem,
  fromPx: number,
  toPx: number,
): Omit<DrawnSystem, 'places' | 'fields'> {
  const heightPx = Math.ceil((toPx - fromPx) * scale);
  const viewBox = `0 ${fromPx} ${widthPx / scale} ${heightPx / scale}`;
  const svg = host.querySelector('svg');
  if (svg !== null) {
    svg.setAttribute('viewBox', viewBox);
    svg.setAttribute('height', String(heightPx));
    svg.style.height = '';
    svg.style.width = '';
  }
  return { viewBox, widthPx, heightPx };
}

function alignStarts(parts: readonly DrawnPart[]): void {
  const startX = Math.max(...parts.map(({ stave }) => stave.getNoteStartX()));
  for (const { stave } of parts) stave.setNoteStartX(startX);
}

function connect(parts: readonly DrawnPart[], first: boolean, last: boolean): void {
  const [top, bottom] = [parts[0]!.stave, parts[1]!.stave];
  const { BRACE, SINGLE_LEFT, SINGLE_RIGHT, BOLD_DOUBLE_RIGHT } = StaveConnector.type;
  for (const type of [...(first ? [BRACE!, SINGLE_LEFT!] : []), last ? BOLD_DOUBLE_RIGHT! : SINGLE_RIGHT!])
    new StaveConnector(top, bottom).setType(type).setContext(top.checkContext()).draw();
}
