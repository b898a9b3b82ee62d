import { EvenfallError } from '../../io/troubles/index.ts';

/** What of a computed style a drawing needs to look the same elsewhere. */
const STYLES = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'paint-order',
  'opacity',
  'font-family',
  'font-size',
  'font-style',
  'font-weight',
] as const;

const GAP_PX = 14;
const EDGE_PX = 24;
/** Drawn at twice its size, to be sharp in print and on fine screens. */
const SCALE = 2;

/** Drawings that stand in the page → one PNG of them below each other, on the ground that is given. */
export async function pngOf(drawings: readonly SVGSVGElement[], ground: string): Promise<ArrayBuffer> {
  const sizes = drawings.map((svg) => ({ width: svg.width.baseVal.value, height: svg.height.baseVal.value }));
  const width = Math.max(...sizes.map((size) => size.width)) + 2 * EDGE_PX;
  const height =
    sizes.reduce((sum, size) => sum + size.height, 0) + GAP_PX * (drawings.length - 1) + 2 * EDGE_PX;
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(width * SCALE);
  canvas.height = Math.ceil(height * SCALE);
  const context = canvas.getContext('2d');
  if (context === null) throw new EvenfallError({ trouble: 'no-picture' });
  context.scale(SCALE, SCALE);
  context.fillStyle = ground;
  context.fillRect(0, 0, width, height);
  let y = EDGE_PX;
  for (const [index, svg] of drawings.entries()) {
    const { width: w, height: h } = sizes[index]!;
    context.drawImage(await imageOf(svg, w, h), EDGE_PX, y, w, h);
    y += h + GAP_PX;
  }
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (blob === null) throw new EvenfallError({ trouble: 'no-picture' });
  return blob.arrayBuffer();
}

/** A copy that carries its looks with it, as an image; an image knows nothing of the page's styles. */
async function imageOf(svg: SVGSVGElement, width: number, height: number): Promise<HTMLImageElement> {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const originals = [svg, ...svg.querySelectorAll('*')];
  [copy, ...copy.querySelectorAll('*')].forEach((element, index) => {
    const style = getComputedStyle(originals[index]!);
    // As attributes: the page's policy forbids styles written into markup.
    for (const name of STYLES) element.setAttribute(name, style.getPropertyValue(name));
  });
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', String(width * SCALE));
  copy.setAttribute('height', String(height * SCALE));
  const markup = new XMLSerializer().serializeToString(copy);
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(markup)}`;
  await image.decode();
  return image;
}
