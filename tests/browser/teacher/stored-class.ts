import type { Page } from 'playwright-core';
import { inventedClass } from '../../ui/teacher/invented-class.ts';

/** Puts such a class into the page's own database, and opens it. */
export async function openInvented(page: Page, size: number, each: number): Promise<void> {
  await page.getByText('Nothing is here yet').waitFor();
  const all = inventedClass(size, each, await page.evaluate(() => Date.now()));
  await page.evaluate(
    (records) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('evenfall-teaching');
        opening.onerror = () => reject(opening.error!);
        opening.onsuccess = () => {
          const names = ['students', 'files', 'playings'] as const;
          const transaction = opening.result.transaction(names, 'readwrite');
          for (const name of names) for (const one of records[name]) transaction.objectStore(name).put(one);
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
          transaction.onerror = () => reject(transaction.error!);
        };
      }),
    all,
  );
  await page.reload();
  await page.getByRole('heading', { name: /^The class/ }).waitFor();
}
