/** What is looked at before an engine is closed up, and no reading shows. Common practice, no source. */
export const BOXES: readonly string[] = [
  'oil galleries brushed, blown through and plugged',
  'every part washed, dried and oiled',
  'ring tops upward, gaps staggered',
  'rods, caps and pistons: numbers and directions as they came',
  'bearing tangs seated, oil holes in line',
  'thrust faces aligned before the thrust cap is tightened',
  'crankshaft turned by hand after each cap',
  'timing marks in line',
  'nothing left inside: rags, tools, plugs',
  'second initials',
];
