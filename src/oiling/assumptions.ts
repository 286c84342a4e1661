/** What is taken where an engine states nothing: each on the side that makes a film thinner or a demand greater. */

/** °C. Warm oil is thin. */
export const ASSUMED_INLET = 100;
/** kg/m³, of mineral oil that is hot. Light oil is thin for its kinematic viscosity. */
export const ASSUMED_DENSITY = 820;
/** Crank throw over length of the rod: of a short rod. */
export const ASSUMED_ROD_RATIO = 0.3;
