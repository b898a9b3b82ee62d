import type { Strings } from '../english/index.ts';

export const COMPARE: Strings['compare'] = {
  title: 'Vergleichen',
  hint: 'mit einem anderen Versuch dieser Übung oder mit dem besten bisher',
  with: 'Vergleichen mit',
  best: (name) => `dem besten bisher: ${name}`,
  attempt: (number, name) => `Versuch ${number}: ${name}`,
  this: 'dieser Versuch',
  other: 'der andere',
  strings:
    'Zwei Schnüre, oben der andere Versuch, unten dieser. Striche sind die gleichmäßigen Plätze; jede Perle steht so früh ' +
    'oder spät, wie sie kam.',
  same: 'Kein nennenswerter Unterschied.',
  measure: 'Maß',
  change: 'Änderung',
  notMeasured: 'nicht gemessen',
  mistakes: 'Falsche, fehlende und überzählige Töne',
  fewerMistakes: (before, after) => `Weniger Töne waren nicht richtig: vorher ${before}, jetzt ${after}.`,
  moreMistakes: (before, after) => `Mehr Töne waren nicht richtig: vorher ${before}, jetzt ${after}.`,
  moreEven: (before, after) => `Gleichmäßiger in der Zeit: vorher ${before}, jetzt ${after}.`,
  lessEven: (before, after) => `Weniger gleichmäßig in der Zeit: vorher ${before}, jetzt ${after}.`,
  crossingBetter: (note, step, before, after) =>
    `Der Unter- oder Übersatz zum ${note}, dem ${step}. Ton, kommt pünktlicher: vorher ${before}, jetzt ${after}.`,
  crossingWorse: (note, step, before, after) =>
    `Der Unter- oder Übersatz zum ${note}, dem ${step}. Ton, kommt später: vorher ${before}, jetzt ${after}.`,
  faster: (before, after) => `Schneller: vorher ${before}, jetzt ${after}.`,
  slower: (before, after) => `Langsamer: vorher ${before}, jetzt ${after}.`,
  louderEven: (before, after) => `Gleichmäßiger in der Lautstärke: vorher ${before}, jetzt ${after}.`,
  louderUneven: (before, after) => `Weniger gleichmäßig in der Lautstärke: vorher ${before}, jetzt ${after}.`,
  noteNow: (note, step) => `${note}, der ${step}. Ton, ist jetzt richtig.`,
  noteNoMore: (note, step) => `${note}, der ${step}. Ton, war vorher richtig.`,
};
