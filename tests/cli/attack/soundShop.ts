/**
 * A shop whose every document is sound, with a name of its own in place of each text: what begins with `q` and a capital is
 * replaced by a hostile text, everywhere alike, and the shop is judged as before. All figures are invented.
 */
const shop = {
  kind: 'shop',
  name: 'qShopName',
  note: 'qShopNote',
  units: { length: 'in', torque: 'lbf ft', pressure: 'psi', temperature: 'degF' },
  plan: { required: ['qRequired'] },
  grids: {
    main_journal: { stations: ['qFront', 'qRear'], directions: ['qThrow', 'qSquare'] },
    cylinder: { stations: { qTop: 0.5, qBottom: 4 }, directions: ['qThrust', 'qAxial'] },
  },
  characteristics: {
    stud_height: {
      label: 'qStudLabel',
      quantity: 'length',
      positions: 'main',
      part: 'qStudPart',
      too_great: 'qProud',
      too_small: 'qSunk',
      source: 'qStudSource',
      note: 'qStudNote',
    },
    stud_spread: {
      label: 'qSpreadLabel',
      quantity: 'length',
      part: ['qSpreadPart'],
      formula: 'spread(stud_height[*])',
    },
    crack_test: {
      label: 'qCrackLabel',
      quantity: 'pass or fail',
      positions: 'main',
      pass: 'qPass',
      fail: 'qFail',
    },
  },
};

const own = {
  dowel_height: {
    label: 'qDowelLabel',
    quantity: 'length',
    positions: 'main',
    part: 'qDowelPart',
    too_great: 'qDowelProud',
    too_small: 'qDowelSunk',
    source: 'qDowelSource',
    note: 'qDowelNote',
  },
  dowel_spread: {
    label: 'qDowelSpreadLabel',
    quantity: 'length',
    part: ['qDowelPart'],
    formula: 'spread(dowel_height[*])',
  },
  dowel_test: {
    label: 'qDowelTest',
    quantity: 'pass or fail',
    positions: 'main',
    pass: 'qDowelPass',
    fail: 'qDowelFail',
  },
};

const instruments = {
  kind: 'instruments',
  note: 'qRegisterNote',
  instruments: {
    qMic: {
      type: 'micrometer',
      range: { from: '3 in', to: '4 in' },
      resolution: '0.0001 in',
      max_error: '0.0001 in',
      due: '2026-01-01',
      calibration: { uncertainty: '0.00004 in', k: 2, certificate: 'qCertificate' },
      material: 'qMicMaterial',
      serial: 'qMicSerial',
      note: 'qMicNote',
    },
    qGauge: {
      type: 'bore gauge',
      resolution: '0.001 in',
      repeatability: { study: 'engines/pump/sessions/teardown.yaml' },
    },
    qStrip: { type: 'gauging strip', marks: ['0.002 in', '0.003 in', '0.004 in', '0.006 in'] },
    qOdd: { type: 'qOddType', resolution: '0.001 in', max_error: '0.001 in' },
    qWrench: { type: 'torque wrench', max_error: '4 %' },
  },
};

const engine = {
  kind: 'engine',
  name: 'qEngineName',
  note: 'qEngineNote',
  source: 'qEngineSource',
  layout: {
    cylinders: ['qCylinderA', 'qCylinderB'],
    mains: ['qMainA', 'qMainB', 'qMainC'],
    crankpins: { qPinA: ['qCylinderA'], qPinB: ['qCylinderB'] },
    cam_bearings: ['qCamA', 'qCamB'],
    rings: ['qRingA', 'qRingB'],
    valves: { qCylinderA: ['qIn', 'qOut'], qCylinderB: ['qIn', 'qOut'] },
    banks: { qBank: ['qCylinderA', 'qCylinderB'] },
    lobes: ['qLobe'],
    gears: ['qGear'],
    number_from: 'qNumberFrom',
    thrust_main: 'qMainC',
    firing_order: ['qCylinderA', 'qCylinderB'],
  },
  labels: {
    main: { qMainA: 'qMainLabel' },
    crankpin: { qPinA: 'qPinLabel' },
    cylinder: { qCylinderA: 'qCylinderLabel' },
    ring: { qRingA: 'qRingLabel' },
    valve: { qIn: 'qInLabel' },
    cam_bearing: { qCamA: 'qCamLabel' },
    lobe: { qLobe: 'qLobeLabel' },
    bank: { qBank: 'qBankLabel' },
    gear: { qGear: 'qGearLabel' },
  },
  sizes: {
    bore: 4.125,
    stroke: 5,
    main_journal_diameter: 3.248,
    crankpin_diameter: 2.874,
    main_bearing_length: 1.25,
  },
  oil: { name: 'qOilName', viscosity: { '40 degC': '150 cSt', '100 degC': '14.5 cSt' } },
  running: { speed: '1500 rpm', load: { mains: '900 lbf' } },
  materials: Object.fromEntries(
    [
      'block',
      'caps',
      'liners',
      'crankshaft',
      'camshaft',
      'rods',
      'pistons',
      'pins',
      'rings',
      'shells',
      'head',
      'valves',
      'guides',
    ].map((part) => [part, `qMaterial${part}`]),
  ),
  fitted: {
    crankshaft: {
      mark: 'qCrankMark',
      code: 'qCrankCode',
      condition: 'new',
      source: 'qCrankSource',
      note: 'qCrankNote',
    },
    main_shells: {
      code: 'qShellCode',
      at: { qMainA: '0.010 under', qMainB: { mark: 'qShellMark', code: 'qShellCodeB', note: 'qShellNote' } },
    },
  },
  job: {
    number: 'qJobNumber',
    customer: 'qCustomer',
    engine_serial: 'qEngineSerial',
    received: 'qReceived',
    delivered: '2026-12-30',
    caps: 'qCapMarks',
  },
};

const limits = {
  kind: 'limits',
  source: 'qLimitsSource',
  note: 'qLimitsNote',
  extends: '../../limits/family.yaml',
  characteristics: own,
  limits: {
    stud_height: {
      new: { min: 0.01, max: 0.02 },
      wear: { max: 0.03 },
      source: 'qStudLimitSource',
      note: 'qStudLimitNote',
      at: { qMainB: { new: { min: 0.012, max: 0.02 }, source: 'qMainBSource', note: 'qMainBNote' } },
    },
    dowel_height: { new: { min: 0.01, max: 0.02 } },
    main_journal_diameter: {
      new: { min: 3.2475, max: 3.2485 },
      wear: { min: 3.246 },
      sizes: {
        '0.010 under': { new: { min: 3.2375, max: 3.2385 }, source: 'qGradeSource', note: 'qGradeNote' },
      },
    },
    main_journal_out_of_round: { wear: { max: 0.001 } },
    main_bearing_clearance: {
      target: { min: 0.0026, max: 0.003 },
      new: { min: 0.002, max: 0.0038 },
      wear: { max: 0.005 },
    },
    ring_end_gap: {
      new: { min: 0.014, max: 0.024 },
      at: {
        qRingA: {
          new: { min: 0.016, max: 0.026 },
          qCylinderA: { new: { min: 0.017, max: 0.026 }, source: 'qGapSource', note: 'qGapNote' },
        },
      },
    },
    cylinder_bore: { new: { min: 4.125, max: 4.1265 }, wear: { max: 4.13 } },
    cylinder_taper: { wear: { max: 0.002 } },
    crankshaft_end_play: { new: { min: 0.006, max: 0.013 }, wear: { max: 0.018 } },
    crankshaft_runout: { wear: { max: 0.002 } },
    turning_torque: { new: { max: 9 } },
    compression_pressure: { new: { min: 300 } },
  },
};

const family = {
  kind: 'limits',
  source: 'qFamilySource',
  limits: { rod_side_clearance: { new: { min: 0.006, max: 0.012 } } },
};

/** What cannot be added in binary without a rest. */
const plus = (value: number, more: number): number => Number((value + more).toFixed(4));

/** A reading that was put right. */
export const righted = (value: number, name: string) => ({
  value,
  was: plus(value, 0.001),
  why: `q${name}Why`,
  note: `q${name}Note`,
});

const head = (stage: string, date: string, hours: number) => ({
  kind: 'session',
  stage,
  date,
  hours,
  by: 'qSessionBy',
  temperature: 64,
  note: 'qSessionNote',
  conditions: { threads: 'qThreads' },
  photos: ['qPhoto.jpg'],
});

/** Blocks that come in every session, a little larger in each. */
const blocks = (more: number) => [
  {
    measure: 'main_journal_diameter',
    with: 'qMic',
    by: 'qBlockBy',
    note: 'qBlockNote',
    photos: ['qBlockPhoto.jpg'],
    conditions: { bearings: 'qBearings' },
    at: {
      qMainA: [
        [righted(plus(3.2481, -more), 'GridA'), plus(3.248, -more)],
        [plus(3.2479, -more), plus(3.2478, -more)],
      ],
      qMainB: [
        plus(3.2481, -more),
        righted(plus(3.2479, -more), 'ListA'),
        plus(3.2478, -more),
        plus(3.2478, -more),
      ],
      qMainC: righted(plus(3.2465, -more), 'PointA'),
    },
  },
  {
    measure: 'main_bearing_bore',
    with: 'qGauge',
    set_with: 'qMic',
    at: { qMainA: 3.2509, qMainB: 3.2507, qMainC: 3.2512 },
  },
  {
    measure: 'main_bearing_clearance',
    with: 'qStrip',
    conditions: { caps: 'qCapsTight' },
    at: {
      qMainA: { front: righted(plus(0.003, more), 'Front'), rear: righted(plus(0.004, more), 'Rear') },
      qMainB: 0.006,
    },
  },
  {
    measure: 'main_shell_thickness',
    stations: ['qAlone'],
    at: { qMainA: { upper: righted(0.1247, 'Upper'), lower: righted(0.1252, 'Lower') } },
  },
  {
    measure: 'cylinder_bore',
    with: 'qGone',
    stations: { qDeep: 1 },
    directions: ['qRound'],
    at: { qCylinderA: plus(4.1271, more) },
  },
  { measure: 'stud_height', with: 'qOdd', at: { qMainA: plus(0.015, more), qMainB: 0.031, qMainC: 0.009 } },
  { measure: 'dowel_height', at: { qMainA: plus(0.015, more) } },
  { measure: 'crack_test', at: { qMainA: 'pass', qMainB: { value: 'fail', note: 'qCrackNote' } } },
  { measure: 'dowel_test', at: { qMainA: 'pass', qMainB: 'fail' } },
  {
    measure: 'ring_end_gap',
    at: {
      qCylinderA: { qRingA: righted(plus(0.03, more), 'Gap'), qRingB: [righted(0.018, 'GapList')] },
      qCylinderB: { qRingA: [[righted(0.019, 'GapGrid')]] },
    },
  },
  { measure: 'crankshaft_end_play', value: righted(plus(0.009, more), 'Play') },
  { measure: 'crankshaft_runout', supported_on: ['qMainA', 'qMainC'], at: { qMainB: 0.001 } },
  {
    measure: 'turning_torque',
    after: [
      { step: 'qStepA', value: 2.1, was: 2.2, why: 'qStepWhy', note: 'qStepNote' },
      { step: 'qStepB', running: 5.9, breakaway: 8 },
    ],
  },
];

const teardown = {
  ...head('teardown', '2026-02-03', 1000),
  readings: [
    ...blocks(0),
    { work: 'qWork', on: 'pistons', by: 'qWorkBy', note: 'qWorkNote', photos: ['qWorkPhoto.jpg'] },
  ],
  checked: [{ instrument: 'qMic', standard: 3, read: 3.0009, by: 'qCheckBy', note: 'qCheckNote' }],
  study: {
    measure: 'main_bearing_bore',
    with: 'qGauge',
    note: 'qStudyNote',
    parts: {
      qPartA: { qPersonA: [3.2478, 3.2479], qPersonB: [3.2478, 3.2477] },
      qPartB: { qPersonA: [3.2472, 3.2472], qPersonB: [3.2471, 3.2473] },
    },
  },
  found: [
    {
      on: 'main shells',
      is: 'qWiped',
      do: 'renew',
      by: 'qFoundBy',
      note: 'qFoundNote',
      photos: ['qFoundPhoto.jpg'],
    },
    { on: 'qFoundOn', is: 'qCracked' },
    { on: ['qFoundOnList'], is: 'qScored' },
  ],
  concessions: [
    {
      measure: 'stud_height',
      at: 'qMainB',
      up_to: 0.04,
      reason: 'qReason',
      by: 'qConcededBy',
      note: 'qConcededNote',
      follow_up: { measure: 'compression_pressure', at: 'qCylinderA', min: 300, note: 'qFollowNote' },
    },
    {
      measure: 'main_journal_diameter',
      at: ['qMainC'],
      down_to: 3.2,
      reason: 'qReasonC',
      follow_up: { measure: 'compression_pressure', at: ['qCylinderB'], min: 300 },
    },
  ],
  imported: [{ file: 'qImported.csv', rows: 2, sha256: '0'.repeat(64) }],
};

const values = { qNutA: 40, qNutB: 52, qNutC: 40, qNutD: 40 };

const rebuild = {
  ...head('rebuild', '2026-03-14', 2000),
  fitted: {
    pistons: {
      mark: 'qPistonMark',
      code: 'qPistonCode',
      condition: 'new',
      source: 'qPistonSource',
      note: 'qPistonNote',
    },
    main_shells: {
      at: { qMainA: 'std', qMainC: { mark: 'qShellMarkC', code: 'qShellCodeC', note: 'qShellNoteC' } },
    },
  },
  replaced: [
    { part: 'main shells', at: 'qMainB', by: 'qReplacedBy', note: 'qReplacedNote' },
    { part: 'main shells', at: ['qMainC'] },
    { part: 'qPump' },
  ],
  machined: [
    { part: 'main journals', at: 'qMainB', by: 'qMachinedBy', note: 'qMachinedNote' },
    { part: 'main journals', at: ['qMainC'] },
    { part: 'qFlange' },
  ],
  readings: blocks(0.0007),
  tightened: [
    {
      sequence: 'caps',
      with: 'qWrench',
      lubricant: 'qOtherOil',
      by: 'qTightenedBy',
      note: 'qTightenedNote',
      confirmed: ['qBefore'],
      order: ['qNutB', 'qNutA'],
      passes: [
        { to: 40, note: 'qPassNote', values },
        { to: 80, fasteners: ['qNutA'], left_out: ['qNutB'] },
        { stretch: '0.0135 to 0.0185', values: { qNutA: 0.014, qNutB: 0.02 }, torques: values },
      ],
    },
    { sequence: 'qOneJoint' },
  ],
};

const uses = { ...head('service', '2026-03-20', 2500), uses: ['rebuild'], readings: blocks(0.0011) };

/** The passes of a card that draws its fasteners; the order is the card's own. */
const caps = (fasteners: object, more: object) => ({
  kind: 'torque',
  joint: 'qOneJoint',
  source: 'qTorqueSource',
  note: 'qTorqueNote',
  lubricant: 'qOil',
  before: ['qBefore', 'qBeforeB'],
  after: ['qAfter'],
  passes: [
    { to: 40, note: 'qCardNote' },
    { to: 80, fasteners: ['qNutA', 'qGroup'] },
    { stretch: '0.0135 to 0.0185' },
  ],
  fasteners: { groups: { qGroup: ['qNutB', 'qNutC'] }, ...fasteners },
  ...more,
});

const NUTS = ['qNutA', 'qNutB', 'qNutC', 'qNutD'];

const named = caps({ names: NUTS, thread: '9/16-12', grade: 'qGrade', proof: '60000 psi' }, { order: NUTS });

const shelf = {
  kind: 'part',
  part: 'crankshaft',
  mark: 'qShelfMark',
  bought: 'qBoughtFrom',
  lies: 'qRack',
  from: [{ engine: 'qShelfEngine', date: '2019-05-20', note: 'qShelfNote' }],
};

const shelved = (name: string): object => ({
  for: ['qEngineName'],
  source: `${name}Source`,
  note: `${name}Note`,
});

const counted = (name: string): object => ({
  code: name,
  count: 8,
  reserved: { [`${name}Job`]: 2 },
  ...shelved(name),
});

const stock = {
  kind: 'stock',
  note: 'qStockNote',
  source: 'qStockSource',
  shells: [
    {
      ...counted('qStockShell'),
      class: 'qStockClass',
      fits: 'main shells',
      size: '0.010 under',
      wall: '0.1300 to 0.1302',
    },
  ],
  pistons: [
    {
      mark: 'qStockPiston',
      ran_in: 'qCylinderA',
      reserved: 'qStockPistonJob',
      size: '0.020 over',
      diameter: 4.1408,
      ...shelved('qStockPiston'),
    },
  ],
  thrust_washers: [{ ...counted('qStockWasher'), size: '0.0003 over each' }],
  rings: [{ ...counted('qStockRings'), size: '0.020 over' }],
  gaskets: [{ ...counted('qStockGasket'), thickness: '1.65 mm' }],
  liner_shims: [{ ...counted('qStockShim'), thickness: '0.15 mm' }],
  lash_buckets: [{ ...counted('qStockBucket'), thickness: '5.42 mm' }],
};

/** What was known before and is gone since, of an engine that nobody knows any more. */
const known = {
  format: 'tenths.known',
  version: 1,
  findings: [
    {
      code: 'qKnownCode',
      engine: 'engines/pump',
      session: 'qKnownSession',
      measure: 'qKnownMeasure',
      position: 'qKnownPosition',
    },
    { code: 'reading/out', engine: 'qKnownEngine', session: null, measure: null, position: null },
  ],
};

export const SOUND_SHOP: Readonly<Record<string, object>> = {
  'shop.yaml': shop,
  'instruments.yaml': instruments,
  'stock.yaml': stock,
  'known.json': known,
  'limits/family.yaml': family,
  'parts/shelf.yaml': shelf,
  'engines/pump/engine.yaml': engine,
  'engines/pump/limits.yaml': limits,
  'engines/pump/sessions/teardown.yaml': teardown,
  'engines/pump/sessions/rebuild.yaml': rebuild,
  'engines/pump/sessions/service.yaml': uses,
  'engines/pump/torque/caps.yaml': named,
  'engines/pump/torque/rows.yaml': {
    ...caps(
      {},
      {
        positions: [
          ['qNutA', 'qNutB'],
          ['qNutC', 'qNutD'],
        ],
      },
    ),
    joint: 'qRowsJoint',
    order: { qNutA: 1, qNutB: 2, qNutC: 3, qNutD: 4 },
  },
  'engines/pump/torque/row.yaml': {
    ...caps({}, { positions: NUTS, order: 'centre out' }),
    joint: 'qRowJoint',
  },
  'engines/pump/torque/pairs.yaml': {
    ...caps(
      {},
      {
        positions: {
          caps: [
            ['qNutA', 'qNutB'],
            ['qNutC', 'qNutD'],
          ],
        },
        order: 'centre out',
      },
    ),
    joint: 'qPairsJoint',
  },
  'engines/pump/torque/round.yaml': {
    ...caps({}, { positions: { circle: NUTS }, order: 'centre out' }),
    joint: 'qRoundJoint',
  },
};
