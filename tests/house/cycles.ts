/**
 * A graph (a node → the nodes it points to) → the first ring found in it, as `['a', 'b', 'a']`, or none. Nodes and arrows
 * are tried in the order given, so the same graph always gives the same ring.
 */
export function findRing(arrows: ReadonlyMap<string, readonly string[]>): readonly string[] | undefined {
  const finished = new Set<string>();
  const path: string[] = [];
  const visit = (node: string): readonly string[] | undefined => {
    if (finished.has(node)) return undefined;
    const seenAt = path.indexOf(node);
    if (seenAt >= 0) return [...path.slice(seenAt), node];
    path.push(node);
    for (const next of arrows.get(node) ?? []) {
      const ring = visit(next);
      if (ring !== undefined) return ring;
    }
    path.pop();
    finished.add(node);
    return undefined;
  };
  for (const node of arrows.keys()) {
    const ring = visit(node);
    if (ring !== undefined) return ring;
  }
  return undefined;
}
