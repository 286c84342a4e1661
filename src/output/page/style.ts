import { cssString } from '../escape/css.ts';

/** What stands in the margins of every printed page. */
export interface Running {
  readonly head: string;
  readonly status: string;
  readonly foot: string;
  /** Where the paper is chosen here and not by whoever prints. */
  readonly paper: string | undefined;
}

export const styleOf = (running: Running): string => `${SCREEN}${PICTURES}${printStyle(running)}`;

/** On paper, and on a screen that is not dark. */
export const LIGHT = `--paper: #ffffff; --ink: #1b1b1b; --soft: #5a5a5a; --rule: #cfcfcf; --tint: #f3f3f3; --bar: #b8b8b8;
  --out: #a61b1b; --notice: #7a4a00; --link: #0b4f8a;
  --shade-0: #ffffff; --shade-1: #ececec; --shade-2: #d9d9d9; --shade-3: #c4c4c4; --shade-4: #adadad;`;

const SCREEN = `:root {
  color-scheme: light dark;
  ${LIGHT}
}
@media screen and (prefers-color-scheme: dark) {
  :root {
    --paper: #171717; --ink: #ededed; --soft: #b0b0b0; --rule: #4a4a4a; --tint: #232323; --bar: #6a6a6a;
    --out: #ff9b93; --notice: #f0bd6a; --link: #8fc4f5;
    --shade-0: #171717; --shade-1: #2a2a2a; --shade-2: #3a3a3a; --shade-3: #4a4a4a; --shade-4: #5c5c5c;
  }
}
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 16px; max-width: 1080px; background: var(--paper); color: var(--ink);
  font: 16px/1.5 system-ui, sans-serif; font-variant-numeric: tabular-nums; overflow-wrap: break-word; }
h1, h2, h3, caption, .fold { font-size: 20px; line-height: 1.3; font-weight: 600; margin: 0; }
h2::first-letter { text-transform: uppercase; }
h2 { margin: 32px 0 8px; padding-top: 8px; border-top: 1px solid var(--rule); }
h3, caption, .fold { font-size: 16px; }
p { margin: 8px 0; max-width: 76ch; }
ul { margin: 8px 0; padding-left: 24px; max-width: 80ch; }
.head { display: grid; gap: 8px; }
.about, .limits, .notes, .unit, .facts dt { color: var(--soft); }
.status { font-weight: 600; border: 2px solid currentColor; padding: 4px 8px; justify-self: start; }
.status.open { color: var(--out); }
.verdict { font-size: 20px; line-height: 1.4; margin: 0; }
.reasons { margin: 0; }
.facts { display: grid; grid-template-columns: repeat(auto-fill, minmax(220px, 1fr)); gap: 4px 24px; margin: 8px 0; font-size: 14px; }
.facts div { display: flex; gap: 8px; } .facts dd { margin: 0; min-width: 0; }
.wide { overflow-x: auto; margin: 16px 0; }
table { border-collapse: collapse; width: 100%; font-size: 14px; }
caption { text-align: left; padding: 4px 0; }
caption .limits { font-weight: 400; }
th, td { text-align: left; vertical-align: top; padding: 4px 12px 4px 0; border-top: 1px solid var(--rule); }
th { font-weight: 400; color: var(--soft); }
tbody th { color: inherit; }
.figure { text-align: right; }
.figure, .date { white-space: nowrap; }
td.out, li.out { color: var(--out); font-weight: 600; }
td.notice { color: var(--notice); }
td.out::before { content: "\\25A0\\00A0"; }
td.notice::before { content: "\\25A1\\00A0"; }
td.quiet { color: var(--soft); }
td.where { width: 172px; padding-top: 2px; padding-bottom: 0; }
.measure { width: auto; min-width: min(480px, 100%); }
.measure th:first-child { min-width: 72px; } .measure td.figure { min-width: 128px; }
.measure .out, .measure .notice, .measure .quiet { min-width: 96px; }
@media screen and (min-width: 1000px) {
  .measure th:first-child { min-width: 144px; } .measure .out, .measure .notice, .measure .quiet { min-width: 224px; }
}
td.where .picture { width: 160px; max-width: none; }
.also { color: var(--soft); display: block; }
.notes { font-size: 14px; }
summary { cursor: pointer; padding: 4px 0; }
summary:focus-visible, button:focus-visible, a:focus-visible, .wide:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
button { font: inherit; color: inherit; background: var(--tint); border: 1px solid var(--rule); padding: 2px 8px; cursor: pointer; }
th button { background: none; border: 0; padding: 0; text-align: left; }
th[aria-sort="ascending"] button::after { content: "\\00A0\\2191"; }
th[aria-sort="descending"] button::after { content: "\\00A0\\2193"; }
.tools { margin-top: 8px; }
.tools:empty { display: none; }
.boxes { list-style: none; padding-left: 0; }
.boxes li { padding-left: 28px; text-indent: -28px; }
.boxes li::before { content: "\\2610"; display: inline-block; width: 28px; text-indent: 0; font-size: 20px; line-height: 1; }
.blanks { list-style: none; padding: 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(280px, 1fr)); gap: 8px 24px; max-width: none; }
.blanks li { border-bottom: 1px solid var(--soft); padding-top: 24px; font-size: 14px; color: var(--soft); }
.pictures { display: flex; flex-wrap: wrap; gap: 16px; margin: 8px 0 16px; padding: 0; }
figure { margin: 0; max-width: 100%; }
figcaption { font-size: 14px; color: var(--soft); max-width: 420px; }
@media screen and (max-width: 760px) { .wide table { width: max-content; min-width: 100%; max-width: 720px; } }
.room { min-width: 96px; }
td.room, .fields li { border: 1px solid var(--soft); height: 36px; }
.room + td:not(.room) { padding-left: 12px; }
.form { width: auto; } .wide .form { min-width: 0; } .form .room { min-width: 112px; padding-left: 4px; }
.fields { list-style: none; padding: 0; margin: 4px 0 16px; display: grid; grid-template-columns: repeat(auto-fill, minmax(96px, 1fr)); gap: 4px; max-width: none; }
.fields li { padding: 0 4px; height: 44px; font-size: 12px; color: var(--soft); }
.note { display: block; font-weight: 400; color: var(--soft); }
a { color: var(--link); }
footer { margin-top: 32px; border-top: 1px solid var(--rule); padding-top: 8px; font-size: 14px; }
`;

/** How pictures are drawn, by the classes of their marks. */
export const PICTURES = `.picture { max-width: 100%; height: auto; display: block; }
.picture line, .picture polyline, .picture polygon, .picture rect, .picture circle { fill: none; stroke: var(--ink); stroke-width: 1; }
.picture text { fill: var(--ink); font: 11px system-ui, sans-serif; font-variant-numeric: tabular-nums; }
.picture .figure { font-size: 10px; } .picture .name { fill: var(--soft); }
.picture .usable { stroke-dasharray: 1 3; }
.picture .target { stroke-width: 7; stroke: var(--bar); }
.picture .wear-limit, .picture .fresh-limit { stroke-width: 1.5; }
.picture .reading, .picture .beyond { fill: var(--ink); }
.picture .range { stroke-width: 4; }
.picture .whisker { stroke: var(--ink); fill: none; }
.picture .before { fill: var(--paper); }
.picture .before-range, .picture .change, .picture .hatch { stroke: var(--soft); }
.picture .profile { fill: var(--tint); } .picture .least { stroke-dasharray: 3 2; }
.picture .centre { stroke-dasharray: 8 3 2 3; stroke: var(--soft); }
.picture .course-band { fill: var(--tint); stroke: none; }
.picture .start { stroke-dasharray: 2 2; }
.picture .forecast { stroke-width: 5; }
.picture.trend .wear-limit, .picture.turning-torque .wear-limit, .picture.journal .wear-limit { stroke-dasharray: 6 3; }
.picture .fastener { fill: var(--paper); } .picture .order { font-weight: 600; }
.picture .outline { stroke: var(--rule); }
.picture .jump { fill: var(--paper); stroke-width: 2; }
${[0, 1, 2, 3, 4].map((each) => `.picture .shade-${each} { fill: var(--shade-${each}); }`).join('\n')}
`;

/** Margins for a punch; no row is broken, and no heading is left behind. */
const printStyle = ({ head, status, foot, paper }: Running): string => `@page {
  ${paper === undefined ? '' : `size: ${paper};`} margin: 18mm 12mm 16mm 22mm;
  @top-left { content: ${cssString(head)}; font: 9pt system-ui, sans-serif; }
  @top-right { content: ${cssString(status)}; font: bold 9pt system-ui, sans-serif; }
  @bottom-left { content: ${cssString(foot)}; font: 9pt system-ui, sans-serif; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 9pt system-ui, sans-serif; }
}
@media print {
  :root { color-scheme: light; }
  .form .room { min-width: 64px; }
  .measure th:first-child, .measure td.figure { min-width: 0; } .measure td.notes { min-width: 96px; }
  .measure .out, .measure .notice, .measure .quiet { min-width: 64px; }
  body { padding: 0; max-width: none; font-size: 10pt; }
  h1, .verdict { font-size: 14pt; } h2 { font-size: 12pt; margin: 14pt 0 4pt; }
  h3, caption, .fold { font-size: 10pt; }
  table, .facts, .notes, figcaption, .blanks li, footer { font-size: 8.5pt; }
  .tools { display: none; }
  th button { display: contents; }
  th[aria-sort] button::after { content: none; }
  summary { list-style: none; }
  details[open] > summary { display: none; }
  .wide { overflow: visible; margin: 8pt 0; }
  tr, figure, li, caption, .short, .readings, .facts div { break-inside: avoid; }
  thead { display: table-header-group; }
  h2, h3, caption, summary { break-after: avoid; }
  .facts { grid-template-columns: repeat(3, 1fr); }
  .blanks { grid-template-columns: repeat(2, 1fr); }
  .head { gap: 2pt; }
  .head p { margin: 1pt 0; }
  .facts { margin: 4pt 0; }
  footer { margin-top: 8pt; padding-top: 2pt; }
  footer ul { margin: 2pt 0; }
  .one-side { font-size: 9pt; line-height: 1.2; }
  .one-side h2 { font-size: 10pt; margin: 3pt 0 1pt; padding-top: 2pt; }
  .one-side ul, .one-side .wide { margin: 2pt 0; }
  .one-side .boxes { columns: 2; column-gap: 12pt; }
  .one-side .boxes li { break-inside: avoid; }
  .one-side td, .one-side th { padding-top: 1pt; padding-bottom: 1pt; }
  .boxes li::before { font-size: 12pt; line-height: 0.8; }
  details::details-content { content-visibility: visible; block-size: auto; }
  .sign { break-inside: avoid; }
}
`;
