import { mount, tick, unmount } from 'svelte';
import type { Exercise, Report } from '../../../engine/index.ts';
import { pngOf } from '../../kit/picture.ts';
import { strings, told } from '../../language/index.ts';
import './sheet.css';
import StillString from './StillString.svelte';

/** Wide enough for a line of thirteen notes to breathe, px. */
const WIDTH_PX = 1080;

/** Report → the string of pearls as a PNG, ink on white whatever the page looks like, with what was played, its verdict and a legend. */
export async function stringPicture(report: Report, exercise: Exercise, where: string): Promise<ArrayBuffer> {
  const host = document.createElement('div');
  host.className = 'sheet on-paper';
  document.body.append(host);
  const still = mount(StillString, { target: host, props: { report, exercise, widthPx: WIDTH_PX } });
  try {
    await tick();
    // Seen by nobody, but a drawing that is not seen would be drawn as nothing.
    host.style.visibility = 'visible';
    return await pngOf([...host.querySelectorAll('svg')], {
      like: host,
      above: [
        { text: where, sizePx: 15 },
        { text: told(report).verdict, sizePx: 24 },
      ],
      below: [{ text: strings().pearls.legend, sizePx: 14 }],
    });
  } finally {
    await unmount(still);
    host.remove();
  }
}
