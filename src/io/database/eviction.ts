/**
 * Whether this browser clears what a page keeps after seven days on which it was used and the page was not: all of WebKit do, save
 * for a page on the home screen (webkit.org, "Full third-party cookie blocking and more", March 2020; from memory).
 */
export const clearsUnused = (): boolean =>
  navigator.vendor.startsWith('Apple') && !matchMedia('(display-mode: standalone)').matches;
