import type { Nodes, Root } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmFromMarkdown } from 'mdast-util-gfm';
import { gfm } from 'micromark-extension-gfm';

/** As a host reads it, its extensions included. */
export const parsedMarkdown = (text: string): Root =>
  fromMarkdown(text, { extensions: [gfm()], mdastExtensions: [gfmFromMarkdown()] });

/** The kinds of a node and of all below it, from top to bottom. */
export const nodesOf = (node: Nodes): readonly string[] => [node.type, ...childrenOf(node).flatMap(nodesOf)];

/** What a reader sees of a node. */
export const textOf = (node: Nodes): string =>
  'value' in node ? node.value : childrenOf(node).map(textOf).join('');

const childrenOf = (node: Nodes): readonly Nodes[] => ('children' in node ? node.children : []);

/** Every text below a node that is not shown as code. */
export const textsOf = (node: Nodes): readonly string[] =>
  node.type === 'text' ? [node.value] : childrenOf(node).flatMap(textsOf);

/** What hosts make links of when all is read. */
export const REFERENCE = /[@#!]\w|\bgh-\d|:\/\/|\bwww\.|:\w+:/i;
