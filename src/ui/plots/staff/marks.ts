import { TextBracket, type RenderContext } from 'vexflow/core';
import type { MeantShapes } from './meant.ts';
import type { DrawnPart } from './notes.ts';

/** Brackets over runs of notes written one or two octaves lower; returns where the highest begins, px. */
export function markOctaves(parts: readonly DrawnPart[], context: RenderContext): number {
  const all = parts.flatMap(({ part, notes }) =>
    part.events.map((event, at) => ({ up: event.octavesUp, note: notes[at]! })),
  );
  const { stave } = parts[0]!;
  const notesTopPx = Math.min(...all.map(({ note }) => note.getBoundingBox().getY()));
  const line = Math.max(1, Math.ceil((stave.getYForTopText(0) - notesTopPx) / 10) + 1);
  let topPx = Infinity;
  let from = 0;
  while (from < all.length) {
    const { up } = all[from]!;
    let to = from;
    while (all[to + 1]?.up === up) to += 1;
    if (up > 0) {
      topPx = stave.getYForTopText(line) - 18;
      new TextBracket({
        start: all[from]!.note,
        stop: all[to]!.note,
        text: up === 1 ? '8' : '15',
        superscript: up === 1 ? 'va' : 'ma',
        position: TextBracket.Position.TOP,
      })
        .setLine(line)
        .setContext(context)
        .draw();
    }
    from = to + 1;
  }
  return topPx;
}

/** Draws what is not to be practised pale, and a line under the rest. */
export function markStretch(
  host: HTMLDivElement,
  drawn: readonly (readonly DrawnPart[])[],
  stretch: { readonly fromStep: number; readonly toStep: number },
  yPx: number,
): void {
  const places: number[] = [];
  const pale = (id: unknown): void =>
    host.querySelector(`#vf-${String(id)}`)?.setAttribute('opacity', '0.35');
  for (const { part, notes } of drawn.flat()) {
    const outside = new Set(
      notes.filter((_, at) => {
        const { step } = part.events[at]!;
        return step < stretch.fromStep || step > stretch.toStep;
      }),
    );
    for (const note of notes) {
      if (!outside.has(note)) places.push(note.getAbsoluteX());
      else {
        pale(note.getAttribute('id'));
        const beam = note.getBeam();
        if (beam?.getNotes().every((one) => notes.some((other) => other === one && outside.has(other))))
          pale(beam.getAttribute('id'));
      }
    }
  }
  const svg = host.querySelector('svg');
  if (svg === null || places.length === 0) return;
  const line = document.createElementNS('http://www.w3.org/2000/svg', 'line');
  const ends = { x1: Math.min(...places) - 4, x2: Math.max(...places) + 16, y1: yPx, y2: yPx };
  for (const [name, value] of Object.entries(ends)) line.setAttribute(name, String(value));
  line.setAttribute('class', 'stretch');
  svg.append(line);
}

/** Slurs, hairpins and letters, in the ink of the notes. */
export function drawMeant(host: HTMLDivElement, { slurs, hairpins, letters }: MeantShapes): void {
  const svg = host.querySelector('svg');
  const add = (name: 'path' | 'text', attributes: Readonly<Record<string, string | number>>): SVGElement => {
    const element = document.createElementNS('http://www.w3.org/2000/svg', name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
    svg?.append(element);
    return element;
  };
  for (const d of slurs) add('path', { d, fill: 'currentColor', stroke: 'none' });
  for (const d of hairpins) add('path', { d, fill: 'none', stroke: 'currentColor', 'stroke-width': 1.4 });
  for (const { x, y, text } of letters)
    add('text', {
      x,
      y,
      fill: 'currentColor',
      'font-family': 'serif',
      'font-size': 19,
      'font-style': 'italic',
      'font-weight': 'bold',
    }).textContent = text;
}
