/** A piece of XML, written out. */
export type Xml = string;

/** A name and what is in it, text or elements → the element. */
export function element(name: string, attributes: string, inside: string | readonly Xml[]): Xml {
  const text = typeof inside === 'string' ? escaped(inside) : inside.join('');
  return `<${name}${attributes}>${text}</${name}>`;
}

export function empty(name: string, attributes = ''): Xml {
  return `<${name}${attributes}/>`;
}

export function attribute(name: string, value: string): string {
  return ` ${name}="${escaped(value)}"`;
}

/** XML 1.0, 2.4: what would be taken for markup. */
function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
