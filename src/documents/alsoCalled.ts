/** Other words of the trade for a characteristic, by its id: understood where one is asked for, never written in a document. */
export const ALSO_CALLED: Readonly<Record<string, readonly string[]>> = {
  main_journal_taper: ['journal taper'],
  main_journal_out_of_round: ['journal ovality', 'journal out of round'],
  main_housing_bore: ['main bore', 'main tunnel bore', 'main bearing housing bore'],
  main_shell_thickness: ['main bearing wall', 'main bearing wall thickness', 'bearing wall'],
  main_bearing_clearance: ['oil clearance', 'main oil clearance', 'main running clearance'],
  crankpin_diameter: ['rod journal diameter', 'big end journal diameter'],
  crankpin_taper: ['rod journal taper'],
  crankpin_out_of_round: ['rod journal out of round', 'crankpin ovality'],
  rod_housing_bore: ['big end housing bore', 'big end bore', 'rod big end bore'],
  rod_housing_out_of_round: ['big end out of round'],
  rod_shell_thickness: ['rod bearing wall', 'rod bearing wall thickness', 'bearing wall'],
  rod_bearing_clearance: ['oil clearance', 'rod oil clearance', 'big end clearance', 'rod running clearance'],
  rod_side_clearance: ['big end side clearance', 'rod side play', 'rod end play', 'rod end float'],
  thrust_journal_width: ['thrust width'],
  crankshaft_end_play: [
    'thrust clearance',
    'end float',
    'crankshaft end float',
    'crankshaft thrust clearance',
  ],
  crankshaft_runout: ['crankshaft bend', 'shaft runout'],
  turning_torque: ['rotating torque', 'rotation torque', 'drag torque'],
  cylinder_bore: ['bore diameter', 'bore size'],
  cylinder_taper: ['bore taper'],
  cylinder_out_of_round: ['bore out of round', 'bore ovality'],
  piston_diameter: ['piston skirt diameter', 'skirt diameter'],
  piston_clearance: ['piston to bore clearance', 'piston to wall clearance', 'skirt clearance'],
  ring_end_gap: ['ring gap', 'closed gap', 'butt gap'],
  ring_side_clearance: ['groove clearance', 'ring groove clearance', 'ring land clearance'],
  piston_pin_clearance: ['pin to piston clearance', 'wrist pin clearance', 'gudgeon pin clearance'],
  small_end_clearance: ['pin to rod clearance', 'little end clearance'],
  small_end_bore: ['small end bushing bore', 'little end bore'],
  piston_compression_height: ['compression height', 'pin height'],
  piston_protrusion: ['piston projection', 'piston stand proud'],
  crankshaft_flange_runout: ['flange runout'],
  crank_stroke: ['stroke'],
  main_journal_fillet_radius: ['journal fillet radius', 'fillet radius'],
  crankpin_fillet_radius: ['fillet radius'],
  main_shell_free_spread: ['bearing free spread', 'bearing spread'],
  rod_shell_free_spread: ['bearing free spread', 'bearing spread'],
  main_shell_crush: ['bearing crush', 'bearing nip', 'bearing crush height'],
  rod_shell_crush: ['bearing crush', 'bearing nip', 'bearing crush height'],
  rod_centre_distance: ['rod center distance', 'rod length', 'centre to centre length'],
  deck_flatness: ['deck warpage', 'block flatness'],
  deck_height: ['block height', 'crank axis to deck'],
  head_flatness: ['head warpage', 'head distortion'],
  main_bore_alignment: ['main bearing alignment', 'line bore alignment'],
  liner_protrusion: ['liner projection', 'sleeve protrusion', 'liner stand proud', 'liner height'],
  counterbore_depth: ['liner seat depth'],
  swept_volume: ['cylinder displacement'],
  valve_stem_clearance: ['stem to guide clearance', 'guide clearance', 'valve guide clearance'],
  valve_guide_fit: ['guide press'],
  valve_seat_fit: ['seat press'],
  valve_seat_width: ['seat width'],
  valve_seat_runout: ['seat runout', 'seat concentricity'],
  valve_recession: ['valve depth', 'valve head depth'],
  valve_margin: ['valve head margin', 'valve rim'],
  valve_spring_free_length: ['spring free length', 'free length'],
  valve_spring_squareness: ['spring squareness'],
  valve_spring_installed_height: ['spring installed height', 'installed height', 'fitted length'],
  valve_spring_rate: ['spring rate'],
  valve_lash_cold: ['valve lash', 'valve clearance', 'tappet clearance'],
  valve_lash_hot: ['valve lash', 'valve clearance', 'tappet clearance'],
  lifter_clearance: ['tappet to bore clearance', 'lifter to bore clearance'],
  cam_bearing_clearance: ['cam oil clearance', 'camshaft bearing clearance'],
  camshaft_end_play: ['cam end play', 'camshaft end float', 'cam end float'],
  lobe_lift: ['cam lift'],
  lobe_base_circle: ['base circle'],
  intake_centreline: ['intake lobe centerline', 'lobe centerline'],
  exhaust_centreline: ['exhaust lobe centerline', 'lobe centerline'],
  gear_backlash: ['backlash', 'gear lash', 'timing gear backlash'],
  gear_end_play: ['idler end play', 'idler end float'],
  timing_chain_length: ['chain length'],
  timing_chain_slack: ['chain slack'],
  compression_pressure: ['cranking pressure', 'cylinder compression'],
  leak_down: ['cylinder leakage', 'leakage test'],
  oil_pressure_running: ['oil pressure'],
  oil_pressure_idle: ['oil pressure'],
  crankcase_pressure: ['blow-by pressure'],
};

/** Made when somebody asks by such a word: most calls name nothing, or a name that is known. */
let ids: ReadonlyMap<string, readonly string[]> | undefined;

function idsByName(): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const [id, names] of Object.entries(ALSO_CALLED)) {
    for (const name of names) found.set(plain(name), [...(found.get(plain(name)) ?? []), id]);
  }
  return found;
}

/** The characteristics that a word of the trade may mean, underscores, hyphens and blanks being one. */
export function idsCalled(word: string): readonly string[] {
  ids ??= idsByName();
  return ids.get(plain(word)) ?? [];
}

function plain(text: string): string {
  return text.toLowerCase().replaceAll(/[_\s-]+/g, ' ');
}
