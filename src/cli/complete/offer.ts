/** A word that may be typed, and what it means. */
export interface Offer {
  readonly word: string;
  readonly means: string;
}
