import { SaxesParser } from 'saxes';

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly text: string;
}

/** As a strict parser reads it, which throws on anything that is not well-formed. */
export function readXml(source: string): Element {
  const parser = new SaxesParser();
  const open: { name: string; attributes: Record<string, string>; children: Element[]; text: string }[] = [
    { name: '', attributes: {}, children: [], text: '' },
  ];
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) =>
    open.push({ name, attributes: { ...attributes }, children: [], text: '' }),
  );
  parser.on('text', (text) => {
    const last = open.at(-1);
    if (last !== undefined) last.text += text;
  });
  for (const event of ['comment', 'cdata', 'processinginstruction', 'doctype'] as const) {
    parser.on(event, (said: unknown) => {
      throw new Error(`${event} ${JSON.stringify(said)}`);
    });
  }
  parser.on('closetag', () => {
    const done = open.pop();
    if (done !== undefined) open.at(-1)?.children.push(done);
  });
  parser.write(source).close();
  const [root] = open[0]?.children ?? [];
  if (root === undefined) throw new Error('no root');
  return root;
}

export const elementsOf = (element: Element, name: string): readonly Element[] => [
  ...(element.name === name ? [element] : []),
  ...element.children.flatMap((each) => elementsOf(each, name)),
];
