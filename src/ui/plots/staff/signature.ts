import { Barline, Renderer, Stave, StaveConnector } from 'vexflow/core';
import { headWidthPx, vexKeySignature } from './bars.ts';

const SIZE_PX = { width: 200, height: 172 } as const;
const SCALE = 0.8;
/** Top of the upper staff and from staff to staff, px at scale 1. */
const TOP_PX = 0;
const GAP_PX = 80;
const LEFT_PX = 16;

/** Draws a key signature in both clefs into an empty element. Call after loadMusicFont. */
export function drawSignature(host: HTMLDivElement, key: string, count: number): void {
  const renderer = new Renderer(host, Renderer.Backends.SVG);
  renderer.resize(SIZE_PX.width, SIZE_PX.height * SCALE);
  const context = renderer.getContext();
  context.scale(SCALE, SCALE);
  context.setFillStyle('currentColor');
  context.setStrokeStyle('currentColor');
  const staves = (['treble', 'bass'] as const).map((clef, row) =>
    new Stave(LEFT_PX, TOP_PX + row * GAP_PX, headWidthPx(count) + 24)
      .addClef(clef)
      .addKeySignature(vexKeySignature(key))
      .setEndBarType(Barline.type.NONE)
      .setContext(context)
      .setStyle({ fillStyle: 'currentColor', strokeStyle: 'currentColor' }),
  );
  for (const stave of staves) stave.draw();
  const [treble, bass] = staves;
  const { BRACE, SINGLE_LEFT } = StaveConnector.type;
  for (const type of [BRACE!, SINGLE_LEFT!])
    new StaveConnector(treble!, bass!).setType(type).setContext(context).draw();
}
