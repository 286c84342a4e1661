import { h, type VNode } from 'preact';
import { escapeHidden } from '../../diagnostic/quoted.ts';

/** A piece of a page: what it is made into is escaped by the library, texts and attributes alike. */
export type Element = VNode<object>;

/** Nothing at all where it is undefined. */
export type Child = Element | string | undefined | readonly Child[];

export type Attributes = Readonly<Record<string, string | number | true | undefined | Raw>>;

/** Only for texts of ours: nothing in it is escaped. */
interface Raw {
  readonly __html: string;
}

/**
 * The library escapes every text and attribute; what a browser would obey without showing it, such as a change of direction,
 * is written out here.
 */
export const element = (name: string, attributes: Attributes, ...children: readonly Child[]): Element =>
  h(name, shownAttributes(attributes), ...(children.map(shownChild) as string[])) as Element;

const shownChild = (child: Child): Child => (typeof child === 'string' ? escapeHidden(child) : child);

const shownAttributes = (attributes: Attributes): Attributes =>
  Object.fromEntries(
    Object.entries(attributes).map(([key, value]) => [
      key,
      typeof value === 'string' ? escapeHidden(value) : value,
    ]),
  );
