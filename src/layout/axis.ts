/** The rows of like things along which an engine is measured. */
export const AXES = [
  'main',
  'crankpin',
  'cylinder',
  'ring',
  'valve',
  'cam bearing',
  'lobe',
  'bank',
  'gear',
  'step',
  'engine',
] as const;

export type Axis = (typeof AXES)[number];

/** How an engine document writes the names along an axis. */
export interface NamedAxis {
  readonly axis: Axis;
  /** In `layout`. */
  readonly keys: readonly [string, ...string[]];
  /** In `labels`, and where a shop says at what its own figures are measured. */
  readonly label: string;
  /** Where the document names none. */
  readonly usual?: readonly string[];
  /** Each of its names may hold a list of cylinders, such as a crankpin the rods on it; what a cylinder is to it. */
  readonly ofCylinders?: OfCylinders;
  /** Its names may differ from cylinder to cylinder: a map, or a list that holds for each. */
  readonly isByHolder?: true;
  /** Parts are made to service sizes all along it: `fitted` may say one for all. */
  readonly isGraded?: true;
}

interface OfCylinders {
  readonly on: string;
  /** Why a cylinder cannot stand in two. */
  readonly but: string;
  /** No cylinder is without one. */
  readonly every?: true;
}

/** What rods, pistons and much else are counted by. */
export const CYLINDER: Axis = 'cylinder';

export const NAMED_AXES: readonly NamedAxis[] = [
  { axis: 'main', keys: ['mains'], label: 'main', isGraded: true },
  {
    axis: 'crankpin',
    keys: ['crankpins', 'pins'],
    label: 'crankpin',
    isGraded: true,
    ofCylinders: { on: 'on', but: 'a rod runs on one pin', every: true },
  },
  { axis: 'cylinder', keys: ['cylinders'], label: 'cylinder', isGraded: true },
  // Of a piston with three rings, from its crown down.
  { axis: 'ring', keys: ['rings'], label: 'ring', usual: ['top', 'second', 'oil'] },
  { axis: 'valve', keys: ['valves'], label: 'valve', isByHolder: true, isGraded: true },
  { axis: 'cam bearing', keys: ['cam_bearings'], label: 'cam_bearing', isGraded: true },
  { axis: 'lobe', keys: ['lobes'], label: 'lobe' },
  {
    axis: 'bank',
    keys: ['banks'],
    label: 'bank',
    // One block, one deck, one head.
    usual: ['all'],
    ofCylinders: { on: 'in', but: 'a cylinder belongs to one bank' },
  },
  { axis: 'gear', keys: ['gears'], label: 'gear' },
];

/** What is counted anew on each thing of another axis: a ring is a ring of some cylinder. */
export const HOLDER: Readonly<Partial<Record<Axis, Axis>>> = { ring: 'cylinder', valve: 'cylinder' };
