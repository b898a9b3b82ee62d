/** A schema → what its fields are, in words, as far as it says so. */
export function descriptionsIn(schema: unknown): readonly string[] {
  const seen = new Set<unknown>();
  const found: string[] = [];
  const visit = (node: unknown): void => {
    if (typeof node !== 'object' || node === null || seen.has(node)) return;
    seen.add(node);
    if ('type' in node && node.type === 'description' && 'description' in node)
      found.push(String(node.description));
    for (const one of Object.values(node)) visit(one);
  };
  visit(schema);
  return found;
}
