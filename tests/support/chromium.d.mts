/** The path of the machine's Chromium or Chrome; undefined where there is none. */
export function findChromium(): string | undefined;
