/** Trumpler's least film at starting roughness, 0.005 mm + 0.00004 d (Shigley, chapter 12); metres. */
export const trumplerThickness = (diameter: number): number => 5e-6 + 4e-5 * diameter;

/** His hottest film, 250 °F, in °C. */
export const TRUMPLER_TEMPERATURE = (250 - 32) / 1.8;
