import { mount, unmount, type ComponentProps } from 'svelte';
import './sheet.css';
import Sheet from './Sheet.svelte';

/** What a sheet of A4 or US Letter holds within margins of 12 mm, CSS px (96 to the inch): the smaller of both each way. */
const PAPER = { widthPx: 702, heightPx: 960 } as const;
/** Nothing is printed smaller than this share of its size; what then is still too long runs on to a second sheet. */
const SMALLEST = 0.5;

/** Puts the report on one sheet beside the page, prints it, and takes it away again. */
export async function printSheet(props: Omit<ComponentProps<typeof Sheet>, 'onready'>): Promise<void> {
  const host = document.createElement('div');
  host.className = 'sheet on-paper';
  host.style.width = `${PAPER.widthPx}px`;
  document.body.append(host);
  await new Promise<void>((resolve) => {
    const sheet = mount(Sheet, {
      target: host,
      props: {
        ...props,
        onready: () => {
          // Shown smaller it also gets wider lines, so that less shrinking is enough than the height alone would say.
          const share = Math.max(SMALLEST, Math.min(1, PAPER.heightPx / host.offsetHeight));
          host.style.setProperty('zoom', String(share));
          resolve();
        },
      },
    });
    const done = (): void => {
      void unmount(sheet);
      host.remove();
    };
    window.addEventListener('afterprint', done, { once: true });
  });
  window.print();
}
