import type { Page } from 'playwright-core';

/** All that lies in one store of the page's databases, as JSON has it; bytes as numbers. */
export function stored(page: Page, database: string, store: string): Promise<unknown> {
  return page.evaluate(
    ([name, from]) =>
      new Promise<unknown>((resolve, reject) => {
        const opening = indexedDB.open(name!);
        opening.onerror = () => reject(opening.error!);
        opening.onsuccess = () => {
          const reading = opening.result.transaction(from!).objectStore(from!).getAll();
          reading.onerror = () => reject(reading.error!);
          reading.onsuccess = () => {
            opening.result.close();
            const asNumbers = (_: string, value: unknown): unknown =>
              value instanceof Uint8Array ? [...value] : value;
            resolve(JSON.parse(JSON.stringify(reading.result, asNumbers)));
          };
        };
      }),
    [database, store],
  );
}
