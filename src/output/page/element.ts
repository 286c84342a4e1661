import { h, type VNode } from 'preact';

/** A piece of a page: what it is made into is escaped by the library, texts and attributes alike. */
export type Element = VNode<object>;

/** Nothing at all where it is undefined. */
export type Child = Element | string | undefined | readonly Child[];

export type Attributes = Readonly<Record<string, string | number | true | undefined>>;

export const element = (name: string, attributes: Attributes, ...children: readonly Child[]): Element =>
  h(name, attributes, ...(children as string[])) as Element;
