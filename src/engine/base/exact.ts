/** Exact probabilities of counts: no approximation, so that few attempts are enough to be honest about. */

/**
 * Probability that of `total` places, `marked` of which are marked, at least one marked one is among `drawn` taken without looking
 * (hypergeometric). All are whole numbers, `marked` and `drawn` at most `total`.
 */
export function anyMarked(total: number, marked: number, drawn: number): number {
  if (drawn > total - marked) return marked > 0 ? 1 : 0;
  let none = 1;
  for (let at = 0; at < drawn; at += 1) none *= (total - marked - at) / (total - at);
  return 1 - none;
}

/** Probability that at least `count` of independent events come true, each with its own probability (Poisson binomial; Wang 1993, by its recursion). */
export function atLeast(count: number, probabilities: readonly number[]): number {
  let chances = [1];
  for (const p of probabilities) {
    const next = Array.from({ length: chances.length + 1 }, () => 0);
    chances.forEach((chance, already) => {
      next[already]! += chance * (1 - p);
      next[already + 1]! += chance * p;
    });
    chances = next;
  }
  return chances.slice(Math.max(0, count)).reduce((sum, chance) => sum + chance, 0);
}

/**
 * Fisher's exact test, one-sided (Fisher 1935): `hits` of `tries` here and `otherHits` of `otherTries` there → the probability of so
 * many hits here, or more, if both were alike.
 */
export function moreThanThere(hits: number, tries: number, otherHits: number, otherTries: number): number {
  const all = hits + otherHits;
  const most = Math.min(tries, all);
  const ways = (here: number): number =>
    logChoose(tries, here) + logChoose(otherTries, all - here) - logChoose(tries + otherTries, all);
  let sum = 0;
  for (let here = hits; here <= most; here += 1) if (all - here <= otherTries) sum += Math.exp(ways(here));
  return Math.min(1, sum);
}

function logChoose(of: number, some: number): number {
  let sum = 0;
  for (let at = 1; at <= some; at += 1) sum += Math.log((of - some + at) / at);
  return sum;
}
