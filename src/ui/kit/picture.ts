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

/** From line to line, by the size of the letters. */
const LEADING = 1.35;
const GAP_PX = 14;
const EDGE_PX = 24;
/** Drawn at twice its size, to be sharp in print and on fine screens. */
const SCALE = 2;

/** Words in a picture: what they say, and how large. */
export interface PictureWords {
  readonly text: string;
  readonly sizePx: number;
}

/** What a picture has besides its drawings. */
export interface PictureFrame {
  /** its colours and its type are those of this element */
  readonly like: HTMLElement;
  readonly above: readonly PictureWords[];
  readonly below: readonly PictureWords[];
}

/** Drawings that stand in the page → one PNG of them below each other, with words above and below. */
export async function pngOf(drawings: readonly SVGSVGElement[], frame: PictureFrame): Promise<ArrayBuffer> {
  const sizes = drawings.map((svg) => ({ width: svg.width.baseVal.value, height: svg.height.baseVal.value }));
  const insidePx = Math.max(...sizes.map((size) => size.width));
  const width = insidePx + 2 * EDGE_PX;
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d');
  if (context === null) throw new EvenfallError({ trouble: 'no-picture' });
  const { backgroundColor: ground, color, fontFamily } = getComputedStyle(frame.like);
  const lines = (words: readonly PictureWords[]): readonly PictureWords[] =>
    words.flatMap(({ text, sizePx }) => {
      context.font = `${sizePx}px ${fontFamily}`;
      const wide = (line: string): number => context.measureText(line).width;
      return wrapped(text, (line) => wide(line) <= insidePx).map((line) => ({ text: line, sizePx }));
    });
  const [above, below] = [lines(frame.above), lines(frame.below)];
  const heightOf = (words: readonly PictureWords[]): number =>
    words.reduce((sum, { sizePx }) => sum + LEADING * sizePx, words.length > 0 ? GAP_PX : 0);
  const height =
    sizes.reduce((sum, size) => sum + size.height, 0) +
    (GAP_PX * (drawings.length - 1) + 2 * EDGE_PX + heightOf(above) + heightOf(below));
  canvas.width = Math.ceil(width * SCALE);
  canvas.height = Math.ceil(height * SCALE);
  context.scale(SCALE, SCALE);
  context.fillStyle = ground;
  context.fillRect(0, 0, width, height);
  context.fillStyle = color;
  const write = (words: readonly PictureWords[], fromPx: number): void => {
    let lineY = fromPx;
    for (const { text, sizePx } of words) {
      context.font = `${sizePx}px ${fontFamily}`;
      lineY += LEADING * sizePx;
      context.fillText(text, EDGE_PX, lineY - (LEADING - 1) * sizePx);
    }
  };
  write(above, EDGE_PX);
  let y = EDGE_PX + heightOf(above);
  for (const [index, svg] of drawings.entries()) {
    const { width: w, height: h } = sizes[index]!;
    context.drawImage(await imageOf(svg, w, h), EDGE_PX, y, w, h);
    y += h + GAP_PX;
  }
  write(below, y);
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (blob === null) throw new EvenfallError({ trouble: 'no-picture' });
  return blob.arrayBuffer();
}

/** A text → its lines, broken between words, each of which fits where it can. */
function wrapped(text: string, fits: (line: string) => boolean): readonly string[] {
  const [first = '', ...others] = text.split(' ');
  return others.reduce<readonly string[]>(
    (lines, word) => {
      const longer = `${lines.at(-1)} ${word}`;
      return fits(longer) ? lines.with(-1, longer) : [...lines, word];
    },
    [first],
  );
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
