import { type Child, type Element, element } from '../element.ts';

/** What every picture says in words: what it shows, and what follows from it. */
export interface Described {
  readonly title: string;
  readonly description: string;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A picture with its title and its description; its size is the smallest at which it is shown. */
export const frame = (
  kind: string,
  { title, description }: Described,
  { width, height }: Size,
  ...marks: readonly Child[]
): Element =>
  element(
    'svg',
    { class: `picture ${kind}`, viewBox: `0 0 ${width} ${height}`, width, height, role: 'img' },
    element('title', {}, title),
    element('desc', {}, description),
    ...marks,
  );

/** Hundredths of a unit are finer than any printer, and the same on every machine. */
const near = (value: number): number => Math.round(value * 100) / 100;

export const line = (name: string, x1: number, y1: number, x2: number, y2: number): Element =>
  element('line', { class: name, x1: near(x1), y1: near(y1), x2: near(x2), y2: near(y2) });

export const dot = (name: string, cx: number, cy: number, r = 3): Element =>
  element('circle', { class: name, cx: near(cx), cy: near(cy), r });

export const box = (name: string, x: number, y: number, { width, height }: Size): Element =>
  element('rect', { class: name, x: near(x), y: near(y), width: near(width), height: near(height) });

export type Point = readonly [x: number, y: number];

export const polyline = (name: string, points: readonly Point[]): Element =>
  element('polyline', { class: name, points: points.map(([x, y]) => `${near(x)},${near(y)}`).join(' ') });

export const polygon = (name: string, points: readonly Point[]): Element =>
  element('polygon', { class: name, points: points.map(([x, y]) => `${near(x)},${near(y)}`).join(' ') });

export const words = (
  name: string,
  x: number,
  y: number,
  anchor: 'start' | 'middle' | 'end',
  text: string,
): Element => element('text', { class: name, x: near(x), y: near(y), 'text-anchor': anchor }, text);

/** A straight scale from numbers to places; what has no width lies in the middle. */
export const scale =
  (from: number, to: number, start: number, end: number) =>
  (value: number): number =>
    to === from ? (start + end) / 2 : start + ((value - from) / (to - from)) * (end - start);

export const clamp = (value: number, least: number, greatest: number): number =>
  Math.min(greatest, Math.max(least, value));
